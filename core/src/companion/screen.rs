//! What an athlete's screen shows: plain records that a phone draws as they are.

use chrono::NaiveDate;
use serde::Serialize;

use super::{FewerReps, RestView};
use crate::care::{Advice, Place};
use crate::clock::{HoldState, IntervalState, WhyShort};
use crate::id::RecordId;
use crate::load::Reason;
use crate::mass::{Mass, MassUnit};
use crate::plan::{Because, MeasuredWhen, Protocol, Technique};

/// The session screen: the whole of it, after every tap.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct SessionScreen {
    /// Whose session.
    pub name: String,
    /// The unit loads are written in.
    pub unit: MassUnit,
    /// The date.
    pub date: NaiveDate,
    /// Where the session stands.
    pub state: SessionState,
    /// One line to head the screen.
    pub heading: String,
    /// The block's name; empty without a plan.
    pub block: String,
    /// The day's name; empty on a day off.
    pub day: String,
    /// The days of the block that can be trained by name.
    pub days: Vec<String>,
    /// The pieces, in order.
    pub pieces: Vec<PieceView>,
    /// What should be read first.
    pub notices: Vec<Notice>,
    /// The number of the entry this screen's tap saved; none when the tap saved nothing.
    pub saved: Option<u64>,
    /// What this screen's tap took back, in words; empty when it took nothing back.
    pub undone: String,
    /// Entries that no leaf holds yet.
    pub unpublished: u64,
    /// The rest that runs since the last set; none when none does.
    pub rest: Option<RestView>,
}

/// Where a session stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
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
pub struct Notice {
    /// How it should be drawn.
    pub kind: NoticeKind,
    /// The words.
    pub text: String,
}

/// A piece on screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum PieceView {
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
        /// The piece's name.
        name: String,
        /// The words.
        text: String,
    },
}

/// An option on screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
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
    /// Why it is suggested today, in words; empty mostly.
    pub suggested: String,
    /// The records that is read from.
    pub from: Vec<RecordId>,
}

/// An open discomfort flag on screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
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

/// A strength piece on screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct StrengthView {
    /// The piece's name.
    pub name: String,
    /// What is lifted: the movement's name, or the option's taken for it.
    pub movement: String,
    /// What the history is kept under.
    pub subject: String,
    /// The bar; empty without one.
    pub bar: String,
    /// What the athlete can lift once now, where their sets say.
    pub able: Option<AbleView>,
    /// Sets before the first work set; none where the bar is near enough, and once a set is done.
    pub warm_up: Vec<WarmUpView>,
    /// The sets.
    pub sets: Vec<SetView>,
    /// The next set to do, counted from 1; none when all are done.
    pub next_set: Option<u32>,
    /// Rest between sets in milliseconds.
    pub rest_ms: i64,
    /// The same in words.
    pub rest_text: String,
    /// Alternatives.
    pub options: Vec<OptionView>,
    /// Open flags on what is lifted.
    pub flags: Vec<FlagView>,
}

/// A set on screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct SetView {
    /// The set, counted from 1.
    pub set: u32,
    /// Reps asked for.
    pub asked: u32,
    /// True when it is taken to as many good reps as possible.
    pub open: bool,
    /// The proposed load; none where it is the athlete's to choose.
    pub load: Option<LoadView>,
    /// Why, as data.
    pub reason: Reason,
    /// Why, in words.
    pub why: String,
    /// The records the load was read from: sets, a flag, a coach's answer.
    pub from: Vec<RecordId>,
    /// The reps to expect of an open set at the proposed load.
    pub expected: Option<ExpectedReps>,
    /// What was done.
    pub done: Option<SetDoneView>,
}

/// What an athlete can lift once now: an estimate, four in five of which hold the truth.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct AbleView {
    /// The lower end, to a tenth of a kilogram.
    pub low: Mass,
    /// As likely below as above.
    pub likely: Mass,
    /// The upper end.
    pub high: Mass,
    /// All of it in one line.
    pub text: String,
    /// Where it is going, in words; empty where two weeks of sets are not there yet.
    pub trend: String,
    /// The records of the sets it is read from, the latest first.
    pub from: Vec<RecordId>,
}

/// The reps to expect of an open set: four in five end within.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct ExpectedReps {
    /// The fewest.
    pub low: u32,
    /// The most.
    pub high: u32,
    /// The same in words.
    pub text: String,
}

/// A load and how to build it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct LoadView {
    /// The load.
    pub mass: Mass,
    /// The load in words.
    pub text: String,
    /// The plates of one side, from the collar of the bar outwards.
    pub per_side: Vec<Mass>,
    /// How to build it, in words; empty where there is nothing to build.
    pub build: String,
    /// What to do to each side of the bar as the set before left it, in words; empty where there is
    /// nothing to build. The builds of a piece are chosen to move the fewest plates.
    pub change: String,
}

