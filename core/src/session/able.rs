//! What an athlete can lift now, as a screen shows it.

use super::screen::{AbleView, MaxView};
use crate::load::strength::Interval;
use crate::load::{Able, NextLoads, Reason, whole_tenths};
use crate::mass::MassUnit;
use crate::say;
use crate::words;

/// The estimate with its interval and its trend, or what to do to see one: nothing where no set of the
/// piece could say.
pub(super) fn able_view(
    able: Option<Able>,
    informed: bool,
    next: &NextLoads,
    unit: MassUnit,
) -> Option<AbleView> {
    let hint =
        |text: &str| AbleView { max: None, text: text.to_owned(), trend: None, from: Vec::new() };
    let Some(able) = able else {
        // A first time has no set to the end.
        let open = next.sets.iter().any(|set| set.open && set.reason != Reason::Free);
        return match (informed, open) {
            (true, _) => Some(hint(say::able::count_a_set())),
            (false, true) => Some(hint(say::able::log_open_set())),
            (false, false) => None,
        };
    };
    let max = able.strength.max_over(able.made).map(max_view);
    let text = match &max {
        Some(max) => words::able(max.low, max.likely, max.high, unit),
        None => say::able::count_a_set().to_owned(),
    };
    let trend = able.strength.trend().map(|trend| words::trend(&trend));
    Some(AbleView { max, text, trend, from: able.from })
}

fn max_view(max: Interval) -> MaxView {
    let [low, likely, high] = [max.low, max.likely, max.high].map(whole_tenths);
    MaxView { low, likely, high }
}
