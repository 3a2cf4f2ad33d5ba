//! The steady change behind a random walk that is seen through noise.

use super::level::{LevelError, LocalLevel, Moment, Normal, Start, Step, filter};

/// The change a day, if the level of a local level model drifts at an unknown steady pace besides
/// walking at random, and nothing is known of the level or the pace before the first observation.
///
/// That is generalised least squares of the observations on their days, with errors that add up as
/// the walk's do. The filter takes the place of the big matrix (de Jong, Annals of Statistics
/// 1991;19(2):1073-1083): observations and days go through the same filter, and what surprises of
/// the one is regressed on what surprises of the other.
///
/// None with observations of less than two different days.
///
/// # Errors
/// As [`filter`].
pub fn drift(per_day: f64, seen: &[Moment]) -> Result<Option<Normal>, LevelError> {
    Ok(Slope::of(per_day, seen)?.map(|found| found.drift))
}

/// A drift, with what it takes to put the same weights on something else.
pub(super) struct Slope {
    pub(super) drift: Normal,
    model: LocalLevel,
    days: Vec<Step>,
}

impl Slope {
    pub(super) fn of(per_day: f64, seen: &[Moment]) -> Result<Option<Slope>, LevelError> {
        let model = LocalLevel { per_day, start: Start::Diffuse };
        let first = seen.first().map_or(0, |seen| seen.day);
        let day = |moment: &Moment| Moment {
            value: moment.value.map(|_| moment.day.abs_diff(first) as f64),
            ..*moment
        };
        let days = filter(&model, &seen.iter().map(day).collect::<Vec<_>>())?.steps;
        let precision = weight(&days, &days);
        let shown = filter(&model, seen)?.steps;
        if precision <= 0.0 {
            return Ok(None);
        }
        let drift = Normal { mean: weight(&days, &shown) / precision, variance: 1.0 / precision };
        Ok(Some(Slope { drift, model, days }))
    }

    /// The change a day of something else that was seen at the same moments, with the same weights.
    pub(super) fn on(&self, seen: &[Moment]) -> Result<f64, LevelError> {
        let shown = filter(&self.model, seen)?.steps;
        Ok(weight(&self.days, &shown) * self.drift.variance)
    }
}

/// The sum of products of surprises, each over its variance; the first one after a diffuse start,
/// whose variance is infinite, adds nothing.
fn weight(one: &[Step], other: &[Step]) -> f64 {
    let pairs =
        one.iter().zip(other).filter_map(|(one, other)| Some((one.innovation?, other.innovation?)));
    pairs.map(|(one, other)| one.value * other.value / one.variance).sum()
}
