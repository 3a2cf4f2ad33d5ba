//! What stands in a second place, what is looked at beside a session, and what is tried again.

use std::fs::{self, OpenOptions};
use std::io::{Seek, SeekFrom, Write};

use holdfast_core::exchange::CarriedFile;
use holdfast_core::journal::Role;
use holdfast_core::session::Tap;
use holdfast_core::{MassUnit, Start};
use holdfast_tests::taps::{begin, finish, kg};
use holdfast_tests::{Crew, Device, SMALL_PLAN, Writer, at};
use rusqlite::Connection;

use crate::damage::{aside, looked_through, trained};

/// What cannot be put right now is put right once it can: the door is not shut by it, and nothing is lost.
#[test]
fn what_could_not_be_repaired_is_tried_again() {
    let crew = trained();
    let ines = &crew.athletes[0];
    let running = ines.open_again().unwrap();
    let state = running.state_text().unwrap();
    let mut file = OpenOptions::new().write(true).open(ines.home.join("holdfast.db")).unwrap();
    let size = file.metadata().unwrap().len();
    file.seek(SeekFrom::Start(4096)).unwrap();
    file.write_all(&vec![0xa5; size as usize - 4096]).unwrap();
    // Where the new database is to be built stands something that no file can replace.
    let in_the_way = ines.home.join("holdfast.db.new");
    fs::create_dir(&in_the_way).unwrap();
    for _ in 0..3 {
        let error = running.verify().unwrap_err().to_string();
        assert!(error.contains("holdfast.db.new"), "{error}");
        assert!(running.today(ines.now()).is_err());
    }
    fs::remove_dir(&in_the_way).unwrap();
    assert_eq!(running.state_text().unwrap(), state);
    assert_eq!(aside(&ines.home).len(), 1);
    running.shut().unwrap();
    let error = running.today(ines.now()).unwrap_err().to_string();
    assert!(error.contains("closed"), "{error}");
}

/// A check beside the session sees the file as it was when it began, whatever is logged, taken in and cut
/// meanwhile; it finds nothing where nothing is wrong, and the log goes into the file when it has ended.
#[test]
fn a_check_beside_a_busy_session_finds_a_sound_home_sound() {
    let crew = trained();
    let ines = &crew.athletes[0];
    let (checked, log) = (ines.home.join("checked"), ines.home.join("holdfast.db-wal"));
    for round in 0..8 {
        fs::remove_file(&checked).unwrap();
        let again = Device::open(ines.home.clone(), at("2026-11-04", 18)).unwrap();
        if round == 0 {
            again.tap(begin()).unwrap();
        }
        let mut taps = 0;
        while !checked.exists() || taps < 20 {
            again.tap(kg(50 + round)).unwrap();
            again.tap(Tap::Undo).unwrap();
            again.exchange(&crew.carrier).unwrap();
            taps += 1;
            assert!(taps < 5_000, "the check does not end");
        }
        let who = again.holdfast.who().unwrap();
        assert_eq!(who.opening, None, "round {round}");
        again.holdfast.shut().unwrap();
        assert!(!log.exists());
    }
    assert!(aside(&ines.home).is_empty());
    assert_eq!(looked_through(ines).who().unwrap().opening, None);
}

/// A home that could not be written is as before once it can be again: what was refused leaves nothing
/// behind that cannot be written either. Tried as somebody whom the system refuses.
#[cfg(unix)]
#[test]
fn a_home_that_could_not_be_written_is_as_before_when_it_can_be() {
    use std::os::unix::fs::{MetadataExt, PermissionsExt, chown};
    use std::os::unix::process::CommandExt;
    const SOMEBODY: u32 = 65_534;
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path();
    let root = fs::metadata(at).unwrap().uid() == 0;
    let program = at.join("holdfast");
    fs::copy(holdfast_tests::program(), &program).unwrap();
    if root {
        // Nobody refuses anything to whoever made this folder.
        chown(at, Some(SOMEBODY), Some(SOMEBODY)).unwrap();
    }
    let home = at.join("home");
    let run = |args: &[&str]| {
        let mut command = std::process::Command::new(&program);
        command.arg("--home").arg(&home).args(args).env_clear().env("LC_ALL", "C");
        if root {
            command.uid(SOMEBODY).gid(SOMEBODY);
        }
        let output = command.output().unwrap();
        (output.status.success(), String::from_utf8(output.stderr).unwrap())
    };
    let names = || {
        let mut names: Vec<_> =
            fs::read_dir(&home).unwrap().map(|file| file.unwrap().file_name()).collect();
        names.sort();
        names
    };
    let allow = |name: &str, mode| {
        fs::set_permissions(home.join(name), fs::Permissions::from_mode(mode)).unwrap();
    };
    let started = run(&["start", "--as", "athlete", "--name", "Ana"]);
    assert!(started.0, "{started:?}");
    let before = names();
    for (name, refused, allowed) in [("holdfast.db", 0o400, 0o600), (".", 0o500, 0o700)] {
        allow(name, refused);
        let (fine, said) = run(&["verify"]);
        assert!(!fine && said.contains("not allowed to write"), "{name}: {said}");
        allow(name, allowed);
        assert_eq!(names(), before, "{name}");
        let after = run(&["verify"]);
        assert!(after.0, "{name}: {after:?}");
    }
}

