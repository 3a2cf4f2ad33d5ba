//! Taking in a leaf, wherever it came from: a carrier, or the device's own shelf.

use rusqlite::Transaction;

use super::forget::forgotten;
use super::members::{self, Trusted, settle};
use super::sealed::{Expected, SealedFault, SealedLeaf, SealedName};
use super::signer::Signer;
use super::{CarriedFile, Shelf, counting, ledger};
use crate::error::Result;
use crate::planted::{Planted, planted};
use crate::store::Store;
use crate::trust::{Counts, Kept, Keys, Lane, Recovery, Standing};

/// What a device takes leaves in with.
pub(crate) struct Reader<'a> {
    pub(crate) kept: &'a Kept,
    pub(crate) trusted: &'a Trusted,
    pub(crate) standing: &'a mut Standing,
}

/// What came of a leaf.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct TakenIn {
    /// Entries that were new, and count so far.
    pub(crate) new: u64,
}

impl Reader<'_> {
    /// Whose leaves are taken in; none before there is a crew.
    fn expected(&self) -> Option<Expected> {
        let founder = self.trusted.founder?.person();
        let own = self.trusted.own();
        let member = (!own.coach).then_some(own.person);
        Some(Expected { crew: self.trusted.crew()?, founder, member })
    }

    /// Opens a file.
    pub(super) fn open(
        &self,
        file: &CarriedFile,
    ) -> std::result::Result<(SealedName, SealedLeaf), SealedFault> {
        let name = SealedName::parse(&file.name).ok_or(SealedFault::Foreign)?;
        let expected = self.expected().ok_or(SealedFault::OtherCrew)?;
        // As long as the recovery secret lies here, what was sealed to the paper opens too: before others knew this
        // device they could not seal to it.
        let paper = self.kept.recovery.as_ref().map(Recovery::keys);
        let keys: Vec<&Keys> =
            [Some(&self.kept.keys), paper.as_ref()].into_iter().flatten().collect();
        let leaf = SealedLeaf::open(&name, &file.content, &keys, &expected)?;
        Ok((name, leaf))
    }

    /// True for a file that is a leaf for this device.
    pub(crate) fn opens(kept: &Kept, trusted: &Trusted, name: &SealedName, bytes: &[u8]) -> bool {
        let reader = Reader { kept, trusted, standing: &mut Standing::default() };
        let file = CarriedFile { name: name.to_string(), content: bytes.to_vec() };
        reader.open(&file).is_ok()
    }
}

/// Takes in one file, and says what came of it, or why it was left alone.
pub(crate) fn take_in(
    store: &mut Store,
    shelf: &Shelf,
    reader: &mut Reader<'_>,
    file: &CarriedFile,
    wall_ms: i64,
) -> Result<std::result::Result<TakenIn, SealedFault>> {
    let (name, leaf) = match reader.open(file) {
        Ok(opened) => opened,
        Err(fault) => return Ok(Err(fault)),
    };
    let lane = Lane { device: leaf.header.device, of: leaf.header.of };
    if forgotten(store.reader(), store.device())?.contains(&lane.of)
        && !planted(Planted::FetchedAgain)
    {
        return Ok(Err(SealedFault::NotForUs));
    }
    let here = ledger::is_here(store.reader(), lane, &leaf.content)?;
    if planted(Planted::OwnLeafIgnored) && lane.device == store.device() && !here {
        return Ok(Err(SealedFault::NotForUs));
    }
    // A leaf of one's own that one does not know: this device goes on from a backup, or was copied. What it logged
    // since is cut first, so that it follows what it followed.
    if lane.device == store.device()
        && !here
        && let Some(crew) = reader.trusted.crew()
    {
        let (keys, trusted) = (&reader.kept.keys, reader.trusted);
        let signer = Signer { keys, trusted, crew, standing: &*reader.standing };
        shelf.cut(store, &signer)?;
    }
    let (taken, settled) =
        store.write(|tx| insert(tx, reader.trusted, reader.standing, &name, &leaf))?;
    if let Some(settled) = settled {
        *reader.standing = settled;
    }
    shelf.put(&name, &file.content)?;
    store.observe(&leaf.entries, wall_ms);
    Ok(Ok(taken))
}

pub(super) fn insert(
    tx: &Transaction<'_>,
    trusted: &Trusted,
    standing: &Standing,
    name: &SealedName,
    leaf: &SealedLeaf,
) -> Result<(TakenIn, Option<Standing>)> {
    let lane = Lane { device: leaf.header.device, of: leaf.header.of };
    let certified = members::add_certificate(tx, &leaf.certificate)?;
    let counts = match certified {
        // Whose it is comes out below.
        true => Counts::Unknown,
        false => standing.counts(lane, &leaf.content),
    };
    let new = ledger::insert(tx, leaf, counts)?;
    ledger::add_file(tx, name, leaf)?;
    let mut taken = TakenIn::default();
    if !new {
        return Ok((taken, None));
    }
    match counts {
        Counts::Yes => taken.new = counting::admit(tx, standing, lane, &leaf.entries)?,
        _ => counting::hold(tx, lane, &leaf.content, &leaf.entries)?,
    }
    // Nobody else's leaf says so: a line does not name its writer.
    if lane.device == trusted.certificate.device() {
        ledger::posted(tx, leaf)?;
    }
    let spoken = leaf.entries.iter().any(|entry| members::is_of_people(&entry.kind));
    if !(certified || spoken || standing.is_limited(lane.device)) {
        return Ok((taken, None));
    }
    let settled = settle(tx, trusted)?;
    let now = settled.counts(lane, &leaf.content);
    if counts != Counts::Yes && now == Counts::Yes {
        taken.new = leaf.entries.len() as u64;
    }
    Ok((taken, Some(settled)))
}
