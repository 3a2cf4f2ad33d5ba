//! Loads that lie far apart: how many reps it takes from one to the next.

use super::Review;
use crate::mass::Mass;
use crate::plan::{Builds, LoadRule};
use crate::say::plan_note as say;

/// More than so much at once is no small step any more: common practice, no source.
const WIDE_PERCENT: i128 = 15;
/// Reps that should be left over the gap, or the plan's own where they are fewer. Common practice, no
/// source.
const LEAST_REPS: u32 = 3;
/// The most reps that a plan may ask for.
const MOST_REPS: i128 = 100;

/// Two neighbouring loads.
#[derive(Clone, Copy)]
pub(super) struct Gap {
    pub(super) from: Mass,
    pub(super) to: Mass,
}

pub(super) fn review(review: &Review<'_>) {
    for placed in review.strengths() {
        let LoadRule::Step(rule) = &placed.kind.load else { continue };
        let fewest = placed.kind.scheme.reps.iter().copied().min().unwrap_or(1);
        for builds in review.carriers(placed.kind) {
            let Some(gap) = widest(builds, placed.kind.start.iter().copied().min()) else {
                continue;
            };
            let (reps, top) = (gap.reps_before(fewest), i128::from(rule.top));
            let (from, to) = (gap.from.exact_text(), gap.to.exact_text());
            let what = match reps <= top {
                true => say::gap(from, to, gap.percent(), reps),
                false => say::gap_unprepared(from, to, gap.percent(), top),
            };
            let help = match reps > top && reps <= MOST_REPS {
                true => say::fill_gap_or_raise_top(reps),
                false => say::fill_gap().to_owned(),
            };
            review.note(&placed.at.key("load").key("step"), what, help);
        }
    }
}

/// The widest gap above `from`, or of all loads, where it is a wide one. What is added to a body or taken
/// off it goes up pick by pick, whatever the percent.
fn widest(builds: &Builds, from: Option<Mass>) -> Option<Gap> {
    if builds.is_picks() {
        return None;
    }
    let gaps = builds.loads().zip(builds.loads().skip(1)).map(|(from, to)| Gap { from, to });
    let ahead = gaps.filter(|gap| from.is_none_or(|from| gap.from >= from) && gap.is_wide());
    // As fractions in whole numbers: the first of the widest stays.
    let wider = |one: Gap, other: Gap| {
        let (of_one, of_other) = (one.product(other), other.product(one));
        if of_other > of_one { other } else { one }
    };
    ahead.reduce(wider)
}

impl Gap {
    /// The upper end of this times the lower end of another.
    fn product(self, other: Gap) -> i128 {
        i128::from(self.to.ten_ng) * i128::from(other.from.ten_ng)
    }

    fn is_wide(self) -> bool {
        let (from, to) = (i128::from(self.from.ten_ng), i128::from(self.to.ten_ng));
        from > 0 && to * 100 > from * (100 + WIDE_PERCENT)
    }

    /// Percent from one to the next, rounded.
    fn percent(self) -> i128 {
        let (from, to) = (i128::from(self.from.ten_ng), i128::from(self.to.ten_ng));
        ((to - from) * 200 + from) / (2 * from)
    }

    /// The reps of the lower load that promise enough of the upper one: half of `fewest`, the plan's own,
    /// and at least three where those are not fewer. By Epley's equation (Poundage Chart, 1985) on both
    /// sides: `reps there = (30 + reps here) * from / to - 30`.
    pub(super) fn reps_before(self, fewest: u32) -> i128 {
        let enough = i128::from(fewest.div_ceil(2).max(LEAST_REPS.min(fewest)));
        let (from, to) = (i128::from(self.from.ten_ng), i128::from(self.to.ten_ng));
        ((30 + enough) * to + from - 1) / from - 30
    }
}
