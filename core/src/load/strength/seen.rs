//! What was lifted, and what of it is read as an observation of strength.

use std::collections::BTreeMap;

use chrono::{Datelike, NaiveDate};

use super::curve::{MOST_REPS, curve};
use super::level::{LevelError, Moment};
use super::model::Model;
use crate::mass::{Mass, MassUnit};

/// How near to failure a set was.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Evidence {
    /// An open set: as many good reps as possible.
    Open,
    /// Rated by the athlete: so many reps were left.
    Reserve(u32),
    /// Neither. It says only "at least so many", so it is not read (that would take another kind of
    /// observation); it counts as a set that tired the later ones of its day.
    Plain,
}

/// A set that was done, of one athlete and one movement.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SetSeen {
    /// The local date.
    pub on: NaiveDate,
    /// What was lifted, above 0 and at most 5,000 kg.
    pub load: Mass,
    /// Good reps.
    pub reps: u32,
    /// How near to failure.
    pub evidence: Evidence,
}

/// Why there is no strength to be worked out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum StrengthError {
    /// A load of nothing, below nothing, or beyond what the journal takes.
    #[error("the load of {on} is {load}; it must be above 0 and at most 5000 kg")]
    Load {
        /// The date of the set.
        on: NaiveDate,
        /// What stood there.
        load: Mass,
    },
    /// More reps than the journal takes.
    #[error("{reps} reps on {on}; at most 1000 can be")]
    Reps {
        /// The date of the set.
        on: NaiveDate,
        /// What stood there.
        reps: u32,
    },
    /// A constant of the model is out of its range.
    #[error("the model's constants: {0}")]
    Constants(#[from] LevelError),
}

/// The heaviest load and the most reps that an entry of the journal may hold.
const HEAVIEST: Mass = Mass::kg(5_000);
const MOST_LOGGED: u32 = 1_000;

/// No set is counted as more tired than by this many before it. Chosen, no source: long days rest more.
const MOST_TIRING: u32 = 5;

/// Ratings beyond this many reps to go are left out. The published scale ends at 10 (Zourdos et al.,
/// J Strength Cond Res 2016;30(1):267-275).
const MOST_RESERVE: u32 = 10;

/// What a training day says about strength: the one set that says most.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Day {
    /// The local date.
    pub(super) on: NaiveDate,
    /// The log of the one-rep max that was shown.
    pub(super) value: f64,
    /// The variance of its error.
    pub(super) variance: f64,
    /// What the curve added to the log of the load.
    pub(super) height: f64,
    /// How many sets of the day came before it.
    pub(super) after: f64,
}

impl Day {
    /// The day as one of a series of something.
    pub(super) fn moment(&self, of: fn(&Day) -> f64) -> Moment {
        Moment { day: number(self.on), value: Some(of(self)), variance: self.variance }
    }
}

/// Turns sets into training days in order, up to `today`. Days may come in any order; the sets of one
/// day are in the order they were done.
///
/// A day counts once. Sets of one day share its form, so each further one says little that is new.
/// The set that counts is the one nearest to failure (an open one before any rated one, then the
/// fewest reps in reserve), and among those the one that shows the most strength.
///
/// Not read are sets after `today`, of no reps, of more than [`MOST_REPS`] (reserve counted in) and
/// with more than 10 in reserve.
pub(super) fn days(
    model: &Model,
    sets: &[SetSeen],
    today: NaiveDate,
) -> Result<Vec<Day>, StrengthError> {
    let mut done: BTreeMap<NaiveDate, u32> = BTreeMap::new();
    let mut best: BTreeMap<NaiveDate, (Evidence, Day)> = BTreeMap::new();
    for set in sets {
        check(set)?;
        if set.on > today {
            continue;
        }
        let before = done.entry(set.on).or_default();
        let read = read(model, set, *before);
        *before = before.saturating_add(1);
        let Some(here) = read else { continue };
        let (evidence, so_far) = best.entry(set.on).or_insert((set.evidence, here));
        if set.evidence < *evidence || (set.evidence == *evidence && here.value > so_far.value) {
            (*evidence, *so_far) = (set.evidence, here);
        }
    }
    Ok(best.into_values().map(|(_, day)| day).collect())
}

/// The date as a count of days.
pub(super) fn number(on: NaiveDate) -> i64 {
    i64::from(on.num_days_from_ce())
}

fn check(set: &SetSeen) -> Result<(), StrengthError> {
    let SetSeen { on, load, reps, .. } = *set;
    if load <= Mass::ZERO || load > HEAVIEST {
        return Err(StrengthError::Load { on, load });
    }
    if reps > MOST_LOGGED {
        return Err(StrengthError::Reps { on, reps });
    }
    Ok(())
}

/// What a set says alone, `before` sets having come before it that day.
fn read(model: &Model, set: &SetSeen, before: u32) -> Option<Day> {
    let (reserve, variance) = match set.evidence {
        Evidence::Open => (0, model.open_variance()),
        Evidence::Reserve(reserve) if reserve <= MOST_RESERVE => {
            (reserve, model.rated_variance(reserve))
        }
        Evidence::Reserve(_) | Evidence::Plain => return None,
    };
    let reps = set.reps + reserve;
    if set.reps == 0 || reps > MOST_REPS {
        return None;
    }
    let height = curve(f64::from(reps));
    let after = f64::from(before.min(MOST_TIRING));
    let value = set.load.for_drawing(MassUnit::Kg).ln() + height + model.tires * after;
    Some(Day { on: set.on, value, variance, height, after })
}
