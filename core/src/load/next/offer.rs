//! What looks upward: exactly one rule for each set.

use super::carried::Carried;
use super::days;
use super::history::{Did, Time};
use super::limit;
use super::reach;
use super::{BACK_PERCENT, Flag, SPARE_REPS};
use crate::id::RecordId;
use crate::load::Reason;
use crate::mass::{Mass, MassUnit};
use crate::plan::{Builds, Step, StepRule};

/// A load and the reps asked with it.
#[derive(Clone, Debug)]
pub(super) struct Offer {
    /// None where the room builds nothing near it.
    pub(super) load: Option<Mass>,
    /// Reps to ask instead of the usual.
    pub(super) reps: Option<u32>,
    pub(super) reason: Reason,
    pub(super) from: Vec<RecordId>,
}

/// Sessions in which a miss says that a load is not ready to go up.
const READY_SESSIONS: usize = 4;
/// Sessions in which a miss at this load or a heavier one earns no larger step.
const EARNED_SESSIONS: usize = 6;

/// What the step rule offers in a set.
pub(super) fn step(rule: &StepRule, carried: &Carried<'_>, set: u32) -> Offer {
    let (last, on) = (carried.load(set), carried.last().on);
    let again = carried.built(set, last);
    let from: Vec<RecordId> = carried.last().records().collect();
    let offer = |load, reason| Offer { load, reps: None, reason, from: from.clone() };
    if let Some(reason) = carried.unmet(set) {
        return offer(again, reason);
    }
    // On another bar, or in another room, the step may lead to what is built where the load itself is not.
    let is_built = again.is_some_and(|again| again >= last);
    let back = way_back(carried, set);
    let after_pain = after_pain(rule, carried, set);
    let ready = is_ready(carried) || back.is_some();
    if !(ready || after_pain.is_some()) || is_held(carried, set) {
        let reason = Reason::OnceMore { last, on };
        return offer(again, if is_built { reason } else { Reason::NotInThisRoom { last, on } });
    }
    // Whoever is on the way back to the plan's reps climbs there first.
    let reps_made = set > carried.last().scheme.sets()
        || carried.last().set(set).is_some_and(|done| done.reps >= carried.first_reps(set));
    let usual = if ready { higher(rule, carried, set, back) } else { None };
    let up = usual.into_iter().chain(after_pain).max_by_key(|(load, _)| *load);
    if let Some((load, reason)) = up.filter(|_| reps_made) {
        return offer(Some(load), reason);
    }
    if !is_built {
        return offer(again, Reason::NotInThisRoom { last, on });
    }
    let next = carried.builds.above(last).map(|build| build.mass);
    if let Some(reps) = next.filter(|_| reps_made).and_then(|next| reach::reps(carried, set, next))
    {
        let reason = Reason::NextBuild { last, reps, on };
        return Offer { reps: Some(reps), ..offer(next, reason) };
    }
    let asked = carried.asked(set);
    let top = rule.top.max(carried.first_reps(set));
    if asked >= top {
        return Offer {
            reps: Some(asked),
            ..offer(again, Reason::AtTop { last, next, reps: asked, on })
        };
    }
    let reps = asked + 1;
    Offer { reps: Some(reps), ..offer(again, Reason::MoreReps { last, reps, next, on }) }
}

/// The step as far as the room and the cap let it go; none where nothing is built by it.
fn higher(
    rule: &StepRule,
    carried: &Carried<'_>,
    set: u32,
    back: Option<WayBack>,
) -> Option<(Mass, Reason)> {
    let (builds, last, on) = (carried.builds, carried.load(set), carried.last().on);
    let usual = in_unit(&rule.step, builds.unit);
    let earned = earned(rule, carried, set).filter(|_| is_ready(carried));
    let step = match earned {
        // Earning never gives less.
        Some(_) => in_unit(&rule.earned_step, builds.unit).max(usual),
        None => usual,
    };
    let single = last + step;
    let wanted = match back {
        Some(WayBack { best, double: true }) => (last + usual * 2).min(best).max(single),
        _ => single,
    };
    let most = carried.cap(set);
    let built = builds.at_or_below(wanted.min(most)).filter(|build| build.mass > last)?;
    let (by, capped) = (built.mass - last, wanted > most);
    let reason = match (earned, back) {
        (Some((reps, asked)), _) if wanted == single => {
            Reason::Earned { last, by, reps, asked, capped, on }
        }
        (_, Some(WayBack { best, .. })) => Reason::WayBack { last, by, best, on },
        _ => Reason::Step { last, by, capped, on },
    };
    Some((built.mass, reason))
}

