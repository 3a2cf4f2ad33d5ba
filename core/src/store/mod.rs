//! The store: a device's truth, in SQLite. One tap is one committed transaction.

mod durable;
mod fold;
mod identity;
mod leaves;
mod lookup;
mod open;
mod query;
mod schema;

use std::path::PathBuf;

use rusqlite::{Connection, TransactionBehavior};

use crate::error::{Error, Result};
use crate::id::{CrewId, DeviceId, RecordId};
use crate::instant::Instant;
use crate::journal::{Body, Dropped, Entry, Hlc, Leaf, LeafName, Version, raw_body_of};

pub(crate) use durable::publish;
pub(crate) use identity::Identity;
pub(crate) use leaves::{ENTRIES_A_LEAF, forked, missing, names, unpublished};
pub(crate) use lookup::{
    brake, date_of, family, history, is_cleared, open_flags, people, set_done, set_seen,
};
pub(crate) use open::{DATABASE, Rebuilt, is_damage, open};
pub(crate) use query::{
    Ask, Logged, conflicts, dump, latest_session, line_of, session_entries, unread,
};

/// One device's database and its shelf of leaf files.
pub(crate) struct Store {
    connection: Connection,
    device: DeviceId,
    shelf: PathBuf,
    hlc: Hlc,
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

    /// A record taken back.
    pub(crate) fn drop(record: RecordId) -> Draft {
        Draft { record: Some(record), body: Dropped {}.into() }
    }
}

impl Store {
    /// The connection, for reading.
    pub(crate) fn reader(&self) -> &Connection {
        &self.connection
    }

    /// A number that changes when another connection has written (SQLite's `data_version`).
    pub(crate) fn data_version(&self) -> Result<i64> {
        let mut statement = self.connection.prepare_cached("PRAGMA data_version")?;
        Ok(statement.query_row([], |row| row.get(0))?)
    }

    /// Logs drafts together: when this returns they are on disk, all of them, or none is.
    pub(crate) fn log(&mut self, at: &Instant, drafts: Vec<Draft>) -> Result<Vec<Entry>> {
        if !at.is_sane() {
            let reason = "the device's clock is outside the years 1970 to 9999; set it";
            return Err(Error::invalid("clock", reason));
        }
        let tx = self.connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        let number: u64 = tx
            .prepare_cached("SELECT coalesce(max(n), 0) FROM entry WHERE device = ?1")?
            .query_row([self.device.0], |row| row.get::<_, i64>(0))?
            .unsigned_abs();
        let mut hlc = self.hlc;
        let mut entries = Vec::with_capacity(drafts.len());
        for (Draft { record, body }, number) in drafts.into_iter().zip(number + 1..) {
            hlc = hlc.tick(at.wall_ms);
            let version = Version { device: self.device, number };
            let heads =
                record.map_or(Ok(Vec::new()), |record| own_heads(&tx, self.device, record))?;
            let before = heads.last().filter(|(_, kind, _)| kind == body.kind());
            let json = match before.and_then(|(_, _, raw)| raw_body_of(raw)) {
                Some(before) => body.encode_over(&before)?,
                None => body.encode()?,
            };
            let parents = heads.iter().map(|(version, _, _)| *version).collect();
            let entry = Entry::write(version, hlc, at, record, parents, body.kind(), &json)?;
            fold::insert(&tx, &entry, Some(body))?;
            #[cfg(feature = "planted-panic")]
            planted_panic(&json);
            entries.push(entry);
        }
        tx.commit()?;
        self.hlc = hlc;
        Ok(entries)
    }

    /// Cuts everything that is not in a leaf yet into leaves and puts them on the shelf.
    pub(crate) fn cut_leaves(&mut self, crew: CrewId) -> Result<()> {
        loop {
            let tx = self.connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
            let leaf = leaves::cut(&tx, self.device, crew)?;
            tx.commit()?;
            let Some(leaf) = leaf else { return Ok(()) };
            self.shelve(&leaf.name())?;
        }
    }

