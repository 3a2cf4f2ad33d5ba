//! Taking in a leaf, wherever it came from: a carrier, or the device's own shelf.

use super::{CarriedFile, Leaf, LeafFault, LeafName, Shelf, ledger};
use crate::error::Result;
use crate::id::CrewId;
use crate::store::{Store, insert_all};

/// Takes in one file, and says how many of its entries were new, or why it was left alone. Without a
/// `crew` any is taken.
pub(crate) fn take_in(
    store: &mut Store,
    shelf: &Shelf,
    crew: Option<CrewId>,
    file: &CarriedFile,
    wall_ms: i64,
) -> Result<std::result::Result<u64, LeafFault>> {
    let leaf = match read(crew, file) {
        Ok(leaf) => leaf,
        Err(fault) => return Ok(Err(fault)),
    };
    let own = store.device();
    let new = store.write(|tx| {
        // A leaf of one's own that one does not know: this device goes on from a backup, or was
        // copied. What it logged since is cut first, so that the other branch cannot cover it.
        // Its file is written now: once both branches lie in the table it could not be made again.
        if leaf.header.device == own && !ledger::is_here(tx, &leaf)? {
            while let Some(own) = ledger::cut(tx, own, leaf.header.crew)? {
                shelf.put(&own.name(), &own.bytes())?;
            }
        }
        let new = insert_all(tx, &leaf.entries)?;
        ledger::insert(tx, &leaf)?;
        Ok(new)
    })?;
    shelf.put(&leaf.name(), &file.content)?;
    store.observe(&leaf.entries, wall_ms);
    Ok(Ok(new))
}

fn read(crew: Option<CrewId>, file: &CarriedFile) -> std::result::Result<Leaf, LeafFault> {
    let name = LeafName::parse(&file.name).ok_or(LeafFault::Foreign)?;
    let leaf = Leaf::read(&name, &file.content)?;
    match crew {
        Some(crew) if crew != leaf.header.crew => Err(LeafFault::OtherCrew),
        _ => Ok(leaf),
    }
}
