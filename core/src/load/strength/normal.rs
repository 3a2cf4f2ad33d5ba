//! The normal distribution's points, and a normal of which only a lower limit was seen.

/// How many standard deviations to each side of its mean a normal holds all but a share `outside`, held
/// to 0.002 to 1.
pub fn deviations(outside: f64) -> f64 {
    upper_point(0.5 - outside.clamp(0.002, 1.0) / 2.0)
}

/// The mean and the variance of a standard normal above a limit, as the reach of a limit seen: see
/// [`above()`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Above {
    /// How far the mean lies above that of the whole normal, in its standard deviations.
    pub mean: f64,
    /// The variance, as a share of the whole one's.
    pub variance: f64,
}

/// A limit further than this from the mean counts as so far: in standard deviations.
const FARTHEST: f64 = 30.0;

/// From here on the continued fraction is used, with so many terms: below, it needs more of them;
/// above, one less the distribution loses its digits.
const FAR_FROM: f64 = 2.5;
const TERMS: u32 = 40;

/// The mean and the variance of a standard normal above `limit`, which is held to 30 deviations either
/// way.
///
/// With the ratio `m` of density to upper tail the mean is `m` and the variance `1 - m (m - limit)`.
/// Far out both are differences of nearly equal numbers, so there `m - limit` comes from Laplace's
/// continued fraction, `1/(d + 2/(d + 3/(d + ...)))`, and nothing is subtracted from it; nearer, the
/// tail comes from the power series of the distribution, all of whose terms have one sign (Abramowitz
/// and Stegun, Handbook of Mathematical Functions, 26.2.14 and 26.2.11).
pub fn above(limit: f64) -> Above {
    let limit = limit.clamp(-FARTHEST, FARTHEST);
    let beyond = if limit < FAR_FROM { ratio(limit) - limit } else { fraction(limit) };
    let mean = limit + beyond;
    Above { mean, variance: 1.0 - mean * beyond }
}

/// Density over upper tail, for limits that are not far above the mean.
fn ratio(limit: f64) -> f64 {
    let density = (-0.5 * limit * limit).exp() / std::f64::consts::TAU.sqrt();
    // Further below nothing is missing from the tail that a float would hold.
    if limit < -9.0 {
        return density;
    }
    let square = limit * limit;
    let (mut term, mut sum, mut odd) = (limit, limit, 1.0);
    while term.abs() > 1e-18 * sum.abs() {
        odd += 2.0;
        term *= square / odd;
        sum += term;
    }
    density / (0.5 - density * sum)
}

/// `1/(d + 2/(d + 3/(d + ...)))`.
fn fraction(limit: f64) -> f64 {
    (1..=TERMS).rev().fold(0.0, |rest, term| f64::from(term) / (limit + rest))
}

/// The point with `0.5 + share` of a standard normal distribution below it, for `share` in 0 to
/// 0.499. Algorithm AS 241 (Wichura, Applied Statistics 1988;37(3):477-484), its first two of three
/// ranges, about sixteen digits.
fn upper_point(share: f64) -> f64 {
    let ratio = |r: f64, over: &[f64; 8], under: &[f64; 8]| {
        let sum = |row: &[f64; 8]| row.iter().fold(0.0, |sum, term| sum * r + term);
        sum(over) / sum(under)
    };
    if share <= 0.425 {
        share * ratio(0.180_625 - share * share, &NEAR.0, &NEAR.1)
    } else {
        ratio((-(0.5 - share).ln()).sqrt() - 1.6, &FAR.0, &FAR.1)
    }
}

type Coefficients = ([f64; 8], [f64; 8]);

/// Highest power first.
const NEAR: Coefficients = (
    [
        2_509.080_928_730_122_7,
        33_430.575_583_588_13,
        67_265.770_927_008_7,
        45_921.953_931_549_87,
        13_731.693_765_509_46,
        1_971.590_950_306_551_4,
        133.141_667_891_784_38,
        3.387_132_872_796_366_6,
    ],
    [
        5_226.495_278_852_854,
        28_729.085_735_721_943,
        39_307.895_800_092_71,
        21_213.794_301_586_597,
        5_394.196_021_424_751,
        687.187_007_492_057_9,
        42.313_330_701_600_91,
        1.0,
    ],
);

const FAR: Coefficients = (
    [
        7.745_450_142_783_414e-4,
        0.022_723_844_989_269_184,
        0.241_780_725_177_450_6,
        1.270_458_252_452_368_4,
        3.647_848_324_763_204_5,
        5.769_497_221_460_691,
        4.630_337_846_156_546,
        1.423_437_110_749_683_5,
    ],
    [
        1.050_750_071_644_416_9e-9,
        5.475_938_084_995_345e-4,
        0.015_198_666_563_616_457,
        0.148_103_976_427_480_08,
        0.689_767_334_985_1,
        1.676_384_830_183_803_8,
        2.053_191_626_637_759,
        1.0,
    ],
);
