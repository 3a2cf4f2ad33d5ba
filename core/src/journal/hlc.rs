//! A hybrid logical clock: an order for entries that survives wrong wall clocks.
//!
//! Kulkarni et al., "Logical Physical Clocks", OPODIS 2014. It places a record among
//! others and breaks ties between concurrent corrections; who had seen what is decided by an entry's
//! parents, never by a clock.

use serde::{Deserialize, Serialize};

/// A hybrid logical time: ordered by milliseconds, then by counter.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize,
)]
pub struct Hlc {
    /// Milliseconds since 1970, the largest seen so far.
    pub ms: i64,
    /// Counts entries within one millisecond, or while the wall clock lags behind `ms`.
    pub count: u32,
}

/// A clock further ahead than this is not followed: one wrong phone must not drag a crew along.
pub const MAX_AHEAD_MS: i64 = 24 * 60 * 60 * 1000;

/// What is written together counts on from a multiple of this, so that a journal tells what was one tap
/// from what was another of the same millisecond.
const TOGETHER: u32 = 128;

/// Counts stay below this, or the order as one number would not tell them apart.
const MOST_COUNT: u32 = 1 << 20;

impl Hlc {
    /// The time of the first entry of those written together when the wall clock reads `wall_ms`.
    #[must_use]
    pub fn tick(self, wall_ms: i64) -> Hlc {
        if wall_ms > self.ms {
            Hlc { ms: wall_ms, count: 0 }
        } else {
            let count = (self.count / TOGETHER).saturating_add(1).saturating_mul(TOGETHER);
            // A millisecond has room for so many; the next one goes on.
            match count < MOST_COUNT {
                true => Hlc { count, ..self },
                false => Hlc { ms: self.ms.saturating_add(1), count: 0 },
            }
        }
    }

    /// The time of the next entry of those written together.
    #[must_use]
    pub fn next(self) -> Hlc {
        Hlc { count: self.count.saturating_add(1), ..self }
    }

    /// The time as one number that sorts as it does: milliseconds, then the count in the lowest 20 bits.
    /// It says the same of all times after the year 2248, and of the last counts in a million.
    pub(crate) fn place(self) -> i64 {
        let (ms, count) = (self.ms.clamp(0, (1 << 43) - 1), self.count.min(MOST_COUNT - 1));
        (ms << 20) | i64::from(count)
    }

    /// True for the times of entries that were written together.
    pub fn is_with(self, other: Hlc) -> bool {
        self.ms == other.ms && self.count / TOGETHER == other.count / TOGETHER
    }

    /// The clock after seeing `other`; a time too far ahead of `wall_ms` is not followed.
    #[must_use]
    pub fn observe(self, other: Hlc, wall_ms: i64) -> Hlc {
        if other.ms > wall_ms.saturating_add(MAX_AHEAD_MS) { self } else { self.max(other) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ticks_only_go_up_even_when_the_wall_clock_goes_back() {
        let first = Hlc::default().tick(1000);
        let second = first.tick(1000);
        let third = second.tick(10);
        let fourth = third.tick(2000);
        assert_eq!(second, Hlc { ms: 1000, count: 128 });
        assert_eq!(third, Hlc { ms: 1000, count: 256 });
        assert!(second.next().is_with(second) && !second.next().is_with(third));
        assert_eq!(fourth, Hlc { ms: 2000, count: 0 });
        assert!(first < second && second < third && third < fourth);
        // An hour of a clock that is a day ahead: each tap has its place.
        let mut now = fourth;
        for _ in 0..20_000 {
            let next = now.tick(10);
            assert!(now < next && now.place() < next.place(), "{now:?} {next:?}");
            now = next;
        }
        let places = [first, second, second.next(), third, fourth].map(Hlc::place);
        assert!(places.is_sorted_by(|one, next| one < next), "{places:?}");
    }

    #[test]
    fn a_clock_far_ahead_is_not_followed() {
        let own = Hlc { ms: 5000, count: 0 };
        let near = Hlc { ms: 5000 + MAX_AHEAD_MS, count: 3 };
        let far = Hlc { ms: 5001 + MAX_AHEAD_MS, count: 3 };
        assert_eq!(own.observe(near, 5000), near);
        assert_eq!(own.observe(far, 5000), own);
    }
}
