//! What stands inside the seal: compressed and padded bytes.

#![no_main]

use std::io::Read;

use flate2::Crc;
use flate2::bufread::DeflateDecoder;
use holdfast_core::exchange::sealed::MAX_INFLATED_BYTES;
use holdfast_core::fuzz::{pack, unpack};
use holdfast_fuzz::{laws, within};
use libfuzzer_sys::fuzz_target;

/// No leaf inflates to more than so many times its size.
const MOST_TIMES: usize = 64;

/// The size that so many bytes are padded to, as docs/leaf.md says it.
fn padded(bytes: usize) -> usize {
    let steps = (1..=6).map(|step| 1024 << step);
    steps.clone().find(|size| bytes <= *size).unwrap_or(bytes.div_ceil(65_536) * 65_536)
}

/// A member around raw bytes, with a checksum that is right where they inflate; and what they inflate to.
fn member(raw: &[u8]) -> (Vec<u8>, Option<Vec<u8>>) {
    let (mut text, mut inflater) = (Vec::new(), DeflateDecoder::new(raw));
    let most = padded(raw.len() + 18) * MOST_TIMES;
    let inflated = inflater.by_ref().take(most as u64 + 1).read_to_end(&mut text).is_ok();
    let used = raw.len() - inflater.into_inner().len();
    let mut crc = Crc::new();
    crc.update(&text);
    let mut file = vec![0x1f, 0x8b, 8, 0, 0, 0, 0, 0, 0, 255];
    file.extend_from_slice(&raw[..used]);
    file.extend_from_slice(&crc.sum().to_le_bytes());
    file.extend_from_slice(&(text.len() as u32).to_le_bytes());
    file.resize(padded(file.len()), 0);
    let most = MAX_INFLATED_BYTES.min(file.len() * MOST_TIMES);
    (file, (inflated && text.len() <= most).then_some(text))
}

/// Bytes as they are: what is taken is one member and zeros.
fn law(packed: &[u8]) -> Option<Vec<u8>> {
    let most = 4 * MOST_TIMES * packed.len() + 128 * 1024;
    let text = match within(most, || unpack(packed)) {
        Ok(text) => text,
        Err(fault) => {
            laws::said(fault);
            return None;
        }
    };
    assert!(text.len() <= MAX_INFLATED_BYTES && text.len() <= MOST_TIMES * packed.len());
    assert_eq!(packed.len(), padded(packed.len()), "sizes are steps");
    assert_eq!(packed[..8], [0x1f, 0x8b, 8, 0, 0, 0, 0, 0], "a member without flags and time");
    // Packed again it says the same, in no more room than a leaf may take.
    let again = pack(&text);
    assert_eq!(again.len(), padded(again.len()));
    assert!(unpack(&again).as_ref() == Ok(&text));
    Some(text)
}

fuzz_target!(|data: &[u8]| {
    let Some((kind, rest)) = data.split_first() else { return };
    match kind % 3 {
        0 => drop(law(rest)),
        // Padded to its step, so that it is looked at at all.
        1 => {
            let mut file = rest.to_vec();
            file.resize(padded(file.len()), 0);
            law(&file);
        }
        _ => {
            let (file, text) = member(rest);
            assert!(law(&file) == text, "another reader of RFC 1951 finds something else");
            if text.is_some() {
                let mut trailing = file;
                if let Some(last) = trailing.last_mut().filter(|last| **last == 0) {
                    *last = 1;
                    assert!(unpack(&trailing).is_err(), "something stands behind the member");
                }
            }
        }
    }
});
