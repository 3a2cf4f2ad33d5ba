//! An easy week: planned lighter, taken from the proposal of the day, outside progression.

use super::settle::Settled;
use crate::load::Reason;
use crate::plan::{Builds, Easy};

/// How many sets an easy week leaves of a scheme; one at least.
pub(super) fn sets(easy: &Easy, sets: u32) -> u32 {
    sets.saturating_sub(easy.sets).max(sets.min(1))
}

/// The load of a set in an easy week: so much lighter than it would be, no more reps than the plan's, and
/// nothing taken to the end.
pub(super) fn lighter(easy: &Easy, builds: &Builds, first_reps: u32, settled: Settled) -> Settled {
    let reps = settled.reps.min(first_reps);
    let Some(of) = settled.load else { return Settled { reps, closed: true, ..settled } };
    let percent = easy.percent;
    let wanted = of.percent(100_u32.saturating_sub(percent));
    let wanted = if builds.is_picks() { of } else { wanted };
    let load =
        builds.at_or_below(wanted).or(builds.lightest()).map_or(of, |build| build.mass.min(of));
    // What asked for more reps is no reason for fewer.
    let eased = load < of || reps < settled.reps;
    let reason = if eased { Reason::Easy { of } } else { settled.reason };
    Settled { load: Some(load), reps, closed: true, reason, ..settled }
}
