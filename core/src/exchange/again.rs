//! Sealing again: a device that was not known when a leaf was cut cannot open it. It is sealed once more, to everybody who
//! stands now: the same signed bytes in another file. Whoever wrote it does that; for a device that was stopped or removed,
//! and will not, a coach's device does.

use std::collections::{BTreeMap, BTreeSet};

use rusqlite::{OptionalExtension, Transaction, params};

use super::cut::{self, Signer};
use super::ledger::{self, threads_of};
use super::sealed::{LaneHead, SealedHeader, SealedName};
use super::shelf::written;
use crate::error::Result;
use crate::id::DeviceId;
use crate::trust::{Certificate, Lane};

/// Leaves of one lane that are sealed again for a device: the latest. Older ones it has from the paper's key, or from its
/// person's other devices.
const MOST_AGAIN: usize = 200;

/// Notes that a leaf of one's own is sealed to some devices. Whoever is left out, as somebody who was removed, is given
/// what they lack should they come back.
pub(super) fn note(
    tx: &Transaction<'_>,
    lane: Lane,
    sequence: u64,
    devices: &[DeviceId],
) -> Result<()> {
    let noted: Vec<DeviceId> = tx
        .prepare_cached("SELECT device FROM sealed_to WHERE of = ?1 AND writer = ?2")?
        .query_map(params![lane.of.0, lane.device.0], |row| Ok(DeviceId(row.get(0)?)))?
        .collect::<rusqlite::Result<_>>()?;
    for left_out in noted.iter().filter(|device| !devices.contains(device)) {
        tx.prepare_cached("DELETE FROM sealed_to WHERE of = ?1 AND writer = ?2 AND device = ?3")?
            .execute(params![lane.of.0, lane.device.0, left_out.0])?;
    }
    for device in devices {
        tx.prepare_cached("INSERT OR IGNORE INTO sealed_to VALUES (?1, ?2, ?3, ?4, ?5)")?
            .execute(params![lane.of.0, lane.device.0, device.0, sequence as i64, sequence == 1])?;
    }
    Ok(())
}

/// Seals again what a device lacks that came to a thread after it was sealed, in every thread of this device.
pub(super) fn seal_again(tx: &Transaction<'_>, signer: &Signer<'_>) -> Result<Vec<SealedName>> {
    let own = signer.trusted.certificate.device();
    let mut names = Vec::new();
    let mut writers = BTreeMap::from([(own, signer.trusted.certificate)]);
    if signer.trusted.own().coach {
        writers.extend(gone(tx, signer)?);
    }
    for (writer, certificate) in writers {
        for of in threads_of(tx, writer)? {
            let lane = Lane { device: writer, of };
            for device in signer.devices(of).into_iter().filter(|device| *device != own) {
                names.extend(for_one(tx, signer, (lane, certificate), device)?);
            }
        }
    }
    Ok(names)
}

/// Devices that will seal nothing again: stopped or removed, of people who are still in the crew.
fn gone(tx: &Transaction<'_>, signer: &Signer<'_>) -> Result<BTreeMap<DeviceId, Certificate>> {
    let mut statement = tx.prepare_cached("SELECT bytes FROM certificate")?;
    let mut rows = statement.query([])?;
    let mut found = BTreeMap::new();
    while let Some(row) = rows.next()? {
        let bytes = row.get_ref(0)?.as_blob().unwrap_or_default();
        let Ok(certificate) = Certificate::read(bytes) else { continue };
        let placed = signer.standing.devices.get(&certificate.device());
        let ended = placed.is_some_and(|placed| {
            placed.person == certificate.person() && placed.within && !placed.standing
        });
        if ended {
            found.insert(certificate.device(), certificate);
        }
    }
    Ok(found)
}

