//! An estimate of the one-rep max, refused where its equation does not hold.

use super::Equation;
use crate::mass::{Mass, MassUnit};

/// Above this many reps an estimate is marked: the curve of load against reps is not straight, and
/// "no more than 10 reps" should be used (Reynolds et al., J Strength Cond Res 2006;20:584-592).
pub const MANY_REPS: u32 = 10;

/// The heaviest load that is taken for one, 2000 kg.
pub const HEAVIEST: Mass = Mass::kg(2000);

/// How far from the percent it was fitted at an equation is still believed, in percent of the
/// maximum. Our own bound, no source.
const FIT_BAND: f64 = 10.0;

/// What somebody could lift once.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate {
    /// The one-rep max in kilograms. For showing and modelling, never for building.
    pub kg: f64,
    /// How it was found.
    pub equation: Equation,
    /// True above [`MANY_REPS`]: less sure.
    pub many_reps: bool,
    /// True when the load is more than 10 percent of the maximum away from where the equation was
    /// fitted: less sure.
    pub off_fit: bool,
}

/// Why there is no estimate.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum EstimateError {
    /// The load is not above zero and at most [`HEAVIEST`].
    #[error("a load for an estimate is above 0 and at most 2000 kg")]
    Load,
    /// The reps are not those the equation holds for.
    #[error("{} holds for {fewest} to {most} reps, not for {reps}", equation.text())]
    Reps {
        /// The equation.
        equation: Equation,
        /// The reps given.
        reps: u32,
        /// The fewest it holds for.
        fewest: u32,
        /// The most it holds for.
        most: u32,
    },
    /// The equation gives less than what was lifted.
    #[error("{} gives less than was lifted: the load is far from where it was fitted", equation.text())]
    BelowLoad {
        /// The equation.
        equation: Equation,
    },
}

impl Equation {
    /// Estimates the one-rep max from a load lifted for `reps` good reps to failure.
    ///
    /// # Errors
    /// [`EstimateError`] when the load is not a load, when the equation does not hold for that many
    /// reps (none for 0 or for 37 and more), or when it gives less than what was lifted.
    pub fn estimate(self, load: Mass, reps: u32) -> Result<Estimate, EstimateError> {
        if load <= Mass::ZERO || load > HEAVIEST {
            return Err(EstimateError::Load);
        }
        let range = self.reps();
        if reps < range.fewest || reps > range.most {
            let (fewest, most) = (range.fewest, range.most);
            return Err(EstimateError::Reps { equation: self, reps, fewest, most });
        }
        let lifted = load.for_drawing(MassUnit::Kg);
        let kg = self.kilograms(lifted, f64::from(reps));
        if kg < lifted {
            return Err(EstimateError::BelowLoad { equation: self });
        }
        let off = |fitted: u32| (100.0 * lifted / kg - f64::from(fitted)).abs() > FIT_BAND;
        Ok(Estimate {
            kg,
            equation: self,
            many_reps: reps > MANY_REPS,
            off_fit: self.fitted_percent().is_some_and(off),
        })
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::load::one_rep_max::Lift;

    #[test]
    fn what_is_no_load_or_outside_the_reps_is_refused() {
        for equation in Equation::ALL {
            let reps = equation.reps();
            let at = |load, reps| equation.estimate(load, reps);
            for load in [Mass::ZERO, Mass::kg(-100), HEAVIEST + Mass { ten_ng: 1 }] {
                assert_eq!(at(load, reps.fewest), Err(EstimateError::Load));
            }
            for outside in [0, reps.fewest - 1, reps.most + 1, 37, 38, 1000, u32::MAX] {
                let refused = at(Mass::kg(100), outside);
                assert!(
                    matches!(refused, Err(EstimateError::Reps { reps, .. }) if reps == outside),
                    "{equation:?} at {outside}: {refused:?}"
                );
            }
        }
        let said = Equation::RobertsBench.estimate(Mass::kg(100), 3).unwrap_err().to_string();
        assert_eq!(said, "roberts-bench holds for 4 to 10 reps, not for 3");
    }

    #[test]
    fn more_than_ten_reps_are_marked() {
        let many = |reps| Equation::Epley.estimate(Mass::kg(60), reps).unwrap().many_reps;
        assert!(!many(1) && !many(10) && many(11) && many(36));
    }

    /// Kravitz's equations have a constant of 90 kg and more: far from their fit they say nonsense.
    #[test]
    fn far_from_the_fit_is_marked_and_less_than_the_load_is_refused() {
        let bench = |kg, reps| Equation::KravitzBench.estimate(Mass::kg(kg), reps);
        // 90.66 + 0.085 x 16 x 100 - 5.306 x 16 = 141.764: the load is 70.5 % of it.
        assert!(!bench(100, 16).unwrap().off_fit);
        assert!(bench(20, 1).unwrap().off_fit);
        let refused = bench(300, 1);
        assert_eq!(refused, Err(EstimateError::BelowLoad { equation: Equation::KravitzBench }));
    }

    proptest! {
        /// More load or more reps is never a smaller maximum, and none is below what was lifted.
        #[test]
        fn general_equations_rise_with_load_and_reps(
            tenths in 1_i64..20_000, reps in 1_u32..36, which in 0..Equation::ALL.len()
        ) {
            let equation = Equation::ALL[which];
            prop_assume!(equation.lift() == Lift::Any || equation == Equation::Mayhew);
            let load = |tenths| Mass::thousandths(tenths * 100, MassUnit::Kg);
            let at = |tenths, reps| equation.estimate(load(tenths), reps).unwrap().kg;
            prop_assume!(tenths < 19_999);
            prop_assert!(at(tenths, reps) >= tenths as f64 / 10.0);
            prop_assert!(at(tenths, reps + 1) > at(tenths, reps));
            prop_assert!(at(tenths + 1, reps) > at(tenths, reps));
        }

        /// Whatever is given: an answer that is a number, or a refusal.
        #[test]
        fn nothing_panics(ten_ng in any::<i64>(), reps in any::<u32>(), which in 0..Equation::ALL.len()) {
            if let Ok(found) = Equation::ALL[which].estimate(Mass { ten_ng }, reps % 50) {
                prop_assert!(found.kg.is_finite() && found.kg > 0.0);
            }
            let _ = Equation::ALL[which].estimate(Mass { ten_ng }, reps);
        }
    }
}
