//! Days away, and the share they take off.

use chrono::NaiveDate;

use super::History;
use crate::mass::Mass;

/// From so many the first time back is lighter.
///
/// That strength falls with the weeks away is published (Bosquet et al., Scand J Med Sci Sports
/// 2013;23(3):e140-e149); how much is taken off is common practice, no source.
pub(super) const LIGHTER_DAYS: i64 = 21;
/// Taken off then, and for each further full week, in tenths of a percent.
pub(super) const FIRST_TENTHS: i64 = 100;
pub(super) const WEEK_TENTHS: i64 = 25;
const MOST_TENTHS: i64 = 300;

/// Whole weeks since something was last lifted; none for a date that lies ahead.
pub fn weeks_away(last: NaiveDate, today: NaiveDate) -> u32 {
    u32::try_from((today - last).num_weeks()).unwrap_or(0)
}

/// The longest gap between two days the exercise was logged on, from one date to another, in days. A light
/// day on the way back does not end what went before it.
pub(super) fn days_between(days: &[NaiveDate], from: NaiveDate, to: NaiveDate) -> i64 {
    let mut before = from;
    let mut longest = 0;
    let between = days.iter().copied().filter(|day| *day > from && *day < to);
    for day in between.chain([to]) {
        longest = longest.max((day - before).num_days());
        before = day;
    }
    longest
}

impl History {
    /// Days away on the date the loads are for, since a session of the track.
    pub(super) fn days_away(&self, from: NaiveDate) -> i64 {
        self.date.map_or(0, |date| days_between(&self.days, from, date))
    }
}

/// Tenths of a percent that so many days take off; none before three weeks.
pub(super) fn tenths_off(days: i64) -> Option<i64> {
    let weeks = (days - LIGHTER_DAYS).div_euclid(7);
    (weeks >= 0)
        .then(|| weeks.saturating_mul(WEEK_TENTHS).saturating_add(FIRST_TENTHS).min(MOST_TENTHS))
}

/// So many thousandths of a load, rounded down.
pub(super) fn per_mille(load: Mass, thousandths: i64) -> Mass {
    let share = i128::from(load.ten_ng) * i128::from(thousandths) / 1000;
    Mass { ten_ng: i64::try_from(share).unwrap_or(load.ten_ng) }
}
