//! What changes from session to session, as points that a chart draws.

use std::collections::BTreeMap;

use chrono::{Datelike, Days, NaiveDate};
use serde::Serialize;

use crate::id::RecordId;
use crate::journal::{Held, Lift, Range};
use crate::mass::Mass;
use crate::motion::{
    Dose, Stretched, WeekOfStretch, mann_kendall, over_days, theil_sen, weeks_of_stretch,
};
use crate::plan::{Block, Exercise, MeasuredWhen, Protocol};
use crate::store::{Logged, date_of};
use crate::words;

/// The sets of one movement and scheme, session by session.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct LiftSeries {
    /// What is lifted: what the history is kept under.
    pub exercise: Exercise,
    /// Its name.
    pub movement: String,
    /// The scheme's key; empty where nobody planned it.
    pub scheme: String,
    /// True when the last set is open.
    pub open: bool,
    /// The sessions, the earliest first.
    pub points: Vec<LiftPoint>,
}

/// One session of a [`LiftSeries`].
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct LiftPoint {
    /// The date.
    pub date: NaiveDate,
    /// The load of the heaviest set; of several at one load it is the one with the most reps.
    pub heaviest: Option<Mass>,
    /// The reps of that set.
    pub heaviest_reps: u32,
    /// Reps done in the last set, where it was done.
    pub last_reps: Option<u32>,
    /// Reps asked for in the last set.
    pub asked: u32,
    /// True when every logged set was made.
    pub made: bool,
}

/// A range measure of one piece and side, session by session.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct RangeSeries {
    /// How it is measured.
    pub protocol: Protocol,
    /// The protocol's name.
    pub name: String,
    /// The unit's symbol.
    pub unit: String,
    /// The piece's name.
    pub piece: String,
    /// The side, where there are two: left, then right.
    pub side: Option<u32>,
    /// Its name; none where there is but one.
    pub side_name: Option<String>,
    /// The smallest change that is not measurement error, in tenths of the unit.
    pub mdc95_tenths: i64,
    /// The sessions, the earliest first.
    pub points: Vec<RangePoint>,
    /// The first reading before a hold against the last one, in words; none with one session.
    pub judged: Option<String>,
    /// Where the readings before a hold are going, in words; none with fewer than four.
    pub trend: Option<String>,
}

/// One session of a [`RangeSeries`].
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct RangePoint {
    /// The date.
    pub date: NaiveDate,
    /// Before the hold, in tenths of the unit.
    pub before: Option<i64>,
    /// After the hold, in tenths of the unit.
    pub after: Option<i64>,
}

/// Time under stretch of one part of the body in one week.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct RegionMinutes {
    /// The Monday of the week.
    pub week_of: NaiveDate,
    /// The part of the body.
    pub region: String,
    /// Seconds held, both sides together.
    pub seconds: i64,
    /// The same in words.
    pub held_text: String,
    /// What the side held less lacks of a published dose, in words.
    pub dose_text: Option<String>,
}

/// The Monday of a date's week.
pub(crate) fn monday(date: NaiveDate) -> NaiveDate {
    let past = u64::from(date.weekday().num_days_from_monday());
    date.checked_sub_days(Days::new(past)).unwrap_or(date)
}

/// Lifts by movement and scheme.
pub(crate) fn lift_series(block: Option<&Block>, lifts: &[Logged<Lift>]) -> Vec<LiftSeries> {
    let mut series: BTreeMap<(Exercise, String), LiftSeries> = BTreeMap::new();
    let mut sessions: BTreeMap<(Exercise, String), Vec<RecordId>> = BTreeMap::new();
    for lift in lifts {
        let body = &lift.body;
        let key = (body.exercise.clone(), body.scheme.key());
        let movement =
            block.map_or_else(|| body.exercise.to_string(), |block| block.name_of(&body.exercise));
        let of = series.entry(key.clone()).or_insert_with(|| LiftSeries {
            exercise: key.0.clone(),
            movement,
            scheme: key.1.clone(),
            open: body.scheme.open,
            points: Vec::new(),
        });
        let known = sessions.entry(key).or_default();
        if known.last() != Some(&body.session) {
            known.push(body.session);
            let asked = body.scheme.target(body.scheme.sets()).unwrap_or(0);
            let date = date_of(lift);
            let (heaviest, heaviest_reps) = (body.load, body.reps);
            let (last_reps, made) = (None, true);
            of.points.push(LiftPoint { date, heaviest, heaviest_reps, last_reps, asked, made });
        }
        if let Some(point) = of.points.last_mut() {
            let heaviest = (point.heaviest, point.heaviest_reps).max((body.load, body.reps));
            (point.heaviest, point.heaviest_reps) = heaviest;
            point.made &= body.made();
            let last = body.set == body.scheme.sets() && !body.is_extra();
            if last || body.is_unplanned() {
                point.last_reps = Some(body.reps);
            }
        }
    }
    series.into_values().collect()
}

