//! Small words: dates, durations, counts, lists, sides.

use catalogue::spoken;
use chrono::{Datelike, NaiveDate, Weekday};

use super::name::{place, sign};
use super::today::other_year;
use crate::care::{Place, Sign};
use crate::plan::{MeasureUnit, MeasuredWhen, Protocol};
use crate::say;

/// What waits for the next exchange.
pub(crate) fn waiting(entries: u64) -> String {
    say::plain::waiting(entries)
}

/// `Tue 10 Nov`; with its year where that is not the one it is read in.
pub(crate) fn day(date: NaiveDate) -> String {
    let weekday = match date.weekday() {
        Weekday::Mon => say::plain::monday(),
        Weekday::Tue => say::plain::tuesday(),
        Weekday::Wed => say::plain::wednesday(),
        Weekday::Thu => say::plain::thursday(),
        Weekday::Fri => say::plain::friday(),
        Weekday::Sat => say::plain::saturday(),
        Weekday::Sun => say::plain::sunday(),
    };
    let month = month(date);
    match other_year(date) {
        Some(year) => say::plain::date_of_year(weekday, date.day(), month, year),
        None => say::plain::date(weekday, date.day(), month),
    }
}

/// `10 Nov`: where many days stand close together, as below a chart.
pub(crate) fn short_day(date: NaiveDate) -> String {
    match other_year(date) {
        Some(year) => say::plain::short_date_of_year(date.day(), month(date), year),
        None => say::plain::short_date(date.day(), month(date)),
    }
}

fn month(date: NaiveDate) -> &'static str {
    match date.month() {
        1 => say::plain::january(),
        2 => say::plain::february(),
        3 => say::plain::march(),
        4 => say::plain::april(),
        5 => say::plain::may(),
        6 => say::plain::june(),
        7 => say::plain::july(),
        8 => say::plain::august(),
        9 => say::plain::september(),
        10 => say::plain::october(),
        11 => say::plain::november(),
        _ => say::plain::december(),
    }
}

/// A number as it is written in code, with the decimal point or comma of the language spoken.
pub(crate) fn decimals(number: &str) -> String {
    number.replace('.', spoken().decimal().encode_utf8(&mut [0; 4]))
}

/// `2 min`, `1 min 30 s`, `45 s`: whole seconds, rounded down, so that nobody is told time that
/// was not held. The symbols are the same in every language.
pub(crate) fn clock_time(ms: i64) -> String {
    let (minutes, seconds) = (ms / 60_000, ms % 60_000 / 1000);
    match (minutes, seconds) {
        (0, seconds) => format!("{seconds} s"),
        (minutes, 0) => format!("{minutes} min"),
        (minutes, seconds) => format!("{minutes} min {seconds} s"),
    }
}

/// A side's name: of two, left and right; with more, its number; none of one.
pub(crate) fn side(side: u32, of: u32) -> Option<String> {
    match (side, of) {
        (_, ..=1) => None,
        (1, 2) => Some(say::plain::left().to_owned()),
        (2, 2) => Some(say::plain::right().to_owned()),
        (side, _) => Some(say::plain::side_number(side)),
    }
}

/// The same where it is only known whether there is another: readings of one side name none.
pub(crate) fn side_of_two(number: Option<u32>) -> Option<String> {
    number.and_then(|number| side(number, 2))
}

/// Tenths as a decimal with their unit: `11.5 cm`.
pub(crate) fn tenths(tenths: i64, unit: MeasureUnit) -> String {
    let sign = if tenths < 0 { "-" } else { "" };
    let (whole, rest) = (tenths.unsigned_abs() / 10, tenths.unsigned_abs() % 10);
    format!("{sign}{whole}{}{rest}{}", spoken().decimal(), symbol(unit))
}

/// A unit as it follows its number.
pub(super) fn symbol(unit: MeasureUnit) -> &'static str {
    match unit {
        MeasureUnit::Centimetre => " cm",
        MeasureUnit::Degree => "°",
    }
}

/// `a, b and c`.
pub(crate) fn list(items: &[String]) -> String {
    match items {
        [] => String::new(),
        [one] => one.clone(),
        [first, most @ .., last] => {
            let more = |said: String, next: &String| say::plain::list_more(said, next);
            say::plain::list_end(most.iter().fold(first.clone(), more), last)
        }
    }
}

/// `before, left: 10.5 cm`.
pub(crate) fn reading(
    when: MeasuredWhen,
    side: Option<u32>,
    reading: i64,
    protocol: Protocol,
) -> String {
    let value = tenths(reading, protocol.unit());
    match (when, side_of_two(side)) {
        (MeasuredWhen::Before, None) => say::plain::reading_before(value),
        (MeasuredWhen::After, None) => say::plain::reading_after(value),
        (MeasuredWhen::Before, Some(side)) => say::plain::reading_before_side(side, value),
        (MeasuredWhen::After, Some(side)) => say::plain::reading_after_side(side, value),
    }
}

/// `knee 5/10, flagged Tue 10 Nov`; emergency signs stand first.
pub(crate) fn flagged(at: Place, severity: u32, signs: &[Sign], on: NaiveDate) -> String {
    if signs.is_empty() {
        return say::plain::flagged(place(at), severity, day(on));
    }
    let signs: Vec<String> = signs.iter().map(|ticked| sign(*ticked).to_owned()).collect();
    say::plain::flagged_signs(list(&signs), place(at), severity, day(on))
}

/// What is flagged, in a piece with several movements: `Press-up: knee 5/10, flagged Tue 10 Nov`.
pub(crate) fn flagged_in(movement: &str, flagged: String) -> String {
    say::plain::flagged_in(movement, flagged)
}

#[cfg(test)]
mod tests {
    use catalogue::{Language, speaking};

    use super::*;

    #[test]
    fn dates_and_lists_are_said_in_both_languages() {
        let date = |month, day| NaiveDate::from_ymd_opt(2026, month, day).unwrap();
        let said = || (day(date(11, 10)), day(date(3, 1)), tenths(-115, MeasureUnit::Centimetre));
        assert_eq!(said(), ("Tue 10 Nov".into(), "Sun 1 Mar".into(), "-11.5 cm".into()));
        let german = ("Di 10. Nov.".into(), "So 1. März".into(), "-11,5 cm".into());
        assert_eq!(speaking(Language::De, said), german);
        let of = |items: &[&str]| list(&items.iter().map(ToString::to_string).collect::<Vec<_>>());
        assert_eq!([of(&[]), of(&["a"]), of(&["a", "b"])], ["", "a", "a and b"]);
        assert_eq!(of(&["a", "b", "c", "d"]), "a, b, c and d");
        assert_eq!(speaking(Language::De, || of(&["a", "b", "c"])), "a, b und c");
    }

    /// The English of a date is that of the library the rest of the program writes dates with.
    #[test]
    fn every_day_of_a_year_has_its_name() {
        let first = NaiveDate::from_ymd_opt(2027, 1, 1).unwrap();
        for date in first.iter_days().take(366) {
            assert_eq!(day(date), date.format("%a %-d %b").to_string());
        }
    }
}
