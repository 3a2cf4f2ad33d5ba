//! A hold on a full screen.

use holdfast_core::Instant;
use holdfast_core::clock::{Act, HoldPhase, HoldState};
use ratatui::Frame;
use ratatui::crossterm::event::{KeyCode, KeyEvent, KeyModifiers};
use ratatui::text::Line;
use ratatui::widgets::{Clear, Paragraph};

use super::Timer;
use crate::fault::Outcome;
use crate::full::bounce::Bounce;
use crate::full::clock::{Face, until_next};
use crate::full::lines::{hanging, keys};
use crate::full::sound::Sound;
use crate::full::stack::{Part, Stack};
use crate::full::stage::{Came, on_stage};
use crate::full::theme::Theme;
use crate::now::now;
use crate::say;

pub(super) fn run(timer: &mut Timer, sound: &mut Sound) -> Outcome {
    let theme = Theme::here();
    on_stage(|stage| {
        let (mut watch, mut bounce) = (timer.begin(), Bounce::default());
        loop {
            let at = now();
            sound.cue(&watch.due(&at));
            let done = matches!(timer.state(&at).phase, HoldPhase::Done { .. });
            if done && timer.cues(&at).is_empty() {
                return Ok(());
            }
            stage.draw(|frame| draw(frame, timer, &at, theme))?;
            watch.set(timer.cues(&at), &at);
            if let Came::Key(key) = stage.wait(until_next(watch.next_ms(), true))? {
                let at = now();
                sound.cue(&watch.due(&at));
                let state = timer.state(&at);
                if let Some(act) = act(&mut bounce, key, &state, std::time::Instant::now()) {
                    timer.act(act, at.clone());
                }
                watch.set(timer.cues(&at), &at);
            }
        }
    })
}

/// What a key does to the clock; nothing when it bounced.
fn act(
    bounce: &mut Bounce,
    key: KeyEvent,
    state: &HoldState,
    pressed: std::time::Instant,
) -> Option<Act> {
    if bounce.is(key, pressed) {
        return None;
    }
    let paused = matches!(state.phase, HoldPhase::Paused { .. });
    match key.code {
        KeyCode::Char('c') if key.modifiers.contains(KeyModifiers::CONTROL) => Some(Act::Stop),
        KeyCode::Char(' ' | 'p') | KeyCode::Enter if paused => Some(Act::Resume),
        KeyCode::Char(' ' | 'p') | KeyCode::Enter => Some(Act::Pause),
        KeyCode::Char('+' | '=') => Some(Act::Extend),
        KeyCode::Char('n') => Some(Act::Skip),
        KeyCode::Char('x' | 'q') | KeyCode::Esc => Some(Act::Stop),
        _ => None,
    }
}

fn draw(frame: &mut Frame, timer: &Timer, now: &Instant, theme: Theme) {
    let area = frame.area();
    let (wide, state) = (area.width, timer.state(now));
    let mut stack = Stack::default();
    // In a low window the clock comes first, then the keys.
    if area.height > 6 {
        let title = say::hold::title(timer.spec.hold_ms / 1000);
        stack.push(Part::text(1, wide, theme.strong(), &title));
    }
    let ran = state.held_ms.iter().any(|ms| *ms > 0);
    // In a low window its row is worth more to the digits.
    if ran && area.height >= 12 {
        stack.push(Part::text(2, wide, theme.quiet(), &timer.held_text(&state)));
    }
    if area.height >= 14 {
        stack.push(Part::whole(2, hanging(wide, theme.warn(), say::hold::caution())));
    }
    if let Some(clock) = timer.view(now) {
        let face = Face::of(&clock);
        let draw = move |rows| face.lines(wide, rows, rows, theme);
        stack.push(Part::drawn(0, [1, 5, u16::MAX], draw));
    }
    stack.push(Part::spring());
    if area.height > 1 {
        stack.push(Part::whole(0, hints(&state, wide, theme)));
    }
    frame.render_widget(Clear, area);
    frame.render_widget(Paragraph::new(stack.lines(area.height)), area);
}

/// The keys, in one row.
fn hints(state: &HoldState, wide: u16, theme: Theme) -> Vec<Line<'static>> {
    let paused = matches!(state.phase, HoldPhase::Paused { .. });
    let pause = if paused { say::hold::resume() } else { say::hold::pause() };
    let holding = matches!(state.phase, HoldPhase::Holding { .. });
    let more = holding.then_some(("+", say::hold::longer()));
    let last = [("n", say::hold::next()), ("x", say::hold::stop())];
    let hints = [(say::full::key_space(), pause)].into_iter().chain(more).chain(last);
    let hints: Vec<_> = hints.map(|(key, what)| (key.to_owned(), what.to_owned())).collect();
    keys(&hints, wide, theme.key()).into_iter().take(1).collect()
}

#[cfg(test)]
mod tests {
    use std::time::Duration;

    use holdfast_core::clock::HoldSpec;
    use ratatui::Terminal;
    use ratatui::backend::TestBackend;

    use super::*;

    #[test]
    fn in_a_low_window_the_digits_stay_big_once_something_is_held() {
        let spec = HoldSpec {
            ready_ms: 0,
            hold_ms: 600_000,
            switch_ms: 0,
            sides: 1,
            contract_ms: 0,
            relax_ms: 0,
        };
        let mut timer = Timer { spec, marks: Vec::new() };
        let at = now();
        timer.act(Act::Begin, at.clone());
        let later = holdfast_core::Instant { boot_ms: at.boot_ms + 9_000, ..at };
        let drawn = |rows| {
            let mut terminal = Terminal::new(TestBackend::new(40, rows)).unwrap();
            terminal.draw(|frame| draw(frame, &timer, &later, Theme::plain())).unwrap();
            terminal.backend().to_string()
        };
        let (low, higher) = (drawn(10), drawn(12));
        assert!(low.contains("██") && !low.contains("held: 9 s"), "{low}");
        assert!(higher.contains("██") && higher.contains("held: 9 s"), "{higher}");
    }

    #[test]
    fn a_key_that_bounces_counts_once() {
        let spec = HoldSpec {
            ready_ms: 600_000,
            hold_ms: 600_000,
            switch_ms: 600_000,
            sides: 3,
            contract_ms: 0,
            relax_ms: 0,
        };
        let mut timer = Timer { spec, marks: Vec::new() };
        timer.act(Act::Begin, now());
        let (mut bounce, begun) = (Bounce::default(), std::time::Instant::now());
        let mut press = |timer: &mut Timer, code: KeyCode, ms: u64| {
            let at = now();
            let pressed = begun + Duration::from_millis(ms);
            let act = act(&mut bounce, KeyEvent::from(code), &timer.state(&at), pressed);
            act.into_iter().for_each(|act| timer.act(act, at.clone()));
            timer.state(&at).phase
        };
        for ms in [0, 40, 80] {
            let phase = press(&mut timer, KeyCode::Char(' '), ms);
            assert!(matches!(phase, HoldPhase::Paused { .. }), "{ms}: {phase:?}");
        }
        let phase = press(&mut timer, KeyCode::Enter, 900);
        assert!(matches!(phase, HoldPhase::Ready { .. }), "{phase:?}");
        for ms in [1_000, 1_500, 1_530] {
            let phase = press(&mut timer, KeyCode::Char('n'), ms);
            assert!(matches!(phase, HoldPhase::Holding { side: 1, .. }), "{ms}: {phase:?}");
        }
    }
}
