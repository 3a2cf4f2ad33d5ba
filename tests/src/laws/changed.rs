//! Laws of what a change of the history does to a proposal. The rest of the history stands as logged.

use chrono::Days;
use holdfast_core::care::Place;
use holdfast_core::load::{Flag, NextLoad, SetDone, Time};
use rand::RngExt;
use rand_chacha::ChaCha8Rng;

use super::drawn::Case;
use super::held::{Seen, heavier, one, pair, says, text};

/// Nothing of `changed` is heavier than of `case`.
fn not_heavier(changed: &[NextLoad], case: &[NextLoad]) -> Result<bool, String> {
    says(heavier(changed, case), || pair(case, changed))
}

pub(super) fn flags(seen: &Seen<'_>, chance: &mut ChaCha8Rng) -> Result<bool, String> {
    let mut changed = seen.case.clone();
    let record = changed.name();
    let placed = changed.placed();
    changed.history.flags.push(Flag {
        record,
        place: Place::Hip,
        severity: chance.random_range(1..=10),
        sign: chance.random_bool(0.1),
        on: changed.date(),
        own: chance.random_bool(0.8),
        cleared: chance.random_bool(0.5).then(|| placed + chance.random_range(-20..=5)),
    });
    not_heavier(&changed.next(), &seen.next)
}

/// The sets that count, as places in the history.
fn counted(case: &Case, which: impl Fn(&Time, &SetDone) -> bool) -> Vec<(usize, usize)> {
    let times = case.history.times.iter().enumerate();
    let sets = times.flat_map(|(at, time)| {
        let sets =
            time.sets.iter().enumerate().filter(|(_, done)| done.counts && which(time, done));
        sets.map(move |(set, _)| (at, set)).collect::<Vec<_>>()
    });
    sets.collect()
}

pub(super) fn misses(seen: &Seen<'_>, chance: &mut ChaCha8Rng) -> Result<bool, String> {
    let least = |time: &Time, done: &SetDone| {
        time.asked(done.set).min(time.scheme.target(done.set).unwrap_or(0))
    };
    let made = |time: &Time, done: &SetDone| {
        let least = least(time, done);
        done.reps >= least && least > 0
    };
    let Some((at, set)) = one(&counted(seen.case, made), chance) else { return Ok(false) };
    let mut changed = seen.case.clone();
    let time = &mut changed.history.times[at];
    let reps = chance.random_range(0..least(time, &time.sets[set]));
    time.sets[set].reps = reps;
    not_heavier(&changed.next(), &seen.next)
}

pub(super) fn later(seen: &Seen<'_>, chance: &mut ChaCha8Rng) -> Result<bool, String> {
    let later = seen.case.later(chance.random_range(1..200));
    not_heavier(&later.next(), &seen.next)
}

pub(super) fn more_reps(seen: &Seen<'_>, chance: &mut ChaCha8Rng) -> Result<bool, String> {
    let all = counted(seen.case, |_, _| true);
    // The very last one says most.
    let last = all.last().copied().filter(|_| chance.random_bool(0.5));
    let Some((at, set)) = last.or_else(|| one(&all, chance)) else { return Ok(false) };
    let mut changed = seen.case.clone();
    changed.history.times[at].sets[set].reps += chance.random_range(1..6);
    not_heavier(&seen.next, &changed.next())
}

pub(super) fn doubts(seen: &Seen<'_>, chance: &mut ChaCha8Rng) -> Result<bool, String> {
    let all = counted(seen.case, |_, _| true);
    let Some((at, set)) = one(&all, chance) else { return Ok(false) };
    let (mut doubted, mut gone) = (seen.case.clone(), seen.case.clone());
    doubted.history.times[at].sets[set].counts = false;
    gone.history.times[at].sets.remove(set);
    let (doubted, gone) = (doubted.next(), gone.next());
    let same = |one: &NextLoad, other: &NextLoad| {
        one.load == other.load && one.reps == other.reps && one.open == other.open
    };
    let differ = doubted.iter().zip(&gone).any(|(one, other)| !same(one, other));
    says(differ, || format!("in doubt {}\nnot logged {}", text(&doubted), text(&gone)))
}

pub(super) fn outside(seen: &Seen<'_>, chance: &mut ChaCha8Rng) -> Result<bool, String> {
    let case = seen.case;
    let Some(last) = case.history.times.iter().rfind(|time| !time.easy) else { return Ok(false) };
    let days = (case.date() - last.on).num_days();
    let mut gaps = case.history.times.windows(2).map(|pair| (pair[1].on - pair[0].on).num_days());
    if days >= 14 || gaps.any(|gap| gap >= 14) || days < 1 {
        return Ok(false);
    }
    let mut changed = case.clone();
    let on = last.on + Days::new(chance.random_range(0..days.unsigned_abs()));
    if chance.random_bool(0.5) {
        let mut easy = last.clone();
        (easy.easy, easy.on, easy.session) = (true, on, changed.name());
        easy.placed += 1;
        for set in &mut easy.sets {
            set.reps = set.reps.saturating_sub(1);
        }
        changed.history.times.push(easy);
    }
    changed.also_on(on);
    let after = changed.next();
    says(after != seen.next, || pair(&seen.next, &after))
}
