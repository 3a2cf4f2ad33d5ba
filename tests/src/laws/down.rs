//! Laws of what keeps a load down.

use holdfast_core::Mass;
use holdfast_core::load::{NextLoad, Time};
use rand_chacha::ChaCha8Rng;

use super::drawn::Case;
use super::held::{Seen, any_missed, days_away, is_above, is_fixed, is_missed, is_plain, is_share};
use super::held::{less, says, tenths_off, text};

pub(super) fn just_missed(seen: &Seen<'_>, _: &mut ChaCha8Rng) -> Result<bool, String> {
    // Of a share the training max is what carries over.
    let Some(last) = seen.case.history.last().filter(|_| is_plain(seen.case)) else {
        return Ok(false);
    };
    let mut spoken = false;
    for next in seen.next.iter().filter(|_| !is_share(seen.case)) {
        let done = last.set(next.set).filter(|_| is_missed(last, next.set));
        let Some(missed) = done.and_then(|done| done.load) else { continue };
        spoken = true;
        if is_above(seen.case, next.load, missed) {
            return Err(text(std::slice::from_ref(next)));
        }
    }
    Ok(spoken)
}

pub(super) fn not_made(seen: &Seen<'_>, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let Some(last) = seen.case.history.last() else { return Ok(false) };
    if seen.case.history.ruling.is_some() || is_fixed(seen.case) {
        return Ok(false);
    }
    let mut spoken = false;
    for next in &seen.next {
        let proposed = last.proposed.get(next.set as usize - 1);
        let done = last
            .set(next.set)
            .is_some_and(|done| done.reps >= last.scheme.target(next.set).unwrap_or(0));
        let Some(proposed) = proposed.and_then(|proposed| proposed.load).filter(|_| !done) else {
            continue;
        };
        spoken = true;
        if is_above(seen.case, next.load, proposed) {
            return Err(text(std::slice::from_ref(next)));
        }
    }
    Ok(spoken)
}

/// True for a set missed by two reps or a quarter of those asked, whichever is more, and for each missed set of a
/// session with more than half of its sets missed, two at least.
fn is_far(time: &Time, set: u32) -> bool {
    let missed = (1..=time.scheme.sets()).filter(|set| is_missed(time, *set)).count() as u32;
    let least = time.asked(set).min(time.scheme.target(set).unwrap_or(0));
    let short = time.set(set).map_or(0, |done| least.saturating_sub(done.reps));
    let far = short >= least.div_ceil(4).max(2) || (missed >= 2 && missed * 2 > time.scheme.sets());
    is_missed(time, set) && far
}

/// Missed twice running, or by far once; straight sets fall together; after three sessions with a miss all do.
pub(super) fn missed_twice(seen: &Seen<'_>, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let case = seen.case;
    let latest: Vec<&Time> = case.history.working().rev().take(3).collect();
    let Some(last) = latest.first().filter(|_| is_plain(case) && !is_fixed(case)) else {
        return Ok(false);
    };
    let twice = |set: u32| latest.len() > 1 && latest[..2].iter().all(|time| is_missed(time, set));
    let falls = |set: u32| is_far(last, set) || twice(set);
    let loads = || last.proposed.iter().map(|proposed| proposed.load);
    let straight = loads().all(|load| load.is_some() && load == last.proposed[0].load);
    let thrice = latest.len() == 3 && latest.iter().all(|time| any_missed(time));
    let all = thrice || (straight && (1..=last.scheme.sets()).any(falls));
    let mut spoken = false;
    for next in seen.next.iter().filter(|next| all || falls(next.set)) {
        spoken = true;
        let Some(carried) = next.carried else { continue };
        let fewer = next.reps < last.asked(next.set) || last.asked(next.set) <= 1;
        let lightest = case.builds.below(carried).is_none();
        if next.load >= Some(carried) && !(lightest && fewer) {
            return Err(text(std::slice::from_ref(next)));
        }
    }
    Ok(spoken)
}

pub(super) fn two_weeks(seen: &Seen<'_>, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let case = seen.case;
    let Some(last) = case.history.last() else { return Ok(false) };
    let away = days_away(case, last.on).is_some_and(|days| days >= 14);
    if case.history.ruling.is_some() || is_share(case) || !away {
        return Ok(false);
    }
    let up =
        |next: &NextLoad| next.carried.is_some_and(|carried| is_above(case, next.load, carried));
    says(seen.next.iter().any(up), || text(&seen.next))
}

/// By the percent of the weeks, or of picks by as many; fewer reps where the room would take more than twice that.
pub(super) fn after_weeks(seen: &Seen<'_>, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let case = seen.case;
    let Some(last) = case.history.last().filter(|_| is_plain(case) && !is_fixed(case)) else {
        return Ok(false);
    };
    let days = days_away(case, last.on);
    let Some((days, tenths)) = days.and_then(|days| Some((days, tenths_off(days)?))) else {
        return Ok(false);
    };
    let kept = |next: &NextLoad| {
        let Some(carried) = next.carried else { return false };
        let least = last.asked(next.set).min(case.scheme.target(next.set).unwrap_or(0));
        if let Some(most) = near(case, carried, days, tenths) {
            return next.load > Some(most);
        }
        let lightest = case.builds.below(carried).is_none();
        next.load >= Some(carried) && next.reps >= least && !(lightest && next.reps == 1)
    };
    says(seen.next.iter().any(kept), || text(&seen.next))
}

/// The most after weeks away; none where the room has no load so much lighter, or only one of twice that.
fn near(case: &Case, carried: Mass, days: i64, tenths: i64) -> Option<Mass> {
    let builds = &case.builds;
    if !builds.is_picks() {
        let most = less(carried, tenths);
        let build = builds.at_or_below(most).map(|build| build.mass);
        return build.filter(|build| *build >= less(carried, 2 * tenths)).map(|_| most);
    }
    let picks = [21, 35, 49].iter().filter(|from| days >= **from).count();
    let below = |load: &Mass| builds.below(*load).map(|build| build.mass);
    std::iter::successors(below(&carried), below).take(picks).last()
}
