//! The last exchange that brought all there was: when it was, and what was logged that none has brought yet.

use std::collections::BTreeSet;

use rusqlite::{Connection, OptionalExtension, Transaction, params};

use super::ledger::{Holds, holds};
use crate::error::Result;
use crate::id::{DeviceId, PersonId};
use crate::instant::Instant;

/// One's last leaf in each thread, as it is when an exchange works out what to bring: what is cut after that waits for the
/// next.
pub(super) fn ends(connection: &Connection, own: DeviceId) -> Result<Vec<(PersonId, i64)>> {
    let sql = "SELECT of, max(sequence) FROM leaf WHERE device = ?1 GROUP BY of";
    let mut statement = connection.prepare_cached(sql)?;
    let rows = statement.query_map([own.0], |row| Ok((PersonId(row.get(0)?), row.get(1)?)))?;
    Ok(rows.collect::<rusqlite::Result<_>>()?)
}

/// Notes one that ended now and brought everything up to these leaves.
pub(crate) fn note_exchange(
    tx: &Transaction<'_>,
    brought: &[(PersonId, i64)],
    at: &Instant,
) -> Result<()> {
    let sql = "INSERT OR REPLACE INTO exchanged VALUES (1, ?1, ?2)";
    tx.prepare_cached(sql)?.execute(params![at.wall_ms, at.offset_min])?;
    let mut statement = tx.prepare_cached("INSERT OR REPLACE INTO brought VALUES (?1, ?2)")?;
    for (of, sequence) in brought {
        statement.execute(params![of.0, sequence])?;
    }
    Ok(())
}

/// When that was, by the wall clock; none where nobody knows of one.
pub(crate) fn last_exchange(connection: &Connection) -> Result<Option<Instant>> {
    let read = |row: &rusqlite::Row<'_>| {
        let (wall_ms, offset_min) = (row.get(0)?, row.get(1)?);
        Ok(Instant { wall_ms, offset_min, boot_ms: 0, boot_id: String::new() })
    };
    let sql = "SELECT wall_ms, offset_min FROM exchanged";
    Ok(connection.prepare_cached(sql)?.query_row([], read).optional()?)
}

/// How many entries of one's own wait: those in no leaf yet, and those in leaves that none has brought. What is withheld
/// waits for nothing.
pub(crate) fn waiting(connection: &Connection, own: DeviceId) -> Result<usize> {
    let mut statement = connection.prepare_cached("SELECT n, digest FROM outbox")?;
    let uncut =
        statement.query_map([], |row| Ok((row.get::<_, i64>(0)?.unsigned_abs(), row.get(1)?)))?;
    let mut waiting: BTreeSet<Holds> = uncut.collect::<rusqlite::Result<_>>()?;
    let sql = "SELECT l.holds FROM leaf l LEFT JOIN brought b ON b.of = l.of
               WHERE l.device = ?1 AND l.sequence > coalesce(b.sequence, 0)";
    let mut statement = connection.prepare_cached(sql)?;
    let mut rows = statement.query([own.0])?;
    while let Some(row) = rows.next()? {
        waiting.extend(holds(row.get_ref(0)?.as_blob().unwrap_or_default()));
    }
    Ok(waiting.len())
}
