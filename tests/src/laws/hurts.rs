//! Laws of what hurts.

use holdfast_core::Mass;
use holdfast_core::care::Place;
use holdfast_core::load::{Flag, NextLoad};
use rand::RngExt;
use rand_chacha::ChaCha8Rng;

use super::held::{Seen, any_missed, as_proposed, is_above, is_fixed, is_flagged, is_plain};
use super::held::{pair, says, text};

/// From so much the load is withdrawn.
const SEVERE: u32 = 4;

pub(super) fn open_flags(seen: &Seen<'_>, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let above = |next: &NextLoad| next.load > next.carried && next.carried.is_some();
    let above = seen.next.iter().any(above);
    let severe = |flag: &Flag| flag.cleared.is_none() && (flag.sign || flag.severity >= SEVERE);
    let severe = seen.case.history.flags.iter().any(severe);
    let to_the_end = severe && seen.next.iter().any(|next| next.open);
    let broken = above || to_the_end;
    if is_flagged(seen.case) { says(broken, || text(&seen.next)) } else { Ok(false) }
}

pub(super) fn withdrawn(seen: &Seen<'_>, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let severe = |flag: &Flag| flag.sign || (flag.own && flag.severity >= SEVERE);
    let mut open = seen.case.history.flags.iter().filter(|flag| flag.cleared.is_none());
    if !open.any(severe) {
        return Ok(false);
    }
    says(seen.next.iter().any(|next| next.load.is_some() || next.open), || text(&seen.next))
}

/// Cleared after the last working session: an easy week uses nothing up.
pub(super) fn cleared(seen: &Seen<'_>, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let case = seen.case;
    let Some(last) = case.history.last() else { return Ok(false) };
    let flags = case.history.flags.iter();
    let mut first = flags.filter(|flag| flag.cleared.is_some_and(|placed| placed >= last.placed));
    // Pain of another movement held this one, and took nothing of it.
    let took = |flag: &Flag| flag.sign || (flag.own && flag.severity >= SEVERE);
    let Some(severe) = first.clone().map(took).max() else {
        return Ok(false);
    };
    let kept = |next: &NextLoad| {
        let Some(carried) = next.carried else { return false };
        if !severe {
            return next.load > Some(carried);
        }
        let most = if case.builds.is_picks() {
            case.builds.below(carried).map_or(carried, |build| build.mass)
        } else {
            carried.percent(90)
        };
        is_above(case, next.load, most) || next.load > Some(carried) || next.open
    };
    says(seen.next.iter().any(kept), || format!("{:?}\n{}", first.next(), text(&seen.next)))
}

/// Severe pain is flagged and cleared now: each session made from then on goes up, until what was lifted before.
pub(super) fn climb_back(seen: &Seen<'_>, chance: &mut ChaCha8Rng) -> Result<bool, String> {
    let Some(last) = seen.case.history.last() else { return Ok(false) };
    let away = (seen.case.date() - last.on).num_days() >= 14;
    // What another bar took does not come back with it.
    let bar = Some(&seen.case.builds.bar).filter(|_| seen.case.builds.has_plates());
    let mut all = seen.case.history.times.iter().flat_map(|time| &time.sets);
    let one_bar = all.all(|done| done.bar.as_ref() == bar);
    if !is_plain(seen.case) || is_fixed(seen.case) || any_missed(last) || away || !one_bar {
        return Ok(false);
    }
    let mut case = seen.case.clone();
    let (record, cleared) = (case.name(), Some(case.placed() + 1));
    let severity = chance.random_range(SEVERE..=10);
    let (place, sign, own, on) = (Place::Hip, false, true, case.date());
    case.history.flags.push(Flag { record, place, severity, sign, on, own, cleared });
    let before: Vec<Option<Mass>> = case.next().iter().map(|next| next.carried).collect();
    for _ in 0..3 {
        let Some(after) = as_proposed(&case) else { return Ok(false) };
        let (was, is) = (case.next(), after.next());
        let stuck = was.iter().zip(&is).zip(&before).any(|((was, is), before)| {
            let up = is.load > was.load || (is.load == was.load && is.reps > was.reps);
            was.load < *before && !up
        });
        if stuck {
            return Err(pair(&was, &is));
        }
        case = after;
    }
    Ok(true)
}
