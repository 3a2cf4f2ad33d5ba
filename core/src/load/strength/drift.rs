//! The steady change behind a random walk that is seen through noise.

/// What was seen on a day, of several series at once.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moment<const N: usize> {
    /// The day, counted from anywhere; never before the one ahead of it in a list.
    pub day: i64,
    /// A value of each series.
    pub values: [f64; N],
    /// The variance of the error around the first of them, above 0.
    pub variance: f64,
}

/// The change a day of several series, and the variance of the first one's.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drift<const N: usize> {
    /// The change a day, all with the weights that fit the first series.
    pub per_day: [f64; N],
    /// The variance of the first.
    pub variance: f64,
}

/// The change a day, if a level drifts at an unknown steady pace besides walking at random with a variance
/// of `walk` a day, and nothing is known of level or pace before the first observation.
///
/// That is generalised least squares of the observations on their days, with errors that add up as
/// the walk's do. A filter takes the place of the big matrix (de Jong, Annals of Statistics
/// 1991;19(2):1073-1083): observations and days go through the same one, and what surprises of
/// the one is regressed on what surprises of the other.
///
/// None with observations of less than two different days.
pub fn drift<const N: usize>(walk: f64, seen: &[Moment<N>]) -> Option<Drift<N>> {
    let (first, rest) = seen.split_first()?;
    let (mut day, mut since) = (first.day, 0.0);
    let (mut levels, mut variance) = (first.values, first.variance);
    let (mut weights, mut precision) = ([0.0; N], 0.0);
    for moment in rest {
        let predicted = variance + moment.day.abs_diff(day) as f64 * walk;
        day = moment.day;
        let all = predicted + moment.variance;
        let gain = predicted / all;
        let late = moment.day.abs_diff(first.day) as f64 - since;
        since += gain * late;
        precision += late * late / all;
        for ((level, value), weight) in levels.iter_mut().zip(moment.values).zip(&mut weights) {
            let surprise = value - *level;
            *level += gain * surprise;
            *weight += late * surprise / all;
        }
        variance = gain * moment.variance;
    }
    (precision > 0.0).then(|| Drift {
        per_day: weights.map(|weight| weight / precision),
        variance: 1.0 / precision,
    })
}
