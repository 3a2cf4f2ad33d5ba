//! Who seals: a device with its keys and all that it knows of who counts. And leaves made into files.

use std::collections::BTreeSet;

use rusqlite::{Connection, OptionalExtension, Transaction, params};

use super::ledger::{self, holds};
use super::members::Trusted;
use super::sealed::{Audience, MOST_RECIPIENTS, SealedLeaf, SealedName};
use crate::error::{Error, Field, Result};
use crate::id::{CrewId, DeviceId, PersonId};
use crate::journal::{Body, Entry, Kind, Remove, body_of};
use crate::planted::{Planted, planted};
use crate::store::line_in;
use crate::trust::{Certificate, Keys, Lane, Placed, Standing, Stop};

/// What cutting needs of a device.
#[derive(Clone, Copy)]
pub(crate) struct Signer<'a> {
    pub(crate) keys: &'a Keys,
    pub(crate) trusted: &'a Trusted,
    pub(crate) crew: CrewId,
    pub(crate) standing: &'a Standing,
}

impl Signer<'_> {
    /// Who can open a leaf: the standing devices and the papers of its two people.
    /// The leaf that says of somebody, or of a device, that they no longer count is sealed to them once more.
    pub(super) fn audience(&self, leaf: &SealedLeaf) -> Audience {
        let of = leaf.header.of;
        let people = &self.standing.people;
        let founder = people.iter().find(|(_, known)| known.founder);
        let member = people.get(&of);
        let mut devices = self.standing.open_keys(of);
        if planted(Planted::SealedToAll) {
            devices.extend(people.keys().flat_map(|person| self.standing.open_keys(*person)));
        }
        let last = leaf.entries.iter().any(|entry| entry.kind == Remove::NAME);
        if last {
            devices.extend(self.standing.farewell_keys(of));
        }
        let founders = founder.map_or_else(Vec::new, |(id, _)| self.standing.open_keys(*id));
        // Where there is room: two people's seven devices and papers come first.
        let room = MOST_RECIPIENTS.saturating_sub(founders.len() + devices.len() + 2);
        devices.extend(self.ended_by(leaf).into_iter().take(room));
        // Who was removed opens nothing later with the paper either.
        let withheld = self.standing.forgotten.contains(&of);
        let member = member.filter(|known| last || (known.standing && !withheld));
        let papers = founder.map(|(_, known)| known.keys.open).into_iter();
        Audience {
            founder: founders,
            member: devices,
            papers: papers.chain(member.map(|known| known.keys.open)).collect(),
        }
    }

    /// The opening keys of the devices that a leaf ends: of the thread's two people, and ended in truth. Whatever somebody
    /// writes, nobody else is sealed to.
    fn ended_by(&self, leaf: &SealedLeaf) -> BTreeSet<[u8; 32]> {
        let ended = leaf.entries.iter().filter_map(|entry| match body_of(&entry.raw)? {
            Body::Remove(removed) => removed.device,
            Body::Stopped(stopped) => Some(Stop::read_text(&stopped.stop)?.head.device),
            _ => None,
        });
        let placed = ended.filter_map(|device| self.standing.devices.get(&device));
        let theirs =
            placed.filter(|placed| !placed.standing && self.is_of(leaf.header.of, placed.person));
        theirs.map(|placed| placed.open).collect()
    }

    /// The standing devices of a thread's two people.
    pub(super) fn devices(&self, of: PersonId) -> Vec<DeviceId> {
        let devices = self.standing.devices.iter();
        let reads =
            |placed: &Placed| placed.standing && !self.standing.forgotten.contains(&placed.person);
        let theirs = devices.filter(|(_, placed)| reads(placed) && self.is_of(of, placed.person));
        theirs.map(|(device, _)| *device).collect()
    }

    /// True for the two people of a thread.
    fn is_of(&self, of: PersonId, person: PersonId) -> bool {
        person == of || self.standing.people.get(&person).is_some_and(|known| known.founder)
    }

    /// True for a device of the person whose device this is.
    pub(super) fn is_own(&self, device: DeviceId) -> bool {
        let own = self.trusted.certificate.person();
        self.standing.devices.get(&device).is_some_and(|placed| placed.person == own)
    }

    /// True for a device that will seal nothing again, being stopped or removed, and that this one does it for: a coach's for
    /// all, a member's for the same person's.
    pub(super) fn speaks_for(&self, device: DeviceId) -> bool {
        let gone = |placed: &Placed| placed.within && !placed.standing;
        self.standing.devices.get(&device).is_some_and(gone)
            && (self.trusted.own().coach || self.is_own(device))
    }

    /// False once this device, or its person, no longer counts: then nothing more is sealed to anybody.
    pub(super) fn belongs(&self) -> bool {
        self.standing.stands(&self.trusted.certificate)
    }

    /// The lane of this device in a thread.
    pub(super) fn lane(&self, of: PersonId) -> Lane {
        Lane { device: self.trusted.certificate.device(), of }
    }
}

/// Seals a leaf of one's own into a file that waits for the shelf.
pub(super) fn file(
    tx: &Transaction<'_>,
    signer: &Signer<'_>,
    leaf: &SealedLeaf,
) -> Result<SealedName> {
    let sealed = leaf.seal(signer.keys, &signer.audience(leaf));
    let sealed = sealed.map_err(|fault| Error::invalid(Field::Exchange, fault.to_string()))?;
    let name = leaf.name(&sealed);
    ledger::add_file(tx, (&name, sealed.len()), leaf)?;
    tx.prepare_cached("INSERT OR REPLACE INTO unshelved VALUES (?1, ?2)")?
        .execute(params![name.to_string(), sealed])?;
    Ok(name)
}

/// A leaf as it was written, from what the database holds of it.
pub(super) fn written(
    connection: &Connection,
    certificate: Certificate,
    lane: Lane,
    content: [u8; 32],
) -> Result<Option<SealedLeaf>> {
    let sql =
        "SELECT header, holds, signature FROM leaf WHERE device = ?1 AND of = ?2 AND content = ?3";
    let key = params![lane.device.0, lane.of.0, content];
    let read = |row: &rusqlite::Row<'_>| Ok((row.get(0)?, row.get(1)?, row.get(2)?));
    let row: Option<(String, Vec<u8>, Option<[u8; 64]>)> =
        connection.prepare_cached(sql)?.query_row(key, read).optional()?;
    let Some((header, held, signature)) = row else { return Ok(None) };
    let mut entries = Vec::new();
    // Those of a leaf that does not count are kept apart.
    let sql = "SELECT raw, digest FROM entry WHERE device = ?1 AND n = ?2 AND digest = ?3
               UNION ALL SELECT raw, digest FROM held
                 WHERE device = ?1 AND of = ?4 AND content = ?5 AND n = ?2 AND digest = ?3";
    for (number, digest) in holds(&held) {
        let mut statement = connection.prepare_cached(sql)?;
        let key = params![lane.device.0, number as i64, digest, lane.of.0, content];
        let mut rows = statement.query(key)?;
        let Some(row) = rows.next()? else { return Ok(None) };
        entries.extend(Entry::read(lane.device, line_in(row, 0, 1)?).ok());
    }
    Ok(SealedLeaf::written(certificate, header, entries, content, signature))
}
