//! What a carrier may bring: torn, foreign, hostile and missing files.

use std::fs;
use std::process::Command;

use holdfast_core::exchange::sealed::{MAX_SEALED_BYTES, SealedName};
use holdfast_core::exchange::{CarriedFile, ExchangeDid, ExchangeStep, FailedFile, ListedFile};
use holdfast_core::{HoldfastError, put_file};
use holdfast_tests::taps::{begin, kg};
use holdfast_tests::train::squats;
use holdfast_tests::{Carrier, Crew, Device, HOUR, SMALL_PLAN, Writer, changed, sha256};

fn trained() -> Crew {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    squats(&crew.athletes[0], "2026-11-03", &[(50, 8), (60, 6), (70, 6)]);
    squats(&crew.athletes[0], "2026-11-04", &[(52, 8), (62, 6), (72, 6)]);
    crew.athletes[0].exchange(&crew.carrier).unwrap();
    crew
}

#[test]
fn bad_files_are_left_alone_and_named_and_the_rest_folds() {
    let crew = trained();
    let folder = crew.carrier.folder();
    let leaves = crew.carrier.leaves_of(&crew.athletes[0]);
    let last = leaves.last().unwrap();
    // Torn on the way.
    fs::write(folder.join(&last.name), &last.content[..last.content.len() / 2]).unwrap();
    // A conflict copy, a stranger's note, a synchroniser's hidden file, a folder.
    let conflict = last.name.replace(".leaf", ".sync-conflict-20261125-180411.leaf");
    fs::write(folder.join(&conflict), &last.content).unwrap();
    fs::write(folder.join("shopping list.txt"), "eggs").unwrap();
    fs::write(folder.join(".hidden.tmp"), "x").unwrap();
    crew.coach.exchange(&crew.carrier).unwrap();
    let page = crew.coach.holdfast.member("Ines".into(), "2026-11-04".parse().unwrap()).unwrap();
    assert_eq!(page.sessions.len(), 1, "all but the torn leaf is there");
    let board = crew.coach.holdfast.board("2026-11-04".parse().unwrap()).unwrap();
    let said = board.arrivals.join("\n");
    assert!(
        said.contains("shopping list.txt left alone: This is not one of Holdfast's files"),
        "{said}"
    );
    assert!(said.contains("sync-conflict"), "{said}");
    assert!(said.contains("damaged or still arriving"), "{said}");
    assert!(!said.contains("hidden"), "{said}");
    assert!(folder.join("shopping list.txt").exists() && folder.join(&conflict).exists());
    // Whole on a later day: taken in.
    fs::write(folder.join(&last.name), &last.content).unwrap();
    crew.coach.exchange(&crew.carrier).unwrap();
    let page = crew.coach.holdfast.member("Ines".into(), "2026-11-04".parse().unwrap()).unwrap();
    assert_eq!(page.sessions.len(), 2);
}

#[test]
fn what_has_not_arrived_is_counted() {
    let crew = trained();
    let leaves = crew.carrier.leaves_of(&crew.athletes[0]);
    fs::remove_file(crew.carrier.folder().join(&leaves[1].name)).unwrap();
    crew.coach.exchange(&crew.carrier).unwrap();
    let board = crew.coach.holdfast.board("2026-11-04".parse().unwrap()).unwrap();
    assert_eq!(board.arrivals, ["1 file from Ines's device has not arrived: number 2."]);
    // The athlete's next exchange brings it again, byte for byte.
    crew.athletes[0].exchange(&crew.carrier).unwrap();
    let again = fs::read(crew.carrier.folder().join(&leaves[1].name)).unwrap();
    assert_eq!(again, leaves[1].content);
    crew.coach.exchange(&crew.carrier).unwrap();
    let board = crew.coach.holdfast.board("2026-11-04".parse().unwrap()).unwrap();
    assert!(board.arrivals.is_empty(), "{:?}", board.arrivals);
}

