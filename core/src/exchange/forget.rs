//! Forgetting somebody: the one thing here that deletes. Because a thread is one person's, no other chain breaks.

use std::collections::BTreeSet;

use rusqlite::{Connection, Transaction, params};

use super::ListedFile;
use super::sealed::{SealedName, Tag, lane_tag};
use crate::error::Result;
use crate::id::{CrewId, DeviceId, PersonId};
use crate::journal::{Body, body_of};
use crate::store::line_in;
use crate::trust::{Certificate, Standing, Stop};

/// Whom this device has forgotten. Another device of the coach's that forgets somebody deletes nothing here: a thief with
/// a stolen laptop must not be able to empty all others.
pub(crate) fn forgotten(connection: &Connection, own: DeviceId) -> Result<BTreeSet<PersonId>> {
    forgotten_by(connection, |device| device == own)
}

/// Whom another standing device of the same person has forgotten: nothing is sealed to them from here either. What says
/// that they left was deleted there with the rest, and may never arrive.
pub(super) fn forgotten_elsewhere(
    connection: &Connection,
    standing: &Standing,
    own: &Certificate,
) -> Result<BTreeSet<PersonId>> {
    forgotten_by(connection, |device| {
        let placed = standing.devices.get(&device);
        device != own.device()
            && placed.is_some_and(|placed| placed.standing && placed.person == own.person())
    })
}

fn forgotten_by(
    connection: &Connection,
    is_theirs: impl Fn(DeviceId) -> bool,
) -> Result<BTreeSet<PersonId>> {
    // Without its own index every entry would be read, at every start.
    let sql = "SELECT device, raw, digest FROM entry INDEXED BY entry_of_forgotten
               WHERE kind = 'forgot'";
    let mut statement = connection.prepare_cached(sql)?;
    let mut rows = statement.query([])?;
    let mut found = BTreeSet::new();
    while let Some(row) = rows.next()? {
        if !is_theirs(DeviceId(row.get(0)?)) {
            continue;
        }
        if let Some(Body::Forgot(forgot)) = body_of(line_in(row, 1, 2)?) {
            found.insert(forgot.person);
        }
    }
    Ok(found)
}

/// True for a lane of the thread of somebody who was forgotten.
pub(super) fn is_forgotten(
    forgotten: &BTreeSet<PersonId>,
    crew: CrewId,
    (device, tag): (DeviceId, Tag),
) -> bool {
    forgotten.iter().any(|of| lane_tag(crew, *of, device) == tag)
}

/// The files of a listing that are of somebody who was forgotten: to be deleted there.
pub(crate) fn files_of(
    forgotten: &BTreeSet<PersonId>,
    crew: CrewId,
    listing: &[ListedFile],
) -> Vec<String> {
    let named = listing.iter().filter_map(|file| SealedName::parse(&file.name));
    let of_theirs = named.filter(|name| is_forgotten(forgotten, crew, name.lane()));
    of_theirs.map(|name| name.to_string()).collect()
}

/// Drops every row of somebody's thread: what they wrote, what was written to them alone, their keys. What is folded must
/// be folded again, and who counts worked out, before anything is read.
pub(crate) fn purge(tx: &Transaction<'_>, person: PersonId) -> Result<()> {
    let theirs = devices_of(tx, person)?;
    for device in &theirs {
        tx.execute("DELETE FROM entry WHERE device = ?1", [device.0])?;
        tx.execute("DELETE FROM sealed_to WHERE device = ?1", [device.0])?;
    }
    tx.execute(
        "DELETE FROM entry WHERE EXISTS (SELECT 1 FROM heard h WHERE h.device = entry.device
             AND h.n = entry.n AND h.digest = entry.digest AND h.of = ?1)
           AND NOT EXISTS (SELECT 1 FROM heard h WHERE h.device = entry.device
             AND h.n = entry.n AND h.digest = entry.digest AND h.of != ?1)",
        [person.0],
    )?;
    for table in ["leaf", "brought", "file", "held", "heard", "outbox", "sealed_to", "sealed_for"] {
        tx.execute(&format!("DELETE FROM {table} WHERE of = ?1"), [person.0])?;
    }
    let certificates = bytes_of(tx, "SELECT bytes FROM certificate")?;
    for bytes in certificates {
        if Certificate::read(&bytes).is_ok_and(|known| known.person() == person) {
            tx.execute("DELETE FROM certificate WHERE bytes = ?1", params![bytes])?;
        }
    }
    for bytes in bytes_of(tx, "SELECT bytes FROM stop")? {
        let of_theirs = |stop: Stop| stop.person() == person || stop.head.of == person;
        if Stop::read(&bytes).is_some_and(of_theirs) {
            tx.execute("DELETE FROM stop WHERE bytes = ?1", params![bytes])?;
        }
    }
    Ok(())
}

/// True while a leaf of somebody's thread is here.
pub(crate) fn holds_any(connection: &Connection, person: PersonId) -> Result<bool> {
    let sql = "SELECT 1 FROM leaf WHERE of = ?1 LIMIT 1";
    Ok(connection.prepare_cached(sql)?.exists([person.0])?)
}

fn devices_of(tx: &Transaction<'_>, person: PersonId) -> Result<Vec<DeviceId>> {
    let mut statement = tx.prepare("SELECT device FROM device_person WHERE person = ?1")?;
    let rows = statement.query_map([person.0], |row| Ok(DeviceId(row.get(0)?)))?;
    Ok(rows.collect::<rusqlite::Result<_>>()?)
}

fn bytes_of(tx: &Transaction<'_>, sql: &str) -> Result<Vec<Vec<u8>>> {
    let mut statement = tx.prepare(sql)?;
    let rows = statement.query_map([], |row| row.get(0))?;
    Ok(rows.collect::<rusqlite::Result<_>>()?)
}
