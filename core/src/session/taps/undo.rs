//! Taking back what was tapped last, one tap further each time.

use crate::error::{Error, Field, Result};
use crate::id::RecordId;
use crate::journal::{Body, Entry, EntryId, Kind, TakenBack, Version, body_of, raw_body_of};
use crate::say;
use crate::store::Draft;

/// What takes back the last tap of a session, and what that had said.
///
/// `entries` are the session's own, in the order they were written. A first entry is taken back; a
/// correction gives way to what it corrected. Entries of one tap were written together and go together. A correction back to what stood before counts as having taken it back, so undoing
/// again goes further back and never forward.
pub(crate) fn undo(entries: &[Entry]) -> Result<(Vec<Draft>, Vec<Body>)> {
    let standing = standing(entries);
    let Some(last) = standing.last() else {
        return Err(Error::invalid(Field::Undo, say::tap::nothing_to_undo()));
    };
    let (tapped, at) = (last.hlc, last.wall_ms);
    let of_it = |other: &&&Entry| other.hlc.is_with(tapped) && other.wall_ms == at;
    let together = standing.iter().rev().take_while(of_it);
    let mut drafts = Vec::new();
    let mut said: Vec<Body> = Vec::new();
    let mut done: Vec<RecordId> = Vec::new();
    for entry in together {
        let record = entry.record;
        if done.contains(&record) {
            continue;
        }
        done.push(record);
        said.extend(body_of(&entry.raw));
        let earlier = before(entries, entry).and_then(|json| Body::decode(&entry.kind, &json));
        drafts.push(match earlier {
            Some(body) => Draft::correct(record, body),
            None => Draft::take_back(record),
        });
    }
    said.reverse();
    Ok((drafts, said))
}

/// The number of the entry that undo would take back.
pub(crate) fn to_undo(entries: &[Entry]) -> Option<u64> {
    standing(entries).last().map(|entry| entry.id.number)
}

/// The entries that were not taken back.
fn standing(entries: &[Entry]) -> Vec<&Entry> {
    let mut standing: Vec<&Entry> = Vec::new();
    // An entry that took a correction back, and the entry that stands again through it.
    let mut stands_for: Vec<(Version, Version)> = Vec::new();
    for entry in entries {
        if entry.kind == TakenBack::NAME {
            standing.retain(|other| other.record != entry.record);
            continue;
        }
        let parent = |entry: &Entry| {
            let parent = *entry.parents.last()?;
            let other = stands_for.iter().find(|(again, _)| parent.names(*again));
            Some(other.map_or(parent, |(_, stands)| *stands))
        };
        match parent(entry).and_then(|parent| position(&standing, parent)) {
            Some(replaced) if says_again(entry, before(entries, standing[replaced])) => {
                if let Some(again) = parent(standing[replaced]) {
                    stands_for.push((entry.version(), again));
                }
                standing.remove(replaced);
            }
            _ => standing.push(entry),
        }
    }
    standing
}

fn position(standing: &[&Entry], named: Version) -> Option<usize> {
    standing.iter().position(|other| is(other, named))
}

/// True for the entry that is named.
fn is(entry: &Entry, named: Version) -> bool {
    let id = EntryId { device: named.device, number: named.number };
    // Its digest is made only where the name fits.
    entry.id == id && named.names(entry.version())
}

/// True when an entry says again what stood `earlier`, whatever the order of its fields.
fn says_again(entry: &Entry, earlier: Option<String>) -> bool {
    let value = |json: &str| serde_json::from_str::<serde_json::Value>(json).ok();
    let now = raw_body_of(&entry.raw).as_deref().and_then(value);
    now.is_some() && now == earlier.as_deref().and_then(value)
}

/// The body an entry replaced, when it is one of the session's own and not a taking-back.
fn before(entries: &[Entry], entry: &Entry) -> Option<String> {
    let parent = entry.parents.last()?;
    let found = entries.iter().find(|other| is(other, *parent))?;
    if found.kind == TakenBack::NAME { None } else { raw_body_of(&found.raw) }
}
