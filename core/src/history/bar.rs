//! The bar somebody takes instead of the plan's.

use rusqlite::Connection;

use super::For;
use crate::error::Result;
use crate::id::PersonId;
use crate::journal::BarTaken;
use crate::mass::MassUnit;
use crate::plan::{Block, Exercise, Lifted, Strength};
use crate::store::Query;

/// So many of the latest bars taken for an exercise are looked at: pieces of different bars share it.
const LATEST: u32 = 20;

/// The name of the bar that a member takes for an exercise in a piece; none where it is the plan's. What was
/// taken instead of another bar than the one the plan gives now counts no more, nor what the room has not.
pub(crate) fn bar_taken(
    connection: &Connection,
    (person, unit): (PersonId, MassUnit),
    block: &Block,
    strength: &Strength,
    exercise: &Exercise,
    of: For,
) -> Result<Option<String>> {
    if block.lifted(exercise) != Some(Lifted::Bar) {
        return Ok(None);
    }
    let Some(planned) = block.bar_for(Some(strength), exercise, unit) else { return Ok(None) };
    let subject = exercise.to_string();
    let (person, subject, latest) = (Some(person), Some(subject.as_str()), Some(LATEST));
    let query = Query { person, subject, latest, ..Query::default() };
    let taken = query.read::<BarTaken>(connection)?;
    let latest = taken.into_iter().find(|bar| bar.body.planned == planned.name && of.knows(bar));
    let bar = latest.map(|bar| bar.body.bar);
    Ok(bar.filter(|bar| *bar != planned.name && block.kit.bar(bar).is_some()))
}
