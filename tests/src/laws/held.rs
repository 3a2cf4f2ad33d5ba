//! The laws. Heavier compares set by set; a load that was withdrawn, or is the athlete's choice, is lightest.

use chrono::Days;
use holdfast_core::Mass;
use holdfast_core::care::Place;
use holdfast_core::load::{Flag, NextLoad, Reason, SetDone, Time};
use holdfast_core::plan::LoadRule;
use rand::RngExt;
use rand_chacha::ChaCha8Rng;

use super::drawn::Case;

/// A law: true where the case is one it speaks of.
pub type Law = fn(&Case, &mut ChaCha8Rng) -> Result<bool, String>;

/// All of them.
pub const LAWS: &[(&str, Law)] = &[
    ("a flag never makes a load heavier", flags),
    ("with a flag open no load is above the carried one", open_flags),
    ("a miss never makes a load heavier", misses),
    ("a later day never makes a load heavier", later),
    ("more reps never make a load lighter", more_reps),
    ("a set in doubt is as one not logged", doubts),
    ("an answer of the coach is never exceeded", rulings),
    ("easy weeks and other days change nothing", outside),
    ("every load can be built, inside a tenth or one build", built),
    ("no set goes above a load just missed", just_missed),
    ("what was not made goes no higher than was proposed", not_made),
    ("missed twice it is lighter", missed_twice),
    ("after three weeks it is lighter or for fewer reps", after_weeks),
    ("made as proposed no set gets lighter", made),
    ("made as proposed twice running something goes up", progress),
];

fn says(broken: bool, seen: impl FnOnce() -> String) -> Result<bool, String> {
    if broken { Err(seen()) } else { Ok(true) }
}

fn text(next: &[NextLoad]) -> String {
    let one = |next: &NextLoad| {
        let load = next.load.map_or("-".into(), |load| load.to_string());
        format!("{load} x {} ({:?})", next.reps, next.reason)
    };
    next.iter().map(one).collect::<Vec<_>>().join("; ")
}

fn heavier(after: &[NextLoad], before: &[NextLoad]) -> bool {
    after.iter().zip(before).any(|(after, before)| after.load > before.load)
}

/// Nothing of `changed` is heavier than of `case`.
fn not_heavier(changed: &Case, case: &Case) -> Result<bool, String> {
    let (after, before) = (changed.next(), case.next());
    says(heavier(&after, &before), || format!("{}\n-> {}", text(&before), text(&after)))
}

fn flags(case: &Case, chance: &mut ChaCha8Rng) -> Result<bool, String> {
    let mut changed = case.clone();
    let record = changed.name();
    let placed = case.placed();
    changed.history.flags.push(Flag {
        record,
        place: Place::Hip,
        severity: chance.random_range(1..=10),
        sign: chance.random_bool(0.1),
        on: case.date(),
        own: chance.random_bool(0.8),
        cleared: chance.random_bool(0.5).then(|| placed + chance.random_range(-20..=5)),
    });
    not_heavier(&changed, case)
}

