//! Sets that nobody planned: one more than a piece asks for, and those of another movement.

use super::sets::{MAX_REPS, MAX_RESERVE, can_be};
use super::{Did, Taps, within};
use crate::error::{Error, Field, Result};
use crate::journal::Lift;
use crate::mass::Mass;
use crate::plan::{Exercise, PieceKind, Scheme, Strength};
use crate::say;
use crate::store::{Draft, Logged, date_of};
use crate::words;

/// So many sets of one piece are not planned at most: more are a slip. Chosen, no source.
const MOST_EXTRA: u32 = 10;
/// The longest name of a movement that an athlete gives, in characters.
const MOST_NAME: usize = 40;
/// The track of what nobody planned.
const TRACK: &str = "extra";

impl Taps<'_> {
    /// A set over those that a piece asks for, once these are logged. It counts for volume and strength, and
    /// changes no load of the planned ones.
    pub(super) fn one_more(
        &self,
        name: &str,
        strength: &Strength,
        set: u32,
        did: Did,
    ) -> Result<Draft> {
        let sets = strength.scheme.sets();
        let asks = self.sheet.asked(name, strength);
        let open = asks.next.sets.iter().any(|next| self.log.lift(name, next.set).is_none());
        if open {
            return Err(Error::invalid(Field::Set, say::tap::no_such_set(sets, set)));
        }
        self.is_next(name, sets, set)?;
        let (before, exercise) = (self.log.lift(name, set), &asks.view.exercise);
        // Without a word it is the load of the set before.
        let usual = || self.sheet.done(name).last().and_then(|lift| lift.body.load);
        let mut lift = self.extra_lift(name, exercise, set, did, usual)?;
        lift.side = match before.filter(|before| before.body.load == lift.load) {
            Some(before) => before.body.side.clone(),
            None => self.sheet.side_for((name, strength), &asks, set, lift.load),
        };
        lift.track.clone_from(&strength.track);
        lift.scheme = strength.scheme.clone();
        lift.proposed = asks.proposed();
        lift.easy = asks.easy;
        lift.max = asks.next.max;
        Ok(Draft::new_or_corrected(before.map(|lift| lift.record), lift))
    }

    /// A set of a movement that nobody planned.
    pub(super) fn log_extra(
        &self,
        exercise: &Exercise,
        called: &str,
        set: Option<u32>,
        did: Did,
    ) -> Result<Draft> {
        let name = self.piece_for(exercise, called);
        let logged = self.sheet.done(&name).iter().map(|lift| lift.body.set).max().unwrap_or(0);
        let set = set.unwrap_or(logged + 1);
        self.is_next(&name, 0, set)?;
        let before = self.log.lift(&name, set);
        let lift = self.extra_lift(&name, exercise, set, did, || None)?;
        Ok(Draft::new_or_corrected(before.map(|lift| lift.record), lift))
    }

    /// The exercise that a text names, where it is in no sets of the day: by the plan's key or name, otherwise a
    /// key of its own.
    pub(crate) fn unplanned(&self, text: &str) -> Result<Exercise> {
        let exercise = match self.sheet.block.lifted_named(text) {
            Some(exercise) => exercise,
            None => own_key(text)?,
        };
        let planned = self.sheet.day.pieces.iter().find(|piece| match &piece.kind {
            PieceKind::Strength(strength) => {
                self.sheet.snapshot.exercise(&piece.name, &strength.movement) == exercise
            }
            PieceKind::Interval(_) | PieceKind::Hold(_) | PieceKind::Note(_) => false,
        });
        let Some(piece) = planned else { return Ok(exercise) };
        let movement = self.sheet.block.name_of(&exercise);
        Err(Error::invalid(Field::Movement, say::tap::planned_today(movement, &piece.name)))
    }

    /// What is missing of a set of a movement that nobody planned: its reps, with what was done last.
    pub(crate) fn how_many(&self, called: &str, last: Option<&Logged<Lift>>) -> Error {
        let reason = match last {
            Some(last) => {
                let (did, day) = (self.sheet.last_text(last), words::day(date_of(last)));
                say::tap::extra_reps_last(called.trim(), did, day)
            }
            None => say::tap::extra_reps(called.trim()),
        };
        Error::invalid(Field::Reps, reason)
    }

    /// The name of the piece it stands in: the one it has, otherwise a new one that no piece of the day has.
    fn piece_for(&self, exercise: &Exercise, called: &str) -> String {
        let pieces = self.log.unplanned_pieces();
        if let Some((name, _)) = pieces.iter().find(|(_, of)| *of == exercise) {
            return (*name).to_owned();
        }
        let known = self.sheet.block.lifted_in(exercise).is_some();
        let called = called.split_whitespace().collect::<Vec<&str>>().join(" ");
        let mut name = if known { self.sheet.block.name_of(exercise) } else { called };
        while self.sheet.day.piece(&name).is_some() || pieces.iter().any(|(of, _)| *of == name) {
            name.push('+');
        }
        name
    }

    /// Refuses a set that is neither logged nor the next one, and one too many.
    fn is_next(&self, name: &str, planned: u32, set: u32) -> Result<()> {
        let last = self.sheet.done(name).iter().map(|lift| lift.body.set).max().unwrap_or(0);
        let next = last.max(planned) + 1;
        if set == 0 || set > next {
            return Err(Error::invalid(Field::Set, say::tap::next_set_is(next)));
        }
        if set > planned + MOST_EXTRA {
            return Err(Error::invalid(Field::Set, say::tap::too_many_sets(MOST_EXTRA)));
        }
        Ok(())
    }

    fn extra_lift(
        &self,
        name: &str,
        exercise: &Exercise,
        set: u32,
        did: Did,
        usual: impl FnOnce() -> Option<Mass>,
    ) -> Result<Lift> {
        // A correction changes what it names and nothing else.
        let before = self.log.lift(name, set).map(|lift| &lift.body);
        let exercise = before.map_or(exercise, |lift| &lift.exercise);
        let load = match before {
            Some(before) => did.load.or(before.load),
            None => did.load.or_else(usual),
        };
        if let Some(load) = load {
            can_be(self.sheet.block, load, exercise, self.sheet.unit())?;
        }
        let reps = did.reps.or(before.map(|lift| lift.reps));
        let reps = reps.ok_or_else(|| self.how_many(name, None))?;
        let reserve = did.reserve.or(before.and_then(|lift| lift.reserve));
        within(Field::Reps, reps, MAX_REPS, say::tap::reps_too_many)?;
        within(Field::Reserve, reserve.unwrap_or(0), MAX_RESERVE, say::tap::reserve_too_many)?;
        Ok(Lift {
            session: self.log.id(),
            piece: name.to_owned(),
            track: Some(TRACK.to_owned()),
            exercise: exercise.clone(),
            scheme: Scheme { reps: Vec::new(), open: false },
            easy: false,
            proposed: Vec::new(),
            max: None,
            set,
            planned: None,
            load,
            reps,
            reserve,
            counted: Some(true),
            doubt: false,
            bar: None,
            side: None,
            at: before.map_or_else(|| Some(self.at.clone()), |lift| lift.at.clone()),
            on: before.map_or_else(|| self.log.on(), |lift| lift.on),
        })
    }
}

/// The key that a name an athlete gives is kept under: the same however it is written.
fn own_key(name: &str) -> Result<Exercise> {
    let words: Vec<String> = name.split_whitespace().map(str::to_lowercase).collect();
    let (fits, spoken) =
        (name.trim().chars().count() <= MOST_NAME, name.chars().any(char::is_alphabetic));
    let plain = !name.chars().any(|letter| letter == '/' || letter.is_control());
    if !(fits && spoken && plain) {
        return Err(Error::invalid(Field::Movement, say::tap::movement_name(MOST_NAME)));
    }
    Ok(Exercise::of(&words.join("-")))
}
