//! The median of all slopes between two readings.

use super::normal::exceeded_with;
use super::readings::{TrendError, checked, score_variance_18, tied};

/// A straight line through readings that a few odd ones do not carry away.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TheilSen {
    /// The median slope between two readings of different times, in units a unit of time.
    pub slope: f64,
    /// Bounds of the slope at the confidence asked for. None where the readings are too few for it:
    /// the rank that the bound should have is past the steepest slope there is.
    pub between: Option<(f64, f64)>,
    /// Where the line stands at time zero: median reading less the slope times the median time.
    pub intercept: f64,
    /// The same, as the median of every reading less the slope times its time.
    pub joint_intercept: f64,
}

/// Finds the slope of readings, each a time and a value, in any order; several may be of one time
/// (Sen, J Am Stat Assoc 1968;63:1379-1389; bounds by his equation 2.6, ranks rounded to the nearest
/// even as in common libraries).
///
/// # Errors
/// [`TrendError`] with less than two or more than [`super::MAX_READINGS`] readings, one that is not a
/// number, all of one time, or a confidence not between 0 and 1.
pub fn theil_sen(readings: &[(f64, f64)], confidence: f64) -> Result<TheilSen, TrendError> {
    checked(readings.iter().map(|(time, _)| *time))?;
    checked(readings.iter().map(|(_, value)| *value))?;
    if !(confidence > 0.0 && confidence < 1.0) {
        return Err(TrendError::Confidence);
    }
    let mut slopes = Vec::with_capacity(readings.len() * (readings.len() - 1) / 2);
    for (index, (time, value)) in readings.iter().enumerate() {
        for (earlier, before) in &readings[..index] {
            if earlier != time {
                let slope = (value - before) / (time - earlier);
                if !slope.is_finite() {
                    return Err(TrendError::NotANumber { reading: index + 1 });
                }
                slopes.push(slope);
            }
        }
    }
    slopes.sort_by(f64::total_cmp);
    let Some(slope) = middle(&slopes) else { return Err(TrendError::OneTime) };
    let median = |of: &dyn Fn(&(f64, f64)) -> f64| {
        let mut values: Vec<f64> = readings.iter().map(of).collect();
        values.sort_by(f64::total_cmp);
        middle(&values).unwrap_or_default()
    };
    Ok(TheilSen {
        slope,
        between: bounds(readings, &slopes, confidence),
        intercept: median(&|(_, value)| *value) - slope * median(&|(time, _)| *time),
        joint_intercept: median(&|(time, value)| value - slope * time),
    })
}

fn bounds(readings: &[(f64, f64)], slopes: &[f64], confidence: f64) -> Option<(f64, f64)> {
    let ties = tied(readings.iter().map(|(time, _)| *time))
        + tied(readings.iter().map(|(_, value)| *value));
    let variance = (score_variance_18(readings.len() as f64) - ties) / 18.0;
    if variance <= 0.0 {
        return None;
    }
    let away = exceeded_with(1.0 - confidence) * variance.sqrt();
    let count = slopes.len() as f64;
    let lower = ((count - away) / 2.0).round_ties_even() - 1.0;
    let upper = ((count + away) / 2.0).round_ties_even();
    if lower < 0.0 || upper > count - 1.0 {
        return None;
    }
    Some((*slopes.get(lower as usize)?, *slopes.get(upper as usize)?))
}

/// The median of sorted values; none of none.
fn middle(sorted: &[f64]) -> Option<f64> {
    let half = sorted.len() / 2;
    let upper = *sorted.get(half)?;
    if sorted.len() % 2 == 1 { Some(upper) } else { Some(f64::midpoint(sorted[half - 1], upper)) }
}

#[cfg(test)]
mod tests {
    use proptest::collection::vec;
    use proptest::prelude::*;

    use super::*;
    use crate::motion::MAX_READINGS;

    #[test]
    fn odd_readings_are_refused() {
        let find = |readings: &[(f64, f64)]| theil_sen(readings, 0.95);
        assert_eq!(find(&[]), Err(TrendError::TooFew { found: 0 }));
        assert_eq!(find(&[(1.0, 1.0)]), Err(TrendError::TooFew { found: 1 }));
        assert_eq!(find(&[(1.0, 1.0), (1.0, 2.0)]), Err(TrendError::OneTime));
        let many = vec![(1.0, 1.0); MAX_READINGS + 1];
        assert_eq!(find(&many), Err(TrendError::TooMany { found: MAX_READINGS + 1 }));
        for odd in [f64::NAN, f64::INFINITY, -1e13, 1e300] {
            let refused = Err(TrendError::NotANumber { reading: 2 });
            assert_eq!(find(&[(1.0, 1.0), (2.0, odd)]), refused);
            assert_eq!(find(&[(1.0, 1.0), (odd, 2.0)]), refused);
        }
        let steep = [(0.0, 0.0), (f64::MIN_POSITIVE, 1e12)];
        assert_eq!(find(&steep), Err(TrendError::NotANumber { reading: 2 }));
        for confidence in [0.0, 1.0, -0.5, 2.0, f64::NAN] {
            let found = theil_sen(&[(1.0, 1.0), (2.0, 2.0)], confidence);
            assert_eq!(found, Err(TrendError::Confidence));
        }
    }

    /// Counted from all orders of four values: the steepest rise alone is 1 in 24, so four readings
    /// never bound a slope with 95 %, whatever a clamped formula says.
    #[test]
    fn too_few_readings_have_a_slope_without_bounds() {
        let four = [(1.0, 3.0), (2.0, 4.0), (3.0, 5.5), (4.0, 6.0)];
        let found = theil_sen(&four, 0.95).unwrap();
        assert_eq!(found.between, None);
        assert!(found.slope > 0.0);
        assert_eq!(theil_sen(&[(1.0, 5.0), (2.0, 5.0)], 0.5).unwrap().between, None);
    }

    proptest! {
        /// Turning and moving the plane turns and moves the line: y to a + b x + c y.
        #[test]
        fn follows_the_readings(
            values in vec(-1000_i32..1000, 2..40), a in -100_i32..100, b in -100_i32..100,
            c in prop_oneof![-20_i32..0, 1_i32..20],
        ) {
            let line = |a: i32, b: i32, c: i32| {
                let readings: Vec<(f64, f64)> = (0..)
                    .zip(&values)
                    .map(|(time, value)| (time.into(), (a + b * time + c * value).into()))
                    .collect();
                theil_sen(&readings, 0.9).unwrap()
            };
            let (plain, turned) = (line(0, 0, 1), line(a, b, c));
            let (a, b, c) = (f64::from(a), f64::from(b), f64::from(c));
            prop_assert!((turned.slope - (b + c * plain.slope)).abs() < 1e-8);
            prop_assert!((turned.joint_intercept - (a + c * plain.joint_intercept)).abs() < 1e-7);
        }

        /// The order readings come in does not matter, and the bounds hold the slope.
        #[test]
        fn order_does_not_matter(
            readings in vec((0_i32..50, -1000_i32..1000), 2..40).prop_shuffle()
        ) {
            let readings: Vec<(f64, f64)> =
                readings.iter().map(|(time, value)| ((*time).into(), (*value).into())).collect();
            let mut sorted = readings.clone();
            sorted.sort_by(|one, two| one.partial_cmp(two).unwrap());
            let found = theil_sen(&readings, 0.95);
            prop_assert_eq!(found, theil_sen(&sorted, 0.95));
            if let Ok(TheilSen { slope, between: Some((low, high)), .. }) = found {
                prop_assert!(low <= slope && slope <= high);
            }
        }
    }
}
