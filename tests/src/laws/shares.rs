//! Laws of loads that are a share of a training max: it is what carries over.

use holdfast_core::Mass;
use holdfast_core::load::{NextLoad, Time};
use holdfast_core::plan::LoadRule;
use rand_chacha::ChaCha8Rng;

use super::drawn::Case;
use super::held::{Seen, any_missed, days_away, less, says, tenths_off, text};

/// The training max last time and now, and the session it carries over from; none where one was tested or set since.
fn carried<'a>(seen: &Seen<'a>) -> Option<(&'a Time, Mass, Mass)> {
    let last = seen.case.history.last()?;
    let known = seen.case.history.max.as_ref().is_some_and(|known| known.placed > last.placed);
    (!known).then_some((last, last.max?, seen.max?))
}

/// The step of a share, where it has one, and the percent that misses take off.
fn rule(case: &Case) -> Option<(Option<Mass>, u32)> {
    match &case.rule {
        LoadRule::Percent { step, back_off_percent, .. }
        | LoadRule::Reserve { step, back_off_percent, .. } => {
            Some((step.first().map(|step| step.mass), *back_off_percent))
        }
        LoadRule::Step(_) | LoadRule::Fixed { .. } | LoadRule::Free => None,
    }
}

fn told(was: Mass, is: Mass) -> String {
    format!("training max {was}\n-> {is}")
}

pub(super) fn step(seen: &Seen<'_>, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let step = rule(seen.case).and_then(|(step, _)| step);
    let Some(((_, was, is), step)) = carried(seen).zip(step) else { return Ok(false) };
    says(is > (was + step).min(was.percent(110)), || told(was, is))
}

/// What an athlete tests too: only the coach's word goes further.
pub(super) fn tested(seen: &Seen<'_>, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let (Some(last), Some(known)) = (seen.case.history.last(), &seen.case.history.max) else {
        return Ok(false);
    };
    let Some((was, is)) = last.max.zip(seen.max).filter(|_| known.tested) else { return Ok(false) };
    says(known.placed > last.placed && is > was.percent(110), || told(was, is))
}

pub(super) fn missed(seen: &Seen<'_>, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let Some(((_, was, is), (_, percent))) = carried(seen).zip(rule(seen.case)) else {
        return Ok(false);
    };
    let run = seen.case.history.working().rev().take_while(|time| any_missed(time)).count();
    let most = match run {
        0 => return Ok(false),
        1 => was,
        _ => was.percent(100 - percent),
    };
    says(is > most, || told(was, is))
}

pub(super) fn away(seen: &Seen<'_>, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let Some((last, was, is)) = carried(seen) else { return Ok(false) };
    let Some(tenths) = days_away(seen.case, last.on).and_then(tenths_off) else {
        return Ok(false);
    };
    says(is > less(was, tenths), || told(was, is))
}

/// What is left in reserve, a curve says; it is never above the training max.
pub(super) fn rounded(seen: &Seen<'_>, _: &mut ChaCha8Rng) -> Result<bool, String> {
    let Some(max) = seen.max.filter(|_| seen.case.history.ruling.is_none()) else {
        return Ok(false);
    };
    let over = |next: &NextLoad| {
        let share = match &seen.case.rule {
            LoadRule::Percent { percents, .. } => percents[next.set as usize - 1],
            _ => 100,
        };
        let above = next.load > Some(max.percent(share));
        let lightest = seen.case.builds.at_or_below(max.percent(share)).is_none();
        above && !lightest
    };
    says(seen.next.iter().any(over), || format!("{max}: {}", text(&seen.next)))
}
