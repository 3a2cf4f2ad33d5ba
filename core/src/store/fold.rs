//! Folding: from the set of entries to the records that screens read.
//!
//! What a record shows depends on the set of its entries alone, so leaves may arrive late, twice
//! or in any order. The entries nobody has replaced are its heads; with more than one, the latest
//! is shown and the record counts as in conflict, and a taking-back gives way to a correction.

use std::borrow::Cow;
use std::collections::{BTreeMap, BTreeSet};

use rusqlite::{OptionalExtension, Row, Transaction, params};

use super::{authority, line_in};
use crate::error::Result;
use crate::id::{DeviceId, PersonId, RecordId};
use crate::journal::{Body, Entry, EntryId, Hlc, Keys, Kind, Profile, TakenBack, Version, body_of};
use crate::planted::{Planted, planted};

/// Puts an entry of one's own that begins a record into the journal. Nothing else can be in that record, so there
/// is nothing to fold: by far the commonest case.
pub(super) fn insert_begun(
    tx: &Transaction<'_>,
    entry: &Entry,
    body: &Body,
    person: PersonId,
) -> Result<()> {
    let digest = entry.digest();
    insert_row(tx, entry, digest)?;
    let (first_ms, placed) = (entry.wall_ms, entry.hlc.place());
    let shown = Shown { digest, first_ms, placed, heads: 1, taken_back: false };
    put(tx, entry.record, person, &entry.kind, entry.id, shown, &body.keys())
}

fn insert_row(tx: &Transaction<'_>, entry: &Entry, digest: i64) -> Result<bool> {
    let device = entry.id.device;
    let changed = tx
        .prepare_cached(
            "INSERT OR IGNORE INTO entry VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)",
        )?
        .execute(params![
            device.0,
            entry.id.number as i64,
            digest,
            entry.hlc.ms,
            entry.hlc.count,
            entry.wall_ms,
            entry.offset_min,
            entry.record.0,
            entry.kind,
            entry.raw,
        ])?;
    Ok(changed > 0)
}

/// Puts entries into the journal: see [`insert_read`].
pub(crate) fn insert_all(tx: &Transaction<'_>, entries: &[Entry]) -> Result<u64> {
    insert_read(tx, entries, entries.iter().map(|entry| body_of(&entry.raw)).collect())
}

/// Puts entries, each with its body where this reader can interpret it, into the journal and folds each record they
/// touch once, whatever their number: a leaf of many entries of one record would otherwise fold it again at each. Says
/// how many were new.
pub(crate) fn insert_read(
    tx: &Transaction<'_>,
    entries: &[Entry],
    bodies: Vec<Option<Body>>,
) -> Result<u64> {
    // Of a record that nothing was said of before, all that is said of it is at hand: by far the commonest case.
    let mut begun: BTreeMap<RecordId, Vec<Candidate<'_>>> = BTreeMap::new();
    let mut touched: BTreeSet<RecordId> = BTreeSet::new();
    let mut new = 0;
    debug_assert_eq!(entries.len(), bodies.len());
    for (entry, body) in entries.iter().zip(bodies) {
        let (record, digest) = (entry.record, entry.digest());
        let begins =
            begun.contains_key(&record) || !(touched.contains(&record) || is_begun(tx, record)?);
        if !insert_row(tx, entry, digest)? {
            continue;
        }
        new += 1;
        if begins {
            begun.entry(record).or_default().push(Candidate::of(entry, body));
        } else {
            touched.insert(record);
        }
    }
    let mut fold = Fold::of(tx);
    begun.into_iter().try_for_each(|(record, entries)| fold.put(record, &entries))?;
    touched.into_iter().try_for_each(|record| fold.again(record))?;
    Ok(new)
}

fn is_begun(tx: &Transaction<'_>, record: RecordId) -> Result<bool> {
    let sql = "SELECT 1 FROM entry WHERE record = ?1";
    Ok(tx.prepare_cached(sql)?.exists([record.0])?)
}

/// Folds every record again.
pub(crate) fn refold_all(tx: &Transaction<'_>) -> Result<()> {
    let mut fold = Fold::of(tx);
    for record in ids(tx, "SELECT DISTINCT record FROM entry")? {
        fold.again(RecordId(record))?;
    }
    Ok(())
}

