//! Reading what can still be read from a damaged database.

use std::cmp::Ordering;
use std::collections::BTreeMap;
use std::path::Path;

use rusqlite::config::DbConfig;
use rusqlite::{Connection, OpenFlags, Row, params};

use crate::error::Result;
use crate::id::DeviceId;
use crate::journal::{Entry, EntryId, line_digest};

const FORWARD: &str = "SELECT device, n, digest, raw FROM entry ORDER BY device, n, digest";
const BACKWARD: &str =
    "SELECT device, n, digest, raw FROM entry ORDER BY device DESC, n DESC, digest DESC";
const ONE: &str = "SELECT device, n, digest, raw FROM entry WHERE device = ?1 AND n = ?2";

/// Gives the entries of a damaged file that are as they were written: what lies before the first bad page,
/// behind the last, and between them. One may be given twice. Nothing is written into the file.
pub(crate) fn salvage(path: &Path, give: impl FnMut(Entry) -> Result<()>) -> Result<()> {
    let flags = OpenFlags::SQLITE_OPEN_READ_WRITE;
    let Ok(damaged) = Connection::open_with_flags(path, flags) else { return Ok(()) };
    // Closing would write the log into the file.
    let _ = damaged.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, true);
    let _ = damaged.execute_batch("PRAGMA locking_mode = EXCLUSIVE; PRAGMA query_only = ON;");
    let mut found = Found { give, highest: BTreeMap::new() };
    let forward = found.scan(&damaged, FORWARD, None)?;
    if !forward.whole {
        let backward = found.scan(&damaged, BACKWARD, forward.up_to)?;
        found.between(&damaged, forward.up_to, backward.up_to)?;
    }
    Ok(())
}

/// The most numbers of a device that are looked up one by one: more than anybody logs in a hundred years.
const MOST_LOOKED_UP: usize = 5_000_000;

struct Found<Give> {
    give: Give,
    /// The highest number of each device among the entries that are as they were written.
    highest: BTreeMap<DeviceId, u64>,
}

/// How far a scan came.
struct Scanned {
    /// The last entry it met.
    up_to: Option<EntryId>,
    /// True when nothing stopped it.
    whole: bool,
}

impl<Give: FnMut(Entry) -> Result<()>> Found<Give> {
    /// Reads rows until the file has no more to give, or `end` is met.
    fn scan(&mut self, damaged: &Connection, sql: &str, end: Option<EntryId>) -> Result<Scanned> {
        let mut scanned = Scanned { up_to: None, whole: false };
        let Ok(mut statement) = damaged.prepare(sql) else { return Ok(scanned) };
        let Ok(mut rows) = statement.query([]) else { return Ok(scanned) };
        loop {
            match rows.next() {
                Ok(Some(row)) => scanned.up_to = self.row(row)?.or(scanned.up_to),
                Ok(None) => scanned.whole = true,
                Err(_) => return Ok(scanned),
            }
            if scanned.whole || end.zip(scanned.up_to).is_some_and(|(end, up_to)| up_to < end) {
                return Ok(scanned);
            }
        }
    }

    /// Looks up each number that no scan came to: a page in the middle stopped both.
    fn between(
        &mut self,
        damaged: &Connection,
        forward: Option<EntryId>,
        backward: Option<EntryId>,
    ) -> Result<()> {
        let Ok(mut statement) = damaged.prepare(ONE) else { return Ok(()) };
        for (device, highest) in self.highest.clone() {
            let from = forward.map_or(1, |forward| match device.cmp(&forward.device) {
                Ordering::Less => u64::MAX,
                Ordering::Equal => forward.number,
                Ordering::Greater => 1,
            });
            let to = backward.map_or(highest, |backward| match device.cmp(&backward.device) {
                Ordering::Less => highest,
                Ordering::Equal => backward.number.min(highest),
                Ordering::Greater => 0,
            });
            // A number may be as high as somebody hostile likes.
            for number in (from..=to).take(MOST_LOOKED_UP) {
                let Ok(mut rows) = statement.query(params![device.0, number as i64]) else {
                    continue;
                };
                while let Ok(Some(row)) = rows.next() {
                    self.row(row)?;
                }
            }
        }
        Ok(())
    }

    /// Gives what a row holds when it is as it was written. Says which entry it is, if that can be read.
    fn row(&mut self, row: &Row<'_>) -> Result<Option<EntryId>> {
        let (Ok(device), Ok(number)) = (row.get(0), row.get::<_, i64>(1)) else { return Ok(None) };
        let id = EntryId { device: DeviceId(device), number: number.unsigned_abs() };
        if let (Ok(digest), Ok(raw)) = (row.get::<_, i64>(2), row.get::<_, String>(3))
            && line_digest(&raw) == digest
            && let Ok(entry) = Entry::read(id.device, &raw)
        {
            let highest = self.highest.entry(id.device).or_default();
            *highest = id.number.max(*highest);
            (self.give)(entry)?;
        }
        Ok(Some(id))
    }
}
