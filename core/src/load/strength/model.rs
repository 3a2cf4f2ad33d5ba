//! The constants, each with where it comes from, and what days do to the state.

use super::filter::{SIZE, State, Taking};

/// Where a number stands in the state.
pub(super) const LEVEL: usize = 0;
pub(super) const SLOPE: usize = 1;
pub(super) const HIDDEN: usize = 2;
pub(super) const RATING: usize = 3;

/// The constants of the strength model. Heights are values of [`super::curve()`], natural logarithms: 0.01
/// is about 1 % of the load, 0.025 about a rep.
///
/// "Chosen in the simulation" means among some sixty settings on the made-up crew of `tests/src/lifters`,
/// on other seeds than it is tested on: as true as that crew, no truer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Model {
    /// The variance that a day adds to the level.
    pub(super) per_day: f64,
    /// The standard deviation of the slope at the start.
    pub(super) slope: f64,
    /// The variance that a day adds to the slope.
    pub(super) slope_per_day: f64,
    /// The part of its gain that the slope takes.
    pub(super) slope_gain: f64,
    /// The reserve hidden behind a count.
    pub(super) hidden: f64,
    /// Its standard deviation over people.
    pub(super) hidden_spread: f64,
    /// The standard deviation over people of the error of their ratings.
    pub(super) rating_spread: f64,
    /// The standard deviation of an open set around what the state says: the form of the day, the last
    /// rep given or not.
    pub(super) open_error: f64,
    /// The standard deviation of a rating in reps, up to 5 left.
    pub(super) rating_error: f64,
    /// What each rep left beyond 5 adds to that.
    pub(super) rating_error_far: f64,
    /// What every set before it on the day takes from a set.
    pub(super) tires: f64,
    /// How many surprises of the usual size count beside the athlete's own.
    pub(super) usual_rows: f64,
    /// The largest surprise taken in, in standard deviations.
    pub(super) largest: f64,
    /// What a plan leaves beyond its target.
    pub(super) start_spare: f64,
    /// The standard deviation of the level at the start.
    pub(super) start_spread: f64,
    /// After so many days off strength falls.
    pub(super) kept_days: f64,
    /// What a day off beyond them takes from the log of the one-rep max.
    pub(super) fall: f64,
    /// The standard deviation of that, in height.
    pub(super) fall_spread: f64,
    /// The most that one absence takes from the log of the one-rep max.
    pub(super) most_fall: f64,
}

impl Model {
    /// The constants in use.
    pub(super) const USUAL: Model = Model {
        // 1.2 % a week, standard deviation. Chosen in the simulation.
        per_day: 2e-5,
        // Zourdos et al., J Strength Cond Res 2021;35(2S):S158-165: 16 +- 4 reps at 70 %, which 0.3
        // covers, and people whose curve is flatter by 0.7. The walk is chosen in the simulation.
        slope: 0.3,
        slope_per_day: 1e-4,
        // Chosen in the simulation. Loads rise because strength does, which looks like a flat curve: a
        // slope that learns from it in full makes intervals of the one-rep max narrow and false.
        slope_gain: 0.05,
        // Chosen in the simulation; never learned. Whoever always stops two short can't be told from
        // somebody weaker, and whether a set is rated or failed depends on how it went.
        hidden: 0.01,
        hidden_spread: 0.025,
        rating_spread: 0.025,
        // Chosen in the simulation; the athlete's own surprises correct it.
        open_error: 0.022,
        // Hackett et al., J Strength Cond Res 2017;31(8):2162-2168: off by about 1 rep at 0 to 5 to
        // go, more than 2 at 7 to 10. A mean absolute error of 1 is a standard deviation of
        // sqrt(pi/2) = 1.25, and 2 at 8.5 reps is 1.25 + 3.5 * 0.36.
        rating_error: 1.25,
        rating_error_far: 0.36,
        // That a later set is weaker even after 5 minutes is published (Richmond and Godard, J Strength
        // Cond Res 2004;18(4):846-849); how much, after sets that were not to failure, is chosen in
        // the simulation.
        tires: 0.01,
        // Chosen in the simulation.
        usual_rows: 8.0,
        // Chosen, no source: a load mistyped should not move strength, nor make every band wide.
        largest: 3.0,
        // About two reps left, and six more or fewer. Chosen, no source.
        start_spare: 0.05,
        start_spread: 0.15,
        // Two weeks, 0.6 % a week from then on, give or take 0.4, at most 10 %. Chosen in the
        // simulation, no source.
        kept_days: 14.0,
        fall: 0.006 / 7.0,
        fall_spread: 0.004 / 7.0,
        most_fall: 0.1,
    };

    /// The state before anything was seen, for a plan that asks for a set of this height.
    pub(super) fn start(&self, height: f64) -> State {
        let mut covariance = [[0.0; SIZE]; SIZE];
        let spreads = [self.start_spread, self.slope, self.hidden_spread, self.rating_spread];
        for (at, spread) in spreads.into_iter().enumerate() {
            covariance[at][at] = spread * spread;
        }
        State { mean: [height + self.start_spare, 1.0, self.hidden, 0.0], covariance }
    }

    /// Lets so many days go by.
    pub(super) fn wait(&self, state: &mut State, days: f64) {
        let off = (days - self.kept_days).max(0.0);
        state.mean[LEVEL] -= (self.fall * off).min(self.most_fall) * state.mean[SLOPE];
        let fallen = self.fall_spread * off;
        state.covariance[LEVEL][LEVEL] += self.per_day * days + fallen * fallen;
        state.covariance[SLOPE][SLOPE] += self.slope_per_day * days;
    }

    /// How observations are taken in: neither reserve nor ratings are ever learned.
    pub(super) fn taking(&self) -> Taking {
        Taking::new([1.0, self.slope_gain, 0.0, 0.0], self.largest)
    }

    /// The variance of an open set of an athlete whose own variances are `scale` times the usual.
    pub(super) fn open_variance(&self, scale: f64) -> f64 {
        self.open_error * self.open_error * scale
    }

    /// The variance that a rating adds, where a rep is worth so much height.
    pub(super) fn rating_variance(&self, reserve: u32, rep: f64) -> f64 {
        let beyond = f64::from(reserve.saturating_sub(5));
        let deviation = (self.rating_error + self.rating_error_far * beyond) * rep;
        deviation * deviation
    }
}