fn ids(tx: &Transaction<'_>, sql: &str) -> Result<Vec<uuid::Uuid>> {
    let mut statement = tx.prepare(sql)?;
    let rows = statement.query_map([], |row| row.get(0))?;
    Ok(rows.collect::<rusqlite::Result<_>>()?)
}

/// Folds every record again that some devices have written to.
pub(crate) fn refold_of(tx: &Transaction<'_>, devices: &BTreeSet<DeviceId>) -> Result<()> {
    let mut touched: BTreeSet<RecordId> = BTreeSet::new();
    let mut statement = tx.prepare_cached("SELECT DISTINCT record FROM entry WHERE device = ?1")?;
    for device in devices {
        let records = statement.query_map([device.0], |row| Ok(RecordId(row.get(0)?)))?;
        touched.extend(records.collect::<rusqlite::Result<Vec<_>>>()?);
    }
    let mut fold = Fold::of(tx);
    touched.into_iter().try_for_each(|record| fold.again(record))
}

/// Computes a record from all its entries, person by person: nobody's entry replaces another's.
pub(crate) fn refold(tx: &Transaction<'_>, record: RecordId) -> Result<()> {
    Fold::of(tx).again(record)
}

/// Whose device it is, by a certificate; the device's own identity while none is known.
fn person_of(tx: &Transaction<'_>, device: DeviceId) -> Result<PersonId> {
    if planted(Planted::PersonFromProfile) {
        let sql = "SELECT raw FROM entry WHERE device = ?1 AND kind = ?2 ORDER BY n DESC LIMIT 1";
        let key = params![device.0, Profile::NAME];
        let raw: Option<String> = tx.query_row(sql, key, |row| row.get(0)).optional()?;
        if let Some(Body::Profile(profile)) = raw.and_then(|raw| body_of(&raw)) {
            return Ok(profile.person);
        }
    }
    let mut statement = tx.prepare_cached("SELECT person FROM device_person WHERE device = ?1")?;
    let person = statement.query_row([device.0], |row| row.get(0)).optional()?;
    Ok(PersonId(person.unwrap_or(device.0)))
}

/// An entry of a record, as far as folding looks at it.
struct Candidate<'e> {
    id: EntryId,
    digest: i64,
    hlc: Hlc,
    wall_ms: i64,
    kind: Cow<'e, str>,
    /// None where this reader cannot interpret it.
    body: Option<Body>,
    parents: Cow<'e, [Version]>,
}

impl Candidate<'_> {
    fn of(entry: &Entry, body: Option<Body>) -> Candidate<'_> {
        Candidate {
            id: entry.id,
            digest: entry.digest(),
            hlc: entry.hlc,
            wall_ms: entry.wall_ms,
            kind: Cow::Borrowed(&entry.kind),
            body,
            parents: Cow::Borrowed(&entry.parents),
        }
    }

    fn in_row(row: &Row<'_>) -> rusqlite::Result<Candidate<'static>> {
        let device = DeviceId(row.get(0)?);
        let raw = line_in(row, 7, 2)?;
        let parents = Entry::read(device, raw).map(|entry| entry.parents).unwrap_or_default();
        Ok(Candidate {
            id: EntryId { device, number: row.get::<_, i64>(1)?.unsigned_abs() },
            digest: row.get(2)?,
            hlc: Hlc { ms: row.get(3)?, count: row.get(4)? },
            wall_ms: row.get(5)?,
            kind: Cow::Owned(row.get(6)?),
            body: body_of(raw),
            parents: Cow::Owned(parents),
        })
    }

    fn is_taken_back(&self) -> bool {
        self.kind == TakenBack::NAME
    }

    /// Later wins; a correction wins over a taking-back whatever the clocks say.
    fn rank(&self) -> (bool, Hlc, EntryId, i64) {
        (!self.is_taken_back(), self.hlc, self.id, self.digest)
    }
}

