//! The next load of every set, from what was lifted before.

mod able;
mod away;
mod first;
mod fixed;
mod history;
mod step;
mod work;

use super::{Rack, Reason};
use crate::id::RecordId;
use crate::mass::Mass;
use crate::plan::{LoadRule, Scheme};
use able::Asked;

pub use able::whole_tenths;
pub use away::weeks_away;
pub use history::{Able, History, OpenFlag, Ruled, SetDone, Time};

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

/// Works out the next load of every set of `scheme`, built from `rack`.
pub fn next_loads(
    rule: &LoadRule,
    scheme: &Scheme,
    rack: &Rack,
    history: &History,
) -> Vec<NextLoad> {
    let next = |set| match rule {
        LoadRule::Free => NextLoad { set, load: None, reason: Reason::Free, from: Vec::new() },
        LoadRule::Percent { percents } => {
            let percent = percents.get(set as usize - 1).or(percents.first()).copied();
            able::next(Asked::Percent(percent.unwrap_or(0)), scheme, rack, history, set)
        }
        LoadRule::Reserve { reserve } => {
            able::next(Asked::Reserve(*reserve), scheme, rack, history, set)
        }
        LoadRule::Fixed { loads } => {
            let planned = loads.get(set as usize - 1).or(loads.first()).copied();
            fixed::next(planned, rack, history, set)
        }
        LoadRule::Step(rule) => step::next(rule, scheme, rack, history, set),
    };
    (1..=scheme.sets()).map(next).collect()
}

/// A load, or the nearest lighter one that this room can build; on a bar that is heavier empty, the
/// empty bar, unless that is past the cap of `last`.
fn hold(rack: &Rack, load: Mass, last: Mass) -> Mass {
    let lightest = rack.lightest().filter(|build| build.mass <= last.percent(CAP_PERCENT));
    rack.at_or_below(load).or(lightest).map_or(load, |build| build.mass)
}

fn flagged(flag: &OpenFlag, last: Option<Mass>) -> Reason {
    Reason::Flagged { last, place: flag.place, severity: flag.severity, on: flag.on }
}

#[cfg(test)]
mod able_tests;
#[cfg(test)]
mod first_tests;
#[cfg(test)]
mod tests;
