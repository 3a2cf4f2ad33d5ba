//! Laws of loads that what is known of somebody's strength gives: for other reps, and the first share of it.

use holdfast_core::load::strength::{Evidence, SetSeen, curve, strength};
use holdfast_core::load::{Able, NextLoad, Time, whole_tenths};
use holdfast_core::plan::{LoadRule, Scheme};
use holdfast_core::{Mass, MassUnit};
use rand::RngExt;
use rand_chacha::ChaCha8Rng;

use super::drawn::Case;
use super::held::{Seen, any_missed, as_proposed, is_plain, says, text};

/// The case with what its sets say of strength, the last set of each session rated.
fn known(case: &Case, chance: &mut ChaCha8Rng) -> Option<Case> {
    let mut known = case.clone();
    let mut seen = Vec::new();
    for time in &mut known.history.times {
        let end = time.scheme.sets();
        for done in &mut time.sets {
            if done.set == end {
                done.reserve = Some(chance.random_range(0..5));
            }
            let Some(load) = done.load.filter(|load| done.counts && *load > Mass::ZERO) else {
                continue;
            };
            let target = time.scheme.target(done.set).unwrap_or(0);
            let evidence = done.reserve.map_or(Evidence::AsPlanned, Evidence::Reserve);
            seen.push(SetSeen {
                on: time.on,
                load,
                reps: done.reps,
                target,
                open: false,
                evidence,
            });
        }
    }
    let strength = strength(&seen, known.date()).ok()??;
    strength.estimate()?;
    known.history.able = Some(Able { strength, made: Mass::ZERO, from: Vec::new() });
    Some(known)
}

/// The last session, where every set of it was made not two weeks ago, and nothing hurts.
fn just_made(case: &Case) -> Option<&Time> {
    let last = case.history.last().filter(|_| is_plain(case))?;
    let away = (case.date() - last.on).num_days() >= 14;
    (!away && !any_missed(last) && last.sets.iter().all(|done| done.counts)).then_some(last)
}

/// Fewer reps than were just made at a load are not asked for below it.
pub(super) fn fewer_reps(seen: &Seen<'_>, chance: &mut ChaCha8Rng) -> Result<bool, String> {
    if !matches!(seen.case.rule, LoadRule::Step(_)) || just_made(seen.case).is_none() {
        return Ok(false);
    }
    let Some(mut case) = known(seen.case, chance) else { return Ok(false) };
    let Some(last) = just_made(&case) else { return Ok(false) };
    let fewest = last.sets.iter().map(|done| done.reps).min().unwrap_or(0);
    if fewest < 2 {
        return Ok(false);
    }
    let reps = chance.random_range(1..fewest);
    if case.scheme.reps.iter().all(|before| *before == reps) {
        return Ok(false);
    }
    let made = last.sets.iter().filter_map(|done| done.load).max();
    case.scheme = Scheme { reps: vec![reps; case.scheme.reps.len()], open: false };
    let next = case.next();
    let least = made.and_then(|made| case.builds.at_or_below(made)).map(|build| build.mass);
    let lighter = |next: &NextLoad| next.load.is_some() && next.load < least;
    says(next.iter().any(lighter), || text(&next))
}

/// What was found by feel and made as asked gets no lighter once it is a share of the estimate, in this session and in
/// those after it that are made as proposed.
pub(super) fn first_share(seen: &Seen<'_>, chance: &mut ChaCha8Rng) -> Result<bool, String> {
    let Some(last) = just_made(seen.case).filter(|_| !seen.case.builds.is_picks()) else {
        return Ok(false);
    };
    let counted = last.sets.len() == last.scheme.reps.len();
    if !counted || last.sets.iter().any(|done| done.reps < last.asked(done.set)) {
        return Ok(false);
    }
    let Some(mut case) = known(seen.case, chance) else { return Ok(false) };
    let leave = chance.random_range(0..3);
    case.rule = LoadRule::Reserve { reserve: leave, step: Vec::new(), back_off_percent: 5 };
    case.history.max = None;
    for time in &mut case.history.times {
        time.max = None;
    }
    let Some(last) = case.history.last().cloned() else { return Ok(false) };
    let Some(high) =
        case.history.able.as_ref().and_then(|able| Some(able.strength.estimate()?.high))
    else {
        return Ok(false);
    };
    let mut next = case.next();
    for _ in 0..2 {
        for next in &next {
            let Some(done) =
                last.set(next.set).filter(|done| done.reserve.is_none_or(|left| left >= leave))
            else {
                continue;
            };
            let Some(load) = done.load else { continue };
            // Beyond what the estimate can be it was no load of this rule.
            let share = (-curve(f64::from(case.scheme.reps[next.set as usize - 1] + leave))).exp();
            let most = whole_tenths(whole_tenths(high).for_drawing(MassUnit::Kg) * share);
            let least = case.builds.at_or_below(load.min(most)).map(|build| build.mass);
            if next.load < least {
                return Err(format!("{load} -> {}", text(std::slice::from_ref(next))));
            }
        }
        let Some(after) = as_proposed(&case) else { return Ok(false) };
        case = after;
        next = case.next();
    }
    Ok(true)
}
