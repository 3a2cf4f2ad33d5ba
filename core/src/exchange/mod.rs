//! Everything about files: leaves and their names, the shelf of a device's own copies, who counts, and the exchange
//! with a carrier as steps.
//!
//! A carrier is anything that moves files: a folder, later a server. Nothing in it is ever changed,
//! renamed or deleted, so no two devices can get in each other's way.

mod again;
mod bag;
mod counting;
mod cut;
mod durable;
mod earlier;
mod file;
mod finding;
mod folders;
mod forget;
mod gaps;
mod heal;
mod last;
mod ledger;
mod left_alone;
mod looked;
mod members;
mod own;
mod portion;
mod post;
mod running;
pub mod sealed;
mod shelf;
mod signer;
mod step;
mod steps;
mod take_in;
mod verify;

#[cfg(test)]
mod tests;
pub mod web;

pub(crate) use bag::Bag;
pub use bag::TakenAlong;
pub use durable::is_temporary;
pub(crate) use durable::{flush_folder, publish, replace, replace_private};
pub(crate) use earlier::{release, unsent_before, withhold};
pub use file::{AsideFile, CarriedFile, ExchangeReport, FailedFile, ListedFile};
pub(crate) use finding::{Finding, Found};
pub use folders::folder_of;
pub(crate) use forget::{files_of, forgotten, holds_any, purge};
pub(crate) use gaps::{forked, gaps};
pub(crate) use last::{last_exchange, note_exchange, waiting};
pub(crate) use ledger::{
    ENTRIES_A_LEAF, latest_hlc, leaves, names, threads_of, tops, uncounted, unpublished,
};
pub(crate) use looked::Look;
pub(crate) use members::{Trusted, add_claimed, is_another_persons, on_opening, settle};
pub use own::MAX_LISTING;
pub(crate) use own::Own;
pub(crate) use post::{MOST_POST_BYTES, MOST_POSTS, Post, opened};
pub use post::{POST_FOLDER, is_post};
pub(crate) use shelf::Shelf;
pub(crate) use signer::Signer;
pub use step::{ExchangeDid, ExchangeStep};
pub(crate) use steps::Traffic;
pub(crate) use take_in::{Outcome, Reader, take_in};
pub(crate) use verify::{Seals, seals};

/// The most entries in a leaf.
pub const MAX_LEAF_ENTRIES: u64 = 20_000;

/// SHA-256 in hexadecimal, as `sha256sum` prints it.
pub(crate) fn sha256(bytes: &[u8]) -> String {
    use sha2::{Digest, Sha256};
    data_encoding::HEXLOWER.encode(&Sha256::digest(bytes))
}
