//! Range of motion and time under stretch over weeks, and load over weeks.

use super::plain::{clock_time, decimals, symbol, tenths};
use crate::motion::{Change, Dose, Short, TheilSen, change};
use crate::plan::{MeasureUnit, Protocol};
use crate::say;

/// `+0.3 cm a week (+0.1 to +0.5), p 0.03, from 6 readings`. `further` turns a slope a day into one a
/// week that is positive when the range grows.
pub(crate) fn range_trend(
    slope: TheilSen,
    further: f64,
    unit: &str,
    p: f64,
    readings: usize,
) -> String {
    let a_week = |slope: f64| decimals(&format!("{slope:+.1}"));
    let (week, p) = (a_week(slope.slope * further), decimals(&format!("{p:.2}")));
    let week = format!("{week}{}", MeasureUnit::from_text(unit).map_or("", symbol));
    match slope.between {
        None => say::motion::trend(readings, week, p),
        Some((one, other)) => {
            let (one, other) = (one * further, other * further);
            let (low, high) = (a_week(one.min(other)), a_week(one.max(other)));
            say::motion::trend_between(readings, week, low, high, p)
        }
    }
}

/// What a week of stretching has of a published dose.
pub(crate) fn dose(dose: Dose, short: Option<Short>, plateau: bool) -> String {
    match (dose, short) {
        (Dose::FiveMinutesFiveDays, None) if plateau => {
            say::motion::five_minutes_plateau().to_owned()
        }
        (Dose::FiveMinutesFiveDays, None) => say::motion::five_minutes_done().to_owned(),
        (Dose::FiveMinutesFiveDays, Some(Short { days, ms })) => {
            // Rounded down, so that nobody is told time that was not held.
            let time = clock_time(300_000_i64.saturating_sub(ms).max(0));
            let on = dose.days().saturating_sub(days);
            match (ms, days) {
                (..=0, _) => say::motion::five_minutes_days(on),
                (_, 0) => say::motion::five_minutes_time(time),
                _ => say::motion::five_minutes_time_days(time, on),
            }
        }
        (Dose::MinuteTwoDays, None) if plateau => say::motion::minute_plateau().to_owned(),
        (Dose::MinuteTwoDays, None) => say::motion::minute_done().to_owned(),
        (Dose::MinuteTwoDays, Some(Short { days, ms })) => {
            say::motion::minute_time(dose.days().saturating_sub(days), clock_time(ms))
        }
    }
}

/// `recent load is 1.20 times that of the weeks before`, with what it is not.
pub(crate) fn load_compared(ratio: f64) -> String {
    say::motion::load_compared(decimals(&format!("{ratio:.2}")))
}

/// A long still hold planned before lifting.
pub(crate) fn long_hold(stretch: &str, held_ms: i64, before: &str) -> String {
    say::motion::long_hold(stretch, clock_time(held_ms), before)
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
    match change(protocol, before, after, mdc95) {
        Change::None => say::motion::no_change().to_owned(),
        Change::WithinError { gained } => say::motion::within_error(signed(gained), error),
        Change::Further { gained } => say::motion::beyond_error(signed(gained), error),
        Change::Less { lost } => say::motion::beyond_error(signed(-lost), error),
    }
}

#[cfg(test)]
mod tests {
    use catalogue::{Language, speaking};

    use super::*;

    /// Powden et al. 2015: 1.9 cm for the weight-bearing lunge by one rater; Ekedahl et al. 2012:
    /// 4.5 cm for fingertip to floor, where less is further.
    #[test]
    fn only_more_than_the_error_is_called_a_change() {
        let wall = |before, after| judged(Protocol::KneeToWall, before, after);
        assert_eq!(wall(100, 118), "+1.8 cm, within the measurement error (1.9 cm)");
        assert_eq!(wall(100, 119), "+1.9 cm, a change (measurement error 1.9 cm)");
        assert_eq!(wall(100, 60), "-4.0 cm, a change (measurement error 1.9 cm)");
        assert_eq!(wall(100, 100), "no change");
        let floor = judged(Protocol::FingertipToFloor, 150, 100);
        assert_eq!(floor, "+5.0 cm, a change (measurement error 4.5 cm)");
        let german = speaking(Language::De, || wall(100, 118));
        assert_eq!(german, "+1,8 cm, innerhalb des Messfehlers (1,9 cm)");
    }

    /// What is done of five minutes on five days, worked out from what is missing.
    #[test]
    fn a_dose_says_what_is_done_of_it() {
        let said = |days, ms| dose(Dose::FiveMinutesFiveDays, Some(Short { days, ms }), false);
        assert_eq!(
            said(4, 220_000),
            "at least 1 min 20 s of 5 min a week on each side, on 1 of 5 days"
        );
        assert_eq!(said(0, 220_000), "at least 1 min 20 s of 5 min a week on each side");
        assert_eq!(said(2, 0), "5 min a week on each side done, but only on 3 of 5 days");
        assert_eq!(dose(Dose::FiveMinutesFiveDays, None, false), "5 min a week over 5 days: done");
        let german = speaking(Language::De, || said(4, 220_000));
        assert_eq!(german, "mindestens 1 min 20 s von 5 min pro Woche und Seite, an 1 von 5 Tagen");
        let minute = dose(Dose::MinuteTwoDays, Some(Short { days: 1, ms: 20_000 }), false);
        assert_eq!(minute, "1 min on each side on 1 of 2 days; 20 s to go");
    }

    #[test]
    fn readings_have_their_plural_and_numbers_their_comma() {
        let slope = TheilSen {
            slope: -0.5,
            between: Some((-1.0, 0.25)),
            intercept: 0.0,
            joint_intercept: 0.0,
        };
        let said = || range_trend(slope, -1.0, "cm", 0.031, 6);
        assert_eq!(said(), "+0.5 cm a week (-0.2 to +1.0), p 0.03, from 6 readings");
        let german = "+0,5 cm pro Woche (-0,2 bis +1,0), p 0,03, aus 6 Messwerten";
        assert_eq!(speaking(Language::De, said), german);
        let degrees = range_trend(slope, -1.0, "deg", 0.031, 1);
        assert_eq!(degrees, "+0.5° a week (-0.2 to +1.0), p 0.03, from 1 reading");
        let compared = speaking(Language::De, || load_compared(1.2));
        assert!(compared.contains(" 1,20-mal "), "{compared}");
    }
}
