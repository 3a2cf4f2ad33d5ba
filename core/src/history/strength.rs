//! Logged sets as the load rules and the strength model read them.

use std::collections::BTreeSet;

use chrono::NaiveDate;

use crate::id::RecordId;
use crate::journal::Lift;
use crate::load::Able;
use crate::load::strength::{Evidence, SetSeen, Strength, curve, strength};
use crate::load::whole_tenths;
use crate::mass::{Mass, MassUnit};
use crate::store::{Logged, date_of};

/// Sets of so many days say what somebody can do at least. Chosen, no source.
const RECENT_DAYS: i64 = 28;

/// How many of somebody's latest sets of an exercise are looked at: half a year and more. Where there are more, the oldest day of
/// them is left out: some of its sets may be missing, and how late in a day a set came counts.
pub(super) const LATEST_SETS: u32 = 400;

/// The latest sets, the earliest first, as a session's screen reads them.
pub(crate) fn latest(sets: &[SetSeen]) -> &[SetSeen] {
    let Some(from) = sets.len().checked_sub(LATEST_SETS as usize) else { return sets };
    let sets = &sets[from..];
    &sets[sets.partition_point(|set| set.on == sets[0].on)..]
}

/// What is known of somebody's strength on a date.
#[derive(Debug, Default)]
pub(super) struct Known {
    /// What loads can be worked out from.
    pub(super) able: Option<Able>,
    /// True when a set said more than "at least so many".
    pub(super) informed: bool,
}

/// What the sets say of somebody's strength on a date; the earliest first. Those that the coach has set aside say
/// nothing.
pub(super) fn known(lifts: &[Logged<Lift>], aside: &BTreeSet<RecordId>, date: NaiveDate) -> Known {
    let lifts: Vec<&Logged<Lift>> =
        lifts.iter().filter(|lift| !aside.contains(&lift.record)).collect();
    // In the order they were done: what comes later in a day is done tired.
    let sets: Vec<SetSeen> = lifts.iter().filter_map(|lift| set_seen(lift)).collect();
    // Numbers the journal lets through and the model does not are left to the loads' own rules.
    let Some(strength) = strength(&sets, date).ok().flatten() else { return Known::default() };
    let says = |lift: &&&Logged<Lift>| {
        set_seen(lift).is_some_and(|set| set.evidence != Evidence::AsPlanned)
    };
    let from = lifts.iter().rev().filter(says).map(|lift| lift.record).collect();
    let usable = strength.estimate().is_some() && !contradicted(&strength, &sets, date);
    let made = made_lately(&sets, date);
    Known { able: usable.then_some(Able { strength, made, from }), informed: true }
}

/// What could be lifted once at least, by what was made lately; zero where there was nothing.
pub(crate) fn made_lately(sets: &[SetSeen], date: NaiveDate) -> Mass {
    let made = recent(sets, date).filter(|set| set.reps > 0).map(once_at_least);
    made.max().unwrap_or(Mass::ZERO)
}

/// Reps beyond which an equation says nothing (Reynolds et al., J Strength Cond Res 2006;20:584-592).
const MOST_REPS: u32 = 10;

/// A set made as planned, or with some left, says that so many reps could be done; one that ended by itself is in the
/// estimate with its luck, and says no more than that its load went up.
fn once_at_least(set: &SetSeen) -> Mass {
    match set.evidence {
        Evidence::AsPlanned | Evidence::Reserve(_) => {
            let reps = f64::from(set.reps.min(MOST_REPS));
            whole_tenths(set.load.for_drawing(MassUnit::Kg) * curve(reps).exp())
        }
        Evidence::Counted | Evidence::Short => set.load,
    }
}

fn recent(sets: &[SetSeen], date: NaiveDate) -> impl Iterator<Item = &SetSeen> {
    sets.iter().filter(move |set| (0..RECENT_DAYS).contains(&(date - set.on).num_days()))
}

/// True when a light set that only looked like everything says less than what was lifted beside it: no
/// estimate then, rather than one below what the athlete has just done.
fn contradicted(strength: &Strength, sets: &[SetSeen], date: NaiveDate) -> bool {
    let most = |set: &SetSeen| strength.fresh_load_for(set.reps).map(|load| load.high);
    recent(sets, date)
        .filter(|set| set.reps > 0)
        .any(|set| most(set).is_some_and(|most| set.load.for_drawing(MassUnit::Kg) > most))
}

