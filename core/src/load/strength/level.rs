//! The local level model: a random walk seen through noise, on irregular days.
//!
//! Durbin and Koopman, Time Series Analysis by State Space Methods, chapter 2: `y = x + e` with a
//! known variance for every observation, and `x` after `d` more days is `x + n` where `n` has `d`
//! times the variance per day. The recursion is theirs, with their exact diffuse start.

/// A mean and the variance around it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Normal {
    /// The mean.
    pub mean: f64,
    /// The variance, 0 or more.
    pub variance: f64,
}

/// What is known before the first observation.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Start {
    /// A distribution of the level on the first day.
    Known(Normal),
    /// Nothing: the first observation is the level, its own variance the level's.
    Diffuse,
}

/// The model's parameters.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LocalLevel {
    /// The variance that one day adds to the level, 0 or more.
    pub per_day: f64,
    /// The level on the first day.
    pub start: Start,
}

/// A day, and what was seen on it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moment {
    /// The day, counted from anywhere; never before the one ahead of it in a list.
    pub day: i64,
    /// The observation; none is a day on which nothing was seen.
    pub value: Option<f64>,
    /// The variance of the observation's error, above 0. Not read when nothing was seen.
    pub variance: f64,
}

/// How far an observation was from what was foretold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Innovation {
    /// Observation less prediction. 0 for the first one after a diffuse start.
    pub value: f64,
    /// The variance of the value; infinite for the first one after a diffuse start.
    pub variance: f64,
}

/// One day of a filtered series.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// The day.
    pub day: i64,
    /// The level from all days before; none while nothing is known.
    pub predicted: Option<Normal>,
    /// The surprise; none where nothing was seen.
    pub innovation: Option<Innovation>,
    /// The part of the surprise that moved the level, 0 to 1; 0 where nothing was seen.
    pub gain: f64,
    /// The level from all days up to this one; none while nothing is known.
    pub filtered: Option<Normal>,
}

/// A filtered series.
#[derive(Clone, Debug, PartialEq)]
pub struct Filtered {
    /// The days, in order.
    pub steps: Vec<Step>,
    /// The natural logarithm of the likelihood, constants included. The first observation after a diffuse start counts `-ln(2 pi)/2`, as in Durbin and Koopman, chapter 7.
    pub log_likelihood: f64,
}

/// Why a series can't be filtered.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum LevelError {
    /// A parameter is no number in its range: variances 0 to 1e100, a mean
    /// within 1e100 either way.
    #[error("{name} is not a number in its range")]
    Parameter {
        /// Which.
        name: &'static str,
    },
    /// An observation is no number, or beyond 1e100 either way.
    #[error("observation {index} must be a number within 1e100 either way")]
    Value {
        /// Its place, counted from 0.
        index: usize,
    },
    /// The variance of an observation is no number from 1e-100 to 1e100.
    #[error("the variance of observation {index} must be a number from 1e-100 to 1e100")]
    Variance {
        /// Its place, counted from 0.
        index: usize,
    },
    /// A day lies before the one ahead of it.
    #[error("observation {index} lies before the one ahead of it: sort by day")]
    Order {
        /// Its place, counted from 0.
        index: usize,
    },
}

/// Nothing beyond this is taken in, so that no square of it and no sum of days leaves the range of a
/// float.
const LARGEST: f64 = 1e100;

/// Runs the Kalman filter over a series in the order of its days. Several moments on one day are one
/// update each, with nothing added to the level's variance in between.
///
/// All is checked before and the likelihood summed after, and days before anything is known are none of
/// the recursion's: a loop without any of that stays in registers, in two thirds of the time.
///
/// # Errors
/// [`LevelError`] for what is no number, no variance or out of order; never a panic.
pub fn filter(model: &LocalLevel, seen: &[Moment]) -> Result<Filtered, LevelError> {
    let known = check(model)?;
    check_all(seen)?;
    let mut steps = Vec::with_capacity(seen.len());
    if let Some(start) = known.or_else(|| diffuse_start(seen, &mut steps)) {
        let rest = &seen[steps.len()..];
        follow(model.per_day, start, rest, &mut steps);
    }
    let mut likelihood = Likelihood::default();
    steps.iter().filter_map(|step| step.innovation).for_each(|step| likelihood.add(step));
    Ok(Filtered { steps, log_likelihood: likelihood.ln() })
}

/// The days on which nothing is known yet, and the first observation, which is the level from then on.
fn diffuse_start(seen: &[Moment], steps: &mut Vec<Step>) -> Option<Normal> {
    let nothing = |moment: &Moment| Step {
        day: moment.day,
        predicted: None,
        innovation: None,
        gain: 0.0,
        filtered: None,
    };
    steps.extend(seen.iter().take_while(|moment| moment.value.is_none()).map(nothing));
    let first = seen.get(steps.len())?;
    let level = Normal { mean: first.value?, variance: first.variance };
    let innovation = Some(Innovation { value: 0.0, variance: f64::INFINITY });
    steps.push(Step { gain: 1.0, innovation, filtered: Some(level), ..nothing(first) });
    Some(level)
}

