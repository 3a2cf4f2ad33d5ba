//! How the report writes dates, tenths and times, and what it calls things.

use std::fmt;

use askama::filters::HtmlSafe;
use chrono::{Datelike, NaiveDate};
use holdfast_core::coach::AttentionKind;

/// A date as an element of the page: the day in words, the year only where it is another one.
#[derive(Clone, Copy)]
pub(super) struct Day {
    date: NaiveDate,
    year: bool,
}

impl Day {
    /// A date on a page made for another.
    pub(super) fn on(page: NaiveDate, date: NaiveDate) -> Day {
        Day { date, year: page.year() != date.year() }
    }

    /// A date with its year.
    pub(super) fn whole(date: NaiveDate) -> Day {
        Day { date, year: true }
    }

    /// The words alone.
    pub(super) fn text(self) -> String {
        let form = if self.year { "%a %-d %b %Y" } else { "%a %-d %b" };
        self.date.format(form).to_string()
    }
}

impl fmt::Display for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "<time datetime=\"{}\">{}</time>", self.date, self.text())
    }
}

/// It writes digits and the names of days and months only.
impl HtmlSafe for Day {}

/// `10 Nov`, for an axis.
pub(super) fn short_day(date: NaiveDate) -> String {
    date.format("%-d %b").to_string()
}

/// Tenths as a decimal, `11.5`; a whole number without its `.0` when `short`.
pub(super) fn tenths(tenths: i64, short: bool) -> String {
    let sign = if tenths < 0 { "-" } else { "" };
    let (whole, rest) = (tenths.unsigned_abs() / 10, tenths.unsigned_abs() % 10);
    if short && rest == 0 { format!("{sign}{whole}") } else { format!("{sign}{whole}.{rest}") }
}

/// `4 min 30 s`.
pub(super) fn held(seconds: i64) -> String {
    match (seconds / 60, seconds % 60) {
        (0, seconds) => format!("{seconds} s"),
        (minutes, 0) => format!("{minutes} min"),
        (minutes, seconds) => format!("{minutes} min {seconds} s"),
    }
}

/// Minutes to a tenth, rounded down, so that nobody is told time that was not held.
pub(super) fn minutes(seconds: i64) -> String {
    tenths(seconds / 6, true)
}

/// The class a kind of look is drawn with.
pub(super) fn class(kind: AttentionKind) -> &'static str {
    match kind {
        AttentionKind::Pain => "pain",
        AttentionKind::Stall | AttentionKind::Away | AttentionKind::Conflict => "slow",
        AttentionKind::Options | AttentionKind::Rushed => "note",
        AttentionKind::Progress => "gain",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_written_as_short_as_they_are() {
        assert_eq!([tenths(115, true), tenths(-40, true)], ["11.5", "-4"]);
        assert_eq!([tenths(-4, false), tenths(100, false)], ["-0.4", "10.0"]);
        assert_eq!([held(45), held(120), held(270)], ["45 s", "2 min", "4 min 30 s"]);
        assert_eq!([minutes(270), minutes(479), minutes(480)], ["4.5", "7.9", "8"]);
    }

    #[test]
    fn another_year_is_said() {
        let date = |year| NaiveDate::from_ymd_opt(year, 11, 10).unwrap();
        assert_eq!(Day::on(date(2026), date(2026)).text(), "Tue 10 Nov");
        assert_eq!(Day::on(date(2026), date(2025)).text(), "Mon 10 Nov 2025");
    }
}
