//! The load of late beside the load of before: a description, never a risk.
//!
//! The ratio is the load of late, divided by a number: with random numbers in place of the earlier load
//! it "predicted" injury about as well, and its critics ask for it to be dismissed (Impellizzeri et
//! al., Sports Med 2021, doi 10.1007/s40279-020-01378-6). So no limit, no colour and no
//! advice hangs on it here.

use super::{DayError, DayLoad, smoothed, weight_of_span};

/// Days of the load of late.
pub const ACUTE_DAYS: u32 = 7;

/// Days of the load of before.
pub const CHRONIC_DAYS: u32 = 28;

/// What the latest week is held beside.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Compared {
    /// The mean of all four weeks, the latest among them. The ratio is then never above 4, and
    /// correlates with the latest week by itself.
    Coupled,
    /// The mean of the three weeks before the latest.
    Uncoupled,
}

/// The load of the latest week over the mean load of weeks (Lolli et al., Br J Sports Med
/// 2019;53:921-922). `before` are the three weeks before the latest. A bare number; none where the
/// mean is zero. A description, never a risk.
///
/// # Errors
/// [`DayError::Load`] for a load that is none; week 1 is the latest.
pub fn weekly_ratio(
    latest: f64,
    before: [f64; 3],
    compared: Compared,
) -> Result<Option<f64>, DayError> {
    let mut sum = 0.0;
    for (number, load) in (1..).zip([latest].iter().chain(&before)) {
        DayLoad::Load(*load).known(number)?;
        if number > 1 || compared == Compared::Coupled {
            sum += load;
        }
    }
    let weeks = match compared {
        Compared::Coupled => 4.0,
        Compared::Uncoupled => 3.0,
    };
    Ok(over(latest * weeks, sum))
}

/// [`weekly_ratio`] of 28 days, oldest first; none where a day is missing.
///
/// # Errors
/// [`DayError::Load`] for a load that is none.
pub fn rolling_ratio(days: &[DayLoad; 28], compared: Compared) -> Result<Option<f64>, DayError> {
    let mut weeks = [0.0; 4];
    let mut missing = false;
    for (index, day) in days.iter().enumerate() {
        match day.known(index + 1)? {
            Some(load) => weeks[index / 7] += load,
            None => missing = true,
        }
    }
    if missing {
        return Ok(None);
    }
    let [first, second, third, latest] = weeks;
    weekly_ratio(latest, [first, second, third], compared)
}

/// The load smoothed over [`ACUTE_DAYS`] over that smoothed over [`CHRONIC_DAYS`] on the last day
/// (Williams et al., Br J Sports Med 2017;51:209-210). A bare number; none without a known day or
/// where the longer one is zero. A description, never a risk.
///
/// # Errors
/// [`DayError::Load`] for a load that is none.
pub fn smoothed_ratio(days: &[DayLoad]) -> Result<Option<f64>, DayError> {
    let last = |span| -> Result<Option<f64>, DayError> {
        Ok(smoothed(days, weight_of_span(span)?)?.last().copied().flatten())
    };
    let (acute, chronic) = (last(ACUTE_DAYS)?, last(CHRONIC_DAYS)?);
    Ok(acute.zip(chronic).and_then(|(acute, chronic)| over(acute, chronic)))
}

/// A ratio, where there is something below it and the result is a number.
fn over(above: f64, below: f64) -> Option<f64> {
    let ratio = above / below;
    (below > 0.0 && ratio.is_finite()).then_some(ratio)
}

#[cfg(test)]
mod tests {
    use proptest::array::uniform3;
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn nothing_to_compare_with_is_none() {
        assert_eq!(weekly_ratio(100.0, [0.0; 3], Compared::Uncoupled), Ok(None));
        assert_eq!(weekly_ratio(100.0, [0.0; 3], Compared::Coupled), Ok(Some(4.0)));
        assert_eq!(weekly_ratio(0.0, [0.0; 3], Compared::Coupled), Ok(None));
        let [tiny, none] = [f64::from_bits(1), 0.0];
        assert_eq!(weekly_ratio(1e9, [tiny, none, none], Compared::Uncoupled), Ok(None));
        assert_eq!(smoothed_ratio(&[]), Ok(None));
        assert_eq!(smoothed_ratio(&[DayLoad::Missing; 30]), Ok(None));
        assert_eq!(smoothed_ratio(&[DayLoad::Rest; 30]), Ok(None));
        let mut days = [DayLoad::Load(10.0); 28];
        assert_eq!(rolling_ratio(&days, Compared::Coupled), Ok(Some(1.0)));
        days[3] = DayLoad::Missing;
        assert_eq!(rolling_ratio(&days, Compared::Coupled), Ok(None));
        days[9] = DayLoad::Load(f64::NAN);
        assert_eq!(rolling_ratio(&days, Compared::Coupled), Err(DayError::Load { day: 10 }));
        let wrong = weekly_ratio(1.0, [1.0, -1.0, 1.0], Compared::Coupled);
        assert_eq!(wrong, Err(DayError::Load { day: 3 }));
    }

    proptest! {
        /// Algebra from the definitions of Lolli et al. 2019: with u the uncoupled ratio the coupled
        /// one is 4u / (u + 3), so it is never above 4.
        #[test]
        fn coupled_is_a_function_of_uncoupled(latest in 0.0..1e5, before in uniform3(1.0..1e5)) {
            let ratio = |compared| weekly_ratio(latest, before, compared).unwrap().unwrap();
            let (coupled, u) = (ratio(Compared::Coupled), ratio(Compared::Uncoupled));
            prop_assert!((coupled - 4.0 * u / (u + 3.0)).abs() < 1e-12);
            prop_assert!((0.0..=4.0).contains(&coupled));
        }
    }
}
