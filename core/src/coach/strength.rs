//! A member's estimated one-rep max, as it was on each day it was seen.

use std::collections::BTreeMap;

use chrono::NaiveDate;
use serde::Serialize;

use crate::history::{latest, made_lately, set_seen};
use crate::journal::Lift;
use crate::load::strength::{Interval, SetSeen, Strength, strength, strength_on};
use crate::load::whole_tenths;
use crate::mass::{Mass, MassUnit};
use crate::plan::{Block, Exercise};
use crate::say;
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
    /// The training days on which there was an estimate to show, the earliest first; each as it was known
    /// then.
    pub points: Vec<StrengthPoint>,
    /// The estimate on the page's date, in words, or what would show one.
    pub text: String,
    /// Where it is going, in words; none before two weeks of sets.
    pub trend: Option<String>,
    /// How many of the latest open sets ended inside the reps expected of them, in words; none before two of
    /// them were expected.
    pub ended: Option<String>,
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

/// The strength in every movement whose sets say how near their end they were, to the athlete's own eyes
/// or another's.
pub(crate) fn strength_series(
    block: Option<&Block>,
    lifts: &[Logged<Lift>],
    date: NaiveDate,
    unit: MassUnit,
    own: bool,
) -> Vec<StrengthSeries> {
    let mut seen: BTreeMap<&Exercise, Vec<SetSeen>> = BTreeMap::new();
    for lift in lifts.iter().filter(|lift| date_of(lift) <= date) {
        if let Some(set) = set_seen(lift) {
            seen.entry(&lift.body.exercise).or_default().push(set);
        }
    }
    let series = seen.into_iter().filter_map(|(exercise, sets)| {
        let mut dates: Vec<NaiveDate> = sets.iter().map(|set| set.on).collect();
        dates.sort_unstable();
        dates.dedup();
        dates.drain(..dates.len().saturating_sub(MOST_POINTS));
        // What the model refuses has no strength to show; the sets themselves are on the page. What is known
        // today is read from as many sets as on a session's screen, so that both say the same.
        let now = strength(latest(&sets), date).ok().flatten()?;
        let known = strength_on(&sets, &dates).ok()?;
        let points = dates.iter().zip(&known);
        let hint = match own {
            true => say::able::count_a_set(),
            false => say::able::counted_set_would_show(),
        };
        let text = now.max_over(made_lately(&sets, date)).map(ends);
        Some(StrengthSeries {
            exercise: exercise.clone(),
            movement: block.map_or_else(|| exercise.to_string(), |block| block.name_of(exercise)),
            points: points.filter_map(|known| point(known, &sets)).collect(),
            text: text.map_or(hint.to_owned(), |[low, likely, high]| {
                words::able(low, likely, high, unit)
            }),
            trend: now.trend().map(|trend| words::trend(&trend)),
            ended: words::ended(now.ended(), own),
        })
    });
    series.collect()
}

fn point(
    (date, known): (&NaiveDate, &Option<Strength>),
    sets: &[SetSeen],
) -> Option<StrengthPoint> {
    let [low, likely, high] = ends(known.as_ref()?.max_over(made_lately(sets, *date))?);
    Some(StrengthPoint { date: *date, low, likely, high })
}

fn ends(max: Interval) -> [Mass; 3] {
    [max.low, max.likely, max.high].map(whole_tenths)
}
