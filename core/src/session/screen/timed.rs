//! Pieces that a clock times, on screen: windows and holds.

use serde::Serialize;

use super::ClockView;
use crate::clock::WhyShort;
use crate::instant::Millis;
use crate::plan::{Exercise, MeasuredWhen, Protocol, Technique};
use crate::session::FewerReps;

/// What is an interval piece's own.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct IntervalView {
    /// One line to head the piece: `12 windows of 1 min, 3 rounds, aim for 10 s to spare`.
    pub heading: String,
    /// The length of a window.
    pub window: Millis,
    /// Times through the stations.
    pub rounds: u32,
    /// What should be to spare at the end of a window.
    pub margin: Millis,
    /// The windows.
    pub windows: Vec<WindowView>,
    /// The next window to log, counted from 1; none when all are.
    pub next_window: Option<u32>,
    /// The clock, once it was begun.
    pub clock: Option<ClockView>,
    /// The stations of a round, each in words, in order.
    pub stations: Vec<String>,
    /// The station this athlete starts at, counted from 1.
    pub start_station: u32,
    /// The length of all windows together.
    pub total: Millis,
}

/// A window on screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct WindowView {
    /// The window, counted from 1.
    pub window: u32,
    /// The movement's name, or the option's taken for it.
    pub movement: String,
    /// What is done in it, to take an option of or to flag.
    pub exercise: Exercise,
    /// Reps asked for.
    pub asked: u32,
    /// What it asks for, in words: `15 x Bell swing, 16 kg`.
    pub asked_text: String,
    /// Reps done.
    pub reps: Option<u32>,
    /// What was to spare.
    pub spare: Option<Millis>,
    /// True when less was to spare than the plan wants.
    pub rushed: bool,
    /// What was done, in words: `12 done, 8 s to spare (rushed)`; none until it is.
    pub done_text: Option<String>,
    /// The station of the window, counted from 1.
    pub station: u32,
    /// How many fewer reps leave time to change over: of a window done that left too little, and of one
    /// to come at the same station, at the athlete's latest pace there. None where all fit.
    pub fewer: Option<FewerReps>,
    /// What is odd about it, in words: perhaps a slip of the finger.
    pub doubt: Option<String>,
}

/// What is a hold's own.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct HoldView {
    /// One line to head the piece: `Calf stretch at the wall, 2 min each side, static`.
    pub heading: String,
    /// The stretch's name.
    pub stretch: String,
    /// The part of the body.
    pub region: String,
    /// How long each side is held.
    pub hold: Millis,
    /// How it is held.
    pub technique: Technique,
    /// The sides.
    pub sides: Vec<SideView>,
    /// The range measure, where the plan asks for one.
    pub range: Option<RangeView>,
    /// The clock, once it was begun.
    pub clock: Option<ClockView>,
    /// Time to get ready before the first side.
    pub ready: Millis,
    /// Time to change over to the other side.
    pub switch: Millis,
    /// What is odd about the seconds that are logged, perhaps a slip of the finger.
    pub doubt: Option<String>,
}

/// A side of a hold on screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct SideView {
    /// The side, counted from 1: of two, left and then right.
    pub side: u32,
    /// Its name: `left`, `right`; none where there is but one.
    pub name: Option<String>,
    /// The time held, once logged.
    pub held: Option<Millis>,
    /// The same in words, with why it was short: `1 min 5 s (stopped early)`.
    pub held_text: Option<String>,
    /// Why it was held for less than was asked for, once logged and where that is known.
    pub short: Option<WhyShort>,
}

/// A range measure on screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct RangeView {
    /// How it is measured.
    pub protocol: Protocol,
    /// The protocol's name.
    pub name: String,
    /// The unit's symbol.
    pub unit: String,
    /// How many sides are measured.
    pub sides: u32,
    /// The readings of this session.
    pub readings: Vec<ReadingView>,
    /// What the readings say, side by side, in words.
    pub judged: Vec<String>,
}

/// A reading on screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct ReadingView {
    /// Before or after the hold.
    pub when: MeasuredWhen,
    /// The side, where there are two.
    pub side: Option<u32>,
    /// The reading in tenths of the protocol's unit.
    pub tenths: i64,
    /// The reading in words: `before, left: 10.5 cm`.
    pub text: String,
}
