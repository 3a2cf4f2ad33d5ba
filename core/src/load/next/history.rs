//! What the next loads are worked out from.

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

use crate::care::{Place, STOP_FROM};
use crate::id::RecordId;
use crate::load::strength::Strength;
use crate::mass::Mass;
use crate::plan::{Scheme, keyword};

/// One session of a track.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Time {
    /// The session.
    pub session: RecordId,
    /// The local date.
    pub on: NaiveDate,
    /// When its last set was logged, in logical time: says what came before a flag was cleared.
    pub placed: i64,
    /// What was asked for.
    pub scheme: Scheme,
    /// True in an easy week: outside progression.
    pub easy: bool,
    /// What was proposed, set by set, whether it was done or not.
    pub proposed: Vec<ProposedSet>,
    /// The training max that the proposal was worked out from, where the rule has one.
    pub max: Option<Mass>,
    /// The sets done, in order.
    pub sets: Vec<SetDone>,
}

/// What was proposed for a set.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct ProposedSet {
    /// The load; none where it was the athlete's to choose.
    pub load: Option<Mass>,
    /// Reps asked for.
    pub reps: u32,
    /// True when it was to be taken to as many good reps as possible.
    #[serde(default)]
    pub open: bool,
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
    /// False while it is in doubt, and once the coach has set it aside.
    pub counts: bool,
    /// True once the coach has set it aside.
    pub aside: bool,
    /// The name of the bar it was lifted with; none where it was none, or is not known.
    pub bar: Option<String>,
}

/// What became of a set of a session.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Did {
    /// At least the reps asked for.
    Made,
    /// The plan's reps, but not the more that were asked for.
    Held,
    /// Fewer.
    Missed,
    /// Skipped, in doubt or set aside.
    Out,
    /// The session asked for no such set.
    NotAsked,
}

/// A discomfort flag that concerns an exercise.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Flag {
    /// Its record.
    pub record: RecordId,
    /// Where it was felt.
    pub place: Place,
    /// How bad, 1 to 10.
    pub severity: u32,
    /// True where it has an emergency sign.
    pub sign: bool,
    /// When it was flagged.
    pub on: NaiveDate,
    /// True for a flag on this very exercise, and for severe pain of no movement in a place that it loads; false for
    /// one on another that loads the same place, and for severe pain anywhere else.
    pub own: bool,
    /// When it was cleared, in logical time; none while it is open.
    pub cleared: Option<i64>,
}

impl Flag {
    /// True where the exercise itself comes back after it: pain of its own, or an emergency sign, whatever brought it
    /// on.
    pub(super) fn takes(&self) -> bool {
        self.own || self.sign
    }

    /// True for pain from which the movement itself stops.
    pub(super) fn is_severe(&self) -> bool {
        self.severity >= STOP_FROM || self.sign
    }
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

/// A coach's answer, in force until the track is trained again.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ruled {
    /// Its record.
    pub record: RecordId,
    /// The session it follows.
    pub after: RecordId,
    /// The local date it was given on.
    pub on: NaiveDate,
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
    /// What could be lifted once at least, by what was made lately; zero where there was nothing.
    pub made: Mass,
    /// The records of the sets it is read from, the latest first.
    pub from: Vec<RecordId>,
}

/// A one-rep max that was tested, or set by the coach.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KnownMax {
    /// Its record.
    pub record: RecordId,
    /// The load.
    pub load: Mass,
    /// When, in logical time.
    pub placed: i64,
    /// The local date.
    pub on: NaiveDate,
    /// True for a single that was lifted, false for what the coach set.
    pub tested: bool,
}

/// What the next loads are worked out from.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct History {
    /// The date the loads are for. Without it nobody was away.
    pub date: Option<NaiveDate>,
    /// The sessions of this track, the earliest first.
    pub times: Vec<Time>,
    /// Every date the exercise was logged on, on whatever track, the earliest first.
    pub days: Vec<NaiveDate>,
    /// The plan's first loads, one for each set; empty where they are found by feel.
    pub start: Vec<Mass>,
    /// What the athlete can lift now, where their sets say.
    pub able: Option<Able>,
    /// The latest one-rep max that was tested or set.
    pub max: Option<KnownMax>,
    /// True when a set said more of their strength than "at least so many".
    pub informed: bool,
    /// The sets of the session at hand, in order: a first time is found from them.
    pub so_far: Vec<SetDone>,
    /// Flags that concern the exercise, open and cleared, the earliest first.
    pub flags: Vec<Flag>,
    /// The coach's latest answer on this track.
    pub ruling: Option<Ruled>,
}

impl Time {
    /// A set of this time that counts.
    pub fn set(&self, set: u32) -> Option<&SetDone> {
        self.sets.iter().find(|done| done.set == set && done.counts && done.load.is_some())
    }

    /// True when a set of it counts.
    pub(super) fn counts(&self) -> bool {
        self.sets.iter().any(|done| done.counts && done.load.is_some())
    }

    /// Reps that the plan asks for first.
    pub(super) fn first_reps(&self, set: u32) -> u32 {
        self.scheme.target(set).unwrap_or(0)
    }

    /// Reps that were asked for.
    pub fn asked(&self, set: u32) -> u32 {
        self.proposal(set).map_or(self.first_reps(set), |proposed| proposed.reps)
    }

    pub(super) fn proposal(&self, set: u32) -> Option<&ProposedSet> {
        self.proposed.get(set.checked_sub(1)? as usize)
    }

    pub(super) fn did(&self, set: u32) -> Did {
        if set > self.scheme.sets() {
            return Did::NotAsked;
        }
        let Some(done) = self.set(set) else { return Did::Out };
        if done.reps >= self.asked(set) {
            Did::Made
        } else if done.reps < self.first_reps(set) {
            Did::Missed
        } else {
            Did::Held
        }
    }

    /// The sets asked for, counted from 1.
    pub(super) fn asked_sets(&self) -> std::ops::RangeInclusive<u32> {
        1..=self.scheme.sets()
    }

    pub(super) fn all_made(&self) -> bool {
        self.asked_sets().all(|set| self.did(set) == Did::Made)
    }

    pub(super) fn any_missed(&self) -> bool {
        self.asked_sets().any(|set| self.did(set) == Did::Missed)
    }

    pub(super) fn records(&self) -> impl Iterator<Item = RecordId> {
        self.sets.iter().map(|done| done.record)
    }
}

impl History {
    /// The sessions of the track that count for progression, the earliest first.
    pub fn working(&self) -> impl DoubleEndedIterator<Item = &Time> {
        self.times.iter().filter(|time| !time.easy && time.counts())
    }

    /// The latest of them.
    pub fn last(&self) -> Option<&Time> {
        self.working().next_back()
    }

    /// The latest open flag, one on this very exercise before others.
    pub(super) fn open_flag(&self) -> Option<&Flag> {
        let open = || self.flags.iter().rev().filter(|flag| flag.cleared.is_none());
        open().find(|flag| flag.own).or_else(|| open().next())
    }
}

/// True when loads carry over from one scheme to the other: sets added, removed or opened keep theirs,
/// other reps do not.
pub(super) fn same_reps(one: &Scheme, other: &Scheme) -> bool {
    one.reps.iter().zip(&other.reps).all(|(one, other)| one == other)
}
