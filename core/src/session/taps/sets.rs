//! Taps on sets and options.

use super::{Did, Taps, within};
use crate::error::{Error, Field, Result, Thing};
use crate::journal::{Lift, OptionTaken};
use crate::load::{Prepared, Reason};
use crate::mass::{Mass, MassUnit};
use crate::plan::{Exercise, LoadRule, PieceKind};
use crate::say;
use crate::session::doubt::{is_repair, is_slip};
use crate::store::Draft;
use crate::words;

pub(super) const MAX_REPS: u32 = 1000;
pub(super) const MAX_RESERVE: u32 = 10;

impl Taps<'_> {
    pub(super) fn log_set(
        &self,
        name: &str,
        set: Option<u32>,
        load: Option<Mass>,
        reps: Option<u32>,
        reserve: Option<u32>,
    ) -> Result<Draft> {
        let did = Did { load, reps, reserve };
        let unplanned = self.log.unplanned_pieces();
        if let Some((_, exercise)) = unplanned.iter().find(|(piece, _)| *piece == name) {
            return self.log_extra(exercise, name, set, did);
        }
        let PieceKind::Strength(strength) = &self.piece(name)?.kind else {
            return Err(Error::invalid(Field::Piece, say::tap::no_sets(name)));
        };
        let sets = strength.scheme.sets();
        if let Some(set) = set.filter(|set| *set > sets) {
            return self.one_more(name, strength, set, did);
        }
        let next = || (1..=sets).find(|set| self.log.lift(name, *set).is_none());
        let set = set
            .or_else(next)
            .ok_or_else(|| Error::invalid(Field::Set, say::tap::all_sets_logged(sets)))?;
        strength
            .scheme
            .target(set)
            .ok_or_else(|| Error::invalid(Field::Set, say::tap::no_such_set(sets, set)))?;
        let asks = self.sheet.asked(name, strength);
        let next = asks.next.sets.iter().find(|next| next.set == set);
        let planned = next.and_then(|next| next.load);
        let usual = || strength.scheme.target(set).unwrap_or(0);
        let asked = next.map_or_else(usual, |next| next.reps);
        let open = next.map_or(strength.scheme.is_open(set), |next| next.open);
        let logged = self.log.lift(name, set);
        // A correction changes what it names and nothing else.
        let before = logged.map(|lift| &lift.body);
        let said_again =
            (load.is_some() || before.is_some_and(|lift| lift.load.is_none())) && reps.is_some();
        let load = load.or(before.and_then(|lift| lift.load)).or(planned);
        // As the screen shows it: an option that the plan gives no load for has none to propose.
        let free = next.map_or(strength.load == LoadRule::Free, |next| next.reason == Reason::Free);
        if load.is_none() && !free {
            return Err(Error::invalid(Field::Load, say::tap::load_unknown()));
        }
        let exercise = before.map_or(&asks.view.exercise, |lift| &lift.exercise);
        if let Some(load) = load {
            can_be(self.sheet.block, load, exercise, self.sheet.unit())?;
        }
        // Pressing a key does not count the reps of an open set.
        let done = reps.or(before.map(|lift| lift.reps));
        if done.is_none() && open {
            return Err(Error::invalid(Field::Reps, say::tap::open_set()));
        }
        let counted = match before {
            Some(lift) if reps.is_none() => lift.counted,
            _ => Some(reps.is_some()),
        };
        let reps = done.unwrap_or(asked);
        let reserve = reserve.or(before.and_then(|lift| lift.reserve));
        within_set(reps, reserve)?;
        let again = before.filter(|lift| lift.load == load);
        let side = match again {
            Some(lift) => lift.side.clone(),
            None => self.sheet.side_for((name, strength), &asks, set, load),
        };
        let builds = self.sheet.builds(name, strength, exercise);
        let bar = builds.has_plates().then(|| builds.bar.clone());
        let mut lift = Lift {
            session: self.log.id(),
            piece: name.to_owned(),
            track: strength.track.clone(),
            easy: before.map_or(asks.easy, |lift| lift.easy),
            proposed: before.map_or_else(|| asks.proposed(), |lift| lift.proposed.clone()),
            max: before.map_or(asks.next.max, |lift| lift.max),
            doubt: false,
            exercise: exercise.clone(),
            scheme: strength.scheme.clone(),
            set,
            planned: before.map_or(planned, |lift| lift.planned),
            load,
            reps,
            reserve,
            counted,
            bar: before.map_or(bar, |lift| lift.bar.clone()),
            side,
            // Nor does it start the rest again.
            at: before.map_or_else(|| Some(self.at.clone()), |lift| lift.at.clone()),
            on: before.map_or_else(|| self.log.on(), |lift| lift.on),
        };
        let repair = |before| said_again && is_repair(&lift, before, builds);
        let slip = is_slip(&lift, builds) && !before.is_some_and(repair);
        lift.doubt = before.map_or(slip, |before| lift.is_doubted(before, said_again, slip));
        Ok(Draft::new_or_corrected(logged.map(|lift| lift.record), lift))
    }

    pub(super) fn take_option(
        &self,
        name: &str,
        movement: Option<String>,
        option: Option<String>,
    ) -> Result<Draft> {
        let movement = self.movement(name, movement)?;
        let known = self.sheet.block.movement(&movement);
        let found = match &option {
            None => None,
            Some(key) => Some(known.and_then(|line| line.option(key)).ok_or_else(|| {
                let options = known.map_or(&[][..], |movement| &movement.options);
                let keys: Vec<String> = options.iter().map(|option| option.key.clone()).collect();
                let offer = match keys.as_slice() {
                    [] => say::tap::no_options(&movement),
                    keys => say::tap::options_are(&movement, words::list(keys)),
                };
                Error::not_found(Thing::Option, key, offer)
            })?),
        };
        let before = self.log.options.iter().rev();
        let before = before
            .into_iter()
            .find(|before| before.body.piece == name && before.body.movement == movement);
        let taken = OptionTaken {
            session: self.log.id(),
            piece: name.to_owned(),
            movement,
            because: found.map(|option| option.because),
            option,
            on: self.log.on(),
        };
        Ok(Draft::new_or_corrected(before.map(|before| before.record), taken))
    }

    /// The movement meant: the one named, or the only one the piece has.
    pub(super) fn movement(&self, name: &str, movement: Option<String>) -> Result<String> {
        let all: Vec<String> = match &self.piece(name)?.kind {
            PieceKind::Strength(strength) => vec![strength.movement.clone()],
            PieceKind::Interval(interval) => {
                interval.movements().into_iter().map(str::to_owned).collect()
            }
            PieceKind::Hold(hold) => vec![hold.stretch.clone()],
            PieceKind::Note(_) => Vec::new(),
        };
        match (movement, all.as_slice()) {
            (None, [only]) => Ok(only.clone()),
            (Some(movement), all) if all.contains(&movement) => Ok(movement),
            (_, []) => Err(Error::invalid(Field::Piece, say::tap::no_movement(name))),
            (_, all) => {
                let reason = say::tap::which_movement(name, words::list(all));
                Err(Error::invalid(Field::Movement, reason))
            }
        }
    }
}

/// Refuses reps, and reps in reserve, that no set has.
pub(crate) fn within_set(reps: u32, reserve: Option<u32>) -> Result<()> {
    within(Field::Reps, reps, MAX_REPS, say::tap::reps_too_many)?;
    within(Field::Reserve, reserve.unwrap_or(0), MAX_RESERVE, say::tap::reserve_too_many)
}

/// Refuses a load that what is lifted cannot have.
pub(crate) fn can_be(
    block: &Prepared,
    load: Mass,
    exercise: &Exercise,
    unit: MassUnit,
) -> Result<()> {
    // What the plan does not know means what the athlete says.
    let Some(lifted) = block.lifted(exercise) else { return Ok(()) };
    let wrong = words::wrong_load(lifted, load, unit);
    wrong.map_or(Ok(()), |reason| Err(Error::invalid(Field::Load, reason)))
}
