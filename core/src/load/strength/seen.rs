//! What was lifted, and which set of a day is read.

use chrono::{Datelike, NaiveDate};

use crate::mass::Mass;

/// What a set says of how near its end it was.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Evidence {
    /// An open set whose reps the athlete gave: as many as they could, or nearly.
    Counted,
    /// Rated by the athlete: so many reps were left.
    Reserve(u32),
    /// Fewer reps than asked: there were no more.
    Short,
    /// Made as planned: at least so many.
    AsPlanned,
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
    /// Reps asked for: at least so many in an open set.
    pub target: u32,
    /// True for an open set, counted or not.
    pub open: bool,
    /// How near its end it was.
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
}

/// The heaviest load and the most reps that an entry of the journal may hold.
const HEAVIEST: Mass = Mass::kg(5_000);
const MOST_LOGGED: u32 = 1_000;

/// No set counts as more tired than by this many before it. Chosen, no source: long days rest more, and
/// the simulation has no longer ones.
const MOST_TIRING: u32 = 5;

/// Ratings beyond this many left count as made at least. The published scale ends at 10 (Zourdos et al.,
/// J Strength Cond Res 2016;30(1):267-275).
const MOST_RESERVE: u32 = 10;

/// The set of a training day that is read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Row {
    /// The date as a count of days.
    pub(super) day: i64,
    /// The set; a rating beyond the scale is made as planned.
    pub(super) set: SetSeen,
    /// How many sets of the day came before it.
    pub(super) before: f64,
}

/// How many sets of a day tire a set that comes after so many.
pub(super) fn tiring(before: u32) -> f64 {
    f64::from(before.min(MOST_TIRING))
}

/// The date as a count of days.
pub(super) fn number(on: NaiveDate) -> i64 {
    i64::from(on.num_days_from_ce())
}

/// The rows of all days, in order. Days may come in any order; the sets of one day are in the order they
/// were done.
pub(super) fn rows(sets: &[SetSeen]) -> Result<Vec<Row>, StrengthError> {
    sets.iter().try_for_each(check)?;
    let mut rows = Vec::with_capacity(sets.len());
    if sets.is_sorted_by_key(|set| set.on) {
        rows.extend(sets.chunk_by(|one, other| one.on == other.on).filter_map(row));
    } else {
        let mut sorted = sets.to_vec();
        sorted.sort_by_key(|set| set.on);
        rows.extend(sorted.chunk_by(|one, other| one.on == other.on).filter_map(row));
    }
    Ok(rows)
}

/// The one set of a day that is read. Sets of one day share its form, so each further one says little
/// that is new.
///
/// It is chosen without looking at what came out: the open set where one was done; else the last set,
/// if it fell short; else the last rated one; else the last one. A set that fell short beside an open one
/// would pull the estimate down, as failures are logged and the same set made is not; so would the lowest
/// of several ratings.
fn row(day: &[SetSeen]) -> Option<Row> {
    let rated =
        |set: &SetSeen| matches!(set.evidence, Evidence::Reserve(left) if left <= MOST_RESERVE);
    let short = |set: &SetSeen| set.evidence == Evidence::Short;
    let open = day.iter().rposition(|set| set.open);
    let failed = || day.last().filter(|set| short(set)).map(|_| day.len() - 1);
    let at = open
        .or_else(failed)
        .or_else(|| day.iter().rposition(rated))
        .or_else(|| day.iter().rposition(|set| !short(set)))?;
    let mut set = day[at];
    if matches!(set.evidence, Evidence::Reserve(_)) && !rated(&set) {
        set.evidence = Evidence::AsPlanned;
    }
    // Not a rep made as planned says nothing.
    if set.evidence == Evidence::AsPlanned && set.reps == 0 {
        return None;
    }
    Some(Row { day: number(set.on), set, before: tiring(at as u32) })
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