fn for_one(
    tx: &Transaction<'_>,
    signer: &Signer<'_>,
    (lane, certificate): (Lane, Certificate),
    device: DeviceId,
) -> Result<Vec<SealedName>> {
    let noted: Option<(i64, bool)> = tx
        .prepare_cached(
            "SELECT since, given FROM sealed_to WHERE of = ?1 AND writer = ?2 AND device = ?3",
        )?
        .query_row(params![lane.of.0, lane.device.0, device.0], |row| {
            Ok((row.get(0)?, row.get(1)?))
        })
        .optional()?;
    if noted.is_some_and(|(_, given)| given) {
        return Ok(Vec::new());
    }
    let seen = match seen_by(tx, Lane { device, ..lane }, lane.device)? {
        Some(seen) => seen,
        // Another device of this coach that does not know the member yet will never say so in the member's thread.
        None if signer.is_own(device) && !threads_of(tx, device)?.is_empty() => BTreeSet::new(),
        // Before it has spoken nobody knows what it lacks.
        None => return Ok(Vec::new()),
    };
    let last = ledger::last(tx, lane)?.map_or(0, |(sequence, _)| sequence);
    let since = noted.map_or(last + 1, |(since, _)| since.unsigned_abs());
    let mut names = Vec::new();
    for content in lacking(tx, lane, &seen, since)? {
        if let Some(leaf) = written(tx, certificate, lane, content)? {
            names.push(cut::file(tx, signer, &leaf)?);
        }
    }
    tx.prepare_cached("INSERT OR REPLACE INTO sealed_to VALUES (?1, ?2, ?3, ?4, 1)")?
        .execute(params![lane.of.0, lane.device.0, device.0, since as i64])?;
    Ok(names)
}

/// The heads of another's lane that a device has seen, as its own leaves in the thread say; none while it has written none
/// there.
fn seen_by(
    tx: &Transaction<'_>,
    by: Lane,
    of_device: DeviceId,
) -> Result<Option<BTreeSet<LaneHead>>> {
    let mut statement =
        tx.prepare_cached("SELECT header FROM leaf WHERE device = ?1 AND of = ?2")?;
    let mut rows = statement.query(params![by.device.0, by.of.0])?;
    let mut seen: Option<BTreeSet<LaneHead>> = None;
    while let Some(row) = rows.next()? {
        let header: Option<SealedHeader> =
            serde_json::from_str(row.get_ref(0)?.as_str().unwrap_or("")).ok();
        let heads = header.map(|header| header.seen).unwrap_or_default();
        let of_it = heads.into_iter().filter(|head| head.0 == of_device);
        seen.get_or_insert_default().extend(of_it);
    }
    Ok(seen)
}

/// The content hashes of a lane's latest leaves before one that count and that no chain reaches down from a head that was
/// seen; the first of them first. A place in the lane says nothing: two leaves may stand there.
fn lacking(
    tx: &Transaction<'_>,
    lane: Lane,
    seen: &BTreeSet<LaneHead>,
    before: u64,
) -> Result<Vec<[u8; 32]>> {
    type Row = (u64, [u8; 32], [u8; 32], i64);
    let sql = "SELECT sequence, content, previous, counts FROM leaf WHERE device = ?1 AND of = ?2
               ORDER BY sequence DESC, content";
    let leaves: Vec<Row> = tx
        .prepare_cached(sql)?
        .query_map(params![lane.device.0, lane.of.0], |row| {
            Ok((row.get::<_, i64>(0)?.unsigned_abs(), row.get(1)?, row.get(2)?, row.get(3)?))
        })?
        .collect::<rusqlite::Result<_>>()?;
    // From the top down, so that whatever a leaf follows is looked at after it.
    let mut reached: BTreeSet<[u8; 32]> = BTreeSet::new();
    let mut lacking = Vec::new();
    for (sequence, content, previous, counts) in leaves {
        if seen.contains(&LaneHead::new(lane.device, sequence, &content))
            || reached.contains(&content)
        {
            reached.insert(previous);
        } else if counts == 0 && sequence < before && lacking.len() < MOST_AGAIN {
            lacking.push(content);
        }
    }
    lacking.reverse();
    Ok(lacking)
}
