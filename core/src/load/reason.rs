//! Why a load is what it is, as data: the words are made from it elsewhere.

use chrono::NaiveDate;
use serde::Serialize;

use super::Decision;
use crate::care::Place;
use crate::mass::Mass;

/// Why a set has the load it has.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "rule", rename_all = "kebab-case")]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum Reason {
    /// Nothing was lifted in this scheme yet: no load is invented.
    FirstTime,
    /// The first time, and nobody said how many reps were left in the set before.
    SayReserve {
        /// The load of the set before.
        last: Mass,
        /// Reps done with it.
        reps: u32,
    },
    /// The first time: found from the set before and the reps that were left in it.
    Found {
        /// The load of the set before.
        last: Mass,
        /// Reps done with it.
        reps: u32,
        /// Reps that were left.
        reserve: u32,
        /// Reps the next set should leave.
        leave: u32,
        /// True when the load was kept from going up more than a fourth at once.
        capped: bool,
    },
    /// A percentage of what the athlete can lift once.
    Percent {
        /// The percentage.
        percent: u32,
        /// What the athlete can lift once now, as the loads are worked out from it.
        max: Mass,
        /// The load last time, where a tenth above it is all that is allowed.
        capped: Option<Mass>,
        /// Whole weeks away, where that made it lighter; otherwise 0.
        weeks: u32,
        /// True when `max` is the lower end of the estimate: this scheme was never done before.
        low: bool,
    },
    /// As much as leaves some reps in reserve.
    Reserve {
        /// Reps asked for.
        reps: u32,
        /// Reps that should be left.
        leave: u32,
        /// What the athlete can lift once now, as the loads are worked out from it.
        max: Mass,
        /// The load last time, where a tenth above it is all that is allowed.
        capped: Option<Mass>,
        /// Whole weeks away, where that made it lighter; otherwise 0.
        weeks: u32,
        /// True when `max` is the lower end of the estimate: this scheme was never done before.
        low: bool,
    },
    /// The plan gives the load.
    Fixed {
        /// What it gives.
        planned: Mass,
        /// The load last time, where a tenth above it is all that is allowed.
        capped: Option<Mass>,
        /// True when this bar cannot be loaded to it: the nearest that it can be.
        nearest: bool,
    },
    /// The plan asks for no load.
    Free,
    /// Last time was done as planned: the usual step.
    Step {
        /// The load last time.
        last: Mass,
        /// What it goes up by.
        by: Mass,
        /// True when the cap kept it from going up by the whole step.
        capped: bool,
        /// When last time was.
        on: NaiveDate,
    },
    /// The open set went far enough past its target to earn the larger step.
    Earned {
        /// The load last time.
        last: Mass,
        /// What it goes up by.
        by: Mass,
        /// True when the cap kept it from going up by the whole step.
        capped: bool,
        /// Reps done in the open set.
        reps: u32,
        /// Reps asked for in the open set.
        asked: u32,
        /// When last time was.
        on: NaiveDate,
    },
    /// A set was missed last time: the same load again.
    Missed {
        /// The load last time.
        last: Mass,
        /// The first set missed, counted from 1.
        set: u32,
        /// Reps done in it.
        reps: u32,
        /// Reps asked for in it.
        asked: u32,
        /// When last time was.
        on: NaiveDate,
    },
    /// Missed twice in a row: lighter.
    BackOff {
        /// The load last time.
        last: Mass,
        /// Percent taken off, before rounding down to the kit.
        percent: u32,
        /// When last time was.
        on: NaiveDate,
    },
    /// Weeks away from the movement: lighter.
    EasedIn {
        /// The load last time.
        last: Mass,
        /// Whole weeks since the movement was lifted.
        weeks: u32,
        /// Percent taken off, before rounding down to the kit.
        percent: u32,
        /// When last time was.
        on: NaiveDate,
    },
    /// Not every set was done last time: the same load again.
    Unfinished {
        /// The load last time.
        last: Mass,
        /// Sets done.
        done: u32,
        /// Sets asked for.
        of: u32,
        /// When last time was.
        on: NaiveDate,
    },
    /// A discomfort flag is open: no step up.
    Flagged {
        /// The load last time, where there was one.
        last: Option<Mass>,
        /// Where it was felt.
        place: Place,
        /// How bad, 1 to 10.
        severity: u32,
        /// When it was flagged.
        on: NaiveDate,
    },
    /// The smallest step the plates allow is past the cap, or there are no heavier plates.
    NoLegalStep {
        /// The load last time.
        last: Mass,
        /// The next heavier build, where there is one.
        above: Option<Mass>,
        /// The most that was allowed.
        allowed: Mass,
        /// When last time was.
        on: NaiveDate,
    },
    /// The last load cannot be built in this room: the nearest lighter one.
    NotInThisRoom {
        /// The load last time.
        last: Mass,
        /// When last time was.
        on: NaiveDate,
    },
    /// The coach decided.
    Coach {
        /// How.
        decision: Decision,
        /// The load last time.
        last: Option<Mass>,
        /// The coach's words; may be empty.
        words: String,
    },
}

impl Reason {
    /// True when it asks the athlete for something before there is a load, or for the next one.
    pub fn asks(&self) -> bool {
        matches!(self, Reason::FirstTime | Reason::SayReserve { .. })
    }

    /// True the first time a scheme is done: each set's load is found from the one before.
    pub fn is_first_time(&self) -> bool {
        self.asks() || matches!(self, Reason::Found { .. })
    }

    /// True when the reason lets the load go up.
    pub fn is_progress(&self) -> bool {
        matches!(self, Reason::Step { .. } | Reason::Earned { .. })
    }
}
