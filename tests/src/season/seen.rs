//! What a season leaves to be read: who trained, what was proposed, what was really lifted.

use chrono::NaiveDate;
use holdfast_core::Mass;
use holdfast_core::load::NextLoad;
use holdfast_core::plan::{Builds, LoadRule, Scheme};

/// Lifters that belong together in the table.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Group {
    /// New to it, on a bar with a rich kit.
    Novice,
    /// Some years of it.
    Trained,
    /// Many years of it.
    Strong,
    /// On a bar in pounds.
    Pounds,
    /// On a bar with few plates: steps of 10 kg.
    Holes,
    /// Kettlebells and pairs of dumbbells.
    Bells,
    /// Body mass with load added.
    Added,
    /// Body mass with assistance.
    Assisted,
    /// A percentage of a training max.
    Percent,
    /// Loads that the plan gives.
    Fixed,
}

/// One lifter's season.
pub struct Diary {
    /// The row of the table.
    pub group: Group,
    /// Which of the forty.
    pub name: String,
    /// The rule of the plan.
    pub rule: LoadRule,
    /// Reps set by set.
    pub scheme: Scheme,
    /// What the room builds.
    pub builds: Builds,
    /// Every session in which a set was done or proposed, the earliest first.
    pub sessions: Vec<Session>,
    /// Weeks on end without training: the first Monday and the Monday training goes on.
    pub absences: Vec<(NaiveDate, NaiveDate)>,
    /// Discomfort that was flagged.
    pub pains: Vec<Pain>,
    /// Sets typed wrong.
    pub slips: Vec<Slip>,
    /// After an easy week, the next working proposal: as it was, and as it would have been had the easy
    /// sessions never been logged.
    pub after_easy: Vec<(NaiveDate, Vec<NextLoad>, Vec<NextLoad>)>,
    /// After the repair of a slip, the next proposal: as it was, and as it was for somebody who typed it
    /// right.
    pub after_repair: Vec<(NaiveDate, Vec<NextLoad>, Vec<NextLoad>)>,
    /// The true one-rep max in usual form before the first session and after the last, kilograms; with the
    /// body where it is lifted too.
    pub max: (f64, f64),
}

/// One session.
pub struct Session {
    /// The date.
    pub on: NaiveDate,
    /// The week, counted from 1.
    pub week: u32,
    /// True in an easy week.
    pub easy: bool,
    /// Every proposal of it: before the first set, after each set, after a flag.
    pub moments: Vec<Moment>,
    /// The sets done.
    pub sets: Vec<Lifted>,
}

/// A proposal and what was flagged then.
#[derive(Clone)]
pub struct Moment {
    /// Severities of the open flags on the exercise.
    pub flags: Vec<u32>,
    /// Set by set.
    pub next: Vec<NextLoad>,
}

/// A set that was done.
#[derive(Clone, Copy, Debug)]
pub struct Lifted {
    /// The set, counted from 1.
    pub set: u32,
    /// What was really lifted.
    pub load: Mass,
    /// Reps really done.
    pub reps: u32,
    /// Reps asked for.
    pub asked: u32,
    /// The plan's reps.
    pub first: u32,
    /// Reps in reserve, where the lifter said.
    pub left: Option<u32>,
    /// True where it was typed wrong.
    pub slipped: bool,
}

/// Discomfort that was flagged.
#[derive(Clone, Copy, Debug)]
pub struct Pain {
    /// The day it was flagged.
    pub on: NaiveDate,
    /// 1 to 10.
    pub severity: u32,
    /// The day it was cleared; none where it was open at the end.
    pub cleared: Option<NaiveDate>,
}

/// A set typed wrong.
#[derive(Clone, Copy, Debug)]
pub struct Slip {
    /// The day.
    pub on: NaiveDate,
    /// The day from which it was right, or set aside; none where it never was.
    pub repaired: Option<NaiveDate>,
    /// True where the coach set the set aside.
    pub aside: bool,
}

impl Lifted {
    /// Fewer reps than were asked for, and fewer than the plan's.
    pub fn missed(&self) -> bool {
        self.reps < self.asked.min(self.first)
    }

    /// The plan's reps.
    pub fn made(&self) -> bool {
        self.reps >= self.first
    }
}

impl Session {
    /// A set that was done.
    pub fn set(&self, set: u32) -> Option<&Lifted> {
        self.sets.iter().find(|done| done.set == set)
    }

    /// What was proposed before the first set.
    pub fn first(&self) -> &[NextLoad] {
        self.moments.first().map_or(&[], |moment| &moment.next)
    }
}

impl Diary {
    /// Sessions outside easy weeks with a set done.
    pub fn working(&self) -> impl DoubleEndedIterator<Item = &Session> {
        self.sessions.iter().filter(|session| !session.easy && !session.sets.is_empty())
    }

    /// Natural logarithm of what the true one-rep max grew by: 0.1 is about a tenth.
    pub fn gained(&self) -> f64 {
        (self.max.1 / self.max.0).ln()
    }
}
