//! Of somebody whom a coach's laptop forgot no row is left in its database; and no other device of the coach's decides that.

use std::path::Path;

use holdfast_core::exchange::sealed::lane_tag;
use holdfast_core::trust::{Head, Recovery, Stop};
use holdfast_tests::train::squats;
use holdfast_tests::{Device, Writer};
use rusqlite::Connection;

use crate::lost::{crew, person, restored, sends_unheard};

/// How many rows each table has of somebody: of the person, of their thread, of their device or with their key.
fn rows(home: &Path, coach: &Writer, of: &Writer) -> Vec<(&'static str, i64)> {
    let database = Connection::open(home.join("holdfast.db")).unwrap();
    let count = |table: &str, where_is: &str, what: &[u8]| -> i64 {
        let sql = format!("SELECT count(*) FROM {table} WHERE {where_is}");
        database.query_row(&sql, [what], |row| row.get(0)).unwrap()
    };
    let (person, device) = (of.person().0, of.device().0);
    let threads = ["leaf", "file", "held", "heard", "outbox", "sealed_to", "sealed_for"];
    let threads = threads.map(|table| (table, count(table, "of = ?1", person.as_bytes())));
    let devices =
        ["entry", "device_person", "held", "leaf", "file", "sealed_to", "sealed_for", "looked"];
    let devices = devices.map(|table| (table, count(table, "device = ?1", device.as_bytes())));
    let people = ["person", "record", "device_person"];
    let people = people.map(|table| (table, count(table, "person = ?1", person.as_bytes())));
    let sign = of.certificate.person_keys().sign;
    let keys = ["certificate", "stop"];
    let keys = keys.map(|table| (table, count(table, "instr(bytes, ?1) > 0", &sign)));
    let lanes = [of.device(), coach.device()].map(|device| {
        let lane = format!("{}-{}", device.0.simple(), lane_tag(coach.crew(), of.person(), device));
        ("unshelved", count("unshelved", "instr(name, cast(?1 AS TEXT)) > 0", lane.as_bytes()))
    });
    [&threads[..], &devices, &people, &keys, &lanes].concat()
}

/// Tables that the story leaves empty are filled by hand.
#[test]
fn no_row_is_left_of_who_was_forgotten() {
    let crew = crew();
    let [maren, ana, ben] = [&crew.coach, &crew.athletes[0], &crew.athletes[1]].map(Writer::at);
    let paper = Recovery::read(&crew.athletes[0].code().unwrap().unwrap()).unwrap().keys();
    crew.coach.holdfast.remove("Ana".into(), None, crew.coach.now()).unwrap();
    crew.coach.exchange(&crew.carrier).unwrap();
    // What she wrote before she heard of it is held.
    squats(&crew.athletes[0], "2026-11-05", &[(52, 8)]);
    sends_unheard(&crew, &crew.athletes[0], "unheard");
    crew.coach.exchange(&crew.carrier).unwrap();
    crew.coach.holdfast.shut().unwrap();
    let home = crew.coach.home.clone();
    let database = Connection::open(home.join("holdfast.db")).unwrap();
    let head = Head { device: ana.device(), of: ana.person(), sequence: 0, content: [0; 32] };
    let stop = Stop::sign(&paper, head);
    database.execute("INSERT INTO stop VALUES (?1)", [&stop.bytes()[..]]).unwrap();
    for sql in [
        "INSERT OR IGNORE INTO outbox SELECT of, n, digest FROM heard WHERE of = ?1",
        "INSERT OR IGNORE INTO sealed_for SELECT of, content, device FROM leaf WHERE of = ?1",
        "INSERT INTO looked SELECT DISTINCT device, tag, 1, 'a server', 0 FROM file WHERE of = ?1",
        "INSERT OR IGNORE INTO sealed_to SELECT of, device, 1, 1 FROM leaf WHERE of = ?1",
    ] {
        database.execute(sql, [&ana.person().0.as_bytes()[..]]).unwrap();
    }
    database.close().unwrap();
    let before = rows(&home, &maren, &ana);
    let empty: Vec<&str> =
        before.iter().filter(|(_, count)| *count == 0).map(|(table, _)| *table).collect();
    assert_eq!(empty, ["unshelved", "unshelved"], "{before:?}");
    let bens = rows(&home, &maren, &ben);
    let coach = Device::open(home.clone(), crew.coach.now()).unwrap();
    coach.holdfast.forget("Ana".into(), coach.now()).unwrap();
    coach.holdfast.shut().unwrap();
    let left: Vec<_> =
        rows(&home, &maren, &ana).into_iter().filter(|(_, count)| *count > 0).collect();
    assert!(left.is_empty(), "{left:?}");
    assert_eq!(rows(&home, &maren, &ben), bens);
}

