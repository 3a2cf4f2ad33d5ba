//! What hurts limits every load, a coach's answer included.

use super::carried::Carried;
use super::settle::Settled;
use super::{BACK_PERCENT, Flag, History};
use crate::load::Reason;
use crate::mass::Mass;

/// The load as care leaves it.
pub(super) fn limit(
    carried: Option<&Carried<'_>>,
    set: u32,
    history: &History,
    mut settled: Settled,
) -> Settled {
    if let Some(flag) = withdraws(history) {
        return Settled::withdrawn(flag, settled.reps);
    }
    let Some(carried) = carried else { return first_time(history, settled) };
    let last = carried.load(set);
    for flag in &history.flags {
        let (place, severity, on) = (flag.place, flag.severity, flag.on);
        let (most, reason, closed) = match flag.cleared {
            None => (last, Reason::Flagged { last: Some(last), place, severity, on }, false),
            Some(_) if !flag.takes() || !is_first_since(history, flag) => continue,
            Some(_) if flag.is_severe() => {
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

/// Who hurts is told no load the first time, unless the coach answered one. After the answer, since one that is
/// too old to raise a load leaves what it would have been.
fn first_time(history: &History, settled: Settled) -> Settled {
    let first = matches!(
        settled.reason,
        Reason::FirstTime
            | Reason::Start { .. }
            | Reason::OtherReps { .. }
            | Reason::SayReserve { .. }
            | Reason::Found { .. }
    );
    let Some(flag) = history.own_flag().filter(|_| first) else { return settled };
    let (place, severity, on) = (flag.place, flag.severity, flag.on);
    let reason = Reason::Flagged { last: None, place, severity, on };
    let Settled { reps, closed, .. } = settled;
    Settled { reps, closed, from: vec![flag.record], ..Settled::because(reason) }
}

/// The flag that takes the load away: severe pain in this exercise, or an emergency sign anywhere.
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
