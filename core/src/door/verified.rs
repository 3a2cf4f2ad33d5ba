//! What a full check of a home found.

use serde::Serialize;

use crate::device::{Device, Rebuilt};
use crate::error::Result;
use crate::exchange::leaves;
use crate::store::entries;

/// What a full check looked at and found.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct Verified {
    /// Entries whose lines are as they were written.
    pub entries: u64,
    /// Leaf files that are.
    pub leaves: u64,
    /// What had to be put right, in words; none when all was well.
    pub repaired: Option<String>,
}

/// Counts what was looked at.
pub(super) fn verified(device: &Device) -> Result<Verified> {
    Ok(Verified {
        entries: entries(device.reader())?,
        leaves: leaves(device.reader())?,
        repaired: device.rebuilt.as_ref().map(Rebuilt::text),
    })
}
