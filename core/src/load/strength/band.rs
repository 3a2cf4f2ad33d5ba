//! What a set is made of, and the reps to expect of it.

use super::curve::Heights;
use super::filter::SIZE;
use crate::mass::{Mass, MassUnit};

/// Good reps to expect of an open set, each 0 to [`super::MOST_REPS`]; the latter means "or more", and 0
/// that the load is not expected to move.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RepsBand {
    /// The fewest.
    pub low: u32,
    /// The most likely count.
    pub likely: u32,
    /// The most.
    pub high: u32,
}

/// The log of a load in kilograms.
pub(super) fn log(load: Mass) -> f64 {
    load.for_drawing(MassUnit::Kg).ln()
}

/// What a set at a load is made of: level, less slope times the load, less what is hidden in it.
pub(super) fn design(load: f64, counted: bool, rated: bool) -> [f64; SIZE] {
    let part = |there: bool| if there { -1.0 } else { 0.0 };
    [1.0, -load, part(counted), part(rated)]
}

/// The reps of a set that is foretold with a standard deviation, `reach` of them to each side. The
/// outer edges, half a rep beyond the ends, are those nearest to the exact ones.
pub(super) fn band(heights: Heights, mean: f64, deviation: f64, reach: f64) -> RepsBand {
    let likely = heights.reached(mean, true);
    let (low, high) = (mean - reach * deviation, mean + reach * deviation);
    // Not one rep has all that lies below half a rep: nothing nearer to round to.
    let moves = low > heights.beyond(0);
    let low = if moves { heights.reached(low, false) + 1 } else { 0 };
    RepsBand { low: low.min(likely), likely, high: heights.reached(high, false).max(likely) }
}
