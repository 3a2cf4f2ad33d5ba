//! Sealing again: a device that was not known when a leaf was cut cannot open it. It is sealed once more, to everybody who
//! stands now: the same signed bytes in another file. Whoever wrote it does that; for a device that was stopped or removed,
//! and will not, a coach's device does.

use std::collections::BTreeSet;

use rusqlite::{OptionalExtension, Transaction, params};

use super::ledger::{self, threads_of};
use super::sealed::{LaneHead, SealedHeader, SealedName};
use super::signer::{Signer, file, written};
use crate::error::Result;
use crate::id::{DeviceId, PersonId};
use crate::trust::{Certificate, Lane};

/// Leaves of one lane that are sealed again for a device: the latest. Older ones it has from the paper's key, or from its
/// person's other devices.
const MOST_AGAIN: usize = 200;

/// Notes that a leaf of one's own is sealed to some devices. Whoever is left out, as somebody who was removed, is given
/// what they lack should they come back.
pub(super) fn note(
    tx: &Transaction<'_>,
    of: PersonId,
    sequence: u64,
    devices: &[DeviceId],
) -> Result<()> {
    let noted: Vec<DeviceId> = tx
        .prepare_cached("SELECT device FROM sealed_to WHERE of = ?1")?
        .query_map([of.0], |row| Ok(DeviceId(row.get(0)?)))?
        .collect::<rusqlite::Result<_>>()?;
    for left_out in noted.iter().filter(|device| !devices.contains(device)) {
        tx.prepare_cached("DELETE FROM sealed_to WHERE of = ?1 AND device = ?2")?
            .execute(params![of.0, left_out.0])?;
    }
    for device in devices {
        tx.prepare_cached("INSERT OR IGNORE INTO sealed_to VALUES (?1, ?2, ?3, ?4)")?
            .execute(params![of.0, device.0, sequence as i64, sequence == 1])?;
    }
    Ok(())
}

/// Seals again what a device lacks that came to a thread after it was sealed, in every thread of this device.
pub(super) fn seal_again(tx: &Transaction<'_>, signer: &Signer<'_>) -> Result<Vec<SealedName>> {
    let own = signer.trusted.certificate.device();
    let mut names = Vec::new();
    if !signer.belongs() {
        return Ok(names);
    }
    for of in threads_of(tx, own)? {
        names.extend(introduce(tx, signer, of)?);
        for device in others(signer, of) {
            names.extend(own_for(tx, signer, of, device)?);
        }
    }
    for certificate in gone(tx, signer)? {
        for of in threads_of(tx, certificate.device())? {
            let lane = Lane { device: certificate.device(), of };
            for device in others(signer, of) {
                names.extend(gone_for(tx, signer, (lane, certificate), device)?);
            }
        }
    }
    Ok(names)
}

/// The standing devices of a thread but this one.
fn others(signer: &Signer<'_>, of: PersonId) -> Vec<DeviceId> {
    let own = signer.trusted.certificate.device();
    signer.devices(of).into_iter().filter(|device| *device != own).collect()
}

/// Devices that will seal nothing again, being stopped or removed: on a coach's device all, on a member's those of the same
/// person. Whoever stops a device names leaves of it, and all that a chain reaches from them counts only for those who
/// have them: a thief could show one leaf to one device alone.
fn gone(tx: &Transaction<'_>, signer: &Signer<'_>) -> Result<Vec<Certificate>> {
    let gone = certificates(tx)?.into_iter().filter(|certificate| {
        let placed = signer.standing.devices.get(&certificate.device());
        let of_ours = signer.trusted.own().coach || signer.is_own(certificate.device());
        placed.is_some_and(|placed| {
            placed.person == certificate.person() && placed.within && !placed.standing && of_ours
        })
    });
    Ok(gone.collect())
}

