//! A crew that meets in a folder which Syncthing carries between two machines: the real program exchanges with either end.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use holdfast_core::put_file;
use holdfast_tests::long_log::{LongLog, Side};
use holdfast_tests::train::squats;
use holdfast_tests::{Carrier, Crew, Device, SMALL_PLAN, run};

use crate::server::now;
use crate::syncthing::{Pair, version};

/// What an exchange with a side's folder says. One that fails is a fault of ours.
fn exchange(home: &Path, pair: &Pair, side: usize) -> String {
    let carrier = pair.files(side);
    let ran = run(home, &["exchange", "--carrier", &carrier.to_string_lossy()], "");
    assert!(ran.fine && ran.err.is_empty(), "{ran:?}");
    ran.out
}

/// What a device holds, in its home when it is shut.
fn state(home: &Path) -> String {
    let device = Device::open(home.to_owned(), now()).unwrap();
    let state = device.holdfast.state_text().unwrap();
    device.holdfast.shut().unwrap();
    state
}

/// The homes of a coach, of the same coach's laptop, and of an athlete who has trained. What they exchanged so far was
/// elsewhere.
fn crew(folder: &Path) -> [PathBuf; 3] {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    let code = crew.coach.on_paper().unwrap();
    let home = crew.folder().join("laptop");
    let laptop = Device::restored(home, &code, &crew.carrier, (7, ines.now())).unwrap();
    for day in 3..=6 {
        squats(ines, &format!("2026-11-{day:02}"), &[(50, 8), (60, 6), (70, 6)]);
        let lost = Carrier::new(crew.folder().join("lost"));
        ines.exchange(&lost).unwrap();
    }
    [("coach", &crew.coach), ("laptop", &laptop), ("ines", ines)].map(|(name, device)| {
        device.holdfast.shut().unwrap();
        let home = folder.join(name);
        holdfast_tests::faults::copy_all(&device.home, &home);
        home
    })
}

/// All exchange, and Syncthing carries, until there is nothing more to carry.
fn meet(pair: &Pair, homes: &[(&PathBuf, usize)]) -> Vec<String> {
    let mut said = Vec::new();
    for round in 0..8 {
        let before = pair.seen(0);
        for (home, side) in homes {
            said.push(exchange(home, pair, *side));
            pair.same("what was put on one side is not on the other", |_| true);
        }
        if round > 0 && pair.seen(0) == before {
            return said;
        }
    }
    panic!("they never come to an end: {said:?}");
}

#[test]
fn two_devices_meet_through_two_folders_that_a_synchroniser_keeps_the_same() {
    println!("{}", version());
    let folder = tempfile::tempdir().unwrap();
    let [coach, laptop, ines] = crew(folder.path());
    let mut pair = Pair::start(0);
    let all = [(&coach, 0), (&laptop, 1), (&ines, 1)];
    // The laptop knows of no file of its own yet: what it sees came by the synchroniser.
    exchange(&coach, &pair, 0);
    let took =
        pair.same("the coach's files are not on the other side", |pair| !pair.seen(1).is_empty());
    println!("Syncthing: {} files after {} ms", pair.seen(1).len(), took.as_millis());
    let said = meet(&pair, &all);
    assert!(said.iter().all(|said| !said.contains("Left alone")), "{said:?}");
    assert_eq!(state(&laptop), state(&coach));
    // Ines's sets came to both.
    let lifts = state(&coach).matches("lift").count();
    assert!(lifts >= 12, "{lifts}");

    // While they are apart, a leaf is damaged in one folder and otherwise in the other: Syncthing keeps both.
    for side in [0, 1] {
        pair.kill(side);
    }
    let (name, content) = pair.seen(0).into_iter().next_back().unwrap();
    fs::write(pair.files(0).join(&name), &content[..content.len() / 2]).unwrap();
    fs::write(pair.files(1).join(&name), &content[..content.len() / 3]).unwrap();
    // What a stop left of a file of ours, and what one left of Syncthing's.
    let half = [format!(".{name}.7.tmp"), ".syncthing.note.tmp".to_owned()];
    for (side, half) in half.iter().enumerate() {
        fs::write(pair.files(side).join(half), "half").unwrap();
        pair.run(side);
    }
    let is_conflict = |name: &String| name.contains(".sync-conflict-");
    pair.wait("there is no conflict", |pair| pair.seen(0).keys().any(is_conflict));
    fs::remove_file(pair.files(1).join(&half[1])).unwrap();
    let said = meet(&pair, &all);
    println!("Syncthing: with a conflict copy: {}", said[0].replace('\n', " "));
    let named = said.iter().filter(|said| said.contains(".sync-conflict-")).count();
    assert_eq!(named, said.len(), "each time it is named: {said:?}");
    for said in &said {
        assert!(!said.contains(".tmp") && !said.contains(".stfolder"), "{said}");
    }
    for side in [0, 1] {
        let there = pair.seen(side);
        assert!(there.get(&name) == Some(&content), "its writer has not written {name} again");
        assert_eq!(there.keys().filter(|name| is_conflict(name)).count(), 1);
    }
    assert_eq!(state(&laptop), state(&coach));
}

/// How many entries an exchange says that it fetched.
fn fetched(said: &str) -> u64 {
    let (before, _) = said.split_once(" new entr").unwrap_or_default();
    before.rsplit(' ').next().and_then(|number| number.parse().ok()).unwrap_or(0)
}

/// Syncthing on the receiving side is killed while a long log is on its way, and started again.
#[test]
fn killed_in_the_middle_of_a_transfer_it_goes_on_and_nothing_half_is_taken_in() {
    let folder = tempfile::tempdir().unwrap();
    let log = LongLog { side: Side::Member, entries: 40_000, a_leaf: Some(4_000), recipients: 5 };
    let told = log.tell(folder.path());
    let mut pair = Pair::start(256);
    for file in told.files.iter() {
        assert!(put_file(&pair.files(0), &file).unwrap());
    }
    let wanted: BTreeMap<String, Vec<u8>> =
        told.files.iter().map(|file| (file.name, file.content)).collect();
    let half = |pair: &Pair| {
        let some = pair.seen(1).len();
        some > 0 && some < wanted.len() && !pair.on_the_way(1).is_empty()
    };
    pair.wait("there is no middle", half);
    pair.kill(1);
    let (some, cut) = (pair.seen(1).len(), pair.on_the_way(1).len());
    println!(
        "Syncthing: killed with {some} of {} files there and {cut} on their way",
        wanted.len()
    );
    let said = exchange(&told.home, &pair, 1);
    println!("Syncthing: in the middle: {}", said.trim());
    assert!(!said.contains("Left alone"), "{said}");
    let early = fetched(&said);

    pair.run(1);
    let took = pair.same("it does not go on", |pair| pair.seen(1).len() >= wanted.len());
    println!("Syncthing: {} bytes, the rest in {} ms", told.files.bytes(), took.as_millis());
    let there = pair.seen(1);
    for (name, content) in &wanted {
        assert!(there.get(name) == Some(content), "{name}");
    }
    let said = exchange(&told.home, &pair, 1);
    println!("Syncthing: afterwards: {}", said.trim());
    assert!(early < told.entries, "that was no middle: {early} of {}", told.entries);
    assert_eq!(early + fetched(&said), told.entries);
}
