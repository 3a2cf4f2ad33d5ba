//! The constants, each with where it comes from.

use super::level::{LocalLevel, Normal, Start};

/// The constants of the strength model. Logarithms are natural, so 0.01 is about 1 % of the load.
///
/// "Fitted in the simulation" means fitted to the made-up crew of `tests/src/lifters/body.rs`, on
/// other seeds than it is tested on: as true as that crew, no truer. `strength::fit` there prints
/// what neighbouring values give.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Model {
    /// The variance that a day adds to the log of strength.
    pub per_day: f64,
    /// The log of the one-rep max in kilograms before anything was seen.
    pub start: Start,
    /// The standard deviation of an open set around what the strength and the person's own curve
    /// say: the form of the day, the last rep given or not.
    pub open_error: f64,
    /// The standard deviation of a rating of reps in reserve, in reps, at 5 reps or fewer to go.
    pub rating_error: f64,
    /// What each rep to go beyond 5 adds to that.
    pub rating_error_far: f64,
    /// What a rep is worth in the log of load, to turn an error in reps into one of strength.
    pub per_rep: f64,
    /// The standard deviation, over people, of the factor by which their own curve is steeper or
    /// flatter than [`super::curve()`], less 1.
    pub curve_spread: f64,
    /// How many days' surprises the usual size of surprises counts as, beside the athlete's own: one is
    /// steadier than another, and all errors above but the curve's grow or shrink with that.
    pub usual_days: f64,
    /// What every set before it on the day takes from the log of strength shown in a set.
    pub tires: f64,
}

impl Model {
    /// The constants in use.
    pub const USUAL: Model = Model {
        // 1 % a week, standard deviation. Fitted in the simulation, where 1e-5 and 2e-5 do as well.
        per_day: 0.000_015,
        // 60 kg, two in three between 22 and 164 kg. Chosen, no source; wide enough to weigh a
        // sixteen-hundredth of one open set.
        start: Start::Known(Normal { mean: 4.1, variance: 1.0 }),
        // Fitted in the simulation; the athlete's own surprises correct it.
        open_error: 0.025,
        // Hackett et al., J Strength Cond Res 2017;31(8):2162-2168: off by about 1 rep at 0 to 5 to
        // go, more than 2 at 7 to 10. A mean absolute error of 1 is a standard deviation of
        // sqrt(pi/2) = 1.25, and 2 at 8.5 reps is 1.25 + 3.5 * 0.36.
        rating_error: 1.25,
        rating_error_far: 0.36,
        // Computed: the curve's mean slope from 1 to 10 reps.
        per_rep: 0.026,
        // Zourdos et al., J Strength Cond Res 2021;35(2S):S158-165: 16 +- 4 reps at 70 % is 0.16 on
        // this curve. 0.2, fitted in the simulation, as a curve can also be bent in another way.
        curve_spread: 0.2,
        // Chosen, no source: from 4 to 16 makes no difference in the simulation.
        usual_days: 8.0,
        // That a later set is weaker even after 5 minutes is published (Richmond and Godard, J Strength
        // Cond Res 2004;18(4):846-849); how much, after sets that were not to failure, is fitted
        // in the simulation.
        tires: 0.01,
    };

    /// The local level model of these constants.
    pub(super) fn level(&self) -> LocalLevel {
        LocalLevel { per_day: self.per_day, start: self.start }
    }

    /// The variance of an open set around the log of strength.
    pub(super) fn open_variance(&self) -> f64 {
        self.open_error.powi(2)
    }

    /// The variance of a rated set with so many reps to go around the log of strength.
    pub(super) fn rated_variance(&self, reserve: u32) -> f64 {
        let beyond = f64::from(reserve.saturating_sub(5));
        let rating = (self.rating_error + self.rating_error_far * beyond) * self.per_rep;
        self.open_variance() + rating.powi(2)
    }
}
