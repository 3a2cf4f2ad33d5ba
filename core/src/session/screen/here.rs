//! What is at hand: the row to log, the one key, and the keys beside it.

use serde::{Deserialize, Serialize};

use super::ClockView;
use crate::plan::{MeasuredWhen, keyword};
use crate::session::Tap;

/// Something on a session screen that can be logged.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "row", rename_all = "kebab-case")]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum Row {
    /// A set.
    Set {
        /// The piece's name.
        piece: String,
        /// The set, counted from 1.
        set: u32,
    },
    /// A window.
    Window {
        /// The piece's name.
        piece: String,
        /// The window, counted from 1.
        window: u32,
    },
    /// The measure before or after a hold.
    Measure {
        /// The piece's name.
        piece: String,
        /// Before or after.
        when: MeasuredWhen,
    },
    /// A hold, all its sides.
    Hold {
        /// The piece's name.
        piece: String,
    },
    /// The session's end.
    Finish,
}

impl Row {
    /// The piece it is in; none for the session's end.
    pub fn piece(&self) -> Option<&str> {
        match self {
            Row::Set { piece, .. }
            | Row::Window { piece, .. }
            | Row::Measure { piece, .. }
            | Row::Hold { piece } => Some(piece),
            Row::Finish => None,
        }
    }
}

/// What is at hand.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct Here {
    /// The row; none before the session is begun.
    pub row: Option<Row>,
    /// True when it was chosen by hand: otherwise it is what comes next.
    pub chosen: bool,
    /// True when it is logged.
    pub done: bool,
    /// What it is, in a few words: `Back squat, set 2 of 4`.
    pub title: String,
    /// Where in its piece it is, `set 2 of 4`; none where the title says all.
    pub place: Option<String>,
    /// What it asks for, in one line.
    pub line: String,
    /// The coach's words before this piece; at the session's end also what is not done.
    pub notes: Vec<String>,
    /// The key of the movement that is done here: what options and flags are about. None where nothing
    /// is moved.
    pub movement: Option<String>,
    /// The clock to show with it: its own, or the rest before it.
    pub clock: Option<ClockView>,
    /// The one key.
    pub key: Key,
    /// The keys beside it, the most wanted first.
    pub side_keys: Vec<SideKey>,
    /// What can be typed here; none where nothing can.
    pub form: Option<Form>,
}

keyword! {
    /// How the one key should be drawn.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    KeyKind {
        /// Filled: it writes what it says to the log.
        Saves = "saves",
        /// Outlined: it moves on.
        Moves = "moves",
        /// Sunk: it waits for an answer, or for a moment.
        Waits = "waits",
        /// Outlined, with care above it: somebody hurts.
        Care = "care",
    }
}

keyword! {
    /// What has to be answered before the one key can save.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    Question {
        /// The load that was lifted.
        Load = "load",
        /// The reps done in an open set.
        Reps = "reps",
        /// How many reps were left.
        Reserve = "reserve",
        /// The measure's readings.
        Range = "range",
        /// The session's rating.
        Rpe = "rpe",
        /// What was done otherwise, of something logged already.
        Correction = "correction",
        /// Which day to train.
        Day = "day",
    }
}

/// The one key.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct Key {
    /// How it should be drawn.
    pub kind: KeyKind,
    /// What it says.
    pub words: String,
    /// What happens when it is pressed, or why nothing does.
    pub more: Option<String>,
    /// What it does; none while it waits.
    pub tap: Option<Tap>,
    /// What it waits for; none when it waits for a moment only.
    pub asks: Option<Question>,
}

keyword! {
    /// What a key beside the one key is for.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    SideKeyKind {
        /// It hurts: asks where, how bad, and about emergency signs.
        Hurts = "hurts",
        /// Says that a set which looks like a slip is right.
        Sure = "sure",
        /// Takes back what was saved last.
        Undo = "undo",
        /// Asks for another load, other reps, by hand.
        Other = "other",
        /// Asks for an option of the movement.
        Option = "option",
        /// Asks for a set more, or a movement, that nobody planned.
        Extra = "extra",
        /// Clears a discomfort flag.
        Clear = "clear",
        /// Puts the piece off.
        Later = "later",
        /// A minute more rest.
        Minute = "minute",
        /// Pauses the clock.
        Pause = "pause",
        /// Lets the clock go on.
        Resume = "resume",
        /// 15 s more for the side held.
        Extend = "extend",
        /// Ends this side or window and goes to the next.
        Next = "next",
        /// Stops the clock.
        Stop = "stop",
        /// Starts the clock.
        Begin = "begin",
        /// Asks for the station to start at.
        Station = "station",
        /// Ends the session.
        Finish = "finish",
    }
}

/// A key beside the one key.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct SideKey {
    /// What it is for.
    pub kind: SideKeyKind,
    /// What it says.
    pub words: String,
    /// What it does; none when it asks something first.
    pub tap: Option<Tap>,
}

/// A line to be typed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct Form {
    /// What is asked.
    pub ask: String,
    /// What can be typed.
    pub hint: String,
}