/// A thief has a laptop of the coach's that was stopped, and forgets somebody on it.
#[test]
fn a_stopped_laptop_makes_no_other_forget() {
    let crew = crew();
    let (ana, code) = (&crew.athletes[0], crew.coach.on_paper().unwrap());
    let laptop = restored(&crew, "laptop", &code);
    // The old one seals to the new one, as long as it has not heard that it was stopped.
    crew.coach.exchange(&crew.carrier).unwrap();
    laptop.holdfast.stop(1, Some(code), laptop.now()).unwrap();
    laptop.exchange(&crew.carrier).unwrap();
    let [maren, writer] = [&crew.coach, ana].map(Writer::at);
    let here = || {
        let copy = crew.folder().join("copy");
        let _ = std::fs::remove_dir_all(&copy);
        laptop.copy_to(&copy);
        let held = Connection::open(copy.join("holdfast.db")).unwrap();
        let sql = "SELECT count(*) FROM held WHERE kind = 'forgot'";
        let said: i64 = held.query_row(sql, [], |row| row.get(0)).unwrap();
        held.close().unwrap();
        (said, rows(&copy, &maren, &writer))
    };
    let (said, before) = here();
    assert_eq!(said, 0);
    let state = laptop.holdfast.state_text().unwrap();
    crew.coach.holdfast.remove("Ana".into(), None, crew.coach.now()).unwrap();
    crew.coach.holdfast.forget("Ana".into(), crew.coach.now()).unwrap();
    sends_unheard(&crew, &crew.coach, "unheard");
    laptop.exchange(&crew.carrier).unwrap();
    let (said, after) = here();
    assert_eq!(said, 1, "it has come, and is held");
    for ((table, before), (_, after)) in before.iter().zip(&after) {
        assert!(after >= before, "{table}: {before} and then {after}");
    }
    assert_eq!(laptop.holdfast.state_text().unwrap(), state);
    assert!(laptop.holdfast.forgotten_files(crew.carrier.listing()).unwrap().is_empty());
    assert!(person(&laptop, "Ana").standing);
    squats(ana, "2026-11-06", &[(54, 8)]);
    ana.exchange(&crew.carrier).unwrap();
    assert!(laptop.exchange(&crew.carrier).unwrap().entries > 0);
}

/// What a restored laptop keeps once more for itself goes with the files it was kept beside.
#[test]
fn no_file_is_left_of_who_was_forgotten() {
    let crew = crew();
    let code = crew.coach.on_paper().unwrap();
    let laptop = restored(&crew, "laptop", &code);
    let [maren, ana, ben] = [&crew.coach, &crew.athletes[0], &crew.athletes[1]].map(Writer::at);
    let files_of = |member: &Writer| {
        let lanes = [&maren, member].map(|writer| {
            let tag = lane_tag(maren.crew(), member.person(), writer.device());
            format!("{}-{tag}", writer.device().0.simple())
        });
        let names = std::fs::read_dir(laptop.home.join("leaves")).unwrap();
        let names = names.map(|file| file.unwrap().file_name().into_string().unwrap());
        names.filter(|name| lanes.iter().any(|lane| name.starts_with(lane))).collect::<Vec<_>>()
    };
    let before = files_of(&ben);
    assert!(files_of(&ana).iter().any(|name| name.ends_with(".own")), "{:?}", files_of(&ana));
    laptop.holdfast.remove("Ana".into(), None, laptop.now()).unwrap();
    laptop.holdfast.forget("Ana".into(), laptop.now()).unwrap();
    assert_eq!(files_of(&ana), [""; 0]);
    assert_eq!(files_of(&ben), before);
}
