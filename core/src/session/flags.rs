//! Discomfort flags on screen, and those raised between two sessions.

use super::lately::{WEEKS, is_lately};
use super::screen::FlagView;
use super::sheet::Sheet;
use super::snapshot::Snapshot;
use super::tap::Tap;
use crate::care::{Felt, advice_for, is_loaded_by};
use crate::device::Device;
use crate::error::{Error, Field, Result};
use crate::instant::Instant;
use crate::journal::{Discomfort, Kind as _, Lift};
use crate::plan::{Block, Exercise};
use crate::say;
use crate::store::{Draft, Logged, Query, date_of};
use crate::words;

impl Sheet<'_> {
    /// The open flags on what is done in a piece, the most urgent first.
    pub(super) fn flags(&self, piece: &str, movements: &[&str]) -> Vec<FlagView> {
        let exercises: Vec<Exercise> =
            movements.iter().map(|movement| self.snapshot.exercise(piece, movement)).collect();
        self.flags_on(&exercises)
    }

    /// The open flags on exercises, the most urgent first; with them those that name no movement and whose
    /// place these load.
    pub(super) fn flags_on(&self, exercises: &[Exercise]) -> Vec<FlagView> {
        let concerns = |flag: &Discomfort, exercise: &Exercise| match &flag.exercise {
            Some(of) => exercise.is_near(of),
            None => {
                let pattern = self.block.pattern_of(exercise);
                pattern.is_some_and(|pattern| is_loaded_by(flag.place, pattern))
            }
        };
        let on_them = self
            .snapshot
            .flags
            .open
            .iter()
            .filter(|flag| exercises.iter().any(|exercise| concerns(&flag.body, exercise)));
        // On another option of it the loads here are held, and not gone.
        let own = |flag: &Logged<Discomfort>| {
            flag.body.exercise.as_ref().is_some_and(|exercise| exercises.contains(exercise))
        };
        let named = |flag: &Logged<Discomfort>| match (exercises, &flag.body.exercise) {
            ([_], Some(_)) if own(flag) => None,
            (_, exercise) => exercise.as_ref().map(|exercise| self.block.name_of(exercise)),
        };
        urgent_first(on_them.map(|flag| view(flag, named(flag), own(flag))).collect())
    }
}

/// Every open flag, each with the movement it names, the most urgent first.
pub(super) fn open(snapshot: &Snapshot) -> Vec<FlagView> {
    let name_of = |exercise: &Exercise| match &snapshot.block {
        Some(block) => block.name_of(exercise),
        None => exercise.to_string(),
    };
    let one = |flag: &Logged<Discomfort>| {
        let movement = flag.body.exercise.as_ref().map(name_of);
        let own = movement.is_some();
        view(flag, movement, own)
    };
    urgent_first(snapshot.flags.open.iter().map(one).collect())
}

fn urgent_first(mut views: Vec<FlagView>) -> Vec<FlagView> {
    views.sort_by_key(|view| !view.advice.urgent);
    views
}

fn view(flag: &Logged<Discomfort>, movement: Option<String>, own: bool) -> FlagView {
    let Discomfort { place, severity, ref signs, ref exercise, .. } = flag.body;
    let felt = match exercise {
        None => Felt::Unnamed,
        Some(_) if own => Felt::Here,
        Some(_) => Felt::Elsewhere,
    };
    let text = words::flagged(place, severity, signs, date_of(flag));
    FlagView {
        flag: flag.record,
        place,
        severity,
        advice: advice_for(place, severity, signs, felt),
        text: match movement {
            Some(movement) => words::flagged_in(&movement, text),
            None => text,
        },
    }
}

/// Flags what was felt between two sessions.
pub(super) fn between(
    device: &Device,
    snapshot: &Snapshot,
    tap: Tap,
    at: &Instant,
) -> Result<Draft> {
    let Tap::FlagBetween { movement, place, severity, mut signs, on } = tap else {
        return Err(Error::invalid(Field::Session, say::tap::session_not_running()));
    };
    if !(1..=10).contains(&severity) {
        return Err(Error::invalid(Field::Severity, say::tap::severity_out_of_range()));
    }
    if on.is_some_and(|on| !is_lately(on, at)) {
        return Err(Error::invalid(Field::Date, say::tap::felt_dates(WEEKS)));
    }
    let block = snapshot.block.as_ref().map(|block| &***block);
    let exercise = movement.map(|movement| named(device, block, &movement)).transpose()?;
    // One of that day that is still open is corrected: nothing said later takes an emergency sign away. What is felt on
    // another day is a flag of its own.
    let felt_on = on.unwrap_or_else(|| at.date());
    let open = snapshot.flags.open.iter().rev().filter(|flag| date_of(flag) == felt_on);
    let before = open.map(|flag| (flag.record, &flag.body)).find(|(_, flag)| {
        flag.session.is_none() && flag.exercise == exercise && flag.place == place
    });
    let told = before.map_or(&[][..], |(_, flag)| &flag.signs);
    signs.extend(told.iter().copied().filter(|sign| !signs.contains(sign)).collect::<Vec<_>>());
    let on = on.filter(|on| *on != at.date()).or(before.and_then(|(_, flag)| flag.on));
    let flag = Discomfort { session: None, piece: None, exercise, place, severity, signs, on };
    Ok(Draft::new_or_corrected(before.map(|(record, _)| record), flag))
}

/// The movement, option or stretch that a text names, of the plan or of what was done.
fn named(device: &Device, block: Option<&Block>, text: &str) -> Result<Exercise> {
    if let Some(known) = block.and_then(|block| block.named(text)) {
        return Ok(known);
    }
    let key = text.split_whitespace().map(str::to_lowercase).collect::<Vec<String>>().join("-");
    let (person, subject, latest) = (Some(device.person()), Some(key.as_str()), Some(1));
    let query = Query { person, subject, latest, ..Query::default() };
    if !query.bodies(Some(Lift::NAME), device.reader())?.is_empty() {
        return Ok(Exercise::from_text(&key));
    }
    let movements = block.map_or(&[][..], |block| &block.movements);
    let stretches = block.map_or(&[][..], |block| &block.stretches);
    let known = movements.iter().map(|movement| movement.name.clone());
    let known: Vec<String> = known.chain(stretches.iter().map(|of| of.name.clone())).collect();
    let reason = say::tap::no_such_movement(text.trim(), words::list(&known));
    Err(Error::invalid(Field::Movement, reason))
}
