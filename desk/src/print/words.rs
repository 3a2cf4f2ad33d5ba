//! Dates, decimals and set schemes, as terminal and report write them.

use chrono::{Datelike, NaiveDate, Weekday};

use crate::say;

/// `Tue 10 Nov`; with its year on a page of another year.
pub(crate) fn day(date: NaiveDate, page: NaiveDate) -> String {
    if date.year() == page.year() {
        say::date::weekday_and_day(weekday(date), date.day(), month(date))
    } else {
        day_of_year(date)
    }
}

/// `Tue 10 Nov 2026`.
pub(crate) fn day_of_year(date: NaiveDate) -> String {
    say::date::weekday_day_and_year(weekday(date), date.day(), month(date), date.year())
}

/// `10 Nov`, where many stand in a row.
pub(crate) fn short_day(date: NaiveDate) -> String {
    say::date::day_and_month(date.day(), month(date))
}

fn weekday(date: NaiveDate) -> &'static str {
    match date.weekday() {
        Weekday::Mon => say::date::monday(),
        Weekday::Tue => say::date::tuesday(),
        Weekday::Wed => say::date::wednesday(),
        Weekday::Thu => say::date::thursday(),
        Weekday::Fri => say::date::friday(),
        Weekday::Sat => say::date::saturday(),
        Weekday::Sun => say::date::sunday(),
    }
}

fn month(date: NaiveDate) -> &'static str {
    match date.month() {
        1 => say::date::january(),
        2 => say::date::february(),
        3 => say::date::march(),
        4 => say::date::april(),
        5 => say::date::may(),
        6 => say::date::june(),
        7 => say::date::july(),
        8 => say::date::august(),
        9 => say::date::september(),
        10 => say::date::october(),
        11 => say::date::november(),
        _ => say::date::december(),
    }
}

/// Tenths as a decimal, `11.5` or `11,5`; a whole number without its `.0` when `short`.
pub(crate) fn tenths(tenths: i64, short: bool) -> String {
    let sign = if tenths < 0 { "-" } else { "" };
    let (whole, rest) = (tenths.unsigned_abs() / 10, tenths.unsigned_abs() % 10);
    if short && rest == 0 {
        return format!("{sign}{whole}");
    }
    format!("{sign}{whole}{}{rest}", catalogue::spoken().decimal())
}

/// The sign of a unit that readings are in: `cm`, and `°` where data has `deg`.
pub(crate) fn sign(unit: &str) -> &str {
    if unit == "deg" { "°" } else { unit }
}

/// A reading with its unit: `11.5 cm`, `38.0°`.
pub(crate) fn reading(read: i64, unit: &str) -> String {
    let space = if sign(unit) == "°" { "" } else { " " };
    format!("{}{space}{}", tenths(read, false), sign(unit))
}

/// The reps of a scheme's key, `8,6,5 open`, as they are read: `8-6-5 or more`.
pub(crate) fn scheme(key: &str) -> String {
    if key.is_empty() {
        return say::board::no_scheme().into();
    }
    match key.strip_suffix(" open") {
        Some(reps) => say::board::open_scheme(reps.replace(',', "-")),
        None => key.replace(',', "-"),
    }
}

#[cfg(test)]
mod tests {
    use catalogue::{Language, speaking};

    use super::*;

    fn german<T>(work: impl FnOnce() -> T) -> T {
        speaking(Language::De, work)
    }

    #[test]
    fn a_decimal_is_written_as_short_as_it_is() {
        let all = || [tenths(115, true), tenths(-40, true), tenths(-4, false), tenths(100, false)];
        assert_eq!(all(), ["11.5", "-4", "-0.4", "10.0"]);
        assert_eq!(german(all), ["11,5", "-4", "-0,4", "10,0"]);
        assert_eq!([reading(115, "cm"), reading(380, "deg")], ["11.5 cm", "38.0°"]);
    }

    #[test]
    fn another_year_is_said() {
        let date = |year| NaiveDate::from_ymd_opt(year, 11, 10).unwrap();
        let all = || [day(date(2026), date(2026)), day(date(2025), date(2026))];
        assert_eq!(all(), ["Tue 10 Nov", "Mon 10 Nov 2025"]);
        assert_eq!(german(all), ["Di 10. Nov.", "Mo 10. Nov. 2025"]);
    }

    /// English as the library that dates come from writes it; German with names of its own.
    #[test]
    fn every_month_and_weekday_has_its_name() {
        let first = NaiveDate::from_ymd_opt(2026, 1, 5).unwrap();
        for date in first.iter_days().step_by(8).take(46) {
            assert_eq!(day(date, date), date.format("%a %-d %b").to_string());
        }
        let months = (1..=12).map(|month| NaiveDate::from_ymd_opt(2026, month, 1).unwrap());
        let months: Vec<String> = german(|| months.map(short_day).collect());
        assert!(months.windows(2).all(|two| two[0] != two[1]), "{months:?}");
        assert_eq!([&months[2], &months[11]], ["1. März", "1. Dez."]);
    }

    #[test]
    fn an_open_scheme_says_or_more() {
        assert_eq!(["8,6,5 open", "10,10"].map(scheme), ["8-6-5 or more", "10-10"]);
        assert_eq!(german(|| scheme("8,6,5 open")), "8-6-5 oder mehr");
    }
}
