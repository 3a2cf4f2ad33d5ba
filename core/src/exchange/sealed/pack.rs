//! Compressing and padding: a carrier sees of a leaf's size only its step.
//!
//! One gzip member (RFC 1952) without name, comment or time, then zeros; `gzip -d` opens it as it is.

use std::io::{Read, Write};

use flate2::bufread::GzDecoder;
use flate2::{Compression, GzBuilder};

use super::{MAX_INFLATED_BYTES, SealedFault};

/// The least size.
const LEAST: usize = 2 * 1024;
/// Up to this size the next power of two, above it the next multiple.
const STEP: usize = 64 * 1024;
/// No leaf inflates to more than so many times its size.
const MOST_TIMES: usize = 64;
/// The fixed part of a member's beginning.
const MEMBER: [u8; 8] = [0x1f, 0x8b, 8, 0, 0, 0, 0, 0];

/// The size that so many bytes are padded to.
fn padded(bytes: usize) -> usize {
    if bytes <= STEP { bytes.max(LEAST).next_power_of_two() } else { bytes.next_multiple_of(STEP) }
}

/// Compresses a text and pads it.
pub(super) fn pack(text: &[u8]) -> Vec<u8> {
    let mut packed = GzBuilder::new().write(Vec::new(), Compression::default());
    // Into memory: nothing of it fails.
    let packed = packed.write_all(text).and_then(|()| packed.finish());
    let mut packed = packed.unwrap_or_default();
    // What compresses very well is padded further: no leaf is refused for that.
    let least = packed.len().max(text.len().div_ceil(MOST_TIMES));
    packed.resize(padded(least), 0);
    packed
}

/// Takes off the padding and inflates, counting while it does.
pub(super) fn unpack(packed: &[u8]) -> Result<Vec<u8>, SealedFault> {
    if !packed.starts_with(&MEMBER) || packed.len() != padded(packed.len()) {
        return Err(SealedFault::Packed);
    }
    let most = MAX_INFLATED_BYTES.min(packed.len().saturating_mul(MOST_TIMES));
    let mut member = GzDecoder::new(packed);
    let mut text = Vec::new();
    let read = member.by_ref().take(most as u64 + 1).read_to_end(&mut text);
    if read.is_err() || text.len() > most {
        return Err(SealedFault::Packed);
    }
    match member.into_inner().iter().all(|byte| *byte == 0) {
        true => Ok(text),
        false => Err(SealedFault::Packed),
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    /// However well it compresses.
    #[test]
    fn whatever_is_packed_is_unpacked() {
        for bytes in [0, 1, 131_072, 131_073, 1_000_000, MAX_INFLATED_BYTES] {
            let text = vec![b'x'; bytes];
            assert!(unpack(&pack(&text)) == Ok(text), "{bytes}");
        }
    }

    #[test]
    fn sizes_are_steps() {
        for (bytes, wanted) in [
            (0, 2048),
            (2048, 2048),
            (2049, 4096),
            (40_000, 65_536),
            (65_536, 65_536),
            (65_537, 131_072),
            (140_000, 196_608),
        ] {
            assert_eq!(padded(bytes), wanted, "{bytes}");
            assert_eq!(padded(padded(bytes)), wanted);
        }
    }

    fn member(text: &[u8], build: GzBuilder) -> Vec<u8> {
        let mut packed = build.write(Vec::new(), Compression::default());
        packed.write_all(text).unwrap();
        packed.finish().unwrap()
    }

    fn filled(mut packed: Vec<u8>) -> Vec<u8> {
        packed.resize(padded(packed.len()), 0);
        packed
    }

    #[test]
    fn what_is_packed_otherwise_is_refused() {
        let good = member(b"text\n", GzBuilder::new());
        assert_eq!(unpack(&filled(good.clone())), Ok(b"text\n".to_vec()));
        let two = [&good[..], &good[..]].concat();
        let mut trailing = filled(good.clone());
        *trailing.last_mut().unwrap() = 1;
        let unpadded = good.clone();
        let mut longer = filled(good.clone());
        longer.resize(3 * 1024, 0);
        let mut checksum = filled(good.clone());
        checksum[good.len() - 8] ^= 1;
        let cases = [
            ("two members", filled(two)),
            ("a byte after the padding", trailing),
            ("no padding", unpadded),
            ("another step", longer),
            ("another checksum", checksum),
            ("a name", filled(member(b"text\n", GzBuilder::new().filename("a.txt")))),
            ("a comment", filled(member(b"text\n", GzBuilder::new().comment("a")))),
            ("a time", filled(member(b"text\n", GzBuilder::new().mtime(1)))),
            ("cut short", filled(good[..good.len() - 9].to_vec())),
            ("nothing", vec![0; 2048]),
            ("empty", Vec::new()),
        ];
        for (what, packed) in cases {
            assert_eq!(unpack(&packed), Err(SealedFault::Packed), "{what}");
        }
    }

    /// 2 KiB may inflate to 128 KiB and not to a byte more; nothing to over 16 MiB.
    #[test]
    fn nothing_inflates_without_end() {
        let zeros = |bytes: usize| filled(member(&vec![b'x'; bytes], GzBuilder::new()));
        assert_eq!(unpack(&zeros(131_072)).map(|text| text.len()), Ok(131_072));
        assert_eq!(unpack(&zeros(131_073)), Err(SealedFault::Packed));
        let large = zeros(MAX_INFLATED_BYTES + 1);
        let mut padded_out = large;
        padded_out.resize(padded(1024 * 1024), 0);
        assert_eq!(unpack(&padded_out), Err(SealedFault::Packed));
    }

    proptest! {
        #[test]
        fn every_text_comes_back(text in prop::collection::vec(any::<u8>(), 0..5000)) {
            let packed = pack(&text);
            prop_assert_eq!(padded(packed.len()), packed.len());
            prop_assert_eq!(unpack(&packed), Ok(text));
        }

        #[test]
        fn anything_can_come(mut packed in prop::collection::vec(any::<u8>(), 0..3000)) {
            let _ = unpack(&packed);
            packed.splice(..0, MEMBER);
            let _ = unpack(&filled(packed));
        }
    }
}
