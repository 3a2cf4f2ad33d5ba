//! What a full check of a home found.

use serde::Serialize;

use crate::coach::arrivals;
use crate::device::{Device, Rebuilt};
use crate::error::Result;
use crate::exchange::{Seals, leaves};
use crate::store::entries;

/// What a full check looked at and found.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct Verified {
    /// Entries whose lines are as they were written.
    pub entries: u64,
    /// Leaves.
    pub leaves: u64,
    /// Their files that were opened: with their writer's signature, and with entries that are all here.
    pub signed: u64,
    /// Files that lie here for others and that nobody opens here.
    pub unopened: u64,
    /// Chains of leaves that were followed, each of one device in one thread.
    pub chains: u64,
    /// What is missing, does not fit or does not count, in words.
    pub trouble: Vec<String>,
    /// What had to be put right, in words; none when all was well.
    pub repaired: Option<String>,
}

/// Counts what was looked at.
pub(super) fn verified(device: &Device) -> Result<Verified> {
    let Seals { signed, unopened, chains, odd } = device.seals()?;
    let mut trouble = odd;
    trouble.extend(arrivals(device)?);
    Ok(Verified {
        entries: entries(device.reader())?,
        leaves: leaves(device.reader())?,
        signed,
        unopened,
        chains,
        trouble,
        repaired: device.rebuilt.as_ref().map(Rebuilt::text),
    })
}
