//! One strength model for an athlete and a movement: current strength with its interval, the reps
//! to expect at a load, and the trend.
//!
//! The state is the natural logarithm of the one-rep max in kilograms. It walks at random, and its
//! variance grows with the days between training days ([`filter`]). A training day is one
//! observation: the logarithm of the load, plus [`curve()`] of published equations at the reps done,
//! plus what the sets before had taken. Every constant stands in [`Model`] with its origin.
//!
//! What keeps it honest and simple:
//!
//! - How much a set counts depends on its kind, never on its reps or load. So more reps or more load
//!   can never lower the strength that is read from them.
//! - What the curve gets wrong about one person it gets wrong in all their sets, so it is not
//!   averaged away. The mean curve value behind the level is carried along, and everything said is
//!   wider by [`Model::curve_spread`] times the distance from it: a load near those trained with is
//!   foretold well, one far away less so, and a one-rep max read from high reps is wide.
//! - One athlete is steadier than another, so all other errors are scaled by the size of the
//!   athlete's own surprises. That leaves the level as it is.

mod answer;
mod curve;
mod drift;
mod level;
mod model;
mod quantile;
mod seen;
#[cfg(test)]
mod tests;

pub use answer::{Interval, RepsBand, Strength, Trend, strength, strength_by};
pub use curve::{MOST_REPS, curve};
pub use drift::drift;
pub use level::{
    Filtered, Innovation, LevelError, LocalLevel, Moment, Normal, Start, Step, filter,
};
pub use model::Model;
pub use quantile::Coverage;
pub use seen::{Evidence, SetSeen, StrengthError};
