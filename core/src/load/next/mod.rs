//! The next load of every set, from what was lifted before.

mod able;
mod away;
mod before;
mod by_strength;
mod first;
mod fixed;
mod history;
mod step;

use super::Reason;
use crate::id::RecordId;
use crate::mass::Mass;
use crate::plan::{Builds, LoadRule, Scheme};
use by_strength::Asked;

pub use away::weeks_away;
pub use by_strength::whole_tenths;
pub use history::{Able, Decision, History, OpenFlag, Ruled, SetDone, Time};

/// No load goes up by more than a tenth from one time to the next.
///
/// The upper end of the 2 to 10 % step of the American College of Sports Medicine's position
/// stands (Kraemer et al., Med Sci Sports Exerc 2002;34:364-380; Ratamess et al. 2009;41:687-708).
pub const CAP_PERCENT: u32 = 110;

/// The load proposed for a set.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NextLoad {
    /// The set, counted from 1.
    pub set: u32,
    /// The load; none where it is the athlete's to choose.
    pub load: Option<Mass>,
    /// Why.
    pub reason: Reason,
    /// The records it was read from: sets, a flag, a coach's answer.
    pub from: Vec<RecordId>,
}

/// Works out the next load of every set of `scheme`, built from `builds`.
pub fn next_loads(
    rule: &LoadRule,
    scheme: &Scheme,
    builds: &Builds,
    history: &History,
) -> Vec<NextLoad> {
    let next = |set| match rule {
        LoadRule::Free => NextLoad { set, load: None, reason: Reason::Free, from: Vec::new() },
        LoadRule::Percent { percents, .. } => {
            let percent = percents.get(set as usize - 1).or(percents.first()).copied();
            able::next(Asked::Percent(percent.unwrap_or(0)), scheme, builds, history, set)
        }
        LoadRule::Reserve { reserve, .. } => {
            able::next(Asked::Reserve(*reserve), scheme, builds, history, set)
        }
        LoadRule::Fixed { loads } => {
            let planned = loads.get(set as usize - 1).or(loads.first()).copied();
            fixed::next(planned, builds, history, set)
        }
        LoadRule::Step(rule) => step::next(rule, scheme, builds, history, set),
    };
    (1..=scheme.sets()).map(next).collect()
}

/// A load, or the nearest lighter one that this room can build; on a bar that is heavier empty, the
/// empty bar, unless that is past the cap of `last`.
fn hold(builds: &Builds, load: Mass, last: Mass) -> Mass {
    let lightest = builds.lightest().filter(|build| build.mass <= last.percent(CAP_PERCENT));
    builds.at_or_below(load).or(lightest).map_or(load, |build| build.mass)
}

fn flagged(flag: &OpenFlag, last: Option<Mass>) -> Reason {
    Reason::Flagged { last, place: flag.place, severity: flag.severity, on: flag.on }
}

#[cfg(test)]
mod tests;