/// The recursion from a known level on.
fn follow(per_day: f64, start: Normal, seen: &[Moment], steps: &mut Vec<Step>) {
    let Some(first) = seen.first() else { return };
    let mut before = steps.last().map_or(first.day, |step| step.day);
    let mut level = Level::of(start);
    // Moved into the loop: borrowed, level and day would be read from memory and written at each step.
    steps.extend(seen.iter().map(move |moment| {
        let walked = moment.day.abs_diff(before) as f64 * per_day;
        before = moment.day;
        let Normal { mean, variance } = level.normal;
        let predicted = Normal { mean, variance: variance + walked };
        let (innovation, gain) = match moment.value {
            None => {
                level = Level::of(predicted);
                (None, 0.0)
            }
            Some(value) => {
                let (innovation, gain, after) = update(level, walked, value, moment.variance);
                level = after;
                (Some(innovation), gain)
            }
        };
        let (predicted, filtered) = (Some(predicted), Some(level.normal));
        Step { day: moment.day, predicted, innovation, gain, filtered }
    }));
}

/// The level, its variance also as a fraction. An update of the variance itself divides, and the next
/// one waits for it: that took half the filter's time. A fraction's next numerator and denominator are
/// sums and products of the ones before, and whoever wants a quotient divides beside the recursion.
#[derive(Clone, Copy)]
struct Level {
    normal: Normal,
    over: f64,
    under: f64,
}

impl Level {
    fn of(normal: Normal) -> Level {
        Level { normal, over: normal.variance, under: 1.0 }
    }

    /// The same with a fraction that stays inside the range of a float through the next update, begun
    /// again from the variance every few dozen updates: each multiplies both its numbers by much the same.
    fn in_range(self) -> Level {
        // A variance of 1e100 and the walk of all days a list can hold lie within 1e120 of it.
        if (1e-50..=1e50).contains(&self.under) { self } else { Level::of(self.normal) }
    }
}

/// Takes an observation in, the level having walked by so much variance: the innovation, the gain,
/// and the level after it.
fn update(level: Level, walked: f64, value: f64, noise: f64) -> (Innovation, f64, Level) {
    let Level { normal, over, under } = level.in_range();
    let surprise = value - normal.mean;
    // With P = over/under before the walk: the gain (P + walked) / (P + walked + noise).
    let predicted = over + walked * under;
    let all = predicted + noise * under;
    let gain = predicted / all;
    // The variance is the same as P(1 - K), which would lose digits when K is near 1.
    let after = Normal { mean: normal.mean + gain * surprise, variance: gain * noise };
    let after = Level { normal: after, over: predicted * noise, under: all };
    let variance = normal.variance + walked + noise;
    (Innovation { value: surprise, variance }, gain, after)
}

/// The likelihood of innovations. Variances are multiplied, and a logarithm taken only before the
/// product leaves the range of a float: one logarithm a day took a fifth of the filter's time.
struct Likelihood {
    count: f64,
    squares: f64,
    logs: f64,
    product: f64,
}

impl Default for Likelihood {
    fn default() -> Likelihood {
        Likelihood { count: 0.0, squares: 0.0, logs: 0.0, product: 1.0 }
    }
}

impl Likelihood {
    fn add(&mut self, innovation: Innovation) {
        self.count += 1.0;
        // The first one after a diffuse start.
        if innovation.variance == f64::INFINITY {
            return;
        }
        self.squares += innovation.value * innovation.value / innovation.variance;
        self.product *= innovation.variance;
        if !(1.0 / LARGEST..=LARGEST).contains(&self.product) {
            self.logs += self.product.ln();
            self.product = 1.0;
        }
    }

    fn ln(&self) -> f64 {
        let constant = self.count * std::f64::consts::TAU.ln();
        -0.5 * (constant + self.logs + self.product.ln() + self.squares)
    }
}

fn check_all(seen: &[Moment]) -> Result<(), LevelError> {
    let mut before = i64::MIN;
    for (index, moment) in seen.iter().enumerate() {
        if moment.day < before {
            return Err(LevelError::Order { index });
        }
        before = moment.day;
        let Some(value) = moment.value else { continue };
        if !(-LARGEST..=LARGEST).contains(&value) {
            return Err(LevelError::Value { index });
        }
        if !(1.0 / LARGEST..=LARGEST).contains(&moment.variance) {
            return Err(LevelError::Variance { index });
        }
    }
    Ok(())
}

fn check(model: &LocalLevel) -> Result<Option<Normal>, LevelError> {
    let variance = |found: f64| (0.0..=LARGEST).contains(&found);
    if !variance(model.per_day) {
        return Err(LevelError::Parameter { name: "per_day" });
    }
    match model.start {
        Start::Diffuse => Ok(None),
        Start::Known(known) if known.mean.abs() <= LARGEST && variance(known.variance) => {
            Ok(Some(known))
        }
        Start::Known(_) => Err(LevelError::Parameter { name: "start" }),
    }
}
