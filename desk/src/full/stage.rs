//! The terminal while a full-screen program has it, and giving it back however that ends.

use std::io::{Stdout, stdout};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::mpsc::{Receiver, RecvTimeoutError, channel};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::{Duration, Instant};

use ratatui::crossterm::cursor::{Hide, Show};
use ratatui::crossterm::event::{Event, KeyEvent, KeyEventKind, read};
use ratatui::crossterm::execute;
use ratatui::crossterm::terminal::{
    Clear, ClearType, EnterAlternateScreen, LeaveAlternateScreen, disable_raw_mode, enable_raw_mode,
};
use ratatui::prelude::CrosstermBackend;
use ratatui::{Frame, Terminal};

use super::signals::Signals;
use crate::fault::{Fault, Outcome};
use crate::say;

/// The terminal, the keys and the signals.
pub(crate) struct Stage {
    terminal: Terminal<CrosstermBackend<Stdout>>,
    events: Receiver<Event>,
    signals: Signals,
}

/// What came while waiting.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Came {
    /// A key.
    Key(KeyEvent),
    /// Nothing that needs an answer.
    Nothing,
}

/// How often signals are looked at.
const LOOK: Duration = Duration::from_millis(50);

impl Stage {
    /// Draws a frame.
    ///
    /// # Errors
    /// [`Fault::Closed`] when the terminal is gone.
    pub(crate) fn draw(&mut self, draw: impl FnOnce(&mut Frame)) -> Outcome {
        let drawn = self.terminal.draw(draw).is_ok();
        if drawn { Ok(()) } else { Err(self.gone()) }
    }

    /// Waits for a key, at most so many milliseconds.
    ///
    /// # Errors
    /// [`Fault::Signal`] when one came, [`Fault::Closed`] when the terminal is gone.
    pub(crate) fn wait(&mut self, ms: i64) -> Outcome<Came> {
        let until = Instant::now() + Duration::from_millis(ms.clamp(1, 1000).unsigned_abs());
        loop {
            if let Some(signal) = self.signals.come() {
                return Err(Fault::Signal(signal));
            }
            let left = until.saturating_duration_since(Instant::now());
            match self.events.recv_timeout(left.min(LOOK)) {
                // Some terminals tell of a key let go, too.
                Ok(Event::Key(key)) if key.kind != KeyEventKind::Release => {
                    return Ok(Came::Key(key));
                }
                Ok(Event::Resize(..)) => return Ok(Came::Nothing),
                Ok(_) => {}
                Err(RecvTimeoutError::Timeout) if left.is_zero() => return Ok(Came::Nothing),
                Err(RecvTimeoutError::Timeout) => {}
                Err(RecvTimeoutError::Disconnected) => return Err(self.gone()),
            }
        }
    }

    fn gone(&self) -> Fault {
        self.signals.come().map_or(Fault::Closed, Fault::Signal)
    }
}

/// Takes the terminal, plays, and gives it back: at the end, on an error, on a panic. Signals come
/// out of [`Stage::wait`] as errors.
pub(crate) fn on_stage<T>(play: impl FnOnce(&mut Stage) -> Outcome<T>) -> Outcome<T> {
    let no_terminal = |error: std::io::Error| Fault::Typed(say::fault::no_terminal(error));
    let signals = Signals::watch().map_err(no_terminal)?;
    guarded(
        || {
            enable_raw_mode().map_err(no_terminal)?;
            // One that was killed leaves its last picture on the other screen. (`Terminal::clear` would ask
            // where the cursor is, and wait for a terminal that does not answer.)
            execute!(stdout(), EnterAlternateScreen, Hide, Clear(ClearType::All))
                .map_err(no_terminal)?;
            let terminal = Terminal::new(CrosstermBackend::new(stdout())).map_err(no_terminal)?;
            play(&mut Stage { terminal, events: events(), signals })
        },
        || {
            // A terminal that is gone needs nothing back.
            let _ = execute!(stdout(), Show, LeaveAlternateScreen);
            let _ = disable_raw_mode();
        },
    )
}

/// Reads the terminal in a thread of its own: reading from a terminal that has hung up never comes
/// back, and the signal that tells of it must still be seen.
fn events() -> Receiver<Event> {
    let (sender, events) = channel();
    std::thread::spawn(move || {
        while let Ok(event) = read() {
            if sender.send(event).is_err() {
                return;
            }
        }
    });
    events
}

/// Plays and puts back, whatever happens. A panic becomes a fault, with its words shown only once the
/// terminal can show them.
fn guarded<T>(play: impl FnOnce() -> Outcome<T>, put_back: impl FnOnce()) -> Outcome<T> {
    let words = Arc::new(Mutex::new(String::new()));
    let heard = Arc::clone(&words);
    let usual = std::panic::take_hook();
    std::panic::set_hook(Box::new(move |panic| {
        // The core catches its own; what it says arrives as an error.
        *heard.lock().unwrap_or_else(PoisonError::into_inner) = panic.to_string();
    }));
    let played = catch_unwind(AssertUnwindSafe(play));
    std::panic::set_hook(usual);
    put_back();
    played.unwrap_or_else(|_| {
        let words = words.lock().unwrap_or_else(PoisonError::into_inner).clone();
        Err(Fault::Typed(say::fault::panicked(words)))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_terminal_is_given_back_on_a_panic_and_the_panic_is_told() {
        let mut back = false;
        let outcome: Outcome = guarded(|| panic!("a fault of ours"), || back = true);
        assert!(back);
        let said = outcome.unwrap_err().to_string();
        assert!(said.contains("a fault of ours") && said.contains("is saved"), "{said}");
    }

    #[test]
    fn the_terminal_is_given_back_on_an_error() {
        let mut back = false;
        let outcome: Outcome = guarded(|| Err(Fault::Signal(15)), || back = true);
        assert!(back && matches!(outcome, Err(Fault::Signal(15))));
    }
}