/// Every single byte of a leaf matters: flipped or cut anywhere it is left alone, and nothing of it
/// is folded.
#[test]
fn a_leaf_changed_anywhere_is_left_alone() {
    let crew = trained();
    let leaf = crew.carrier.leaves_of(&crew.athletes[0]).remove(1);
    let before = crew.coach.holdfast.state_text().unwrap();
    let name = SealedName::parse(&leaf.name).unwrap();
    // Under the name that its bytes have, as somebody would who means it.
    let refused = |content: Vec<u8>| {
        let hash = sha256(&content)[..16].parse().unwrap();
        let renamed = SealedName { hash, ..name };
        for name in [leaf.name.clone(), renamed.to_string()] {
            let file = CarriedFile { name, content: content.clone() };
            let report = crew.coach.take_in(&[file]).unwrap();
            assert_eq!((report.leaves, report.entries), (0, 0));
        }
    };
    for index in (0..leaf.content.len()).step_by(29) {
        let mut content = leaf.content.clone();
        content[index] ^= 1 << (index % 8);
        refused(content);
        refused(leaf.content[..index].to_vec());
    }
    assert_eq!(crew.coach.holdfast.state_text().unwrap(), before);
    assert_eq!(crew.coach.take_in(&[leaf]).unwrap().leaves, 1);
}

#[test]
fn huge_files_are_left_alone_and_never_fetched() {
    let crew = trained();
    let device = crew.athletes[0].holdfast.who().unwrap().device;
    let [tag, hash] = [8, 16].map(|digits| "0".repeat(digits));
    let (tag, hash) = (tag.parse().unwrap(), hash.parse().unwrap());
    let name = SealedName { device, tag, sequence: 9, hash };
    let listed = ListedFile { name: name.to_string(), bytes: MAX_SEALED_BYTES as u64 + 1 };
    let fetched = |names: &[String]| panic!("asked for {names:?}");
    let report = crew.coach.exchange_by(vec![listed], fetched, |_| Ok(0)).unwrap();
    assert!(report.aside[0].reason.contains("at most"), "{report:?}");
}

/// A newer app's leaf: kinds, fields and entry versions this one does not know are kept, carried on
/// and counted, and the rest of the leaf folds.
#[test]
fn what_a_newer_app_wrote_survives_and_is_counted() {
    let crew = trained();
    let leaf = crew.carrier.leaves_of(&crew.athletes[0]).remove(1);
    let [ines, maren] = [&crew.athletes[0], &crew.coach].map(Writer::at);
    let leaf = ines.opens(&maren, &leaf);
    let newer = |line: &str| {
        let line = line.replacen("\"k\":\"finish\"", "\"k\":\"sauna\"", 1);
        let line = line.replacen("\"v\":1,\"n\":4", "\"v\":2,\"n\":4", 1);
        line.replacen("\"reps\":8", "\"tempo\":\"slow\",\"reps\":8", 1)
    };
    let file = ines.rewrites(&leaf, newer, &[&maren]);
    let content = file.content.clone();
    let report = crew.coach.take_in(&[file]).unwrap();
    assert_eq!((report.leaves, report.aside.len()), (1, 0), "{report:?}");
    let date = "2026-11-03".parse().unwrap();
    let board = crew.coach.holdfast.board(date).unwrap();
    let said = board.arrivals.join("\n");
    assert!(said.contains("2 entries can only be read by a newer Holdfast"), "{said}");
    let lines = crew.coach.holdfast.export().unwrap().journal.join("\n");
    assert!(lines.contains("\"k\":\"sauna\"") && lines.contains("\"tempo\":\"slow\""), "{lines}");
    // Carried on to others, byte for byte.
    let mut put = Vec::new();
    let onto = |files| {
        put.extend(files);
        Ok(0)
    };
    crew.coach.exchange_by(vec![], |_| vec![], onto).unwrap();
    assert!(put.iter().any(|file: &CarriedFile| file.content == content));
}

/// The chain can be checked by hand: a file's name holds what `sha256sum` (GNU coreutils) prints of it, and each
/// header the hash of the leaf before it.
#[test]
fn the_chain_is_what_sha256sum_prints() {
    let crew = trained();
    let [ines, maren] = [&crew.athletes[0], &crew.coach].map(Writer::at);
    let mut previous: Option<String> = None;
    for file in crew.carrier.leaves_of(&crew.athletes[0]) {
        let path = crew.carrier.folder().join(&file.name);
        let printed =
            Command::new("sha256sum").arg(&path).output().expect("sha256sum is installed");
        let printed = String::from_utf8(printed.stdout).unwrap();
        assert!(file.name.contains(&printed[..16]), "{} {printed}", file.name);
        let leaf = ines.opens(&maren, &file);
        if let Some(previous) = previous {
            assert_eq!(leaf.header.previous, previous);
        }
        let lines = leaf.entries.iter().map(|entry| entry.raw.as_str());
        let body = std::iter::once(leaf.header_line.as_str()).chain(lines);
        let body: String = body.map(|line| format!("{line}\n")).collect();
        previous = Some(sha256(body.as_bytes()));
    }
    assert!(previous.is_some());
}

