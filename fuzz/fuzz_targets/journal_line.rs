//! One line of a journal: kept to the byte, and understood alike by everybody who reads it.

#![no_main]

use std::sync::LazyLock;

use holdfast_core::fuzz::{body_of, line_with, raw_body_of};
use holdfast_core::journal::{Body, Entry, READER_VERSION};
use holdfast_core::{DeviceId, Instant};
use holdfast_fuzz::{laws, within};
use libfuzzer_sys::fuzz_target;

static WRITER: LazyLock<DeviceId> =
    LazyLock::new(|| DeviceId::parse("1f202122-2324-4526-a728-292a2b2c2d2e").expect("a device"));

fuzz_target!(|data: &[u8]| {
    let Ok(raw) = std::str::from_utf8(data) else { return };
    let entry = match within(32 * raw.len() + 16 * 1024, || Entry::read(*WRITER, raw)) {
        Ok(entry) => entry,
        Err(reason) => return laws::said(reason),
    };
    assert_eq!(entry.raw, raw, "a line is kept to the byte");
    laws::line(&entry);
    let written = raw_body_of(raw).expect("an entry has a body");
    let decoded = Body::decode(&entry.kind, &written).filter(|_| entry.needs <= READER_VERSION);
    let Some(body) = within(64 * raw.len() + 16 * 1024, || body_of(raw)) else {
        // Understood by one reader and not by the other: only for its numbers.
        if let Some(decoded) = decoded {
            let at = Instant { wall_ms: 0, offset_min: 0, boot_ms: 0, boot_id: "a".into() };
            let again = line_with(&entry, &decoded, &at);
            let again = again.and_then(|entry| body_of(&entry.raw));
            assert_eq!(again, None, "the same body is understood when it is written anew");
        }
        return;
    };
    assert_eq!(decoded.as_ref(), Some(&body), "two readers of one line");
    assert_eq!(body.kind(), entry.kind);
    // What is written on top of it says the same, and is read again.
    let at = Instant { wall_ms: entry.wall_ms, offset_min: 0, boot_ms: 0, boot_id: "a".into() };
    if let Some(again) = at.is_sane().then(|| line_with(&entry, &body, &at)).flatten() {
        assert_eq!(body_of(&again.raw).as_ref(), Some(&body), "what is printed reads as it was");
        let device = entry.id.device;
        assert_eq!(Entry::read(device, &again.raw), Ok(again), "what is written is read");
    }
});
