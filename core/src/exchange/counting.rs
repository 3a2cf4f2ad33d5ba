//! What a change of who counts does to leaves: the entries of one that counts now go into the journal, those of one that no
//! longer does leave it.

use std::collections::BTreeSet;

use rusqlite::{OptionalExtension, Transaction, params};

use super::ledger::{Holds, code, holds};
use crate::error::Result;
use crate::id::{DeviceId, PersonId, RecordId};
use crate::journal::{Body, Entry, body_of};
use crate::planted::{Planted, planted};
use crate::store::{hear, insert_read, line_in};
use crate::trust::{Counts, Lane, Standing};

/// Counts the leaves again that may count otherwise now, and moves their entries. Gives the records that this touches.
/// All leaves of a device count alike, but where it was ended or its person has too many.
pub(super) fn recount(
    tx: &Transaction<'_>,
    standing: &Standing,
    replaced: &BTreeSet<DeviceId>,
) -> Result<BTreeSet<RecordId>> {
    let mut devices = replaced.clone();
    let uncounted: Vec<uuid::Uuid> = tx
        .prepare_cached("SELECT DISTINCT device FROM leaf WHERE counts != 0")?
        .query_map([], |row| row.get(0))?
        .collect::<rusqlite::Result<_>>()?;
    devices.extend(uncounted.into_iter().map(DeviceId));
    let limited = standing
        .devices
        .iter()
        .filter(|(device, placed)| !placed.within || standing.is_limited(**device));
    devices.extend(limited.map(|(device, _)| *device));
    let mut changed = Vec::new();
    let mut statement =
        tx.prepare_cached("SELECT of, content, counts FROM leaf WHERE device = ?1")?;
    for device in devices {
        let mut rows = statement.query([device.0])?;
        while let Some(row) = rows.next()? {
            let lane = Lane { device, of: PersonId(row.get(0)?) };
            let (content, before): ([u8; 32], i64) = (row.get(1)?, row.get(2)?);
            let now = standing.counts(lane, &content);
            let kept = planted(Planted::ByArrival) && before == code(Counts::Yes);
            if code(now) != before && !kept {
                changed.push((lane, content, before == code(Counts::Yes), now));
            }
        }
    }
    let mut touched = BTreeSet::new();
    for (lane, content, counted, now) in changed {
        tx.prepare_cached(
            "UPDATE leaf SET counts = ?4 WHERE device = ?1 AND of = ?2 AND content = ?3",
        )?
        .execute(params![lane.device.0, lane.of.0, content, code(now)])?;
        match (counted, now == Counts::Yes) {
            (false, true) => release(tx, standing, lane, &content)?,
            (true, false) => touched.extend(withdraw(tx, lane, &content)?),
            _ => {}
        }
    }
    Ok(touched)
}

/// Keeps the entries of a leaf that does not count.
pub(super) fn hold(
    tx: &Transaction<'_>,
    lane: Lane,
    content: &[u8; 32],
    entries: &[Entry],
) -> Result<()> {
    for entry in entries {
        tx.prepare_cached("INSERT OR IGNORE INTO held VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)")?
            .execute(params![
                lane.device.0,
                lane.of.0,
                content,
                entry.id.number as i64,
                entry.digest(),
                entry.raw,
                entry.kind,
            ])?;
    }
    Ok(())
}

/// Takes in the entries of a leaf that counts, each with its body. Says how many were new.
pub(super) fn admit(
    tx: &Transaction<'_>,
    standing: &Standing,
    lane: Lane,
    entries: &[Entry],
    bodies: Vec<Option<Body>>,
) -> Result<u64> {
    let writer = standing.devices.get(&lane.device).map(|device| device.person);
    let founder =
        writer.and_then(|person| standing.people.get(&person)).is_some_and(|known| known.founder);
    if founder {
        for entry in entries {
            hear(tx, (entry.id, entry.digest()), lane.of)?;
        }
    }
    insert_read(tx, entries, bodies)
}

/// A leaf counts now: its entries go into the journal.
fn release(
    tx: &Transaction<'_>,
    standing: &Standing,
    lane: Lane,
    content: &[u8; 32],
) -> Result<()> {
    let sql = "SELECT raw, digest FROM held WHERE device = ?1 AND of = ?2 AND content = ?3";
    let mut statement = tx.prepare_cached(sql)?;
    let mut rows = statement.query(params![lane.device.0, lane.of.0, content])?;
    let mut entries = Vec::new();
    while let Some(row) = rows.next()? {
        entries.extend(Entry::read(lane.device, line_in(row, 0, 1)?).ok());
    }
    let bodies = entries.iter().map(|entry| body_of(&entry.raw)).collect();
    admit(tx, standing, lane, &entries, bodies)?;
    tx.prepare_cached("DELETE FROM held WHERE device = ?1 AND of = ?2 AND content = ?3")?
        .execute(params![lane.device.0, lane.of.0, content])?;
    Ok(())
}

/// A leaf counts no more: its entries leave the journal, unless another leaf that counts holds them too.
fn withdraw(tx: &Transaction<'_>, lane: Lane, content: &[u8; 32]) -> Result<BTreeSet<RecordId>> {
    let held = |sql: &str| -> Result<BTreeSet<Holds>> {
        let mut statement = tx.prepare_cached(sql)?;
        let mut rows = statement.query(params![lane.device.0, lane.of.0, content])?;
        let mut found = BTreeSet::new();
        while let Some(row) = rows.next()? {
            found.extend(holds(row.get_ref(0)?.as_blob().unwrap_or_default()));
        }
        Ok(found)
    };
    let own = held("SELECT holds FROM leaf WHERE device = ?1 AND of = ?2 AND content = ?3")?;
    let here = held(
        "SELECT holds FROM leaf WHERE device = ?1 AND of = ?2 AND content != ?3 AND counts = 0",
    )?;
    for (number, digest) in own.difference(&here) {
        tx.prepare_cached(
            "DELETE FROM heard WHERE device = ?1 AND n = ?2 AND digest = ?3 AND of = ?4",
        )?
        .execute(params![lane.device.0, *number as i64, digest, lane.of.0])?;
    }
    let elsewhere = held(
        "SELECT holds FROM leaf WHERE device = ?1 AND NOT (of = ?2 AND content = ?3) AND counts = 0",
    )?;
    let mut touched = BTreeSet::new();
    for (number, digest) in &own {
        let key = params![lane.device.0, *number as i64, digest];
        let raw: Option<String> = tx
            .prepare_cached("SELECT raw FROM entry WHERE device = ?1 AND n = ?2 AND digest = ?3")?
            .query_row(key, |row| row.get(0))
            .optional()?;
        let Some(entry) = raw.and_then(|raw| Entry::read(lane.device, &raw).ok()) else { continue };
        // Kept with this leaf also where another holds it: that may count no more before this one does again.
        let record = entry.record;
        hold(tx, lane, content, &[entry])?;
        if !elsewhere.contains(&(*number, *digest)) {
            touched.insert(record);
            tx.prepare_cached("DELETE FROM entry WHERE device = ?1 AND n = ?2 AND digest = ?3")?
                .execute(key)?;
        }
    }
    Ok(touched)
}
