//! The moment, from this machine's clocks: the core never asks for it itself.

use chrono::{Local, NaiveDate, Offset, TimeZone, Utc};
use holdfast_core::Instant;

/// This moment.
pub(crate) fn now() -> Instant {
    let local = Local::now();
    let wall_ms = local.timestamp_millis();
    let (boot_ms, boot_id) = boot(wall_ms);
    Instant { wall_ms, offset_min: local.offset().fix().local_minus_utc() / 60, boot_ms, boot_id }
}

/// Today's date here.
pub(crate) fn today() -> NaiveDate {
    now().date()
}

/// Eight in the evening of a date by this machine's zone, for looking at another day.
pub(crate) fn evening_of(date: NaiveDate) -> Instant {
    let evening = date.and_hms_opt(20, 0, 0).unwrap_or_default();
    let local = Local.from_local_datetime(&evening).earliest();
    let (wall_ms, offset_min) = match local {
        Some(at) => (at.timestamp_millis(), at.offset().fix().local_minus_utc() / 60),
        None => (Utc.from_utc_datetime(&evening).timestamp_millis(), 0),
    };
    Instant { wall_ms, offset_min, boot_ms: 0, boot_id: "another day".into() }
}

/// Milliseconds since boot, sleep included where the system counts it, and a name for the boot.
#[cfg(unix)]
fn boot(wall_ms: i64) -> (i64, String) {
    use rustix::time::{ClockId, clock_gettime};
    #[cfg(any(target_os = "linux", target_os = "android"))]
    let clock = ClockId::Boottime;
    #[cfg(not(any(target_os = "linux", target_os = "android")))]
    let clock = ClockId::Monotonic;
    let since = clock_gettime(clock);
    let boot_ms = since.tv_sec.saturating_mul(1000) + since.tv_nsec / 1_000_000;
    let named = std::fs::read_to_string("/proc/sys/kernel/random/boot_id");
    // Without a name from the system: the minute it booted. A clock that is set changes it, and
    // then the wall clock decides, which is the best that can be known.
    let minute = || format!("booted-{}", (wall_ms - boot_ms) / 60_000);
    (boot_ms, named.map_or_else(|_| minute(), |name| name.trim().to_owned()))
}

/// Without a boot clock the wall clock stands in for it.
#[cfg(not(unix))]
fn boot(wall_ms: i64) -> (i64, String) {
    (wall_ms, "wall".into())
}
