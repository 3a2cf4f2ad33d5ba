//! The state of the full-screen session: what the core said last, and where the athlete is in it.
//! Keys come in, wishes go out; nothing here draws or logs.

use holdfast_core::companion::{SessionScreen, Tap};
use holdfast_core::{HoldfastError, Instant};

use super::form::{Picker, Typing};
use super::rows::{rows, same_place};
use super::went_by::WentBy;
use crate::session::step::{Skipped, Step, follow};
use crate::session::{doubt_of, said};

/// What the keys go to.
pub(super) enum Mode {
    /// The day.
    Day,
    /// A line being typed.
    Typing(Typing),
    /// A list to choose from.
    Picking(Picker),
    /// All keys and cautions; the first line shown.
    Help(u16),
}

/// How something that was said is meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Tone {
    /// It is on disk.
    Saved,
    /// It is not.
    NotSaved,
    /// Good to know.
    Hint,
}

/// What keys ask for.
#[derive(Debug, PartialEq, Eq)]
pub(super) enum Wish {
    /// Only a new frame.
    Nothing,
    /// These taps, each only when the one before was done.
    Taps(Vec<Tap>),
    /// To end, leaving the session as it is.
    Leave,
}

/// The state.
pub(super) struct Model {
    /// The core's last answer.
    pub(super) screen: SessionScreen,
    /// What was passed over for now.
    pub(super) skipped: Skipped,
    /// The row chosen by hand; none follows the day.
    pub(super) chosen: Option<Step>,
    /// What the keys go to.
    pub(super) mode: Mode,
    /// The line whose taps are on their way: it is opened again when one of them cannot be.
    pub(super) sent: Option<Typing>,
    /// What was said last.
    pub(super) said: Option<(Tone, String)>,
    /// True when the window is too small to show what a key would do.
    pub(super) blind: bool,
    /// Cues that nobody gave.
    pub(super) went_by: WentBy,
}

impl Model {
    /// At the start, with the core's first answer.
    pub(super) fn new(screen: SessionScreen) -> Model {
        Model {
            screen,
            skipped: Skipped::default(),
            chosen: None,
            mode: Mode::Day,
            sent: None,
            said: None,
            blind: false,
            went_by: WentBy::default(),
        }
    }

    /// The row that keys act on.
    pub(super) fn at(&self) -> Step {
        let chosen = self.chosen.as_ref();
        let found = chosen
            .and_then(|step| rows(&self.screen).into_iter().find(|row| same_place(row, step)));
        found.unwrap_or_else(|| follow(&self.screen, &self.skipped))
    }

    /// Says something good to know.
    pub(super) fn hint(&mut self, text: impl Into<String>) -> Wish {
        self.said = Some((Tone::Hint, text.into()));
        Wish::Nothing
    }

    /// Says that a key was not taken, beside what was said before: that may be what is on disk.
    pub(super) fn too_soon(&mut self) {
        const SAID: &str = "(pressed again at once: taken once)";
        let (tone, before) = self.said.take().unwrap_or((Tone::Hint, String::new()));
        let before = before.trim_end_matches(SAID).trim_end();
        self.said = Some((tone, format!("{before}\n{SAID}").trim_start().to_owned()));
    }

    /// Takes in what became of a tap. Says whether it was done.
    pub(super) fn after(&mut self, tap: &Tap, done: Result<SessionScreen, HoldfastError>) -> bool {
        match done {
            Ok(screen) => {
                let number = screen.saved.map_or(String::new(), |number| format!(" {number}"));
                let mut text = format!("saved{number}: {}", said(tap, &screen));
                if let Some(doubt) = doubt_of(&screen, tap) {
                    text += &format!("\nreally? {doubt}; u if it was a slip");
                }
                self.screen = screen;
                self.said = Some((Tone::Saved, text));
                // A clock's row is still the one to be at; anything logged leads on.
                if !matches!(tap, Tap::Clock { .. } | Tap::TakeOption { .. } | Tap::Flag { .. }) {
                    self.chosen = None;
                }
                true
            }
            Err(error) => {
                // What was typed stays, to be put right; nothing of it may fall to the other keys.
                if let Some(mut typing) = self.sent.take() {
                    typing.hint = format!("not saved: {error}");
                    self.mode = Mode::Typing(typing);
                }
                self.said = Some((Tone::NotSaved, format!("not saved: {error}")));
                false
            }
        }
    }

    /// Takes in the core's answer for a later moment.
    pub(super) fn refresh(&mut self, screen: Result<SessionScreen, HoldfastError>, at: &Instant) {
        match screen {
            Ok(screen) => {
                self.went_by.look(&screen, at);
                self.screen = screen;
            }
            Err(error) => self.said = Some((Tone::NotSaved, error.to_string())),
        }
    }
}
