//! The store: a device's truth, in SQLite. One tap is one committed transaction.

mod append;
mod authority;
mod connect;
mod fold;
mod later;
mod own;
mod people;
mod private;
mod query;
mod schema;
mod threads;

use std::path::Path;

use rusqlite::{Connection, Transaction, TransactionBehavior};

use crate::error::Result;
use crate::id::DeviceId;
use crate::journal::Hlc;

pub(crate) use append::{Draft, Written};
pub(crate) use authority::is_coach;
pub(crate) use connect::{check, connect, is_damage, line_in, refuse_newer};
pub(crate) use fold::{insert_all, insert_read, refold, refold_of};
pub(crate) use own::Own;
pub(crate) use people::{called, labels, people, removed};
pub(crate) use private::{PrivateNote, last_private, private_notes};
pub(crate) use query::{
    Logged, Query, WrittenHere, conflicts, date_of, dump, entries, has_line, journal_lines,
    last_number, latest_session, line_of, session_entries, unread, versions,
};

pub(crate) use threads::{hear, post_again, share};

/// One device's database.
pub(crate) struct Store {
    connection: Connection,
    device: DeviceId,
    own: Own,
    hlc: Hlc,
    /// How often this process has written.
    written: u64,
}

/// A state of the database: as long as it stays, nothing in there has changed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Revision {
    written: u64,
}

impl Revision {
    /// The state after one write by this store, and nothing else.
    pub(crate) fn after_a_write(self) -> Revision {
        Revision { written: self.written + 1 }
    }
}

impl Store {
    /// A device's store over an open database.
    pub(crate) fn new(connection: Connection, device: DeviceId, own: Own) -> Store {
        Store { connection, device, own, hlc: Hlc::default(), written: 0 }
    }

    /// The connection, for reading.
    pub(crate) fn reader(&self) -> &Connection {
        &self.connection
    }

    /// The device whose journal this is.
    pub(crate) fn device(&self) -> DeviceId {
        self.device
    }

    /// Whose device it is.
    pub(crate) fn own(&self) -> Own {
        self.own
    }

    /// The state of the database now. Whatever was read at one revision is true as long as the store
    /// has that revision: nobody else writes to a home that is held.
    pub(crate) fn revision(&self) -> Revision {
        Revision { written: self.written }
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
    pub(crate) fn observe(&mut self, latest: Hlc, wall_ms: i64) {
        self.hlc = self.hlc.observe(latest, wall_ms);
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

    /// Keeps the database file as it is now until [`Store::moves_again`]: what is written meanwhile goes into
    /// the log alone. Gives a second connection, to read the file beside everything else.
    pub(crate) fn keep_still(&self, path: &Path) -> Result<Connection> {
        self.connection.execute_batch("PRAGMA wal_autocheckpoint = 0;")?;
        let all = "PRAGMA wal_checkpoint(TRUNCATE)";
        let busy: bool = self.connection.query_row(all, [], |row| row.get(0))?;
        debug_assert!(!busy, "nobody else reads or writes");
        connect::still(path)
    }

    /// Writes the file anew without what was deleted, which would stay readable in its free pages.
    pub(crate) fn tidy(&self) -> Result<()> {
        Ok(self.connection.execute_batch("VACUUM; PRAGMA wal_checkpoint(TRUNCATE);")?)
    }

    /// Lets the log be written into the file again.
    pub(crate) fn moves_again(&self) -> Result<()> {
        Ok(self.connection.execute_batch("PRAGMA wal_autocheckpoint = 1000;")?)
    }

    /// Leaves one tidy file behind. No statistics are gathered (`PRAGMA optimize`): those of a database with
    /// two entries make SQLite read every row of one with a hundred thousand.
    pub(crate) fn close(self) -> Result<()> {
        self.connection.execute_batch("PRAGMA wal_checkpoint(TRUNCATE);")?;
        self.connection.close().map_err(|(_, error)| error.into())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::id::random;
    use crate::instant::Instant;
    use crate::journal::Body;
    use crate::journal::Profile;
    use crate::mass::MassUnit;

    fn draft(number: u64) -> Draft {
        let (person, role) = (crate::id::PersonId(random([9; 16])), crate::journal::Role::Athlete);
        let (name, unit) = (format!("{number}"), MassUnit::Kg);
        Draft::new(Body::Profile(Profile { person, name, role, unit, language: None, crew: None }))
    }

    /// However much is written, the file that is looked at keeps still, and is whole; then it moves on.
    #[test]
    fn a_file_that_is_looked_at_keeps_still() {
        let home = tempfile::tempdir().unwrap();
        // A name that means something else in a URI.
        let path = home.path().join("a %20?b#c.db");
        let own = Own { person: crate::id::PersonId(random([9; 16])), coach: false };
        let mut store = Store::new(connect(&path).unwrap().0, DeviceId(random([7; 16])), own);
        let at = Instant { wall_ms: 1, offset_min: 0, boot_ms: 0, boot_id: "a".into() };
        store.append(&at, vec![draft(0)]).unwrap();
        let reader = store.keep_still(&path).unwrap();
        let before = std::fs::read(&path).unwrap();
        for number in 1..400 {
            store.append(&at, vec![draft(number)]).unwrap();
        }
        let log = std::fs::metadata(home.path().join("a %20?b#c.db-wal")).unwrap().len();
        assert!(log > 1_000 * 4096, "enough to be written into the file otherwise: {log}");
        assert_eq!(std::fs::read(&path).unwrap(), before);
        check(&reader, &|| false).unwrap();
        assert_eq!(entries(&reader).unwrap(), 1);
        drop(reader);
        store.moves_again().unwrap();
        store.append(&at, vec![draft(400)]).unwrap();
        assert!(std::fs::read(&path).unwrap() != before);
        assert_eq!(entries(store.reader()).unwrap(), 401);
    }

    /// How a query runs follows from the tables and indexes alone, and not from what a database held when it
    /// was closed: an index is used however small it was.
    #[test]
    fn a_small_database_that_was_closed_plans_as_a_large_one() {
        let home = tempfile::tempdir().unwrap();
        let path = home.path().join("holdfast.db");
        let at = Instant { wall_ms: 1, offset_min: 0, boot_ms: 0, boot_id: "a".into() };
        let device = DeviceId(random([7; 16]));
        for number in 0..4 {
            let own = Own { person: crate::id::PersonId(random([9; 16])), coach: false };
            let mut store = Store::new(connect(&path).unwrap().0, device, own);
            let plan = |sql: &str| -> Vec<String> {
                let mut statement =
                    store.reader().prepare(&format!("EXPLAIN QUERY PLAN {sql}")).unwrap();
                let rows = statement.query_map([], |row| row.get(3)).unwrap();
                rows.map(|row| row.unwrap()).collect()
            };
            assert_eq!(
                plan("SELECT raw FROM entry WHERE record = x'00'"),
                ["SEARCH entry USING INDEX entry_by_record (record=?)"]
            );
            assert_eq!(
                plan(
                    "SELECT r.n FROM record r JOIN entry e USING (device, n, digest) WHERE r.kind = 'lift' AND r.person = x'00'"
                ),
                [
                    "SEARCH r USING INDEX record_by_time (kind=? AND person=?)",
                    "SEARCH e USING PRIMARY KEY (device=? AND n=? AND digest=?)"
                ]
            );
            store.append(&at, vec![draft(number)]).unwrap();
            store.close().unwrap();
        }
    }
}
