//! Hashes and signatures, each under a label of its own: what is made for one use means nothing in another.

use sha2::{Digest, Sha256};

use crate::planted::{Planted, planted};

/// Sixteen bytes of ASCII, the last one zero.
pub(crate) type Label = [u8; 16];

pub(super) const SIGN: Label = *b"holdfast/sign/1\0";
pub(super) const OPEN: Label = *b"holdfast/open/1\0";
pub(super) const ID: Label = *b"holdfast/idof/1\0";
pub(super) const CODE: Label = *b"holdfast/code/1\0";
pub(super) const CERTIFICATE: Label = *b"holdfast/cert/1\0";
pub(super) const STOP: Label = *b"holdfast/stop/1\0";
pub(super) const KEYS: Label = *b"holdfast/keys/1\0";
pub(super) const COPY: Label = *b"holdfast/copy/1\0";
pub(super) const BOOT: Label = *b"holdfast/boot/1\0";
pub(super) const PAIR: Label = *b"holdfast/pair/1\0";
pub(super) const WORD: Label = *b"holdfast/word/1\0";
pub(super) const POST: Label = *b"holdfast/post/1\0";
pub(crate) const LEAF: Label = *b"holdfast/leaf/1\0";
pub(crate) const LANE: Label = *b"holdfast/lane/1\0";
pub(crate) const NAME: Label = *b"holdfast/name/1\0";

/// SHA-256 of a label and of some bytes, one after the other.
pub(crate) fn hash(label: &Label, parts: &[&[u8]]) -> [u8; 32] {
    let begun = Sha256::new().chain_update(label);
    parts.iter().fold(begun, |hash, part| hash.chain_update(part)).finalize().into()
}

/// A label and some bytes, one after the other: what is signed.
pub(crate) fn under(label: &Label, parts: &[&[u8]]) -> Vec<u8> {
    if planted(Planted::NoLabel) {
        return parts.concat();
    }
    [&[&label[..]], parts].concat().concat()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn labels_end_in_zero_and_are_apart() {
        let all = [
            SIGN,
            OPEN,
            ID,
            CODE,
            CERTIFICATE,
            STOP,
            KEYS,
            COPY,
            BOOT,
            PAIR,
            WORD,
            POST,
            LEAF,
            LANE,
            NAME,
        ];
        for (at, label) in all.iter().enumerate() {
            assert!(label.ends_with(&[0]) && label[..15].is_ascii() && !label[..15].contains(&0));
            assert!(!all[..at].contains(label));
        }
    }
}
