//! How much an interval is to cover, and the normal distribution's point for it.

/// The share of cases an interval is to cover, in whole percent, 1 to 99.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Coverage {
    percent: u32,
}

impl Coverage {
    /// Four of five, what is shown unless something else is asked for.
    pub const EIGHTY: Coverage = Coverage { percent: 80 };

    /// `percent` of the cases; none outside 1 to 99.
    pub fn percent(percent: u32) -> Option<Coverage> {
        (1..=99).contains(&percent).then_some(Coverage { percent })
    }

    /// How many standard deviations to each side of the mean a normal interval reaches.
    pub fn deviations(self) -> f64 {
        upper_point(f64::from(self.percent) / 200.0)
    }
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
