//! Discomfort flags: which are open, and which of them holds an exercise back.

use rusqlite::Connection;

use crate::error::Result;
use crate::id::{PersonId, RecordId};
use crate::journal::{Cleared, Discomfort};
use crate::load::OpenFlag;
use crate::plan::Exercise;
use crate::store::{Logged, Query, date_of, is_coach};

/// A person's discomfort flags that nobody has cleared, the earliest first.
pub(crate) fn open_flags(
    connection: &Connection,
    person: PersonId,
) -> Result<Vec<Logged<Discomfort>>> {
    let query = Query { person: Some(person), ..Query::default() };
    let mut open = Vec::new();
    for flag in query.read::<Discomfort>(connection)? {
        if !is_cleared(connection, flag.record, person)? {
            open.push(flag);
        }
    }
    Ok(open)
}

/// True when the athlete whose flag it is, or a coach, has cleared it. Nobody else's word counts.
pub(crate) fn is_cleared(
    connection: &Connection,
    flag: RecordId,
    person: PersonId,
) -> Result<bool> {
    let subject = flag.to_string();
    let query = Query { subject: Some(&subject), ..Query::default() };
    for cleared in query.read::<Cleared>(connection)? {
        if cleared.person == person || is_coach(connection, cleared.person)? {
            return Ok(true);
        }
    }
    Ok(false)
}

/// The flag that stops an exercise from going up: the latest open one on it, otherwise the latest on
/// its movement or on another option of that. Taking an option that does not hurt is what options
/// are for, so a flag elsewhere leaves the loads where they are and takes none away.
pub(crate) fn nearest_flag(flags: &[Logged<Discomfort>], exercise: &Exercise) -> Option<OpenFlag> {
    let own = flags.iter().rev().find(|flag| flag.body.exercise == *exercise);
    let near = || flags.iter().rev().find(|flag| flag.body.exercise.is_near(exercise));
    let flag = own.or_else(near)?;
    Some(OpenFlag {
        record: flag.record,
        place: flag.body.place,
        severity: flag.body.severity,
        on: date_of(flag),
        own: own.is_some(),
    })
}
