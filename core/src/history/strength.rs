//! Logged sets as the load rules and the strength model read them.

use chrono::NaiveDate;

use crate::journal::Lift;
use crate::load::Able;
use crate::load::strength::{Evidence, SetSeen, Strength, strength};
use crate::mass::MassUnit;
use crate::store::{Logged, date_of};

/// Sets of so many days say what somebody can do at least. Chosen, no source.
const RECENT_DAYS: i64 = 28;

/// What is known of somebody's strength on a date.
#[derive(Debug, Default)]
pub(super) struct Known {
    /// What loads can be worked out from.
    pub(super) able: Option<Able>,
    /// True when a set said more than "at least so many".
    pub(super) informed: bool,
}

/// What the sets say of somebody's strength on a date; the latest first.
pub(super) fn known(lifts: &[Logged<Lift>], date: NaiveDate) -> Known {
    // In the order they were done: what comes later in a day is done tired.
    let sets: Vec<SetSeen> = lifts.iter().rev().filter_map(set_seen).collect();
    // Numbers the journal lets through and the model does not are left to the loads' own rules.
    let Some(strength) = strength(&sets, date).ok().flatten() else { return Known::default() };
    let says = |lift: &&Logged<Lift>| {
        set_seen(lift).is_some_and(|set| set.evidence != Evidence::AsPlanned)
    };
    let from = lifts.iter().filter(says).map(|lift| lift.record).collect();
    let usable = strength.estimate().is_some() && !contradicted(&strength, &sets, date);
    Known { able: usable.then_some(Able { strength, from }), informed: true }
}

/// True when a light set that only looked like everything says less than what was lifted beside it: no
/// estimate then, rather than one below what the athlete has just done.
fn contradicted(strength: &Strength, sets: &[SetSeen], date: NaiveDate) -> bool {
    let recent = sets.iter().filter(|set| (0..RECENT_DAYS).contains(&(date - set.on).num_days()));
    let most = |set: &SetSeen| strength.fresh_load_for(set.reps).map(|load| load.high);
    recent
        .filter(|set| set.reps > 0)
        .any(|set| most(set).is_some_and(|most| set.load.for_drawing(MassUnit::Kg) > most))
}

/// A set as the strength model reads it; none for one without a load, and for one in doubt.
pub(crate) fn set_seen(lift: &Logged<Lift>) -> Option<SetSeen> {
    if lift.body.doubt {
        return None;
    }
    let Lift { load, reps, reserve, counted, .. } = lift.body;
    let (open, target) = (lift.body.is_open(), lift.body.target());
    // Old entries do not say: an open set with just the reps asked for may have been a key pressed.
    let counted = open && counted.unwrap_or(reps != target);
    let ended = counted || reps < target;
    let evidence = match reserve {
        // Where the set ended by itself, none left is what that says already.
        Some(left) if left > 0 || !ended => Evidence::Reserve(left),
        _ if counted => Evidence::Counted,
        _ if reps < target => Evidence::Short,
        _ => Evidence::AsPlanned,
    };
    Some(SetSeen { on: date_of(lift), load: load?, reps, target, open, evidence })
}
