//! What somebody can lift now, and what to expect of it.

use crate::load::strength::Trend;
use crate::mass::{Mass, MassUnit};

/// `about 102.3 kg once (95.1 to 110.2 kg in four cases of five)`.
pub(crate) fn able(low: Mass, likely: Mass, high: Mass, unit: MassUnit) -> String {
    let number = |mass: Mass| {
        let tenths = (mass.for_drawing(unit) * 10.0).round() / 10.0;
        format!("{tenths}")
    };
    let symbol = unit.symbol();
    format!(
        "about {} {symbol} once ({} to {} {symbol} in four cases of five)",
        number(likely),
        number(low),
        number(high)
    )
}

/// `expect 6 to 9 reps`.
pub(crate) fn expected_reps(low: u32, high: u32) -> String {
    match (low, high) {
        (0, 0) => "not expected to move".into(),
        (low, high) if low == high => format!("expect {low}"),
        (low, high) => format!("expect {low} to {high}"),
    }
}

/// `+0.8 % a week over 35 days (-0.1 to +1.7 %)`; says so where it may as well be none.
pub(crate) fn trend(trend: &Trend) -> String {
    let percent = |share: f64| format!("{:+.1}", share * 100.0);
    let week = trend.per_week;
    let unsure = if week.low < 0.0 && week.high > 0.0 { ", which may be none" } else { "" };
    format!(
        "{} % a week over {} days ({} to {} %{unsure})",
        percent(week.likely),
        (trend.to - trend.from).num_days(),
        percent(week.low),
        percent(week.high)
    )
}