/// Two devices that came at the same time know nothing of each other: each sealed its first leaf before it could have. One
/// that knows both seals that leaf of each again, and the rest follows by itself.
fn introduce(tx: &Transaction<'_>, signer: &Signer<'_>, of: PersonId) -> Result<Vec<SealedName>> {
    let others = others(signer, of);
    let mut known: Vec<(DeviceId, BTreeSet<DeviceId>)> = Vec::new();
    // Most threads have two devices: nobody is to be introduced there, and no header is read.
    for device in others.iter().copied().filter(|_| others.len() > 1) {
        if let Some(heads) = heads_of(tx, Lane { device, of })? {
            known.push((device, heads.into_iter().map(|head| head.0).collect()));
        }
    }
    let mut names = Vec::new();
    for (writer, writer_saw) in &known {
        for (device, device_saw) in &known {
            let strangers =
                writer != device && !writer_saw.contains(device) && !device_saw.contains(writer);
            if strangers {
                names.extend(first_leaf(tx, signer, Lane { device: *writer, of }, *device)?);
            }
        }
    }
    Ok(names)
}

/// Seals a lane's first leaf again for a device, once.
fn first_leaf(
    tx: &Transaction<'_>,
    signer: &Signer<'_>,
    lane: Lane,
    device: DeviceId,
) -> Result<Option<SealedName>> {
    let sql =
        "SELECT content FROM leaf WHERE device = ?1 AND of = ?2 AND sequence = 1 AND counts = 0
               ORDER BY content LIMIT 1";
    let content: Option<[u8; 32]> = tx
        .prepare_cached(sql)?
        .query_row(params![lane.device.0, lane.of.0], |row| row.get(0))
        .optional()?;
    let certificate = certificates(tx)?.into_iter().find(|known| known.device() == lane.device);
    match content.zip(certificate) {
        Some((content, certificate)) => once(tx, signer, (lane, certificate), content, device),
        None => Ok(None),
    }
}

/// Seals somebody else's leaf again for a device, unless that was done.
fn once(
    tx: &Transaction<'_>,
    signer: &Signer<'_>,
    (lane, certificate): (Lane, Certificate),
    content: [u8; 32],
    device: DeviceId,
) -> Result<Option<SealedName>> {
    let noted = tx
        .prepare_cached("INSERT OR IGNORE INTO sealed_for VALUES (?1, ?2, ?3)")?
        .execute(params![lane.of.0, content, device.0])?;
    match written(tx, certificate, lane, content)? {
        // Nobody signs for another.
        Some(leaf) if noted > 0 && leaf.signature.is_some() => file(tx, signer, &leaf).map(Some),
        _ => Ok(None),
    }
}

fn certificates(tx: &Transaction<'_>) -> Result<Vec<Certificate>> {
    let mut statement = tx.prepare_cached("SELECT bytes FROM certificate ORDER BY bytes")?;
    let mut rows = statement.query([])?;
    let mut found = Vec::new();
    while let Some(row) = rows.next()? {
        found.extend(Certificate::read(row.get_ref(0)?.as_blob().unwrap_or_default()).ok());
    }
    Ok(found)
}

/// What a device has seen of a lane; none where nobody can know yet.
fn seen(
    tx: &Transaction<'_>,
    signer: &Signer<'_>,
    lane: Lane,
    device: DeviceId,
) -> Result<Option<BTreeSet<LaneHead>>> {
    Ok(match seen_by(tx, Lane { device, ..lane }, lane.device)? {
        Some(seen) => Some(seen),
        // Another device of this coach that does not know the member yet will never say so in the member's thread.
        None if signer.is_own(device) && !threads_of(tx, device)?.is_empty() => {
            Some(BTreeSet::new())
        }
        // Before it has spoken nobody knows what it lacks.
        None => None,
    })
}

