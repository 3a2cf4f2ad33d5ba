//! Follows somebody's strength from day to day.

use std::collections::VecDeque;

use chrono::NaiveDate;

use super::adaptive::{Adaptive, Ended};
use super::answer::Strength;
use super::band::{band, design, log};
use super::curve::{Heights, MOST_REPS};
use super::filter::{Observation, Seen, State};
use super::model::Model;
use super::normal::deviations;
use super::seen::{Evidence, Row, SetSeen, StrengthError, number, rows};
use super::trend::{Reading, TREND_DAYS, trend};

/// Works out the strength on `today` from all sets of one athlete and one movement. Days may come in any
/// order, the sets of one day in the order they were done; sets after `today` are left out. A set in
/// doubt is not to be among them.
///
/// None before the first set that says more than "at least so many": one counted, rated or short.
///
/// # Errors
/// [`StrengthError`] for a load that is none and for reps beyond what the journal takes.
pub fn strength(sets: &[SetSeen], today: NaiveDate) -> Result<Option<Strength>, StrengthError> {
    Ok(strength_on(sets, &[today])?.pop().flatten())
}

/// [`strength`] on each of some dates, as it was known then. The dates are in order.
///
/// # Errors
/// As [`strength`].
pub fn strength_on(
    sets: &[SetSeen],
    dates: &[NaiveDate],
) -> Result<Vec<Option<Strength>>, StrengthError> {
    let mut follower = Follower::new();
    let rows = rows(sets)?;
    let mut rows = rows.iter().peekable();
    let on = |date: &NaiveDate| {
        let day = number(*date);
        while let Some(row) = rows.next_if(|row| row.day <= day) {
            follower.take(row);
        }
        follower.at(day)
    };
    Ok(dates.iter().map(on).collect())
}

/// What is known of somebody after some of their days.
pub(super) struct Follower {
    heights: Heights,
    known: Option<Known>,
}

/// What is known from the first row on.
struct Known {
    state: State,
    /// The log of the first row's load in kilograms: loads are measured from it.
    reference: f64,
    day: i64,
    /// True once a row said more than "at least so many".
    informed: bool,
    /// The sum of squared surprises, each over its variance, and their number.
    squares: f64,
    count: f64,
    adaptive: Adaptive,
    ended: Ended,
    /// How many sets came before the one read last.
    before: f64,
    /// The latest rows that a trend may be read from.
    readings: VecDeque<Reading>,
}

impl Follower {
    pub(super) fn new() -> Follower {
        Follower { heights: Heights::new(), known: None }
    }

    /// Takes in the next row, of a day after all before it.
    pub(super) fn take(&mut self, row: &Row) {
        let heights = self.heights;
        let load = log(row.set.load);
        let first = self.known.is_none();
        let known = self.known.get_or_insert_with(|| Known {
            state: Model::USUAL.start(heights.at(row.set.target)),
            reference: load,
            day: row.day,
            informed: false,
            squares: 0.0,
            count: 0.0,
            adaptive: Adaptive::default(),
            ended: Ended::default(),
            before: row.before,
            readings: VecDeque::new(),
        });
        Model::USUAL.wait(&mut known.state, row.day.abs_diff(known.day) as f64);
        known.day = row.day;
        known.before = row.before;
        known.read(heights, row, load - known.reference, first);
    }

    /// What is known on a day, not before the last row's; none before the first row that says more than
    /// "at least so many".
    pub(super) fn at(&self, day: i64) -> Option<Strength> {
        let known = self.known.as_ref().filter(|known| known.informed)?;
        let mut state = known.state;
        Model::USUAL.wait(&mut state, day.abs_diff(known.day) as f64);
        let scale = known.scale();
        Some(Strength {
            state,
            reference: known.reference,
            scale,
            outside: known.adaptive.outside(),
            ended: known.ended,
            before: known.before,
            trend: trend(&known.state, scale, &known.readings, day),
        })
    }
}

impl Known {
    /// How much larger than usual this athlete's own variances are: the mean of their squared surprises,
    /// drawn towards 1 as if that had been seen in [`Model::usual_rows`] more.
    fn scale(&self) -> f64 {
        let usual = Model::USUAL.usual_rows;
        (usual + self.squares) / (usual + self.count)
    }

    fn read(&mut self, heights: Heights, row: &Row, load: f64, first: bool) {
        let model = &Model::USUAL;
        let reps = row.set.reps;
        let own = model.open_variance(self.scale());
        let tired = model.tires * row.before;
        let exactly = |reps| Seen::Exactly(heights.at(reps) + tired);
        let (seen, rating) = match row.set.evidence {
            Evidence::Counted | Evidence::Short => (exactly(reps), 0.0),
            Evidence::Reserve(left) => {
                let all = reps.saturating_add(left).min(MOST_REPS);
                let rep = heights.beyond(all) - heights.below(all);
                (exactly(all), model.rating_variance(left, rep))
            }
            Evidence::AsPlanned => (Seen::Above(heights.below(reps) + tired), 0.0),
        };
        let counted = row.set.evidence == Evidence::Counted;
        let rated = matches!(row.set.evidence, Evidence::Reserve(_));
        let observation =
            Observation { design: design(load, counted, rated), seen, variance: own + rating };
        let surprise = self.state.take(&observation, &model.taking());
        if row.set.evidence == Evidence::AsPlanned {
            return;
        }
        if counted && self.informed {
            let deviation = surprise.variance.sqrt();
            let reach = deviations(self.adaptive.outside());
            let told = band(heights, surprise.foretold - tired, deviation, reach);
            let outside = !(told.low..=told.high).contains(&reps.min(MOST_REPS));
            self.adaptive.saw(outside);
            self.ended.saw(outside);
        }
        self.informed = true;
        if !first {
            self.squares += surprise.value * surprise.value / surprise.variance;
            self.count += 1.0;
        }
        self.remember(Reading {
            on: row.set.on,
            day: row.day,
            load,
            // A surprise too large to be taken in does not bend the trend either.
            height: surprise.foretold + surprise.value,
            counted: f64::from(u8::from(counted)),
            rated: f64::from(u8::from(rated)),
            rating,
        });
    }

    fn remember(&mut self, reading: Reading) {
        while self.readings.front().is_some_and(|old| reading.day - old.day > TREND_DAYS.1) {
            self.readings.pop_front();
        }
        self.readings.push_back(reading);
    }
}
