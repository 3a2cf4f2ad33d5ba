//! What each kind of entry says.

use catalogue::Language;
use chrono::NaiveDate;
use serde::{Deserialize, Deserializer, Serialize};

use super::EntryId;
use crate::care::{Place, Sign};
use crate::clock::{Mark, WhyShort};
use crate::id::{CrewId, PersonId, RecordId};
use crate::instant::Instant;
use crate::load::Decision;
use crate::mass::{Mass, MassUnit};
use crate::plan::{Because, Exercise, MeasuredWhen, Protocol, Technique, keyword};
use crate::say;

keyword! {
    /// What somebody does in the crew.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    Role {
        Coach = "coach",
        Athlete = "athlete",
    }
}

impl Role {
    /// Its name, for a person.
    pub fn name(self) -> &'static str {
        match self {
            Role::Coach => say::error::role_coach(),
            Role::Athlete => say::error::role_athlete(),
        }
    }
}

keyword! {
    /// What an athlete does to a rest.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    RestAct {
        /// Ends it now.
        End = "end",
        /// Makes it a minute longer.
        Minute = "minute",
    }
}

keyword! {
    /// A part of a piece that can be put off by itself.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    Part {
        /// The sets, the windows or the hold.
        Work = "work",
        /// The measure before a hold.
        Before = "before",
        /// The measure after a hold.
        After = "after",
    }
}

keyword! {
    /// Until when something is put off.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    Until {
        /// Until all else is done.
        Later = "later",
        /// Not in this session any more: it hurts.
        Left = "left",
    }
}

/// Who uses a device.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Profile {
    /// The person.
    pub person: PersonId,
    /// Their name on screen.
    pub name: String,
    /// What they do in the crew.
    pub role: Role,
    /// The unit they read masses in.
    pub unit: MassUnit,
    /// The language they chose to read; none while they leave it to the shell.
    #[serde(default, deserialize_with = "known_language")]
    pub language: Option<Language>,
    /// The crew, once known.
    pub crew: Option<CrewId>,
}

/// A language that a newer app has and this one has not is no reason to lose the person who reads it.
fn known_language<'de, D: Deserializer<'de>>(from: D) -> Result<Option<Language>, D::Error> {
    let code = Option::<String>::deserialize(from)?;
    Ok(code.and_then(|code| Language::ALL.into_iter().find(|known| known.code() == code)))
}

/// A published plan, as the text the coach wrote.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct PlanText {
    /// The block's name.
    pub block: String,
    /// The text.
    pub text: String,
}

/// A session begun. It is pinned to the plan it began with.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Session {
    /// The entry the plan text is in.
    pub plan: EntryId,
    /// The block's name.
    pub block: String,
    /// The day's name.
    pub day: String,
    /// The week of the block.
    pub week: u32,
    /// The date it was trained on.
    pub date: NaiveDate,
    /// True where it was written afterwards: then no clock runs, and it stands at its date.
    #[serde(default)]
    pub afterwards: bool,
    /// When it was begun, by both clocks of the device.
    #[serde(default)]
    pub at: Option<Instant>,
}

/// An option taken instead of a movement for a piece, or the movement again.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct OptionTaken {
    /// The session.
    pub session: RecordId,
    /// The piece's name.
    pub piece: String,
    /// The movement the option stands in for.
    pub movement: String,
    /// The option's key; none to go back to the movement.
    pub option: Option<String>,
    /// The reason the option is tagged with.
    pub because: Option<Because>,
    /// The date it was done on, where that is not the one it was written on.
    #[serde(default)]
    pub on: Option<NaiveDate>,
}

/// A bar taken for an exercise instead of the one the plan gives it, or that one again. It stands, from session
/// to session, as long as the plan gives the same.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct BarTaken {
    /// The session it was taken in.
    pub session: RecordId,
    /// The piece it was taken for.
    pub piece: String,
    /// What is lifted with it.
    pub exercise: Exercise,
    /// The name of the bar that the plan gives.
    pub planned: String,
    /// The name of the bar taken.
    pub bar: String,
    /// The date it was taken on, where that is not the one it was written on.
    #[serde(default)]
    pub on: Option<NaiveDate>,
}

/// A window of an interval piece done.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct WindowDone {
    /// The session.
    pub session: RecordId,
    /// The piece's name.
    pub piece: String,
    /// The window, counted from 1.
    pub window: u32,
    /// What was done: the movement, or an option of it.
    pub exercise: Exercise,
    /// Reps asked for.
    pub asked: u32,
    /// Reps done.
    pub reps: u32,
    /// The load, where there is one.
    pub load: Option<Mass>,
    /// What was to spare at the end of the window.
    pub spare_ms: Option<i64>,
    /// What the plan wanted to spare.
    pub margin_ms: i64,
    /// When it was logged first, by both clocks of the device.
    #[serde(default)]
    pub at: Option<Instant>,
    /// The date it was done on, where that is not the one it was written on.
    #[serde(default)]
    pub on: Option<NaiveDate>,
}

