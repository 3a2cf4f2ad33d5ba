//! How much heavier the one-rep max is than a load that was lifted for so many reps.

use std::sync::LazyLock;

/// The most reps that are read: beyond them no published equation is meant, and two have their pole at
/// 37 (Brzycki, Lander).
pub const MOST_REPS: u32 = 36;

/// The natural logarithm of one-rep max over load after `reps` good reps to failure.
///
/// The mean of three published equations in logarithms, that is the geometric mean of what they
/// give: Lombardi (Beginning Weight Training, 1989) `r^0.10`, O'Conner et al. (Weight Training Today,
/// 1989) `1 + r/40`, Wathen (Essentials of Strength Training and Conditioning, 1994)
/// `100 / (48.8 + 53.8 e^(-0.075 r))`. A power, a straight line and an exponential, all of them for
/// any movement and none with a pole: Reynolds et al. (J Strength Cond Res 2006;20(3):584-592) found
/// the relation bent and linear ones unfit beyond 10 reps, which leaves out Brzycki's and Lander's.
/// Their mean stays within 3 points of the NSCA's percent-of-max table for 1 to 10 reps and gives 16
/// to 17 reps at 70 %, where Zourdos et al. (J Strength Cond Res 2021;35(2S):S158-165) counted 16
/// with a standard deviation of 4. Choosing these three and weighing them equally is ours; no weight was
/// fitted.
///
/// `reps` is a real number so that edges between two reps can be asked for; it is held to 0.5 to
/// [`MOST_REPS`] and a half. Strictly rising within that.
pub fn curve(reps: f64) -> f64 {
    let reps = reps.clamp(0.5, f64::from(MOST_REPS) + 0.5);
    let lombardi = 0.1 * reps.ln();
    let o_conner = (reps / 40.0).ln_1p();
    let wathen = (100.0 / (48.8 + 53.8 * (-0.075 * reps).exp())).ln();
    (lombardi + o_conner + wathen) / 3.0
}

const HALVES: usize = 2 * MOST_REPS as usize + 2;

/// The curve at every half rep, the edges between two counts among them: four logarithms a value took
/// most of the filter's time.
static AT_HALVES: LazyLock<[f64; HALVES]> =
    LazyLock::new(|| std::array::from_fn(|half| curve(half as f64 / 2.0)));

/// The curve's values for whole and half reps.
#[derive(Clone, Copy)]
pub(super) struct Heights(&'static [f64; HALVES]);

impl Heights {
    pub(super) fn new() -> Heights {
        Heights(&AT_HALVES)
    }

    /// The curve at whole reps, held to [`MOST_REPS`].
    pub(super) fn at(self, reps: u32) -> f64 {
        self.0[2 * reps.min(MOST_REPS) as usize]
    }

    /// The curve half a rep below whole ones.
    pub(super) fn below(self, reps: u32) -> f64 {
        self.0[(2 * reps.min(MOST_REPS) as usize).saturating_sub(1)]
    }

    /// The curve half a rep above whole ones.
    pub(super) fn beyond(self, reps: u32) -> f64 {
        self.0[2 * reps.min(MOST_REPS) as usize + 1]
    }

    /// How many of the counts from 1 to [`MOST_REPS`] lie at or below a height, each taken half a rep
    /// lower where `half` says so.
    pub(super) fn reached(self, height: f64, half: bool) -> u32 {
        let mut low = 0;
        let mut left = MOST_REPS as usize;
        while left > 0 {
            let step = left.div_ceil(2);
            let at = 2 * (low + step) - usize::from(half);
            low += if self.0[at] <= height { step } else { 0 };
            left -= step;
        }
        low as u32
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The parts against the check table of the published equations, load 100 kg, computed apart
    /// from this code: Lombardi, O'Conner, Wathen at 1, 5, 10 and 15 reps.
    #[test]
    fn geometric_mean_of_the_published_equations() {
        let rows = [
            (1.0, [100.0, 102.5, 101.3042]),
            (5.0, [117.4619, 112.5, 116.5825]),
            (10.0, [125.8925, 125.0, 134.7467]),
            (15.0, [131.1019, 137.5, 150.9063]),
        ];
        for (reps, row) in rows {
            let mean = row.iter().map(|cell| cell / 100.0).product::<f64>().cbrt();
            assert!((curve(reps).exp() - mean).abs() < 1e-6, "{reps} reps");
        }
    }

    /// NSCA percent-of-max table for 1 to 10 reps (Essentials of Strength Training and Conditioning,
    /// 3rd ed.; S, a copy that cites it), and 16 +- 4 reps at 70 % (Zourdos et al. 2021; P).
    #[test]
    fn stays_near_the_published_table() {
        let nsca = [100.0, 95.0, 93.0, 90.0, 87.0, 85.0, 83.0, 80.0, 77.0, 75.0];
        for (reps, percent) in (1..).zip(nsca) {
            let ours = 100.0 * (-curve(f64::from(reps))).exp();
            assert!((ours - percent).abs() < 3.0, "{reps} reps: {ours}, table {percent}");
        }
        assert!((-curve(16.0)).exp() > 0.70 && (-curve(17.0)).exp() < 0.70);
    }

    #[test]
    fn rises_with_every_half_rep_and_never_leaves_its_range() {
        for half in 1..=72 {
            assert!(curve(f64::from(half) / 2.0) < curve(f64::from(half + 1) / 2.0));
        }
        for odd in [-1.0, 0.0, 1e9, f64::INFINITY, f64::NEG_INFINITY] {
            assert!(curve(odd).is_finite());
        }
    }

    #[test]
    fn heights_are_the_curve_and_counts_are_found_among_them() {
        let heights = Heights::new();
        for reps in 0..=MOST_REPS {
            let real = f64::from(reps);
            let found = [heights.at(reps), heights.below(reps), heights.beyond(reps)];
            assert_eq!(found, [curve(real), curve(real - 0.5), curve(real + 0.5)]);
        }
        assert_eq!(heights.at(1_000), curve(36.0));
        for tenths in -5..=400 {
            let reps = f64::from(tenths) / 10.0;
            let counted = |less: f64| {
                (1..=36).filter(|count| curve(f64::from(*count) - less) <= curve(reps)).count()
            };
            assert_eq!(heights.reached(curve(reps), false), counted(0.0) as u32, "{reps}");
            assert_eq!(heights.reached(curve(reps), true), counted(0.5) as u32, "{reps}");
        }
        assert_eq!((heights.reached(-1.0, true), heights.reached(9.0, false)), (0, 36));
    }
}
