//! Reading what can still be read from a damaged database.

use std::collections::BTreeMap;
use std::path::Path;

use rusqlite::config::DbConfig;
use rusqlite::{Connection, OpenFlags, params};

use crate::id::DeviceId;
use crate::journal::{Entry, EntryId, line_digest};

const FORWARD: &str = "SELECT device, n, digest, raw FROM entry ORDER BY device, n, digest";
const BACKWARD: &str =
    "SELECT device, n, digest, raw FROM entry ORDER BY device DESC, n DESC, digest DESC";

/// The entries of a damaged file that are as they were written, in the order of their identities: what
/// lies before the first bad page, behind the last, and between them. The file is only read.
pub(crate) fn salvaged(path: &Path) -> Vec<Entry> {
    let mut found = Found::default();
    if let Ok(damaged) = Connection::open_with_flags(path, OpenFlags::SQLITE_OPEN_READ_ONLY) {
        // Closing would write the log into the file.
        let _ = damaged.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, true);
        found.scan(&damaged, FORWARD);
        found.scan(&damaged, BACKWARD);
        found.between(&damaged);
    }
    found.entries.into_values().collect()
}

#[derive(Default)]
struct Found {
    entries: BTreeMap<(EntryId, i64), Entry>,
    /// The highest number seen of each device, readable or not.
    highest: BTreeMap<DeviceId, u64>,
}

impl Found {
    /// Reads rows until the file has no more to give.
    fn scan(&mut self, damaged: &Connection, sql: &str) {
        let Ok(mut statement) = damaged.prepare(sql) else { return };
        let Ok(mut rows) = statement.query([]) else { return };
        while let Ok(Some(row)) = rows.next() {
            let (Ok(device), Ok(number)) = (row.get(0), row.get::<_, i64>(1)) else { continue };
            let (device, number) = (DeviceId(device), number.unsigned_abs());
            let highest = self.highest.entry(device).or_default();
            *highest = number.max(*highest);
            let (Ok(digest), Ok(raw)) = (row.get(2), row.get::<_, String>(3)) else { continue };
            self.keep(device, digest, &raw);
        }
    }

    /// Looks up each number that no scan came to: a page in the middle stopped both.
    fn between(&mut self, damaged: &Connection) {
        let sql = "SELECT digest, raw FROM entry WHERE device = ?1 AND n = ?2";
        let Ok(mut statement) = damaged.prepare(sql) else { return };
        for (device, highest) in self.highest.clone() {
            for number in 1..=highest {
                let id = EntryId { device, number };
                if self.entries.range((id, i64::MIN)..=(id, i64::MAX)).next().is_some() {
                    continue;
                }
                let Ok(mut rows) = statement.query(params![device.0, number as i64]) else {
                    continue;
                };
                while let Ok(Some(row)) = rows.next() {
                    if let (Ok(digest), Ok(raw)) = (row.get(0), row.get::<_, String>(1)) {
                        self.keep(device, digest, &raw);
                    }
                }
            }
        }
    }

    fn keep(&mut self, device: DeviceId, digest: i64, raw: &str) {
        if line_digest(raw) == digest
            && let Ok(entry) = Entry::read(device, raw)
        {
            self.entries.insert((entry.id, digest), entry);
        }
    }
}
