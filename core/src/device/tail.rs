//! The tail: a second copy of the entries that no leaf holds yet, so that a rotten page of the database
//! loses none of them. It is appended to without a flush of its own: what the database has on disk it
//! has, and a rotten page is found later than the system writes files out.

use std::fs::{File, OpenOptions};
use std::io::Write;
use std::path::{Path, PathBuf};

use crate::id::DeviceId;
use crate::journal::{Entry, line_digest};

const FILE: &str = "tail.jsonl";

/// The copy beside a database. It never stands in the way of a tap: what cannot be copied is on disk.
pub(crate) struct Tail {
    path: PathBuf,
    file: Option<File>,
}

impl Tail {
    /// The copy in a home folder.
    pub(crate) fn of(home: &Path) -> Tail {
        Tail { path: home.join(FILE), file: None }
    }

    /// Adds entries that were just committed.
    pub(crate) fn add(&mut self, entries: &[Entry]) {
        let line =
            |entry: &Entry| format!("{} {:016x} {}\n", entry.id.device, entry.digest(), entry.raw);
        let lines: String = entries.iter().map(line).collect();
        if self.file.is_none() {
            let opened = OpenOptions::new().append(true).create(true).open(&self.path);
            self.file = opened.ok();
        }
        if let Some(file) = &mut self.file
            && file.write_all(lines.as_bytes()).is_err()
        {
            self.file = None;
        }
    }

    /// Forgets everything: leaves hold it.
    pub(crate) fn clear(&mut self) {
        self.file = None;
        let file = OpenOptions::new().write(true).open(&self.path);
        let _ = file.and_then(|file| file.set_len(0));
    }

    /// The entries of it that are as they were written.
    pub(crate) fn entries(&self) -> Vec<Entry> {
        let bytes = std::fs::read(&self.path).unwrap_or_default();
        bytes.split(|byte| *byte == b'\n').filter_map(read).collect()
    }
}

fn read(line: &[u8]) -> Option<Entry> {
    let mut parts = std::str::from_utf8(line).ok()?.splitn(3, ' ');
    let (device, digest, raw) = (parts.next()?, parts.next()?, parts.next()?);
    let whole = format!("{:016x}", line_digest(raw)) == digest;
    let device = DeviceId(device.parse().ok()?);
    Entry::read(device, raw).ok().filter(|_| whole)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::instant::Instant;
    use crate::journal::{EntryId, Hlc};

    fn entry(number: u64) -> Entry {
        let id = EntryId { device: DeviceId(uuid::Uuid::from_u128(7)), number };
        let body = serde_json::value::to_raw_value(&number).unwrap();
        let at = Instant { wall_ms: 1_000, offset_min: 0, boot_ms: 0, boot_id: "a".into() };
        Entry::write(id, Hlc::default(), &at, None, Vec::new(), "note", body).unwrap()
    }

    #[test]
    fn what_is_torn_or_altered_is_left_out() {
        let home = tempfile::tempdir().unwrap();
        let mut tail = Tail::of(home.path());
        let entries: Vec<Entry> = (1..=4).map(entry).collect();
        tail.add(&entries[..2]);
        tail.add(&entries[2..]);
        assert_eq!(tail.entries(), entries);
        let path = home.path().join(FILE);
        let text = std::fs::read_to_string(&path).unwrap();
        let torn = text.replacen("\"n\":2", "\"n\":7", 1);
        std::fs::write(&path, &torn[..torn.len() - 5]).unwrap();
        let read: Vec<u64> = tail.entries().iter().map(|entry| entry.id.number).collect();
        assert_eq!(read, [1, 3]);
        tail.clear();
        assert_eq!(tail.entries(), []);
        tail.add(&entries[..1]);
        assert_eq!(tail.entries(), entries[..1]);
    }
}