/// Ready to go up, all sets being made: none was missed in the last four sessions, or the last set ended with two
/// to spare, or the same loads or heavier were made twice running.
pub(super) fn is_ready(carried: &Carried<'_>) -> bool {
    let unmissed = !carried.latest().take(READY_SESSIONS).any(Time::any_missed);
    let made = |time: &Time| {
        let heavy = |set| time.set(set).and_then(|done| done.load) >= Some(carried.load(set));
        let mut both = time.asked_sets().filter(|set| *set <= carried.scheme.sets());
        time.all_made() && both.all(heavy)
    };
    let twice = carried.times.len() >= 2 && carried.latest().take(2).all(made);
    unmissed || had_spare(carried.last()) || twice
}

/// True when the last set of a session ended with two reps to spare, done or said.
pub(super) fn had_spare(time: &Time) -> bool {
    let set = time.scheme.sets();
    time.set(set).is_some_and(|done| {
        done.reps >= time.asked(set).saturating_add(SPARE_REPS)
            || done.reserve.is_some_and(|left| left >= SPARE_REPS)
    })
}

/// The reps of the open set and those asked, where they earn the larger step: the target beaten by the plan's
/// margin, and no set missed at this load or a heavier one lately.
fn earned(rule: &StepRule, carried: &Carried<'_>, set: u32) -> Option<(u32, u32)> {
    let time = carried.last();
    let end = time.scheme.sets();
    if rule.earned_step.is_empty() || !time.scheme.is_open(end) {
        return None;
    }
    let (done, asked) = (time.set(end)?.reps, time.asked(end));
    let beaten = done >= asked.saturating_add(rule.earned_by);
    let missed_here = |time: &Time| {
        let heavy = time.set(set).and_then(|done| done.load) >= Some(carried.load(set));
        heavy && time.did(set) == Did::Missed
    };
    let missed = carried.latest().take(EARNED_SESSIONS).any(missed_here);
    (beaten && !missed).then_some((done, asked))
}

/// Back towards what was lifted before weeks away.
#[derive(Clone, Copy)]
struct WayBack {
    best: Mass,
    double: bool,
}

/// Common practice, no source: what was lost comes back faster than it came.
fn way_back(carried: &Carried<'_>, set: u32) -> Option<WayBack> {
    if carried.builds.is_picks() {
        return None;
    }
    let best = carried.former_best(set)?;
    let under = carried.load(set) < best.percent(95);
    under.then(|| WayBack { best, double: had_spare(carried.last()) })
}

/// Of what was lifted before severe pain, what each session made without it gives back: half of what the pain
/// took. Common practice, no source.
const AFTER_PAIN_PERCENT: u32 = 5;

/// Back towards what was lifted before severe pain; where the room builds nothing on the way there, the next
/// build, which was lifted not long ago.
fn after_pain(rule: &StepRule, carried: &Carried<'_>, set: u32) -> Option<(Mass, Reason)> {
    let (builds, last, on) = (carried.builds, carried.load(set), carried.last().on);
    let best = before_pain(carried, set, rule.back_off_percent).filter(|best| last < *best)?;
    let half = best.percent(AFTER_PAIN_PERCENT).max(in_unit(&rule.step, builds.unit));
    // Rounded up: what the room took in rounding down comes back too.
    let up = builds.at_or_above(last + half).map_or(best, |build| build.mass);
    let built = builds.at_or_below(up.min(best).min(carried.cap(set)));
    let built = built.filter(|build| build.mass > last && !builds.is_picks());
    let load = built.or_else(|| builds.above(last).filter(|build| build.mass <= best))?.mass;
    Some((load, Reason::WayBack { last, by: load - last, best, on }))
}

