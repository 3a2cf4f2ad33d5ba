//! Names of sealed leaves: made of what their writer is and of the file, never of what somebody typed.

use std::fmt;

use sha2::{Digest, Sha256};

use super::digits::Digits;
use super::envelope::device_digits;
use super::header::MAX_SEQUENCE;
use crate::id::DeviceId;

const SUFFIX: &str = ".leaf";
const DEVICE_DIGITS: usize = 32;
const SEQUENCE_DIGITS: usize = 8;

/// What a lane is called by on a carrier.
pub type Tag = Digits<8>;
/// The digits of a file that its name has.
pub type FileHash = Digits<16>;

/// What the name of a file says: a hint. What a leaf is stands in its first two lines.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct SealedName {
    /// The writer.
    pub device: DeviceId,
    /// The lane's tag.
    pub tag: Tag,
    /// The place in the lane, from 1.
    pub sequence: u64,
    /// The first 16 hexadecimal digits of the stored file's SHA-256.
    pub hash: FileHash,
}

/// The digits of a file that its name has.
pub(crate) fn stored_hash(file: &[u8]) -> FileHash {
    Digits::of(&Sha256::digest(file))
}

impl SealedName {
    /// The lane, by its writer and tag.
    pub(crate) fn lane(&self) -> (DeviceId, Tag) {
        (self.device, self.tag)
    }

    /// Reads a name that a listing gave; none when it is not one of ours, in the one spelling that we write.
    pub fn parse(name: &str) -> Option<SealedName> {
        let mut parts = name.strip_suffix(SUFFIX)?.split('-');
        let (device, tag, sequence, hash) =
            (parts.next()?, parts.next()?, parts.next()?, parts.next()?);
        let small = device.parse::<Digits<DEVICE_DIGITS>>().is_ok();
        let digits =
            sequence.len() == SEQUENCE_DIGITS && sequence.bytes().all(|at| at.is_ascii_digit());
        if !small || !digits || parts.next().is_some() {
            return None;
        }
        Some(SealedName {
            device: DeviceId::parse(device)?,
            tag: tag.parse().ok()?,
            sequence: sequence.parse().ok().filter(|at| (1..=MAX_SEQUENCE).contains(at))?,
            hash: hash.parse().ok()?,
        })
    }
}

impl fmt::Display for SealedName {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let SealedName { device, tag, sequence, hash } = self;
        let device = device_digits(*device);
        write!(f, "{device}-{tag}-{sequence:0SEQUENCE_DIGITS$}-{hash}{SUFFIX}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const GOOD: &str = "0123456789abcdef0123456789abcdef-00ff00ff-00000012-fedcba9876543210.leaf";

    #[test]
    fn a_name_is_made_again_from_its_parts() {
        let name = SealedName::parse(GOOD).unwrap();
        assert_eq!((name.sequence, &*name.tag), (12, "00ff00ff"));
        assert_eq!(name.to_string(), GOOD);
        assert_eq!(GOOD.len(), 72);
        let last = GOOD.replace("00000012", "90000000");
        assert_eq!(SealedName::parse(&last).map(|name| name.sequence), Some(MAX_SEQUENCE));
    }

    #[test]
    fn everything_else_is_foreign() {
        for name in [
            "",
            ".leaf",
            &GOOD.to_uppercase(),
            &format!("../{GOOD}"),
            &format!(".{GOOD}.tmp"),
            &GOOD.replace(".leaf", " (1).leaf"),
            &GOOD.replace(".leaf", ".sync-conflict-20261125-180411-ABCDEFG.leaf"),
            &GOOD.replace("00000012", "00000000"),
            &GOOD.replace("00000012", "90000001"),
            &GOOD.replace("00000012", "+0000012"),
            &GOOD.replace("00000012", "12"),
            &GOOD.replace("fedc", "FEDC"),
            &GOOD.replace("00ff00ff", "00FF00FF"),
            &GOOD.replace("00ff00ff", "0xff00ff"),
            &GOOD.replace("-00ff00ff", ""),
            &GOOD.replace(".leaf", "-0.leaf"),
        ] {
            assert_eq!(SealedName::parse(name), None, "{name}");
        }
    }
}
