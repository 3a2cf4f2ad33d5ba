//! One step of a linear filter with partial gains and limits.
//!
//! The Kalman filter's measurement update (Durbin and Koopman, Time Series Analysis by State Space
//! Methods, chapter 4) for one observation of four numbers, with two additions: each number takes only
//! part of what an observation would move it by, and an observation may be no value but a limit that
//! the value lies above.

use super::normal::{Above, above};

/// So many numbers are kept.
pub const SIZE: usize = 4;

/// The numbers of a state and how sure they are.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct State {
    /// The means.
    pub mean: [f64; SIZE],
    /// The covariance, symmetric.
    pub covariance: [[f64; SIZE]; SIZE],
}

/// An observation: the numbers in its proportions, and an error of its own.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Observation {
    /// How much of each number is in it.
    pub design: [f64; SIZE],
    /// What was seen.
    pub seen: Seen,
    /// The variance of its own error, above 0.
    pub variance: f64,
}

/// What was seen of a value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Seen {
    /// The value.
    Exactly(f64),
    /// Only that it lies above this.
    Above(f64),
}

/// How observations are taken in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Taking {
    gains: [f64; SIZE],
    /// What part of its change each number of the covariance takes: `g + h - g h`.
    parts: [[f64; SIZE]; SIZE],
    largest: f64,
}

impl Taking {
    /// With the part of its gain that each number takes, 0 to 1, and the largest surprise that is taken in,
    /// in its standard deviations: a larger one counts as this.
    pub const fn new(gains: [f64; SIZE], largest: f64) -> Taking {
        let mut parts = [[0.0; SIZE]; SIZE];
        let mut at = 0;
        while at < SIZE * SIZE {
            let (g, h) = (gains[at / SIZE], gains[at % SIZE]);
            parts[at / SIZE][at % SIZE] = g + h - g * h;
            at += 1;
        }
        Taking { gains, parts, largest }
    }
}

/// What an observation was foretold as, and how far from it it was.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Surprise {
    /// What was foretold.
    pub foretold: f64,
    /// The variance around it, the observation's own error included.
    pub variance: f64,
    /// The surprise that was taken in. For a limit, the mean of what lies above it, less what was
    /// foretold.
    pub value: f64,
}

impl State {
    /// The mean of an observation to come, and the variance around it without its own error.
    pub fn foretell(&self, design: &[f64; SIZE]) -> (f64, f64) {
        (dot(design, &self.mean), dot(design, &self.shared_with(design)))
    }

    /// Takes an observation in.
    ///
    /// A partial gain keeps the covariance true to what is done: Schmidt's consider filter (Advances in
    /// Control Systems 1966;3:293-340), for parts between none and all Brink's partial update (Journal
    /// of Guidance, Control, and Dynamics 2017;40(9):2214-2228; both from memory). Of a limit, the mean
    /// and the variance of the normal above it take the place of the value and of its certainty.
    ///
    /// The next observation waits for this one's covariance, so that is what costs time: two sums of
    /// products, a division, one product and one difference. Whatever is rare, and every root, is kept
    /// out of that chain and out of the way of what it holds in registers.
    #[inline]
    pub fn take(&mut self, row: &Observation, how: &Taking) -> Surprise {
        let shared = self.shared_with(&row.design);
        let foretold = dot(&row.design, &self.mean);
        let variance = dot(&row.design, &shared) + row.variance;
        let (surprise, left) = match row.seen {
            Seen::Exactly(value) => (value - foretold, 0.0),
            Seen::Above(limit) => beyond(limit - foretold, variance),
        };
        let value = how.held(surprise, variance);
        let (moved, explained) = (value / variance, (1.0 - left) / variance);
        for one in 0..SIZE {
            self.mean[one] += how.gains[one] * shared[one] * moved;
            // Half of it is worked out and the other half copied: less work, and never askew.
            for other in one..SIZE {
                let taken = how.parts[one][other] * (shared[one] * shared[other]);
                self.covariance[one][other] -= taken * explained;
                self.covariance[other][one] = self.covariance[one][other];
            }
        }
        Surprise { foretold, variance, value }
    }

    /// The covariance of each number with an observation. As the covariance is symmetric, its rows are
    /// summed: four numbers at a time, which a processor does in pairs.
    #[inline]
    fn shared_with(&self, design: &[f64; SIZE]) -> [f64; SIZE] {
        let [first, second, third, fourth] = &self.covariance;
        std::array::from_fn(|at| dot(design, &[first[at], second[at], third[at], fourth[at]]))
    }
}

impl Taking {
    /// A surprise, or the largest one that is taken in.
    #[inline]
    fn held(&self, surprise: f64, variance: f64) -> f64 {
        if surprise * surprise > self.largest * self.largest * variance {
            self.cut(surprise, variance)
        } else {
            surprise
        }
    }

    /// The largest surprise. Rare, so its root is no part of the loop.
    #[cold]
    #[inline(never)]
    fn cut(&self, surprise: f64, variance: f64) -> f64 {
        (self.largest * variance.sqrt()).copysign(surprise)
    }
}

/// The surprise in a limit that lies so far above what was foretold, and the share of the variance that it
/// leaves. Long, so it is called: written out it would take the registers that the rest lives in.
#[inline(never)]
fn beyond(limit: f64, variance: f64) -> (f64, f64) {
    let deviation = variance.sqrt();
    let Above { mean, variance: left } = above(limit / deviation);
    (mean * deviation, left)
}

fn dot(one: &[f64; SIZE], other: &[f64; SIZE]) -> f64 {
    (one[0] * other[0] + one[1] * other[1]) + (one[2] * other[2] + one[3] * other[3])
}