/// The lines of a home's own journal, and those that stand in a second place: in the file beside the database,
/// or in a leaf on the shelf.
fn in_two_places(coach: &Device, device: &Device) -> (Vec<String>, Vec<String>) {
    let tail = fs::read_to_string(device.home.join("tail.jsonl")).unwrap_or_default();
    let tail = tail.lines().filter_map(|line| line.splitn(3, ' ').nth(2).map(str::to_owned));
    let mut second: Vec<String> = tail.collect();
    let [own, coach] = [device, coach].map(Writer::at);
    for leaf in fs::read_dir(device.home.join("leaves")).unwrap() {
        let leaf = leaf.unwrap();
        let name = leaf.file_name().into_string().unwrap();
        let file = CarriedFile { name, content: fs::read(leaf.path()).unwrap() };
        second.extend(own.opens(&coach, &file).entries.into_iter().map(|entry| entry.raw));
    }
    (device.holdfast.export().unwrap().journal, second)
}

/// Every entry stands in two places at every moment: from the first one, while joining, after a copy, and when
/// the shelf cannot be written for a while.
#[test]
fn every_entry_stands_in_two_places() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let check = |device: &Device, when: &str| {
        let (journal, second) = in_two_places(&crew.coach, device);
        let lost: Vec<&String> = journal.iter().filter(|line| !second.contains(line)).collect();
        assert!(lost.is_empty(), "{when}: {lost:?}");
    };
    let ines = &crew.athletes[0];
    check(&crew.coach, "the coach");
    check(ines, "joined");
    let solo = Device::start(crew.folder().join("solo"), "Bo", Role::Athlete, 99).unwrap();
    check(&solo, "started");
    ines.go_to("2026-11-03");
    ines.tap(begin()).unwrap();
    ines.tap(kg(50)).unwrap();
    check(ines, "logged");
    let (shelf, away) = (ines.home.join("leaves"), ines.home.join("away"));
    fs::rename(&shelf, &away).unwrap();
    fs::write(&shelf, "no folder").unwrap();
    assert!(ines.holdfast.cut_leaves().is_err());
    fs::remove_file(&shelf).unwrap();
    fs::rename(&away, &shelf).unwrap();
    check(ines, "the shelf could not be written");
    ines.tap(kg(60)).unwrap();
    ines.holdfast.cut_leaves().unwrap();
    check(ines, "the shelf can be written again");
    let copy = crew.folder().join("copy");
    ines.copy_to(&copy);
    fs::copy(ines.home.join("place"), copy.join("place")).unwrap();
    let copied = Device::open(copy, ines.now()).unwrap();
    assert!(copied.holdfast.who().unwrap().opening.is_some(), "another device");
    check(&copied, "copied");
}

/// The end of the database is gone, with its log or because an older one was put back: the next opening finds
/// it, whatever it is opened for, and goes on behind what was there.
#[test]
fn an_end_that_is_gone_comes_back_at_once() {
    for cut in [false, true] {
        let crew = Crew::running().unwrap();
        let ines = &crew.athletes[0];
        let database = ines.home.join("holdfast.db");
        ines.tap(kg(50)).unwrap();
        ines.holdfast.shut().unwrap();
        let older = fs::read(&database).unwrap();
        let again = Device::open(ines.home.clone(), ines.now()).unwrap();
        again.tap(kg(60)).unwrap();
        if cut {
            again.holdfast.cut_leaves().unwrap();
        }
        let state = again.holdfast.state_text().unwrap();
        again.holdfast.shut().unwrap();
        fs::write(&database, older).unwrap();
        let again = Device::open(ines.home.clone(), ines.now()).unwrap();
        assert_eq!(again.holdfast.state_text().unwrap(), state, "cut: {cut}");
        assert!(again.holdfast.who().unwrap().opening.unwrap().contains("restored"));
    }
}

