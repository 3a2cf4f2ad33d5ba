//! Loads that the plan gives: they too stay inside the cap and heed a flag.

use super::{CAP_PERCENT, History, NextLoad, flagged, hold};
use crate::load::Reason;
use crate::mass::Mass;
use crate::plan::Builds;

pub(super) fn next(
    planned: Option<Mass>,
    builds: &Builds,
    history: &History,
    set: u32,
) -> NextLoad {
    let Some(planned) = planned else {
        return NextLoad { set, load: None, reason: Reason::Free, from: Vec::new() };
    };
    let done = history.last_of(set);
    let last = done.and_then(|done| done.load);
    let record = done.map(|done| done.record);
    let from = |other| record.into_iter().chain(other).collect();
    // A bar marked in pounds seldom builds what a plan gives in kilograms.
    let load = hold(builds, planned, planned);
    match (&history.flag, last) {
        // Lighter than last time is what somebody with a flag should do.
        (Some(flag), Some(last)) if load > last => NextLoad {
            set,
            load: Some(hold(builds, last, last)),
            reason: flagged(flag, Some(last)),
            from: from(Some(flag.record)),
        },
        (_, Some(last)) if load > last.percent(CAP_PERCENT) => NextLoad {
            set,
            load: Some(hold(builds, last.percent(CAP_PERCENT), last)),
            reason: Reason::Fixed { planned, capped: Some(last), nearest: false },
            from: from(None),
        },
        _ => NextLoad {
            set,
            load: Some(load),
            reason: Reason::Fixed { planned, capped: None, nearest: load != planned },
            from: Vec::new(),
        },
    }
}
