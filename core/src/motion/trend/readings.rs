//! What a trend is found in, and why there may be none.

use std::collections::BTreeMap;

use chrono::NaiveDate;

/// The most readings a trend is found in: both methods look at every pair.
pub const MAX_READINGS: usize = 2000;

/// The largest reading or time that is taken for one.
const LARGEST: f64 = 1e12;

/// Why there is no trend.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum TrendError {
    /// Less than two readings.
    #[error("{found} reading(s); two or more are needed")]
    TooFew {
        /// How many there were.
        found: usize,
    },
    /// More than [`MAX_READINGS`].
    #[error("{found} readings; at most 2000 are looked at")]
    TooMany {
        /// How many there were.
        found: usize,
    },
    /// A reading or its time is not a number or past a million million.
    #[error("reading {reading} is not a number that a trend can be found in")]
    NotANumber {
        /// The reading, counted from 1.
        reading: usize,
    },
    /// All readings are of one time.
    #[error("all readings are of one time")]
    OneTime,
    /// A confidence is not between 0 and 1.
    #[error("a confidence is above 0 and below 1")]
    Confidence,
    /// A date is not after the one before.
    #[error("reading {reading} is not of a later day than the one before")]
    NotLater {
        /// The reading, counted from 1.
        reading: usize,
    },
}

/// Readings on days as readings over days since the first: each day once and in order.
///
/// # Errors
/// [`TrendError::NotLater`] names the first reading whose day is not after the one before.
pub fn over_days(readings: &[(NaiveDate, f64)]) -> Result<Vec<(f64, f64)>, TrendError> {
    let Some((first, _)) = readings.first() else { return Ok(Vec::new()) };
    if let Some(index) = readings.windows(2).position(|pair| pair[1].0 <= pair[0].0) {
        return Err(TrendError::NotLater { reading: index + 2 });
    }
    Ok(readings.iter().map(|(date, value)| ((*date - *first).num_days() as f64, *value)).collect())
}

/// Refuses what no trend can be found in.
pub(super) fn checked(readings: impl ExactSizeIterator<Item = f64>) -> Result<(), TrendError> {
    let found = readings.len();
    if found < 2 {
        return Err(TrendError::TooFew { found });
    }
    if found > MAX_READINGS {
        return Err(TrendError::TooMany { found });
    }
    for (reading, value) in (1..).zip(readings) {
        if !(-LARGEST..=LARGEST).contains(&value) {
            return Err(TrendError::NotANumber { reading });
        }
    }
    Ok(())
}

/// What tied values take off the variance of Kendall's score: t (t - 1) (2t + 5), summed over
/// groups of t equal values (Kendall, Rank Correlation Methods; Sen 1968, equation 2.6).
pub(super) fn tied(values: impl Iterator<Item = f64>) -> f64 {
    let mut groups: BTreeMap<u64, f64> = BTreeMap::new();
    for value in values {
        // Zero has two forms that are equal.
        *groups.entry((value + 0.0).to_bits()).or_default() += 1.0;
    }
    groups.values().map(|t| score_variance_18(*t)).sum()
}

/// Eighteen times the variance of Kendall's score of `n` values without ties.
pub(super) fn score_variance_18(n: f64) -> f64 {
    n * (n - 1.0) * (2.0 * n + 5.0)
}
