//! Sealing again: a device that was not known when a leaf was cut cannot open it. It is sealed once more, to everybody who
//! stands now: the same signed bytes in another file. Whoever wrote it does that; for a device that was stopped or removed,
//! and will not, a coach's device does.

use std::collections::BTreeSet;

use rusqlite::{OptionalExtension, Transaction, params};

use super::heal::unheard;
use super::ledger::{self, seen_in, threads_of};
use super::members::certificate_of;
use super::sealed::{LaneHead, SealedName};
use super::signer::{Signer, file, written};
use crate::error::Result;
use crate::id::{DeviceId, PersonId};
use crate::planted::{Planted, planted};
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
    let mut again = Again { tx, signer, names: Vec::new() };
    if signer.belongs() {
        again.own()?;
        again.gone()?;
    }
    Ok(again.names)
}

/// A pass over the threads of this device; every file that it makes is in `names`.
struct Again<'a> {
    tx: &'a Transaction<'a>,
    signer: &'a Signer<'a>,
    names: Vec<SealedName>,
}

impl Again<'_> {
    fn own(&mut self) -> Result<()> {
        let own = self.signer.trusted.certificate;
        for of in threads_of(self.tx, own.device())? {
            self.introduce(of)?;
            for device in self.others(of) {
                self.own_for(own, of, device)?;
                self.names.extend(unheard(self.tx, self.signer, self.signer.lane(of), device)?);
            }
        }
        Ok(())
    }

    /// Leaves of devices that will seal nothing again, being stopped or removed: on a coach's device of all, on a member's of
    /// the same person's. Whoever stops a device names leaves of it, and all that a chain reaches from them counts only for
    /// those who have them: a thief could show one leaf to one device alone.
    fn gone(&mut self) -> Result<()> {
        let devices = self.signer.standing.devices.iter();
        let gone: Vec<DeviceId> = devices
            .filter(|(device, _)| {
                self.signer.speaks_for(**device) || planted(Planted::AllSealAgain)
            })
            .map(|(device, _)| *device)
            .collect();
        for writer in gone {
            for of in threads_of(self.tx, writer)? {
                let lane = Lane { device: writer, of };
                for device in self.others(of) {
                    // Each leaf once, whenever it comes.
                    for content in self.lacking(lane, device, u64::MAX)?.unwrap_or_default() {
                        self.once(lane, content, device)?;
                    }
                }
            }
        }
        Ok(())
    }

    /// The standing devices of a thread but this one.
    fn others(&self, of: PersonId) -> Vec<DeviceId> {
        let own = self.signer.trusted.certificate.device();
        self.signer.devices(of).into_iter().filter(|device| *device != own).collect()
    }

    /// Two devices that came at the same time know nothing of each other: each sealed its first leaf before it could have.
    /// One that knows both seals that leaf of each again, and the rest follows by itself.
    fn introduce(&mut self, of: PersonId) -> Result<()> {
        let others = self.others(of);
        // Most threads have two devices: nobody is to be introduced there, and no header is read.
        if others.len() < 2 {
            return Ok(());
        }
        let mut known: Vec<(DeviceId, BTreeSet<DeviceId>)> = Vec::new();
        for device in &others {
            let wanted = others.iter().copied().filter(|other| other != device).collect();
            if let Some(saw) = saw(self.tx, Lane { device: *device, of }, &wanted)? {
                known.push((*device, saw));
            }
        }
        for (writer, writer_saw) in &known {
            for (device, device_saw) in &known {
                let strangers = writer != device
                    && !writer_saw.contains(device)
                    && !device_saw.contains(writer);
                let lane = Lane { device: *writer, of };
                if strangers && let Some(first) = first_leaf(self.tx, lane)? {
                    self.once(lane, first, *device)?;
                }
            }
        }
        Ok(())
    }

    /// Seals somebody else's leaf again for a device, unless that was done.
    fn once(&mut self, lane: Lane, content: [u8; 32], device: DeviceId) -> Result<()> {
        let noted = self
            .tx
            .prepare_cached("INSERT OR IGNORE INTO sealed_for VALUES (?1, ?2, ?3)")?
            .execute(params![lane.of.0, content, device.0])?;
        let certificate = match noted {
            0 => None,
            _ => certificate_of(self.tx, lane.device)?,
        };
        let Some(certificate) = certificate else { return Ok(()) };
        // Nobody signs for another.
        let leaf = written(self.tx, certificate, lane, content)?;
        if let Some(leaf) = leaf.filter(|leaf| leaf.signature.is_some()) {
            self.names.push(file(self.tx, self.signer, &leaf)?);
        }
        Ok(())
    }

    /// Seals one's own leaves again for a device, once: those from before it was known.
    fn own_for(&mut self, own: Certificate, of: PersonId, device: DeviceId) -> Result<()> {
        let lane = Lane { device: own.device(), of };
        let noted: Option<(i64, bool)> = self
            .tx
            .prepare_cached("SELECT since, given FROM sealed_to WHERE of = ?1 AND device = ?2")?
            .query_row(params![of.0, device.0], |row| Ok((row.get(0)?, row.get(1)?)))
            .optional()?;
        if noted.is_some_and(|(_, given)| given) {
            return Ok(());
        }
        let last = ledger::last(self.tx, lane)?.map_or(0, |(sequence, _)| sequence);
        let since = noted.map_or(last + 1, |(since, _)| since.unsigned_abs());
        let Some(lacking) = self.lacking(lane, device, since)? else { return Ok(()) };
        for content in lacking {
            if let Some(leaf) = written(self.tx, own, lane, content)? {
                self.names.push(file(self.tx, self.signer, &leaf)?);
            }
        }
        self.tx
            .prepare_cached("INSERT OR REPLACE INTO sealed_to VALUES (?1, ?2, ?3, 1)")?
            .execute(params![of.0, device.0, since as i64])?;
        Ok(())
    }

    /// The leaves of a lane before a place that a device lacks; none where nobody can know yet.
    fn lacking(&self, lane: Lane, device: DeviceId, before: u64) -> Result<Option<Vec<[u8; 32]>>> {
        let seen = match heads_of(self.tx, Lane { device, ..lane })? {
            Some(heads) => heads,
            // Another device of this coach that does not know the member yet will never say so in the member's thread.
            None if self.signer.is_own(device) && !threads_of(self.tx, device)?.is_empty() => {
                BTreeSet::new()
            }
            // Before it has spoken nobody knows what it lacks.
            None => return Ok(None),
        };
        unreached(self.tx, lane, &seen, before).map(Some)
    }
}

