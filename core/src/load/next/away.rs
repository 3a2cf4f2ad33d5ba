//! Weeks away, and what they take off.

use chrono::NaiveDate;

use super::History;
use super::carried::Carried;
use super::limit::Limit;
use crate::load::Reason;
use crate::mass::Mass;

/// From so many days without the exercise no load goes up. Common practice, no source.
const HOLD_DAYS: i64 = 14;
/// From so many the first time back is lighter.
///
/// That strength falls with the weeks away is published (Bosquet et al., Scand J Med Sci Sports
/// 2013;23(3):e140-e149); how much is taken off is common practice, no source.
pub(super) const LIGHTER_DAYS: i64 = 21;
/// Taken off then, and for each further full week, in tenths of a percent.
const FIRST_TENTHS: i64 = 100;
const WEEK_TENTHS: i64 = 25;
const MOST_TENTHS: i64 = 300;
/// Of a load of picks, which is near zero, a percentage means nothing: so many picks after so many days.
const PICKS: [(i64, u32); 3] = [(49, 3), (35, 2), (LIGHTER_DAYS, 1)];

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

/// What days away allow in a set; none where they were few.
pub(super) fn limit(carried: &Carried<'_>, set: u32) -> Option<Limit> {
    let (last, on, days) = (carried.load(set), carried.last().on, carried.away);
    let from = vec![carried.record(set)];
    let weeks = u32::try_from(days / 7).unwrap_or(u32::MAX);
    if days < HOLD_DAYS {
        return None;
    }
    let Some(tenths) = tenths_off(days) else {
        let reason = Reason::HeldBack { last, weeks, on };
        return Some(Limit::at(last, reason, from));
    };
    let lighter = if carried.builds.is_picks() {
        let picks = PICKS.iter().find(|(from, _)| days >= *from).map_or(0, |(_, picks)| *picks);
        let load = carried.picks_below(last, picks).filter(|load| *load < last);
        load.map(|load| (load, true))
    } else {
        // A longer absence never gives more than a shorter one.
        let weekly = (0..).map(|week| FIRST_TENTHS + WEEK_TENTHS * week);
        let up_to = weekly.take_while(|so_far| *so_far <= tenths);
        let near = up_to.filter_map(|tenths| lighter_by(carried, last, tenths));
        let near = near.min_by_key(|(load, enough)| (*load, !enough));
        // A single cannot be done for fewer reps.
        let single = || carried.builds.below(last).filter(|_| carried.reps(set) <= 1);
        near.or_else(|| single().map(|build| (build.mass, true)))
    };
    let reason = Reason::EasedIn { last, weeks, on };
    Some(match lighter {
        Some((load, true)) => Limit::at(load, reason, from),
        // The room has nothing so much lighter: what it has, or the same load, for fewer reps.
        lighter => {
            let load = lighter.map_or(last, |(load, _)| load);
            let reps = carried.reps(set);
            let fewer = i64::from(reps).saturating_mul(tenths) / 400;
            let fewer = u32::try_from(fewer).unwrap_or(0).max(1);
            Limit::at(load, reason, from).asking(reps.saturating_sub(fewer).max(1)).closed()
        }
    })
}

/// The build so much under a load; where the room would make it more than twice as much, the lightest one above
/// that, which is not enough.
fn lighter_by(carried: &Carried<'_>, last: Mass, tenths: i64) -> Option<(Mass, bool)> {
    let wanted = per_mille(last, 1000 - tenths);
    let build = carried.builds.at_or_below(wanted).map(|build| build.mass);
    let near = |build: &Mass| *build < last && *build >= per_mille(last, 1000 - 2 * tenths);
    let above = || carried.builds.above(wanted).map(|build| build.mass);
    let enough = build.filter(near).map(|build| (build, true));
    enough.or_else(|| above().filter(|build| *build < last).map(|build| (build, false)))
}

/// So many thousandths of a load, rounded down.
pub(super) fn per_mille(load: Mass, thousandths: i64) -> Mass {
    let share = i128::from(load.ten_ng) * i128::from(thousandths) / 1000;
    Mass { ten_ng: i64::try_from(share).unwrap_or(load.ten_ng) }
}
