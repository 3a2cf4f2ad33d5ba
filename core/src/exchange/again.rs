//! Sealing again: a device that was not known when a leaf was cut cannot open it. Whoever wrote the leaf seals it once
//! more, to everybody who stands now: the same signed bytes in another file.

use rusqlite::{OptionalExtension, Transaction, params};

use super::cut::{self, Signer};
use super::ledger;
use super::sealed::{SealedHeader, SealedName};
use super::shelf::written;
use crate::error::Result;
use crate::id::{DeviceId, PersonId};
use crate::trust::Lane;

/// Leaves of one lane that are sealed again for a device: the latest. Older ones it has from the paper's key, or from its
/// person's other devices.
const MOST_AGAIN: usize = 200;

/// Notes that a leaf of one's own is sealed to some devices.
pub(super) fn note(
    tx: &Transaction<'_>,
    of: PersonId,
    sequence: u64,
    devices: &[DeviceId],
) -> Result<()> {
    for device in devices {
        tx.prepare_cached("INSERT OR IGNORE INTO sealed_to VALUES (?1, ?2, ?3, ?4)")?
            .execute(params![of.0, device.0, sequence as i64, sequence == 1])?;
    }
    Ok(())
}

/// Seals again what a device lacks that came to a thread after it was sealed, in every thread of this device.
pub(super) fn seal_again(tx: &Transaction<'_>, signer: &Signer<'_>) -> Result<Vec<SealedName>> {
    let own = signer.trusted.certificate.device();
    let threads: Vec<PersonId> = tx
        .prepare_cached("SELECT DISTINCT of FROM leaf WHERE device = ?1 ORDER BY of")?
        .query_map([own.0], |row| Ok(PersonId(row.get(0)?)))?
        .collect::<rusqlite::Result<_>>()?;
    let mut names = Vec::new();
    for of in threads {
        let lane = Lane { device: own, of };
        for device in signer.devices(of).into_iter().filter(|device| *device != own) {
            names.extend(for_one(tx, signer, lane, device)?);
        }
    }
    Ok(names)
}

fn for_one(
    tx: &Transaction<'_>,
    signer: &Signer<'_>,
    lane: Lane,
    device: DeviceId,
) -> Result<Vec<SealedName>> {
    let noted: Option<(i64, bool)> = tx
        .prepare_cached("SELECT since, given FROM sealed_to WHERE of = ?1 AND device = ?2")?
        .query_row(params![lane.of.0, device.0], |row| Ok((row.get(0)?, row.get(1)?)))
        .optional()?;
    if noted.is_some_and(|(_, given)| given) {
        return Ok(Vec::new());
    }
    // Before it has spoken nobody knows what it lacks.
    let Some(seen) = seen_by(tx, Lane { device, ..lane }, lane.device)? else {
        return Ok(Vec::new());
    };
    let last = ledger::last(tx, lane)?.map_or(0, |(sequence, _)| sequence);
    let since = noted.map_or(last + 1, |(since, _)| since.unsigned_abs());
    let mut names = Vec::new();
    for content in between(tx, lane, seen, since)? {
        if let Some(leaf) = written(tx, signer, lane, content)? {
            names.push(cut::file(tx, signer, &leaf)?);
        }
    }
    tx.prepare_cached("INSERT OR REPLACE INTO sealed_to VALUES (?1, ?2, ?3, 1)")?
        .execute(params![lane.of.0, device.0, since as i64])?;
    Ok(names)
}

/// How far a device has seen another's lane, as its own leaves in the thread say; none while it has written none there.
fn seen_by(tx: &Transaction<'_>, by: Lane, of_device: DeviceId) -> Result<Option<u64>> {
    let mut statement =
        tx.prepare_cached("SELECT header FROM leaf WHERE device = ?1 AND of = ?2")?;
    let mut rows = statement.query(params![by.device.0, by.of.0])?;
    let mut seen = None;
    while let Some(row) = rows.next()? {
        let header: Option<SealedHeader> =
            serde_json::from_str(row.get_ref(0)?.as_str().unwrap_or("")).ok();
        let heads = header.map(|header| header.seen).unwrap_or_default();
        let head = heads.iter().find(|head| head.0 == of_device).map_or(0, |head| head.1);
        seen = Some(seen.map_or(head, |before: u64| before.max(head)));
    }
    Ok(seen)
}

/// The content hashes of a lane's latest leaves after one and before another, the first of them first.
fn between(tx: &Transaction<'_>, lane: Lane, after: u64, before: u64) -> Result<Vec<[u8; 32]>> {
    let sql =
        "SELECT content FROM leaf WHERE device = ?1 AND of = ?2 AND sequence > ?3 AND sequence < ?4
               ORDER BY sequence DESC LIMIT ?5";
    let key = params![lane.device.0, lane.of.0, after as i64, before as i64, MOST_AGAIN as i64];
    let mut contents: Vec<[u8; 32]> = tx
        .prepare_cached(sql)?
        .query_map(key, |row| row.get(0))?
        .collect::<rusqlite::Result<_>>()?;
    contents.reverse();
    Ok(contents)
}
