//! The first time: no load is invented. It is the plan's start, or what is known of the athlete's strength, or
//! else the athlete chooses the first one and says how many reps were left; the sets after it are found from that.

use chrono::NaiveDate;

use super::away::HOLD_DAYS;
use super::history::same_reps;
use super::settle::Settled;
use super::training_max::{other_reps, whole_tenths};
use super::{History, SetDone, Time};
use crate::load::Reason;
use crate::mass::Mass;
use crate::plan::{Builds, Scheme};

/// Reps that should be left at the end of a set while a load is being found.
///
/// Two is the middle of what ratings near failure tell apart: their error is about one rep from 0 to
/// 5 reps before failure and above two from 7 to 10 (Hackett et al., J Strength Cond Res
/// 2017;31:2162-2168).
const LEAVE: u32 = 2;
/// Reps to failure beyond which an equation says nothing: taken as so many, which is lighter
/// (Reynolds et al., J Strength Cond Res 2006;20:584-592: no more than 10).
const MOST_REPS: u32 = 10;
/// No set is more than a fourth above the one before it. Common practice, no source.
const MOST_PERCENT: u32 = 125;

/// The load of a set the first time. No set is taken to the end before a load is known.
pub(super) fn settled(scheme: &Scheme, builds: &Builds, history: &History, set: u32) -> Settled {
    let reps = scheme.target(set).unwrap_or(0);
    let settled = found(scheme, builds, history, set);
    Settled { reps, closed: true, ..settled }
}

fn found(scheme: &Scheme, builds: &Builds, history: &History, set: u32) -> Settled {
    let before =
        history.so_far.iter().rfind(|done| done.set < set && done.counts && done.load.is_some());
    let asked = scheme.target(set).unwrap_or(0);
    // Who made no rep is shown nothing but that it was too heavy.
    let failed = || failed(scheme, history);
    if let Some(done) = before.or_else(failed).filter(|done| done.reps == 0)
        && let Some(last) = done.load
    {
        let reason = Reason::TooHeavy { last };
        return Settled { from: vec![done.record], ..Settled::because(reason) };
    }
    let led = before.and_then(|done| {
        let load = done.load?;
        let short = done.reps < scheme.target(done.set).unwrap_or(0);
        // Whoever stopped short had none left.
        let reserve = done.reserve.or(short.then_some(0));
        Some((done, load, reserve))
    });
    let says = led.as_ref().is_some_and(|(_, _, reserve)| reserve.is_some());
    let built = |load: Mass| builds.at_or_below(load).or(builds.lightest()).map(|build| build.mass);
    let able = history.able.as_ref().filter(|_| !says && !builds.is_picks());
    let estimate = able.and_then(|able| {
        let strength = &able.strength;
        Some((able, strength.estimate()?.low, strength.load_for(asked, LEAVE)?.low))
    });
    let other = other_reps(history, scheme);
    // Where more reps than these were just made at a load, that one at least.
    let made = other.filter(|_| !says).and_then(|last| just_made(history, last, asked));
    let made = made.and_then(|(done, load, on)| Some((built(load)?, done, load, on)));
    let estimated = estimate.as_ref().and_then(|(_, _, load)| built(whole_tenths(*load)));
    if let Some((load, done, last, on)) = made.filter(|(load, ..)| estimated < Some(*load)) {
        let reason = Reason::JustMade { last, reps: done.reps, on };
        return Settled { load: Some(load), from: vec![done.record], ..Settled::because(reason) };
    }
    if let Some((able, max, _)) = estimate {
        // Known from other sets of the same exercise: from the lower end.
        let (max, load) = (whole_tenths(max), estimated);
        let last = other.and_then(|time| time.sets.iter().rev().find_map(|done| done.load));
        let on = other.map(|time| time.on);
        let reason = Reason::OtherReps { reps: asked, leave: LEAVE, max, last, on };
        return Settled { load, from: able.from.clone(), ..Settled::because(reason) };
    }
    let start = history.start.get(set as usize - 1).or(history.start.first()).copied();
    // Who has lifted here before is not sent above that by where a plan starts.
    let start = start.filter(|start| other.is_none_or(|last| Some(*start) <= heaviest(last)));
    match (led, start) {
        (None | Some((_, _, None)), Some(planned)) => {
            let load = built(planned);
            let reason = Reason::Start { planned, nearest: load != Some(planned) };
            Settled { load, ..Settled::because(reason) }
        }
        (None, None) => Settled::because(Reason::FirstTime),
        (Some((done, last, None)), None) => {
            let reason = Reason::SayReserve { last, reps: done.reps };
            Settled { from: vec![done.record], ..Settled::because(reason) }
        }
        (Some((done, last, Some(reserve))), _) => {
            let wanted = carried(last, done, reserve, asked);
            let (most, capped) = (last.percent(MOST_PERCENT), wanted > last.percent(MOST_PERCENT));
            let load = if builds.is_picks() { built(last) } else { built(wanted.min(most)) };
            let reason = Reason::Found { last, reps: done.reps, reserve, leave: LEAVE, capped };
            Settled { load, from: vec![done.record], ..Settled::because(reason) }
        }
    }
}

/// A set of last time that no rep was made in.
pub(super) fn failed<'a>(scheme: &Scheme, history: &'a History) -> Option<&'a SetDone> {
    let last = history.last().filter(|last| same_reps(&last.scheme, scheme))?;
    last.sets.iter().rfind(|done| done.counts && done.load.is_some() && done.reps == 0)
}

/// The set of the heaviest load that so many reps or more were made with last time, and when; none after a miss, weeks
/// away, and pain.
fn just_made<'a>(
    history: &History,
    last: &'a Time,
    asked: u32,
) -> Option<(&'a SetDone, Mass, NaiveDate)> {
    if last.any_missed() || history.days_away(last.on) >= HOLD_DAYS || !history.flags.is_empty() {
        return None;
    }
    let made = last.asked_sets().filter_map(|set| last.set(set));
    let made = made.filter(|done| done.reps >= asked);
    made.filter_map(|done| Some((done, done.load?, last.on)))
        .max_by_key(|(done, load, _)| (*load, done.reps))
}

fn heaviest(last: &Time) -> Option<Mass> {
    last.asked_sets().filter_map(|set| last.set(set)?.load).max()
}

/// The load that leaves [`LEAVE`] of `asked` reps, by Brzycki's equation on both sides:
/// `1RM = load * 36 / (37 - reps to failure)` (JOPERD 1993;64(1):88-90), in whole numbers.
fn carried(last: Mass, done: &SetDone, reserve: u32, asked: u32) -> Mass {
    let able = done.reps.saturating_add(reserve).clamp(1, MOST_REPS);
    let wanted = asked.saturating_add(LEAVE).min(36);
    let ten_ng = i128::from(last.ten_ng) * i128::from(37 - wanted) / i128::from(37 - able);
    Mass { ten_ng: i64::try_from(ten_ng).unwrap_or(i64::MAX) }
}