/// A set as the strength model reads it; none for one without a load, and for one in doubt.
pub(crate) fn set_seen(lift: &Logged<Lift>) -> Option<SetSeen> {
    if lift.body.doubt {
        return None;
    }
    let Lift { load, reps, .. } = lift.body;
    // Of one that nobody planned as many were meant as were done.
    let target = if lift.body.is_extra() { reps } else { lift.body.target() };
    let (open, evidence) = (lift.body.is_open(), evidence(&lift.body));
    Some(SetSeen { on: date_of(lift), load: load?, reps, target, open, evidence })
}

/// What a set says of how near its end it was.
fn evidence(lift: &Lift) -> Evidence {
    let Lift { reps, reserve, counted, .. } = *lift;
    let (open, target) = (lift.is_open(), lift.target());
    // Old entries do not say: an open set with just the reps asked for may have been a key pressed.
    let counted = open && counted.unwrap_or(reps != target);
    let ended = counted || reps < target;
    match reserve {
        // Where the set ended by itself, none left is what that says already.
        Some(left) if left > 0 || !ended => Evidence::Reserve(left),
        _ if counted => Evidence::Counted,
        _ if reps < target => Evidence::Short,
        _ => Evidence::AsPlanned,
    }
}

#[cfg(test)]
mod tests {
    use chrono::Days;

    use super::*;
    use crate::fixtures;
    use crate::plan::Scheme;

    /// Sets 1 and 2 of 5 and 5 or more.
    #[test]
    fn what_a_set_says_follows_from_who_gave_its_reps() {
        let said = |set, reps, reserve, counted| {
            let scheme = Scheme { reps: vec![5, 5], open: true };
            let lift = fixtures::lift(scheme, Mass::kg(60), reps);
            evidence(&Lift { set, reserve, counted, ..lift })
        };
        let (given, pressed) = (Some(true), Some(false));
        for (reps, counted, expected) in [
            (5, given, Evidence::Counted),
            (3, given, Evidence::Counted),
            (5, pressed, Evidence::AsPlanned),
            // Entries that do not say.
            (5, None, Evidence::AsPlanned),
            (6, None, Evidence::Counted),
            (4, None, Evidence::Counted),
        ] {
            assert_eq!(said(2, reps, None, counted), expected, "open, {reps}, {counted:?}");
        }
        for counted in [given, pressed, None] {
            assert_eq!(said(1, 5, None, counted), Evidence::AsPlanned);
            assert_eq!(said(1, 7, None, counted), Evidence::AsPlanned);
            assert_eq!(said(1, 4, None, counted), Evidence::Short);
            assert_eq!(said(1, 5, Some(3), counted), Evidence::Reserve(3));
            assert_eq!(said(1, 5, Some(0), counted), Evidence::Reserve(0));
            // Stopped with some left; and where it ended by itself, none left is nothing new.
            assert_eq!(said(1, 4, Some(2), counted), Evidence::Reserve(2));
            assert_eq!(said(1, 4, Some(0), counted), Evidence::Short);
        }
        assert_eq!(said(2, 8, Some(2), given), Evidence::Reserve(2));
        assert_eq!(said(2, 8, Some(0), given), Evidence::Counted);
        assert_eq!(said(2, 5, Some(0), pressed), Evidence::Reserve(0));
    }

    #[test]
    fn the_oldest_of_very_many_days_is_left_out_whole() {
        let first = NaiveDate::from_ymd_opt(2026, 1, 5).unwrap();
        let set = |at: u64| SetSeen {
            on: first.checked_add_days(Days::new(at / 4)).unwrap(),
            load: Mass::kg(60),
            reps: 5,
            target: 5,
            open: false,
            evidence: Evidence::AsPlanned,
        };
        let sets: Vec<SetSeen> = (0..430).map(set).collect();
        assert_eq!(latest(&sets[..399]).len(), 399);
        // Sets 30 and 31 are what is left of their day.
        assert_eq!(latest(&sets), &sets[32..]);
        assert_eq!(latest(&[]), &[]);
    }
}
