//! Loads that the plan gives: as written, as far as the limits let them.

use super::USUAL_BACK_OFF;
use super::carried::{Carried, FORMER_DAYS};
use super::limit::Limit;
use super::offer::Offer;
use super::settle::{Settled, limits, settle};
use crate::load::Reason;
use crate::mass::Mass;
use crate::plan::{Builds, Scheme};

pub(super) fn settled(
    planned: Option<Mass>,
    scheme: &Scheme,
    builds: &Builds,
    carried: Option<&Carried<'_>>,
    set: u32,
) -> Settled {
    let Some(planned) = planned else { return Settled::free(scheme, set) };
    // A bar marked in pounds seldom builds what a plan gives in kilograms.
    let build = builds.at_or_below(planned).or(builds.lightest());
    let load = build.map_or(planned, |build| build.mass);
    let reason = Reason::Fixed { planned, nearest: load != planned };
    let reps = scheme.target(set).unwrap_or(0);
    let Some(carried) = carried else {
        return Settled { load: Some(load), reps, ..Settled::because(reason) };
    };
    let from = vec![carried.record(set)];
    let mut limits = limits(carried, set, USUAL_BACK_OFF);
    // What a coach wrote for a light day is no step to count from: the cap is on the heaviest of half a year.
    let heaviest = heaviest(carried, set).max(carried.load(set));
    let cap = if builds.is_picks() { heaviest } else { heaviest.percent(super::CAP_PERCENT) };
    let Some(most) = carried.built(set, cap.max(carried.cap(set))) else {
        // The room, or the bar that is taken, begins above that.
        let reason = Reason::FixedCapped { planned, last: heaviest };
        return Settled { reps, from, ..Settled::because(reason) };
    };
    if load > most {
        let reason = Reason::FixedCapped { planned, last: heaviest };
        limits.push(Limit::at(most, reason, from.clone()));
    }
    settle(carried, set, Offer { load: Some(load), reps: Some(reps), reason, from }, limits)
}

fn heaviest(carried: &Carried<'_>, set: u32) -> Mass {
    let end = carried.last().on;
    let recent = carried.latest().filter(|time| (end - time.on).num_days() <= FORMER_DAYS);
    let made = recent.filter_map(|time| {
        time.set(set).filter(|done| done.reps >= time.first_reps(set)).and_then(|done| done.load)
    });
    made.max().unwrap_or(carried.load(set))
}
