//! A leaf: one immutable file of a device's journal.
//!
//! Format version 0 is plain text: a header line, then one entry a line. It is neither signed nor
//! sealed yet.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

use super::LeafName;
use crate::error::{Error, Result};
use crate::id::{CrewId, DeviceId};
use crate::journal::{Entry, MAX_DEPTH, MAX_LINE_BYTES, depth};
use crate::say;

/// The largest leaf file.
pub const MAX_LEAF_BYTES: usize = 4 * 1024 * 1024;

/// The most entries in a leaf.
pub const MAX_LEAF_ENTRIES: u64 = 20_000;

/// The highest entry number: two hundred entries a day for fifteen million years.
const MAX_NUMBER: u64 = 1 << 40;

/// The highest sequence: what a leaf's name has digits for, with room to go on.
const MAX_SEQUENCE: u64 = 90_000_000;

/// The most other devices a leaf can have seen.
const MAX_SEEN: usize = 256;

/// The format this reader knows.
pub const LEAF_FORMAT: u32 = 0;

/// The first line of a leaf.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Header {
    /// The format version.
    pub leaf: u32,
    /// The crew it belongs to.
    pub crew: CrewId,
    /// The writer.
    pub device: DeviceId,
    /// Its place in the writer's chain, counted from 1.
    pub sequence: u64,
    /// The first entry's number.
    pub first: u64,
    /// The last entry's number.
    pub last: u64,
    /// The SHA-256 of the previous leaf of the chain; empty for the first.
    pub previous: String,
    /// The highest sequence the writer had seen of each other device.
    pub seen: BTreeMap<DeviceId, u64>,
}

/// A leaf that was read and found whole.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Leaf {
    /// What the first line says.
    pub header: Header,
    /// The first line as it was written.
    pub header_line: String,
    /// The entries.
    pub entries: Vec<Entry>,
    /// The SHA-256 of the whole file, in hexadecimal.
    pub hash: String,
}

/// Why a file is set aside. Nothing is deleted, and the rest folds.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum LeafFault {
    /// The name is not one we write.
    #[error("{}", say::exchange::foreign())]
    Foreign,
    /// Larger than any leaf.
    #[error("{}", say::exchange::too_large(bytes, MAX_LEAF_BYTES))]
    TooLarge {
        /// The size found.
        bytes: u64,
    },
    /// The bytes are not those its name was made from: cut short, or still arriving.
    #[error("{}", say::exchange::torn())]
    Torn,
    /// Whole, but not a leaf this reader can take in.
    #[error("{}", say::exchange::unreadable(line, reason))]
    Unreadable {
        /// The line, counted from 1.
        line: u64,
        /// What is wrong.
        reason: String,
    },
    /// Written by a newer app.
    #[error("{}", say::exchange::newer(found, LEAF_FORMAT))]
    Newer {
        /// The format found.
        found: u32,
    },
    /// Another group's.
    #[error("{}", say::exchange::other_crew())]
    OtherCrew,
}

impl Leaf {
    /// The file's name.
    pub fn name(&self) -> LeafName {
        let (device, sequence) = (self.header.device, self.header.sequence);
        LeafName { device, sequence, hash: self.hash[..16].to_owned() }
    }

    /// The whole file.
    pub(crate) fn bytes(&self) -> Vec<u8> {
        Leaf::bytes_of(&self.header_line, self.entries.iter().map(|entry| entry.raw.as_str()))
    }

    /// Puts a leaf together from a header line and entry lines.
    pub(crate) fn bytes_of<'a>(header: &'a str, lines: impl Iterator<Item = &'a str>) -> Vec<u8> {
        let mut bytes = Vec::new();
        for line in std::iter::once(header).chain(lines) {
            bytes.extend_from_slice(line.as_bytes());
            bytes.push(b'\n');
        }
        bytes
    }

    /// Makes a new leaf.
    ///
    /// # Errors
    /// [`Error::Json`] when the header cannot be written.
    pub(crate) fn write(header: Header, entries: Vec<Entry>) -> Result<Leaf> {
        let header_line = serde_json::to_string(&header).map_err(Error::from)?;
        let mut leaf = Leaf { header, header_line, entries, hash: String::new() };
        leaf.hash = sha256(&leaf.bytes());
        Ok(leaf)
    }

    /// Reads a file that a carrier brought.
    ///
    /// # Errors
    /// Why the file is set aside.
    pub fn read(name: &LeafName, bytes: &[u8]) -> std::result::Result<Leaf, LeafFault> {
        if bytes.len() > MAX_LEAF_BYTES {
            return Err(LeafFault::TooLarge { bytes: bytes.len() as u64 });
        }
        let hash = sha256(bytes);
        if !hash.starts_with(&name.hash) {
            return Err(LeafFault::Torn);
        }
        let bad = |line: u64, reason: String| LeafFault::Unreadable { line, reason };
        let text = std::str::from_utf8(bytes).map_err(|error| bad(1, error.to_string()))?;
        let text = text
            .strip_suffix('\n')
            .ok_or_else(|| bad(1, say::exchange::no_last_newline().into()))?;
        let mut lines = text.split('\n');
        let header_line = lines.next().unwrap_or_default();
        let header = read_header(name, header_line)?;
        let mut entries = Vec::new();
        for (number, raw) in (header.first..=header.last).zip(lines.by_ref()) {
            let line = number - header.first + 2;
            let entry = Entry::read(header.device, raw).map_err(|reason| bad(line, reason))?;
            if entry.id.number != number {
                return Err(bad(line, say::exchange::wrong_number(entry.id.number, number)));
            }
            entries.push(entry);
        }
        let wanted = header.last - header.first + 1;
        if entries.len() as u64 != wanted || lines.next().is_some() {
            return Err(bad(1, say::exchange::wrong_count(wanted)));
        }
        Ok(Leaf { header, header_line: header_line.to_owned(), entries, hash })
    }
}

fn read_header(name: &LeafName, line: &str) -> std::result::Result<Header, LeafFault> {
    #[derive(Deserialize)]
    struct Format {
        leaf: u32,
    }
    let bad = |reason: String| LeafFault::Unreadable { line: 1, reason };
    if line.len() > MAX_LINE_BYTES || depth(line) > MAX_DEPTH {
        return Err(bad(say::exchange::header_too_large().into()));
    }
    let format: Format = serde_json::from_str(line).map_err(|error| bad(error.to_string()))?;
    if format.leaf > LEAF_FORMAT {
        return Err(LeafFault::Newer { found: format.leaf });
    }
    let header: Header = serde_json::from_str(line).map_err(|error| bad(error.to_string()))?;
    if header.device != name.device || header.sequence != name.sequence {
        return Err(bad(say::exchange::header_not_of_name().into()));
    }
    // Numbers nobody reaches by logging: taken in, they would leave a device none to go on with.
    if header.last > MAX_NUMBER || header.sequence > MAX_SEQUENCE {
        return Err(bad(say::exchange::numbers_too_high().into()));
    }
    if header.seen.len() > MAX_SEEN {
        return Err(bad(say::exchange::seen_too_many(header.seen.len(), MAX_SEEN)));
    }
    let ordered = 1 <= header.first && header.first <= header.last;
    if !ordered || header.last - header.first >= MAX_LEAF_ENTRIES {
        return Err(bad(say::exchange::no_such_range(header.first, header.last)));
    }
    Ok(header)
}

/// SHA-256 in hexadecimal, as `sha256sum` prints it.
pub(crate) fn sha256(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().map(|byte| format!("{byte:02x}")).collect()
}
