//! What a leaf holds at most: each limit is reached, and nothing goes beyond it.

use super::tests::{Somebody, audience, crew, entry, fault, leaf, signed, somebody};
use super::*;
use crate::exchange::MAX_LEAF_ENTRIES;
use crate::instant::Instant;
use crate::journal::{EntryId, Hlc};

/// The text of a leaf of Ana's with these entries, announcing so many.
fn of_lines(ana: &Somebody, header: &str, count: u64, lines: &[String]) -> Vec<u8> {
    let header = header.replace("\"count\":1", &format!("\"count\":{count}"));
    let lines: String = lines.iter().map(|line| format!("{line}\n")).collect();
    signed(ana, &format!("{header}\n{lines}"))
}

#[test]
fn numbers_end_at_the_fortieth_power_of_two() {
    let (coach, ana) = (somebody(1), somebody(2));
    let leaf = leaf(&ana, &ana, &coach, &[1]);
    let numbered = |number: u64| {
        let line = entry(leaf.header.device, number).raw;
        SealedLeaf::read(&of_lines(&ana, &leaf.header_line, 1, &[line]))
    };
    assert_eq!(numbered(1 << 40).unwrap().entries[0].id.number, 1 << 40);
    assert!(matches!(numbered((1 << 40) + 1), Err(SealedFault::Line { line: 3, .. })));
}

#[test]
fn a_leaf_has_an_entry_and_at_most_twenty_thousand() {
    assert_eq!(MAX_LEAF_ENTRIES, 20_000);
    let (coach, ana) = (somebody(1), somebody(2));
    let leaf = leaf(&ana, &ana, &coach, &[1]);
    let raw = entry(leaf.header.device, 1).raw;
    assert_eq!(raw.matches("\"n\":1,").count(), 1, "{raw}");
    let line = |number: u64| raw.replacen("\"n\":1,", &format!("\"n\":{number},"), 1);
    let mut lines: Vec<String> = (1..=20_000).map(line).collect();
    let full = SealedLeaf::read(&of_lines(&ana, &leaf.header_line, 20_000, &lines)).unwrap();
    assert_eq!(full.entries.len(), 20_000);
    lines.push(line(20_001));
    let header =
        |count: u64, lines: &[String]| fault(&of_lines(&ana, &leaf.header_line, count, lines));
    assert!(matches!(header(20_001, &lines), Some(SealedFault::Header { .. })));
    assert!(matches!(header(0, &[]), Some(SealedFault::Header { .. })));
}

/// A leaf of Ana's with one entry of so many bytes of text for each of these.
fn long(coach: &Somebody, ana: &Somebody, texts: impl Iterator<Item = String>) -> SealedLeaf {
    let at =
        Instant { wall_ms: 1_793_728_800_000, offset_min: 60, boot_ms: 0, boot_id: "b".into() };
    let device = ana.certificate.device();
    let entries = texts.zip(1..).map(|(text, number)| {
        let body = serde_json::value::RawValue::from_string(format!("\"{text}\"")).unwrap();
        let hlc = Hlc { ms: at.wall_ms, count: 0 };
        Entry::write(EntryId { device, number }, hlc, &at, None, Vec::new(), "note", body).unwrap()
    });
    let follows = Follows::nothing(crew(coach), ana.id(), &ana.certificate);
    let thread = (crew(coach), ana.id());
    SealedLeaf::write(ana.certificate, thread, follows, Vec::new(), entries.collect())
}

#[test]
fn what_is_too_large_is_not_sealed() {
    const LINE: usize = 60 * 1024;
    let (coach, ana) = (somebody(1), somebody(2));
    let seal = |leaf: &SealedLeaf| leaf.seal(&ana.device, &audience(&coach, &ana));
    // What compresses well is held to 16 MiB of text, whatever it would come to.
    let alike = |lines: usize| long(&coach, &ana, std::iter::repeat_n("x".repeat(LINE), lines));
    let fits = alike(MAX_INFLATED_BYTES / LINE - 1);
    assert!(seal(&fits).unwrap().len() < 1024 * 1024);
    let over = alike(MAX_INFLATED_BYTES / LINE + 1);
    let bytes = over.text(&ana.device).len() as u64;
    assert!(bytes > MAX_INFLATED_BYTES as u64);
    assert_eq!(seal(&over), Err(SealedFault::TooLarge { bytes }));
    // What does not compress is held to a file of 4 MiB: three quarters of base64 are left.
    let mut drawn = 1_u64;
    let mut chance = |_| {
        let bytes = std::iter::repeat_with(|| {
            drawn = drawn.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            (drawn >> 56) as u8
        });
        data_encoding::BASE64.encode(&bytes.take(LINE * 3 / 4).collect::<Vec<u8>>())
    };
    let mut drawn = |lines: usize| long(&coach, &ana, (0..lines).map(&mut chance));
    let packed = |bytes: usize| bytes * 4 / 3 / LINE;
    assert!(seal(&drawn(packed(MAX_SEALED_BYTES) - 4)).unwrap().len() <= MAX_SEALED_BYTES);
    let large = drawn(packed(MAX_SEALED_BYTES) + 4);
    assert!(large.text(&ana.device).len() < MAX_INFLATED_BYTES);
    match seal(&large) {
        Err(SealedFault::TooLarge { bytes }) => assert!(bytes > MAX_SEALED_BYTES as u64),
        other => panic!("{:?}", other.map(|file| file.len())),
    }
}
