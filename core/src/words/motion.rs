//! Range of motion and time under stretch over weeks, and load over weeks.

use super::plain::{clock_time, count, tenths};
use crate::motion::{Change, Dose, Short, TheilSen, change};
use crate::plan::Protocol;

/// `+0.3 cm a week (0.1 to 0.5), p 0.03, from 6 readings`. `further` turns a slope a day into one a
/// week that is positive when the range grows.
pub(crate) fn range_trend(
    slope: TheilSen,
    further: f64,
    unit: &str,
    p: f64,
    readings: usize,
) -> String {
    let week = slope.slope * further;
    let between = slope.between.map_or(String::new(), |(low, high)| {
        let (low, high) = (low * further, high * further);
        format!(" ({:+.1} to {:+.1})", low.min(high), low.max(high))
    });
    let readings = count(readings as u64, "reading");
    format!("{week:+.1} {unit} a week{between}, p {p:.2}, from {readings}")
}

/// What a week of stretching lacks of a published dose.
pub(crate) fn dose(dose: Dose, short: Option<Short>, plateau: bool) -> String {
    let wanted = match dose {
        Dose::FiveMinutesFiveDays => "5 min on 5 days",
        Dose::MinuteTwoDays => "1 min on 2 days",
    };
    match short {
        None if plateau => {
            format!("{wanted} and more; past 10 min nothing more was seen to be gained")
        }
        None => format!("{wanted}: done"),
        Some(Short { days, ms }) => {
            let time = (ms > 0).then(|| clock_time(ms));
            let days = (days > 0).then(|| count(days as u64, "day"));
            let missing: Vec<String> = time.into_iter().chain(days).collect();
            format!("{} short of {wanted} a side", missing.join(" and "))
        }
    }
}

/// `load of late is 1.20 times that of the weeks before`, with what it is not.
pub(crate) fn load_compared(ratio: f64) -> String {
    format!(
        "load of late is {ratio:.2} times that of the weeks before (smoothed over 7 and 28 days; a \
         description, not a risk)"
    )
}

/// A long still hold planned before lifting.
pub(crate) fn long_hold(stretch: &str, held_ms: i64, before: &str) -> String {
    format!(
        "{stretch} is held still for {} before {before}: holds of a minute or more right before \
         lifting were seen to cost strength; hold it after, or move well in between",
        clock_time(held_ms)
    )
}

/// Says what a change from `before` to `after` (tenths of the protocol's unit) amounts to.
///
/// Only a change of at least the MDC95 is called one: less may be the measurement alone. See
/// [`Protocol::mdc95_tenths`] for the sources.
pub(crate) fn judged(protocol: Protocol, before: i64, after: i64) -> String {
    let unit = protocol.unit();
    let mdc95 = protocol.mdc95_tenths();
    let error = tenths(mdc95, unit);
    let signed = |gained: i64| {
        let sign = if gained > 0 { "+" } else { "-" };
        format!("{sign}{}", tenths(gained.saturating_abs(), unit))
    };
    let beyond = |gained| format!("{}, at least the measurement error ({error})", signed(gained));
    match change(protocol, before, after, mdc95) {
        Change::None => "no change".into(),
        Change::WithinError { gained } => {
            format!("{}, within the measurement error ({error})", signed(gained))
        }
        Change::Further { gained } => beyond(gained),
        Change::Less { lost } => beyond(-lost),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Powden et al. 2015: 1.9 cm for the weight-bearing lunge by one rater; Ekedahl et al. 2012:
    /// 4.5 cm for fingertip to floor, where less is further.
    #[test]
    fn only_more_than_the_error_is_called_a_change() {
        let wall = |before, after| judged(Protocol::KneeToWall, before, after);
        assert_eq!(wall(100, 118), "+1.8 cm, within the measurement error (1.9 cm)");
        assert_eq!(wall(100, 119), "+1.9 cm, at least the measurement error (1.9 cm)");
        assert_eq!(wall(100, 60), "-4.0 cm, at least the measurement error (1.9 cm)");
        assert_eq!(wall(100, 100), "no change");
        let floor = judged(Protocol::FingertipToFloor, 150, 100);
        assert_eq!(floor, "+5.0 cm, at least the measurement error (4.5 cm)");
    }
}
