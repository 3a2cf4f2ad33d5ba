//! Leaves written by hand.

use holdfast_core::DeviceId;
use holdfast_core::exchange::{CarriedFile, LeafName};
use sha2::{Digest, Sha256};

/// A file that is named rightly around whatever content it has, as a hostile writer would make it:
/// the core names only leaves that it cut itself.
pub fn forged(device: DeviceId, sequence: u64, content: Vec<u8>) -> CarriedFile {
    let name = LeafName { device, sequence, hash: sha256(&content)[..16].into() };
    CarriedFile { name: name.to_string(), content }
}

/// SHA-256 in hexadecimal.
pub(crate) fn sha256(content: &[u8]) -> String {
    Sha256::digest(content).iter().map(|byte| format!("{byte:02x}")).collect()
}
