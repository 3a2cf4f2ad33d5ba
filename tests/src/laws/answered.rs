//! Laws of a coach's answer: in force until the track is trained again.

use holdfast_core::Mass;
use holdfast_core::load::{Decision, NextLoad, Reason, Ruled};
use holdfast_core::plan::Easy;
use rand::RngExt;
use rand_chacha::ChaCha8Rng;

use super::drawn::Case;
use super::held::{Seen, as_proposed, is_above, pair, says, text};

/// Days after which it raises nothing any more.
const RAISES: i64 = 28;

fn in_force(case: &Case) -> Option<&Ruled> {
    let ruled = case.history.ruling.as_ref()?;
    let at = case.history.times.iter().position(|time| time.session == ruled.after)?;
    let trained = case.history.times[at + 1..]
        .iter()
        .any(|time| !time.easy && time.sets.iter().any(|done| done.counts && done.load.is_some()));
    (!trained).then_some(ruled)
}

/// What was answered for a set: of a refusal last time's load again, where there is one.
fn given(ruled: &Ruled, next: &NextLoad) -> Option<Mass> {
    let given = ruled.loads.get(next.set as usize - 1).copied().flatten();
    match ruled.decision {
        Decision::Refuse => next.carried.or(given),
        Decision::Accept | Decision::Change => given,
    }
}

pub(super) fn exceeded(seen: &Seen<'_>, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let Some(ruled) = in_force(seen.case) else { return Ok(false) };
    let over = |next: &NextLoad| {
        given(ruled, next).is_some_and(|given| is_above(seen.case, next.load, given))
    };
    says(seen.next.iter().any(over), || text(&seen.next))
}

/// Where nothing hurts, and it is not four weeks old.
pub(super) fn stands(seen: &Seen<'_>, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let case = seen.case;
    let Some(ruled) = in_force(case) else { return Ok(false) };
    if !case.history.flags.is_empty() || (case.date() - ruled.on).num_days() >= RAISES {
        return Ok(false);
    }
    let other = |next: &NextLoad| {
        let build = given(ruled, next).and_then(|given| case.builds.at_or_below(given));
        build.is_some_and(|build| next.load != Some(build.mass))
    };
    says(seen.next.iter().any(other), || text(&seen.next))
}

/// What the rules leave to the athlete, an answer of whatever age says.
pub(super) fn old(seen: &Seen<'_>, chance: &mut ChaCha8Rng) -> Result<bool, String> {
    let Some(ruled) = in_force(seen.case) else { return Ok(false) };
    let days = (seen.case.date() - ruled.on).num_days();
    let wait = (RAISES - days).max(0) + chance.random_range(0..40);
    let old = seen.case.later(wait.unsigned_abs());
    let mut own = old.clone();
    own.history.ruling = None;
    let (old, own) = (old.next(), own.next());
    let raised = old.iter().zip(&own).any(|(old, own)| own.load.is_some() && old.load > own.load);
    says(raised, || pair(&own, &old))
}

/// Made as answered, the next proposal is the same whether it is remembered or not.
pub(super) fn used_up(seen: &Seen<'_>, _: &mut ChaCha8Rng) -> Result<bool, String> {
    if in_force(seen.case).is_none() {
        return Ok(false);
    }
    let Some(after) = as_proposed(seen.case) else { return Ok(false) };
    let mut forgotten = after.clone();
    forgotten.history.ruling = None;
    let (after, forgotten) = (after.next(), forgotten.next());
    says(after != forgotten, || pair(&after, &forgotten))
}

/// Whatever pain and an easy week leave of an answer: each set is as the answer says, or names it.
pub(super) fn held(seen: &Seen<'_>, chance: &mut ChaCha8Rng) -> Result<bool, String> {
    let mut free = seen.case.clone();
    free.history.flags.clear();
    let easy = Easy { weeks: vec![1], percent: chance.random_range(1..60), sets: 0 };
    let easy = chance.random_bool(0.3).then_some(easy);
    let next = seen.case.answered(easy.as_ref());
    let mut spoken = false;
    let silent = free.next().iter().zip(&next).any(|(free, next)| {
        let decides = matches!(free.reason, Reason::Coach { .. });
        spoken |= decides && free.load != next.load;
        let is_it =
            |other: &Reason| matches!(other, Reason::Answered { load, .. } if *load == free.load);
        decides && (free.load != next.load) != next.others.iter().any(is_it)
    });
    if silent { says(true, || text(&next)) } else { Ok(spoken) }
}
