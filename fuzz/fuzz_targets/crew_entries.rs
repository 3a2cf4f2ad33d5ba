//! What a member wrote, on the coach's device: taken in, folded and drawn, whatever it says.

#![no_main]

use std::sync::LazyLock;

use chrono::NaiveDate;
use holdfast_core::journal::Entry;
use holdfast_fuzz::homes::{Homes, exchange};
use holdfast_fuzz::laws;
use libfuzzer_sys::fuzz_target;
use serde::Serialize;
use serde_json::Value;

static HOMES: LazyLock<Homes> = LazyLock::new(Homes::start);

/// Whom the kept lines are about: in their place stands the member.
const SOMEBODY: &str = "2f303132-3334-4536-b738-393a3b3c3d3e";

/// A line about the member, with another number: each entry of a leaf has a higher one than that before it.
fn numbered(line: &str, number: u64) -> Option<Entry> {
    let line = &line.replace(SOMEBODY, &HOMES.person().to_string());
    let entry = Entry::read(HOMES.device(), line).ok()?;
    let (old, new) = (format!("\"n\":{},", entry.id.number), format!("\"n\":{number},"));
    Entry::read(HOMES.device(), &line.replacen(&old, &new, 1)).ok()
}

/// No text of a screen moves a cursor.
fn shown(screen: &impl Serialize) {
    fn law(value: &Value) {
        match value {
            Value::String(text) => assert!(!text.contains(char::is_control), "{text:?}"),
            Value::Array(items) => items.iter().for_each(law),
            Value::Object(fields) => fields.values().for_each(law),
            Value::Null | Value::Bool(_) | Value::Number(_) => {}
        }
    }
    law(&serde_json::to_value(screen).expect("a screen is data"));
}

fuzz_target!(|data: &[u8]| {
    let Ok(text) = std::str::from_utf8(data) else { return };
    let mut entries: Vec<Entry> = Vec::new();
    for line in text.lines().take(32) {
        let number = entries.last().map_or(HOMES.last, |last| last.id.number) + 1;
        let entry = numbered(line, number);
        entries
            .extend(entry.filter(|entry| entry.id.number >= number && entry.id.number <= 1 << 40));
    }
    if entries.is_empty() {
        return;
    }
    let written = entries.len() as u64;
    let file = HOMES.next(entries);
    let coach = HOMES.coach();
    let (report, _) = exchange(&coach, &[file]);
    assert_eq!((report.leaves, report.entries), (1, written), "{:?}", report.aside);
    report.told.iter().for_each(laws::said);
    let state = coach.state_text().expect("a state");
    for date in ["2026-11-03", "2026-11-09", "2027-02-01"] {
        let date: NaiveDate = date.parse().expect("a date");
        shown(&coach.board(date).expect("a board"));
        // By a name the member may have changed: not to be found is no fault.
        if let Ok(page) = coach.member("ines".into(), date) {
            shown(&page);
        }
    }
    assert!(!coach.refold().expect("folded again"), "folded again it is another state");
    assert_eq!(coach.verify().expect("checked").repaired, None);
    assert_eq!(coach.state_text().expect("a state"), state);
    coach.shut().expect("shut");
});
