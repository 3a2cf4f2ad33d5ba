//! The error of a measurement: what studies print, and what an athlete's own repeats give.

/// The smallest change that is not error with 95 % confidence, as a multiple of the standard error
/// of measurement: 1.96 times the square root of 2.
pub const MDC95_OF_SEM: f64 = 1.96 * std::f64::consts::SQRT_2;

/// The largest reading, deviation or error that is taken for one.
const LARGEST: f64 = 1e9;

/// Why there is no error of measurement.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum ErrorOfMeasure {
    /// Less than two pairs: there is no spread yet.
    #[error("{found} pair(s) of readings; two or more are needed")]
    TooFew {
        /// How many there were.
        found: usize,
    },
    /// A reading is not a number or past a billion.
    #[error("pair {pair} has a reading that is not a number of a measurement")]
    Reading {
        /// The pair, counted from 1.
        pair: usize,
    },
    /// A deviation or error is negative, not a number or past a billion.
    #[error("a deviation is between 0 and 1000000000")]
    Deviation,
    /// A reliability is not between 0 and 1.
    #[error("a reliability is between 0 and 1")]
    Reliability,
}

fn deviation(value: f64) -> Result<f64, ErrorOfMeasure> {
    if (0.0..=LARGEST).contains(&value) { Ok(value) } else { Err(ErrorOfMeasure::Deviation) }
}

/// Standard error of measurement, in the unit of `sd`: the deviation between people times the
/// square root of one less the reliability, an intraclass correlation of 0 to 1 (the form used in J
/// Sports Sci Med 2009;8(1):116-122).
///
/// # Errors
/// [`ErrorOfMeasure`] for a deviation below zero or a reliability outside 0 to 1.
pub fn sem(sd: f64, reliability: f64) -> Result<f64, ErrorOfMeasure> {
    if !(0.0..=1.0).contains(&reliability) {
        return Err(ErrorOfMeasure::Reliability);
    }
    Ok(deviation(sd)? * (1.0 - reliability).sqrt())
}

/// The smallest change that is not error with 95 % confidence, in the unit of `sem`: the standard
/// error of measurement times [`MDC95_OF_SEM`] (J Sports Sci Med 2009;8(1):116-122).
///
/// # Errors
/// [`ErrorOfMeasure::Deviation`] for an error below zero.
pub fn mdc95(sem: f64) -> Result<f64, ErrorOfMeasure> {
    Ok(deviation(sem)? * MDC95_OF_SEM)
}

/// What repeated readings say of their own error.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TypicalError {
    /// How many pairs it rests on; with few of them it is a rough figure (its relative error is
    /// about one over the square root of twice the pairs less one).
    pub pairs: usize,
    /// The mean of second less first, in the unit of the readings.
    pub mean_change: f64,
    /// The sample deviation of second less first, in the unit of the readings.
    pub sd_of_change: f64,
    /// The typical error, in the unit of the readings: that deviation over the square root of 2.
    pub typical: f64,
    /// The typical error in percent of the mean reading, where that is above zero.
    pub percent: Option<f64>,
    /// The smallest change that is not error with 95 % confidence, in the unit of the readings.
    ///
    /// Readings that agree to the digit give zero here; the scale's own step is still there.
    pub mdc95: f64,
}

/// Typical error from pairs of a first and a second reading of the same thing, of one athlete on
/// several days or of several athletes (Hopkins, Sports Med 2000;30:1-15).
///
/// # Errors
/// [`ErrorOfMeasure`] with less than two pairs, or a reading that is none.
pub fn typical_error(pairs: &[(f64, f64)]) -> Result<TypicalError, ErrorOfMeasure> {
    if pairs.len() < 2 {
        return Err(ErrorOfMeasure::TooFew { found: pairs.len() });
    }
    let wrong = |value: f64| !(-LARGEST..=LARGEST).contains(&value);
    if let Some(index) = pairs.iter().position(|(one, two)| wrong(*one) || wrong(*two)) {
        return Err(ErrorOfMeasure::Reading { pair: index + 1 });
    }
    let count = pairs.len() as f64;
    let mean_change = pairs.iter().map(|(first, second)| second - first).sum::<f64>() / count;
    let squares: f64 =
        pairs.iter().map(|(first, second)| (second - first - mean_change).powi(2)).sum();
    let sd_of_change = (squares / (count - 1.0)).sqrt();
    let typical = sd_of_change / std::f64::consts::SQRT_2;
    let mean = pairs.iter().map(|(first, second)| f64::midpoint(*first, *second)).sum::<f64>();
    let mean = mean / count;
    Ok(TypicalError {
        pairs: pairs.len(),
        mean_change,
        sd_of_change,
        typical,
        percent: (mean > 0.0).then(|| 100.0 * typical / mean),
        mdc95: typical * MDC95_OF_SEM,
    })
}

#[cfg(test)]
mod tests {
    use proptest::collection::vec;
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn odd_readings_are_refused() {
        assert_eq!(typical_error(&[]), Err(ErrorOfMeasure::TooFew { found: 0 }));
        assert_eq!(typical_error(&[(1.0, 2.0)]), Err(ErrorOfMeasure::TooFew { found: 1 }));
        for odd in [f64::NAN, f64::INFINITY, 1e300, -1e300] {
            let found = typical_error(&[(1.0, 2.0), (odd, 2.0)]);
            assert_eq!(found, Err(ErrorOfMeasure::Reading { pair: 2 }));
            let found = typical_error(&[(1.0, odd), (1.0, 2.0)]);
            assert_eq!(found, Err(ErrorOfMeasure::Reading { pair: 1 }));
            assert_eq!(mdc95(odd), Err(ErrorOfMeasure::Deviation));
            assert_eq!(sem(odd, 0.9), Err(ErrorOfMeasure::Deviation));
            assert_eq!(sem(1.0, odd), Err(ErrorOfMeasure::Reliability));
        }
        assert_eq!(mdc95(-0.1), Err(ErrorOfMeasure::Deviation));
        assert_eq!(sem(2.0, 1.0), Ok(0.0));
        assert_eq!(sem(2.0, 0.0), Ok(2.0));
        // Lost range, below zero on the scale: no percent of a negative mean.
        assert_eq!(typical_error(&[(-3.0, -2.0), (-3.0, -4.0)]).unwrap().percent, None);
    }

    proptest! {
        /// Moving every reading, or every second one, by the same changes no error; a scale does.
        #[test]
        fn shift_is_no_error_and_scale_is(
            pairs in vec((-1000_i32..1000, -1000_i32..1000), 2..30),
            shift in -1000_i32..1000, late in -1000_i32..1000, times in 1_i32..50,
        ) {
            let read = |shift: i32, late: i32, times: i32| {
                let pairs: Vec<(f64, f64)> = pairs
                    .iter()
                    .map(|(one, two)| ((one * times + shift).into(), (two * times + shift + late).into()))
                    .collect();
                typical_error(&pairs).unwrap().typical
            };
            let plain = read(0, 0, 1);
            prop_assert!((read(shift, late, 1) - plain).abs() < 1e-9);
            prop_assert!((read(0, 0, times) - plain * f64::from(times)).abs() < 1e-7);
        }
    }
}
