//! The loads proposed for a strength piece: one function for the athlete's sheet and the coach's board.

use chrono::NaiveDate;
use rusqlite::Connection;

use super::{Flags, For, bar_taken, flags, in_order, past};
use crate::error::Result;
use crate::id::PersonId;
use crate::journal::Lift;
use crate::load::{History, NextLoads, Prepared, SetDone, next_loads_and_answer};
use crate::mass::MassUnit;
use crate::plan::{Block, Builds, Day, Exercise, LoadRule, Piece, PieceKind, Strength};
use crate::store::{Logged, Query};

/// What is lifted in a strength piece, what carries it, and the loads proposed for it.
pub(crate) struct Proposed<'a> {
    pub(crate) exercise: Exercise,
    pub(crate) builds: &'a Builds,
    /// What the loads were worked out from.
    pub(crate) history: History,
    pub(crate) next: NextLoads,
    /// True in an easy week.
    pub(crate) easy: bool,
}

/// Works out the loads of a strength piece on the bar that the athlete takes, or the plan's: from the earlier sessions of its track, the flags, and the sets
/// done so far in the session at hand.
pub(crate) fn propose<'a>(
    block: &'a Prepared,
    unit: MassUnit,
    strength: &Strength,
    (exercise, bar): (Exercise, Option<&str>),
    past: History,
    flags: &Flags,
    so_far: Vec<SetDone>,
) -> Proposed<'a> {
    let builds = block.builds_for(strength, &exercise, unit, bar);
    let history = History { flags: flags.on(&exercise, block), so_far, ..past };
    let easy = history.date.and_then(|date| block.easy_on(date));
    // So are the loads that it gives.
    let own = exercise.option.is_none() || !matches!(strength.load, LoadRule::Fixed { .. });
    let rule = if own { &strength.load } else { &LoadRule::Free };
    let next = next_loads_and_answer(rule, &strength.scheme, builds, &history, easy);
    Proposed { exercise, builds, history, next, easy: easy.is_some() }
}

/// What a member would be given on a date, one for each track of a block that was trained before and
/// whose loads follow from that: for what was lifted on it last.
pub(crate) fn upcoming<'a>(
    connection: &Connection,
    person: PersonId,
    unit: MassUnit,
    block: &'a Prepared,
    date: NaiveDate,
) -> Result<Vec<(&'a Piece, &'a Strength, Proposed<'a>)>> {
    let flags = flags(connection, person)?;
    let mut found: Vec<(&Piece, &Strength, Proposed<'_>)> = Vec::new();
    let mut days: Vec<&Day> = block.days.iter().collect();
    days.sort_by_key(|day| comes_next(block, day, date));
    for piece in days.into_iter().flat_map(|day| &day.pieces) {
        let PieceKind::Strength(strength) = &piece.kind else { continue };
        let follows = match strength.load {
            LoadRule::Step(_) | LoadRule::Percent { .. } | LoadRule::Reserve { .. } => true,
            LoadRule::Fixed { .. } | LoadRule::Free => false,
        };
        if !follows {
            continue;
        }
        let track = strength.track(&piece.name);
        let Some(exercise) = lifted_last(connection, person, block, strength, track)? else {
            continue;
        };
        let known = |other: &Piece, of: &Strength, found: &Proposed<'_>| {
            found.exercise == exercise && of.track(&other.name) == track
        };
        if found.iter().any(|(other, of, proposed)| known(other, of, proposed)) {
            continue;
        }
        let past = past(connection, person, block, (piece, strength), &exercise, For::on(date))?;
        if past.last().is_none() {
            continue;
        }
        let whose = (person, unit);
        let bar = bar_taken(connection, whose, block, strength, &exercise, For::on(date))?;
        let lifted = (exercise, bar.as_deref());
        let proposed = propose(block, unit, strength, lifted, past, &flags, Vec::new());
        found.push((piece, strength, proposed));
    }
    Ok(found)
}

/// When a day of a block comes next, on a date or after it; those that do not come any more last.
fn comes_next(block: &Block, day: &Day, date: NaiveDate) -> (bool, Option<NaiveDate>) {
    let planned = block.planned_until(block.ends()).into_iter();
    let next = planned
        .filter(|planned| planned.date >= date && planned.day == day.name)
        .min_by_key(|planned| planned.date);
    (next.is_none(), next.map(|planned| planned.date))
}

/// So many of the latest sets of an exercise say whether it was lifted on a track lately.
const LATELY: u32 = 60;

/// The movement or the option of it that a member lifted last on a track; where nothing was lifted on one of
/// that name, the one lifted last at all.
pub(crate) fn lifted_last(
    connection: &Connection,
    person: PersonId,
    block: &Block,
    strength: &Strength,
    track: &str,
) -> Result<Option<Exercise>> {
    let Some(movement) = block.movement(&strength.movement) else { return Ok(None) };
    let options = movement.options.iter().map(|option| Some(option.key.as_str()));
    let mut all: Vec<Logged<Lift>> = Vec::new();
    for exercise in std::iter::once(None).chain(options).map(|option| movement.exercise(option)) {
        let subject = exercise.to_string();
        let query = Query {
            person: Some(person),
            subject: Some(&subject),
            latest: Some(LATELY),
            ..Query::default()
        };
        all.extend(query.read(connection)?);
    }
    all.retain(|lift| !lift.body.is_unplanned());
    all.sort_by_key(|lift| lift.placed);
    let all = in_order(all);
    let on_it = all.iter().rfind(|lift| lift.body.track() == track);
    Ok(on_it.or(all.last()).map(|lift| lift.body.exercise.clone()))
}
