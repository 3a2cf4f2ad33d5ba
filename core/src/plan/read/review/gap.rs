//! Loads that lie far apart: how many reps it takes from one to the next.

use std::cmp::Ordering;

use super::apart::{Gap, help};
use super::{Review, people};
use crate::mass::Mass;
use crate::plan::{Builds, LoadRule};
use crate::say::plan_note as say;

pub(super) fn review(review: &Review<'_>) {
    for placed in review.strengths() {
        let LoadRule::Step(rule) = &placed.kind.load else { continue };
        if people::here(review, &placed).gaps(review, &placed.at.key("load"), rule) {
            continue;
        }
        let fewest = placed.kind.scheme.reps.iter().copied().min().unwrap_or(1);
        for builds in review.carriers(placed.kind) {
            let start = placed.kind.start.iter().copied().min();
            let first = start.and_then(|start| ahead(builds, start));
            let widest = widest(builds, start);
            // Whoever begins before one meets that first, however wide another is.
            for gap in first.into_iter().chain(widest.filter(|widest| Some(*widest) != first)) {
                let (reps, top) = (gap.reps_before(fewest), i128::from(rule.top));
                let (from, to) = (gap.from.exact_text(), gap.to.exact_text());
                let what = match reps <= top {
                    true => say::gap(from, to, gap.percent(), reps),
                    false => say::gap_unprepared(from, to, gap.percent(), top),
                };
                review.note(&placed.at.key("load").key("step"), what, help(reps, top));
            }
        }
    }
}

/// The gap that somebody is before at a load, where it is a wide one.
fn ahead(builds: &Builds, start: Mass) -> Option<Gap> {
    let from = builds.at_or_below(start)?.mass;
    let gap = Gap { from, to: builds.above(from)?.mass };
    (gap.is_wide() && !builds.is_picks()).then_some(gap)
}

/// The widest gap above `from`, or of all loads, where it is a wide one. What is added to a body or taken
/// off it goes up pick by pick, whatever the percent.
fn widest(builds: &Builds, from: Option<Mass>) -> Option<Gap> {
    if builds.is_picks() {
        return None;
    }
    let gaps = builds.loads().zip(builds.loads().skip(1)).map(|(from, to)| Gap { from, to });
    let ahead = gaps.filter(|gap| from.is_none_or(|from| gap.from >= from) && gap.is_wide());
    // The first of the widest stays.
    let wider = |one: Gap, other: Gap| {
        if other.cmp_width(one) == Ordering::Greater { other } else { one }
    };
    ahead.reduce(wider)
}
