//! What the model says: strength today, reps to expect, a load for reps, the trend.

use chrono::NaiveDate;

use super::curve::{MOST_REPS, curve};
use super::drift::Slope;
use super::level::{Innovation, LevelError, Normal, Step, filter};
use super::model::Model;
use super::quantile::Coverage;
use super::seen::{Day, SetSeen, StrengthError, days, number};
use crate::mass::{Mass, MassUnit};

/// A number with an interval around it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Interval {
    /// The lower end.
    pub low: f64,
    /// As likely below as above.
    pub likely: f64,
    /// The upper end.
    pub high: f64,
}

/// Good reps to expect of an open set, each 0 to [`MOST_REPS`]; the latter means "or more", and 0
/// that the load is not expected to move.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RepsBand {
    /// The fewest.
    pub low: u32,
    /// The most likely count.
    pub likely: u32,
    /// The most.
    pub high: u32,
}

/// The trend over the last weeks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Trend {
    /// The change of strength per week, as a share of it: 0.01 is one percent a week.
    pub per_week: Interval,
    /// The first day trained that it was taken over.
    pub from: NaiveDate,
    /// The last day trained, 14 to 42 days later.
    pub to: NaiveDate,
}

/// The current strength of one athlete in one movement.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strength {
    model: Model,
    /// The log of the one-rep max in kilograms, today.
    level: Normal,
    /// The variance of an open set around it, of this athlete.
    open_variance: f64,
    /// The mean value of the curve behind the level.
    height: f64,
    /// The mean number of sets behind the level that came before the one read.
    after: f64,
    /// The change of the log a day, and from when to when.
    change: Option<(Normal, NaiveDate, NaiveDate)>,
}

/// Trends are taken over at most six weeks and at least two. Chosen, no source.
const TREND_DAYS: std::ops::RangeInclusive<i64> = 14..=42;

/// No surprise counts as one of more than three standard deviations: a load mistyped should not make
/// every band wide. Chosen, no source.
const LARGEST_SQUARE: f64 = 9.0;

/// A spread of curves beyond this is no model of anybody.
const LARGEST_SPREAD: f64 = 10.0;

/// From here on an athlete's own days count for nothing.
const MOST_USUAL_DAYS: f64 = 1e9;

/// Works out the strength on `today` from all sets of one athlete and one movement. Days may come in any
/// order, the sets of one day in the order they were done; sets after `today` are left out.
///
/// None when no set says anything: none at all, or only plain ones, of no reps, of more than
/// [`MOST_REPS`] or rated with more than ten to go.
///
/// # Errors
/// [`StrengthError`] for a load that is none and for reps beyond what the journal takes.
pub fn strength(sets: &[SetSeen], today: NaiveDate) -> Result<Option<Strength>, StrengthError> {
    strength_by(&Model::USUAL, sets, today)
}

/// [`strength`] with other constants.
///
/// # Errors
/// As [`strength`], and for constants out of their range.
pub fn strength_by(
    model: &Model,
    sets: &[SetSeen],
    today: NaiveDate,
) -> Result<Option<Strength>, StrengthError> {
    if !(0.0..=LARGEST_SPREAD).contains(&model.curve_spread) {
        return Err(LevelError::Parameter { name: "curve_spread" }.into());
    }
    if !(1.0..=MOST_USUAL_DAYS).contains(&model.usual_days) {
        return Err(LevelError::Parameter { name: "usual_days" }.into());
    }
    let days = days(model, sets, today)?;
    let moments: Vec<_> = days.iter().map(|moment| moment.moment(|day| day.value)).collect();
    let steps = filter(&model.level(), &moments)?.steps;
    let Some((last, level)) = steps.last().and_then(|step| Some((step, step.filtered?))) else {
        return Ok(None);
    };
    let since = (number(today) - last.day) as f64;
    let scale = scale(model, &steps);
    Ok(Some(Strength {
        model: *model,
        level: Normal { variance: scale * (level.variance + since * model.per_day), ..level },
        open_variance: scale * model.open_variance(),
        height: behind(&steps, &days, |day| day.height),
        after: behind(&steps, &days, |day| day.after),
        change: change(model, &days, scale)?,
    }))
}

/// How much larger than usual this athlete's variances are: the mean of their squared standardised
/// surprises, drawn towards the usual 1 as if that had been seen on [`Model::usual_days`]. All
/// variances times one number leave every gain as it is, so the level does not depend on it. The
/// first day only says who somebody is.
fn scale(model: &Model, steps: &[Step]) -> f64 {
    let square = |innovation: Innovation| {
        (innovation.value * innovation.value / innovation.variance).min(LARGEST_SQUARE)
    };
    let own = steps.iter().skip(1).filter_map(|step| step.innovation).map(square);
    let (sum, count) = own.fold((0.0, 0.0), |(sum, count), value| (sum + value, count + 1.0));
    (model.usual_days + sum) / (model.usual_days + count)
}

/// The mean of something of the sets read, behind the last level: with the same weights that the
/// filter has put on what they showed.
fn behind(steps: &[Step], days: &[Day], of: fn(&Day) -> f64) -> f64 {
    steps.iter().zip(days).fold(0.0, |mean, (step, day)| mean + step.gain * (of(day) - mean))
}

