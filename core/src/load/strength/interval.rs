//! What is said of somebody's strength: a number with its interval, reps, a trend.

use chrono::NaiveDate;

/// A number with an interval around it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Interval {
    /// The lower end.
    pub low: f64,
    /// As likely below as above.
    pub likely: f64,
    /// The upper end.
    pub high: f64,
}

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

/// The trend over the last weeks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Trend {
    /// The change of strength per week, as a share of it: 0.01 is one percent a week.
    pub per_week: Interval,
    /// The first day trained that it was taken over.
    pub from: NaiveDate,
    /// The last day trained, 14 to 42 days later.
    pub to: NaiveDate,
}
