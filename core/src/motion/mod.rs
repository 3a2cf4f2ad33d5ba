//! Range of motion: what a reading means, how sure it is, where it is going, and what was stretched.

mod change;
mod dose;
mod error;
mod trend;
mod zero;

pub use change::{Change, change};
pub use dose::{
    Dose, DoseError, PLATEAU_OF_SESSION_MS, PLATEAU_OF_WEEK_MS, Short, Stretched, WeekOfStretch,
    weeks_of_stretch,
};
pub use error::{ErrorOfMeasure, MDC95_OF_SEM, TypicalError, mdc95, sem, typical_error};
pub use trend::{
    MAX_READINGS, MannKendall, TheilSen, TrendError, mann_kendall, over_days, theil_sen,
};
pub use zero::{FootLine, ZeroPoint, zero_point};
