//! The tables, and the ladder of steps that leads to them.
//!
//! Four kinds of table. `entry`, `held` and `outbox` are the journal, `private_note` is the athlete's alone, and `leaf`,
//! `file`, `certificate` and `stop` say how entries travel: never dropped. `left_alone`, `looked`, `exchanged` and `brought` may be lost. `device_person` and `person` are worked out from who signed for whom. `record` is
//! folded from all that and may be dropped and made again at any time.

use rusqlite::config::DbConfig;
use rusqlite::{Connection, Transaction, TransactionBehavior};

use crate::error::{Error, Result};

/// "Hfst": marks the file as ours (SQLite's `application_id`, at byte 68 of the file).
pub(crate) const APPLICATION_ID: i64 = 0x4866_7374;

/// The newest schema. Version 1: the journal. Version 2: what is folded from it. Version 3: an index
/// for the latest records of a subject in whatever scheme. Version 4: one for the latest time in any leaf. Version 5: records in logical time.
/// Version 6: leaves in threads, who signed for whom, what waits to be sent. Version 7: what was said of people, found at once; whom a
/// lane was sealed to. Version 8: private notes; files left alone. Version 9: how large a file is.
/// Version 10: which parts of lanes a carrier holds whole. Version 11: the last exchange.
pub(crate) const SCHEMA_VERSION: i64 = 11;

const JOURNAL_SQL: &str = "
CREATE TABLE entry (
  -- the writer, a UUID of 16 bytes, and its number in the writer's journal
  device BLOB NOT NULL,
  n INTEGER NOT NULL,
  -- first 8 bytes of the SHA-256 of raw: tells the branches of a forked journal apart
  digest INTEGER NOT NULL,
  hlc_ms INTEGER NOT NULL,
  hlc_count INTEGER NOT NULL,
  -- milliseconds since 1970, and minutes east of UTC, as the writer's wall clock had it
  wall_ms INTEGER NOT NULL,
  offset_min INTEGER NOT NULL,
  record BLOB NOT NULL,
  kind TEXT NOT NULL,
  -- the line as it was written, without its newline
  raw TEXT NOT NULL,
  PRIMARY KEY (device, n, digest)
) STRICT, WITHOUT ROWID;
CREATE INDEX entry_by_record ON entry (record);
CREATE TABLE leaf (
  device BLOB NOT NULL,
  sequence INTEGER NOT NULL,
  -- SHA-256 of the whole file, in hexadecimal
  hash TEXT NOT NULL,
  first INTEGER NOT NULL,
  last INTEGER NOT NULL,
  -- the first line of the file, as it was written
  header TEXT NOT NULL,
  hlc_ms INTEGER NOT NULL,
  hlc_count INTEGER NOT NULL,
  PRIMARY KEY (device, sequence, hash)
) STRICT;
";

const FOLDED_SQL: &str = "
CREATE TABLE record (
  record BLOB NOT NULL,
  -- whose record it is; the device's own identity while its profile has not arrived
  person BLOB NOT NULL,
  kind TEXT NOT NULL,
  -- the version shown
  device BLOB NOT NULL,
  n INTEGER NOT NULL,
  digest INTEGER NOT NULL,
  -- when its first version was written, milliseconds since 1970
  first_ms INTEGER NOT NULL,
  -- the same in logical time, which no clock that is set back or ahead puts out of order
  placed INTEGER NOT NULL,
  session BLOB,
  subject TEXT NOT NULL,
  scheme TEXT NOT NULL,
  -- versions nobody has replaced; more than one is a conflict
  heads INTEGER NOT NULL,
  taken_back INTEGER NOT NULL,
  PRIMARY KEY (record, person)
) STRICT, WITHOUT ROWID;
CREATE INDEX record_by_subject ON record (kind, person, subject, scheme, placed);
CREATE INDEX record_by_session ON record (session, kind) WHERE session IS NOT NULL;
CREATE INDEX record_in_conflict ON record (person) WHERE heads > 1;
";

const DEVICE_PERSON_SQL: &str = "
CREATE TABLE device_person (
  device BLOB NOT NULL PRIMARY KEY,
  person BLOB NOT NULL
) STRICT;
";

const LATEST_SQL: &str = "
CREATE INDEX record_by_time ON record (kind, person, subject, placed);
";

const LEAF_TIME_SQL: &str = "
CREATE INDEX leaf_by_time ON leaf (hlc_ms, hlc_count);
";

