//! What the model says: strength today, reps to expect, a load for reps, the trend.

use super::adaptive::{Ended, OUTSIDE};
use super::band::{RepsBand, band, design, log};
use super::curve::{Heights, MOST_REPS, curve};
use super::filter::State;
use super::model::{LEVEL, Model, SLOPE};
use super::normal::deviations;
use super::ratio::{Interval, Pair};
use super::seen::tiring;
use super::trend::Trend;
use crate::mass::{Mass, MassUnit};

/// The strength of one athlete in one movement on a day, from sets that said how near their end they were.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strength {
    /// The state on the day.
    pub(super) state: State,
    /// The log of the load in kilograms that loads are measured from.
    pub(super) reference: f64,
    /// How much larger than usual the athlete's own variances are.
    pub(super) scale: f64,
    /// The share of open sets outside that bands are made for.
    pub(super) outside: f64,
    pub(super) ended: Ended,
    /// How many sets of its day came before the one read last.
    pub(super) before: f64,
    pub(super) trend: Option<Trend>,
}

/// The one-rep max is shown where half its interval is at most this, in logarithms: 15 %. Chosen, no
/// source.
const WIDEST: f64 = 0.15;

impl Strength {
    /// The one-rep max in kilograms, rested and in usual form, with an interval that is to cover the
    /// truth in four of five cases; none where it is too wide to be worth a number.
    pub fn max(&self) -> Option<Interval> {
        self.estimate().filter(|max| (max.high / max.low).ln() / 2.0 <= WIDEST)
    }

    /// [`Strength::max`] beside what could be lifted once at least, by what was made lately: none where its middle lies
    /// below that, and no lower end that does.
    pub fn max_over(&self, made: Mass) -> Option<Interval> {
        let made = made.for_drawing(MassUnit::Kg);
        let max = self.max().filter(|max| max.likely > made)?;
        Some(Interval { low: max.low.max(made), ..max })
    }

    /// [`Strength::max`] however wide: for its lower end, to take loads from. None where the interval has
    /// no ends at all.
    pub fn estimate(&self) -> Option<Interval> {
        self.load_at(0.0)
    }

    /// The kilograms that can be lifted `reps` times with `reserve` to spare in a set as late in the
    /// day as the one read last; reps and reserve together count as 1 to [`MOST_REPS`]. Numbers to look
    /// for a build near, not loads. None as [`Strength::estimate`].
    pub fn load_for(&self, reps: u32, reserve: u32) -> Option<Interval> {
        let reps = reps.saturating_add(reserve).clamp(1, MOST_REPS);
        self.load_at(curve(f64::from(reps)) + Model::USUAL.tires * self.before)
    }

    /// The kilograms that can be lifted `reps` times in the first set of a day. None as
    /// [`Strength::estimate`].
    pub fn fresh_load_for(&self, reps: u32) -> Option<Interval> {
        self.load_at(curve(f64::from(reps.clamp(1, MOST_REPS))))
    }

    /// The load at which a height is left.
    fn load_at(&self, height: f64) -> Option<Interval> {
        let State { mean, covariance } = &self.state;
        let pair = Pair {
            over: mean[LEVEL] - height,
            under: mean[SLOPE],
            over_variance: covariance[LEVEL][LEVEL],
            shared: covariance[LEVEL][SLOPE],
            under_variance: covariance[SLOPE][SLOPE],
        };
        // A curve turned over is no curve.
        let (low, high) = pair.ratio(deviations(OUTSIDE)).filter(|_| pair.under > 0.0)?;
        let [low, likely, high] =
            [low, pair.over / pair.under, high].map(|found| (self.reference + found).exp());
        Some(Interval { low, likely, high })
    }

    /// The reps to expect of an open set at `load` today that `before` sets of the day come before. Four of
    /// five sets are to end within the band, and how wide it is for that is learned from the athlete's
    /// own open sets. Never more for a heavier load.
    ///
    /// Reps are whole and a band's ends are too, so no band covers exactly so much. Its outer edges,
    /// half a rep beyond its ends, are those nearest to the exact ones: it covers as much as it
    /// should on average, not at least as much.
    pub fn expected_reps(&self, load: Mass, before: u32) -> RepsBand {
        if load <= Mass::ZERO {
            return RepsBand { low: MOST_REPS, likely: MOST_REPS, high: MOST_REPS };
        }
        let (mean, variance) = self.foretell(load, before);
        band(Heights::new(), mean, variance.sqrt(), deviations(self.outside))
    }

    /// The height on [`super::curve()`] that is foretold for such a set, and the variance around it.
    pub fn foretell(&self, load: Mass, before: u32) -> (f64, f64) {
        let design = design(log(load) - self.reference, true, false);
        let (mean, variance) = self.state.foretell(&design);
        let own = Model::USUAL.open_variance(self.scale);
        (mean - Model::USUAL.tires * tiring(before), variance + own)
    }

    /// How many of the latest counted open sets ended inside the reps that were expected of them.
    pub fn ended(&self) -> Ended {
        self.ended
    }

    /// The share of open sets outside that the band of the next one is made for, one in five at first.
    pub fn outside(&self) -> f64 {
        self.outside
    }

    /// The state behind all of it.
    pub fn state(&self) -> &State {
        &self.state
    }

    /// The trend over the last six weeks: none where sets that say more than "at least so many" span less
    /// than two weeks of them.
    pub fn trend(&self) -> Option<Trend> {
        self.trend
    }
}
