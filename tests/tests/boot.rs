//! Which boot of a phone it was, and how long ago that began, is nobody's business: it names the phone to whoever has
//! seen it elsewhere, and systems ask apps not to send it on.

use std::collections::BTreeSet;
use std::fs;

use holdfast_core::Instant;
use holdfast_core::journal::Entry;
use holdfast_tests::train::whole_day;
use holdfast_tests::{Crew, Device, SMALL_PLAN, Writer};
use serde_json::Value;

const BOOT: &str = "7f3a-the-systems-own-name-for-a-boot";
const UP_MS: i64 = 987_654_000_000;

/// Every moment that stands in an entry.
fn moments(value: &Value, found: &mut Vec<(String, i64, i64)>) {
    match value {
        Value::Object(fields) => {
            if let (Some(boot), Some(ms)) = (fields.get("boot_id"), fields.get("boot_ms")) {
                let wall = fields["wall_ms"].as_i64().unwrap();
                found.push((boot.as_str().unwrap().to_owned(), ms.as_i64().unwrap(), wall));
            }
            fields.values().for_each(|value| moments(value, found));
        }
        Value::Array(values) => values.iter().for_each(|value| moments(value, found)),
        _ => {}
    }
}

fn moments_of(entries: &[Entry]) -> Vec<(String, i64, i64)> {
    let mut found = Vec::new();
    for entry in entries {
        moments(&serde_json::from_str(&entry.raw).unwrap(), &mut found);
    }
    found
}

#[test]
fn neither_a_boots_name_nor_its_age_leaves_a_phone() {
    let crew = Crew::start(SMALL_PLAN, &["Ana", "Ben"]).unwrap();
    let coach = Writer::at(&crew.coach);
    let mut names = BTreeSet::new();
    for athlete in &crew.athletes {
        athlete.go_to("2026-11-03");
        let now = Instant { boot_ms: UP_MS, boot_id: BOOT.into(), ..athlete.now() };
        let began_ms = now.wall_ms - UP_MS;
        athlete.put_at(now);
        whole_day(athlete, "Any evening");
        athlete.exchange(&crew.carrier).unwrap();
        let leaves = crew.carrier.leaves_of(athlete);
        let entries: Vec<Entry> =
            leaves.iter().flat_map(|file| coach.opens(&coach, file).entries).collect();
        let moments = moments_of(&entries);
        assert!(moments.len() > 5, "{}", moments.len());
        let boots: BTreeSet<&str> = moments.iter().map(|(boot, ..)| boot.as_str()).collect();
        assert_eq!(boots.len(), 1, "one boot has one name");
        names.extend(boots.into_iter().map(str::to_owned));
        for (_, boot_ms, wall_ms) in &moments {
            // What began when the clock says so differs from the truth by as much as nobody can guess.
            let told = wall_ms - boot_ms - began_ms;
            assert!(told.abs() > 60_000, "{told}");
        }
        // Differences are as they were.
        let between = |of: fn(&(String, i64, i64)) -> i64| {
            moments.windows(2).map(|two| of(&two[1]) - of(&two[0])).collect::<Vec<_>>()
        };
        assert_eq!(between(|moment| moment.1), between(|moment| moment.2));
        nowhere(athlete);
    }
    assert_eq!(names.len(), 2, "two phones name one boot apart");
}

/// Not in a file of the home folder either, which a backup may take along.
fn nowhere(device: &Device) {
    let mut folders = vec![device.home.clone()];
    while let Some(folder) = folders.pop() {
        for file in fs::read_dir(folder).unwrap() {
            let path = file.unwrap().path();
            if path.is_dir() {
                folders.push(path);
                continue;
            }
            let bytes = fs::read(&path).unwrap();
            let found = bytes.windows(BOOT.len()).any(|part| part == BOOT.as_bytes());
            assert!(!found, "{}", path.display());
        }
    }
}
