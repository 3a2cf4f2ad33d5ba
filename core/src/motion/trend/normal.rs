//! The standard normal distribution's tails.

use std::f64::consts::{FRAC_1_SQRT_2, PI};

/// The probability of a value at least as far from zero as `z`, on either side.
pub(super) fn two_sided(z: f64) -> f64 {
    complement(z.abs() * FRAC_1_SQRT_2)
}

/// The distance from zero that is exceeded, on either side, with `probability` (above 0, below 1).
pub(super) fn exceeded_with(probability: f64) -> f64 {
    // The tail falls all the way, so halving finds it to the last bit; 39 is beyond the smallest
    // number there is.
    let (mut near, mut far) = (0.0, 39.0);
    for _ in 0..100 {
        let middle = f64::midpoint(near, far);
        if two_sided(middle) > probability { near = middle } else { far = middle }
    }
    near
}

/// The complementary error function, for `x` not below zero.
///
/// Below 2 one less the series of positive terms, otherwise the continued fraction (Abramowitz and
/// Stegun, Handbook of Mathematical Functions, 7.1.6 and 7.1.14; the numbers from memory). Held to
/// a reference library's values to a part in 10^12.
fn complement(x: f64) -> f64 {
    if x < 2.0 {
        let (mut term, mut sum) = (x, x);
        for n in 1..100 {
            term *= 2.0 * x * x / f64::from(2 * n + 1);
            sum += term;
        }
        return 1.0 - 2.0 / PI.sqrt() * (-x * x).exp() * sum;
    }
    let fraction = (1..=200).rev().fold(0.0, |below, k| f64::from(k) / 2.0 / (x + below));
    (-x * x).exp() / PI.sqrt() / (x + fraction)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Twice `scipy.stats.norm.sf(z)` of scipy 1.17.1.
    const SCIPY: [(f64, f64); 14] = [
        (0.0, 1.0),
        (1e-06, 0.9999992021154392),
        (0.01, 0.9920212873707368),
        (0.5, 0.6170750774519738),
        (1.0, 0.31731050786291415),
        (1.959963984540054, 0.05),
        (2.5, 0.012419330651552265),
        (2.82, 0.004802364948378505),
        (2.83, 0.004654800413463103),
        (3.0, 0.0026997960632601866),
        (5.0, 5.733031437583866e-07),
        (8.0, 1.244192114854348e-15),
        (20.0, 5.507248237212311e-89),
        (37.0, 1.1451142445047853e-299),
    ];

    #[test]
    fn tails_are_those_of_a_reference_library() {
        for (z, expected) in SCIPY {
            let found = two_sided(z);
            assert!((found - expected).abs() <= 1e-12 * expected, "{z}: {found} {expected}");
            assert_eq!(two_sided(-z), found);
            if z > 0.0 {
                let back = exceeded_with(expected);
                assert!((back - z).abs() < 1e-11, "{z}: {back}");
            }
        }
    }

    #[test]
    fn the_tail_falls_all_the_way() {
        let tails: Vec<f64> = (0..3800).map(|z| two_sided(f64::from(z) / 100.0)).collect();
        assert!(tails.is_sorted_by(|near, far| near > far));
        assert_eq!(two_sided(0.0), 1.0);
        assert_eq!(two_sided(1e9), 0.0);
        assert!(two_sided(f64::NAN).is_nan());
    }
}
