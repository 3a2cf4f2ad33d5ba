//! The next load of every set, from what was lifted before.
//!
//! A proposal is a function of the plan, the history of the track and the day, in this order: what the
//! sessions leave ([`carried`]); one rule that looks upward ([`offer`]); what keeps it down ([`limit`],
//! [`away`]), the lightest of all; what the coach answered instead ([`settle`]); and what hurts, which
//! limits whatever stands ([`care`]).

mod away;
mod care;
mod carried;
mod days;
mod easy;
mod first;
mod fixed;
mod history;
mod limit;
mod offer;
mod reach;
mod settle;
mod training_max;

use super::Reason;
use crate::id::RecordId;
use crate::mass::{Mass, MassUnit};
use crate::plan::{Build, Builds, Easy, LoadRule, Scheme, StepRule};
use carried::Carried;
use settle::Settled;

pub use days::weeks_away;
pub use history::{Able, Decision, Flag, History, KnownMax, ProposedSet, Ruled, SetDone, Time};
pub use training_max::{MaxBasis, whole_tenths};

/// No load goes up by more than a tenth from one time to the next.
///
/// The upper end of the 2 to 10 % step of the American College of Sports Medicine's position
/// stands (Kraemer et al., Med Sci Sports Exerc 2002;34:364-380; Ratamess et al. 2009;41:687-708).
pub const CAP_PERCENT: u32 = 110;

/// Of what hangs on a body or is taken off it no percent means anything: it goes up by one pick, or by this where the
/// room's picks stand closer. Common practice, no source.
const PICKS_GO_UP: (Mass, Mass) =
    (Mass::thousandths(2_500, MassUnit::Kg), Mass::thousandths(5_000, MassUnit::Lb));

/// The most that is proposed after a load without a coach's word: a tenth over it; of picks the next one, or the small
/// step where that leads further.
pub fn most_after(builds: &Builds, load: Mass) -> Mass {
    if !builds.is_picks() {
        return load.percent(CAP_PERCENT);
    }
    let (kilograms, pounds) = PICKS_GO_UP;
    let step = if builds.unit == MassUnit::Kg { kilograms } else { pounds };
    let built = |build: Build| build.mass;
    let next = builds.above(load).map_or(load, built);
    next.max(builds.at_or_below(load + step).map_or(load, built))
}

/// What is left of the carried load the first time after a severe flag is cleared. Common practice, no source.
const BACK_PERCENT: u32 = 90;

/// Percent taken off after misses where the rule has none of its own. Common practice, no source.
const USUAL_BACK_OFF: u32 = 5;

/// Reps over the target, or left, that say the load is ready to go up: the position stand of the American
/// College of Sports Medicine goes up when one or two reps over can be done (Med Sci Sports Exerc
/// 2009;41:687-708).
const SPARE_REPS: u32 = 2;

/// The load proposed for a set.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NextLoad {
    /// The set, counted from 1.
    pub set: u32,
    /// The load; none where it is the athlete's to choose, and where it was withdrawn.
    pub load: Option<Mass>,
    /// The load carried from the sessions before, where there is one.
    pub carried: Option<Mass>,
    /// The most that would be allowed over it without a coach's word.
    pub most: Option<Mass>,
    /// Reps asked for.
    pub reps: u32,
    /// True when it is taken to as many good reps as possible.
    pub open: bool,
    /// The rule that decided.
    pub reason: Reason,
    /// Rules that would have kept it down too.
    pub others: Vec<Reason>,
    /// The records it was read from: sets, a flag, a coach's answer.
    pub from: Vec<RecordId>,
}

/// The loads of a session.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NextLoads {
    /// Set by set.
    pub sets: Vec<NextLoad>,
    /// The training max they are worked out from, where the rule has one.
    pub max: Option<Mass>,
}

/// Works out the next load of every set of `scheme`, built from `builds`, on a day of an easy week or of
/// a usual one.
pub fn next_loads(
    rule: &LoadRule,
    scheme: &Scheme,
    builds: &Builds,
    history: &History,
    easy: Option<&Easy>,
) -> NextLoads {
    let carried = Carried::of(scheme, builds, history);
    let carried = carried.as_ref();
    let max = training_max::of(rule, builds, history);
    let settled = |set| match rule {
        LoadRule::Free => Settled::free(scheme, set),
        // No rep was ever made: not that load again.
        LoadRule::Fixed { .. } if carried.is_none() && first::failed(scheme, history).is_some() => {
            first::settled(scheme, builds, history, set)
        }
        LoadRule::Fixed { loads } => {
            let planned = loads.get(set as usize - 1).or(loads.first()).copied();
            fixed::settled(planned, scheme, builds, carried, set)
        }
        LoadRule::Step(rule) => match carried {
            Some(carried) => by_steps(rule, carried, set),
            None => first::settled(scheme, builds, history, set),
        },
        LoadRule::Percent { .. } | LoadRule::Reserve { .. } => match &max {
            Some(max) => max.settled(rule, scheme, builds, set),
            None => match carried {
                Some(carried) => training_max::unknown(rule, carried, set),
                None => first::settled(scheme, builds, history, set),
            },
        },
    };
    let next = |set| {
        let settled = settled(set);
        let settled = match ruling(history) {
            Some(ruled) => settle::rule(carried, builds, history, set, ruled, settled),
            None => settled,
        };
        let settled = care::limit(carried, builds, set, history, settled);
        let settled = match easy {
            Some(easy) => easy::lighter(easy, builds, scheme.target(set).unwrap_or(0), settled),
            None => settled,
        };
        settled.next(set, scheme.is_open(set), carried)
    };
    let sets = easy.map_or(scheme.sets(), |easy| easy::sets(easy, scheme.sets()));
    NextLoads { sets: (1..=sets).map(next).collect(), max: max.map(|max| max.load) }
}

/// The heaviest load that was made in a set in the last 26 weeks, of the sessions whose loads are carried: it
/// comes back with fewer reps than one that never was. None where nothing is carried.
pub fn made_lately(scheme: &Scheme, builds: &Builds, history: &History, set: u32) -> Option<Mass> {
    Carried::of(scheme, builds, history)?.made(set)
}

fn by_steps(rule: &StepRule, carried: &Carried<'_>, set: u32) -> Settled {
    let offer = offer::step(rule, carried, set);
    settle::settle(carried, set, offer, settle::limits(carried, set, rule.back_off_percent))
}

/// The coach's answer, while the track was not trained after the session it follows.
fn ruling(history: &History) -> Option<&Ruled> {
    let ruled = history.ruling.as_ref()?;
    let since = history.times.iter().rev().take_while(|time| time.session != ruled.after);
    let trained = since.clone().count() == history.times.len()
        || since.into_iter().any(|time| !time.easy && time.counts());
    (!trained).then_some(ruled)
}

#[cfg(test)]
mod tests;
