//! One strength model for an athlete and a movement: current strength with its interval, the reps
//! to expect at a load, and the trend.
//!
//! Four numbers are followed from day to day: the height on [`curve()`] that today's strength gives at a
//! reference load, how steep the athlete's own reps are against load, the reserve hidden behind a
//! count, and the error of the athlete's ratings. A set at a load shows the first, less the second
//! times the log of load over reference load, less the reserve where it was counted and the error
//! where it was rated, less what the sets before had taken. That is linear, so a Kalman filter
//! ([`State::take`]) does it; the one-rep max is where the height comes to nothing.
//!
//! What keeps it honest:
//!
//! - A day is one row, and which set is read is decided without looking at what came out.
//! - A set made as planned says "at least so many" and no more: it is taken in as a limit.
//! - Reserve and ratings are never learned and the slope hardly: a training log does not hold them. They
//!   stay part of how unsure everything said is.
//! - One athlete is steadier than another, so the error of a set is scaled by the size of the athlete's own
//!   surprises, and bands of reps by how many of them held ([`Adaptive`]).
//! - Nothing is said before a set said more than "at least", and no one-rep max where it is too wide.
//!
//! Every constant stands in `model.rs` with its origin.

mod adaptive;
mod answer;
mod band;
mod curve;
mod drift;
mod filter;
mod follow;
mod model;
mod normal;
mod ratio;
mod seen;
#[cfg(test)]
mod tests;
mod trend;

pub use adaptive::{Adaptive, Ended, OUTSIDE};
pub use answer::Strength;
pub use band::RepsBand;
pub use curve::{MOST_REPS, curve};
pub use drift::{Drift, Moment, drift};
pub use filter::{Observation, SIZE, Seen, State, Surprise, Taking};
pub use follow::{strength, strength_on};
pub use normal::{Above, above, deviations};
pub use ratio::{Interval, Pair};
pub use seen::{Evidence, SetSeen, StrengthError};
pub use trend::Trend;
