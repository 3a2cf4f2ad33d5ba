//! A file that a carrier brings, whatever is in it, on the device of a member: opened, or left alone with a reason.

#![no_main]

use std::sync::LazyLock;

use holdfast_core::exchange::sealed::{MAX_SEALED_BYTES, SealedFault, SealedLeaf};
use holdfast_core::fuzz::scan;
use holdfast_core::trust::Keys;
use holdfast_fuzz::people::Crew;
use holdfast_fuzz::{laws, within};
use libfuzzer_sys::fuzz_target;

/// What no file's hash is, but for one in 2^64.
const NO_FILES: &str = "0000000000000000";

static CREW: LazyLock<(Crew, Keys)> = LazyLock::new(|| {
    let crew = Crew::new();
    let paper = crew.ana.recovery.keys();
    (crew, paper)
});

fuzz_target!(|file: &[u8]| {
    let (crew, paper) = &*CREW;
    // The name fits the file, as a carrier that alters files makes it fit.
    let name = crew.name(file);
    let keys = [&crew.ana.device, paper];
    let most = 256 * file.len() + 512 * 1024;
    let opened = within(most, || SealedLeaf::open(&name, file, &keys, &crew.expected()));
    match opened {
        Ok(leaf) => {
            assert!(file.len() <= MAX_SEALED_BYTES);
            assert_eq!(scan(file), Ok(()));
            assert_eq!(leaf.name(file), name);
            laws::leaf(&leaf, &leaf.text(&crew.ana.device), &crew.ana.device);
            // By any other name it is another file, or one that is still arriving.
            let other = holdfast_core::exchange::sealed::SealedName { sequence: 2, ..name };
            let refused = SealedLeaf::open(&other, file, &keys, &crew.expected());
            assert_eq!(refused, Err(SealedFault::OtherName));
            let other = holdfast_core::exchange::sealed::SealedName {
                hash: NO_FILES.parse().expect("digits"),
                ..name
            };
            let refused = SealedLeaf::open(&other, file, &keys, &crew.expected());
            assert_eq!(refused, Err(SealedFault::Torn));
        }
        Err(fault) => {
            // Only what passed the look at its head was given to the library.
            let seen = !matches!(fault, SealedFault::Envelope | SealedFault::TooLarge { .. });
            assert!(!seen || scan(file).is_ok(), "{fault:?}");
            laws::said(fault);
        }
    }
});
