//! Cutting: what was logged and waits to be sent becomes leaves, thread by thread.

use rusqlite::{Transaction, params};

use super::again;
use super::ledger::{self, ENTRIES_A_LEAF};
use super::members::Trusted;
use super::sealed::{Audience, Follows, MAX_SEALED_BYTES, SealedLeaf, SealedName};
use crate::error::{Error, Field, Result};
use crate::id::{CrewId, DeviceId, PersonId};
use crate::journal::{Entry, Kind, Remove};
use crate::store::{Store, line_in, share};
use crate::trust::{Counts, Keys, Lane, Standing};

/// What cutting needs of a device.
#[derive(Clone, Copy)]
pub(crate) struct Signer<'a> {
    pub(crate) keys: &'a Keys,
    pub(crate) trusted: &'a Trusted,
    pub(crate) crew: CrewId,
    pub(crate) standing: &'a Standing,
}

impl Signer<'_> {
    /// Who can open the leaves of a thread: the standing devices and the papers of its two people.
    /// The leaf that says of somebody that they were removed is sealed to them once more.
    pub(super) fn audience(&self, leaf: &SealedLeaf) -> Audience {
        let of = leaf.header.of;
        let people = &self.standing.people;
        let founder = people.iter().find(|(_, known)| known.founder);
        let member = people.get(&of);
        let mut devices = self.standing.open_keys(of);
        let last = leaf.entries.iter().any(|entry| entry.kind == Remove::NAME);
        if last {
            devices.extend(self.standing.farewell_keys(of));
        }
        // Who was removed opens nothing later with the paper either.
        let member = member.filter(|known| known.standing || last);
        let papers = founder.map(|(_, known)| known.keys.open).into_iter();
        Audience {
            founder: founder.map_or_else(Vec::new, |(id, _)| self.standing.open_keys(*id)),
            member: devices,
            papers: papers.chain(member.map(|known| known.keys.open)).collect(),
        }
    }

    /// The standing devices of a thread's two people.
    pub(super) fn devices(&self, of: PersonId) -> Vec<DeviceId> {
        let is_of = |person: &PersonId| {
            *person == of || self.standing.people.get(person).is_some_and(|known| known.founder)
        };
        let devices = self.standing.devices.iter();
        let theirs = devices.filter(|(_, placed)| placed.standing && is_of(&placed.person));
        theirs.map(|(device, _)| *device).collect()
    }

    /// True for a device of the person whose device this is.
    pub(super) fn is_own(&self, device: DeviceId) -> bool {
        let own = self.trusted.certificate.person();
        self.standing.devices.get(&device).is_some_and(|placed| placed.person == own)
    }

    /// False once this device's person was removed from the crew: then nothing more is sealed to its coach.
    pub(super) fn belongs(&self) -> bool {
        let own = self.trusted.certificate.person();
        self.standing.people.get(&own).is_none_or(|known| known.standing)
    }

    /// The lane of this device in a thread.
    fn lane(&self, of: PersonId) -> Lane {
        Lane { device: self.trusted.certificate.device(), of }
    }
}

/// Cuts one leaf of each thread that something waits for; none when nothing does. The file waits in the database
/// until it lies on the shelf: sealed again it would be another.
pub(super) fn cut(store: &mut Store, signer: &Signer<'_>) -> Result<Vec<SealedName>> {
    let (own, device) = (store.own(), store.device());
    if !signer.belongs() {
        return Ok(Vec::new());
    }
    store.write(|tx| {
        share(tx, own, device)?;
        let waiting: Vec<PersonId> = tx
            .prepare_cached("SELECT DISTINCT of FROM outbox ORDER BY of")?
            .query_map([], |row| Ok(PersonId(row.get(0)?)))?
            .collect::<rusqlite::Result<_>>()?;
        let mut names = Vec::new();
        for of in waiting {
            names.extend(cut_one(tx, signer, signer.lane(of))?);
        }
        Ok(names)
    })
}

fn cut_one(tx: &Transaction<'_>, signer: &Signer<'_>, lane: Lane) -> Result<Option<SealedName>> {
    let entries = waiting(tx, lane)?;
    if entries.is_empty() {
        return Ok(None);
    }
    let certificate = signer.trusted.certificate;
    let follows = match ledger::last(tx, lane)? {
        Some((sequence, content)) => Follows { sequence, content },
        None => Follows::nothing(signer.crew, lane.of, &certificate),
    };
    let seen = ledger::seen(tx, lane)?;
    let leaf = SealedLeaf::write(certificate, (signer.crew, lane.of), follows, seen, entries);
    let name = file(tx, signer, &leaf)?;
    again::note(tx, lane.of, leaf.header.sequence, &signer.devices(lane.of))?;
    ledger::insert(tx, &leaf, Counts::Yes)?;
    ledger::posted(tx, &leaf)?;
    Ok(Some(name))
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
    ledger::add_file(tx, &name, leaf)?;
    tx.prepare_cached("INSERT OR REPLACE INTO unshelved VALUES (?1, ?2)")?
        .execute(params![name.to_string(), sealed])?;
    Ok(name)
}

/// The first entries that wait to be sent to a thread, as many as one leaf holds.
fn waiting(tx: &Transaction<'_>, lane: Lane) -> Result<Vec<Entry>> {
    let mut statement = tx.prepare_cached(
        "SELECT e.raw, e.digest FROM outbox o
         JOIN entry e ON e.device = ?1 AND e.n = o.n AND e.digest = o.digest
         WHERE o.of = ?2 ORDER BY o.n LIMIT ?3",
    )?;
    let mut rows = statement.query(params![lane.device.0, lane.of.0, ENTRIES_A_LEAF as i64])?;
    let (mut entries, mut bytes): (Vec<Entry>, usize) = (Vec::new(), 0);
    while let Some(row) = rows.next()? {
        let raw = line_in(row, 0, 1)?;
        bytes += raw.len() + 1;
        // Room for the header; the rest goes into the next leaf.
        if bytes > MAX_SEALED_BYTES - 64 * 1024 {
            break;
        }
        match Entry::read(lane.device, raw) {
            // Of two lines under one number, which a copied device wrote, the other goes into the next leaf.
            Ok(entry) if entries.last().is_some_and(|last| last.id.number == entry.id.number) => {}
            Ok(entry) => entries.push(entry),
            Err(_) => break,
        }
    }
    Ok(entries)
}
