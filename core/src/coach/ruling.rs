//! The loads a coach's answer decides on, set by set; what they go past is said before they are sent.

use super::proposal::{Proposal, ProposedSet};
use crate::error::{Error, Field, Result};
use crate::id::PersonId;
use crate::journal::Profile;
use crate::load::{Decision, Prepared, Reason};
use crate::mass::{Mass, MassUnit};
use crate::plan::{Build, Builds, Exercise};
use crate::say;
use crate::words;

/// A coach's answer to a proposal.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct Answer {
    /// The member.
    pub person: PersonId,
    /// What is lifted, as the proposal has it.
    pub exercise: Exercise,
    /// The track, as the proposal has it: one movement may have several.
    pub track: String,
    /// The answer.
    pub decision: Decision,
    /// With a change: a load a set, or one for the last set that the others follow.
    pub loads: Vec<Mass>,
    /// Words for the athlete; may be empty.
    pub words: String,
    /// True to send loads that go past the cap, a miss or weeks away; without it that is an error that
    /// names them.
    #[cfg_attr(feature = "ffi", uniffi(default = false))]
    pub anyway: bool,
}

/// The decided load of every set; none where there is none to decide.
pub(crate) fn decided(
    answer: &Answer,
    proposal: &Proposal,
    profile: &Profile,
    block: &Prepared,
) -> Result<Vec<Option<Mass>>> {
    let unit = profile.unit;
    let builds = match block.strength(&proposal.piece) {
        Some(strength) => {
            block.builds_for(strength, &proposal.exercise, unit, proposal.bar.as_deref())
        }
        None => block.builds(&proposal.exercise, unit),
    };
    let sets = &proposal.sets;
    let loads: Vec<Option<Mass>> = match (answer.decision, answer.loads.as_slice()) {
        (Decision::Accept, []) => sets.iter().map(|set| set.next).collect(),
        (Decision::Refuse, []) => sets.iter().map(|set| set.last).collect(),
        (Decision::Accept | Decision::Refuse, _) => {
            return Err(Error::invalid(Field::Loads, say::coach::loads_only_with_change()));
        }
        (Decision::Change, [last]) => from_the_last(sets, *last, builds)?,
        (Decision::Change, loads) if loads.len() == sets.len() => {
            loads.iter().copied().map(Some).collect()
        }
        (Decision::Change, _) => {
            return Err(Error::invalid(Field::Loads, say::coach::one_load_or_each(sets.len())));
        }
    };
    if answer.decision == Decision::Change {
        // From the last set, the one a coach types.
        for (set, load) in sets.iter().zip(&loads).rev() {
            if let Some(load) = load {
                check(set, *load, builds, unit, answer.anyway)?;
            }
        }
    }
    Ok(loads)
}

/// The others follow the last set: the same distance, as near below as the room builds.
fn from_the_last(sets: &[ProposedSet], last: Mass, builds: &Builds) -> Result<Vec<Option<Mass>>> {
    let Some(proposed) = sets.last().and_then(|set| set.next) else {
        return Err(Error::invalid(Field::Loads, say::coach::nothing_for_the_last()));
    };
    let follow = |set: &ProposedSet| {
        let shifted = set.next? + (last - proposed);
        builds.at_or_below(shifted).or(builds.lightest()).map(|build| build.mass).or(set.last)
    };
    let mut loads: Vec<Option<Mass>> = sets.iter().map(follow).collect();
    if let Some(end) = loads.last_mut() {
        *end = Some(last);
    }
    Ok(loads)
}

fn check(
    set: &ProposedSet,
    load: Mass,
    builds: &Builds,
    unit: MassUnit,
    anyway: bool,
) -> Result<()> {
    let text = |load: Mass| words::load_text(load, unit);
    let refuse = |reason: String| Err(Error::invalid(Field::Loads, reason));
    // What hurts limits a coach's answer too.
    let care = matches!(set.reason, Reason::Flagged { .. } | Reason::Withdrawn { .. });
    if let Some(last) = set.last.filter(|last| care && load > *last) {
        return refuse(say::coach::nothing_above_while_flagged(set.set, text(last)));
    }
    if let (Some(last), Some(most)) = (set.last, set.most.filter(|most| load > *most && !anyway)) {
        let most = builds.at_or_below(most).map_or(most, |build| build.mass);
        let (load, last, most) = (text(load), text(last), text(most));
        return refuse(say::coach::past_the_cap(set.set, load, last, most));
    }
    if let Some(next) = set.next.filter(|next| load > *next && set.reason.is_limit() && !anyway) {
        let why = words::why(&set.reason, set.next, unit);
        return refuse(say::coach::past_a_limit(set.set, text(load), text(next), why));
    }
    if builds.exactly(load).is_none() {
        let near = |build: Build| text(build.mass);
        let (below, above) = (builds.at_or_below(load), builds.above(load));
        let load = text(load);
        return refuse(match (below.map(near), above.map(near)) {
            (Some(below), Some(above)) => {
                say::coach::cannot_build_between(set.set, load, below, above)
            }
            (Some(near), None) | (None, Some(near)) => {
                say::coach::cannot_build_nearest(set.set, load, near)
            }
            (None, None) => say::coach::cannot_build(set.set, load),
        });
    }
    Ok(())
}
