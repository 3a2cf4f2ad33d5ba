//! What hurts limits every load, a coach's answer included.

use super::carried::Carried;
use super::settle::Settled;
use super::{BACK_PERCENT, Flag, History};
use crate::load::Reason;
use crate::mass::Mass;
use crate::plan::Builds;

/// The load as care leaves it.
pub(super) fn limit(
    carried: Option<&Carried<'_>>,
    builds: &Builds,
    set: u32,
    history: &History,
    mut settled: Settled,
) -> Settled {
    if let Some(flag) = withdraws(history) {
        return Settled::withdrawn(flag, settled.reps);
    }
    // Nothing is taken to the end beside severe pain, wherever it is.
    settled.closed |= history.flags.iter().any(|flag| flag.cleared.is_none() && flag.is_severe());
    let Some(carried) = carried else { return first_time(history, builds, set, settled) };
    let last = carried.load(set);
    for flag in &history.flags {
        let (place, severity, on) = (flag.place, flag.severity, flag.on);
        let (most, reason, closed) = match flag.cleared {
            None => (last, Reason::Flagged { last: Some(last), place, severity, on }, false),
            Some(_) if !is_first_since(history, flag) => continue,
            Some(_) if flag.is_severe() && flag.takes() => {
                let reason = Reason::AfterPain { last, place, severity, on };
                (back(carried, last), reason, true)
            }
            Some(_) => (last, Reason::AfterPain { last, place, severity, on }, false),
        };
        settled.closed |= closed;
        // Nothing heavier than where they were, and no more reps than the plan's. Where the bar or the room
        // begins above that, the athlete chooses.
        let lightest = || carried.builds.lightest().filter(|build| build.mass <= last);
        let built = carried.builds.at_or_below(most).or_else(lightest).map(|build| build.mass);
        let lighter = built.is_some() && settled.load.is_none();
        if lighter || settled.load > built {
            settled.overrule(built, carried.reps(set), reason, flag.record);
        } else if settled.load == Some(last)
            && flag.cleared.is_none()
            && settled.reps > carried.reps(set)
        {
            settled.overrule(Some(last), carried.reps(set), reason, flag.record);
        }
    }
    settled
}

/// Who hurts is told no load the first time, unless the coach answered one: after the answer, since one that is too
/// old to raise a load leaves what it would have been. A share of a training max is known for any reps: what was lifted
/// last is its most, and less by what severe pain takes.
fn first_time(history: &History, builds: &Builds, set: u32, settled: Settled) -> Settled {
    let share = matches!(settled.reason, Reason::Percent { .. } | Reason::Reserve { .. });
    let first = matches!(
        settled.reason,
        Reason::FirstTime
            | Reason::Start { .. }
            | Reason::OtherReps { .. }
            | Reason::SayReserve { .. }
            | Reason::Found { .. }
            | Reason::TooHeavy { .. }
            | Reason::JustMade { .. }
            | Reason::Fixed { .. }
    );
    let flag = history.open_flag();
    let flag = flag.or_else(|| {
        let since = |flag: &&Flag| share && is_first_since(history, flag);
        history.flags.iter().filter(since).max_by_key(|flag| flag.takes() && flag.is_severe())
    });
    // An answer goes no higher than what not one rep was made with.
    let failed = history.last().and_then(|last| last.set(set)).filter(|done| done.reps == 0);
    let answered = flag.is_some_and(|flag| flag.cleared.is_none())
        && failed.is_some_and(|done| settled.load > done.load);
    let Some(flag) = flag.filter(|_| first || share || answered) else { return settled };
    let (place, severity, on) = (flag.place, flag.severity, flag.on);
    let took = flag.cleared.is_some() && flag.takes() && flag.is_severe();
    let closed = settled.closed || took;
    let last = || {
        history.last()?.sets.iter().filter(|done| done.counts).filter_map(|done| done.load).max()
    };
    let last = last().filter(|_| share);
    let most = last.map(|last| if took { last.percent(BACK_PERCENT) } else { last });
    if most.is_some() && settled.load <= most {
        return Settled { closed, ..settled };
    }
    let reason = match (flag.cleared, last) {
        (Some(_), Some(last)) => Reason::AfterPain { last, place, severity, on },
        // Nothing was lifted yet that pain could have taken a part of.
        (Some(_), None) => return Settled { closed, ..settled },
        (None, last) => Reason::Flagged { last, place, severity, on },
    };
    let load = most.and_then(|most| builds.at_or_below(most)).map(|build| build.mass);
    let Settled { reps, .. } = settled;
    Settled { load, reps, closed, from: vec![flag.record], ..Settled::because(reason) }
}

/// The flag that takes the load away: severe pain of this exercise, or an emergency sign anywhere.
pub(super) fn withdraws(history: &History) -> Option<&Flag> {
    let open = |flag: &&Flag| flag.cleared.is_none();
    let mut open = history.flags.iter().rev().filter(open);
    open.find(|flag| flag.sign || (flag.own && flag.is_severe()))
}

/// True while the track was not trained since a flag was cleared. An easy week is no training of it.
fn is_first_since(history: &History, flag: &Flag) -> bool {
    let since = |placed| history.working().any(|time| time.placed > placed);
    flag.cleared.is_some_and(|placed| !since(placed))
}

fn back(carried: &Carried<'_>, last: Mass) -> Mass {
    if carried.builds.is_picks() {
        return carried.picks_below(last, 1).unwrap_or(last);
    }
    last.percent(BACK_PERCENT)
}
