//! For fuzzers alone, with the feature `fuzz`: each layer of a leaf by itself.

use super::{SealedFault, first_line, pack as packing, scan as head};
use crate::trust::{Certificate, Keys};

/// Looks at the head of a sealed file, as [`super::SealedLeaf::open`] does before the sealing library sees it.
///
/// # Errors
/// [`SealedFault::Envelope`] where it is not sealed as leaves are.
pub fn scan(file: &[u8]) -> Result<(), SealedFault> {
    head::scan(file)
}

/// Compresses a text and pads it.
pub fn pack(text: &[u8]) -> Vec<u8> {
    packing::pack(text)
}

/// Takes off the padding and inflates.
///
/// # Errors
/// [`SealedFault::Packed`] where it is not packed as leaves are.
pub fn unpack(packed: &[u8]) -> Result<Vec<u8>, SealedFault> {
    packing::unpack(packed)
}

/// The text of a leaf with any body, signed by the device that `certificate` names.
pub fn signed_text(certificate: &Certificate, device: &Keys, body: &[u8]) -> Vec<u8> {
    let content = first_line::content_hash(body);
    [first_line::write(certificate, &content, device).as_bytes(), body].concat()
}
