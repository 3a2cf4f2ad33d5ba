//! Every signature, hash and chain of the leaves that lie here, held against each other.

use std::collections::BTreeMap;

use rusqlite::Connection;

use super::members::{Trusted, certificates};
use super::sealed::{Follows, SealedFault, SealedLeaf};
use super::shelf::Shelf;
use super::{CarriedFile, Reader, ledger};
use crate::error::Result;
use crate::id::{DeviceId, PersonId};
use crate::say;
use crate::store::{Store, has_line};
use crate::trust::{Certificate, Kept, Lane, Standing};

/// What was held against what, and what does not fit.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Seals {
    /// Files that were opened, with their writer's signature and with entries that are all here.
    pub(crate) signed: u64,
    /// Files that lie here for others and that nobody opens here.
    pub(crate) unopened: u64,
    /// Chains of leaves, each of one device in one thread.
    pub(crate) chains: u64,
    /// What does not fit, in words.
    pub(crate) odd: Vec<String>,
}

/// A leaf's place, its content hash, and that of the leaf it says it follows.
type Linked = (u64, [u8; 32], [u8; 32]);

/// Opens every file that the database knows, and follows every chain.
pub(crate) fn seals(store: &Store, shelf: &Shelf, kept: &Kept, trusted: &Trusted) -> Result<Seals> {
    let mut seals = Seals::default();
    let reader = Reader { kept, trusted, standing: &mut Standing::default() };
    for name in ledger::names(store.reader())? {
        let content = shelf.leaf(store, &name)?;
        let name = name.to_string();
        let Some(content) = content else {
            seals.odd.push(say::sealed::file_not_here(name));
            continue;
        };
        match reader.open(shelf, &CarriedFile { name: name.clone(), content }) {
            Ok((_, leaf)) if is_kept_whole(store.reader(), &leaf)? => seals.signed += 1,
            Ok(_) => seals.odd.push(say::sealed::other_than_kept(name)),
            Err(SealedFault::NotForUs) => seals.unopened += 1,
            Err(fault) => seals.odd.push(say::error::labelled(name, fault.to_string())),
        }
    }
    let known = certificates(store.reader(), trusted)?;
    for (lane, leaves) in chains(store.reader())? {
        seals.chains += 1;
        let odd = broken(&known, trusted, lane, &leaves);
        seals.odd.extend(odd.into_iter().map(|(sequence, content)| {
            let hash = data_encoding::HEXLOWER.encode(&content[..8]);
            say::sealed::follows_another(sequence, hash)
        }));
    }
    Ok(seals)
}

/// True where the database has the leaf, and each of its entries, as the file has them.
fn is_kept_whole(connection: &Connection, leaf: &SealedLeaf) -> Result<bool> {
    let lane = Lane { device: leaf.header.device, of: leaf.header.of };
    let mut whole = ledger::is_here(connection, lane, &leaf.content)?;
    for entry in &leaf.entries {
        whole &= has_line(connection, entry.id, entry.digest())?;
    }
    Ok(whole)
}

fn chains(connection: &Connection) -> Result<BTreeMap<Lane, Vec<Linked>>> {
    let sql = "SELECT device, of, sequence, content, previous FROM leaf ORDER BY sequence";
    let mut statement = connection.prepare(sql)?;
    let mut rows = statement.query([])?;
    let mut chains: BTreeMap<Lane, Vec<Linked>> = BTreeMap::new();
    while let Some(row) = rows.next()? {
        let lane = Lane { device: DeviceId(row.get(0)?), of: PersonId(row.get(1)?) };
        let linked = (row.get::<_, i64>(2)?.unsigned_abs(), row.get(3)?, row.get(4)?);
        chains.entry(lane).or_default().push(linked);
    }
    Ok(chains)
}

/// The leaves that follow none of those one place before them. One that is not here is a hole, and no fault.
fn broken(
    known: &[Certificate],
    trusted: &Trusted,
    lane: Lane,
    leaves: &[Linked],
) -> Vec<(u64, [u8; 32])> {
    let writer = known.iter().filter(|certificate| certificate.device() == lane.device);
    let first: Vec<[u8; 32]> = match trusted.crew() {
        Some(crew) => writer.map(|of| Follows::nothing(crew, lane.of, of).content).collect(),
        None => Vec::new(),
    };
    let follows = |(sequence, _, previous): &&Linked| {
        let mut before: Vec<[u8; 32]> = first.clone();
        if *sequence > 1 {
            let at_it = leaves.iter().filter(|of| of.0 + 1 == *sequence);
            before = at_it.map(|of| of.1).collect();
        }
        before.is_empty() || before.contains(previous)
    };
    let odd = leaves.iter().filter(|leaf| !follows(leaf));
    odd.map(|(sequence, content, _)| (*sequence, *content)).collect()
}
