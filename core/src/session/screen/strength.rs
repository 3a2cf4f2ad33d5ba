//! A strength piece on screen.

use serde::Serialize;

use crate::id::RecordId;
use crate::instant::Millis;
use crate::load::{Colour, Reason};
use crate::mass::Mass;
use crate::plan::Exercise;

/// What is a strength piece's own.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct StrengthView {
    /// What is lifted: the movement's name, or the option's taken for it.
    pub movement: String,
    /// What the history is kept under.
    pub exercise: Exercise,
    /// The bar; none for what needs none.
    pub bar: Option<String>,
    /// The bars of the room to choose from; none where there is one alone, and for what needs none.
    pub bars: Vec<BarView>,
    /// One line to head the piece: `Back squat on the long bar, rest 2 min`.
    pub heading: String,
    /// The estimated one-rep max, or how to get one; none where nothing of the piece could say.
    pub able: Option<AbleView>,
    /// Sets before the first work set; none where the bar is near enough, where no load is asked for, and once a
    /// set is done. The first time of a lift they are found by feel.
    pub warm_up: Vec<WarmUpView>,
    /// The sets.
    pub sets: Vec<SetView>,
    /// The next set to do, counted from 1; none when all are done.
    pub next_set: Option<u32>,
    /// Rest between sets.
    pub rest: Millis,
    /// The same in words.
    pub rest_text: String,
}

/// A bar to choose.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct BarView {
    /// Its name.
    pub name: String,
    /// Its name and what it weighs empty: `short bar, 15 kg empty`.
    pub text: String,
    /// True for the one that the loads are built on.
    pub taken: bool,
}

/// A set on screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct SetView {
    /// The set, counted from 1.
    pub set: u32,
    /// True for one that nobody planned: it is shown once it is done.
    pub extra: bool,
    /// Reps asked for.
    pub asked: u32,
    /// True when it is taken to as many good reps as possible.
    pub open: bool,
    /// The reps asked for in words: `6`, `5 or more`.
    pub reps_text: String,
    /// The proposed load; none where it is the athlete's to choose.
    pub load: Option<LoadView>,
    /// The load in a few words, also where there is none: `60 kg`, `you choose`, `no load`.
    pub load_text: String,
    /// What it asks for, in a few words: `60 kg x 6`, `60 kg x 5 or more`; without a load the reps alone.
    pub asked_text: String,
    /// Why, as data.
    pub reason: Reason,
    /// Why, in words; none where nothing is left to explain.
    pub why: Option<String>,
    /// What else would have kept it down, in one line; none where nothing would.
    pub others: Option<String>,
    /// The records the load was read from: sets, a flag, a coach's answer.
    pub from: Vec<RecordId>,
    /// The reps to expect of an open set at the proposed load.
    pub expected: Option<ExpectedReps>,
    /// What was done.
    pub done: Option<SetDoneView>,
}

/// What is known of somebody's one-rep max.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct AbleView {
    /// The estimate; none where too little is known to give one.
    pub max: Option<MaxView>,
    /// The estimate in one line, or what to do to see one.
    pub text: String,
    /// Where it is going, in words; none where two weeks of sets are not there yet.
    pub trend: Option<String>,
    /// The records of the sets it is read from, the latest first.
    pub from: Vec<RecordId>,
}

/// An estimated one-rep max: four in five such estimates hold the truth. To a tenth of a kilogram.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct MaxView {
    /// The lower end.
    pub low: Mass,
    /// As likely below as above.
    pub likely: Mass,
    /// The upper end.
    pub high: Mass,
}

/// The reps to expect of an open set: four in five end within.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
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
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct LoadView {
    /// The load.
    pub mass: Mass,
    /// The load in words.
    pub text: String,
    /// Its number alone, in the reader's unit, to be drawn large.
    pub number: String,
    /// The unit of that number.
    pub unit: String,
    /// The plates of one side; none where there is nothing to build.
    pub build: Option<BuildView>,
    /// What to do to each side of the bar as the set before left it; none where nobody knows what is on
    /// it, and where there is nothing to build. The builds of a piece are chosen to move the fewest
    /// plates.
    pub change: Option<ChangeView>,
    /// The next lighter load that can be built.
    pub lighter: Option<Mass>,
    /// The next heavier load that can be built.
    pub heavier: Option<Mass>,
}

/// The plates of one side of a bar.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct BuildView {
    /// From the middle of the bar outwards.
    pub plates: Vec<PlateView>,
    /// The same in words: `20 + 5 kg a side`, `empty bar`.
    pub text: String,
    /// The plates alone: `20 + 5`; none for an empty bar.
    pub short: Option<String>,
    /// One side of the bar as it is read aloud.
    pub spoken: String,
}

impl BuildView {
    /// The plates' masses, from the middle of the bar outwards.
    pub(crate) fn side(&self) -> Vec<Mass> {
        self.plates.iter().map(|plate| plate.mass).collect()
    }
}

/// A plate to draw.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct PlateView {
    /// Its mass.
    pub mass: Mass,
    /// The number printed on it.
    pub number: String,
    /// Its colour by the federations' rules; none where they give none.
    pub colour: Option<Colour>,
    /// Its diameter in mm: 450 from 10 kg up, as the federations have it; below that common sizes, no
    /// source.
    pub diameter_mm: u32,
    /// True when it is put on for this load.
    pub put_on: bool,
}

/// What is done to each side of a bar: first what comes off, then what goes on.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct ChangeView {
    /// Plates that come off, the outermost first.
    pub off: Vec<PlateView>,
    /// Those in words, without the verb: `2.5 kg`; none where nothing comes off.
    pub off_text: Option<String>,
    /// Plates that then go on, in this order.
    pub on: Vec<PlateView>,
    /// Those in words, without the verb; none where nothing goes on.
    pub on_text: Option<String>,
    /// All of it in one line: `take off 2.5 kg, put on 20 + 5 kg`, `nothing to change`.
    pub text: String,
}

/// A warm-up set on screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct WarmUpView {
    /// Reps.
    pub reps: u32,
    /// The load and how to build it; none where it is found by feel.
    pub load: Option<LoadView>,
    /// All of it in a few words: `20 kg x 10 (empty bar)`, `light x 5`.
    pub text: String,
}

/// A set that is done.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct SetDoneView {
    /// Its record.
    pub lift: RecordId,
    /// The load lifted.
    pub load: Option<Mass>,
    /// The load in words.
    pub load_text: Option<String>,
    /// Good reps.
    pub reps: u32,
    /// Reps in reserve.
    pub reserve: Option<u32>,
    /// True when at least the reps asked for were done.
    pub made: bool,
    /// What was lifted: the movement's name, or that of the option taken at the time.
    pub movement: String,
    /// All of it in a few words: `60 kg x 5, 2 left (short)`.
    pub text: String,
    /// What is odd about it, in words: perhaps a slip of the finger.
    pub doubt: Option<String>,
    /// True when two devices say different things about it.
    pub conflict: bool,
}
