//! A test of whether readings rise or fall, whatever the shape of it.

use super::normal::two_sided;
use super::readings::{TrendError, checked, score_variance_18, tied};

/// What the test of Mann and Kendall says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MannKendall {
    /// Pairs that rise less pairs that fall.
    pub score: i64,
    /// The score's variance where there is no trend, ties taken off.
    pub variance: f64,
    /// The score over its deviation, with the correction for continuity: one nearer to zero.
    pub z: f64,
    /// The probability of a score at least as far from zero where there is no trend.
    ///
    /// By the normal approximation. Counted over all orders of two to seven readings, the exact one
    /// is within 0.04 of it, and the smallest ones come out too large rather than too small.
    pub p: f64,
}

/// Tests readings in their order of time for a trend (Mann, Econometrica 1945;13:245-259; Kendall,
/// Rank Correlation Methods: the citations from memory).
///
/// # Errors
/// [`TrendError`] with less than two or more than [`super::MAX_READINGS`] readings, or one that is not
/// a number.
pub fn mann_kendall(values: &[f64]) -> Result<MannKendall, TrendError> {
    checked(values.iter().copied())?;
    let mut score = 0_i64;
    for (index, value) in values.iter().enumerate() {
        for before in &values[..index] {
            score += i64::from(value > before) - i64::from(value < before);
        }
    }
    let ties = tied(values.iter().copied());
    let variance = (score_variance_18(values.len() as f64) - ties) / 18.0;
    let corrected = (score - score.signum()) as f64;
    let z = if score == 0 { 0.0 } else { corrected / variance.sqrt() };
    Ok(MannKendall { score, variance, z, p: two_sided(z) })
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use proptest::collection::vec;
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn odd_readings_are_refused_and_equal_ones_say_nothing() {
        assert_eq!(mann_kendall(&[]), Err(TrendError::TooFew { found: 0 }));
        assert_eq!(mann_kendall(&[1.0]), Err(TrendError::TooFew { found: 1 }));
        let odd = mann_kendall(&[1.0, f64::NAN, 2.0]);
        assert_eq!(odd, Err(TrendError::NotANumber { reading: 2 }));
        let many = vec![1.0; 2001];
        assert_eq!(mann_kendall(&many), Err(TrendError::TooMany { found: 2001 }));
        let none = MannKendall { score: 0, variance: 0.0, z: 0.0, p: 1.0 };
        assert_eq!(mann_kendall(&[5.0; 8]), Ok(none));
        assert_eq!(mann_kendall(&[0.0, -0.0]), Ok(none));
    }

    /// Every order of `n` values, by swapping each into the last place.
    fn orders(values: &mut Vec<f64>, fixed: usize, seen: &mut impl FnMut(&[f64])) {
        if fixed == values.len() {
            return seen(values);
        }
        for place in fixed..values.len() {
            values.swap(fixed, place);
            orders(values, fixed + 1, seen);
            values.swap(fixed, place);
        }
    }

    /// The exact probability, counted over all orders, beside the approximate one.
    #[test]
    fn the_probability_is_near_the_counted_one() {
        for n in 2..=7_u32 {
            let mut found = Vec::new();
            let mut values: Vec<f64> = (0..n).map(f64::from).collect();
            orders(&mut values, 0, &mut |order| found.push(mann_kendall(order).unwrap()));
            let probability = |one: &MannKendall| {
                let beyond =
                    found.iter().filter(|found| found.score.abs() >= one.score.abs()).count();
                beyond as f64 / found.len() as f64
            };
            // One of each score: the others are the same.
            let once: BTreeMap<i64, MannKendall> =
                found.iter().map(|found| (found.score, *found)).collect();
            let off = once.values().map(|test| (probability(test) - test.p).abs());
            let worst = off.fold(0.0, f64::max);
            assert!(worst < 0.04, "{n} readings: {worst}");
            let steepest = once.values().next_back().unwrap();
            assert!(n < 4 || steepest.p > probability(steepest), "{n} readings");
        }
    }

    proptest! {
        /// Time turned round turns the sign and nothing else; a rising change of scale changes nothing.
        #[test]
        fn time_turned_round_turns_the_sign(values in vec(-20_i32..20, 2..40)) {
            let values: Vec<f64> = values.iter().map(|found| (*found).into()).collect();
            let found = mann_kendall(&values).unwrap();
            let mut turned = values.clone();
            turned.reverse();
            let back = mann_kendall(&turned).unwrap();
            prop_assert_eq!((back.score, back.z), (-found.score, 0.0 - found.z));
            prop_assert_eq!((back.variance, back.p), (found.variance, found.p));
            let scaled: Vec<f64> = values.iter().map(|found| (found / 10.0).exp()).collect();
            prop_assert_eq!(mann_kendall(&scaled).unwrap(), found);
            prop_assert!((0.0..=1.0).contains(&found.p));
        }
    }
}
