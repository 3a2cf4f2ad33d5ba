//! When the next build of a room with few of them is in reach.

use super::carried::Carried;
use super::offer::{SPARE_REPS, was_made};
use super::{SetDone, Time};
use crate::mass::Mass;

/// Gaps up to so many percent are taken at the plan's reps. Common practice, no source.
const NEAR_PERCENT: u32 = 115;
/// More reps made on all sets that say the next build is in reach. Common practice, no source.
const MANY_MORE: u32 = 4;
/// Fewer reps than these are asked of nobody who was asked for more. Common practice, no source.
const FEWEST: u32 = 3;

/// The reps to ask at the next build; none while it is out of reach.
///
/// Two over what was asked, twice running, is the rule of two for two (Baechle and Earle, Essentials of
/// Strength Training and Conditioning).
pub(super) fn reps(carried: &Carried<'_>, set: u32, next: Mass) -> Option<u32> {
    let (last, time) = (carried.load(set), carried.last());
    let first = carried.first_reps(set);
    let two_over = |time: &Time| {
        let end = time.scheme.sets();
        let wanted = time.asked(end).saturating_add(SPARE_REPS);
        time.set(end).is_some_and(|done| done.reps >= wanted)
    };
    let twice = carried.times.len() >= 2 && carried.latest().take(2).all(two_over);
    let over = |more: u32| {
        time.asked_sets().all(|set| {
            let wanted = time.first_reps(set).saturating_add(more);
            time.set(set).is_some_and(|done| done.reps >= wanted)
        })
    };
    let far_over = over(MANY_MORE);
    if carried.builds.is_picks() {
        return (twice || far_over).then_some(first);
    }
    // Reps at another load say nothing of this one.
    let here = |done: &&SetDone| done.set == set || done.load == Some(last);
    let here = time.asked_sets().filter_map(|set| time.set(set)).filter(here);
    let fewest = here.map(|done| done.reps).min()?;
    let foretold = foretold(last, next, fewest);
    if next <= last.percent(NEAR_PERCENT) {
        let near = foretold >= i64::from(first) - 1;
        return (twice || far_over || near).then_some(first);
    }
    let enough = foretold * 2 >= i64::from(first) && foretold >= i64::from(FEWEST.min(first));
    let again = was_made(carried, set, next) && over(SPARE_REPS);
    // What was made before is made with half the reps at least.
    let fewest = if again { first.div_ceil(2).max(1) } else { 1 };
    let asked = u32::try_from(foretold).unwrap_or(0).clamp(fewest, first.max(1));
    (enough || again).then_some(asked)
}

/// Reps to expect at the next build from those done at the last one: Epley's equation on both sides,
/// `1RM = load * (1 + reps / 30)` (Poundage chart, 1985, as in LeSuer et al., J Strength Cond Res
/// 1997;11:211-213), rounded down.
fn foretold(last: Mass, next: Mass, reps: u32) -> i64 {
    if next <= Mass::ZERO {
        return 0;
    }
    let able = (30 + i128::from(reps)) * i128::from(last.ten_ng) / i128::from(next.ten_ng) - 30;
    i64::try_from(able).unwrap_or(0)
}
