//! Moments, and how far apart they are.

use chrono::NaiveDate;
use holdfast_core::Instant;

/// A minute in milliseconds.
pub const MINUTE: i64 = 60_000;

/// An hour in milliseconds.
pub const HOUR: i64 = 60 * MINUTE;

/// A day in milliseconds.
pub const DAY: i64 = 24 * HOUR;

/// An hour of a date at UTC, on a boot clock that runs with it.
///
/// # Panics
/// When there is no such date or hour.
pub fn at(date: &str, hour: u32) -> Instant {
    let date: NaiveDate = date.parse().unwrap();
    let wall_ms = date.and_hms_opt(hour, 0, 0).unwrap().and_utc().timestamp_millis();
    Instant { wall_ms, offset_min: 0, boot_ms: wall_ms, boot_id: "test".into() }
}

/// So many milliseconds later, by both clocks.
pub fn later(from: &Instant, ms: i64) -> Instant {
    Instant { wall_ms: from.wall_ms + ms, boot_ms: from.boot_ms + ms, ..from.clone() }
}
