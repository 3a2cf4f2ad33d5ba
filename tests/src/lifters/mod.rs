//! Athletes whose true strength is known, and how near the core and the published equations come to it.

mod behaviour;
mod body;
mod chance;
mod equations;
mod promises;
mod score;
mod season;

pub use behaviour::{BEHAVIOURS, Behaviour};
pub(crate) use body::Body;
pub(crate) use chance::Chance;
pub use equations::{EQUATIONS, Equation, WAYS};
pub use promises::broken;
pub use score::{Errors, Score, Share, score};
pub use season::{Lifter, Scored, Session, crew};
