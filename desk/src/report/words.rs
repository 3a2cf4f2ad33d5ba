//! How the report writes dates and times, and what it calls things.

use chrono::NaiveDate;
use holdfast_core::coach::AttentionKind;
use holdfast_core::plan::Protocol;

use super::marked::Marked;
use crate::print::words::{day, day_of_year, tenths};
use crate::say;

/// A date as an element of a page made for another: the day in words, the year only where it is another
/// one.
pub(super) fn dated(date: NaiveDate, page: NaiveDate) -> Marked {
    Marked::date(date, &day(date, page))
}

/// The date that the page is made for.
pub(super) fn made_for(page: NaiveDate) -> Marked {
    let date = Marked::date(page, &day_of_year(page));
    Marked::new([date], |[date]| say::report::made_for(date))
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

/// Units such as `3 Nov 72.5 kg`, one after the other.
pub(super) fn row(points: impl Iterator<Item = String>) -> String {
    points.collect::<Vec<_>>().join(say::report::between())
}

/// What a way to measure range of motion is called.
pub(super) fn protocol(protocol: Protocol) -> &'static str {
    match protocol {
        Protocol::SitAndReach => say::report::sit_and_reach(),
        Protocol::FingertipToFloor => say::report::fingertip_to_floor(),
        Protocol::KneeToWall => say::report::knee_to_wall(),
        Protocol::ShinAngle => say::report::shin_angle(),
    }
}

/// The class a kind of look is drawn with.
pub(super) fn class(kind: AttentionKind) -> &'static str {
    match kind {
        AttentionKind::Pain => "pain",
        AttentionKind::Stall | AttentionKind::Away | AttentionKind::Conflict => "slow",
        AttentionKind::Note
        | AttentionKind::Options
        | AttentionKind::Rushed
        | AttentionKind::Slip => "note",
        AttentionKind::Progress => "gain",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_are_written_as_short_as_they_are() {
        assert_eq!([held(45), held(120), held(270)], ["45 s", "2 min", "4 min 30 s"]);
        assert_eq!([minutes(270), minutes(479), minutes(480)], ["4.5", "7.9", "8"]);
    }
}