const THREADS_SQL: &str = "
DROP TABLE leaf;
CREATE TABLE leaf (
  device BLOB NOT NULL,
  -- the member whose thread it is in
  of BLOB NOT NULL,
  sequence INTEGER NOT NULL,
  -- SHA-256 of header and entries, and that of the leaf before it
  content BLOB NOT NULL,
  previous BLOB NOT NULL,
  -- the header line as it was written
  header TEXT NOT NULL,
  -- number and digest of each entry, eight bytes each, the highest first
  holds BLOB NOT NULL,
  -- 0: it counts; 1: nobody knows its writer; 2: its device was removed; 3: its person has too many
  counts INTEGER NOT NULL,
  hlc_ms INTEGER NOT NULL,
  hlc_count INTEGER NOT NULL,
  PRIMARY KEY (device, of, sequence, content)
) STRICT;
CREATE INDEX leaf_by_time ON leaf (hlc_ms, hlc_count);
CREATE INDEX leaf_of_thread ON leaf (of, device, sequence, content);
CREATE INDEX leaf_uncounted ON leaf (device) WHERE counts != 0;
-- what was said of people: read whenever who counts is worked out
CREATE INDEX entry_of_people ON entry (device) WHERE kind = 'admit';
-- the files of leaves, by the parts of their names: a leaf that was sealed again has several
CREATE TABLE file (
  device BLOB NOT NULL,
  tag TEXT NOT NULL,
  sequence INTEGER NOT NULL,
  hash TEXT NOT NULL,
  of BLOB NOT NULL,
  content BLOB NOT NULL,
  PRIMARY KEY (device, tag, sequence, hash)
) STRICT, WITHOUT ROWID;
-- files that were cut and do not lie on the shelf yet: sealing again would give others
CREATE TABLE unshelved (
  name TEXT NOT NULL PRIMARY KEY,
  bytes BLOB NOT NULL
) STRICT;
-- own entries that no leaf of a thread holds yet
CREATE TABLE outbox (
  of BLOB NOT NULL,
  n INTEGER NOT NULL,
  digest INTEGER NOT NULL,
  PRIMARY KEY (of, n, digest)
) STRICT, WITHOUT ROWID;
-- the threads that an entry of the founder is in; a member's entry is in the member's own
CREATE TABLE heard (
  device BLOB NOT NULL,
  n INTEGER NOT NULL,
  digest INTEGER NOT NULL,
  of BLOB NOT NULL,
  PRIMARY KEY (device, n, digest, of)
) STRICT, WITHOUT ROWID;
-- entries of leaves that do not count
CREATE TABLE held (
  device BLOB NOT NULL,
  of BLOB NOT NULL,
  content BLOB NOT NULL,
  n INTEGER NOT NULL,
  digest INTEGER NOT NULL,
  raw TEXT NOT NULL,
  PRIMARY KEY (device, of, content, n, digest)
) STRICT, WITHOUT ROWID;
CREATE TABLE certificate (
  bytes BLOB NOT NULL PRIMARY KEY
) STRICT;
CREATE TABLE stop (
  bytes BLOB NOT NULL PRIMARY KEY
) STRICT;
CREATE TABLE person (
  person BLOB NOT NULL PRIMARY KEY,
  -- 1 for the coach who founded the crew
  coach INTEGER NOT NULL,
  -- 0 once they were removed
  standing INTEGER NOT NULL,
  -- what the coach calls them
  label TEXT
) STRICT;
DELETE FROM device_person;
";

const PEOPLE_SQL: &str = "
DROP INDEX entry_of_people;
CREATE INDEX entry_of_people ON entry (device) WHERE kind IN ('admit', 'remove', 'stop');
ALTER TABLE held ADD COLUMN kind TEXT NOT NULL DEFAULT '';
-- until now nothing else was said of people
UPDATE held SET kind = 'admit' WHERE raw LIKE '%\"k\":\"admit\"%';
CREATE INDEX entry_of_forgotten ON entry (device) WHERE kind = 'forgot';
CREATE INDEX held_of_people ON held (device) WHERE kind IN ('admit', 'remove', 'stop');
-- the writer's signature: with it a leaf can be sealed again for a device that came later. None on one's own, which is signed anew
ALTER TABLE leaf ADD COLUMN signature BLOB;
-- others' leaves that were sealed again here, each for a device
CREATE TABLE sealed_for (
  of BLOB NOT NULL,
  content BLOB NOT NULL,
  device BLOB NOT NULL,
  PRIMARY KEY (of, content, device)
) STRICT, WITHOUT ROWID;
-- the devices that one's own leaves of a thread are sealed to
CREATE TABLE sealed_to (
  of BLOB NOT NULL,
  device BLOB NOT NULL,
  -- the first leaf that was
  since INTEGER NOT NULL,
  -- 1 once it was given what was sealed before that
  given INTEGER NOT NULL,
  PRIMARY KEY (of, device)
) STRICT, WITHOUT ROWID;
";

