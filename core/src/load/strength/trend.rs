//! Where strength is going.

use std::collections::VecDeque;

use chrono::NaiveDate;

use super::drift::{Moment, drift};
use super::filter::State;
use super::model::{HIDDEN, Model, RATING, SLOPE};
use super::normal::deviations;
use super::ratio::Interval;

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

/// A trend is taken over at least two weeks and at most six. Chosen, no source.
pub(super) const TREND_DAYS: (i64, i64) = (14, 42);

/// A row that says more than "at least so many".
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Reading {
    pub(super) on: NaiveDate,
    pub(super) day: i64,
    /// The log of its load over the reference load.
    pub(super) load: f64,
    /// The height that was read.
    pub(super) height: f64,
    /// 1 for a counted open set, else 0.
    pub(super) counted: f64,
    /// 1 for a rated set, else 0.
    pub(super) rated: f64,
    /// The variance of its rating.
    pub(super) rating: f64,
}

/// The steady change of the one-rep max that fits best what was read in the six weeks before a day: see
/// [`super::drift()`]. None where less than two weeks were read, and so none where loads were only made
/// as planned: then it would be the plan that moved.
///
/// A row shows `ln(load) + (height + hidden) / slope`. Reps that change over the weeks bring in what is
/// unsure of the slope, and a change between counted and rated sets what is unsure of these, as far as
/// each of them drifts.
pub(super) fn trend(
    state: &State,
    scale: f64,
    readings: &VecDeque<Reading>,
    today: i64,
) -> Option<Trend> {
    let recent = || readings.iter().filter(|reading| today - reading.day <= TREND_DAYS.1);
    let (from, to) = (recent().next()?, recent().next_back()?);
    if to.day - from.day < TREND_DAYS.0 {
        return None;
    }
    let (slope, hidden) = (state.mean[SLOPE], state.mean[HIDDEN]);
    // A curve turned over is no curve.
    if slope <= 0.0 {
        return None;
    }
    let moment = |reading: &Reading| {
        let height = reading.height + reading.counted * hidden;
        Moment {
            day: reading.day,
            values: [reading.load + height / slope, height, reading.counted, reading.rated],
            variance: (Model::USUAL.open_variance(scale) + reading.rating) / (slope * slope),
        }
    };
    let moments: Vec<_> = recent().map(moment).collect();
    let found = drift(Model::USUAL.per_day / (slope * slope), &moments)?;
    let [change, height, counted, rated] = found.per_day;
    let unsure = |by: f64, at: usize| by * by * state.covariance[at][at];
    let variance = found.variance
        + unsure(height / (slope * slope), SLOPE)
        + unsure(counted / slope, HIDDEN)
        + unsure(rated / slope, RATING);
    let reach = deviations(0.2) * variance.sqrt();
    let week = |per_day: f64| (7.0 * per_day).exp_m1();
    let [low, likely, high] = [change - reach, change, change + reach].map(week);
    Some(Trend { per_week: Interval { low, likely, high }, from: from.on, to: to.on })
}
