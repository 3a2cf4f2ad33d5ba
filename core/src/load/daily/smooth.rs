//! The exponentially smoothed load, in which a missing day is not a rest day.

use super::{DayError, DayLoad};

/// The weight of the newest day for a span of so many days: 2 / (span + 1) (Williams et al., Br J
/// Sports Med 2017;51:209-210). A span of 7 gives 0.25, one of 28 gives 2/29.
///
/// # Errors
/// [`DayError::Span`] for a span of no days.
pub fn weight_of_span(days: u32) -> Result<f64, DayError> {
    if days == 0 { Err(DayError::Span) } else { Ok(2.0 / (f64::from(days) + 1.0)) }
}

/// The smoothed load of every day, oldest first, in the unit of the loads: the newest day counts
/// `weight`, what stood before counts the rest; the first known day is the seed (common practice).
///
/// A rest day pulls the load down. A missing day leaves it as it is, and what stood before it has
/// lost its weight of that day when the next known day comes. Days before the first known one are
/// `None`.
///
/// # Errors
/// [`DayError::Weight`] for a weight not above 0 and at most 1; [`DayError::Load`] for a load that
/// is none.
pub fn smoothed(days: &[DayLoad], weight: f64) -> Result<Vec<Option<f64>>, DayError> {
    if !(weight > 0.0 && weight <= 1.0) {
        return Err(DayError::Weight);
    }
    let mut all = Vec::with_capacity(days.len());
    let mut now: Option<f64> = None;
    // What the load so far weighs beside the next known day.
    let mut past = 1.0;
    for (number, day) in (1..).zip(days) {
        past *= 1.0 - weight;
        if let Some(load) = day.known(number)? {
            now = Some(now.map_or(load, |before| {
                // The usual form at equal weights, so that a steady load stays just what it is.
                before + (load - before) * (weight / (past + weight))
            }));
            past = 1.0;
        }
        all.push(now);
    }
    Ok(all)
}

#[cfg(test)]
mod tests {
    use proptest::collection::vec;
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn odd_weights_and_spans_are_refused() {
        assert_eq!(weight_of_span(0), Err(DayError::Span));
        assert_eq!(weight_of_span(1), Ok(1.0));
        assert!(weight_of_span(u32::MAX).is_ok());
        for weight in [0.0, -0.1, 1.1, f64::NAN] {
            assert_eq!(smoothed(&[DayLoad::Rest], weight), Err(DayError::Weight));
        }
        let wrong = smoothed(&[DayLoad::Rest, DayLoad::Load(-1.0)], 0.5);
        assert_eq!(wrong, Err(DayError::Load { day: 2 }));
        assert_eq!(smoothed(&[], 0.5), Ok(vec![]));
    }

    #[test]
    fn a_missing_day_is_not_a_rest_day() {
        let after = |gap| {
            let days = [DayLoad::Missing, DayLoad::Load(100.0), gap, DayLoad::Load(100.0)];
            smoothed(&days, 0.25).unwrap()
        };
        assert_eq!(after(DayLoad::Missing), [None, Some(100.0), Some(100.0), Some(100.0)]);
        assert_eq!(after(DayLoad::Rest), [None, Some(100.0), Some(75.0), Some(81.25)]);
    }

    proptest! {
        /// Between the smallest and the largest load so far, and a weight of one is the load itself.
        #[test]
        fn stays_between_what_it_has_seen(
            loads in vec(proptest::option::of(0.0..1e6), 1..60), weight in 0.001..=1.0
        ) {
            let days: Vec<DayLoad> =
                loads.iter().map(|load| load.map_or(DayLoad::Missing, DayLoad::Load)).collect();
            let all = smoothed(&days, weight).unwrap();
            prop_assert_eq!(all.len(), days.len());
            let mut seen: Option<(f64, f64)> = None;
            for (load, value) in loads.iter().zip(&all) {
                if let Some(load) = load {
                    let (low, high) = seen.unwrap_or((*load, *load));
                    seen = Some((low.min(*load), high.max(*load)));
                }
                match (seen, value) {
                    (None, None) => {}
                    (Some((low, high)), Some(value)) => {
                        prop_assert!(*value >= low - 1e-6 && *value <= high + 1e-6);
                    }
                    other => prop_assert!(false, "{other:?}"),
                }
            }
            let last = loads.iter().rev().find_map(|load| *load);
            let one = smoothed(&days, 1.0).unwrap().last().copied().flatten();
            match (last, one) {
                (Some(a), Some(b)) => prop_assert!((a - b).abs() <= 1e-9 * a.abs()),
                (a, b) => prop_assert_eq!(a, b),
            }
        }
    }
}
