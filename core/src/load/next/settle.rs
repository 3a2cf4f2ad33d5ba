//! From an offer and its limits to one load, with the rule that decided and those that would have.

use super::away;
use super::carried::Carried;
use super::days::LIGHTER_DAYS;
use super::limit::{Limit, missed};
use super::offer::Offer;
use super::{Flag, History, NextLoad, Ruled};
use crate::id::RecordId;
use crate::load::{Decision, Reason};
use crate::mass::Mass;
use crate::plan::{Builds, Scheme};

/// Days after which an answer that raises a load no longer stands. Common practice, no source.
const RAISES_DAYS: i64 = 28;

/// A load that was settled so far.
#[derive(Clone, Debug)]
pub(super) struct Settled {
    pub(super) load: Option<Mass>,
    pub(super) reps: u32,
    /// True when the last set is not taken to the end.
    pub(super) closed: bool,
    pub(super) reason: Reason,
    /// Rules that would have made it lighter too.
    pub(super) others: Vec<Reason>,
    pub(super) from: Vec<RecordId>,
}

impl Settled {
    /// A set without a load, for a reason.
    pub(super) fn because(reason: Reason) -> Settled {
        let (others, from) = (Vec::new(), Vec::new());
        Settled { load: None, reps: 0, closed: false, reason, others, from }
    }

    /// A set whose load is the athlete's own choice.
    pub(super) fn free(scheme: &Scheme, set: u32) -> Settled {
        Settled { reps: scheme.target(set).unwrap_or(0), ..Settled::because(Reason::Free) }
    }

    /// No load: it was withdrawn because of a flag.
    pub(super) fn withdrawn(flag: &Flag, reps: u32) -> Settled {
        let Flag { place, severity, on, record, sign, .. } = *flag;
        let reason = Reason::Withdrawn { place, severity, sign, on };
        Settled { load: None, reps, closed: true, reason, others: Vec::new(), from: vec![record] }
    }

    /// The same with another load, for another reason.
    pub(super) fn overrule(
        &mut self,
        load: Option<Mass>,
        reps: u32,
        reason: Reason,
        record: RecordId,
    ) {
        self.load = load;
        self.reps = reps;
        self.others.clear();
        self.reason = reason;
        self.from.push(record);
    }

    /// The load of a set.
    pub(super) fn next(self, set: u32, open: bool, carried: Option<&Carried<'_>>) -> NextLoad {
        let Settled { load, reps, closed, reason, others, from } = self;
        let (open, most) = (open && !closed, carried.map(|carried| carried.cap(set)));
        let carried = carried.map(|carried| carried.load(set));
        NextLoad { set, load, carried, most, reps, open, reason, others, from }
    }
}

/// Every limit of a set but the cap.
pub(super) fn limits(carried: &Carried<'_>, set: u32, back_off_percent: u32) -> Vec<Limit> {
    let missed = missed(carried, set, back_off_percent);
    missed.into_iter().chain(away::limit(carried, set)).collect()
}

/// The lightest of an offer and its limits.
pub(super) fn settle(carried: &Carried<'_>, set: u32, offer: Offer, limits: Vec<Limit>) -> Settled {
    let built = |limit: &Limit| carried.built(set, limit.load);
    let lighter = |limit: &&Limit| built(limit) < offer.load;
    // Where both come to one load, what asks fewer reps decides.
    let same = |limit: &&Limit| built(limit) == offer.load && limit.reps.is_some();
    let decides = limits.iter().filter(lighter).min_by_key(|limit| built(limit));
    let decides = decides.or_else(|| limits.iter().filter(same).min_by_key(|limit| limit.reps));
    let reason = decides.map_or(&offer.reason, |limit| &limit.reason);
    let others = limits.iter().filter(lighter).map(|limit| &limit.reason);
    let others = others.filter(|other| *other != reason).cloned().collect();
    match decides {
        Some(limit) => Settled {
            load: built(limit),
            reps: limit.reps.unwrap_or_else(|| usual_reps(carried, set, built(limit))),
            closed: limit.closed,
            reason: limit.reason.clone(),
            others,
            from: limit.from.clone(),
        },
        None => Settled {
            load: offer.load,
            reps: offer.reps.unwrap_or_else(|| usual_reps(carried, set, offer.load)),
            closed: false,
            reason: offer.reason,
            others,
            from: offer.from,
        },
    }
}

/// The plan's reps for another load, after a miss and after weeks away; otherwise those asked last.
fn usual_reps(carried: &Carried<'_>, set: u32, load: Option<Mass>) -> u32 {
    if load != Some(carried.load(set)) {
        return carried.first_reps(set);
    }
    let afresh = carried.away >= LIGHTER_DAYS || carried.last().any_missed();
    if afresh { carried.reps(set) } else { carried.asked(set) }
}

/// What a coach answered replaces what the rules say, also where nothing is carried to these reps. After four weeks
/// it no longer raises a load, but stays the most until the track is trained again: otherwise a longer absence
/// would make a load heavier.
pub(super) fn rule(
    carried: Option<&Carried<'_>>,
    builds: &Builds,
    history: &History,
    set: u32,
    ruled: &Ruled,
    settled: Settled,
) -> Settled {
    let last = carried.map(|carried| carried.load(set));
    let again = carried.and_then(|carried| carried.built(set, carried.load(set)));
    let given = ruled.loads.get(set as usize - 1).copied().flatten();
    // What was refused is no more than what not one rep was made with since.
    let failed = history.last().and_then(|last| last.set(set)).filter(|done| done.reps == 0);
    let kept = || match failed.and_then(|done| done.load) {
        Some(failed) => given.map(|given| given.min(failed)),
        None => given,
    };
    let decided =
        if ruled.decision == Decision::Refuse { again.or_else(kept) } else { given.or(again) };
    let Some(load) = decided.and_then(|load| builds.at_or_below(load)) else {
        return settled;
    };
    let load = load.mass;
    let old = history.date.is_some_and(|date| (date - ruled.on).num_days() >= RAISES_DAYS);
    // Where the bar or the room begins above what is left of it, that is no load, and no reason to raise one.
    let failed = matches!(settled.reason, Reason::TooHeavy { .. });
    if old && (failed || settled.load.or(last).is_some_and(|own| own < load)) {
        return settled;
    }
    // What the answer goes past is said beside it.
    let raised = settled.load.is_some_and(|own| own < load);
    let mut others = settled.others;
    if raised && settled.reason.is_limit() {
        others.insert(0, settled.reason);
    }
    let over = carried.filter(|carried| load > carried.cap(set));
    others.extend(
        over.map(|carried| Reason::OverTheCap { last: carried.load(set), most: carried.cap(set) }),
    );
    let same = settled.load == Some(load);
    let usual = carried.map(|carried| usual_reps(carried, set, Some(load)));
    let (decision, words) = (ruled.decision, ruled.words.clone());
    Settled {
        load: Some(load),
        reps: usual.filter(|_| !same).unwrap_or(settled.reps),
        closed: same && settled.closed,
        reason: Reason::Coach { decision, last, words },
        others,
        from: carried
            .map(|carried| carried.record(set))
            .into_iter()
            .chain([ruled.record])
            .collect(),
    }
}
