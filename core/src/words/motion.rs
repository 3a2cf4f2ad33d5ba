//! Range of motion and time under stretch over weeks, and load over weeks.

use crate::motion::{Dose, Short, TheilSen};

use super::plain::{clock_time, count};

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