/// Folding of records one after the other, while who is whose stays as it is.
struct Fold<'t> {
    tx: &'t Transaction<'t>,
    /// Each device's person, and whether that is the coach: asked once.
    writers: BTreeMap<DeviceId, (PersonId, bool)>,
}

impl Fold<'_> {
    fn of<'t>(tx: &'t Transaction<'t>) -> Fold<'t> {
        Fold { tx, writers: BTreeMap::new() }
    }

    fn writer(&mut self, device: DeviceId) -> Result<(PersonId, bool)> {
        if let Some(known) = self.writers.get(&device) {
            return Ok(*known);
        }
        let person = person_of(self.tx, device)?;
        let writer = (person, authority::is_coach(self.tx, person)?);
        self.writers.insert(device, writer);
        Ok(writer)
    }

    /// Reads all entries of a record, and folds it.
    fn again(&mut self, record: RecordId) -> Result<()> {
        let mut statement = self.tx.prepare_cached(
            "SELECT device, n, digest, hlc_ms, hlc_count, wall_ms, kind, raw FROM entry WHERE record = ?1",
        )?;
        let entries: Vec<Candidate<'_>> =
            statement.query_map([record.0], Candidate::in_row)?.collect::<rusqlite::Result<_>>()?;
        self.tx.prepare_cached("DELETE FROM record WHERE record = ?1")?.execute([record.0])?;
        self.put(record, &entries)
    }

    /// Puts what a record comes to, from all its entries. Nothing is there of it.
    fn put(&mut self, record: RecordId, entries: &[Candidate<'_>]) -> Result<()> {
        let mut of_person: BTreeMap<PersonId, Vec<&Candidate<'_>>> = BTreeMap::new();
        for entry in entries {
            let writer = self.writer(entry.id.device)?;
            // What its writer may not say is kept, and never counts.
            if authority::may(self.tx, writer, (entry.id, entry.digest), entry.body.as_ref())? {
                of_person.entry(writer.0).or_default().push(entry);
            }
        }
        for (person, entries) in of_person {
            let replaced: BTreeSet<Version> =
                entries.iter().flat_map(|entry| entry.parents.iter().copied()).collect();
            let stands =
                |entry: &&&Candidate<'_>| !Version::of(entry.id, entry.digest).is_among(&replaced);
            let heads: Vec<&&Candidate<'_>> = entries.iter().filter(stands).collect();
            let Some(shown) = heads.iter().max_by_key(|entry| entry.rank()) else { continue };
            // A record taken back is looked up by what it last said.
            let said: Option<&Candidate<'_>> = if shown.is_taken_back() {
                let said = entries.iter().filter(|entry| !entry.is_taken_back());
                said.max_by_key(|entry| entry.rank()).copied()
            } else {
                Some(shown)
            };
            let Some((said, body)) = said.and_then(|said| Some((said, said.body.as_ref()?))) else {
                // Nothing this reader can interpret: kept in the journal, not shown.
                continue;
            };
            let first_ms = entries.iter().map(|entry| entry.wall_ms).min().unwrap_or_default();
            let placed = entries.iter().map(|entry| entry.hlc.place()).min().unwrap_or_default();
            let fields = Shown {
                digest: said.digest,
                first_ms,
                placed,
                heads: heads.len() as u32,
                taken_back: shown.is_taken_back(),
            };
            put(self.tx, record, person, &said.kind, said.id, fields, &body.keys())?;
        }
        Ok(())
    }
}

struct Shown {
    digest: i64,
    first_ms: i64,
    placed: i64,
    heads: u32,
    taken_back: bool,
}

fn put(
    tx: &Transaction<'_>,
    record: RecordId,
    person: PersonId,
    kind: &str,
    id: EntryId,
    shown: Shown,
    keys: &Keys,
) -> Result<()> {
    tx.prepare_cached(
        "INSERT OR REPLACE INTO record VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13)",
    )?
    .execute(params![
        record.0,
        person.0,
        kind,
        id.device.0,
        id.number as i64,
        shown.digest,
        shown.first_ms,
        shown.placed,
        keys.session.map(|session| session.0),
        keys.subject,
        keys.scheme,
        shown.heads,
        shown.taken_back,
    ])?;
    Ok(())
}
