//! The second line: where the leaf stands, and what its writer had seen.

use data_encoding::HEXLOWER;
use serde::{Deserialize, Serialize};

use super::{SEALED_FORMAT, SealedFault};
use crate::error::shown;
use crate::exchange::MAX_LEAF_ENTRIES;
use crate::id::{CrewId, DeviceId, PersonId};
use crate::journal::{Entry, depth};
use crate::say;
use crate::say::sealed as said;

/// The longest header.
const MAX_HEADER_BYTES: usize = 4 * 1024;
/// Its deepest nesting.
const MAX_HEADER_DEPTH: usize = 3;
/// The most lanes that a leaf says it has seen.
const MAX_SEEN: usize = 16;
/// The highest place in a lane: what a name has digits for, with room to go on.
pub(super) const MAX_SEQUENCE: u64 = 90_000_000;
/// The highest number of an entry: two hundred a day for fifteen million years.
const MAX_NUMBER: u64 = 1 << 40;

/// What a leaf says of itself.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct SealedHeader {
    /// The format.
    pub leaf: u32,
    /// The crew.
    pub crew: CrewId,
    /// Who wrote it.
    pub person: PersonId,
    /// On which device.
    pub device: DeviceId,
    /// The member whose thread it is in.
    pub of: PersonId,
    /// Its place in the lane, from 1.
    pub sequence: u64,
    /// The content hash of the leaf before it, in hexadecimal; for the first the lane's first link.
    pub previous: String,
    /// How many entries follow.
    pub count: u64,
    /// The highest format that the writer's app reads.
    pub reads: u32,
    /// The highest unbroken head that the writer had of each other lane of this thread.
    pub seen: Vec<LaneHead>,
}

/// How far a lane of the thread was seen.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct LaneHead(
    /// The lane's device.
    pub DeviceId,
    /// The sequence.
    pub u64,
    /// The first 16 hexadecimal digits of that leaf's content hash.
    pub String,
);

impl LaneHead {
    /// The head of a lane, by the content hash of its last leaf.
    pub fn new(device: DeviceId, sequence: u64, content: &[u8; 32]) -> LaneHead {
        LaneHead(device, sequence, hex(content)[..16].to_owned())
    }
}

pub(super) fn hex(bytes: &[u8]) -> String {
    HEXLOWER.encode(bytes)
}

fn is_hex(text: &str, digits: usize) -> bool {
    text.len() == digits && text.bytes().all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f'))
}

impl SealedHeader {
    pub(super) fn line(&self) -> String {
        // Numbers, texts and lists: nothing of it fails.
        serde_json::to_string(self).unwrap_or_default()
    }

    /// Reads a header. A field twice is refused; one that this reader does not know means nothing to it.
    pub(super) fn read(line: &str) -> Result<SealedHeader, SealedFault> {
        let bad = |reason: String| SealedFault::Header { reason };
        if line.len() > MAX_HEADER_BYTES || depth(line) > MAX_HEADER_DEPTH {
            return Err(bad(say::exchange::header_too_large().into()));
        }
        #[derive(Deserialize)]
        struct Format {
            leaf: u32,
        }
        // The parser's words quote the line.
        let not_read = |error: serde_json::Error| bad(shown(&error.to_string()));
        let format: Format = serde_json::from_str(line).map_err(not_read)?;
        if format.leaf > SEALED_FORMAT {
            return Err(SealedFault::Newer { found: format.leaf });
        }
        let header: SealedHeader = serde_json::from_str(line).map_err(not_read)?;
        if header.leaf != SEALED_FORMAT {
            return Err(bad(said::no_such_format(header.leaf)));
        }
        let placed = 1..=MAX_SEQUENCE;
        let heads = header.seen.iter().all(|seen| placed.contains(&seen.1) && is_hex(&seen.2, 16));
        if !placed.contains(&header.sequence) || !heads {
            return Err(bad(say::exchange::numbers_too_high().into()));
        }
        if header.seen.len() > MAX_SEEN {
            return Err(bad(say::exchange::seen_too_many(header.seen.len(), MAX_SEEN)));
        }
        let twice =
            |at: usize, seen: &LaneHead| header.seen[..at].iter().any(|other| other.0 == seen.0);
        let own = header.seen.iter().any(|seen| seen.0 == header.device);
        if own || header.seen.iter().enumerate().any(|(at, seen)| twice(at, seen)) {
            return Err(bad(said::seen_twice().into()));
        }
        if !is_hex(&header.previous, 64) {
            return Err(bad(said::no_previous().into()));
        }
        if !(1..=MAX_LEAF_ENTRIES).contains(&header.count) {
            return Err(bad(said::no_such_count(header.count)));
        }
        Ok(header)
    }

    /// Reads the entries that follow: as many as announced, their numbers rising.
    pub(super) fn entries<'t>(
        &self,
        lines: impl Iterator<Item = &'t str>,
    ) -> Result<Vec<Entry>, SealedFault> {
        let mut entries: Vec<Entry> = Vec::new();
        for (at, raw) in lines.enumerate() {
            let bad = |reason: String| SealedFault::Line { line: at as u64 + 3, reason };
            if at as u64 == self.count {
                return Err(bad(say::exchange::wrong_count(self.count)));
            }
            let entry = Entry::read(self.device, raw).map_err(bad)?;
            let number = entry.id.number;
            if number > MAX_NUMBER {
                return Err(bad(say::exchange::number_out_of_range(number)));
            }
            if entries.last().is_some_and(|last| last.id.number >= number) {
                return Err(bad(said::numbers_fall(number)));
            }
            entries.push(entry);
        }
        match entries.len() as u64 == self.count {
            true => Ok(entries),
            false => Err(SealedFault::Header { reason: say::exchange::wrong_count(self.count) }),
        }
    }
}
