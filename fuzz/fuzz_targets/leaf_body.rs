//! What a crewmate signed: header and entries, by somebody whose keys are good and who may write anything.

#![no_main]

use std::sync::LazyLock;

use holdfast_core::exchange::sealed::{Audience, SealedLeaf};
use holdfast_core::fuzz::{pack, signed_text, unpack};
use holdfast_fuzz::people::Crew;
use holdfast_fuzz::{laws, within};
use libfuzzer_sys::fuzz_target;

static CREW: LazyLock<Crew> = LazyLock::new(Crew::new);

/// The body: as it is, or with a header that is right before it.
fn body(data: &[u8]) -> Vec<u8> {
    let Some((b'+', lines)) = data.split_first() else { return data.to_vec() };
    let count = lines.iter().filter(|byte| **byte == b'\n').count();
    let header = serde_json::to_string(&CREW.header(count as u64)).expect("a header is JSON");
    [header.as_bytes(), b"\n", lines].concat()
}

fuzz_target!(|data: &[u8]| {
    let crew = &*CREW;
    let body = body(data);
    let text = signed_text(&crew.ana.certificate, &crew.ana.device, &body);
    let read = within(64 * text.len() + 64 * 1024, || SealedLeaf::read(&text));
    let leaf = match read {
        Ok(leaf) => leaf,
        Err(fault) => return laws::said(fault),
    };
    laws::leaf(&leaf, &text, &crew.ana.device);
    assert!(unpack(&pack(&text)) == Ok(text), "what may be written may be packed");
    // Sealing costs a hundred times as much as reading: one leaf in 64 goes the whole way.
    if leaf.content[0] % 64 == 0 {
        let open = |keys: &holdfast_core::trust::Keys| keys.public().open;
        let audience = Audience {
            founder: vec![open(&crew.coach.device)],
            member: vec![open(&crew.ana.device)],
            papers: Vec::new(),
        };
        let file = leaf.seal(&crew.ana.device, &audience).expect("what was read can be sealed");
        let name = leaf.name(&file);
        let opened = SealedLeaf::open(&name, &file, &[&crew.ana.device], &crew.expected());
        match opened {
            Ok(opened) => assert_eq!(opened, leaf),
            // Of another crew or thread; all else of it is right.
            Err(fault) => laws::said(fault),
        }
    }
});
