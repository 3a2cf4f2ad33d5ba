//! Appending to the device's own journal.

use std::collections::BTreeSet;

use rusqlite::{Connection, Transaction};

use super::own::Own;
use super::{Store, fold, line_in, threads};
use crate::error::{Error, Field, Result};
use crate::id::{DeviceId, RecordId};
use crate::instant::Instant;
use crate::journal::{Body, Entry, EntryId, Hlc, TakenBack, Version, body_of, raw_body_of};
use crate::say;

/// Entries just logged together, and what each says.
#[derive(Default)]
pub(crate) struct Written {
    pub(crate) entries: Vec<Entry>,
    pub(crate) bodies: Vec<Body>,
}

/// Something about to be logged.
pub(crate) struct Draft {
    record: Option<RecordId>,
    body: Body,
}

impl Draft {
    /// A new record.
    pub(crate) fn new(body: impl Into<Body>) -> Draft {
        Draft { record: None, body: body.into() }
    }

    /// A correction of a record.
    pub(crate) fn correct(record: RecordId, body: impl Into<Body>) -> Draft {
        Draft { record: Some(record), body: body.into() }
    }

    /// A correction of a record where there is one, otherwise a new one.
    pub(crate) fn new_or_corrected(record: Option<RecordId>, body: impl Into<Body>) -> Draft {
        Draft { record, body: body.into() }
    }

    /// A record taken back.
    pub(crate) fn take_back(record: RecordId) -> Draft {
        Draft { record: Some(record), body: TakenBack {}.into() }
    }
}

impl Store {
    /// Logs drafts together: when this returns they are on disk, all of them, or none is.
    pub(crate) fn append(&mut self, at: &Instant, drafts: Vec<Draft>) -> Result<Written> {
        self.append_and(at, drafts, |_| Ok(())).map(|(written, ())| written)
    }

