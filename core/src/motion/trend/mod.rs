//! Whether readings go anywhere, by methods that one odd reading does not carry away.

mod mann_kendall;
mod normal;
mod readings;
mod theil_sen;

pub use mann_kendall::{MannKendall, mann_kendall};
pub use readings::{MAX_READINGS, TrendError, over_days};
pub use theil_sen::{TheilSen, theil_sen};
