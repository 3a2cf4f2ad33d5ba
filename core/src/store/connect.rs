//! Opening a database file and checking it.

use std::fs::{File, OpenOptions};
use std::io::{ErrorKind, Read};
use std::path::Path;

use percent_encoding::{AsciiSet, NON_ALPHANUMERIC, percent_encode};
use rusqlite::config::DbConfig;
use rusqlite::{Connection, ErrorCode, OpenFlags};

use super::schema;
use crate::error::{Error, Result};
use crate::journal::line_digest;
use crate::say;

/// Refuses a file that a newer version wrote, without opening it.
pub(crate) fn refuse_newer(path: &Path) -> Result<()> {
    let mut head = Vec::new();
    if let Ok(file) = File::open(path) {
        file.take(100).read_to_end(&mut head).map_err(Error::file(path))?;
    }
    match schema::version_in_file(&head) {
        Some(found) if found > schema::SCHEMA_VERSION => {
            Err(Error::TooNew { found, supported: schema::SCHEMA_VERSION })
        }
        _ => Ok(()),
    }
}

/// Opens a file. Says whether it held nothing before. Nothing of what it holds is looked at: see
/// [`check`].
pub(crate) fn connect(path: &Path) -> Result<(Connection, bool)> {
    writable(path)?;
    let mut connection = Connection::open(path)?;
    // Until it is known to be ours and not newer nothing is written into it, not even on closing.
    connection.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, true)?;
    schema::prepare(&connection)?;
    let version: i64 = connection.query_row("PRAGMA user_version", [], |row| row.get(0))?;
    schema::migrate(&mut connection)?;
    connection.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, false)?;
    Ok((connection, version == 0))
}

/// A second connection to a database that keeps still: see [`super::Store::keep_still`].
pub(super) fn still(path: &Path) -> Result<Connection> {
    let path = percent_encode(path.as_os_str().as_encoded_bytes(), URI);
    let flags = OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_URI;
    let connection = Connection::open_with_flags(format!("file:{path}?immutable=1"), flags)?;
    connection.execute_batch("PRAGMA cell_size_check = ON;")?;
    Ok(connection)
}

/// What is written otherwise in the path of a URI.
const URI: &AsciiSet = &NON_ALPHANUMERIC.remove(b'/').remove(b'.').remove(b'-').remove(b'_');

/// Makes sure that a database's files can be written, where they are: SQLite would open one that cannot,
/// and make files beside it that cannot be written even when it can again.
fn writable(path: &Path) -> Result<()> {
    for suffix in ["", "-wal"] {
        let mut name = path.as_os_str().to_owned();
        name.push(suffix);
        let path = Path::new(&name);
        match OpenOptions::new().write(true).open(path) {
            Err(error) if error.kind() != ErrorKind::NotFound => {
                return Err(Error::file(path)(error));
            }
            _ => {}
        }
    }
    Ok(())
}

/// Looks for damage: in SQLite's own structure, in indexes that do not match their tables, and in
/// the journal's lines, each against the digest it was stored with. It ends early when it is stopped.
pub(crate) fn check(connection: &Connection, stopped: &dyn Fn() -> bool) -> Result<()> {
    let found: String = connection.query_row("PRAGMA integrity_check(1)", [], |row| row.get(0))?;
    if found != "ok" {
        return Err(damaged(&found));
    }
    if !schema::is_ours(connection)? {
        return Err(damaged(say::device::tables_altered()));
    }
    let mut statement = connection.prepare("SELECT raw, digest FROM entry")?;
    let mut rows = statement.query([])?;
    while let Some(row) = rows.next()?
        && !stopped()
    {
        let whole = row.get_ref(0)?.as_str().is_ok_and(|raw| Ok(line_digest(raw)) == row.get(1));
        if !whole {
            return Err(altered());
        }
    }
    Ok(())
}

/// A line is not as it was written.
fn altered() -> Error {
    damaged(say::device::entry_altered())
}

fn damaged(found: &str) -> Error {
    Error::Sqlite(corrupt(found))
}

fn corrupt(found: &str) -> rusqlite::Error {
    let code = rusqlite::ffi::Error::new(rusqlite::ffi::SQLITE_CORRUPT);
    rusqlite::Error::SqliteFailure(code, Some(found.to_owned()))
}

/// A line in a row, held against the digest it was stored with: whatever reads a line reads it through this,
/// so that nothing is shown, folded or sent on that is not what was written.
pub(crate) fn line_in<'row>(
    row: &'row rusqlite::Row<'_>,
    raw: usize,
    digest: usize,
) -> rusqlite::Result<&'row str> {
    let altered = || corrupt(say::device::entry_altered());
    let line = row.get_ref(raw)?.as_str().map_err(|_| altered())?;
    if line_digest(line) == row.get::<_, i64>(digest)? { Ok(line) } else { Err(altered()) }
}

/// True for an error that means the file itself is damaged.
pub(crate) fn is_damage(error: &Error) -> bool {
    let Error::Sqlite(error) = error else { return false };
    // What is asked never changes, nor the types of what is there: where they do not fit, the file has
    // changed.
    if matches!(
        error,
        rusqlite::Error::SqlInputError { .. }
            | rusqlite::Error::Utf8Error(..)
            | rusqlite::Error::FromSqlConversionFailure(..)
            | rusqlite::Error::InvalidColumnType(..)
            | rusqlite::Error::IntegralValueOutOfRange(..)
    ) {
        return true;
    }
    matches!(error.sqlite_error_code(), Some(ErrorCode::DatabaseCorrupt | ErrorCode::NotADatabase))
}
