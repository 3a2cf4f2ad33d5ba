//! How long calls take.

use std::hint::black_box;
use std::time::{Duration, Instant};

/// What a call gives, and the shortest time of so many calls. Not the median: on a machine that others
/// use, a long call is interrupted and a short one is not, which would flatter the short one.
///
/// # Panics
/// Without a call.
pub fn fastest<T>(times: u32, mut call: impl FnMut() -> T) -> (T, Duration) {
    let timed = |_| {
        let begun = Instant::now();
        (black_box(call()), begun.elapsed())
    };
    (0..times).map(timed).min_by_key(|timed| timed.1).unwrap()
}

/// How long the processors have worked for this process, all its threads together, in steps of 10 ms: what a call takes
/// on a machine that others use too. Nothing where the system is not Linux.
pub fn worked() -> Duration {
    let stat = std::fs::read_to_string("/proc/self/stat").unwrap_or_default();
    // The second field is a name in brackets, which may have anything in it.
    let fields = stat.rsplit_once(')').map_or("", |(_, rest)| rest).split_whitespace();
    let ticks: u64 = fields.skip(11).take(2).filter_map(|field| field.parse::<u64>().ok()).sum();
    Duration::from_millis(ticks * 10)
}

/// The middle one of some times.
///
/// # Panics
/// Without a time.
pub fn median(mut times: Vec<Duration>) -> Duration {
    times.sort_unstable();
    times[times.len() / 2]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[cfg(target_os = "linux")]
    #[test]
    fn work_is_counted_and_waiting_is_not() {
        let before = worked();
        std::thread::sleep(Duration::from_millis(100));
        let begun = Instant::now();
        while worked() < before + Duration::from_millis(50) {
            assert!(begun.elapsed() < Duration::from_secs(60), "no work is counted");
        }
        assert!(begun.elapsed() >= Duration::from_millis(10));
    }

    #[test]
    fn the_median_is_the_middle_one() {
        let of =
            |millis: &[u64]| median(millis.iter().copied().map(Duration::from_millis).collect());
        assert_eq!(of(&[9, 1, 5]), Duration::from_millis(5));
        assert_eq!(of(&[4]), Duration::from_millis(4));
    }
}
