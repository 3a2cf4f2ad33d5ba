//! The loads proposed for a strength piece: one function for the athlete's sheet and the coach's board.

use chrono::NaiveDate;
use rusqlite::Connection;

use super::{nearest_flag, open_flags, past};
use crate::error::Result;
use crate::id::PersonId;
use crate::journal::{Discomfort, Lift};
use crate::load::{History, NextLoad, Prepared, SetDone, next_loads};
use crate::mass::MassUnit;
use crate::plan::{Builds, Exercise, LoadRule, Piece, PieceKind, Strength};
use crate::store::{Logged, Query};

/// What is lifted in a strength piece, what carries it, and the loads proposed for it.
pub(crate) struct Proposed<'a> {
    pub(crate) exercise: Exercise,
    pub(crate) builds: &'a Builds,
    /// What the loads were worked out from.
    pub(crate) history: History,
    pub(crate) loads: Vec<NextLoad>,
}

/// Works out the loads of a strength piece: from the earlier times of what is lifted in it, the flags
/// that are open, and the sets done so far in the session at hand.
pub(crate) fn propose<'a>(
    block: &'a Prepared,
    unit: MassUnit,
    strength: &Strength,
    exercise: Exercise,
    past: History,
    flags: &[Logged<Discomfort>],
    so_far: Vec<SetDone>,
) -> Proposed<'a> {
    let builds = block.builds(&exercise, unit);
    let history = History { flag: nearest_flag(flags, &exercise), so_far, ..past };
    let loads = next_loads(&strength.load, &strength.scheme, builds, &history);
    Proposed { exercise, builds, history, loads }
}

/// What a member would be given on a date, one for each strength piece of a block that was trained
/// before and whose loads follow from that: for what was lifted in it last.
pub(crate) fn upcoming<'a>(
    connection: &Connection,
    person: PersonId,
    unit: MassUnit,
    block: &'a Prepared,
    date: NaiveDate,
) -> Result<Vec<(&'a Piece, &'a Strength, Proposed<'a>)>> {
    let flags = open_flags(connection, person)?;
    let mut found: Vec<(&Piece, &Strength, Proposed<'_>)> = Vec::new();
    for piece in block.days.iter().flat_map(|day| &day.pieces) {
        let PieceKind::Strength(strength) = &piece.kind else { continue };
        let follows = match strength.load {
            LoadRule::Step(_) | LoadRule::Percent { .. } | LoadRule::Reserve { .. } => true,
            LoadRule::Fixed { .. } | LoadRule::Free => false,
        };
        if !follows {
            continue;
        }
        let Some(exercise) = lifted_last(connection, person, block, strength)? else { continue };
        let known = |other: &Strength, of: &Proposed<'_>| {
            of.exercise == exercise && other.scheme == strength.scheme
        };
        if found.iter().any(|(_, other, of)| known(other, of)) {
            continue;
        }
        let past = past(connection, person, &exercise, &strength.scheme, None, date)?;
        if past.times.is_empty() {
            continue;
        }
        let proposed = propose(block, unit, strength, exercise, past, &flags, Vec::new());
        found.push((piece, strength, proposed));
    }
    Ok(found)
}

/// The movement or the option of it that a member lifted last in a scheme.
fn lifted_last(
    connection: &Connection,
    person: PersonId,
    block: &Prepared,
    strength: &Strength,
) -> Result<Option<Exercise>> {
    let Some(movement) = block.movement(&strength.movement) else { return Ok(None) };
    let scheme = strength.scheme.key();
    let options = movement.options.iter().map(|option| Some(option.key.as_str()));
    let mut latest: Option<(i64, Exercise)> = None;
    for exercise in std::iter::once(None).chain(options).map(|option| movement.exercise(option)) {
        let subject = exercise.to_string();
        let query = Query {
            person: Some(person),
            subject: Some(&subject),
            scheme: Some(&scheme),
            ..Query::default()
        };
        if let Some(lift) = query.last::<Lift>(connection)? {
            latest = latest.max(Some((lift.placed, exercise)));
        }
    }
    Ok(latest.map(|(_, exercise)| exercise))
}
