//! Which threads an entry of one's own is for: a thread is one member and the coach, never more.

use rusqlite::{Connection, OptionalExtension, Transaction, params};

use super::own::Own;
use crate::error::Result;
use crate::id::{DeviceId, PersonId, RecordId};
use crate::journal::{Body, Entry, EntryId, Here, Kind, PlanText, Profile};
use crate::planted::{Planted, planted};

/// The threads of what is about to be logged.
pub(super) fn threads(
    connection: &Connection,
    own: Own,
    record: Option<RecordId>,
    body: &Body,
) -> Result<Vec<PersonId>> {
    if !own.coach {
        return Ok(vec![own.person]);
    }
    let one = |person: Option<PersonId>| vec![person.unwrap_or(own.person)];
    Ok(match body {
        Body::Profile(_) | Body::PlanText(_) | Body::Here(_) => everybody(connection)?,
        Body::Ruling(ruling) => vec![ruling.person],
        Body::Admit(admit) => vec![admit.person],
        Body::Remove(removed) => vec![removed.person],
        // How far a thread counts is nobody else's business.
        Body::Stopped(stopped) => vec![stopped.of],
        Body::Max(max) => vec![max.person],
        Body::Note(note) => vec![note.person],
        Body::SetAside(aside) => one(whose(connection, aside.lift)?),
        Body::Cleared(cleared) => one(whose(connection, cleared.flag)?),
        // Taken back where it was said.
        Body::TakenBack(_) => match record {
            Some(record) => said_in(connection, record)?,
            None => one(None),
        },
        Body::Forgot(_) if planted(Planted::SaidToAll) => everybody(connection)?,
        // Said to nobody but the coach's own devices.
        Body::Forgot(_) => one(None),
        Body::Session(_)
        | Body::OptionTaken(_)
        | Body::BarTaken(_)
        | Body::Lift(_)
        | Body::WindowDone(_)
        | Body::ClockMark(_)
        | Body::Held(_)
        | Body::Range(_)
        | Body::Discomfort(_)
        | Body::Finish(_)
        | Body::RestMark(_)
        | Body::PutOff(_) => one(None),
    })
}

/// The coach and every standing member.
fn everybody(connection: &Connection) -> Result<Vec<PersonId>> {
    let sql = "SELECT person FROM person WHERE standing = 1 ORDER BY person";
    let mut statement = connection.prepare_cached(sql)?;
    let people = statement.query_map([], |row| Ok(PersonId(row.get(0)?)))?;
    Ok(people.collect::<rusqlite::Result<_>>()?)
}

/// Whose record something is.
fn whose(connection: &Connection, record: RecordId) -> Result<Option<PersonId>> {
    let sql = "SELECT person FROM record WHERE record = ?1 AND kind IN ('lift', 'flag') LIMIT 1";
    let mut statement = connection.prepare_cached(sql)?;
    Ok(statement.query_row([record.0], |row| Ok(PersonId(row.get(0)?))).optional()?)
}

fn said_in(connection: &Connection, record: RecordId) -> Result<Vec<PersonId>> {
    let sql = "SELECT DISTINCT h.of FROM entry e JOIN heard h USING (device, n, digest)
               WHERE e.record = ?1 ORDER BY h.of";
    let mut statement = connection.prepare_cached(sql)?;
    let people = statement.query_map([record.0], |row| Ok(PersonId(row.get(0)?)))?;
    Ok(people.collect::<rusqlite::Result<_>>()?)
}

/// Notes that an entry of one's own waits to be sent to a thread.
pub(super) fn post(
    tx: &Transaction<'_>,
    own: Own,
    (id, digest): (EntryId, i64),
    of: PersonId,
) -> Result<()> {
    tx.prepare_cached("INSERT OR IGNORE INTO outbox VALUES (?1, ?2, ?3)")?.execute(params![
        of.0,
        id.number as i64,
        digest
    ])?;
    if own.coach { hear(tx, (id, digest), of) } else { Ok(()) }
}

/// Notes that an entry of the founder is in a thread.
pub(crate) fn hear(tx: &Transaction<'_>, (id, digest): (EntryId, i64), of: PersonId) -> Result<()> {
    tx.prepare_cached("INSERT OR IGNORE INTO heard VALUES (?1, ?2, ?3, ?4)")?.execute(params![
        id.device.0,
        id.number as i64,
        digest,
        of.0
    ])?;
    Ok(())
}

/// Sends what everybody has, the coach's name and the plans, to the members who lack it: those who came later.
pub(crate) fn share(tx: &Transaction<'_>, own: Own, device: DeviceId) -> Result<()> {
    if !own.coach {
        return Ok(());
    }
    let sql = "SELECT r.n, r.digest FROM record r
               WHERE r.kind IN (?1, ?2, ?3) AND r.device = ?4 AND r.person = ?5 AND r.taken_back = 0
                 AND NOT EXISTS (SELECT 1 FROM heard h WHERE h.device = r.device AND h.n = r.n
                                   AND h.digest = r.digest AND h.of = ?6)";
    let mut statement = tx.prepare_cached(sql)?;
    for of in everybody(tx)? {
        let key = params![Profile::NAME, PlanText::NAME, Here::NAME, device.0, own.person.0, of.0];
        let lacking: Vec<(i64, i64)> = statement
            .query_map(key, |row| Ok((row.get(0)?, row.get(1)?)))?
            .collect::<rusqlite::Result<_>>()?;
        for (number, digest) in lacking {
            post(tx, own, (EntryId { device, number: number.unsigned_abs() }, digest), of)?;
        }
    }
    Ok(())
}

/// Notes again what waits to be sent: after a database was built again from leaves and from what no leaf held.
pub(crate) fn post_again(
    tx: &Transaction<'_>,
    own: Own,
    entry: &Entry,
    body: Option<&Body>,
) -> Result<()> {
    let of = match body {
        Some(body) => threads(tx, own, Some(entry.record), body)?,
        None => vec![own.person],
    };
    of.into_iter().try_for_each(|of| post(tx, own, (entry.id, entry.digest()), of))
}
