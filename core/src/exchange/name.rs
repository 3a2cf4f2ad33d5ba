//! Names of leaf files: made only of what their writer is, never of what somebody typed.

use crate::id::DeviceId;

/// What a leaf's file name says.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct LeafName {
    /// The writer.
    pub device: DeviceId,
    /// Its place in the writer's chain, counted from 1.
    pub sequence: u64,
    /// The first 16 hexadecimal digits of the file's SHA-256.
    pub hash: String,
}

const SUFFIX: &str = ".leaf";
const SEQUENCE_DIGITS: usize = 8;
const HASH_DIGITS: usize = 16;

impl LeafName {
    /// Reads a name that a listing gave; `None` when it is not one of ours.
    ///
    /// A name is only ever compared and made again from its parts, never joined to a path as found.
    pub fn parse(name: &str) -> Option<LeafName> {
        let mut parts = name.strip_suffix(SUFFIX)?.split('-');
        let (device, sequence, hash) = (parts.next()?, parts.next()?, parts.next()?);
        let digits =
            sequence.len() == SEQUENCE_DIGITS && sequence.bytes().all(|byte| byte.is_ascii_digit());
        if parts.next().is_some() || device.len() != 32 || hash.len() != HASH_DIGITS || !digits {
            return None;
        }
        let parsed = LeafName {
            device: DeviceId::parse(device)?,
            sequence: sequence.parse().ok().filter(|sequence| *sequence > 0)?,
            hash: hash.to_owned(),
        };
        // Upper case or any other spelling of the same parts is not the name we would write.
        let lower_hex = |byte: u8| byte.is_ascii_digit() || (b'a'..=b'f').contains(&byte);
        (parsed.to_string() == name && hash.bytes().all(lower_hex)).then_some(parsed)
    }
}

impl std::fmt::Display for LeafName {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let (device, sequence) = (self.device.0.simple(), self.sequence);
        write!(f, "{device}-{sequence:0SEQUENCE_DIGITS$}-{}{SUFFIX}", self.hash)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const GOOD: &str = "0123456789abcdef0123456789abcdef-00000012-fedcba9876543210.leaf";

    #[test]
    fn a_name_is_made_again_from_its_parts() {
        let name = LeafName::parse(GOOD).unwrap();
        assert_eq!(name.sequence, 12);
        assert_eq!(name.to_string(), GOOD);
        assert!(GOOD.len() <= 80);
    }

    #[test]
    fn everything_else_is_foreign() {
        let conflict = GOOD.replace(".leaf", ".sync-conflict-20261125-180411-ABCDEFG.leaf");
        for name in [
            "",
            ".leaf",
            "notes.txt",
            &GOOD.to_uppercase(),
            &format!("../{GOOD}"),
            &format!(".{GOOD}.tmp"),
            &GOOD.replace(".leaf", " (1).leaf"),
            &conflict,
            &GOOD.replace("00000012", "00000000"),
            &GOOD.replace("00000012", "12"),
            &GOOD.replace("fedc", "FEDC"),
            &GOOD.replace("fedc", "zzzz"),
        ] {
            assert_eq!(LeafName::parse(name), None, "{name}");
        }
    }
}