/// Whatever files cannot be written, the others arrive and those are named; where nothing was exchanged
/// at all that is an error.
#[test]
fn a_file_that_cannot_be_written_keeps_nobody_from_bringing_the_others() {
    for refused in 0_u32..32 {
        let crew = Crew::start(SMALL_PLAN, &["Ines", "Jon"]).unwrap();
        for athlete in &crew.athletes {
            athlete.exchange(&crew.carrier).unwrap();
        }
        crew.coach.exchange(&crew.carrier).unwrap();
        let stick = Carrier::new(crew.coach.home.join("../stick"));
        let mut count = 0;
        let mut did = ExchangeDid::Begin;
        let report = loop {
            did = match crew.coach.step(did) {
                Ok(ExchangeStep::ListFiles) => ExchangeDid::Listed { files: stick.listing() },
                Ok(ExchangeStep::Get { names }) => panic!("{names:?}"),
                Ok(ExchangeStep::Put { files }) => {
                    let of_mask = |_: &CarriedFile| {
                        count += 1;
                        refused & (1 << (count - 1)) == 0
                    };
                    let (written, unwritten): (Vec<_>, Vec<_>) =
                        files.into_iter().partition(of_mask);
                    for file in &written {
                        put_file(stick.folder(), file).unwrap();
                    }
                    let failed = |file: CarriedFile| FailedFile {
                        name: file.name,
                        reason: "no room".into(),
                    };
                    let unwritten = unwritten.into_iter().map(failed).collect();
                    ExchangeDid::Put { written: written.len() as u32, unwritten }
                }
                Ok(ExchangeStep::Done { report }) => break Ok(report),
                Err(error) => break Err(error),
            };
        };
        assert_eq!(count, 5);
        let bad = refused.count_ones();
        if bad == 5 {
            let error = report.unwrap_err();
            assert!(matches!(&error, HoldfastError::Storage { reason, .. } if reason == "no room"));
        } else {
            let report = report.unwrap();
            assert_eq!((report.put, report.aside.len() as u32), (5 - bad, bad));
            let said = "This file could not be delivered: no room";
            assert!(report.aside.iter().all(|file| file.reason == said), "{report:?}");
        }
        let later = crew.coach.exchange(&stick).unwrap();
        assert_eq!((later.put, later.aside.len()), (bad, 0));
    }
}

/// A restored backup writes on under numbers that were used: both branches are kept and said.
#[test]
fn two_histories_of_one_device_are_both_kept_and_said() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    ines.holdfast.shut().unwrap();
    let backup = crew.folder().join("backup");
    ines.copy_to(&backup);
    let phone = Device::open(ines.home.clone(), ines.now()).unwrap();
    squats(&phone, "2026-11-03", &[(50, 8), (60, 6), (70, 6)]);
    phone.exchange(&crew.carrier).unwrap();
    let restored = Device::open(backup, ines.now()).unwrap();
    squats(&restored, "2026-11-04", &[(20, 8), (20, 6), (20, 6)]);
    restored.exchange(&crew.carrier).unwrap();
    crew.coach.exchange(&crew.carrier).unwrap();
    let date = "2026-11-04".parse().unwrap();
    let page = crew.coach.holdfast.member("Ines".into(), date).unwrap();
    let sets: Vec<u32> = page.sessions.iter().map(|session| session.sets).collect();
    assert_eq!(sets, [3, 3], "both branches fold, and nothing counts twice");
    let board = crew.coach.holdfast.board(date).unwrap();
    assert!(board.arrivals.join(" ").contains("has two histories"), "{:?}", board.arrivals);
}

