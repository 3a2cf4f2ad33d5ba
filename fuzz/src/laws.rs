//! Laws that several readers owe.

use std::collections::BTreeSet;
use std::fmt::{self, Display};

use holdfast_core::exchange::MAX_LEAF_ENTRIES;
use holdfast_core::exchange::sealed::{MAX_INFLATED_BYTES, SEALED_FORMAT, SealedLeaf};
use holdfast_core::journal::{Entry, MAX_DEPTH, MAX_LINE_BYTES};
use holdfast_core::trust::Keys;
use serde::de::{Deserializer, MapAccess, Visitor};
use serde_json::value::RawValue;

/// The longest sentence that says what is wrong with something, in characters.
pub const MOST_SAID: usize = 600;

/// What is said to a person can be shown on one line of a terminal, and has an end.
pub fn said(message: impl Display) {
    let text = message.to_string();
    assert!(!text.is_empty(), "nothing is said");
    assert!(!text.contains(char::is_control), "a control character: {text:?}");
    let signs = text.chars().count();
    assert!(signs <= MOST_SAID, "{signs} signs: {}", text.chars().take(80).collect::<String>());
}

/// A leaf that was read: it prints as the text it was read from, and nothing in it is above its limits.
pub fn leaf(leaf: &SealedLeaf, text: &[u8], keys: &Keys) {
    assert_eq!(leaf.text(keys), text, "a leaf prints as it was read");
    assert!(text.len() <= MAX_INFLATED_BYTES);
    let (header, entries) = (&leaf.header, &leaf.entries);
    assert_eq!(header.leaf, SEALED_FORMAT);
    assert_eq!(header.device, leaf.certificate.device());
    assert_eq!(header.person, leaf.certificate.person());
    assert_eq!(header.count, entries.len() as u64);
    assert!((1..=MAX_LEAF_ENTRIES).contains(&header.count));
    let placed = 1..=90_000_000;
    assert!(placed.contains(&header.sequence));
    assert!(is_hex(&header.previous, 64));
    assert!(header.seen.len() <= 16);
    assert!(header.seen.iter().all(|seen| placed.contains(&seen.1) && is_hex(&seen.2, 16)));
    let devices: BTreeSet<_> = header.seen.iter().map(|seen| seen.0).collect();
    assert_eq!(devices.len(), header.seen.len(), "a lane is seen once");
    assert!(!devices.contains(&header.device), "nobody sees their own lane");
    assert!(leaf.header_line.len() <= 4 * 1024);
    assert!(deepest(&leaf.header_line) <= 3);
    let fields = ["leaf", "crew", "person", "device", "of", "sequence", "previous", "count"];
    once(&leaf.header_line, &[&fields[..], &["reads", "seen"]].concat());
    let mut last = 0;
    for entry in entries {
        let number = entry.id.number;
        assert!(number > last && number <= 1 << 40, "numbers rise to 2^40");
        last = number;
        line(entry);
    }
}

/// A line that was read as an entry.
pub fn line(entry: &Entry) {
    let raw = &entry.raw;
    assert!(raw.len() <= MAX_LINE_BYTES);
    assert!(entry.id.number > 0 && i64::try_from(entry.id.number).is_ok());
    assert!(deepest(raw) <= MAX_DEPTH);
    once(raw, &["v", "n", "hlc", "t", "k", "id", "body"]);
    assert_eq!(Entry::read(entry.id.device, raw).as_ref(), Ok(entry), "a line is read twice alike");
}

/// How deep JSON is nested, read part by part: numbers may be larger than anything here could hold.
fn deepest(text: &str) -> usize {
    let text = text.trim();
    let inner: Vec<Box<RawValue>> = match text.as_bytes().first() {
        Some(b'[') => serde_json::from_str(text).expect("a list"),
        Some(b'{') => fields(text).into_iter().map(|(_, value)| value).collect(),
        _ => return 0,
    };
    1 + inner.iter().map(|part| deepest(part.get())).max().unwrap_or(0)
}

fn is_hex(text: &str, digits: usize) -> bool {
    text.len() == digits && text.bytes().all(|byte| b"0123456789abcdef".contains(&byte))
}

/// Each of some fields stands once in an object's line.
fn once(line: &str, wanted: &[&str]) {
    let found = fields(line);
    for field in wanted {
        let times = found.iter().filter(|(key, _)| key == field).count();
        assert_eq!(times, 1, "{field} stands {times} times");
    }
}

/// The fields of an object as they stand, those that stand twice too.
fn fields(object: &str) -> Vec<(String, Box<RawValue>)> {
    struct Fields;
    impl<'de> Visitor<'de> for Fields {
        type Value = Vec<(String, Box<RawValue>)>;
        fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
            f.write_str("an object")
        }
        fn visit_map<M: MapAccess<'de>>(self, mut map: M) -> Result<Self::Value, M::Error> {
            let mut fields = Vec::new();
            while let Some(field) = map.next_entry()? {
                fields.push(field);
            }
            Ok(fields)
        }
    }
    serde_json::Deserializer::from_str(object).deserialize_map(Fields).expect("an object")
}
