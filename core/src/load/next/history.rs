//! What the next loads are worked out from.

use chrono::NaiveDate;

use crate::care::Place;
use crate::id::RecordId;
use crate::load::strength::Strength;
use crate::mass::Mass;
use crate::plan::{Scheme, keyword};

/// One time a scheme was done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Time {
    /// The session.
    pub session: RecordId,
    /// The local date.
    pub on: NaiveDate,
    /// The sets done, in order.
    pub sets: Vec<SetDone>,
}

/// A set that was done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SetDone {
    /// Its record.
    pub record: RecordId,
    /// The set, counted from 1.
    pub set: u32,
    /// What was lifted.
    pub load: Option<Mass>,
    /// Good reps.
    pub reps: u32,
    /// Reps in reserve, where the athlete said.
    pub reserve: Option<u32>,
}

/// A discomfort flag that is open.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OpenFlag {
    /// Its record.
    pub record: RecordId,
    /// Where it was felt.
    pub place: Place,
    /// How bad, 1 to 10.
    pub severity: u32,
    /// When it was flagged.
    pub on: NaiveDate,
    /// True for a flag on this very subject, false for one on its movement or another option.
    pub own: bool,
}

keyword! {
    /// A coach's answer to a proposal.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    Decision {
        /// The proposed loads stand.
        Accept = "accept",
        /// Other loads.
        Change = "change",
        /// Last time's loads again.
        Refuse = "refuse",
    }
}

/// A coach's answer that still counts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ruled {
    /// Its record.
    pub record: RecordId,
    /// The answer.
    pub decision: Decision,
    /// Loads set by set; none where there was none to decide.
    pub loads: Vec<Option<Mass>>,
    /// The coach's words.
    pub words: String,
}

/// What an athlete can lift now.
#[derive(Clone, Debug, PartialEq)]
pub struct Able {
    /// The model's answer.
    pub strength: Strength,
    /// The records of the sets it is read from, the latest first.
    pub from: Vec<RecordId>,
}

/// What the next loads are worked out from.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct History {
    /// The date the loads are for. Without it nobody was away.
    pub date: Option<NaiveDate>,
    /// The times this scheme was done, the latest first; two are enough.
    pub times: Vec<Time>,
    /// When this was last lifted, in whatever scheme.
    pub last_lifted: Option<NaiveDate>,
    /// What the athlete can lift now, where their sets say.
    pub able: Option<Able>,
    /// True when a set said more of their strength than "at least so many".
    pub informed: bool,
    /// The sets of the session at hand, in order: a first time is found from them.
    pub so_far: Vec<SetDone>,
    /// An open flag on the movement.
    pub flag: Option<OpenFlag>,
    /// The coach's answer to the proposal made from the latest time.
    pub ruling: Option<Ruled>,
}

impl Time {
    /// A set of this time.
    pub fn set(&self, set: u32) -> Option<&SetDone> {
        self.sets.iter().find(|done| done.set == set)
    }

    /// The sets that fell short, each with the reps asked for.
    pub(super) fn missed<'a>(
        &'a self,
        scheme: &'a Scheme,
    ) -> impl Iterator<Item = (&'a SetDone, u32)> {
        let asked = |done: &SetDone| scheme.target(done.set).unwrap_or(0);
        self.sets
            .iter()
            .map(move |done| (done, asked(done)))
            .filter(|(done, asked)| done.reps < *asked)
    }

    pub(super) fn any_missed(&self, scheme: &Scheme) -> bool {
        self.missed(scheme).next().is_some()
    }

    pub(super) fn records(&self) -> impl Iterator<Item = RecordId> {
        self.sets.iter().map(|done| done.record)
    }
}

impl History {
    /// The flag on this very subject: with it no load is looked for.
    pub(super) fn own_flag(&self) -> Option<&OpenFlag> {
        self.flag.as_ref().filter(|flag| flag.own)
    }

    /// The latest load of a set: one skipped last time carries on from the time before.
    pub fn last_of(&self, set: u32) -> Option<&SetDone> {
        let of = |time: &'_ Time| time.sets.iter().position(|shown| shown.set == set);
        self.times.iter().find_map(|time| {
            let done = &time.sets[of(time)?];
            done.load.map(|_| done)
        })
    }
}