fn open_flags(case: &Case, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let open = case.history.flags.iter().any(|flag| flag.cleared.is_none());
    let next = case.next();
    let above = next.iter().any(|next| next.load > next.carried && next.carried.is_some());
    if open { says(above, || text(&next)) } else { Ok(false) }
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

fn one<T: Copy>(of: &[T], chance: &mut ChaCha8Rng) -> Option<T> {
    (!of.is_empty()).then(|| of[chance.random_range(0..of.len())])
}

fn misses(case: &Case, chance: &mut ChaCha8Rng) -> Result<bool, String> {
    let first = |time: &Time, done: &SetDone| time.scheme.target(done.set).unwrap_or(0);
    let made = counted(case, |time, done| {
        let least = time.asked(done.set).min(first(time, done));
        done.reps >= least && least > 0
    });
    let Some((at, set)) = one(&made, chance) else { return Ok(false) };
    let mut changed = case.clone();
    let time = &mut changed.history.times[at];
    let done = &time.sets[set];
    let least = time.asked(done.set).min(first(time, done));
    let reps = chance.random_range(0..least);
    time.sets[set].reps = reps;
    not_heavier(&changed, case)
}

fn later(case: &Case, chance: &mut ChaCha8Rng) -> Result<bool, String> {
    not_heavier(&case.later(chance.random_range(1..200)), case)
}

fn more_reps(case: &Case, chance: &mut ChaCha8Rng) -> Result<bool, String> {
    let all = counted(case, |_, _| true);
    let Some((at, set)) = one(&all, chance) else { return Ok(false) };
    let mut changed = case.clone();
    changed.history.times[at].sets[set].reps += chance.random_range(1..6);
    not_heavier(case, &changed)
}

fn doubts(case: &Case, chance: &mut ChaCha8Rng) -> Result<bool, String> {
    let all = counted(case, |_, _| true);
    let Some((at, set)) = one(&all, chance) else { return Ok(false) };
    let (mut doubted, mut gone) = (case.clone(), case.clone());
    doubted.history.times[at].sets[set].counts = false;
    gone.history.times[at].sets.remove(set);
    let (doubted, gone) = (doubted.next(), gone.next());
    let same = |one: &NextLoad, other: &NextLoad| {
        one.load == other.load && one.reps == other.reps && one.open == other.open
    };
    let differ = doubted.iter().zip(&gone).any(|(one, other)| !same(one, other));
    says(differ, || format!("in doubt {}\nnot logged {}", text(&doubted), text(&gone)))
}

fn rulings(case: &Case, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let next = case.next();
    let Some(ruled) = &case.history.ruling else { return Ok(false) };
    let over = |next: &NextLoad| {
        let given = ruled.loads.get(next.set as usize - 1).copied().flatten();
        next.load.zip(given).is_some_and(|(load, given)| load > given)
    };
    let decided = next.iter().any(|next| matches!(next.reason, Reason::Coach { .. }));
    if ruled.decision == holdfast_core::load::Decision::Refuse || !decided {
        return Ok(false);
    }
    says(next.iter().any(over), || text(&next))
}

fn outside(case: &Case, chance: &mut ChaCha8Rng) -> Result<bool, String> {
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
    let (after, before) = (changed.next(), case.next());
    says(after != before, || format!("{}\n-> {}", text(&before), text(&after)))
}

fn built(case: &Case, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let next = case.next();
    let wrong = |next: &NextLoad| {
        let Some(load) = next.load else { return false };
        let exact = case.builds.exactly(load).is_some();
        let coach = matches!(next.reason, Reason::Coach { .. });
        let far = next.carried.filter(|_| !coach && !is_fixed(case)).is_some_and(|carried| {
            let up = case.builds.above(carried).map_or(carried, |build| build.mass);
            load > carried.percent(110).max(up)
        });
        !exact || far
    };
    says(next.iter().any(wrong), || text(&next))
}

/// True where the plan gives the loads, or a percentage of what carries over: those are counted from another
/// load than last time's.
fn is_fixed(case: &Case) -> bool {
    !matches!(case.rule, LoadRule::Step(_))
}

/// True where neither a coach nor a flag says anything.
fn is_plain(case: &Case) -> bool {
    case.history.ruling.is_none() && case.history.flags.is_empty()
}

fn last_missed(case: &Case, set: u32) -> Option<Mass> {
    let time = case.history.last()?;
    let done = time.set(set)?;
    let least = time.asked(set).min(time.scheme.target(set)?);
    done.load.filter(|_| done.reps < least)
}

fn just_missed(case: &Case, _: &mut ChaCha8Rng) -> Result<bool, String> {
    // Of a percentage the training max is what carries over.
    if !is_plain(case) || matches!(case.rule, LoadRule::Percent { .. }) {
        return Ok(false);
    }
    let next = case.next();
    let mut spoken = false;
    for next in &next {
        let Some(missed) = last_missed(case, next.set) else { continue };
        spoken = true;
        if next.load > Some(missed) {
            return Err(text(std::slice::from_ref(next)));
        }
    }
    Ok(spoken)
}

fn not_made(case: &Case, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let Some(last) = case.history.last() else { return Ok(false) };
    if case.history.ruling.is_some() || is_fixed(case) {
        return Ok(false);
    }
    let mut spoken = false;
    for next in case.next() {
        let proposed = last.proposed.get(next.set as usize - 1);
        let done = last
            .set(next.set)
            .is_some_and(|done| done.reps >= last.scheme.target(next.set).unwrap_or(0));
        let Some(proposed) = proposed.and_then(|proposed| proposed.load).filter(|_| !done) else {
            continue;
        };
        spoken = true;
        if next.load > Some(proposed) {
            return Err(text(&[next]));
        }
    }
    Ok(spoken)
}

fn missed_twice(case: &Case, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let mut latest = case.history.working().rev();
    let (Some(last), Some(before)) = (latest.next(), latest.next()) else { return Ok(false) };
    if !is_plain(case) || is_fixed(case) {
        return Ok(false);
    }
    let missed = |time: &Time, set: u32| {
        let least = time.asked(set).min(time.scheme.target(set).unwrap_or(0));
        time.set(set).is_some_and(|done| done.reps < least)
    };
    let mut spoken = false;
    for next in case.next() {
        if !(missed(last, next.set) && missed(before, next.set)) {
            continue;
        }
        spoken = true;
        let lightest = next.carried.is_some_and(|carried| case.builds.below(carried).is_none());
        let fewer = lightest && (next.reps < last.asked(next.set) || last.asked(next.set) <= 1);
        if next.load >= next.carried && !fewer {
            return Err(text(&[next]));
        }
    }
    Ok(spoken)
}

fn after_weeks(case: &Case, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let Some(last) = case.history.last() else { return Ok(false) };
    let between = case.history.days.iter().any(|day| *day > last.on);
    let away = (case.date() - last.on).num_days() >= 21;
    if !is_plain(case) || is_fixed(case) || between || !away {
        return Ok(false);
    }
    let next = case.next();
    let kept = |next: &NextLoad| {
        let lightest = next.carried.is_some_and(|carried| case.builds.below(carried).is_none());
        let fewer = next.reps < last.asked(next.set).min(case.scheme.target(next.set).unwrap_or(0));
        next.load >= next.carried && !fewer && !(lightest && next.reps == 1)
    };
    says(next.iter().any(kept), || text(&next))
}

/// Trains as proposed on the day, and goes on a week.
fn as_proposed(case: &Case) -> Option<Case> {
    let mut case = case.clone();
    let possible = case.next().iter().all(|next| next.load.is_some());
    case.train(false, |next| Some((next.load?, next.reps, true)));
    possible.then(|| case.later(7))
}

fn made(case: &Case, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let answered = case.history.ruling.is_some() && is_fixed(case);
    let fixed = matches!(case.rule, LoadRule::Fixed { .. });
    if !case.history.flags.is_empty() || answered || (is_fixed(case) && !fixed) {
        return Ok(false);
    }
    let Some(after) = as_proposed(case) else { return Ok(false) };
    let (before, after) = (case.next(), after.next());
    says(heavier(&before, &after), || format!("{}\n-> {}", text(&before), text(&after)))
}

fn progress(case: &Case, _: &mut ChaCha8Rng) -> Result<bool, String> {
    if !case.history.flags.is_empty() || case.history.ruling.is_some() || is_fixed(case) {
        return Ok(false);
    }
    let Some(once) = as_proposed(case) else { return Ok(false) };
    let Some(twice) = as_proposed(&once) else { return Ok(false) };
    let (before, after) = (case.next(), twice.next());
    let up = |(after, before): (&NextLoad, &NextLoad)| {
        after.load > before.load || (after.load == before.load && after.reps > before.reps)
    };
    let top = after.iter().all(|next| matches!(next.reason, Reason::AtTop { .. }));
    let stuck = !top && !after.iter().zip(&before).any(up);
    says(stuck, || format!("{}\n-> {}\n-> {}", text(&before), text(&once.next()), text(&after)))
}