/// Range measures by piece, protocol and side.
pub(crate) fn range_series(ranges: &[Logged<Range>]) -> Vec<RangeSeries> {
    let mut series: BTreeMap<(String, Protocol, Option<u32>), RangeSeries> = BTreeMap::new();
    for range in ranges {
        let body = &range.body;
        let key = (body.piece.clone(), body.protocol, body.side);
        let of = series.entry(key).or_insert_with(|| RangeSeries {
            protocol: body.protocol,
            name: words::protocol(body.protocol).to_owned(),
            unit: body.protocol.unit().text().to_owned(),
            piece: body.piece.clone(),
            side: body.side,
            side_name: words::side_of_two(body.side),
            mdc95_tenths: body.protocol.mdc95_tenths(),
            points: Vec::new(),
            judged: None,
            trend: None,
        });
        let date = date_of(range);
        if of.points.last().map(|point| point.date) != Some(date) {
            of.points.push(RangePoint { date, before: None, after: None });
        }
        if let Some(point) = of.points.last_mut() {
            match body.when {
                MeasuredWhen::Before => point.before = Some(body.tenths),
                MeasuredWhen::After => point.after = Some(body.tenths),
            }
        }
    }
    for of in series.values_mut() {
        // Before against before: what a hold adds for an hour is not what weeks add.
        let mut before = of.points.iter().filter_map(|point| point.before);
        if let (Some(first), Some(last)) = (before.next(), before.next_back()) {
            of.judged = Some(words::judged(of.protocol, first, last));
        }
        of.trend = range_trend(of);
    }
    series.into_values().collect()
}

/// The fewest readings that a trend is read from. Chosen, no source.
const FEWEST_READINGS: usize = 4;

/// The Theil-Sen slope a week with its 95 % interval, and the Mann-Kendall probability that there is
/// none, of the readings before holds. See [`crate::motion`] for the sources.
fn range_trend(of: &RangeSeries) -> Option<String> {
    let read = |point: &RangePoint| Some((point.date, point.before? as f64 / 10.0));
    let readings: Vec<(NaiveDate, f64)> = of.points.iter().filter_map(read).collect();
    if readings.len() < FEWEST_READINGS {
        return None;
    }
    let slope = theil_sen(&over_days(&readings).ok()?, 0.95).ok()?;
    let values: Vec<f64> = readings.iter().map(|(_, value)| *value).collect();
    let tested = mann_kendall(&values).ok()?;
    let further = if of.protocol.larger_is_further() { 7.0 } else { -7.0 };
    Some(words::range_trend(slope, further, &of.unit, tested.p, readings.len()))
}

/// Time under stretch by week and part of the body.
pub(crate) fn region_minutes(holds: &[Logged<Held>]) -> Vec<RegionMinutes> {
    let mut sums: BTreeMap<(NaiveDate, String), i64> = BTreeMap::new();
    for hold in holds {
        let key = (monday(date_of(hold)), hold.body.region.clone());
        *sums.entry(key).or_default() += hold.body.held_ms;
    }
    let done: Vec<Stretched<'_>> = holds.iter().map(stretched).collect();
    // Numbers are bounded when an entry is read, so nothing here is longer than a day.
    let sides = weeks_of_stretch(&done).unwrap_or_default();
    let line = |((week_of, region), ms)| RegionMinutes {
        week_of,
        seconds: ms / 1000,
        held_text: words::clock_time(ms),
        dose_text: dose_text(
            sides.iter().filter(|side| side.week_of == week_of && side.region == region),
        ),
        region,
    };
    sums.into_iter().map(line).collect()
}

fn stretched(hold: &Logged<Held>) -> Stretched<'_> {
    let (on, held_ms) = (date_of(hold), hold.body.held_ms.max(0));
    Stretched { on, region: &hold.body.region, side: hold.body.side, held_ms }
}

/// The side that lacks most of the larger published dose speaks for both.
fn dose_text<'a>(sides: impl Iterator<Item = &'a WeekOfStretch>) -> Option<String> {
    let dose = Dose::FiveMinutesFiveDays;
    let least = sides.min_by_key(|side| (side.held_ms(), side.days.len()));
    least.map(|side| words::dose(dose, dose.short(&side.days), side.at_plateau()))
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::fixtures;
    use crate::id::{DeviceId, PersonId, random};
    use crate::journal::EntryId;
    use crate::plan::Scheme;

    fn logged(body: Lift) -> Logged<Lift> {
        let one = random([1; 16]);
        Logged {
            record: RecordId(one),
            person: PersonId(one),
            id: EntryId { device: DeviceId(one), number: 1 },
            first_ms: 0,
            placed: 0,
            offset_min: 0,
            on: None,
            heads: 1,
            body,
        }
    }

    proptest! {
        /// Load and reps that are shown together were lifted together.
        #[test]
        fn a_set_that_is_shown_was_logged(
            sets in proptest::collection::vec((proptest::option::of(40..44_i64), 0..9_u32), 1..8),
        ) {
            let scheme = Scheme { reps: vec![5; 3], open: false };
            let logged: Vec<_> = (1..).zip(&sets).map(|(set, (load, reps))| {
                let lift = fixtures::lift(scheme.clone(), Mass::kg(0), *reps);
                logged(Lift { set, load: load.map(Mass::kg), ..lift })
            }).collect();
            let series = lift_series(None, &logged);
            let [of] = series.as_slice() else { panic!("one series") };
            let shown: Vec<_> = of.points.iter().map(|of| (of.heaviest, of.heaviest_reps)).collect();
            let most = sets.iter().map(|(load, reps)| (load.map(Mass::kg), *reps)).max();
            prop_assert_eq!(shown, most.into_iter().collect::<Vec<_>>());
        }
    }
}
