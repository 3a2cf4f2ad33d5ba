//! Parts of a lane: a server has a folder for each, so that a device lists those that may have something new.

use std::fmt;

use super::{SealedName, Tag};
use crate::id::DeviceId;

/// Places of a lane in one part. A listing has some 400 bytes for each file or folder (WebDAV): with fewer places the list of
/// parts grows with the history, with more the last part of every lane. Around 32 both are small.
pub const PLACES_A_PART: u64 = 32;

/// So many places of a lane, one after the other.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct LanePart {
    /// The writer.
    pub device: DeviceId,
    /// The lane's tag.
    pub tag: Tag,
    /// Its first place: 1, 33, 65 and so on.
    pub first: u64,
}

impl LanePart {
    /// The part that a file lies in.
    pub fn of(name: &SealedName) -> LanePart {
        let first = name.sequence - (name.sequence - 1) % PLACES_A_PART;
        LanePart { device: name.device, tag: name.tag, first }
    }

    /// Reads the name of a folder; none when it is no part's, in the one spelling that we write.
    pub fn parse(folder: &str) -> Option<LanePart> {
        // A leaf's name begins with its lane and its place.
        let name = SealedName::parse(&format!("{folder}-{}.leaf", "0".repeat(16)))?;
        Some(LanePart::of(&name)).filter(|part| part.first == name.sequence)
    }

    /// Its last place.
    pub(crate) fn last(&self) -> u64 {
        self.first + PLACES_A_PART - 1
    }
}

/// What its folder is called.
impl fmt::Display for LanePart {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let LanePart { device, tag, first } = *self;
        let name = SealedName { device, tag, sequence: first, hash: super::Digits::of(&[]) };
        let name = name.to_string();
        f.write_str(name.rsplit_once('-').map_or("", |(folder, _)| folder))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const LANE: &str = "0123456789abcdef0123456789abcdef-00ff00ff";

    fn at(sequence: u64) -> SealedName {
        SealedName::parse(&format!("{LANE}-{sequence:08}-fedcba9876543210.leaf")).unwrap()
    }

    #[test]
    fn every_place_is_in_one_part_and_its_folder_reads_back() {
        for (sequence, first) in
            [(1, 1), (2, 1), (32, 1), (33, 33), (64, 33), (65, 65), (90_000_000, 89_999_969)]
        {
            let part = LanePart::of(&at(sequence));
            assert_eq!(part.to_string(), format!("{LANE}-{first:08}"), "{sequence}");
            assert_eq!(LanePart::parse(&part.to_string()), Some(part));
            assert!((part.first..=part.last()).contains(&sequence));
        }
    }

    #[test]
    fn no_other_folder_is_a_part() {
        let good = format!("{LANE}-00000033");
        assert!(LanePart::parse(&good).is_some());
        for odd in [
            "",
            "pairing",
            LANE,
            &good.replace("33", "34"),
            &good.replace("00000033", "00000000"),
            &good.replace("00000033", "33"),
            &good.replace("00000033", "90000001"),
            &good.to_uppercase(),
            &format!("{good}-"),
            &format!("../{good}"),
            &at(33).to_string(),
        ] {
            assert_eq!(LanePart::parse(odd), None, "{odd}");
        }
    }
}
