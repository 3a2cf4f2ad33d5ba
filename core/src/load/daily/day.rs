//! A day's load: a rest day is a zero, a day nobody knows about is not.

use std::collections::BTreeMap;

use chrono::NaiveDate;

/// The largest load of a day that is taken for one, in whatever unit loads are given in.
pub const LARGEST_LOAD: f64 = 1e9;

/// The longest run of days that is looked at: ten years.
pub const LONGEST_SPAN: usize = 3660;

/// What is known of a day's load.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum DayLoad {
    /// No training: a load of zero.
    Rest,
    /// Nobody knows: not logged, or not rated. Never counted as zero.
    Missing,
    /// The day's load, in the caller's unit; zero to [`LARGEST_LOAD`].
    Load(f64),
}

/// Why there is nothing to say about days.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum DayError {
    /// A load is negative, not a number or past [`LARGEST_LOAD`].
    #[error("the load of day {day} is not between 0 and 1000000000")]
    Load {
        /// The day (or week), counted from 1.
        day: usize,
    },
    /// The smoothing weight is not above 0 and at most 1.
    #[error("a smoothing weight is above 0 and at most 1")]
    Weight,
    /// A span of no days.
    #[error("a span is at least one day")]
    Span,
    /// A date is outside the days asked for.
    #[error("{date} is not among the days asked for")]
    Outside {
        /// The date.
        date: NaiveDate,
    },
    /// The last day is before the first, or more than [`LONGEST_SPAN`] days are asked for.
    #[error("the days asked for are in order and at most ten years")]
    Range,
}

impl DayLoad {
    /// The load as a number; none where it is missing. `day` is counted from 1 and named in errors.
    pub(super) fn known(self, day: usize) -> Result<Option<f64>, DayError> {
        match self {
            DayLoad::Rest => Ok(Some(0.0)),
            DayLoad::Missing => Ok(None),
            DayLoad::Load(load) if (0.0..=LARGEST_LOAD).contains(&load) => Ok(Some(load)),
            DayLoad::Load(_) => Err(DayError::Load { day }),
        }
    }
}

/// The loads of all days from `first` to `last`, from sessions in any order.
///
/// Loads of one date are added up; a date with a missing load is missing as a whole, whatever else
/// is known of it; a date nobody names is `unnamed`.
///
/// # Errors
/// [`DayError`] for a load that is none, a date outside, or days that are not in order or too many.
pub fn days(
    sessions: &[(NaiveDate, DayLoad)],
    first: NaiveDate,
    last: NaiveDate,
    unnamed: DayLoad,
) -> Result<Vec<DayLoad>, DayError> {
    let span = usize::try_from((last - first).num_days()).map_err(|_| DayError::Range)?;
    if span >= LONGEST_SPAN {
        return Err(DayError::Range);
    }
    let mut sums: BTreeMap<NaiveDate, DayLoad> = BTreeMap::new();
    for (number, (date, load)) in (1..).zip(sessions) {
        if *date < first || *date > last {
            return Err(DayError::Outside { date: *date });
        }
        let load = load.known(number)?.map_or(DayLoad::Missing, DayLoad::Load);
        let sum = sums.entry(*date).or_insert(DayLoad::Rest);
        *sum = match (*sum, load) {
            (DayLoad::Missing, _) | (_, DayLoad::Missing) => DayLoad::Missing,
            (DayLoad::Load(sum), DayLoad::Load(load)) => DayLoad::Load(sum + load),
            (DayLoad::Rest, load) | (load, DayLoad::Rest) => load,
        };
    }
    Ok(first
        .iter_days()
        .take(span + 1)
        .map(|date| sums.get(&date).copied().unwrap_or(unnamed))
        .collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn on(day: u32) -> NaiveDate {
        NaiveDate::from_ymd_opt(2026, 11, day).unwrap()
    }

    #[test]
    fn a_date_is_summed_and_one_unknown_makes_it_unknown() {
        use DayLoad::{Load, Missing, Rest};
        let sessions = [
            (on(5), Load(100.0)),
            (on(3), Load(50.0)),
            (on(3), Load(25.0)),
            (on(5), Missing),
            (on(6), Missing),
            (on(6), Load(10.0)),
        ];
        let all = days(&sessions, on(2), on(7), Rest).unwrap();
        assert_eq!(all, [Rest, Load(75.0), Rest, Missing, Missing, Rest]);
        let mut turned = sessions;
        turned.reverse();
        assert_eq!(days(&turned, on(2), on(7), Rest).unwrap(), all);
        assert_eq!(days(&[], on(2), on(2), Missing).unwrap(), [Missing]);
    }

    #[test]
    fn odd_days_are_refused() {
        let one = |load| days(&[(on(3), load)], on(1), on(9), DayLoad::Rest);
        for load in [-1.0, f64::NAN, f64::INFINITY, 1e9 + 1.0, f64::NEG_INFINITY] {
            assert_eq!(one(DayLoad::Load(load)), Err(DayError::Load { day: 1 }), "{load}");
        }
        let outside = days(&[(on(10), DayLoad::Rest)], on(1), on(9), DayLoad::Rest);
        assert_eq!(outside, Err(DayError::Outside { date: on(10) }));
        let none = [];
        for (first, last) in [(on(2), on(1)), (NaiveDate::MIN, NaiveDate::MAX)] {
            assert_eq!(days(&none, first, last, DayLoad::Rest), Err(DayError::Range));
        }
    }
}
