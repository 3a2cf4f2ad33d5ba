//! Logged sets as the load rules and the strength model read them.

use chrono::NaiveDate;

use crate::journal::Lift;
use crate::load::Able;
use crate::load::strength::{Evidence, SetSeen, curve, strength};
use crate::mass::MassUnit;
use crate::store::{Logged, date_of};

/// Sets of so many days say what somebody can do at least. Chosen, no source.
const RECENT_DAYS: i64 = 28;

/// What somebody can lift on a date, from sets that say how near their end they were; the earliest first.
pub(super) fn able(lifts: &[Logged<Lift>], date: NaiveDate) -> Option<Able> {
    // In the order they were done: what comes later in a day is done tired.
    let sets: Vec<SetSeen> = lifts.iter().filter_map(set_seen).collect();
    let says =
        |lift: &&Logged<Lift>| set_seen(lift).is_some_and(|set| set.evidence != Evidence::Plain);
    let from = lifts.iter().rev().filter(says).map(|lift| lift.record).collect();
    // Numbers the journal lets through and the model does not are left to the loads' own rules.
    let strength = strength(&sets, date).ok().flatten()?;
    // A light set that only looked like everything says less than what was lifted beside it: no
    // estimate then, rather than one below what the athlete has just done.
    let likely_most = strength.now().high;
    let recent = sets.iter().filter(|set| (0..RECENT_DAYS).contains(&(date - set.on).num_days()));
    let done =
        |set: &SetSeen| set.load.for_drawing(MassUnit::Kg) * curve(f64::from(set.reps)).exp();
    let contradicted = recent.filter(|set| set.reps > 0).any(|set| done(set) > likely_most);
    (!contradicted).then_some(Able { strength, from })
}

/// A set as the strength model reads it; none for one without a load, and for one in doubt.
pub(crate) fn set_seen(lift: &Logged<Lift>) -> Option<SetSeen> {
    if lift.body.doubt {
        return None;
    }
    let Lift { load, reps, reserve, .. } = lift.body;
    let short = !lift.body.made();
    let evidence = match reserve {
        Some(left) => Evidence::Reserve(left),
        None if lift.body.is_open() || short => Evidence::Open,
        None => Evidence::Plain,
    };
    Some(SetSeen { on: date_of(lift), load: load?, reps, evidence })
}
