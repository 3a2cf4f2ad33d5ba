//! What looks published and is not: a file that lies on the carrier with other bytes under its name, and a leaf that
//! the other side never had. Where nothing can be overwritten the leaf is sealed again, under a new name: a few times
//! at most, for whoever withholds it withholds that too.

use std::collections::{BTreeMap, BTreeSet};

use rusqlite::{OptionalExtension, Transaction, params};

use super::ledger::{self, seen_in};
use super::left_alone::leave_as_it_is;
use super::members::certificate_of;
use super::sealed::SealedName;
use super::signer::{Signer, file, written};
use super::{FailedFile, Shelf};
use crate::error::Result;
use crate::id::DeviceId;
use crate::store::Store;
use crate::trust::Lane;

/// Files of one leaf that are made besides the first, at most.
const MOST_MORE: usize = 3;

/// Files of ours that lie on the carrier with other bytes.
#[derive(Default)]
pub(super) struct Rotten {
    /// Each with its size there.
    found: BTreeMap<SealedName, u64>,
    looked_again: bool,
    /// Those that nothing replaces, known from before.
    given_up: BTreeSet<SealedName>,
}

impl Rotten {
    /// Notes one, when it is fetched the first time and the second.
    pub(super) fn found(&mut self, name: &SealedName, bytes: u64) {
        self.found.insert(*name, bytes);
    }

    /// Notes one that was given up before.
    pub(super) fn was_given_up(&mut self, name: &SealedName) {
        self.given_up.insert(*name);
    }

    /// True for one that was given up.
    pub(super) fn is_given_up(&self, name: &SealedName) -> bool {
        self.given_up.contains(name)
    }

    /// What could not be written tells nothing of what can be replaced there: it is tried another time.
    pub(super) fn not_written(&mut self, files: &[FailedFile]) {
        for name in files.iter().filter_map(|file| SealedName::parse(&file.name)) {
            self.found.remove(&name);
        }
    }

    /// Those that were written again: whether that replaced them shows when they are fetched once more.
    pub(super) fn written_again(&mut self) -> BTreeMap<SealedName, u64> {
        match std::mem::replace(&mut self.looked_again, true) {
            true => BTreeMap::new(),
            false => std::mem::take(&mut self.found),
        }
    }

    /// Gives up those that nothing replaces, and seals their leaves again where no other file of them is there; gives
    /// the new files. One's own, and on a coach's device those of a device that will seal nothing again: others do it
    /// themselves.
    pub(super) fn give_up(
        &mut self,
        (store, shelf, signer): (&mut Store, &Shelf, &Signer<'_>),
        is_there: impl Fn(&SealedName) -> bool,
    ) -> Result<Vec<SealedName>> {
        let found = std::mem::take(&mut self.found);
        if found.is_empty() {
            return Ok(Vec::new());
        }
        self.given_up.extend(found.keys().copied());
        let own = store.device();
        let sealed = store.write(|tx| {
            let mut sealed = Vec::new();
            for (name, bytes) in &found {
                leave_as_it_is(tx, name, *bytes)?;
                let Some((lane, content)) = ledger::leaf_of(tx, name)? else { continue };
                let files = ledger::files_of(tx, lane, &content)?;
                let lacking = files.iter().all(|file| self.is_given_up(file) || !is_there(file));
                if lacking
                    && files.len() <= MOST_MORE
                    && signer.belongs()
                    && (name.device == own || signer.speaks_for(name.device))
                {
                    sealed.extend(once_more(tx, signer, lane, content)?);
                }
            }
            Ok(sealed)
        })?;
        shelf.put_waiting(store)?;
        Ok(sealed)
    }
}

/// Seals a leaf into one more file.
fn once_more(
    tx: &Transaction<'_>,
    signer: &Signer<'_>,
    lane: Lane,
    content: [u8; 32],
) -> Result<Option<SealedName>> {
    let Some(certificate) = certificate_of(tx, lane.device)? else { return Ok(None) };
    let own = signer.trusted.certificate.device();
    let leaf = written(tx, certificate, lane, content)?;
    // Nobody signs for another.
    let leaf = leaf.filter(|leaf| lane.device == own || leaf.signature.is_some());
    leaf.map(|leaf| file(tx, signer, &leaf)).transpose()
}

/// Seals again the first leaf of one's own lane that a device of the thread has not heard of, where it has written leaves
/// since this one was: it looked for what there is each time. One more file for every two of its leaves.
pub(super) fn unheard(
    tx: &Transaction<'_>,
    signer: &Signer<'_>,
    lane: Lane,
    by: DeviceId,
) -> Result<Option<SealedName>> {
    let Some((last, _)) = ledger::last(tx, lane)? else { return Ok(None) };
    let heard = heard(tx, lane, by)?;
    if heard >= last {
        return Ok(None);
    }
    let sql = "SELECT content, (SELECT count(*) FROM leaf l WHERE l.device = ?4 AND l.of = ?2 AND l.rowid > leaf.rowid)
               FROM leaf WHERE device = ?1 AND of = ?2 AND sequence = ?3 AND counts = 0 ORDER BY content LIMIT 1";
    let key = params![lane.device.0, lane.of.0, (heard + 1) as i64, by.0];
    let first: Option<([u8; 32], i64)> =
        tx.prepare_cached(sql)?.query_row(key, |row| Ok((row.get(0)?, row.get(1)?))).optional()?;
    let Some((content, since)) = first else { return Ok(None) };
    let due = usize::try_from(since / 2).unwrap_or_default().min(MOST_MORE);
    match ledger::files_of(tx, lane, &content)?.len() <= due {
        true => once_more(tx, signer, lane, content),
        false => Ok(None),
    }
}

/// The highest place of a lane that the two latest leaves of a device name.
fn heard(tx: &Transaction<'_>, lane: Lane, by: DeviceId) -> Result<u64> {
    let sql = "SELECT header FROM leaf WHERE device = ?1 AND of = ?2 AND counts = 0
               ORDER BY sequence DESC LIMIT 2";
    let mut statement = tx.prepare_cached(sql)?;
    let mut rows = statement.query(params![by.0, lane.of.0])?;
    let mut highest = 0;
    while let Some(row) = rows.next()? {
        let named = seen_in(row)?.into_iter().filter(|head| head.0 == lane.device);
        highest = named.map(|head| head.1).fold(highest, u64::max);
    }
    Ok(highest)
}