/// The load carried in a set before severe pain took a part of it, less what a miss takes where the session
/// before had one; none where pain took nothing, where weeks away did, and after a miss on the way back.
fn before_pain(carried: &Carried<'_>, set: u32, back_off_percent: u32) -> Option<Mass> {
    let severe = |flag: &&Flag| flag.takes() && flag.is_severe();
    let cleared = carried.history.flags.iter().filter(severe).filter_map(|flag| flag.cleared);
    let before = |cleared: i64| {
        let first = carried.times.iter().position(|time| time.placed > cleared)?;
        let (last, back) = (carried.times.get(first.checked_sub(1)?)?, carried.times[first]);
        let days = days::days_between(&carried.history.days, last.on, back.on);
        let missed = carried.times[first..].iter().any(|time| time.any_missed());
        let (load, lifted) = carried.load_after(first, set)?;
        let proposed = back.proposal(set)?.load?;
        // Any session from the one it was lifted in may have lowered it on another bar.
        let bar = back.sets.iter().find_map(|done| done.bar.as_deref());
        let mut sets = carried.times[lifted..=first].iter().flat_map(|time| &time.sets);
        let bar_stays = sets.all(|done| done.bar.as_deref() == bar);
        let taken = match bar_stays {
            true => is_taken(carried.builds, proposed, load),
            false => is_taken_elsewhere(carried.builds, proposed, load),
        };
        // What a miss took too is built as on the bar of that day.
        let today = carried.builds.has_plates().then_some(carried.builds.bar.as_str());
        let known = !last.any_missed() || (bar_stays && bar.is_none_or(|bar| Some(bar) == today));
        let lighter = last.any_missed().then(|| limit::lighter(carried, load, back_off_percent));
        let load = lighter.flatten().unwrap_or(load);
        (taken && known && proposed < load && !missed && days < days::LIGHTER_DAYS).then_some(load)
    };
    cleared.filter_map(before).max()
}

/// True where a proposal fell from a load by what pain takes: a tenth, what the room has of it, or a pick.
fn is_taken(builds: &Builds, proposed: Mass, load: Mass) -> bool {
    let least = builds.lightest().map_or(load, |build| build.mass);
    let most = load.percent(BACK_PERCENT).max(least);
    proposed < load && (proposed <= most || builds.is_picks())
}

/// The same where it is the proposal for another bar: which takes less than that only where no two loads stand so far
/// apart.
fn is_taken_elsewhere(builds: &Builds, proposed: Mass, load: Mass) -> bool {
    let lighter = load.percent(BACK_PERCENT);
    let near = load.percent(80)..=load.percent(120);
    let near: Vec<Mass> = builds.loads().filter(|build| near.contains(build)).collect();
    // The first and the last are as near to the ends.
    let whole = near.first().is_some_and(|first| *first <= load.percent(85))
        && near.last().is_some_and(|last| *last >= load.percent(115));
    proposed <= lighter && whole && near.windows(2).all(|pair| pair[1] - pair[0] <= load - lighter)
}

/// True where more was lifted than was proposed, so much that nothing heavier is within the cap: it is made once
/// more as proposed.
fn is_held(carried: &Carried<'_>, set: u32) -> bool {
    let last = carried.load(set);
    let next = || carried.builds.at_or_below(carried.cap(set)).map(|build| build.mass);
    carried.exceeded(set).is_some() && next().is_none_or(|next| next <= last)
}

/// The step as written for `unit`, otherwise the first one written.
pub(super) fn in_unit(steps: &[Step], unit: MassUnit) -> Mass {
    let step = steps.iter().find(|step| step.unit == unit).or(steps.first());
    step.map_or(Mass::ZERO, |step| step.mass)
}
