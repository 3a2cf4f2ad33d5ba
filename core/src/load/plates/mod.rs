//! Plates over a whole ramp: the builds with the least handling, the way up to the first work set,
//! and what the federations say a bar and a disc weigh.

mod federation;
mod ramp;
mod search;
mod side;
mod warm_up;

#[cfg(test)]
mod floating;
#[cfg(test)]
mod slow;
#[cfg(test)]
mod tests;

pub use federation::{Bar as FederationBar, Colour, Disc, Federation, Tolerance, colour_of};
pub use ramp::{MOST_LOADS, Proof, Ramp, RampError, RampStep, ramp, ramp_from, ramp_with_warm_up};
pub use warm_up::{WarmUpFor, WarmUpSet, warm_up, warm_up_by_feel};
