//! Everything about files: leaves and their names, the shelf of a device's own copies, and the exchange
//! with a carrier as steps.
//!
//! A carrier is anything that moves files: a folder, later a server. Nothing in it is ever changed,
//! renamed or deleted, so no two devices can get in each other's way.

mod durable;
mod file;
mod leaf;
mod ledger;
mod name;
pub mod sealed;
mod shelf;
mod steps;
mod take_in;
pub mod web;

pub use durable::is_temporary;
pub(crate) use durable::{flush_folder, publish, replace, replace_private};
pub use file::{AsideFile, CarriedFile, ExchangeReport, FailedFile, ListedFile};
pub(crate) use leaf::sha256;
pub use leaf::{Header, LEAF_FORMAT, Leaf, LeafFault, MAX_LEAF_BYTES, MAX_LEAF_ENTRIES};
pub(crate) use ledger::{ENTRIES_A_LEAF, forked, latest_hlc, leaves, missing, unpublished};
pub use name::LeafName;
pub(crate) use shelf::Shelf;
pub use steps::{ExchangeDid, ExchangeStep, MAX_LISTING};
pub(crate) use steps::{Own, Traffic};
pub(crate) use take_in::take_in;