/// A warm-up set on screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct WarmUpView {
    /// Reps.
    pub reps: u32,
    /// The load and how to build it.
    pub load: LoadView,
}

/// A set that is done.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct SetDoneView {
    /// The load lifted.
    pub load: Option<Mass>,
    /// The load in words; empty without one.
    pub load_text: String,
    /// Good reps.
    pub reps: u32,
    /// Reps in reserve.
    pub reserve: Option<u32>,
    /// True when at least the reps asked for were done.
    pub made: bool,
    /// What was lifted: the movement's name, or that of the option taken at the time.
    pub movement: String,
    /// What is odd about the load, in words: perhaps a slip of the finger; empty mostly.
    pub doubt: String,
    /// True when two devices say different things about it.
    pub conflict: bool,
}

/// An interval piece on screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct IntervalView {
    /// The piece's name.
    pub name: String,
    /// The length of a window in milliseconds.
    pub window_ms: i64,
    /// The same in words.
    pub window_text: String,
    /// Times through the stations.
    pub rounds: u32,
    /// What should be to spare at the end of a window, in milliseconds.
    pub margin_ms: i64,
    /// The same in words.
    pub margin_text: String,
    /// The windows.
    pub windows: Vec<WindowView>,
    /// The next window to log, counted from 1; none when all are.
    pub next_window: Option<u32>,
    /// Alternatives for each movement.
    pub options: Vec<OptionView>,
    /// Open flags on the movements.
    pub flags: Vec<FlagView>,
    /// The clock, once it was begun.
    pub clock: Option<IntervalState>,
    /// How many stations a round has.
    pub stations: u32,
    /// The station this athlete starts at, counted from 1.
    pub start_station: u32,
    /// Milliseconds of all windows together.
    pub total_ms: i64,
    /// The same in words.
    pub total_text: String,
    /// What the athlete should look at or answer about the clock; empty mostly.
    pub ask: String,
}

/// A window on screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct WindowView {
    /// The window, counted from 1.
    pub window: u32,
    /// The movement's name, or the option's taken for it.
    pub movement: String,
    /// The movement's key, to take an option by or to flag.
    pub key: String,
    /// Reps asked for.
    pub asked: u32,
    /// The load in words; empty without one.
    pub load_text: String,
    /// Reps done.
    pub reps: Option<u32>,
    /// What was to spare, in milliseconds.
    pub spare_ms: Option<i64>,
    /// The same in words; empty where it is not known.
    pub spare_text: String,
    /// True when less was to spare than the plan wants.
    pub tight: bool,
    /// The station of the window, counted from 1.
    pub station: u32,
    /// How many fewer reps leave time to move on: of a window done that left too little, and of one
    /// to come at the same station, at the athlete's latest pace there. None where all fit.
    pub fewer: Option<FewerReps>,
}

/// A hold on screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct HoldView {
    /// The piece's name.
    pub name: String,
    /// The stretch's name.
    pub stretch: String,
    /// The part of the body.
    pub region: String,
    /// How long each side is held, in milliseconds.
    pub hold_ms: i64,
    /// The same in words.
    pub hold_text: String,
    /// How it is held.
    pub technique: Technique,
    /// The sides.
    pub sides: Vec<SideView>,
    /// The range measure, where the plan asks for one.
    pub range: Option<RangeView>,
    /// Open flags on the stretch.
    pub flags: Vec<FlagView>,
    /// The clock, once it was begun.
    pub clock: Option<HoldState>,
    /// Time to get ready before the first side, in milliseconds.
    pub ready_ms: i64,
    /// Time to change over to the next side, in milliseconds.
    pub switch_ms: i64,
    /// What the athlete should look at or answer about the clock; empty mostly.
    pub ask: String,
    /// What is odd about the seconds that are logged, perhaps a slip of the finger; empty where nothing is.
    pub doubt: String,
}

/// A side of a hold on screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct SideView {
    /// The side, counted from 1.
    pub side: u32,
    /// Milliseconds held, once logged.
    pub held_ms: Option<i64>,
    /// The same in words; empty until it is logged.
    pub held_text: String,
    /// Why it was held for less than was asked for, once logged and where that is known.
    pub short: Option<WhyShort>,
    /// The same in words, with what the athlete said; empty where there is nothing to say.
    pub short_text: String,
}

/// A range measure on screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct RangeView {
    /// How it is measured.
    pub protocol: Protocol,
    /// The protocol's name.
    pub name: String,
    /// How many sides are measured.
    pub sides: u32,
    /// The readings of this session.
    pub readings: Vec<ReadingView>,
    /// What the readings say, side by side, in words.
    pub judged: Vec<String>,
}

/// A reading on screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct ReadingView {
    /// Before or after the hold.
    pub when: MeasuredWhen,
    /// The side, where there are two.
    pub side: Option<u32>,
    /// The reading in tenths of the protocol's unit.
    pub tenths: i64,
    /// The reading in words.
    pub text: String,
}
