//! What is recorded of a set, and of what somebody can lift once.

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

use crate::id::{PersonId, RecordId};
use crate::instant::Instant;
use crate::load::ProposedSet;
use crate::mass::Mass;
use crate::plan::{Exercise, Scheme};

/// A set done.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Lift {
    /// The session.
    pub session: RecordId,
    /// The piece's name.
    pub piece: String,
    /// The track's name where the plan gives one; otherwise the piece's name is the track.
    #[serde(default)]
    pub track: Option<String>,
    /// What was lifted: what the history is kept under.
    pub exercise: Exercise,
    /// The whole scheme, so that an entry can be understood without its plan.
    pub scheme: Scheme,
    /// True in an easy week: outside progression.
    #[serde(default)]
    pub easy: bool,
    /// What was proposed for every set of the piece, whether it is done or not.
    #[serde(default)]
    pub proposed: Vec<ProposedSet>,
    /// The training max that was worked out from, where the rule has one.
    #[serde(default)]
    pub max: Option<Mass>,
    /// The set, counted from 1.
    pub set: u32,
    /// The load that was proposed.
    pub planned: Option<Mass>,
    /// The load lifted.
    pub load: Option<Mass>,
    /// Good reps.
    pub reps: u32,
    /// Reps in reserve, where the athlete said.
    pub reserve: Option<u32>,
    /// True when the athlete gave the reps, false when a key said "as planned"; entries of earlier versions
    /// don't say.
    #[serde(default)]
    pub counted: Option<bool>,
    /// True while it looks like a slip of the finger and the athlete has not said that it is none: then
    /// nothing is proposed from it.
    #[serde(default)]
    pub doubt: bool,
    /// The name of the bar it was lifted with; none where it was none, and in entries of earlier versions.
    #[serde(default)]
    pub bar: Option<String>,
    /// The plates of a side that the screen named for it, from the inside outwards: what is on the bar
    /// afterwards. None where nothing was named.
    #[serde(default)]
    pub side: Option<Vec<Mass>>,
    /// When it was logged first, by both clocks of the device: rest is counted from it.
    #[serde(default)]
    pub at: Option<Instant>,
    /// The date it was done on, where that is not the one it was written on.
    #[serde(default)]
    pub on: Option<NaiveDate>,
}

impl Lift {
    /// The name of the track it is kept under.
    pub fn track(&self) -> &str {
        self.track.as_deref().unwrap_or(&self.piece)
    }

    /// True for a set of a movement that nobody planned: its scheme asks for no set.
    pub fn is_unplanned(&self) -> bool {
        self.scheme.reps.is_empty()
    }

    /// True for a set over those that were asked for, and for every set of a movement that nobody planned. An easy
    /// week asks for fewer than the scheme has.
    pub fn is_extra(&self) -> bool {
        let proposed = match self.proposed.len() {
            // An older app wrote none.
            0 => self.scheme.sets(),
            sets => self.scheme.sets().min(u32::try_from(sets).unwrap_or(u32::MAX)),
        };
        self.set > proposed
    }

    /// Reps asked for; of a set that was not asked for none, so that it cannot be missed.
    pub fn target(&self) -> u32 {
        if self.is_extra() {
            return 0;
        }
        let planned = || self.scheme.target(self.set).unwrap_or(0);
        self.was_proposed().map_or_else(planned, |proposed| proposed.reps)
    }

    /// True when it was to be taken to as many good reps as possible.
    pub fn is_open(&self) -> bool {
        if self.is_extra() {
            return false;
        }
        let planned = || self.scheme.is_open(self.set);
        self.was_proposed().map_or_else(planned, |proposed| proposed.open)
    }

    /// What was proposed for it, where the entry says.
    pub(crate) fn was_proposed(&self) -> Option<&ProposedSet> {
        self.proposed.get(self.set.checked_sub(1)? as usize)
    }

    /// True where it is in doubt once it is logged after `before`. Whoever says the same load and reps once more
    /// is sure of them; a word on the reps left alone says nothing about them.
    pub(crate) fn is_doubted(&self, before: &Lift, said_again: bool, is_slip: bool) -> bool {
        if self.load == before.load && self.reps == before.reps {
            before.doubt && !said_again
        } else {
            is_slip
        }
    }

    /// True when at least the reps asked for were done.
    pub fn made(&self) -> bool {
        self.reps >= self.target()
    }
}

/// A set that the coach leaves out of what is proposed: it stays as the athlete logged it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct SetAside {
    /// The set.
    pub lift: RecordId,
    /// False where it counts again.
    pub aside: bool,
}

/// What somebody can lift once: a single taken as a test, or what the coach sets.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Max {
    /// The athlete.
    pub person: PersonId,
    /// What was lifted.
    pub exercise: Exercise,
    /// The load.
    pub load: Mass,
    /// True for a single that was lifted, false for a training max that the coach sets.
    pub tested: bool,
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixtures;

    /// Whatever was proposed and done: a set that was not asked for is not missed, nor open, and one that was asked
    /// for is missed with fewer reps.
    #[test]
    fn what_was_not_asked_for_cannot_be_missed() {
        let scheme = Scheme { reps: vec![8, 6, 5], open: true };
        for (proposed, set, reps) in
            (0..=3).flat_map(|p| (1..6).flat_map(move |s| (0..9).map(move |r| (p, s, r))))
        {
            let asked = ProposedSet { load: None, reps: 4, open: false };
            let of = fixtures::lift(scheme.clone(), Mass::kg(50), reps);
            let of = Lift { set, proposed: vec![asked; proposed], ..of };
            let sets = if proposed == 0 { 3 } else { proposed as u32 };
            let of_scheme = scheme.target(set).unwrap_or(0);
            let target = if proposed == 0 { of_scheme } else { 4 };
            let over = set > sets;
            assert_eq!(of.is_extra(), over, "{proposed} {set}");
            assert_eq!(of.target(), if over { 0 } else { target }, "{proposed} {set}");
            assert_eq!(of.made(), over || reps >= target, "{proposed} {set} {reps}");
            assert_eq!(of.is_open(), proposed == 0 && set == 3);
        }
    }
}
