//! Everything an athlete can tap in a session.

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

use crate::care::{Place, Sign};
use crate::clock::Act;
use crate::id::RecordId;
use crate::instant::Millis;
use crate::journal::{Part, RestAct, Until};
use crate::mass::Mass;
use crate::plan::MeasuredWhen;
use crate::session::{Correction, Row};

/// One tap. What is left out is taken as planned, so that the usual case is one tap with no typing.
/// What one tap says is saved together, or nothing of it is.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "tap", rename_all = "kebab-case")]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum Tap {
    /// Begins the session.
    Begin {
        /// The day's name; today's when left out.
        day: Option<String>,
    },
    /// Begins a session that was trained on an earlier date, to be written afterwards: no clock runs for it.
    /// One of that day that was left open goes on.
    WriteAfterwards {
        /// The date it was trained on.
        date: NaiveDate,
        /// The day's name; the one planned for that date when left out.
        day: Option<String>,
    },
    /// Logs a set, or corrects it when it is logged already.
    LogSet {
        /// The piece's name.
        piece: String,
        /// The set, counted from 1; the next one when left out. Once all are logged, the number after the
        /// last logs one more.
        set: Option<u32>,
        /// The load lifted; when left out what was logged before, otherwise the proposed one.
        load: Option<Mass>,
        /// Good reps; when left out what was logged before, otherwise those asked for. Of an open set
        /// they must be said.
        reps: Option<u32>,
        /// Reps in reserve.
        reserve: Option<u32>,
    },
    /// Says that a set which looks like a slip of the finger is right as it was logged: then it counts.
    Sure {
        /// The set's record.
        lift: RecordId,
    },
    /// Corrects one of the athlete's own sets, of whatever day, whether a session runs or not.
    Correct {
        /// The set's record.
        lift: RecordId,
        /// What is true of it.
        correction: Correction,
    },
    /// Logs a set of a movement that nobody planned, or corrects it.
    LogExtra {
        /// The movement's key or name in the plan, otherwise what the athlete calls it.
        movement: String,
        /// The set, counted from 1; the next one when left out.
        set: Option<u32>,
        /// The load, where there is one.
        load: Option<Mass>,
        /// Good reps: they must be said.
        reps: Option<u32>,
        /// Reps in reserve.
        reserve: Option<u32>,
    },
    /// Ends the rest after the last set, or makes it longer.
    Rest {
        /// What.
        act: RestAct,
    },
    /// Takes an option for a piece, or goes back to the movement.
    TakeOption {
        /// The piece's name.
        piece: String,
        /// The movement's key; a strength piece has one only.
        movement: Option<String>,
        /// The option's key; none to go back.
        option: Option<String>,
    },
    /// Takes another bar of the room for what a strength piece lifts. It stays the next times too, until another
    /// is taken or the plan gives another.
    TakeBar {
        /// The piece's name.
        piece: String,
        /// The bar's name.
        bar: String,
    },
    /// Logs a window, or corrects it.
    LogWindow {
        /// The piece's name.
        piece: String,
        /// The window, counted from 1; the next one when left out.
        window: Option<u32>,
        /// Reps done; when left out what was logged before, otherwise those asked for.
        reps: Option<u32>,
        /// What was to spare; read off the running clock when left out.
        spare: Option<Millis>,
    },
    /// Does something to a piece's clock.
    Clock {
        /// The piece's name.
        piece: String,
        /// What.
        act: Act,
        /// With a begin: the station this athlete starts at, counted from 1; when left out the one
        /// said before in this session, otherwise the first.
        station: Option<u32>,
    },
    /// Logs a hold side by side, as the clock counted it or as given.
    LogHold {
        /// The piece's name.
        piece: String,
        /// The time held, side by side; what the clock counted when empty.
        held: Vec<Millis>,
        /// Why a side was held for less than was asked for, in the athlete's own words.
        said: Option<String>,
    },
    /// Logs a range measure, or corrects it.
    LogRange {
        /// The piece's name.
        piece: String,
        /// Before or after the hold.
        when: MeasuredWhen,
        /// The readings, one a side that was measured.
        readings: Vec<SideReading>,
    },
    /// Flags discomfort in a piece.
    Flag {
        /// The piece's name.
        piece: String,
        /// The movement's key; a piece with one movement needs none.
        movement: Option<String>,
        /// Where.
        place: Place,
        /// How bad, 1 to 10.
        severity: u32,
        /// Emergency signs.
        signs: Vec<Sign>,
    },
    /// Flags discomfort between two sessions, or one that no movement brings on; also days later.
    FlagBetween {
        /// The movement, option or stretch that brings it on, by key or name; none where none does.
        movement: Option<String>,
        /// Where.
        place: Place,
        /// How bad, 1 to 10.
        severity: u32,
        /// Emergency signs.
        signs: Vec<Sign>,
        /// When it was felt; today when left out.
        on: Option<NaiveDate>,
    },
    /// Clears discomfort flags.
    ClearFlags {
        /// The flags.
        flags: Vec<RecordId>,
    },
    /// Writes a note. The coach reads it, unless it is for the athlete alone: then it never leaves the device.
    Note {
        /// What it is about; the session as a whole for its end, what was logged last when left out.
        row: Option<Row>,
        /// The words.
        words: String,
        /// True for the athlete alone.
        private: bool,
    },
    /// Puts a piece off, or leaves it for today.
    PutOff {
        /// The piece's name.
        piece: String,
        /// What of it.
        part: Part,
        /// Until when.
        until: Until,
    },
    /// Takes back what was logged last in this session.
    Undo,
    /// Ends the session, or rates it again.
    Finish {
        /// Session RPE: how hard the whole session was, 0 to 10.
        rpe: Option<u32>,
        /// How long it took; counted from its start when left out.
        minutes: Option<u32>,
    },
}

/// A reading of one side.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct SideReading {
    /// The side, counted from 1, where there are two: left, then right.
    pub side: Option<u32>,
    /// The reading in tenths of the protocol's unit.
    pub tenths: i64,
}
