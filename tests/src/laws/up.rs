//! Laws of what goes up, and how far.

use holdfast_core::load::{NextLoad, Reason, Time};
use holdfast_core::plan::{LoadRule, Step};
use holdfast_core::{Mass, MassUnit};
use rand_chacha::ChaCha8Rng;

use super::drawn::Case;
use super::held::{Seen, as_proposed, heavier, is_answer, is_fixed, is_flagged, is_share};
use super::held::{any_missed, is_plain, pair, says, text};

/// Without an answer no load is over the larger of 110 % of the carried load and one build.
pub(super) fn built(seen: &Seen<'_>, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let case = seen.case;
    let wrong = |next: &NextLoad| {
        let Some(load) = next.load else { return false };
        let exact = case.builds.exactly(load).is_some();
        let free = is_answer(next) || is_fixed(case);
        let far = next.carried.filter(|_| !free).is_some_and(|carried| {
            let up = case.builds.above(carried).map_or(carried, |build| build.mass);
            load > carried.percent(110).max(up).max(small_step(case, carried))
        });
        !exact || far
    };
    says(seen.next.iter().any(wrong), || text(&seen.next))
}

/// Where picks stand close, 2.5 kg or 5 lb more; otherwise nothing.
fn small_step(case: &Case, load: Mass) -> Mass {
    let step = match case.builds.unit {
        MassUnit::Kg => Mass::thousandths(2_500, MassUnit::Kg),
        MassUnit::Lb => Mass::thousandths(5_000, MassUnit::Lb),
    };
    if case.builds.is_picks() { load + step } else { load }
}

/// A step is the plan's, rounded down; back to what was lifted is no further than that, or the usual step; the next
/// load is the next. Nothing else is above the carried load, unless the room has nothing else.
pub(super) fn no_further(seen: &Seen<'_>, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let LoadRule::Step(rule) = &seen.case.rule else { return Ok(false) };
    let builds = &seen.case.builds;
    let mass = |steps: &[Step]| steps.first().map_or(Mass::ZERO, |step| step.mass);
    let (step, larger) = (mass(&rule.step), mass(&rule.earned_step));
    let mut spoken = false;
    for next in &seen.next {
        let Some((carried, load)) = next.carried.zip(next.load) else { continue };
        if load <= carried || is_answer(next) {
            continue;
        }
        spoken = true;
        let most = match next.reason {
            Reason::Step { .. } => carried + step,
            Reason::Earned { .. } => carried + step.max(larger),
            Reason::WayBack { best, .. } => best.max(carried + step),
            Reason::NextBuild { .. } => builds.above(carried).map_or(carried, |build| build.mass),
            _ => builds.lightest().map_or(carried, |build| build.mass),
        };
        if load > most {
            return Err(text(std::slice::from_ref(next)));
        }
    }
    Ok(spoken)
}

/// Where no set was missed in six sessions, and nobody was away or hurts.
pub(super) fn earned(seen: &Seen<'_>, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let LoadRule::Step(rule) = &seen.case.rule else { return Ok(false) };
    let (case, end) = (seen.case, seen.case.scheme.sets());
    let latest: Vec<&Time> = case.history.working().rev().take(6).collect();
    let Some(last) = latest.first().filter(|_| is_plain(case) && case.scheme.open) else {
        return Ok(false);
    };
    let made = |set: u32| last.set(set).is_some_and(|done| done.reps >= first_and_asked(last, set));
    let away = (case.date() - last.on).num_days() >= 14;
    let made = (1..=end).all(made) && !latest.iter().any(|time| any_missed(time));
    if rule.earned_step.is_empty() || case.builds.is_picks() || !made || away {
        return Ok(false);
    }
    let (mut beaten, session) = (case.clone(), last.session);
    let beats = last.asked(end) + rule.earned_by;
    let time = beaten.history.times.iter_mut().find(|time| time.session == session);
    let done = time.and_then(|time| time.sets.iter_mut().find(|done| done.set == end));
    let Some(done) = done else { return Ok(false) };
    done.reps = done.reps.max(beats);
    let next = beaten.next();
    let less = |next: &NextLoad| {
        let Some((carried, most)) = next.carried.zip(next.most) else { return false };
        let wanted = (carried + rule.earned_step[0].mass).min(most);
        let build = case.builds.at_or_below(wanted).filter(|build| build.mass > carried);
        build.is_some_and(|build| next.load < Some(build.mass))
    };
    says(next.iter().any(less), || text(&next))
}

