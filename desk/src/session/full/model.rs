//! The state of the full-screen session: what the core said last, and what the keys go to. Keys come in,
//! wishes go out; nothing here draws, logs or decides.

use holdfast_core::HoldfastError;
use holdfast_core::session::{PieceView, Row, SessionScreen, Tap};

use super::form::{Picker, Typing};
use crate::say;

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
    /// Everything there is to read about the row at hand; the first line shown.
    Whole(u16),
}

/// How something that was said is meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Tone {
    /// It is not saved.
    NotSaved,
    /// Good to know.
    Hint,
}

/// What keys ask for.
#[derive(Debug, PartialEq, Eq)]
pub(super) enum Wish {
    /// Only a new frame.
    Nothing,
    /// A tap that answers the screen it was pressed on: the core does it once.
    Tap(Tap),
    /// A tap chosen from a list: it is meant, however soon it follows on the key that opened the list.
    Chosen(Tap),
    /// A typed line, to be read by the core.
    Line(String),
    /// A row chosen by hand; none follows the day.
    Choose(Option<Row>),
    /// To end, leaving the session as it is.
    Leave,
}

/// The state.
pub(super) struct Model {
    /// The core's last answer.
    pub(super) screen: SessionScreen,
    /// What the keys go to.
    pub(super) mode: Mode,
    /// The line that is on its way: it is opened again when it cannot be done.
    pub(super) sent: Option<Typing>,
    /// What was said last, and what before that.
    pub(super) said: Option<(Tone, String)>,
    pub(super) said_before: Option<(Tone, String)>,
    /// True when the last key was pressed twice and taken once.
    pub(super) twice: bool,
    /// True when the window is too small to show what a key would do.
    pub(super) blind: bool,
}

impl Model {
    /// At the start, with the core's first answer.
    pub(super) fn new(screen: SessionScreen) -> Model {
        Model {
            screen,
            mode: Mode::Day,
            sent: None,
            said: None,
            said_before: None,
            twice: false,
            blind: false,
        }
    }

    /// The row that keys act on.
    pub(super) fn row(&self) -> Option<&Row> {
        self.screen.here.row.as_ref()
    }

    /// The piece at hand.
    pub(super) fn piece(&self) -> Option<&PieceView> {
        let name = self.row()?.piece()?;
        self.screen.pieces.iter().find(|piece| piece.name == name)
    }

    /// Says something good to know.
    pub(super) fn hint(&mut self, text: impl Into<String>) -> Wish {
        self.said = Some((Tone::Hint, text.into()));
        Wish::Nothing
    }

    /// A key came: what was said about the one before is over, unless this one turns out to be the same
    /// press.
    pub(super) fn key_came(&mut self) {
        self.said_before = self.said.take();
        self.twice = false;
        self.sent = None;
    }

    /// Takes in what became of a tap.
    pub(super) fn after(&mut self, done: Result<SessionScreen, HoldfastError>) {
        match done {
            Ok(screen) if screen.ignored => {
                self.screen = screen;
                self.said = self.said_before.take();
                self.twice = true;
            }
            Ok(screen) => {
                let undone = screen.undone.as_ref().map(say::full::undone);
                self.said = undone.map(|undone| (Tone::Hint, undone));
                self.screen = screen;
            }
            Err(error) => self.refused(say::full::not_saved, &error),
        }
    }

    /// Says why something cannot be. What was typed stays, to be put right: nothing of it may fall to
    /// the other keys.
    pub(super) fn refused(&mut self, said: impl Fn(String) -> String, error: &HoldfastError) {
        let why = match error {
            HoldfastError::Invalid { reason, .. } => reason.clone(),
            error => error.to_string(),
        };
        let text = said(why);
        match self.sent.take() {
            Some(mut typing) => {
                typing.wrong = Some(text);
                self.mode = Mode::Typing(typing);
            }
            None => self.said = Some((Tone::NotSaved, text)),
        }
    }

    /// Takes in the core's answer for a later moment, or for another row.
    pub(super) fn refresh(&mut self, screen: Result<SessionScreen, HoldfastError>) {
        match screen {
            Ok(screen) => self.screen = screen,
            Err(error) => self.said = Some((Tone::NotSaved, error.to_string())),
        }
    }
}
