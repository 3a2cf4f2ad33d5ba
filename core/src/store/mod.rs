//! The store: a device's truth, in SQLite. One tap is one committed transaction.

mod append;
mod connect;
mod fold;
mod people;
mod query;
mod schema;

use rusqlite::{Connection, Transaction, TransactionBehavior};

use crate::error::Result;
use crate::id::DeviceId;
use crate::journal::{Entry, Hlc};

pub(crate) use append::{Draft, Written};
pub(crate) use connect::{check, connect, is_damage, read_only, refuse_newer};
pub(crate) use fold::insert_all;
pub(crate) use people::{is_coach, people};
pub(crate) use query::{
    Logged, Query, WrittenHere, conflicts, date_of, dump, entries, has_line, journal_lines,
    last_number, latest_session, line_of, session_entries, unread, versions,
};

/// One device's database.
pub(crate) struct Store {
    connection: Connection,
    device: DeviceId,
    hlc: Hlc,
    /// How often this process has written.
    written: u64,
}

/// A state of the database: as long as it stays, nothing in there has changed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Revision {
    written: u64,
    /// SQLite's `data_version`: changes when another connection has written.
    by_others: i64,
}

impl Revision {
    /// The state after one write by this store, and nothing else.
    pub(crate) fn after_a_write(self) -> Revision {
        Revision { written: self.written + 1, ..self }
    }
}

impl Store {
    /// A device's store over an open database.
    pub(crate) fn new(connection: Connection, device: DeviceId) -> Store {
        Store { connection, device, hlc: Hlc::default(), written: 0 }
    }

    /// The connection, for reading.
    pub(crate) fn reader(&self) -> &Connection {
        &self.connection
    }

    /// The device whose journal this is.
    pub(crate) fn device(&self) -> DeviceId {
        self.device
    }

    /// The state of the database now. Whatever was read at one revision is true as long as the store
    /// has that revision.
    pub(crate) fn revision(&self) -> Result<Revision> {
        let mut statement = self.connection.prepare_cached("PRAGMA data_version")?;
        let by_others = statement.query_row([], |row| row.get(0))?;
        Ok(Revision { written: self.written, by_others })
    }

    /// How often this store has written since a revision. Asks nothing of the database.
    pub(crate) fn writes_since(&self, revision: Revision) -> u64 {
        self.written - revision.written
    }

    /// Writes in one transaction: when this returns it is on disk, all of it, or none is. Nothing else
    /// writes to an open database.
    pub(crate) fn write<T>(
        &mut self,
        work: impl FnOnce(&Transaction<'_>) -> Result<T>,
    ) -> Result<T> {
        let tx = self.connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        let done = work(&tx)?;
        tx.commit()?;
        self.written += 1;
        Ok(done)
    }

    /// Goes on from the latest logical time seen in other journals.
    pub(crate) fn observe(&mut self, entries: &[Entry], wall_ms: i64) {
        let times = entries.iter().map(|entry| entry.hlc);
        self.hlc = times.fold(self.hlc, |now, hlc| now.observe(hlc, wall_ms));
    }

    /// Goes on from a logical time.
    pub(crate) fn resume(&mut self, hlc: Hlc) {
        self.hlc = hlc;
    }

    /// Drops what is folded and folds the whole journal again.
    pub(crate) fn refold(&mut self) -> Result<()> {
        self.write(|tx| {
            schema::unfold(tx)?;
            fold::refold_all(tx)
        })
    }

    /// Leaves one tidy file behind.
    pub(crate) fn close(self) -> Result<()> {
        self.connection.execute_batch("PRAGMA optimize; PRAGMA wal_checkpoint(TRUNCATE);")?;
        self.connection.close().map_err(|(_, error)| error.into())
    }
}
