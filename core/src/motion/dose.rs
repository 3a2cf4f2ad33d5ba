//! Time under stretch, week by week, beside the doses that were published.

use std::collections::BTreeMap;

use chrono::{Datelike, Days, NaiveDate};

use crate::plan::keyword;

/// Beyond so much in a week no further gain in range was seen (Ingram et al., Sports Med 2024, doi
/// 10.1007/s40279-024-02143-9, 189 studies; seen in a secondary text): 10 minutes.
pub const PLATEAU_OF_WEEK_MS: i64 = 600_000;

/// The same for one session and the gain right after it: 4 minutes (the same source).
pub const PLATEAU_OF_SESSION_MS: i64 = 240_000;

/// The longest hold that is taken for one: a day.
const LONGEST_MS: i64 = 24 * 60 * 60 * 1000;

/// One stretch done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stretched<'a> {
    /// The date.
    pub on: NaiveDate,
    /// The part of the body.
    pub region: &'a str,
    /// The side, where there are two: the doses are for a muscle, so sides are never added up.
    pub side: u32,
    /// How long it really was held.
    pub held_ms: i64,
}

/// What was done for one side of a region in one week.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WeekOfStretch {
    /// The Monday of the week.
    pub week_of: NaiveDate,
    /// The part of the body.
    pub region: String,
    /// The side.
    pub side: u32,
    /// Time under stretch on each day that had any, the earliest first.
    pub days: Vec<(NaiveDate, i64)>,
}

/// Why a stretch cannot be counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("stretch {number}: a hold is between nothing and a day long")]
pub struct DoseError {
    /// Which one, counted from 1.
    pub number: usize,
}

keyword! {
    /// A published dose of static stretching for a muscle.
    Dose {
        /// At least 5 minutes a week on at least 5 days; how long in one session mattered less
        /// (Thomas et al., Int J Sports Med 2018;39:243-254).
        FiveMinutesFiveDays = "five-minutes-five-days",
        /// 60 seconds in all for each exercise on at least 2 days a week (Garber et al., American
        /// College of Sports Medicine, Med Sci Sports Exerc 2011;43:1334-1359).
        MinuteTwoDays = "minute-two-days",
    }
}

/// What is missing to a dose.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Short {
    /// Days still to be stretched on, or stretched on for long enough.
    pub days: usize,
    /// Time under stretch still missing, in milliseconds; may be zero while days are missing.
    pub ms: i64,
}