/// Seals one's own leaves again for a device, once: those from before it was known.
fn own_for(
    tx: &Transaction<'_>,
    signer: &Signer<'_>,
    of: PersonId,
    device: DeviceId,
) -> Result<Vec<SealedName>> {
    let certificate = signer.trusted.certificate;
    let lane = Lane { device: certificate.device(), of };
    let noted: Option<(i64, bool)> = tx
        .prepare_cached("SELECT since, given FROM sealed_to WHERE of = ?1 AND device = ?2")?
        .query_row(params![of.0, device.0], |row| Ok((row.get(0)?, row.get(1)?)))
        .optional()?;
    if noted.is_some_and(|(_, given)| given) {
        return Ok(Vec::new());
    }
    let Some(seen) = seen(tx, signer, lane, device)? else { return Ok(Vec::new()) };
    let last = ledger::last(tx, lane)?.map_or(0, |(sequence, _)| sequence);
    let since = noted.map_or(last + 1, |(since, _)| since.unsigned_abs());
    let mut names = Vec::new();
    for content in lacking(tx, lane, &seen, since)? {
        if let Some(leaf) = written(tx, certificate, lane, content)? {
            names.push(file(tx, signer, &leaf)?);
        }
    }
    tx.prepare_cached("INSERT OR REPLACE INTO sealed_to VALUES (?1, ?2, ?3, 1)")?
        .execute(params![of.0, device.0, since as i64])?;
    Ok(names)
}

/// Seals leaves of a device that is gone again for another: each once, whenever it comes.
fn gone_for(
    tx: &Transaction<'_>,
    signer: &Signer<'_>,
    (lane, certificate): (Lane, Certificate),
    device: DeviceId,
) -> Result<Vec<SealedName>> {
    let Some(seen) = seen(tx, signer, lane, device)? else { return Ok(Vec::new()) };
    let mut names = Vec::new();
    for content in lacking(tx, lane, &seen, u64::MAX)? {
        names.extend(once(tx, signer, (lane, certificate), content, device)?);
    }
    Ok(names)
}

/// The heads of another's lane that a device has seen; none while it has written nothing in the thread.
fn seen_by(
    tx: &Transaction<'_>,
    by: Lane,
    of_device: DeviceId,
) -> Result<Option<BTreeSet<LaneHead>>> {
    let heads = heads_of(tx, by)?;
    Ok(heads.map(|heads| heads.into_iter().filter(|head| head.0 == of_device).collect()))
}

/// Every head that a device's own leaves in a thread name; none while it has written none there.
fn heads_of(tx: &Transaction<'_>, by: Lane) -> Result<Option<BTreeSet<LaneHead>>> {
    let mut statement =
        tx.prepare_cached("SELECT header FROM leaf WHERE device = ?1 AND of = ?2")?;
    let mut rows = statement.query(params![by.device.0, by.of.0])?;
    let mut seen: Option<BTreeSet<LaneHead>> = None;
    while let Some(row) = rows.next()? {
        let header: Option<SealedHeader> =
            serde_json::from_str(row.get_ref(0)?.as_str().unwrap_or("")).ok();
        let heads = header.map(|header| header.seen).unwrap_or_default();
        seen.get_or_insert_with(BTreeSet::new).extend(heads);
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
    type Row = (u64, [u8; 32], [u8; 32], bool);
    // A stop counts wherever it stands.
    let sql = "SELECT l.sequence, l.content, l.previous, l.counts != 0 AND NOT EXISTS (
                 SELECT 1 FROM held h WHERE h.kind = 'stop' AND h.device = l.device AND h.of = l.of
                   AND h.content = l.content)
               FROM leaf l WHERE l.device = ?1 AND l.of = ?2 ORDER BY l.sequence DESC, l.content";
    let leaves: Vec<Row> = tx
        .prepare_cached(sql)?
        .query_map(params![lane.device.0, lane.of.0], |row| {
            Ok((row.get::<_, i64>(0)?.unsigned_abs(), row.get(1)?, row.get(2)?, row.get(3)?))
        })?
        .collect::<rusqlite::Result<_>>()?;
    // From the top down, so that whatever a leaf follows is looked at after it.
    let mut reached: BTreeSet<[u8; 32]> = BTreeSet::new();
    let mut lacking = Vec::new();
    for (sequence, content, previous, aside) in leaves {
        if seen.contains(&LaneHead::new(lane.device, sequence, &content))
            || reached.contains(&content)
        {
            reached.insert(previous);
        } else if !aside && sequence < before && lacking.len() < MOST_AGAIN {
            lacking.push(content);
        }
    }
    lacking.reverse();
    Ok(lacking)
}
