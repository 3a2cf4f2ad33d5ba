//! Two loads with none between them: how far apart they are, and how many reps it takes from one to the other.

use std::cmp::Ordering;

use crate::mass::Mass;
use crate::say::plan_note as say;

/// More than so much at once is no small step any more: common practice, no source.
const WIDE_PERCENT: i128 = 15;
/// Reps that should be left over the gap, or the plan's own where they are fewer. Common practice, no
/// source.
const LEAST_REPS: u32 = 3;
/// The most reps that a plan may ask for.
const MOST_REPS: i128 = 100;

/// Two neighbouring loads.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Gap {
    pub(super) from: Mass,
    pub(super) to: Mass,
}

impl Gap {
    /// The upper end of this times the lower end of another.
    fn product(self, other: Gap) -> i128 {
        i128::from(self.to.ten_ng) * i128::from(other.from.ten_ng)
    }

    /// Which of two is wider, as fractions in whole numbers.
    pub(super) fn cmp_width(self, other: Gap) -> Ordering {
        self.product(other).cmp(&other.product(self))
    }

    pub(super) fn is_wide(self) -> bool {
        let (from, to) = (i128::from(self.from.ten_ng), i128::from(self.to.ten_ng));
        from > 0 && to * 100 > from * (100 + WIDE_PERCENT)
    }

    /// Percent from one to the next, rounded.
    pub(super) fn percent(self) -> i128 {
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

/// What to do about a gap that so many reps prepare, of which `top` are asked at most.
pub(super) fn help(reps: i128, top: i128) -> String {
    match reps > top && reps <= MOST_REPS {
        true => say::fill_gap_or_raise_top(reps),
        false => say::fill_gap().to_owned(),
    }
}
