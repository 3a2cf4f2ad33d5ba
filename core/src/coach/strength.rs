//! A member's estimated one-rep max, as it was on each day it was seen.

use std::collections::BTreeMap;

use chrono::NaiveDate;
use serde::Serialize;

use crate::history::set_seen;
use crate::journal::Lift;
use crate::load::strength::{SetSeen, strength};
use crate::load::whole_tenths;
use crate::mass::{Mass, MassUnit};
use crate::plan::{Block, Exercise};
use crate::store::{Logged, date_of};
use crate::words;

/// The latest training days that are shown: half a year of two a week.
const MOST_POINTS: usize = 52;

/// The strength of one movement, training day by training day.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct StrengthSeries {
    /// What is lifted: what the history is kept under.
    pub exercise: Exercise,
    /// Its name.
    pub movement: String,
    /// The training days, the earliest first; each as it was known then.
    pub points: Vec<StrengthPoint>,
    /// What can be lifted once on the page's date, in words.
    pub text: String,
    /// Where it is going, in words; none before two weeks of sets.
    pub trend: Option<String>,
}

/// One training day of a [`StrengthSeries`].
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct StrengthPoint {
    /// The date.
    pub date: NaiveDate,
    /// The lower end of four cases in five, to a tenth of a kilogram.
    pub low: Mass,
    /// As likely below as above.
    pub likely: Mass,
    /// The upper end.
    pub high: Mass,
}

/// The strength in every movement whose sets say how near their end they were.
pub(crate) fn strength_series(
    block: Option<&Block>,
    lifts: &[Logged<Lift>],
    date: NaiveDate,
    unit: MassUnit,
) -> Vec<StrengthSeries> {
    let mut seen: BTreeMap<&Exercise, Vec<SetSeen>> = BTreeMap::new();
    for lift in lifts.iter().filter(|lift| date_of(lift) <= date) {
        if let Some(set) = set_seen(lift) {
            seen.entry(&lift.body.exercise).or_default().push(set);
        }
    }
    let series = seen.into_iter().filter_map(|(exercise, sets)| {
        // What the model refuses has no strength to show; the sets themselves are on the page.
        let now = strength(&sets, date).ok().flatten()?;
        let interval = now.now();
        let [low, likely, high] = [interval.low, interval.likely, interval.high].map(whole_tenths);
        Some(StrengthSeries {
            exercise: exercise.clone(),
            movement: block.map_or_else(|| exercise.to_string(), |block| block.name_of(exercise)),
            points: points(&sets),
            text: words::able(low, likely, high, unit),
            trend: now.trend().map(|trend| words::trend(&trend)),
        })
    });
    series.collect()
}

fn points(sets: &[SetSeen]) -> Vec<StrengthPoint> {
    let mut dates: Vec<NaiveDate> = sets.iter().map(|set| set.on).collect();
    dates.sort_unstable();
    dates.dedup();
    let shown = dates.len().saturating_sub(MOST_POINTS);
    let point = |date: &NaiveDate| {
        // Sets after the date are left out by the model.
        let now = strength(sets, *date).ok().flatten()?.now();
        let [low, likely, high] = [now.low, now.likely, now.high].map(whole_tenths);
        Some(StrengthPoint { date: *date, low, likely, high })
    };
    dates.iter().skip(shown).filter_map(point).collect()
}