/// A button of a running clock pressed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct ClockMark {
    /// The session.
    pub session: RecordId,
    /// The piece's name.
    pub piece: String,
    /// What was done to the clock, and when by both clocks of the device.
    pub mark: Mark,
    /// The station the athlete starts at, counted from 1, where it was said on beginning.
    #[serde(default)]
    pub station: Option<u32>,
}

/// One side of a stretch held.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Held {
    /// The session.
    pub session: RecordId,
    /// The piece's name.
    pub piece: String,
    /// The stretch's key.
    pub stretch: String,
    /// The part of the body.
    pub region: String,
    /// The side, counted from 1.
    pub side: u32,
    /// How it was held.
    pub technique: Technique,
    /// How long was asked for.
    pub asked_ms: i64,
    /// How long it really was held.
    pub held_ms: i64,
    /// Why it was held for less than was asked for, where that is known.
    #[serde(default)]
    pub short: Option<WhyShort>,
    /// What the athlete said about that.
    #[serde(default)]
    pub said: Option<String>,
    /// When it was logged first, by both clocks of the device.
    #[serde(default)]
    pub at: Option<Instant>,
    /// The date it was done on, where that is not the one it was written on.
    #[serde(default)]
    pub on: Option<NaiveDate>,
}

/// A range of motion measured.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Range {
    /// The session.
    pub session: RecordId,
    /// The piece's name.
    pub piece: String,
    /// How it was measured.
    pub protocol: Protocol,
    /// Before or after the hold.
    pub when: MeasuredWhen,
    /// The side, where the piece has two, counted from 1.
    pub side: Option<u32>,
    /// The reading in tenths of the protocol's unit.
    pub tenths: i64,
    /// The date it was done on, where that is not the one it was written on.
    #[serde(default)]
    pub on: Option<NaiveDate>,
}

/// Discomfort felt: stops the progression of what it concerns until it is cleared.
///
/// What was felt between sessions has no session, no piece and perhaps no movement: readers of the first days
/// keep and carry it, and do not show it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Discomfort {
    /// The session it was felt in; none between sessions.
    #[serde(default)]
    pub session: Option<RecordId>,
    /// The piece's name, in a session.
    #[serde(default)]
    pub piece: Option<String>,
    /// The movement, the option of it, or the stretch; none where no movement brings it on.
    #[serde(default)]
    pub exercise: Option<Exercise>,
    /// Where.
    pub place: Place,
    /// How bad, 1 to 10.
    pub severity: u32,
    /// Signs that call for care at once.
    #[serde(default)]
    pub signs: Vec<Sign>,
    /// The date it was done on, where that is not the one it was written on.
    #[serde(default)]
    pub on: Option<NaiveDate>,
}

/// A discomfort flag cleared by the athlete or the coach.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Cleared {
    /// The flag.
    pub flag: RecordId,
    /// The session it was cleared in, when it was in one.
    #[serde(default)]
    pub session: Option<RecordId>,
}

/// A session ended.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Finish {
    /// The session.
    pub session: RecordId,
    /// Session RPE: how hard the whole session was, 0 to 10 (modified CR-10).
    pub rpe: Option<u32>,
    /// How long it took.
    pub minutes: u32,
    /// The date it was done on, where that is not the one it was written on.
    #[serde(default)]
    pub on: Option<NaiveDate>,
}

/// A coach's answer to a proposal. It counts until the athlete has trained the piece again.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Ruling {
    /// The athlete.
    pub person: PersonId,
    /// What was done: the movement, or an option of it.
    pub exercise: Exercise,
    /// The scheme's key.
    pub scheme: String,
    /// The track, as a set of it names it.
    #[serde(default)]
    pub track: Option<String>,
    /// The session the proposal was made from.
    pub after: RecordId,
    /// The answer.
    pub decision: Decision,
    /// The loads set by set; none where there was none to decide.
    pub loads: Vec<Option<Mass>>,
    /// The coach's words.
    pub words: String,
}

/// The rest after a set changed by the athlete: begun early what comes next, or rested longer.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct RestMark {
    /// The session.
    pub session: RecordId,
    /// The piece of the set it follows.
    pub piece: String,
    /// That set, counted from 1.
    pub set: u32,
    /// What was done.
    pub act: RestAct,
    /// When, by both clocks of the device.
    pub at: Instant,
}

/// Part of a piece put off, or left for the day.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct PutOff {
    /// The session.
    pub session: RecordId,
    /// The piece's name.
    pub piece: String,
    /// What of it.
    pub part: Part,
    /// Whether it comes later or not at all.
    pub until: Until,
    /// When, by both clocks of the device.
    pub at: Instant,
}

/// The record is taken back.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct TakenBack {}
