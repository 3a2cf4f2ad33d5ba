//! The way up to the first work set.

use crate::mass::Mass;
use crate::plan::Builds;

/// Reps with the lightest build. Like every number of this rule: common practice, no source.
const LIGHTEST_REPS: u32 = 10;
/// The sets after it: percent of the work load, rounded down to a build, and reps.
const SETS: [(u32, u32); 3] = [(45, 5), (65, 3), (85, 2)];
/// A set is left out when it is not at least this percent of the work load above the one before.
const STEP_PERCENT: u32 = 10;
/// A set heavier than this percent of the work load is about the work load: it is no warm-up.
const ABOUT_PERCENT: u32 = 90;

/// One set on the way up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WarmUpSet {
    /// A load the builds builds.
    pub load: Mass,
    /// Reps, 1 or more.
    pub reps: u32,
}

/// The sets before a work set of `work`: the lightest build for ten reps, then five, three and two
/// reps at 45, 65 and 85 percent of the work load, each rounded down to what the builds builds.
///
/// Loads rise by at least a tenth of the work load from set to set and stay a tenth below it; reps
/// fall. A set that would not is left out, so a bar that is nearly the work load gives few sets,
/// and one that is about the work load none. Common practice, no source.
pub fn warm_up(builds: &Builds, work: Mass) -> Vec<WarmUpSet> {
    let (step, most) = (work.percent(STEP_PERCENT), work.percent(ABOUT_PERCENT));
    let lightest =
        builds.lightest().map(|build| WarmUpSet { load: build.mass, reps: LIGHTEST_REPS });
    let risen = SETS.iter().filter_map(|(percent, reps)| {
        let build = builds.at_or_below(work.percent(*percent))?;
        Some(WarmUpSet { load: build.mass, reps: *reps })
    });
    let mut sets: Vec<WarmUpSet> = Vec::new();
    for set in lightest.into_iter().chain(risen) {
        let risen = |before: &WarmUpSet| set.load > before.load && set.load >= before.load + step;
        if sets.last().is_none_or(risen) && set.load <= most {
            sets.push(set);
        }
    }
    sets
}
