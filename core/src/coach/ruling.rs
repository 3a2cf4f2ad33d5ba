//! The loads a coach's answer decides on: set by set, none of them past the cap.

use super::proposal::{Proposal, ProposedSet};
use crate::error::{Error, Field, Result};
use crate::id::PersonId;
use crate::journal::Profile;
use crate::load::{CAP_PERCENT, Decision, Prepared, Reason};
use crate::mass::{Mass, MassUnit};
use crate::plan::{Builds, Exercise};
use crate::words;

/// A coach's answer to a proposal.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct Answer {
    /// The member.
    pub person: PersonId,
    /// What is lifted, as the proposal has it.
    pub exercise: Exercise,
    /// The scheme's key, as the proposal has it: one movement may have several.
    pub scheme: String,
    /// The answer.
    pub decision: Decision,
    /// With a change: a load a set, or one for the last set that the others follow.
    pub loads: Vec<Mass>,
    /// Words for the athlete; may be empty.
    pub words: String,
}

/// The decided load of every set; none where there is none to decide.
pub(crate) fn decided(
    answer: &Answer,
    proposal: &Proposal,
    profile: &Profile,
    block: &Prepared,
) -> Result<Vec<Option<Mass>>> {
    let unit = profile.unit;
    let builds = block.builds(&proposal.exercise, unit);
    let sets = &proposal.sets;
    let loads: Vec<Option<Mass>> = match (answer.decision, answer.loads.as_slice()) {
        (Decision::Accept, []) => sets.iter().map(|set| set.next).collect(),
        (Decision::Refuse, []) => sets.iter().map(|set| set.last).collect(),
        (Decision::Accept | Decision::Refuse, _) => {
            return Err(Error::invalid(Field::Loads, "only a change says loads"));
        }
        (Decision::Change, [last]) => from_the_last(sets, *last, builds)?,
        (Decision::Change, loads) if loads.len() == sets.len() => {
            loads.iter().copied().map(Some).collect()
        }
        (Decision::Change, _) => {
            let sets = words::count(sets.len() as u64, "set");
            let reason = format!("give one for the last set, or one for each of {sets}");
            return Err(Error::invalid(Field::Loads, reason));
        }
    };
    if answer.decision == Decision::Change {
        // From the last set, the one a coach types.
        for (set, load) in sets.iter().zip(&loads).rev() {
            if let Some(load) = load {
                check(set, *load, builds, unit)?;
            }
        }
    }
    Ok(loads)
}

/// The others follow the last set: the same distance, as near below as plates and cap allow.
fn from_the_last(sets: &[ProposedSet], last: Mass, builds: &Builds) -> Result<Vec<Option<Mass>>> {
    let Some(proposed) = sets.last().and_then(|set| set.next) else {
        return Err(Error::invalid(
            Field::Loads,
            "nothing is proposed for the last set: give one a set",
        ));
    };
    let follow = |set: &ProposedSet| {
        let shifted = set.next? + (last - proposed);
        let capped = set.last.map_or(shifted, |last| shifted.min(last.percent(CAP_PERCENT)));
        builds.at_or_below(capped).or(builds.lightest()).map(|build| build.mass).or(set.last)
    };
    let mut loads: Vec<Option<Mass>> = sets.iter().map(follow).collect();
    if let Some(end) = loads.last_mut() {
        *end = Some(last);
    }
    Ok(loads)
}

fn check(set: &ProposedSet, load: Mass, builds: &Builds, unit: MassUnit) -> Result<()> {
    let text = |load: Mass| words::load_text(load, unit);
    let refuse =
        |reason: String| Err(Error::invalid(Field::Loads, format!("set {}: {reason}", set.set)));
    if let Some(last) = set.last {
        let cap = last.percent(CAP_PERCENT);
        if load > cap {
            let most = builds.at_or_below(cap).map_or(cap, |build| build.mass);
            return refuse(format!(
                "{} is more than a tenth above the last {}. The most for next time is {}; published \
                 guidance is to go up by 2 to 10 % at a time",
                text(load),
                text(last),
                text(most),
            ));
        }
        if load > last && matches!(set.reason, Reason::Flagged { .. }) {
            return refuse(format!(
                "discomfort is flagged, so nothing above the last {} until the flag is cleared",
                text(last)
            ));
        }
    }
    if builds.exactly(load).is_none() {
        let near = [builds.at_or_below(load), builds.above(load)].into_iter().flatten();
        let near: Vec<String> = near.map(|build| text(build.mass)).collect();
        let near = if near.is_empty() { "nothing".into() } else { near.join(" or ") };
        return refuse(format!("this room cannot build {}; nearest is {near}", text(load)));
    }
    Ok(())
}
