//! A piece on screen: what all pieces share, and what is their own.

use serde::Serialize;

use super::{HoldView, IntervalView, NoteView, Row, StrengthView};
use crate::care::{Advice, Place};
use crate::id::RecordId;
use crate::plan::{Because, keyword};

/// A piece on screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct PieceView {
    /// The piece's name.
    pub name: String,
    /// How far it is.
    pub state: PieceState,
    /// The same in a word or two: `1 of 3`, `done`, `later`, `left for today`; none where there is nothing to say.
    pub progress: Option<String>,
    /// Alternatives for its movements.
    pub options: Vec<OptionView>,
    /// Open flags on what is done in it, the most urgent first.
    pub flags: Vec<FlagView>,
    /// Notes on it: the coach's on earlier times first, then those of this session.
    pub notes: Vec<NoteView>,
    /// The row to be at in it: the first that is not logged, otherwise its first. None for a note.
    pub stands_at: Option<Row>,
    /// What is its own.
    pub kind: PieceKindView,
}

keyword! {
    /// How far a piece is.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    PieceState {
        /// Not all of it is logged.
        Todo = "todo",
        /// All of it is logged.
        Done = "done",
        /// Put off.
        Later = "later",
        /// Left for today: it hurts.
        Left = "left",
        /// Nothing to log.
        Note = "note",
    }
}

/// What is a piece's own.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum PieceKindView {
    /// Sets of one movement.
    Strength {
        /// What to draw.
        view: StrengthView,
    },
    /// Movements against the clock.
    Interval {
        /// What to draw.
        view: IntervalView,
    },
    /// A timed stretch.
    Hold {
        /// What to draw.
        view: HoldView,
    },
    /// Words from the coach.
    Note {
        /// The words.
        text: String,
    },
}

/// An option on screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct OptionView {
    /// The movement it stands in for.
    pub movement: String,
    /// Its key.
    pub key: String,
    /// Its name.
    pub name: String,
    /// Why somebody takes it.
    pub because: Because,
    /// The reason in words.
    pub because_text: String,
    /// True when it is taken in this session.
    pub taken: bool,
    /// Why it is suggested today, in words.
    pub suggested: Option<String>,
    /// The records that is read from.
    pub from: Vec<RecordId>,
}

/// An open discomfort flag on screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct FlagView {
    /// The flag, to clear it by.
    pub flag: RecordId,
    /// Where.
    pub place: Place,
    /// How bad, 1 to 10.
    pub severity: u32,
    /// What to do.
    pub advice: Advice,
    /// All of it in one line.
    pub text: String,
}
