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

    #[test]
    fn the_median_is_the_middle_one() {
        let of =
            |millis: &[u64]| median(millis.iter().copied().map(Duration::from_millis).collect());
        assert_eq!(of(&[9, 1, 5]), Duration::from_millis(5));
        assert_eq!(of(&[4]), Duration::from_millis(4));
    }
}
