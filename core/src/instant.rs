//! Moments as a shell reports them: the core itself never asks for the time.

use chrono::{DateTime, FixedOffset, NaiveDate, TimeZone};
use serde::{Deserialize, Serialize};

/// A moment seen by two clocks of one device.
///
/// The wall clock may be set, or jump with a time zone; the boot clock only runs forward but starts
/// again with each boot. Each is worth having, so both are kept.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct Instant {
    /// Milliseconds since 1970-01-01T00:00:00Z by the wall clock.
    pub wall_ms: i64,
    #[cfg(not(feature = "other-surface"))]
    /// The wall clock's offset from UTC, minutes east.
    pub offset_min: i32,
    /// Milliseconds since boot, counting sleep.
    pub boot_ms: i64,
    #[cfg(feature = "other-surface")]
    /// The wall clock's offset from UTC, minutes east.
    pub offset_min: i32,
    /// Names the boot that `boot_ms` counts from.
    pub boot_id: String,
}

/// A length of time, in milliseconds, where it crosses: each language has a type of its own for it.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize,
)]
#[serde(transparent)]
pub struct Millis(pub i64);

/// What two moments say about the time between them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Elapsed {
    /// Milliseconds by the boot clock of one boot, from 0: sure, whatever the wall clock did.
    Boot(i64),
    /// Milliseconds by the wall clock across boots, from 0: right as long as nobody set it between.
    Wall(i64),
    /// Nothing: across boots the wall clock ran backwards, so it was set.
    Unknown,
}

/// The last day of the year 9999, which RFC 3339 can still write.
const MOST_MS: i64 = 253_402_214_400_000;

impl Instant {
    /// A moment of which only the wall clock is known: as if in a boot of its own.
    pub(crate) fn by_wall(wall_ms: i64, offset_min: i32) -> Instant {
        Instant { wall_ms, offset_min, boot_ms: 0, boot_id: "not known".into() }
    }

    /// True for a wall clock and offset that an entry can carry.
    pub fn is_sane(&self) -> bool {
        (0..MOST_MS).contains(&self.wall_ms) && self.offset_min.abs() < 24 * 60
    }

    /// What is known of the time from `earlier` to this moment.
    ///
    /// Within one boot the boot clock decides, whatever happened to the wall clock; where it says
    /// that `earlier` came later, no time passed. Across boots only the wall clock is left; where
    /// that ran backwards nothing is known. The offset never matters: a wall clock is kept in UTC.
    pub fn elapsed_since(&self, earlier: &Instant) -> Elapsed {
        if self.boot_id == earlier.boot_id {
            return Elapsed::Boot(self.boot_ms.saturating_sub(earlier.boot_ms).max(0));
        }
        match self.wall_ms.saturating_sub(earlier.wall_ms) {
            ms if ms < 0 => Elapsed::Unknown,
            ms => Elapsed::Wall(ms),
        }
    }

    /// Milliseconds from `earlier` to this moment, never negative: what [`Instant::elapsed_since`]
    /// knows, and where it knows nothing, nothing.
    pub fn ms_since(&self, earlier: &Instant) -> i64 {
        match self.elapsed_since(earlier) {
            Elapsed::Boot(ms) | Elapsed::Wall(ms) => ms,
            Elapsed::Unknown => 0,
        }
    }

    /// True when this moment came after `other`, as far as a moment `now` of the same device can
    /// tell: what was seen in the boot that runs now came after all of other boots, the boot clock
    /// orders what is of one boot, and the wall clock the rest.
    pub fn is_after(&self, other: &Instant, now: &Instant) -> bool {
        let (this, that) = (self.boot_id == now.boot_id, other.boot_id == now.boot_id);
        match (this, that) {
            (true, false) => true,
            (false, true) => false,
            _ if self.boot_id == other.boot_id => self.boot_ms > other.boot_ms,
            _ => self.wall_ms > other.wall_ms,
        }
    }

    /// The wall clock's reading with its offset; an offset that cannot be is taken as UTC.
    pub fn local(&self) -> DateTime<FixedOffset> {
        let seconds = self.offset_min.saturating_mul(60);
        let utc = FixedOffset::east_opt(0);
        let zone = FixedOffset::east_opt(seconds).or(utc);
        let wall_ms = self.wall_ms.clamp(-MOST_MS, MOST_MS);
        zone.and_then(|zone| zone.timestamp_millis_opt(wall_ms).single()).unwrap_or_default()
    }

    /// The local time: `18:40`.
    pub(crate) fn time_of_day(&self) -> String {
        self.local().format("%H:%M").to_string()
    }

    /// The local date.
    pub fn date(&self) -> NaiveDate {
        self.local().date_naive()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(wall_ms: i64, boot_ms: i64, boot_id: &str) -> Instant {
        Instant { wall_ms, offset_min: 60, boot_ms, boot_id: boot_id.into() }
    }

    #[test]
    fn the_boot_clock_decides_within_a_boot_and_the_wall_clock_across() {
        let start = at(1_000_000, 50_000, "a");
        assert_eq!(at(0, 53_000, "a").ms_since(&start), 3_000, "wall clock set back");
        assert_eq!(at(1_009_000, 100, "b").ms_since(&start), 9_000, "rebooted");
        assert_eq!(at(900_000, 100, "b").ms_since(&start), 0, "rebooted and set back");
        assert_eq!(at(0, 49_000, "a").ms_since(&start), 0, "ran backwards");
        assert_eq!(at(1_009_000, 100, "b").elapsed_since(&start), Elapsed::Wall(9_000));
        assert_eq!(at(999_999, 100, "b").elapsed_since(&start), Elapsed::Unknown);
        assert_eq!(at(0, 49_000, "a").elapsed_since(&start), Elapsed::Boot(0));
    }

    #[test]
    fn what_was_seen_in_this_boot_came_last() {
        let (before, now) = (at(5_000_000, 9_000, "a"), at(1_000_000, 4_000, "b"));
        let here = at(900_000, 3_000, "b");
        assert!(here.is_after(&before, &now), "though the wall clock says otherwise");
        assert!(!before.is_after(&here, &now));
        assert!(at(0, 3_001, "b").is_after(&here, &now) && !here.is_after(&here, &now));
        assert!(at(5_000_001, 0, "c").is_after(&before, &now), "two boots that are gone");
    }

    #[test]
    fn dates_are_local() {
        // 2026-11-24T23:30:00Z is the 25th an hour east.
        assert_eq!(at(1_795_563_000_000, 0, "a").date().to_string(), "2026-11-25");
    }

    #[test]
    fn absurd_offsets_and_times_do_not_panic() {
        for (wall_ms, offset_min) in [(i64::MAX, 0), (i64::MIN, 0), (0, i32::MAX), (0, i32::MIN)] {
            let _ = Instant { wall_ms, offset_min, boot_ms: 0, boot_id: String::new() }.date();
        }
    }
}
