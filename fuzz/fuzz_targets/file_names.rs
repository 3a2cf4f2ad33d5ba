//! Names that a listing gives: leaves are told from all else by their grammar, in one spelling.

#![no_main]

use holdfast_core::exchange::sealed::SealedName;
use holdfast_core::exchange::web::is_file_name;
use holdfast_fuzz::within;
use libfuzzer_sys::fuzz_target;

/// The highest place in a lane.
const MAX_SEQUENCE: u64 = 90_000_000;

/// `DEVICE-TAG-SEQUENCE-HASH.leaf`, as docs/leaf.md says it: 32, 8, 8 and 16 digits.
fn is_leafs(name: &[u8]) -> bool {
    let Some(stem) = name.strip_suffix(b".leaf") else { return false };
    let parts: Vec<&[u8]> = stem.split(|byte| *byte == b'-').collect();
    let [device, tag, sequence, hash] = parts[..] else { return false };
    let hex = |part: &[u8], digits: usize| {
        part.len() == digits && part.iter().all(|byte| b"0123456789abcdef".contains(byte))
    };
    let place = sequence.iter().try_fold(0_u64, |place, byte| {
        byte.is_ascii_digit()
            .then(|| place.saturating_mul(10).saturating_add(u64::from(byte - b'0')))
    });
    let placed = sequence.len() == 8 && place.is_some_and(|at| (1..=MAX_SEQUENCE).contains(&at));
    hex(device, 32) && hex(tag, 8) && placed && hex(hash, 16)
}

fuzz_target!(|data: &[u8]| {
    let Ok(name) = std::str::from_utf8(data) else { return };
    let parsed = within(1024, || SealedName::parse(name));
    assert_eq!(parsed.is_some(), is_leafs(data), "{name}");
    let is_ours = is_file_name(name);
    if is_ours {
        let plain = |byte: u8| b"abcdefghijklmnopqrstuvwxyz0123456789.-".contains(&byte);
        assert!(name.len() <= 96 && name.bytes().all(plain));
        assert!(name != "." && name != "..");
        assert!(!name.starts_with('.') || name.ends_with(".tmp"), "hidden, and no temporary file");
    }
    if let Some(parsed) = parsed {
        assert_eq!(parsed.to_string(), name, "a name has one spelling");
        assert_eq!(name.len(), 72);
        assert!(is_ours, "a leaf's name is a carrier's");
    }
});