    /// Logs drafts, and does what follows from them in the same transaction.
    pub(crate) fn append_and<T>(
        &mut self,
        at: &Instant,
        drafts: Vec<Draft>,
        follows: impl FnOnce(&Transaction<'_>) -> Result<T>,
    ) -> Result<(Written, T)> {
        if !at.is_sane() {
            return Err(Error::invalid(Field::Clock, say::device::clock_not_set()));
        }
        let (device, own, hlc) = (self.device, self.own, self.hlc);
        let (written, hlc, followed) = self.write(|tx| {
            let (written, hlc) = append(tx, (device, own), hlc, at, drafts)?;
            Ok((written, hlc, follows(tx)?))
        })?;
        self.hlc = hlc;
        Ok((written, followed))
    }
}

fn append(
    tx: &Transaction<'_>,
    (device, own): (DeviceId, Own),
    mut hlc: Hlc,
    at: &Instant,
    drafts: Vec<Draft>,
) -> Result<(Written, Hlc)> {
    let last = super::last_number(tx, device)?;
    let mut written = Written::default();
    for (Draft { record, body }, number) in drafts.into_iter().zip(last + 1..) {
        hlc = if number == last + 1 { hlc.tick(at.wall_ms) } else { hlc.next() };
        let id = EntryId { device, number };
        let heads = record.map_or(Ok(Vec::new()), |record| own_heads(tx, device, record))?;
        let before = heads.last().filter(|(_, kind, _)| kind == body.kind());
        let json = match before.and_then(|(_, _, raw)| raw_body_of(raw)) {
            Some(before) => body.encode_over(&before)?,
            None => body.encode()?,
        };
        let parents = heads.iter().map(|(version, _, _)| *version).collect();
        let entry = Entry::write(id, hlc, at, record, parents, body.kind(), json)?;
        // A screen shows the body as drafted: it must be what reading the line gives.
        debug_assert_eq!(body_of(&entry.raw).as_ref(), Some(&body));
        for of in threads::threads(tx, own, record, &body)? {
            threads::post(tx, own, (id, entry.digest()), of)?;
        }
        match record {
            Some(_) => drop(fold::insert_all(tx, std::slice::from_ref(&entry))?),
            None => fold::insert_begun(tx, &entry, &body, own.person)?,
        }
        #[cfg(feature = "planted-panic")]
        planted_panic(&entry.raw);
        written.entries.push(entry);
        written.bodies.push(body);
    }
    Ok((written, hlc))
}

/// The fault that the bindings' tests plant: in the midst of a write, with the lock held.
#[cfg(feature = "planted-panic")]
#[allow(clippy::panic, reason = "the point of it")]
fn planted_panic(line: &str) {
    if line.contains("(planted panic)") {
        panic!("a panic that a test planted");
    }
}

/// The entries of a record by `device`'s person that nobody has replaced: version, kind and line.
fn own_heads(
    tx: &Connection,
    device: DeviceId,
    record: RecordId,
) -> Result<Vec<(Version, String, String)>> {
    let mut statement = tx.prepare_cached(
        "SELECT device, n, kind, raw, digest FROM entry WHERE record = ?1
           AND (device = ?2 OR device IN (SELECT device FROM device_person WHERE person =
             (SELECT person FROM device_person WHERE device = ?2)))
         ORDER BY hlc_ms, hlc_count, device, n, digest",
    )?;
    let mut rows = statement.query([record.0, device.0])?;
    let (mut entries, mut replaced) = (Vec::new(), BTreeSet::new());
    while let Some(row) = rows.next()? {
        let (device, raw) = (DeviceId(row.get(0)?), line_in(row, 3, 4)?.to_owned());
        let id = EntryId { device, number: row.get::<_, i64>(1)?.unsigned_abs() };
        if let Ok(entry) = Entry::read(device, &raw) {
            replaced.extend(entry.parents);
        }
        entries.push((Version::of(id, row.get(4)?), row.get(2)?, raw));
    }
    entries.retain(|(version, _, _): &(Version, _, _)| !version.is_among(&replaced));
    Ok(entries)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::id::random;
    use crate::journal::Range;
    use crate::plan::{MeasuredWhen, Protocol};

    fn reading(tenths: i64) -> Body {
        let (session, piece) = (RecordId(random([1; 16])), "Calves".into());
        let (protocol, when) = (Protocol::KneeToWall, MeasuredWhen::Before);
        Range { session, piece, protocol, when, side: None, tenths, on: None }.into()
    }

    fn at(second: i64) -> Instant {
        Instant { wall_ms: second * 1000, offset_min: 0, boot_ms: 0, boot_id: "a".into() }
    }

    fn store() -> Store {
        let connection = super::super::connect(std::path::Path::new(":memory:")).unwrap().0;
        let device = DeviceId(random([7; 16]));
        Store::new(connection, device, Own { person: crate::id::PersonId(device.0), coach: false })
    }

    fn heads(store: &Store) -> Vec<(u32, i64)> {
        let read = |row: &rusqlite::Row<'_>| Ok((row.get(0)?, row.get(1)?));
        let mut statement = store.reader().prepare("SELECT heads, n FROM record").unwrap();
        statement.query_map([], read).unwrap().collect::<rusqlite::Result<_>>().unwrap()
    }

    /// Two copies of one device correct one record under one number, and one of them once more: what the
    /// other said stays, for nobody has seen and replaced it.
    #[test]
    fn a_correction_replaces_the_line_it_saw_and_not_its_namesake() {
        let mut first = store();
        let begun = first.append(&at(1), vec![Draft::new(reading(1))]).unwrap().entries;
        let record = begun[0].record;
        let mut copy = store();
        copy.write(|tx| fold::insert_all(tx, &begun)).unwrap();
        let correct = |store: &mut Store, second, tenths| {
            let drafts = vec![Draft::correct(record, reading(tenths))];
            store.append(&at(second), drafts).unwrap().entries
        };
        correct(&mut first, 2, 20);
        correct(&mut first, 3, 30);
        assert_eq!(heads(&first), [(1, 3)]);
        let others = correct(&mut copy, 2, 21);
        first.write(|tx| fold::insert_all(tx, &others)).unwrap();
        assert_eq!(heads(&first), [(2, 3)], "the copy's reading was never replaced");
        correct(&mut first, 4, 40);
        assert_eq!(heads(&first), [(1, 4)], "now it was seen");
    }
}
