//! Cutting: what was logged and waits to be sent becomes leaves, thread by thread.

use rusqlite::{Transaction, params};

use super::again;
use super::ledger::{self, ENTRIES_A_LEAF};
use super::sealed::{Follows, MAX_SEALED_BYTES, SealedLeaf, SealedName};
use super::signer::{Signer, file};
use crate::error::Result;
use crate::id::PersonId;
use crate::journal::{Entry, Kind, Remove, Stopped};
use crate::store::{Store, line_in, share};
use crate::trust::{Counts, Lane};

/// Cuts one leaf of each thread that something waits for; none when nothing does. The file waits in the database
/// until it lies on the shelf: sealed again it would be another.
pub(super) fn cut(store: &mut Store, signer: &Signer<'_>) -> Result<Vec<SealedName>> {
    let (own, device) = (store.own(), store.device());
    if !signer.belongs() {
        return Ok(Vec::new());
    }
    store.write(|tx| {
        share(tx, own, device)?;
        let waiting: Vec<PersonId> = tx
            .prepare_cached("SELECT DISTINCT of FROM outbox ORDER BY of")?
            .query_map([], |row| Ok(PersonId(row.get(0)?)))?
            .collect::<rusqlite::Result<_>>()?;
        let mut names = Vec::new();
        for of in waiting {
            names.extend(cut_one(tx, signer, signer.lane(of))?);
        }
        Ok(names)
    })
}

fn cut_one(tx: &Transaction<'_>, signer: &Signer<'_>, lane: Lane) -> Result<Option<SealedName>> {
    let entries = waiting(tx, lane)?;
    if entries.is_empty() {
        return Ok(None);
    }
    let certificate = signer.trusted.certificate;
    let follows = match ledger::last(tx, lane)? {
        Some((sequence, content)) => Follows { sequence, content },
        None => Follows::nothing(signer.crew, lane.of, &certificate),
    };
    let seen = ledger::seen(tx, lane)?;
    let leaf = SealedLeaf::write(certificate, (signer.crew, lane.of), follows, seen, entries);
    // Kept with it: this home may become another device, which cannot sign for this one.
    let leaf = leaf.signed(signer.keys);
    let name = file(tx, signer, &leaf)?;
    again::note(tx, lane.of, leaf.header.sequence, &signer.devices(lane.of))?;
    ledger::insert(tx, &leaf, Counts::Yes)?;
    ledger::posted(tx, &leaf)?;
    Ok(Some(name))
}

/// The first entries that wait to be sent to a thread, as many as one leaf holds.
fn waiting(tx: &Transaction<'_>, lane: Lane) -> Result<Vec<Entry>> {
    let mut statement = tx.prepare_cached(
        "SELECT e.raw, e.digest FROM outbox o
         JOIN entry e ON e.device = ?1 AND e.n = o.n AND e.digest = o.digest
         WHERE o.of = ?2 ORDER BY o.n LIMIT ?3",
    )?;
    let mut rows = statement.query(params![lane.device.0, lane.of.0, ENTRIES_A_LEAF as i64])?;
    let (mut entries, mut bytes): (Vec<Entry>, usize) = (Vec::new(), 0);
    while let Some(row) = rows.next()? {
        let raw = line_in(row, 0, 1)?;
        bytes += raw.len() + 1;
        // Room for the header; the rest goes into the next leaf.
        if bytes > MAX_SEALED_BYTES - 64 * 1024 {
            break;
        }
        match Entry::read(lane.device, raw) {
            // What ends a device is read by that device too, so it stands in a leaf of its own.
            Ok(entry) if entries.last().is_some_and(|last| ends(last) != ends(&entry)) => break,
            // Of two lines under one number, which a copied device wrote, the other goes into the next leaf.
            Ok(entry) if entries.last().is_some_and(|last| last.id.number == entry.id.number) => {}
            Ok(entry) => entries.push(entry),
            Err(_) => break,
        }
    }
    Ok(entries)
}

/// True for what a stopped or removed device is to learn of itself.
fn ends(entry: &Entry) -> bool {
    [Remove::NAME, Stopped::NAME].contains(&entry.kind.as_str())
}
