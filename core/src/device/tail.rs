//! The tail: a second copy of the entries that no leaf holds yet, so that a rotten page of the database
//! loses none of them. It is appended to without a flush of its own: what the database has on disk it
//! has, and a rotten page is found later than the system writes files out.

use std::fs::{File, OpenOptions};
use std::io::{Read, Seek, SeekFrom, Write};
use std::path::{Path, PathBuf};

use crate::id::DeviceId;
use crate::journal::{Entry, MAX_LINE_BYTES, line_digest};

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
            self.file = open(&self.path).ok();
        }
        if let Some(file) = &mut self.file
            && file.write_all(lines.as_bytes()).is_err()
        {
            self.file = None;
        }
    }

    /// Forgets everything, for leaves hold it; but for the last entry, which tells at the next opening whether
    /// the database still has its end.
    pub(crate) fn clear(&mut self) {
        self.file = None;
        let last = self.last();
        let file = OpenOptions::new().write(true).open(&self.path);
        if file.and_then(|file| file.set_len(0)).is_ok() {
            self.add(last.as_slice());
        }
    }

    /// Forgets everything, the last entry too.
    pub(crate) fn forget(&mut self) {
        self.file = None;
        let _ = std::fs::remove_file(&self.path);
    }

    /// The last entry of it that is as it was written.
    pub(crate) fn last(&self) -> Option<Entry> {
        let mut file = File::open(&self.path).ok()?;
        let size = file.metadata().ok()?.len();
        file.seek(SeekFrom::Start(size.saturating_sub(END))).ok()?;
        let mut bytes = Vec::new();
        file.take(END).read_to_end(&mut bytes).ok()?;
        bytes.rsplit(|byte| *byte == b'\n').find_map(read)
    }

    /// The entries of it that are as they were written.
    pub(crate) fn entries(&self) -> Vec<Entry> {
        let bytes = std::fs::read(&self.path).unwrap_or_default();
        bytes.split(|byte| *byte == b'\n').filter_map(read).collect()
    }
}

/// As much as holds the longest line.
const END: u64 = 2 * MAX_LINE_BYTES as u64;

/// Opens it to add to. A line that a stop cut short is ended first, or the next one would be part of it.
fn open(path: &Path) -> std::io::Result<File> {
    let mut file = OpenOptions::new().read(true).append(true).create(true).open(path)?;
    let mut last = [b'\n'];
    if file.metadata()?.len() > 0 {
        file.seek(SeekFrom::End(-1))?;
        file.read_exact(&mut last)?;
    }
    if last != [b'\n'] {
        file.write_all(b"\n")?;
    }
    Ok(file)
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
        assert_eq!(tail.last().map(|entry| entry.id.number), Some(3));
        // What comes after a torn line is a line of its own.
        let mut tail = Tail::of(home.path());
        tail.add(&entries[3..]);
        assert_eq!(tail.last().as_ref(), entries.last());
        tail.clear();
        assert_eq!(tail.entries(), entries[3..]);
        tail.add(&entries[..1]);
        assert_eq!(tail.entries(), [entries[3].clone(), entries[0].clone()]);
    }
}