    /// Takes in a leaf that arrived. Says how many of its entries were new.
    pub(crate) fn absorb(&mut self, leaf: &Leaf, bytes: &[u8], wall_ms: i64) -> Result<u64> {
        let tx = self.connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        // A leaf of one's own that one does not know: this device goes on from a backup, or was
        // copied. What it logged since is cut first, so that the other branch cannot cover it.
        // Its file is written now: once both branches lie in the table it could not be made again.
        if leaf.header.device == self.device && !leaves::is_here(&tx, leaf)? {
            while let Some(own) = leaves::cut(&tx, self.device, leaf.header.crew)? {
                durable::publish(&self.shelf, &own.name().to_string(), &own.bytes())?;
            }
        }
        let new = fold::insert_all(&tx, &leaf.entries)?;
        leaves::insert(&tx, leaf)?;
        tx.commit()?;
        durable::publish(&self.shelf, &leaf.name().to_string(), bytes)?;
        let latest = leaf.entries.iter().map(|entry| entry.hlc);
        self.hlc = latest.fold(self.hlc, |now, hlc| now.observe(hlc, wall_ms));
        Ok(new)
    }

    /// The size of a leaf's file on the shelf.
    pub(crate) fn shelved_bytes(&self, name: &LeafName) -> Option<u64> {
        std::fs::metadata(self.shelf.join(name.to_string())).ok().map(|about| about.len())
    }

    /// A leaf's file: from the shelf, or put together again from the database.
    pub(crate) fn leaf_bytes(&self, name: &LeafName) -> Result<Option<Vec<u8>>> {
        let shelved = std::fs::read(self.shelf.join(name.to_string())).ok();
        match shelved.filter(|bytes| Leaf::read(name, bytes).is_ok()) {
            Some(bytes) => Ok(Some(bytes)),
            None => leaves::bytes(&self.connection, name),
        }
    }

    fn shelve(&self, name: &LeafName) -> Result<()> {
        if let Some(bytes) = leaves::bytes(&self.connection, name)? {
            durable::publish(&self.shelf, &name.to_string(), &bytes)?;
        }
        Ok(())
    }

    /// Drops what is folded and folds the whole journal again.
    pub(crate) fn refold(&mut self) -> Result<()> {
        let tx = self.connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        schema::unfold(&tx)?;
        fold::refold_all(&tx)?;
        tx.commit()?;
        Ok(())
    }

    /// Leaves one tidy file behind.
    pub(crate) fn close(self) -> Result<()> {
        self.connection.execute_batch("PRAGMA optimize; PRAGMA wal_checkpoint(TRUNCATE);")?;
        self.connection.close().map_err(|(_, error)| error.into())
    }
}

/// The fault that the bindings' tests plant: in the midst of a write, with the lock held.
#[cfg(feature = "planted-panic")]
#[allow(clippy::panic, reason = "the point of it")]
fn planted_panic(json: &str) {
    if json.contains("(planted panic)") {
        panic!("a panic that a test planted");
    }
}

/// The versions of a record by `device`'s person that nobody has replaced: version, kind and line.
fn own_heads(
    tx: &Connection,
    device: DeviceId,
    record: RecordId,
) -> Result<Vec<(Version, String, String)>> {
    let mut statement = tx.prepare_cached(
        "SELECT device, n, kind, raw FROM entry WHERE record = ?1
           AND (device = ?2 OR device IN (SELECT device FROM device_person WHERE person =
             (SELECT person FROM device_person WHERE device = ?2)))
         ORDER BY hlc_ms, hlc_count, device, n",
    )?;
    let mut rows = statement.query([record.0, device.0])?;
    let (mut versions, mut replaced) = (Vec::new(), Vec::new());
    while let Some(row) = rows.next()? {
        let (device, raw): (_, String) = (DeviceId(row.get(0)?), row.get(3)?);
        let version = Version { device, number: row.get::<_, i64>(1)?.unsigned_abs() };
        if let Ok(entry) = Entry::read(device, &raw) {
            replaced.extend(entry.parents);
        }
        versions.push((version, row.get(2)?, raw));
    }
    versions.retain(|(version, _, _)| !replaced.contains(version));
    Ok(versions)
}
