//! The last exchange that went to its end: when, and how far one's own log went with it.

use rusqlite::{Connection, OptionalExtension, Transaction, params};

use crate::error::Result;
use crate::id::DeviceId;
use crate::instant::Instant;

/// Notes one that ended now, and that brought all there was.
pub(crate) fn note_exchange(tx: &Transaction<'_>, own: DeviceId, at: &Instant) -> Result<()> {
    let sql = "INSERT OR REPLACE INTO exchanged
               SELECT 1, ?1, ?2, coalesce(max(n), 0) FROM entry WHERE device = ?3";
    tx.prepare_cached(sql)?.execute(params![at.wall_ms, at.offset_min, own.0])?;
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

/// How many entries of one's own no exchange has brought yet.
pub(crate) fn waiting(connection: &Connection, own: DeviceId) -> Result<u64> {
    let sql = "SELECT count(DISTINCT n) FROM entry
               WHERE device = ?1 AND n > (SELECT coalesce(max(through), 0) FROM exchanged)";
    let count: i64 = connection.prepare_cached(sql)?.query_row([own.0], |row| row.get(0))?;
    Ok(count.unsigned_abs())
}
