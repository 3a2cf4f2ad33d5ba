//! Notes that nobody but the athlete reads. They are no entries and have numbers of their own: no leaf holds them, no
//! number is missing for them, and one that is taken back is gone.

use rusqlite::{Connection, params};
use serde::{Deserialize, Serialize};

use super::Store;
use crate::error::Result;
use crate::id::RecordId;
use crate::instant::Instant;
use crate::journal::Note;

/// A note for the athlete alone.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub(crate) struct PrivateNote {
    /// Its number among the private notes of this device.
    pub(crate) number: i64,
    /// The last entry that the device had written before it: tells which of the two undo takes back.
    pub(crate) after: u64,
    /// When it was written: milliseconds since 1970, and minutes east of UTC.
    pub(crate) wall_ms: i64,
    pub(crate) offset_min: i32,
    /// What it says, and of what.
    pub(crate) note: Note,
}

impl Store {
    /// Keeps a note for the athlete alone: when this returns, it is on disk.
    pub(crate) fn add_private(
        &mut self,
        note: Note,
        after: u64,
        at: &Instant,
    ) -> Result<PrivateNote> {
        let sql = "SELECT coalesce(max(number), 0) + 1 FROM private_note";
        let number = self.reader().query_row(sql, [], |row| row.get(0))?;
        let (wall_ms, offset_min) = (at.wall_ms, at.offset_min);
        let kept = PrivateNote { number, after, wall_ms, offset_min, note };
        self.give_back_private(std::slice::from_ref(&kept))?;
        Ok(kept)
    }

    /// Puts notes into the table, unless they are there.
    pub(crate) fn give_back_private(&mut self, notes: &[PrivateNote]) -> Result<()> {
        self.write(|tx| {
            let sql = "INSERT OR IGNORE INTO private_note VALUES (?1, ?2, ?3)";
            let mut statement = tx.prepare_cached(sql)?;
            for kept in notes {
                let said = serde_json::to_string(kept)?;
                statement.execute(params![kept.number, kept.note.session.0, said])?;
            }
            Ok(())
        })
    }

    /// Drops a note.
    pub(crate) fn drop_private(&mut self, number: i64) -> Result<()> {
        self.write(|tx| {
            let sql = "DELETE FROM private_note WHERE number = ?1";
            tx.prepare_cached(sql)?.execute([number])?;
            Ok(())
        })
    }
}

/// The private notes of a session, or all of them, in the order they were written.
pub(crate) fn private_notes(
    connection: &Connection,
    session: Option<RecordId>,
) -> Result<Vec<PrivateNote>> {
    let sql = "SELECT said FROM private_note WHERE ?1 IS NULL OR session = ?1 ORDER BY number";
    let mut statement = connection.prepare_cached(sql)?;
    let mut rows = statement.query([session.map(|session| session.0)])?;
    let mut notes = Vec::new();
    while let Some(row) = rows.next()? {
        notes.extend(serde_json::from_str(row.get_ref(0)?.as_str().unwrap_or_default()));
    }
    Ok(notes)
}

/// The number of the last one; 0 before the first.
pub(crate) fn last_private(connection: &Connection) -> Result<i64> {
    let sql = "SELECT coalesce(max(number), 0) FROM private_note";
    Ok(connection.prepare_cached(sql)?.query_row([], |row| row.get(0))?)
}
