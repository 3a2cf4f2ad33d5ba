//! Weeks away, and what they take off.

use super::carried::Carried;
use super::days::{FIRST_TENTHS, LIGHTER_DAYS, WEEK_TENTHS, per_mille, tenths_off};
use super::limit::Limit;
use crate::load::Reason;
use crate::mass::Mass;

/// From so many days without the exercise no load goes up. Common practice, no source.
pub(super) const HOLD_DAYS: i64 = 14;
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
