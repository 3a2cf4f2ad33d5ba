//! Weeks away, and what they take off.

use super::carried::Carried;
use super::days::{FIRST_TENTHS, LIGHTER_DAYS, WEEK_TENTHS, per_mille, tenths_off};
use super::limit::Limit;
use crate::load::Reason;
use crate::mass::Mass;
use crate::plan::Builds;

/// From so many days without the exercise no load goes up. Common practice, no source.
const HOLD_DAYS: i64 = 14;
/// Of a load of picks, which is near zero, a percentage means nothing: so many picks after so many days.
const PICKS: [(i64, u32); 3] = [(49, 3), (35, 2), (LIGHTER_DAYS, 1)];

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
        carried.picks_below(last, picks).filter(|load| *load < last)
    } else {
        let single = || {
            let share = carried.builds.at_or_below(per_mille(last, 1000 - tenths));
            share.or_else(|| carried.builds.below(last)).map(|build| build.mass)
        };
        // A single cannot be done for fewer reps.
        let single = single().filter(|_| carried.reps(set) <= 1);
        near(carried.builds, last, tenths).into_iter().chain(single).min()
    };
    let reason = Reason::EasedIn { last, weeks, on };
    Some(match lighter {
        Some(load) => Limit::at(load, reason, from),
        // The room has nothing near: the same load for fewer reps.
        None => {
            let reps = carried.reps(set);
            let fewer = i64::from(reps).saturating_mul(tenths) / 400;
            let fewer = u32::try_from(fewer).unwrap_or(0).max(1);
            Limit::at(last, reason, from).asking(reps.saturating_sub(fewer).max(1)).closed()
        }
    })
}

/// The build that so many tenths of a percent away leave of a load; none where the room has nothing near. Never
/// more than a shorter absence leaves, and never more than it leaves of a heavier load: one that is kept for want
/// of anything near would else be heavier than what is left of the next one.
fn near(builds: &Builds, last: Mass, tenths: i64) -> Option<Mass> {
    let weekly = |load: Mass| {
        let so_far = (0..).map(|week| FIRST_TENTHS + WEEK_TENTHS * week);
        let so_far = so_far.take_while(move |so_far| *so_far <= tenths);
        so_far.filter_map(move |tenths| lighter_by(builds, load, tenths)).min()
    };
    let heavier = || {
        let next = |load: &Mass| builds.above(*load).map(|build| build.mass);
        let above = std::iter::successors(next(&last), next);
        // What a still heavier one leaves is over the load itself.
        let above = above.take_while(|load| per_mille(*load, 1000 - 2 * tenths) < last);
        above.filter_map(weekly).filter(|left| *left < last).min()
    };
    weekly(last).or_else(heavier)
}

/// The build so much under a load, unless the room would make it more than twice as much.
fn lighter_by(builds: &Builds, last: Mass, tenths: i64) -> Option<Mass> {
    let build = builds.at_or_below(per_mille(last, 1000 - tenths))?.mass;
    (build < last && build >= per_mille(last, 1000 - 2 * tenths)).then_some(build)
}