/// A copied device logs on while its other self's leaves arrive: whatever it cuts reaches the carrier
/// and can be read, and both branches' sets reach the coach.
#[test]
fn a_copied_device_publishes_all_it_logs() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    ines.holdfast.shut().unwrap();
    let copy = crew.folder().join("copy");
    ines.copy_to(&copy);
    // The shelf is not copied with it: the copy makes its leaves again.
    for leaf in fs::read_dir(copy.join("leaves")).unwrap() {
        fs::remove_file(leaf.unwrap().path()).unwrap();
    }
    let phone = Device::open(ines.home.clone(), ines.now()).unwrap();
    squats(&phone, "2026-11-03", &[(50, 8), (60, 6), (70, 6)]);
    phone.exchange(&crew.carrier).unwrap();
    let copied = Device::open(copy, ines.now()).unwrap();
    copied.go_to("2026-11-04");
    copied.tap(begin()).unwrap();
    // A set is logged between two steps of an exchange that is then broken off.
    copied.step(ExchangeDid::Begin).unwrap();
    let listed = ExchangeDid::Listed { files: crew.carrier.listing() };
    let ExchangeStep::Get { names } = copied.step(listed).unwrap() else { panic!("new leaves") };
    copied.tap(kg(41)).unwrap();
    let files = crew.carrier.files().into_iter().filter(|file| names.contains(&file.name));
    copied.step(ExchangeDid::Got { files: files.collect(), unread: vec![] }).unwrap();
    copied.exchange(&crew.carrier).unwrap();
    let report = crew.coach.exchange(&crew.carrier).unwrap();
    assert!(report.aside.is_empty(), "{report:?}");
    let page = crew.coach.holdfast.member("Ines".into(), "2026-11-04".parse().unwrap()).unwrap();
    let sets: Vec<u32> = page.sessions.iter().map(|session| session.sets).collect();
    assert_eq!(sets, [3, 1]);
}

/// A leaf torn on the carrier is mended by whoever has it whole.
#[test]
fn a_torn_file_on_the_carrier_is_mended_by_the_next_exchange() {
    let crew = trained();
    let last = crew.carrier.leaves_of(&crew.athletes[0]).pop().unwrap();
    let path = crew.carrier.folder().join(&last.name);
    fs::write(&path, &last.content[..40]).unwrap();
    crew.athletes[0].exchange(&crew.carrier).unwrap();
    assert_eq!(fs::read(&path).unwrap(), last.content);
}

/// A file on the carrier rots without changing its size. Whoever has it finds that, and brings it again whole.
#[test]
fn a_file_that_rots_on_the_carrier_is_brought_again() {
    let crew = Crew::start(SMALL_PLAN, &["Ines", "Bram"]).unwrap();
    for day in 3..9 {
        squats(&crew.athletes[0], &format!("2026-11-0{day}"), &[(50, 8), (60, 6), (70, 6)]);
        crew.athletes[0].exchange(&crew.carrier).unwrap();
    }
    crew.exchange_all().unwrap();
    let files: Vec<_> =
        fs::read_dir(crew.carrier.folder()).unwrap().map(|file| file.unwrap().path()).collect();
    assert!(files.len() > 8, "{files:?}");
    for rotten in &files {
        let whole = fs::read(rotten).unwrap();
        let mut turned = whole.clone();
        let middle = turned.len() / 2;
        turned[middle] ^= 0x10;
        fs::write(rotten, &turned).unwrap();
        // Some files are looked at each hour: within so many hours all are.
        for _ in 0..files.len() {
            crew.coach.pass(HOUR);
            crew.coach.exchange(&crew.carrier).unwrap();
        }
        assert_eq!(fs::read(rotten).unwrap(), whole, "{}", rotten.display());
    }
}

/// A plan that this version cannot read replaces one that it can: the athlete is told, and trains on by
/// the last that can be read.
#[test]
fn a_plan_that_cannot_be_read_is_told_and_leaves_the_last_in_force() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    crew.coach.pass(HOUR);
    crew.coach.publish(&changed(SMALL_PLAN, "Sweep the floor.", "Mop it.")).unwrap();
    crew.coach.holdfast.cut_leaves().unwrap();
    let elsewhere = Carrier::new(crew.folder().join("elsewhere"));
    crew.coach.exchange(&elsewhere).unwrap();
    let newer = elsewhere.leaves_of(&crew.coach).pop().unwrap();
    let [maren, own] = [&crew.coach, ines].map(Writer::at);
    let newer = maren.opens(&maren, &newer);
    let song = |line: &str| line.replace("kind = \\\"note\\\"", "kind = \\\"song\\\"");
    assert!(newer.entries.iter().any(|entry| song(&entry.raw) != entry.raw));
    let taken = ines.take_in(&[maren.rewrites(&newer, song, &[&own])]).unwrap();
    assert_eq!(taken.leaves, 1, "{taken:?}");
    ines.go_to("2026-11-03");
    let shown = ines.today().unwrap();
    assert_eq!(shown.block.as_deref(), Some("Small block"));
    let told = shown
        .notices
        .iter()
        .any(|notice| notice.text.contains("cannot read the plan \"Small block\""));
    assert!(told, "{:?}", shown.notices);
    ines.tap(begin()).unwrap();
    assert!(json(&ines.today().unwrap()).contains("Sweep the floor."));
}

fn json(screen: &holdfast_core::session::SessionScreen) -> String {
    serde_json::to_string(screen).unwrap()
}
