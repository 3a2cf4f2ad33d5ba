//! What an athlete can lift now, as a screen shows it.

use super::screen::AbleView;
use crate::load::{Able, whole_tenths};
use crate::mass::MassUnit;
use crate::words;

/// The estimate with its interval and its trend.
pub(crate) fn able_view(able: Able, unit: MassUnit) -> AbleView {
    let now = able.strength.now();
    let [low, likely, high] = [now.low, now.likely, now.high].map(whole_tenths);
    AbleView {
        low,
        likely,
        high,
        text: words::able(low, likely, high, unit),
        trend: able.strength.trend().map(|trend| words::trend(&trend)),
        from: able.from,
    }
}