fn first_and_asked(time: &Time, set: u32) -> u32 {
    time.asked(set).max(time.scheme.target(set).unwrap_or(0))
}

/// A load typed a little too high is not gone on from: a tenth over the proposal, or the next load, at most.
pub(super) fn from_the_proposal(seen: &Seen<'_>, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let case = seen.case;
    let Some(last) = case.history.last().filter(|_| is_plain(case) && !is_fixed(case)) else {
        return Ok(false);
    };
    let mut spoken = false;
    for next in &seen.next {
        let proposed = last.proposed.get(next.set as usize - 1).and_then(|proposed| proposed.load);
        let lifted = last.set(next.set).and_then(|done| done.load);
        let Some((proposed, lifted)) = proposed.zip(lifted).filter(|(one, two)| two > one) else {
            continue;
        };
        spoken = true;
        let above = case.builds.above(proposed).map_or(proposed, |build| build.mass);
        let tenth =
            if case.builds.is_picks() { small_step(case, proposed) } else { proposed.percent(110) };
        if next.load > Some(lifted.max(above).max(tenth)) {
            return Err(text(std::slice::from_ref(next)));
        }
    }
    Ok(spoken)
}

pub(super) fn made(seen: &Seen<'_>, _: &mut ChaCha8Rng) -> Result<bool, String> {
    // What an answer made heavier than the plan's own load is gone the next time.
    if seen.case.history.ruling.is_some() && is_fixed(seen.case) {
        return Ok(false);
    }
    let Some(after) = as_proposed(seen.case) else { return Ok(false) };
    let after = after.next();
    says(heavier(&seen.next, &after), || pair(&seen.next, &after))
}

/// On another bar the nearest build at or below the carried load is the least.
pub(super) fn another_bar(seen: &Seen<'_>, chance: &mut ChaCha8Rng) -> Result<bool, String> {
    if seen.case.bars.is_empty() || is_fixed(seen.case) {
        return Ok(false);
    }
    let Some(mut after) = as_proposed(seen.case) else { return Ok(false) };
    after.take_a_bar(chance);
    let next = after.next();
    let lighter = |next: &NextLoad| {
        let least = next.carried.and_then(|carried| after.builds.at_or_below(carried));
        least.is_some_and(|least| next.load < Some(least.mass))
    };
    says(next.iter().any(lighter), || pair(&seen.next, &next))
}

pub(super) fn progress(seen: &Seen<'_>, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let case = seen.case;
    if is_flagged(case) || case.history.ruling.is_some() {
        return Ok(false);
    }
    // Loads that the plan gives, and a max without a step, go up when the plan or the estimate does.
    match &case.rule {
        LoadRule::Fixed { .. } | LoadRule::Free => return Ok(false),
        LoadRule::Percent { step, .. } | LoadRule::Reserve { step, .. } if step.is_empty() => {
            return Ok(false);
        }
        _ => {}
    }
    let Some(once) = as_proposed(case) else { return Ok(false) };
    let Some(twice) = as_proposed(&once) else { return Ok(false) };
    let (before, after) = (&seen.next, twice.next());
    let up = |(after, before): (&NextLoad, &NextLoad)| {
        after.load > before.load || (after.load == before.load && after.reps > before.reps)
    };
    let top = after.iter().all(|next| matches!(next.reason, Reason::AtTop { .. }));
    // Less than the plates build still counts towards the next time.
    let max = is_share(case) && twice.loads().max > seen.max;
    let stuck = !top && !max && !after.iter().zip(before).any(up);
    says(stuck, || format!("{}\n-> {}", pair(before, &once.next()), text(&after)))
}