const UNFOLD_SQL: &str = "
DROP TABLE record;
";

/// Sets what must be set on every connection.
pub(crate) fn prepare(connection: &Connection) -> Result<()> {
    // Whoever holds the home is alone with the file. So the log's index lies in this process's own memory,
    // not in a mapped file, which ends the program when the disk is too full to back it.
    // `fullfsync` makes a commit reach the platter on Apple systems, where fsync alone does not.
    connection.execute_batch(
        "PRAGMA busy_timeout = 5000;
         PRAGMA locking_mode = EXCLUSIVE;
         PRAGMA journal_mode = WAL;
         PRAGMA synchronous = FULL;
         PRAGMA fullfsync = ON;
         PRAGMA checkpoint_fullfsync = ON;
         PRAGMA foreign_keys = ON;
         PRAGMA trusted_schema = OFF;
         PRAGMA cell_size_check = ON;
         PRAGMA temp_store = MEMORY;
         PRAGMA journal_size_limit = 2097152;",
    )?;
    // SQLite built with STAT4 would compile a cached statement again whenever a bound value
    // changes; with a stable plan a screen takes a fifth of the time (measured).
    connection.set_db_config(DbConfig::SQLITE_DBCONFIG_ENABLE_QPSG, true)?;
    connection.set_prepared_statement_cache_capacity(64);
    Ok(())
}

/// Climbs the ladder, one transaction a step.
pub(crate) fn migrate(connection: &mut Connection) -> Result<()> {
    let found: i64 = connection.query_row("PRAGMA user_version", [], |row| row.get(0))?;
    if found > SCHEMA_VERSION {
        return Err(Error::TooNew { found, supported: SCHEMA_VERSION });
    }
    for version in found + 1..=SCHEMA_VERSION {
        let tx = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        // Another process may have climbed meanwhile.
        let now: i64 = tx.query_row("PRAGMA user_version", [], |row| row.get(0))?;
        if now < version {
            step(&tx, version)?;
            tx.pragma_update(None, "user_version", version)?;
            tx.commit()?;
        }
    }
    Ok(())
}

fn step(tx: &Transaction<'_>, version: i64) -> Result<()> {
    match version {
        1 => {
            tx.pragma_update(None, "application_id", APPLICATION_ID)?;
            tx.execute_batch(JOURNAL_SQL)?;
        }
        // Folded with the last step: what folds knows its tables.
        2 => {
            tx.execute_batch(FOLDED_SQL)?;
            tx.execute_batch(DEVICE_PERSON_SQL)?;
        }
        3 => tx.execute_batch(LATEST_SQL)?,
        4 => tx.execute_batch(LEAF_TIME_SQL)?,
        // What is folded is made again with the last step.
        5 => unfold(tx)?,
        6 => tx.execute_batch(THREADS_SQL)?,
        7 => {
            tx.execute_batch(PEOPLE_SQL)?;
            unfold(tx)?;
            super::fold::refold_all(tx)?;
        }
        8 => tx.execute_batch(super::later::ALONE_SQL)?,
        9 => tx.execute_batch(super::later::BYTES_SQL)?,
        10 => tx.execute_batch(super::later::LOOKED_SQL)?,
        _ => tx.execute_batch(super::later::EXCHANGED_SQL)?,
    }
    Ok(())
}

/// Empties what is folded by making it again.
pub(crate) fn unfold(tx: &Transaction<'_>) -> Result<()> {
    tx.execute_batch(UNFOLD_SQL)?;
    tx.execute_batch(FOLDED_SQL)?;
    tx.execute_batch(LATEST_SQL)?;
    Ok(())
}

