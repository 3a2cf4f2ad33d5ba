//! What keeps a load down: the cap, what was missed, weeks away.

use super::carried::Carried;
use super::history::{Did, Time};
use crate::id::RecordId;
use crate::load::Reason;
use crate::mass::Mass;

/// An upper limit for the load of a set.
#[derive(Clone, Debug)]
pub(super) struct Limit {
    pub(super) load: Mass,
    /// Reps to ask instead of the usual.
    pub(super) reps: Option<u32>,
    /// True when the last set is not taken to the end.
    pub(super) closed: bool,
    pub(super) reason: Reason,
    pub(super) from: Vec<RecordId>,
}

impl Limit {
    pub(super) fn at(load: Mass, reason: Reason, from: Vec<RecordId>) -> Limit {
        Limit { load, reps: None, closed: false, reason, from }
    }

    pub(super) fn asking(self, reps: u32) -> Limit {
        Limit { reps: Some(reps), ..self }
    }

    pub(super) fn closed(self) -> Limit {
        Limit { closed: true, ..self }
    }
}

/// A miss: nothing goes up. The same set twice running, or by much at once: lighter. Three sessions running
/// with a miss: all sets lighter. Common practice, no source.
pub(super) fn missed(carried: &Carried<'_>, set: u32, percent: u32) -> Option<Limit> {
    let time = carried.last();
    if !time.any_missed() {
        return None;
    }
    let (last, on) = (carried.load(set), time.on);
    let from: Vec<RecordId> = time.records().collect();
    let sets = time.asked_sets();
    let thrice = carried.times.len() >= 3 && carried.latest().take(3).all(Time::any_missed);
    // Sessions after which it falls: three where all sets do, one where it was missed by far.
    let falls = if thrice {
        Some(3)
    } else if is_straight(time) {
        sets.filter_map(|set| falls_after(carried, set)).max()
    } else {
        falls_after(carried, set)
    };
    let Some(sessions) = falls else {
        return carried.unmet(set).map(|reason| Limit::at(last, reason, from));
    };
    let reason = Reason::BackOff { last, on, sessions };
    Some(match lighter(carried, last, percent) {
        Some(load) => Limit::at(load, reason, from),
        // Nothing lighter in the room: two reps fewer.
        None => {
            let reps = carried.reps(set).saturating_sub(2).max(1);
            Limit::at(last, reason, from).asking(reps).closed()
        }
    })
}

/// The build nearest to so much less, the lighter one on a tie, and always one lighter at least.
pub(super) fn lighter(carried: &Carried<'_>, last: Mass, percent: u32) -> Option<Mass> {
    let builds = carried.builds;
    let below = builds.below(last)?.mass;
    if builds.is_picks() {
        return Some(below);
    }
    let wanted = last.percent(100_u32.saturating_sub(percent));
    let under = builds.at_or_below(wanted).map(|build| build.mass);
    let over = builds.above(wanted).map(|build| build.mass).filter(|over| *over < last);
    Some(match (under, over) {
        (Some(under), Some(over)) if over - wanted < wanted - under => over,
        (Some(under), _) => under,
        (None, Some(over)) => over,
        (None, None) => below,
    })
}

/// After how many sessions running a set falls: two in which it was missed, or one by far; none where it does
/// not. A set in doubt or skipped neither breaks nor lengthens the run.
fn falls_after(carried: &Carried<'_>, set: u32) -> Option<u32> {
    let (mut latest, mut sessions) = (carried.latest(), 0);
    // Nothing falls for what was not missed last time.
    if carried.last().did(set) != Did::Missed {
        return None;
    }
    while sessions < 2 {
        match latest.next().map(|time| time.did(set)) {
            Some(Did::Missed) => sessions += 1,
            Some(Did::Out | Did::NotAsked) => {}
            _ => break,
        }
    }
    (sessions == 2 || is_big_miss(carried.last(), set)).then_some(sessions)
}

/// True for a set short by two reps or a quarter of those asked, whichever is more, and for every missed set of
/// a session that missed more than half of its sets, two at least.
fn is_big_miss(time: &Time, set: u32) -> bool {
    let missed = time.asked_sets().filter(|set| time.did(*set) == Did::Missed).count();
    if missed >= 2 && missed * 2 > time.scheme.sets() as usize {
        return true;
    }
    let needed = time.first_reps(set).min(time.asked(set));
    let done = time.set(set).map_or(needed, |done| done.reps);
    needed.saturating_sub(done) >= needed.div_ceil(4).max(2)
}

/// True where all sets were proposed at one load; where nothing was proposed, lifted at one.
fn is_straight(time: &Time) -> bool {
    let proposed = |set| time.proposal(set).and_then(|proposed| proposed.load);
    let lifted = |set| time.set(set).and_then(|done| done.load);
    let loads: Vec<Mass> =
        time.asked_sets().filter_map(|set| proposed(set).or(lifted(set))).collect();
    loads.windows(2).all(|pair| pair[0] == pair[1])
}
