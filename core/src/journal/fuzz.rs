//! For fuzzers alone, with the feature `fuzz`: what is read of a line when it is folded, and how it is written.

use super::{Body, Entry, entry};
use crate::instant::Instant;

/// The body of a line, decoded; none when this reader cannot interpret it.
pub fn body_of(raw: &str) -> Option<Body> {
    entry::body_of(raw)
}

/// The body of a line as it was written.
pub fn raw_body_of(raw: &str) -> Option<String> {
    entry::raw_body_of(raw)
}

/// The entry with another body of its own kind, written at `at` on top of what its line says: fields that this reader does not
/// know stay. None where it cannot be written.
pub fn line_with(entry: &Entry, body: &Body, at: &Instant) -> Option<Entry> {
    let over = body.encode_over(&raw_body_of(&entry.raw)?).ok()?;
    let (record, parents) = (Some(entry.record), entry.parents.clone());
    Entry::write(entry.id, entry.hlc, at, record, parents, body.kind(), over).ok()
}
