//! What a carrier may bring: torn, foreign, hostile and missing files.

use std::fs;
use std::process::Command;

use holdfast_core::exchange::{
    CarriedFile, ExchangeDid, ExchangeStep, FailedFile, LeafName, ListedFile, MAX_LEAF_BYTES,
};
use holdfast_core::journal::Role;
use holdfast_core::{HoldfastError, put_file};
use holdfast_tests::pairing::pair;
use holdfast_tests::taps::{begin, kg};
use holdfast_tests::train::squats;
use holdfast_tests::{Carrier, Crew, Device, HOUR, SMALL_PLAN, changed, forged};

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
    let folder = tempfile::tempdir().unwrap();
    let device = Device::start(folder.path().join("new"), "New", Role::Athlete, 77).unwrap();
    pair(&crew.coach, &device, 77).unwrap();
    let before = device.holdfast.state_text().unwrap();
    let refused = |content: Vec<u8>| {
        let file = CarriedFile { name: leaf.name.clone(), content };
        let report = device.take_in(&[file]).unwrap();
        assert_eq!((report.leaves, report.aside.len()), (0, 1));
    };
    for index in (0..leaf.content.len()).step_by(7) {
        let mut content = leaf.content.clone();
        content[index] ^= 1 << (index % 8);
        refused(content);
        refused(leaf.content[..index].to_vec());
    }
    assert_eq!(device.holdfast.state_text().unwrap(), before);
}

/// The athlete's second leaf with other content.
fn second_with(crew: &Crew, content: &[u8]) -> CarriedFile {
    let writer = crew.athletes[0].holdfast.who().unwrap().device;
    forged(writer, 2, content.to_vec())
}

#[test]
fn hostile_content_under_a_right_name_is_left_alone_in_words() {
    let crew = trained();
    let leaf = crew.carrier.leaves_of(&crew.athletes[0]).remove(1);
    let text = String::from_utf8(leaf.content).unwrap();
    let header = text.lines().next().unwrap();
    let change = |from: &str, to: &str| text.replacen(from, to, 1);
    let cases = [
        (String::new(), "the last line is cut off"),
        ("\n".into(), "EOF"),
        ("null\n".into(), "invalid type"),
        (change("\"leaf\":0", "\"leaf\":7"), "Update the app"),
        (change("\"sequence\":2", "\"sequence\":3"), "header and the file's name disagree"),
        (change("\"first\":2", "\"first\":1"), "where 1 belongs"),
        (change("\"first\":2", "\"first\":0"), "cannot be"),
        (change("\"last\":", "\"last\":9"), "announces"),
        (change("\"last\":", "\"last\":99999"), "cannot be"),
        (format!("{text}{{}}\n"), "the file holds a different number"),
        (format!("{header}\n{}\n", "[".repeat(100_000)), "at most 65536 fit"),
        (change("\"crew\":\"", "\"crew\":\"f"), "Line 1"),
    ];
    for (content, said) in cases {
        let file = second_with(&crew, content.as_bytes());
        let report = crew.coach.take_in(&[file]).unwrap();
        let reason = &report.aside.first().expect(said).reason;
        assert!(reason.contains(said), "{said}: {reason}");
    }
    let not_utf8 = second_with(&crew, b"\xff\xfe\n");
    let report = crew.coach.take_in(&[not_utf8]).unwrap();
    assert!(report.aside[0].reason.contains("utf-8"), "{:?}", report.aside);
}

#[test]
fn another_crews_files_and_huge_ones_are_left_alone() {
    let crew = trained();
    let stranger = Crew::start(SMALL_PLAN, &["Ana"]).unwrap();
    // The helper gives every crew's coach the same chance; another crew needs another.
    let other = Device::start(stranger.folder().join("c2"), "Ove", Role::Coach, 9).unwrap();
    other.publish(SMALL_PLAN).unwrap();
    // Into another crew's folder it puts nothing: its own log does not belong there.
    let report = other.exchange(&crew.carrier).unwrap();
    assert_eq!((report.wrong_crew, report.put), (true, 0), "{report:?}");
    let stick = Carrier::new(stranger.folder().join("stick"));
    other.exchange(&stick).unwrap();
    stick.copy_to(&crew.carrier);
    let report = crew.coach.exchange(&crew.carrier).unwrap();
    assert!(!report.wrong_crew, "{report:?}");
    assert!(report.aside[0].reason.contains("another crew"), "{:?}", report.aside);
    let name = LeafName {
        device: other.holdfast.who().unwrap().device,
        sequence: 9,
        hash: "0".repeat(16),
    };
    let listed = ListedFile { name: name.to_string(), bytes: MAX_LEAF_BYTES as u64 + 1 };
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
    let text = String::from_utf8(leaf.content.clone()).unwrap();
    let newer = text
        .replacen("\"k\":\"finish\"", "\"k\":\"sauna\"", 1)
        .replacen("\"v\":1,\"n\":5", "\"v\":2,\"n\":5", 1)
        .replacen("\"reps\":8", "\"tempo\":\"slow\",\"reps\":8", 1);
    assert_ne!(newer, text);
    let file = second_with(&crew, newer.as_bytes());
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
    assert!(put.iter().any(|file: &CarriedFile| file.content == newer.as_bytes()));
}

/// The chain can be checked by hand: the file's name and the next file's header hold what
/// `sha256sum` (GNU coreutils) prints.
#[test]
fn the_chain_is_what_sha256sum_prints() {
    let crew = trained();
    let leaves = crew.carrier.leaves_of(&crew.athletes[0]);
    let mut previous = String::new();
    for leaf in leaves {
        let path = crew.carrier.folder().join(&leaf.name);
        let printed =
            Command::new("sha256sum").arg(&path).output().expect("sha256sum is installed");
        let printed = String::from_utf8(printed.stdout).unwrap();
        let hash = printed.split_whitespace().next().unwrap();
        assert!(leaf.name.contains(&hash[..16]), "{} {hash}", leaf.name);
        let text = String::from_utf8(leaf.content).unwrap();
        let header: serde_json::Value = serde_json::from_str(text.lines().next().unwrap()).unwrap();
        assert_eq!(header["previous"], previous);
        previous = hash.to_owned();
    }
}

/// Whatever files cannot be written, the others arrive and those are named; where nothing was exchanged
/// at all that is an error.
#[test]
fn a_file_that_cannot_be_written_keeps_nobody_from_bringing_the_others() {
    for refused in 0_u32..16 {
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
        assert_eq!(count, 4);
        let bad = refused.count_ones();
        if bad == 4 {
            let error = report.unwrap_err();
            assert!(matches!(&error, HoldfastError::Storage { reason, .. } if reason == "no room"));
        } else {
            let report = report.unwrap();
            assert_eq!((report.put, report.aside.len() as u32), (4 - bad, bad));
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
    assert_eq!(page.sessions.len(), 2, "both branches fold");
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

/// A file on the carrier rots without changing its size. Its owner finds that, and brings it again whole;
/// so does everybody else who has it.
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
            crew.athletes[0].pass(HOUR);
            crew.athletes[0].exchange(&crew.carrier).unwrap();
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
    let text = String::from_utf8(newer.content).unwrap();
    let unreadable = text.replace("kind = \\\"note\\\"", "kind = \\\"song\\\"");
    assert_ne!(text, unreadable);
    let coach = crew.coach.holdfast.who().unwrap().device;
    let taken = ines.take_in(&[forged(coach, 2, unreadable.into_bytes())]).unwrap();
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
