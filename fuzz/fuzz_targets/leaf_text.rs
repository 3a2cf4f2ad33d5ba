//! The text of a leaf as it comes out of its seal: certificate and signature first. Nobody who alters it can sign it.

#![no_main]

use std::sync::LazyLock;

use holdfast_core::exchange::sealed::SealedLeaf;
use holdfast_fuzz::people::Crew;
use holdfast_fuzz::{laws, within};
use libfuzzer_sys::fuzz_target;

static CREW: LazyLock<Crew> = LazyLock::new(Crew::new);

fuzz_target!(|text: &[u8]| {
    match within(64 * text.len() + 64 * 1024, || SealedLeaf::read(text)) {
        Ok(leaf) => {
            laws::leaf(&leaf, text, &CREW.ana.device);
            assert!(text.len() > 363, "a first line is 363 bytes");
            let mut altered = text.to_vec();
            // Somewhere else each time, so that in many runs it was everywhere.
            let at = usize::from(leaf.content[0]) * text.len() / 256;
            altered[at] ^= 1 << (leaf.content[1] % 8);
            assert!(SealedLeaf::read(&altered).is_err(), "byte {at} is not covered");
        }
        Err(fault) => laws::said(fault),
    }
});
