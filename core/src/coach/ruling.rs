//! The loads a coach's answer decides on, set by set; what they go past is said before they are sent.

use super::proposal::{Proposal, ProposedSet};
use crate::error::{Error, Field, Result};
use crate::id::PersonId;
use crate::journal::Profile;
use crate::load::{Decision, Prepared, Reason};
use crate::mass::{Mass, MassUnit};
use crate::plan::{Build, Builds, Exercise, Lifted};
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
        let lifted = block.lifted(&proposal.exercise);
        // From the last set, the one a coach types.
        for (set, load) in sets.iter().zip(&loads).rev() {
            if let Some(load) = load {
                check(set, *load, lifted, builds, (unit, answer.anyway))?;
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
    lifted: Option<Lifted>,
    builds: &Builds,
    (unit, anyway): (MassUnit, bool),
) -> Result<()> {
    let text = |load: Mass| words::load_text(load, unit);
    let refuse = |reason: String| Err(Error::invalid(Field::Loads, reason));
    // What no word of a coach changes comes first: what is lifted, then the room, then what hurts.
    if let Some(wrong) = lifted.and_then(|lifted| words::wrong_load(lifted, load, unit)) {
        return refuse(wrong);
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
    let care = matches!(set.reason, Reason::Flagged { .. } | Reason::Withdrawn { .. });
    if let Some(last) = set.last.filter(|last| care && load > *last) {
        return refuse(say::coach::nothing_above_while_flagged(set.set, text(last)));
    }
    if let (Some(last), Some(cap)) = (set.last, set.most.filter(|most| load > *most && !anyway)) {
        let most = text(builds.at_or_below(cap).map_or(cap, |build| build.mass));
        let (number, load, of) = (set.set, text(load), text(last));
        return refuse(if builds.is_picks() && cap > last {
            say::coach::past_the_next_load(number, load, of, most)
        } else if words::is_a_tenth(last, cap) {
            say::coach::past_the_cap(number, load, of, most)
        } else {
            say::coach::past_what_was_proposed(number, load, of, most)
        });
    }
    if let Some(next) = set.next.filter(|next| load > *next && set.reason.is_limit() && !anyway) {
        let why = words::why(&set.reason, set.next, unit);
        return refuse(say::coach::past_a_limit(set.set, text(load), text(next), why));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixtures::{self, kg, kit};
    use crate::plan::Stack;

    fn signed(text: &str) -> Mass {
        Mass::parse_signed(text, Some(MassUnit::Kg)).unwrap()
    }

    fn assisted() -> Builds {
        let masses = ["10", "15", "20", "35"].map(kg).to_vec();
        Builds::assisted(&Stack { unit: MassUnit::Kg, masses })
    }

    fn bar() -> Builds {
        fixtures::builds(&kit(
            "0",
            &[(kg("20"), 4), (kg("10"), 4), (kg("5"), 2), (kg("2.5"), 2), (kg("1.25"), 2)],
        ))
    }

    fn set(last: &str, most: &str) -> ProposedSet {
        let (last, most) = (Some(signed(last)), Some(signed(most)));
        let (reason, from) = (Reason::Free, Vec::new());
        ProposedSet {
            set: 2,
            last,
            reps: None,
            next: last,
            asked: 5,
            open: false,
            most,
            reason,
            from,
        }
    }

    fn said(set: &ProposedSet, load: &str, lifted: Lifted, builds: &Builds) -> String {
        let checked = check(set, signed(load), Some(lifted), builds, (MassUnit::Kg, false));
        checked.map_or_else(|error| error.to_string(), |()| String::new())
    }

    /// The cap of what is hung on a body or taken off it is the next load, and no percent.
    #[test]
    fn picks_are_not_spoken_of_in_percent() {
        let builds = assisted();
        let said = |load| said(&set("-20", "-15"), load, Lifted::Assisted, &builds);
        assert_eq!(said("-15"), "");
        assert_eq!(
            said("-10"),
            "Set 2: -10 kg is more than one load up from the last -20 kg. These go up by one load of the room at \
             a time, so at most -15 kg. To send it all the same, say anyway."
        );
        for load in ["10", "100", "-10", "0", "-16", "52.3"] {
            let said = said(load);
            assert!(!said.is_empty() && !said.contains('%'), "{load}: {said}");
        }
        let wrong = "Assistance is taken off body weight: log it with a minus, such as -10 kg.";
        assert_eq!(said("10"), wrong);
    }

    /// What cannot be built is told as that, however far up it is, and also to a coach who says anyway.
    #[test]
    fn a_load_that_cannot_be_built_is_told_before_one_that_is_too_heavy() {
        let builds = bar();
        let of = set("45", "49.5");
        for load in ["46", "52.3", "90.1", "400"] {
            let told = said(&of, load, Lifted::Bar, &builds);
            assert!(
                told.starts_with(&format!("Set 2: this room cannot build {load} kg.")),
                "{told}"
            );
            let anyway = check(&of, kg(load), Some(Lifted::Bar), &builds, (MassUnit::Kg, true));
            assert_eq!(anyway.unwrap_err().to_string(), told);
        }
        let told = said(&of, "50", Lifted::Bar, &builds);
        assert!(
            told.contains("more than 10 % above the last 45 kg")
                && told.contains("at most 47.5 kg"),
            "{told}"
        );
        assert_eq!(said(&of, "0", Lifted::Bar, &builds), "A load must be above zero.");
    }

    /// A percent that is said is true: after more was lifted than proposed, the most is under a tenth.
    #[test]
    fn what_was_lifted_over_the_proposal_is_said_as_that() {
        let (of, builds) = (set("60", "60"), bar());
        let told = said(&of, "62.5", Lifted::Bar, &builds);
        assert!(told.contains("more than proposed, so at most 60 kg now"), "{told}");
        assert!(!told.contains('%'), "{told}");
    }
}