/// Sums up stretches by week, region and side. They may come in any order; those of one day are
/// added, and a hold of no time is no stretch. Weeks start on Monday.
///
/// # Errors
/// [`DoseError`] names the first hold that is negative or longer than a day.
pub fn weeks_of_stretch(done: &[Stretched<'_>]) -> Result<Vec<WeekOfStretch>, DoseError> {
    let mut weeks: BTreeMap<(NaiveDate, &str, u32), BTreeMap<NaiveDate, i64>> = BTreeMap::new();
    for (number, stretch) in (1..).zip(done) {
        if !(0..=LONGEST_MS).contains(&stretch.held_ms) {
            return Err(DoseError { number });
        }
        if stretch.held_ms > 0 {
            let past = u64::from(stretch.on.weekday().num_days_from_monday());
            let monday = stretch.on.checked_sub_days(Days::new(past)).unwrap_or(stretch.on);
            let days = weeks.entry((monday, stretch.region, stretch.side)).or_default();
            let day = days.entry(stretch.on).or_default();
            *day = day.saturating_add(stretch.held_ms);
        }
    }
    let line = |((week_of, region, side), days): ((_, &str, _), BTreeMap<_, _>)| WeekOfStretch {
        week_of,
        region: region.to_owned(),
        side,
        days: days.into_iter().collect(),
    };
    Ok(weeks.into_iter().map(line).collect())
}

impl WeekOfStretch {
    /// Time under stretch in the week, in milliseconds.
    pub fn held_ms(&self) -> i64 {
        self.days.iter().fold(0, |sum, (_, ms)| sum.saturating_add(*ms))
    }

    /// True from [`PLATEAU_OF_WEEK_MS`] on: more was not seen to add anything.
    pub fn at_plateau(&self) -> bool {
        self.held_ms() >= PLATEAU_OF_WEEK_MS
    }
}

impl Dose {
    /// Days a week.
    pub fn days(self) -> usize {
        match self {
            Dose::FiveMinutesFiveDays => 5,
            Dose::MinuteTwoDays => 2,
        }
    }

    /// Where it was published.
    pub fn source(self) -> &'static str {
        match self {
            Dose::FiveMinutesFiveDays => "Thomas et al., Int J Sports Med 2018;39:243-254",
            Dose::MinuteTwoDays => {
                "Garber et al. (American College of Sports Medicine), Med Sci Sports Exerc \
                 2011;43:1334-1359"
            }
        }
    }

    /// What days of stretching, each day once with its time in milliseconds, still lack; none when
    /// nothing does.
    /// No days at all lack the whole dose.
    pub fn short(self, days: &[(NaiveDate, i64)]) -> Option<Short> {
        let mut held: Vec<i64> = days.iter().map(|(_, ms)| *ms).filter(|ms| *ms > 0).collect();
        held.sort_unstable_by(|long, short| short.cmp(long));
        let short = match self {
            Dose::FiveMinutesFiveDays => {
                let week = held.iter().fold(0_i64, |sum, ms| sum.saturating_add(*ms));
                let days = self.days().saturating_sub(held.len());
                Short { days, ms: 300_000_i64.saturating_sub(week).max(0) }
            }
            Dose::MinuteTwoDays => {
                // The two days that come nearest.
                let nearest = held.iter().chain([&0; 2]).take(self.days());
                let missing: Vec<i64> = nearest.map(|ms| (60_000 - ms).max(0)).collect();
                let days = missing.iter().filter(|ms| **ms > 0).count();
                Short { days, ms: missing.iter().sum() }
            }
        };
        (short != Short { days: 0, ms: 0 }).then_some(short)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn on(day: u32) -> NaiveDate {
        NaiveDate::from_ymd_opt(2026, 11, day).unwrap()
    }

    fn stretched(day: u32, region: &str, side: u32, held_ms: i64) -> Stretched<'_> {
        Stretched { on: on(day), region, side, held_ms }
    }

    #[test]
    fn sides_weeks_and_regions_are_kept_apart_and_days_are_added() {
        // 2 November 2026 is a Monday.
        let done = [
            stretched(8, "calf", 1, 30_000),
            stretched(2, "calf", 1, 30_000),
            stretched(2, "calf", 1, 15_000),
            stretched(2, "calf", 2, 60_000),
            stretched(9, "calf", 1, 90_000),
            stretched(3, "hip", 1, 0),
        ];
        let weeks = weeks_of_stretch(&done).unwrap();
        let line = |stretch: &WeekOfStretch| {
            (stretch.week_of, stretch.region.clone(), stretch.side, stretch.held_ms())
        };
        let expected = [(2, 1, 75_000), (2, 2, 60_000), (9, 1, 90_000)];
        let expected: Vec<_> =
            expected.map(|(day, side, ms)| (on(day), "calf".to_owned(), side, ms)).into();
        assert_eq!(weeks.iter().map(line).collect::<Vec<_>>(), expected);
        assert_eq!(weeks[0].days, [(on(2), 45_000), (on(8), 30_000)]);
        assert_eq!(weeks_of_stretch(&[]), Ok(vec![]));
    }

    #[test]
    fn odd_holds_are_refused_and_the_first_date_there_is_survived() {
        for held_ms in [-1, i64::MIN, i64::MAX, LONGEST_MS + 1] {
            let done = [stretched(2, "calf", 1, 1), stretched(2, "calf", 1, held_ms)];
            assert_eq!(weeks_of_stretch(&done), Err(DoseError { number: 2 }));
        }
        for day in [NaiveDate::MIN, NaiveDate::MAX] {
            let done = [Stretched { on: day, region: "calf", side: 1, held_ms: 5 }];
            assert_eq!(weeks_of_stretch(&done).unwrap().len(), 1);
        }
    }
}
