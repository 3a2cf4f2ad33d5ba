//! A week's load, its monotony and its strain.

use super::{DayError, DayLoad};

/// Which standard deviation stands below the mean in monotony.
///
/// No text of the method that was found says which is meant, so whoever asks has to: the
/// population's gives the larger monotony, by the square root of 7/6 for a week.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Spread {
    /// The seven days are all there is: divided by 7.
    Population,
    /// The seven days stand for others: divided by 6.
    Sample,
}

/// What seven days come to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Week {
    /// The sum of the known days: the weekly load where nothing is missing.
    pub load: f64,
    /// Days whose load nobody knows.
    pub missing: usize,
    /// Mean daily load over its standard deviation, rest days counted as zero. None when a day is
    /// missing or all days are alike, as the deviation is then zero.
    pub monotony: Option<f64>,
    /// Weekly load times monotony; none where there is no monotony.
    pub strain: Option<f64>,
}

/// Sums up seven days: weekly load, monotony and strain (Foster, Med Sci Sports Exerc 1998;30:
/// 1164-1168). Loads in the caller's unit; load and strain come in it, monotony is a bare number.
///
/// # Errors
/// [`DayError::Load`] names the day whose load is none.
pub fn week(days: &[DayLoad; 7], spread: Spread) -> Result<Week, DayError> {
    let mut known = Vec::with_capacity(7);
    for (number, day) in (1..).zip(days) {
        known.extend(day.known(number)?);
    }
    let load: f64 = known.iter().sum();
    let missing = days.len() - known.len();
    let monotony = if missing == 0 { monotony(&known, load, spread) } else { None };
    Ok(Week { load, missing, monotony, strain: monotony.map(|monotony| load * monotony) })
}

fn monotony(days: &[f64], load: f64, spread: Spread) -> Option<f64> {
    // Said exactly: a mean of equal numbers may be off by a rounding, and their deviation not zero.
    if days.iter().all(|day| day == &days[0]) {
        return None;
    }
    let count = days.len() as f64;
    let mean = load / count;
    let squares: f64 = days.iter().map(|day| (day - mean).powi(2)).sum();
    let degrees = match spread {
        Spread::Population => count,
        Spread::Sample => count - 1.0,
    };
    let deviation = (squares / degrees).sqrt();
    (deviation > 0.0).then(|| mean / deviation)
}

#[cfg(test)]
mod tests {
    use proptest::array::uniform7;
    use proptest::prelude::*;

    use super::*;

    fn both(days: &[DayLoad; 7]) -> [Week; 2] {
        [Spread::Population, Spread::Sample].map(|spread| week(days, spread).unwrap())
    }

    #[test]
    fn seven_days_alike_have_no_monotony() {
        for load in [0.0, 0.1, 300.0, 1e9] {
            for found in both(&[DayLoad::Load(load); 7]) {
                assert_eq!((found.monotony, found.strain), (None, None), "{load}");
            }
        }
        assert!(
            both(&[DayLoad::Rest; 7])
                .iter()
                .all(|result| result.load == 0.0 && result.monotony.is_none())
        );
    }

    #[test]
    fn a_missing_day_is_not_a_rest_day() {
        let mut days = [300.0, 0.0, 420.0, 0.0, 450.0, 0.0, 0.0].map(DayLoad::Load);
        days[1] = DayLoad::Rest;
        assert!(
            both(&days).iter().all(|result| result.load == 1170.0 && result.monotony.is_some())
        );
        days[1] = DayLoad::Missing;
        for found in both(&days) {
            assert_eq!((found.load, found.missing), (1170.0, 1));
            assert_eq!((found.monotony, found.strain), (None, None));
        }
        days[4] = DayLoad::Load(f64::NAN);
        assert_eq!(week(&days, Spread::Sample), Err(DayError::Load { day: 5 }));
    }

    proptest! {
        /// Monotony has no unit and does not know the order of days; strain has the load's unit.
        #[test]
        fn monotony_is_free_of_scale_and_order(
            loads in uniform7(0_u32..1000), times in 1_u32..1000, turn in 0_usize..7
        ) {
            let days = loads.map(|load| DayLoad::Load(f64::from(load)));
            let mut other = loads.map(|load| DayLoad::Load(f64::from(load * times)));
            other.rotate_left(turn);
            for (one, two) in both(&days).iter().zip(both(&other)) {
                match (one.monotony, two.monotony) {
                    (Some(a), Some(b)) => prop_assert!((a - b).abs() <= 1e-12 * a),
                    (a, b) => prop_assert_eq!(a, b),
                }
                if let (Some(a), Some(b)) = (one.strain, two.strain) {
                    let a = a * f64::from(times);
                    prop_assert!((a - b).abs() <= 1e-12 * a);
                }
            }
        }

        /// The two deviations differ by the square root of 7/6, whatever the week.
        #[test]
        fn population_over_sample_is_fixed(loads in uniform7(0_u32..1000)) {
            let days = loads.map(|load| DayLoad::Load(f64::from(load)));
            if let [Some(population), Some(sample)] = both(&days).map(|result| result.monotony) {
                prop_assert!((population / sample - (7.0_f64 / 6.0).sqrt()).abs() < 1e-12);
            }
        }
    }
}
