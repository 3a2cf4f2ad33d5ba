//! Why a load is what it is, as data: the words are made from it elsewhere.

use chrono::NaiveDate;
use serde::Serialize;

use super::{Decision, MaxBasis};
use crate::care::Place;
use crate::mass::Mass;

/// Why a set has the load it has. `last` is the load carried from last time, `on` when that was.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "rule", rename_all = "kebab-case")]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum Reason {
    /// Nothing was lifted on this track yet: no load is invented.
    FirstTime,
    /// The first time, from the load the plan starts with.
    Start {
        /// What the plan says.
        planned: Mass,
        /// True when the room cannot build it: the nearest that it can.
        nearest: bool,
    },
    /// The first time, and nobody said how many reps were left in the set before.
    SayReserve {
        /// The load of the set before.
        last: Mass,
        /// Reps done with it.
        reps: u32,
    },
    /// The first time, and no rep was made with the load chosen: nothing is worked out from that.
    TooHeavy {
        /// The load.
        last: Mass,
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
    /// Other reps than before: from the lower end of the estimate.
    OtherReps {
        /// Reps asked for.
        reps: u32,
        /// Reps that should be left.
        leave: u32,
        /// The lower end of the estimated one-rep max.
        max: Mass,
        /// What was lifted last on this track, where anything was.
        last: Option<Mass>,
        /// When.
        on: Option<NaiveDate>,
    },
    /// Fewer reps than were just made at a load: no less than that.
    JustMade {
        /// The load.
        last: Mass,
        /// Reps done with it.
        reps: u32,
        /// When.
        on: NaiveDate,
    },
    /// A percentage of the training max.
    Percent {
        /// The percentage.
        percent: u32,
        /// The training max.
        max: Mass,
        /// Where it comes from.
        basis: MaxBasis,
    },
    /// As much as leaves some reps in reserve, by the training max.
    Reserve {
        /// Reps asked for.
        reps: u32,
        /// Reps that should be left.
        leave: u32,
        /// The training max.
        max: Mass,
        /// Where it comes from.
        basis: MaxBasis,
    },
    /// The plan gives the load.
    Fixed {
        /// What it gives.
        planned: Mass,
        /// True when the room cannot build it: the nearest that it can.
        nearest: bool,
    },
    /// The plan gives a load past the cap.
    FixedCapped {
        /// What it gives.
        planned: Mass,
        /// The heaviest load made in the last half year.
        last: Mass,
    },
    /// The plan asks for no load.
    Free,
    /// All reps made: the usual step.
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
        /// Reps done in the open set.
        reps: u32,
        /// Reps asked for in the open set.
        asked: u32,
        /// True when the cap kept it from going up by the whole step.
        capped: bool,
        /// When last time was.
        on: NaiveDate,
    },
    /// Back towards what was lifted before weeks away.
    WayBack {
        /// The load last time.
        last: Mass,
        /// What it goes up by.
        by: Mass,
        /// The heaviest load made before the break.
        best: Mass,
        /// When last time was.
        on: NaiveDate,
    },
    /// All reps made, but not long since one was missed: the same once more.
    OnceMore {
        /// The load last time.
        last: Mass,
        /// When last time was.
        on: NaiveDate,
    },
    /// The room builds no load near enough: more reps instead.
    MoreReps {
        /// The load last time.
        last: Mass,
        /// Reps asked for now.
        reps: u32,
        /// The next heavier load of the room, where there is one.
        next: Option<Mass>,
        /// When last time was.
        on: NaiveDate,
    },
    /// Reps climbed far enough for the next load of the room.
    NextBuild {
        /// The load last time.
        last: Mass,
        /// Reps asked for now.
        reps: u32,
        /// When last time was.
        on: NaiveDate,
    },
    /// Neither reps nor load go up any more.
    AtTop {
        /// The load last time.
        last: Mass,
        /// The next heavier load of the room, where there is one.
        next: Option<Mass>,
        /// Reps asked for.
        reps: u32,
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
    /// The plan's reps were made, but not the more that were asked for: the same again.
    Held {
        /// The load last time.
        last: Mass,
        /// The first such set, counted from 1.
        set: u32,
        /// Reps done in it.
        reps: u32,
        /// Reps asked for in it.
        asked: u32,
        /// When last time was.
        on: NaiveDate,
    },
    /// Missed twice running or by much, or in three sessions running: lighter.
    BackOff {
        /// The load last time.
        last: Mass,
        /// When last time was.
        on: NaiveDate,
        /// Sessions running with a miss: 3 where all sets fall.
        sessions: u32,
    },
    /// Two weeks away: nothing goes up.
    HeldBack {
        /// The load last time.
        last: Mass,
        /// Whole weeks away.
        weeks: u32,
        /// When last time was.
        on: NaiveDate,
    },
    /// Weeks away: lighter, or fewer reps where the room has nothing near.
    EasedIn {
        /// The load last time.
        last: Mass,
        /// Whole weeks away.
        weeks: u32,
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
    /// A set of last time is in doubt: the same load again.
    InDoubt {
        /// The load last time.
        last: Mass,
        /// The set, counted from 1.
        set: u32,
        /// When last time was.
        on: NaiveDate,
    },
    /// The coach has set a set of last time aside: the same load again.
    LeftOut {
        /// The load last time.
        last: Mass,
        /// The set, counted from 1.
        set: u32,
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
    /// Severe pain or an emergency sign: no load at all until the flag is cleared.
    Withdrawn {
        /// Where it was felt.
        place: Place,
        /// How bad, 1 to 10.
        severity: u32,
        /// True for an emergency sign.
        sign: bool,
        /// When it was flagged.
        on: NaiveDate,
    },
    /// The first time after a flag was cleared.
    AfterPain {
        /// The load last time.
        last: Mass,
        /// Where it was felt.
        place: Place,
        /// How bad, 1 to 10.
        severity: u32,
        /// When it was flagged.
        on: NaiveDate,
    },
    /// An easy week.
    Easy {
        /// What the load would be.
        of: Mass,
    },
    /// The last load cannot be built in this room: the nearest lighter one, or the athlete's choice.
    NotInThisRoom {
        /// The load last time.
        last: Mass,
        /// When last time was.
        on: NaiveDate,
    },
    /// Beside a coach's answer that goes past it: the most that would have been allowed.
    OverTheCap {
        /// The load last time.
        last: Mass,
        /// The most.
        most: Mass,
    },
    /// Beside what pain or an easy week leaves of it: the coach's answer, which stands.
    Answered {
        /// How.
        decision: Decision,
        /// The load it gives.
        load: Option<Mass>,
        /// The coach's words; may be empty.
        words: String,
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
        matches!(self, Reason::FirstTime | Reason::SayReserve { .. } | Reason::TooHeavy { .. })
    }

    /// True the first time a scheme is done: each set's load is found from the one before.
    pub fn is_first_time(&self) -> bool {
        self.asks() || matches!(self, Reason::Found { .. })
    }

    /// True when the reason lets the load go up.
    pub fn is_progress(&self) -> bool {
        matches!(
            self,
            Reason::Step { .. }
                | Reason::Earned { .. }
                | Reason::WayBack { .. }
                | Reason::NextBuild { .. }
        )
    }

    /// True for what keeps a load down: a coach who goes past it is told, and so is the athlete.
    pub fn is_limit(&self) -> bool {
        matches!(
            self,
            Reason::Missed { .. }
                | Reason::BackOff { .. }
                | Reason::HeldBack { .. }
                | Reason::EasedIn { .. }
                | Reason::FixedCapped { .. }
                | Reason::Unfinished { .. }
                | Reason::InDoubt { .. }
                | Reason::LeftOut { .. }
        )
    }
}