/// True when the tables and indexes are those that this version makes.
pub(crate) fn is_ours(connection: &Connection) -> Result<bool> {
    let mut fresh = Connection::open_in_memory()?;
    migrate(&mut fresh)?;
    Ok(made_of(connection)? == made_of(&fresh)?)
}

fn made_of(connection: &Connection) -> Result<Vec<String>> {
    // What SQLite keeps for itself has other names.
    let sql = "SELECT type || ' ' || name || ' ' || tbl_name || ' ' || coalesce(sql, '') FROM sqlite_master
               WHERE name NOT LIKE 'sqlite_stat%' ORDER BY 1";
    let mut statement = connection.prepare(sql)?;
    let rows = statement.query_map([], |row| row.get(0))?;
    Ok(rows.collect::<rusqlite::Result<_>>()?)
}

/// The schema version in the first 100 bytes of a database file (SQLite file format, section 1.3:
/// a big-endian integer at byte 60), read without opening it: a file that is too new stays
/// untouched.
pub(crate) fn version_in_file(head: &[u8]) -> Option<i64> {
    let field = head.get(60..64)?;
    head.starts_with(b"SQLite format 3\0").then_some(())?;
    Some(i64::from(u32::from_be_bytes([field[0], field[1], field[2], field[3]])))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Frozen: version 1 as it was. Never edit it to make a test pass.
    const V1: &str = "
CREATE TABLE entry (
  -- the writer, a UUID of 16 bytes, and its number in the writer's journal
  device BLOB NOT NULL,
  n INTEGER NOT NULL,
  -- first 8 bytes of the SHA-256 of raw: tells the branches of a forked journal apart
  digest INTEGER NOT NULL,
  hlc_ms INTEGER NOT NULL,
  hlc_count INTEGER NOT NULL,
  -- milliseconds since 1970, and minutes east of UTC, as the writer's wall clock had it
  wall_ms INTEGER NOT NULL,
  offset_min INTEGER NOT NULL,
  record BLOB NOT NULL,
  kind TEXT NOT NULL,
  -- the line as it was written, without its newline
  raw TEXT NOT NULL,
  PRIMARY KEY (device, n, digest)
) STRICT, WITHOUT ROWID;
CREATE INDEX entry_by_record ON entry (record);
CREATE TABLE leaf (
  device BLOB NOT NULL,
  sequence INTEGER NOT NULL,
  -- SHA-256 of the whole file, in hexadecimal
  hash TEXT NOT NULL,
  first INTEGER NOT NULL,
  last INTEGER NOT NULL,
  -- the first line of the file, as it was written
  header TEXT NOT NULL,
  hlc_ms INTEGER NOT NULL,
  hlc_count INTEGER NOT NULL,
  PRIMARY KEY (device, sequence, hash)
) STRICT;
PRAGMA user_version = 1;
";

    fn schema(connection: &Connection) -> Vec<String> {
        made_of(connection).unwrap()
    }

    #[test]
    fn a_migrated_database_equals_a_fresh_one() {
        let mut fresh = Connection::open_in_memory().unwrap();
        migrate(&mut fresh).unwrap();
        let mut old = Connection::open_in_memory().unwrap();
        old.execute_batch(V1).unwrap();
        let insert =
            "INSERT INTO entry VALUES (zeroblob(16), 1, ?1, 3, 4, 5, 6, zeroblob(16), 'k', '{}')";
        old.execute(insert, [crate::journal::line_digest("{}")]).unwrap();
        migrate(&mut old).unwrap();
        assert_eq!(schema(&old), schema(&fresh));
        migrate(&mut old).unwrap();
        let kept: i64 = old.query_row("SELECT count(*) FROM entry", [], |row| row.get(0)).unwrap();
        assert_eq!(kept, 1);
        let tx = old.transaction().unwrap();
        unfold(&tx).unwrap();
        tx.commit().unwrap();
        assert_eq!(schema(&old), schema(&fresh));
    }

    #[test]
    fn a_newer_database_is_refused() {
        let mut newer = Connection::open_in_memory().unwrap();
        newer.pragma_update(None, "user_version", SCHEMA_VERSION + 1).unwrap();
        match migrate(&mut newer) {
            Err(Error::TooNew { found, supported: SCHEMA_VERSION }) => {
                assert_eq!(found, SCHEMA_VERSION + 1);
            }
            other => panic!("{other:?}"),
        }
        assert!(schema(&newer).is_empty());
    }
}
