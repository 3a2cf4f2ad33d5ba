//! The page on trust says what to type when a phone is lost or somebody leaves: each block of it is run as it stands,
//! each where it says.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use holdfast_tests::sources::folder;
use holdfast_tests::train::squats;
use holdfast_tests::{Carrier, Crew, Device, SMALL_PLAN, later, run_with};

/// The blocks of the page, in order: where, and what is typed there.
fn blocks() -> Vec<(String, Vec<String>)> {
    let page = fs::read_to_string(folder("docs/trust.md")).unwrap();
    let mut blocks = Vec::new();
    for block in page.split("```sh\n").skip(1) {
        let block = block.split("```").next().unwrap();
        let mut lines = block.lines();
        let place = lines.next().unwrap().strip_prefix("# on ").unwrap().to_owned();
        blocks.push((place, lines.map(str::to_owned).collect()));
    }
    blocks
}

#[test]
fn every_command_of_the_page_does_what_it_says() {
    let crew = Crew::start(SMALL_PLAN, &["Ana", "Ben"]).unwrap();
    for athlete in &crew.athletes {
        squats(athlete, "2026-11-03", &[(50, 8), (60, 6), (70, 6)]);
    }
    crew.exchange_all().unwrap();
    let [ana, ben] = &crew.athletes[..] else { panic!() };
    let codes: BTreeMap<&str, String> = [("Ana", ana), ("Maren", &crew.coach)]
        .into_iter()
        .map(|(name, device)| (name, device.on_paper().unwrap()))
        .collect();
    // A copy that a file synchroniser made.
    let copy = crew.folder().join("copy");
    ana.copy_to(&copy);
    fs::copy(ana.home.join("place"), copy.join("place")).unwrap();
    let new_phone = crew.folder().join("new-phone");
    let new_laptop = crew.folder().join("new-laptop");
    let stick = Carrier::new(crew.folder().join("stick"));
    crew.athletes[0].exchange(&stick).unwrap();
    let homes: BTreeMap<&str, PathBuf> = BTreeMap::from([
        ("Ben's phone", crew.athletes[1].home.clone()),
        ("Ana's new phone", new_phone.clone()),
        ("Maren's laptop", crew.coach.home.clone()),
        ("Maren's new laptop", new_laptop.clone()),
        ("the copy of Ana's phone", copy),
    ]);
    for device in [ana, ben, &crew.coach] {
        device.holdfast.shut().unwrap();
    }
    let carrier = crew.carrier.folder().display().to_string();
    let mut said: Vec<(String, String)> = Vec::new();
    let mut laptop_lost = false;
    for (place, lines) in blocks() {
        // After the laptop is gone the coach goes on with the new one.
        laptop_lost |= place == "Maren's new laptop";
        let home: &Path = match (place.as_str(), laptop_lost) {
            ("Maren's laptop", true) => &new_laptop,
            (place, _) => homes.get(place).unwrap_or_else(|| panic!("{place}")),
        };
        let code = if place.contains("Ana") { &codes["Ana"] } else { &codes["Maren"] };
        for line in lines {
            let typed = line.strip_prefix("holdfast ").unwrap_or_else(|| panic!("{line}"));
            let typed = typed.replace("--carrier folder", &format!("--carrier {carrier}"));
            let typed =
                typed.replace("along stick", &format!("along {}", stick.folder().display()));
            let args: Vec<&str> = typed.split(' ').collect();
            let ran = run_with(home, &args, "", &[("HOLDFAST_RECOVERY_CODE", code.as_str())]);
            assert!(ran.fine, "{place}: {line}: {ran:?}");
            said.push((line, ran.out));
        }
    }
    let found = |command: &str, nth: usize| {
        let mut ran = said.iter().filter(|(line, _)| line.contains(command));
        ran.nth(nth).unwrap_or_else(|| panic!("{command}")).1.clone()
    };
    assert!(found("restore", 0).contains("Found Ana's log"), "{said:?}");
    assert!(found("restore", 0).contains("Device 1 is stopped"));
    assert!(found("crew", 0).contains("Stopped"));
    assert!(found("take-out Ben --device 1", 0).contains("Device 1 of Ben is removed"));
    assert!(found("restore", 1).contains("Found Maren's log"));
    assert!(found("take-out Ana", 0).contains("password"));
    assert!(found("forget Ana", 0).contains("deleted"));
    assert!(found("recovery --copied", 0).contains("paper"));
    assert!(found("take-along", 0).contains("Took"));
    // What each of them comes to.
    let now = later(&ben.now(), 24 * 60 * 60 * 1000);
    let laptop = Device::open(new_laptop, now.clone()).unwrap();
    let people = laptop.holdfast.crew().unwrap().people;
    let names: Vec<&str> = people.iter().map(|person| person.name.as_str()).collect();
    assert_eq!(names, ["Maren", "Ben"], "Ana is forgotten");
    assert!(people[1].devices.iter().all(|device| !device.standing), "Ben's phone is stopped");
    let phone = Device::open(new_phone, now).unwrap();
    let sets = phone.holdfast.sets(None, "2026-11-03".parse().ok(), 1).unwrap();
    assert_eq!((sets.name.as_str(), sets.sessions.len()), ("Ana", 1), "her log is hers");
    let carrier = Carrier::new(&carrier);
    assert!(laptop.holdfast.forgotten_files(carrier.listing()).unwrap().is_empty());
}