/// The steady change a day of the days within six weeks of the last, with the first and last of them.
fn change(
    model: &Model,
    days: &[Day],
    scale: f64,
) -> Result<Option<(Normal, NaiveDate, NaiveDate)>, StrengthError> {
    let Some(to) = days.last().map(|day| day.on) else { return Ok(None) };
    let recent = &days[days.partition_point(|day| (to - day.on).num_days() > *TREND_DAYS.end())..];
    let from = recent.first().map_or(to, |day| day.on);
    if !TREND_DAYS.contains(&(to - from).num_days()) {
        return Ok(None);
    }
    let moments =
        |of: fn(&Day) -> f64| -> Vec<_> { recent.iter().map(|day| day.moment(of)).collect() };
    let Some(slope) = Slope::of(model.per_day, &moments(|found| found.value))? else {
        return Ok(None);
    };
    // Reps that change over the weeks bring the curve's error in, as far as the curve's part drifts.
    let curve = model.curve_spread * slope.on(&moments(|found| found.height))?;
    let variance = scale * slope.drift.variance + curve.powi(2);
    Ok(Some((Normal { variance, ..slope.drift }, from, to)))
}

impl Strength {
    /// The one-rep max in kilograms, rested and in usual form, with an interval that is to cover the
    /// truth in four of five cases.
    pub fn now(&self) -> Interval {
        self.now_within(Coverage::EIGHTY)
    }

    /// [`Strength::now`] with another coverage.
    pub fn now_within(&self, coverage: Coverage) -> Interval {
        let reach = coverage.deviations() * self.deviation_at(0.0, 0.0);
        let mean = self.level.mean;
        Interval { low: (mean - reach).exp(), likely: mean.exp(), high: (mean + reach).exp() }
    }

    /// The reps to expect of an open set at `load` today, as late in the day as those that were read:
    /// four of five sets are to end within the band. Never more for a heavier load.
    pub fn expected_reps(&self, load: Mass) -> RepsBand {
        self.expected_reps_within(load, Coverage::EIGHTY)
    }

    /// [`Strength::expected_reps`] with another coverage. A band of more coverage holds that of less.
    ///
    /// Reps are whole and a band's ends are too, so no band covers exactly so much. Its outer edges,
    /// half a rep beyond its ends, are those nearest to the exact ones: it covers as much as it
    /// should on average, not at least as much.
    pub fn expected_reps_within(&self, load: Mass, coverage: Coverage) -> RepsBand {
        if load <= Mass::ZERO {
            return RepsBand { low: MOST_REPS, likely: MOST_REPS, high: MOST_REPS };
        }
        let spare = self.tired() - load.for_drawing(MassUnit::Kg).ln();
        let reach = coverage.deviations();
        let likely = self.reps_sure(spare, 0.0, 0.5);
        // Not one rep has all that lies below half a rep: nothing nearer to round to.
        let moves = self.reps_sure(spare, reach, 0.5) > 0;
        let low = if moves { self.reps_sure(spare, reach, 0.0) + 1 } else { 0 };
        RepsBand {
            low: low.min(likely),
            likely,
            high: self.reps_sure(spare, -reach, 0.0).max(likely),
        }
    }

    /// The kilograms that can be lifted `reps` times with `reserve` to spare in a set as late in the
    /// day as those that were read, as likely too much as too little; reps and reserve together
    /// count as 1 to [`MOST_REPS`]. A number to show or to look for a build near, not a load.
    pub fn load_for(&self, reps: u32, reserve: u32) -> f64 {
        (self.tired() - curve(f64::from(reps.saturating_add(reserve).max(1)))).exp()
    }

    /// The trend over the last six weeks trained in: the steady change that fits best what was shown
    /// on their days, see [`super::drift()`]. None when they span less than two weeks.
    pub fn trend(&self) -> Option<Trend> {
        self.trend_within(Coverage::EIGHTY)
    }

    /// [`Strength::trend`] with another coverage.
    pub fn trend_within(&self, coverage: Coverage) -> Option<Trend> {
        let (change, from, to) = self.change?;
        let reach = coverage.deviations() * change.variance.sqrt();
        let week = |per_day: f64| (7.0 * per_day).exp_m1();
        let (low, likely, high) =
            (week(change.mean - reach), week(change.mean), week(change.mean + reach));
        Some(Trend { per_week: Interval { low, likely, high }, from, to })
    }

    /// The log of strength that is left for a set as late in the day as those that were read.
    fn tired(&self) -> f64 {
        self.level.mean - self.model.tires * self.after
    }

    /// The most reps that are reached with a surety of so many `deviations`: with `more` added, every
    /// count up to them lies so far or further below what the level has to spare.
    fn reps_sure(&self, spare: f64, deviations: f64, more: f64) -> u32 {
        let reached = |reps: &u32| {
            let height = curve(f64::from(*reps) - more);
            let deviation = self.deviation_at(height, self.open_variance);
            spare - height >= deviations * deviation
        };
        (1..=MOST_REPS).take_while(reached).last().unwrap_or(0)
    }

    /// The standard deviation of what the level says about a set whose curve value is `height` and
    /// whose own error has `variance`.
    fn deviation_at(&self, height: f64, variance: f64) -> f64 {
        let curve = self.model.curve_spread * (height - self.height);
        (self.level.variance + variance + curve.powi(2)).sqrt()
    }
}