/// A lane's first leaf, where it counts.
fn first_leaf(tx: &Transaction<'_>, lane: Lane) -> Result<Option<[u8; 32]>> {
    let sql =
        "SELECT content FROM leaf WHERE device = ?1 AND of = ?2 AND sequence = 1 AND counts = 0
               ORDER BY content LIMIT 1";
    let mut statement = tx.prepare_cached(sql)?;
    Ok(statement.query_row(params![lane.device.0, lane.of.0], |row| row.get(0)).optional()?)
}

/// Every head that a device's own leaves in a thread name; none while it has written none there.
fn heads_of(tx: &Transaction<'_>, by: Lane) -> Result<Option<BTreeSet<LaneHead>>> {
    let mut statement =
        tx.prepare_cached("SELECT header FROM leaf WHERE device = ?1 AND of = ?2")?;
    let mut rows = statement.query(params![by.device.0, by.of.0])?;
    let mut seen: Option<BTreeSet<LaneHead>> = None;
    while let Some(row) = rows.next()? {
        seen.get_or_insert_default().extend(seen_in(row)?);
    }
    Ok(seen)
}

/// Which of some devices a device's own leaves in a thread name; none while it has written none there. The latest leaf
/// names nearly always all of them, and the others are left unread.
fn saw(
    tx: &Transaction<'_>,
    by: Lane,
    wanted: &BTreeSet<DeviceId>,
) -> Result<Option<BTreeSet<DeviceId>>> {
    let mut statement = tx.prepare_cached(
        "SELECT header FROM leaf WHERE device = ?1 AND of = ?2 ORDER BY sequence DESC",
    )?;
    let mut rows = statement.query(params![by.device.0, by.of.0])?;
    let mut saw: Option<BTreeSet<DeviceId>> = None;
    while saw.as_ref().is_none_or(|saw| saw.len() < wanted.len())
        && let Some(row) = rows.next()?
    {
        let seen = seen_in(row)?;
        let named = seen.into_iter().map(|head| head.0).filter(|device| wanted.contains(device));
        saw.get_or_insert_default().extend(named);
    }
    Ok(saw)
}

/// The content hashes of a lane's latest leaves before one that count and that no chain reaches down from a head that was
/// seen; the first of them first. A place in the lane says nothing: two leaves may stand there.
fn unreached(
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