/// An older database is put back on a phone, beside a keystore and files that stay: what was cut since, and what was not
/// yet, comes back, and counts once.
#[test]
fn an_older_database_on_a_phone_counts_nothing_twice() {
    let crew = Crew::start(SMALL_PLAN, &[]).unwrap();
    let (key, chance) = ([9; 32], (0..80).collect());
    let start = Start { role: Role::Athlete, name: "Ana".into(), unit: MassUnit::Kg, chance };
    let ana = Device::on_a_phone(crew.folder().join("ana"), start, key).unwrap();
    crew.join(&ana).unwrap();
    ana.go_to("2026-11-03");
    ana.tap(begin()).unwrap();
    ana.tap(kg(50)).unwrap();
    ana.exchange(&crew.carrier).unwrap();
    ana.holdfast.shut().unwrap();
    assert!(Device::open(ana.home.clone(), ana.now()).is_err(), "the keystore's key is asked for");
    let database = ana.home.join("holdfast.db");
    let older = fs::read(&database).unwrap();
    let ana = ana.again_on_a_phone(key).unwrap();
    ana.tap(kg(60)).unwrap();
    ana.exchange(&crew.carrier).unwrap();
    ana.tap(kg(70)).unwrap();
    let state = ana.holdfast.state_text().unwrap();
    ana.holdfast.shut().unwrap();
    fs::write(&database, older).unwrap();
    let ana = ana.again_on_a_phone(key).unwrap();
    assert!(ana.holdfast.who().unwrap().opening.unwrap().contains("restored"));
    assert_eq!(ana.holdfast.state_text().unwrap(), state);
    ana.tap(finish(7, 45)).unwrap();
    ana.exchange(&crew.carrier).unwrap();
    let report = crew.coach.exchange(&crew.carrier).unwrap();
    assert!(report.aside.is_empty(), "{report:?}");
    let sets = crew.coach.holdfast.sets(Some("Ana".into()), None, 2).unwrap().sessions;
    assert_eq!((sets.len(), sets[0].sets.len()), (1, 3));
    let own = ana.holdfast.who().unwrap().device;
    for device in [&ana, &crew.coach] {
        device.holdfast.shut().unwrap();
        let database = Connection::open(device.home.join("holdfast.db")).unwrap();
        let sql = "SELECT count(*), count(DISTINCT n) FROM entry WHERE device = ?1";
        let (lines, numbers): (i64, i64) = database
            .query_row(sql, [&own.0.as_bytes()[..]], |row| Ok((row.get(0)?, row.get(1)?)))
            .unwrap();
        assert!(lines > 5 && lines == numbers, "{lines} lines, {numbers} numbers");
    }
}

/// A line that rots before it is in a leaf never gets into one: it is found when it is read, and put right.
#[test]
fn what_has_rotted_is_never_sent_on() {
    let crew = Crew::running().unwrap();
    let ines = &crew.athletes[0];
    ines.tap(kg(50)).unwrap();
    ines.holdfast.shut().unwrap();
    let rotted = Connection::open(ines.home.join("holdfast.db")).unwrap();
    let sql = "UPDATE entry SET raw = replace(raw, '\"reps\":8', '\"reps\":9') WHERE kind = 'lift'";
    assert_eq!(rotted.execute(sql, []).unwrap(), 1);
    rotted.close().unwrap();
    let again = Device::open(ines.home.clone(), ines.now()).unwrap();
    let told = again.exchange(&crew.carrier).map(drop);
    assert!(told.is_err_and(|error| error.to_string().contains("Do it again")));
    again.exchange(&crew.carrier).unwrap();
    let [own, maren] = [&again, &crew.coach].map(Writer::at);
    let leaves = crew.carrier.leaves_of(&again).into_iter();
    let entries = leaves.flat_map(|file| own.opens(&maren, &file).entries);
    let sent: String = entries.map(|entry| entry.raw).collect();
    assert!(sent.contains(r#""reps":8"#) && !sent.contains(r#""reps":9"#));
}
