//! Loads day by day: a week's sum, monotony and strain, the smoothed load, and one load beside
//! another.
//!
//! All of it describes. None of it is a risk of injury: `ratio` names its critics.

mod day;
mod ratio;
mod smooth;
mod week;

pub use day::{DayError, DayLoad, LARGEST_LOAD, LONGEST_SPAN, days};
pub use ratio::{ACUTE_DAYS, CHRONIC_DAYS, Compared, rolling_ratio, smoothed_ratio, weekly_ratio};
pub use smooth::{smoothed, weight_of_span};
pub use week::{Spread, Week, week};
