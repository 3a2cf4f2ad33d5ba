//! How far back something may be written afterwards.

use chrono::NaiveDate;

use crate::instant::Instant;

/// How many weeks back a session may be written: who remembers more wrote it down elsewhere. Common practice,
/// no source.
pub(super) const WEEKS: i64 = 4;

/// True for a date of the last weeks, today included.
pub(super) fn is_lately(date: NaiveDate, at: &Instant) -> bool {
    (0..=WEEKS * 7).contains(&(at.date() - date).num_days())
}
