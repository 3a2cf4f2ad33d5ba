//! What an athlete's screen shows: plain records that a phone draws as they are.

mod clock;
mod due;
mod here;
mod note;
mod piece;
mod saved;
mod strength;
mod sum;
mod timed;

use chrono::NaiveDate;
use serde::Serialize;

use crate::mass::MassUnit;

pub use clock::{ClockView, CueView, PhaseSpan, RestView};
pub use here::{Form, Here, Key, KeyKind, Question, Row, SideKey, SideKeyKind};
pub use note::NoteView;
pub use piece::{FlagView, OptionView, PieceKindView, PieceState, PieceView};
pub use saved::SavedLine;
pub use strength::{
    AbleView, BarView, BuildView, ChangeView, ExpectedReps, LoadView, MaxView, PlateView,
    SetDoneView, SetView, StrengthView, WarmUpView,
};
pub use sum::SumView;
pub use timed::{HoldView, IntervalView, RangeView, ReadingView, SideView, WindowView};

/// The session screen: the whole of it, after every tap.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct SessionScreen {
    /// Names this screen in a tap that answers it: the number of the last entry this device wrote.
    pub revision: u64,
    /// Whose session.
    pub name: String,
    /// The unit loads are written in.
    pub unit: MassUnit,
    /// The date.
    pub date: NaiveDate,
    /// Where the session stands.
    pub state: SessionState,
    /// True where the session is written afterwards: no clock and no rest runs for it.
    pub afterwards: bool,
    /// One line to head the screen.
    pub heading: String,
    /// The block's name; none without a plan.
    pub block: Option<String>,
    /// The day's name; none on a day off.
    pub day: Option<String>,
    /// The days of the block that can be trained by name.
    pub days: Vec<String>,
    /// What is at hand: the row that comes next, or the one chosen, with its key.
    pub here: Here,
    /// Every row that can be logged, in order.
    pub rows: Vec<Row>,
    /// The pieces, in order.
    pub pieces: Vec<PieceView>,
    /// What each piece came to, then what is next: at the session's end and once it is over, otherwise empty.
    pub came_to: Vec<SumView>,
    /// What should be read first.
    pub notices: Vec<Notice>,
    /// Notes on the session as a whole, and the coach's on earlier ones that are still to be read.
    pub notes: Vec<NoteView>,
    /// Every open discomfort flag, the most urgent first.
    pub flags: Vec<FlagView>,
    /// The number of the entry this screen's tap saved; none when the tap saved nothing.
    pub saved: Option<u64>,
    /// What was saved last and undo would take back, in words; with nothing left to take back that the
    /// session was begun. None before that.
    pub saved_text: Option<String>,
    /// The same as a phone says it, `Saved: Squat set 2, 60 kg × 6`, and in a word or two where large letters leave no room.
    pub saved_line: Option<SavedLine>,
    /// What is odd about that, perhaps a slip of the finger, in words.
    pub doubt: Option<String>,
    /// What this screen's tap took back, in words.
    pub undone: Option<String>,
    /// True when this screen's tap was not done: it came again at once, or answered an older screen.
    pub ignored: bool,
    /// Entries that no leaf holds yet.
    pub unpublished: u64,
    /// The same in words; none where all is published.
    pub unpublished_text: Option<String>,
    /// The rest that runs since the last set; none when none does.
    pub rest: Option<RestView>,
    /// The cues ahead of whichever clock runs, soonest first.
    pub cues: Vec<CueView>,
}

/// Where a session stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum SessionState {
    /// No plan has arrived.
    NoPlan,
    /// Nothing is planned for this date.
    DayOff,
    /// Planned and not begun.
    Ready,
    /// Begun.
    Running,
    /// Ended on this date.
    Finished,
}

/// How a notice should be drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum NoticeKind {
    /// Care comes first.
    Care,
    /// Something to put right.
    Warning,
    /// Good to know.
    Info,
}

/// A sentence above the pieces.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct Notice {
    /// How it should be drawn.
    pub kind: NoticeKind,
    /// The words.
    pub text: String,
}
