//! Databases that are damaged, missing, or from the future.

use std::fs::{self, OpenOptions};
use std::io::{Seek, SeekFrom, Write};
use std::path::Path;

use holdfast_core::exchange::CarriedFile;
use holdfast_core::journal::Role;
use holdfast_core::{Holdfast, HoldfastError, Instant, Mass, MassUnit, Start};
use holdfast_tests::taps::{begin, kg};
use holdfast_tests::train::squats;
use holdfast_tests::views::strength;
use holdfast_tests::{Crew, Device, SMALL_PLAN, Writer, at};
use rusqlite::Connection;

pub(super) fn aside(home: &Path) -> Vec<String> {
    let files = fs::read_dir(home).unwrap().map(|file| file.unwrap().file_name());
    let names = files.map(|name| name.to_string_lossy().into_owned());
    let side_file = |name: &String| name.ends_with("-wal") || name.ends_with("-shm");
    names.filter(|name| name.contains(".damaged-") && !side_file(name)).collect()
}

/// The home opened again, and everything in it looked at, as happens by itself beside a session.
pub(super) fn looked_through(device: &Device) -> Holdfast {
    let again = device.open_again().unwrap();
    again.verify().unwrap();
    again
}

pub(super) fn trained() -> Crew {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    squats(&crew.athletes[0], "2026-11-03", &[(50, 8), (60, 6), (70, 6)]);
    crew.athletes[0].holdfast.shut().unwrap();
    crew
}

#[test]
fn a_newer_database_is_refused_and_not_touched() {
    let crew = trained();
    let path = crew.athletes[0].home.join("holdfast.db");
    let newer = Connection::open(&path).unwrap();
    newer.pragma_update(None, "user_version", 99).unwrap();
    newer.close().unwrap();
    let before = fs::read(&path).unwrap();
    let error = crew.athletes[0].open_again().err().unwrap();
    assert_eq!(error, HoldfastError::TooNew { found: 99, supported: 11 });
    assert!(error.to_string().contains("Update Holdfast"), "{error}");
    assert_eq!(fs::read(&path).unwrap(), before);
    assert!(aside(&crew.athletes[0].home).is_empty());
}

#[test]
fn garbage_is_moved_aside_with_a_date_and_all_leaves_come_back() {
    let crew = trained();
    let ines = &crew.athletes[0];
    let state = ines.open_again().unwrap().state_text().unwrap();
    let path = ines.home.join("holdfast.db");
    fs::write(&path, "this is no database, it only looks like one from far away".repeat(100))
        .unwrap();
    let again = ines.open_again().unwrap();
    let said = again.who().unwrap().opening.unwrap();
    assert!(said.contains("was damaged and is kept as"), "{said}");
    assert!(said.contains("holdfast.db.damaged-20261103T"), "{said}");
    assert_eq!(aside(&ines.home).len(), 1);
    assert_eq!(again.state_text().unwrap(), state);
    let notices = again.today(ines.now()).unwrap().notices;
    assert!(notices[0].text.contains("was damaged"), "the athlete is told: {notices:?}");
    // And work goes on.
    drop(again);
    let again = ines.open_again().unwrap();
    assert_eq!(again.who().unwrap().opening, None);
}

/// Pages in the middle are overwritten after a stop that was not tidy; entries that no leaf held
/// are read back from what is left.
#[test]
fn a_database_torn_in_the_middle_gives_back_what_no_leaf_held_yet() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-03", &[(50, 8), (60, 6), (70, 6)]);
    ines.go_to("2026-11-04");
    ines.tap(begin()).unwrap();
    ines.tap(kg(52)).unwrap();
    let unpublished = ines.today().unwrap().unpublished;
    assert_eq!(unpublished, 2);
    // A copy taken while it runs has its last entries in the write-ahead log.
    let torn = crew.folder().join("torn");
    ines.copy_to(&torn);
    assert!(torn.join("holdfast.db-wal").exists());
    {
        let settled = Connection::open(torn.join("holdfast.db")).unwrap();
        settled.execute_batch("PRAGMA wal_checkpoint(TRUNCATE)").unwrap();
        // The root of the index by subject: nothing of the journal itself.
        let page: i64 = settled
            .query_row(
                "SELECT rootpage FROM sqlite_master WHERE name = 'record_by_subject'",
                [],
                |row| row.get(0),
            )
            .unwrap();
        settled.close().unwrap();
        let mut file = OpenOptions::new().write(true).open(torn.join("holdfast.db")).unwrap();
        file.seek(SeekFrom::Start((page as u64 - 1) * 4096)).unwrap();
        file.write_all(&[0x5a; 4096]).unwrap();
    }
    let again = Device::open(torn, at("2026-11-04", 18)).unwrap();
    again.holdfast.verify().unwrap();
    let said = again.holdfast.who().unwrap().opening.unwrap();
    assert!(said.contains("and 2 more were recovered from the damaged database"), "{said}");
    let screen = again.today().unwrap();
    assert_eq!(strength(&screen).sets[0].done.as_ref().unwrap().load, Some(Mass::kg(52)));
}

/// Any page of a tidily closed database is overwritten: whatever it held, opening finds it, moves the
/// file aside and gives back the state as it was.
#[test]
fn damage_to_any_page_is_found_and_put_right() {
    let crew = trained();
    let ines = &crew.athletes[0];
    let path = ines.home.join("holdfast.db");
    let state = {
        let whole = ines.open_again().unwrap();
        let state = whole.state_text().unwrap();
        whole.shut().unwrap();
        state
    };
    let tidy = fs::read(&path).unwrap();
    let pages = tidy.len() / 4096;
    assert!(pages > 8, "{pages}");
    for page in 0..pages {
        let mut damaged = tidy.clone();
        for (index, byte) in damaged[page * 4096..(page + 1) * 4096].iter_mut().enumerate() {
            *byte = byte.wrapping_add((index % 251) as u8 + 1);
        }
        for suffix in ["-wal", "-shm"] {
            let _ = fs::remove_file(ines.home.join(format!("holdfast.db{suffix}")));
        }
        fs::write(&path, &damaged).unwrap();
        let again = looked_through(ines);
        let said = again.who().unwrap().opening.unwrap();
        assert!(said.contains("was damaged"), "page {page}: {said:?}");
        assert_eq!(again.state_text().unwrap(), state, "page {page}");
        again.shut().unwrap();
    }
}

/// A single changed letter in a logged line, in a file that SQLite itself finds whole.
#[test]
fn a_changed_letter_in_an_entry_is_found() {
    let crew = trained();
    let ines = &crew.athletes[0];
    let state = ines.open_again().unwrap().state_text().unwrap();
    let changed = Connection::open(ines.home.join("holdfast.db")).unwrap();
    let sql = "UPDATE entry SET raw = replace(raw, '\"reps\":8', '\"reps\":9') WHERE kind = 'lift'";
    assert!(changed.execute(sql, []).unwrap() > 0);
    changed.close().unwrap();
    let again = looked_through(ines);
    assert!(again.who().unwrap().opening.unwrap().contains("was damaged"));
    assert_eq!(again.state_text().unwrap(), state);
}

/// What is folded from the journal changes, in columns that no index has: a full check makes it again.
#[test]
fn what_is_folded_is_made_again() {
    let crew = trained();
    let ines = &crew.athletes[0];
    let state = ines.open_again().unwrap().state_text().unwrap();
    let changed = Connection::open(ines.home.join("holdfast.db")).unwrap();
    let sql = "UPDATE record SET taken_back = 1, first_ms = first_ms + 1 WHERE kind = 'lift'";
    assert!(changed.execute(sql, []).unwrap() > 0);
    changed.close().unwrap();
    assert_ne!(ines.open_again().unwrap().state_text().unwrap(), state);
    assert_eq!(looked_through(ines).state_text().unwrap(), state);
}

/// A page goes bad while the app runs: the call that meets it fails and says that all is put right.
#[test]
fn damage_met_while_running_is_put_right_at_once() {
    let crew = trained();
    let ines = &crew.athletes[0];
    let running = ines.open_again().unwrap();
    let state = running.state_text().unwrap();
    running.cut_leaves().unwrap();
    let path = ines.home.join("holdfast.db");
    let pages = fs::metadata(&path).unwrap().len() / 4096;
    let mut file = OpenOptions::new().write(true).open(&path).unwrap();
    file.seek(SeekFrom::Start(4096)).unwrap();
    file.write_all(&vec![0xa5; (pages as usize - 1) * 4096]).unwrap();
    // The cache may still hold what it read; a schema change makes it look again.
    let touched = Connection::open(&path).unwrap();
    let _ = touched.execute_batch("PRAGMA user_version = 5");
    drop(touched);
    let error = running.export().expect_err("the pages are garbage");
    assert!(error.to_string().contains("Do it again"), "{error}");
    assert_eq!(running.state_text().unwrap(), state);
    assert_eq!(aside(&ines.home).len(), 1);
}

#[test]
fn an_empty_file_counts_as_missing() {
    let crew = trained();
    let ines = &crew.athletes[0];
    let state = ines.open_again().unwrap().state_text().unwrap();
    for suffix in ["-wal", "-shm"] {
        let _ = fs::remove_file(ines.home.join(format!("holdfast.db{suffix}")));
    }
    fs::write(ines.home.join("holdfast.db"), "").unwrap();
    let again = ines.open_again().unwrap();
    assert!(again.who().unwrap().opening.unwrap().contains("was missing"));
    assert_eq!(again.state_text().unwrap(), state);
}

#[test]
fn a_database_without_its_identity_is_not_started_over() {
    let crew = trained();
    let ines = &crew.athletes[0];
    fs::remove_file(ines.home.join("device.json")).unwrap();
    fs::remove_file(ines.home.join("device-copy.json")).unwrap();
    let over = Device::start(ines.home.clone(), "Ines", Role::Athlete, 3);
    let said = over.err().unwrap().to_string();
    assert!(said.contains("no device.json"), "{said}");
    // Nor is somebody told to start there.
    let opened = Device::open(ines.home.clone(), ines.now()).err().unwrap().to_string();
    assert_eq!(opened, said);
}

#[test]
fn a_missing_database_comes_back_from_the_leaves() {
    let crew = trained();
    let ines = &crew.athletes[0];
    let state = ines.open_again().unwrap().state_text().unwrap();
    fs::remove_file(ines.home.join("holdfast.db")).unwrap();
    let _ = fs::remove_file(ines.home.join("holdfast.db-wal"));
    let _ = fs::remove_file(ines.home.join("holdfast.db-shm"));
    let again = ines.open_again().unwrap();
    let said = again.who().unwrap().opening.unwrap();
    assert!(said.contains("was missing"), "{said}");
    assert_eq!(again.state_text().unwrap(), state);
    // The next entry goes on with the numbering, so nobody sees one number twice.
    ines.go_to("2026-11-05");
    let saved = again.tap(begin(), None, ines.now()).unwrap().saved.unwrap();
    assert!(saved > 6, "{saved}");
}

/// A leaf of one's own that is missing on the shelf is sealed again, under another name and with the same in it; one
/// of somebody else's is fetched again.
#[test]
fn a_leaf_missing_on_the_shelf_comes_back() {
    let crew = trained();
    let ines = &crew.athletes[0];
    let [own, maren] = [ines, &crew.coach].map(Writer::at);
    let shelf = ines.home.join("leaves");
    let all = || {
        let files = fs::read_dir(&shelf).unwrap().map(|file| file.unwrap());
        let read = files.map(|file| CarriedFile {
            name: file.file_name().into_string().unwrap(),
            content: fs::read(file.path()).unwrap(),
        });
        let mut leaves: Vec<_> = read.map(|file| own.opens(&maren, &file)).collect();
        leaves.sort_by_key(|leaf| (leaf.header.device, leaf.header.sequence));
        // One that was sealed again lies there under both names, once the first is fetched.
        leaves.dedup();
        leaves
    };
    let before = all();
    assert!(before.len() > 2);
    ines.holdfast.shut().unwrap();
    fs::remove_dir_all(&shelf).unwrap();
    fs::remove_file(ines.home.join("checked")).unwrap();
    let again = Device::open(ines.home.clone(), ines.now()).unwrap();
    again.holdfast.verify().unwrap();
    again.exchange(&crew.carrier).unwrap();
    assert_eq!(all(), before);
    // What was sealed again changes nothing for anybody.
    let state = |device: &Device| device.holdfast.state_text().unwrap();
    crew.coach.exchange(&crew.carrier).unwrap();
    let known = state(&crew.coach);
    again.exchange(&crew.carrier).unwrap();
    crew.coach.exchange(&crew.carrier).unwrap();
    assert_eq!(state(&crew.coach), known);
    assert!(crew.coach.holdfast.board("2026-11-04".parse().unwrap()).unwrap().arrivals.is_empty());
}

/// Whatever is refused leaves the folder it was asked for as it was.
#[cfg(unix)]
#[test]
fn a_folder_that_is_no_home_is_left_alone() {
    use std::os::unix::fs::PermissionsExt;
    let folder = tempfile::tempdir().unwrap();
    fs::set_permissions(folder.path(), fs::Permissions::from_mode(0o755)).unwrap();
    let here = folder.path().to_owned();
    assert!(Device::open(here.clone(), at("2026-11-03", 9)).is_err());
    assert!(Device::start(here.clone(), "", Role::Athlete, 1).is_err());
    assert!(Device::start(here.join("new"), "", Role::Athlete, 1).is_err());
    assert_eq!(fs::read_dir(&here).unwrap().count(), 0);
    let mode = fs::metadata(&here).unwrap().permissions().mode();
    assert_eq!(mode & 0o777, 0o755);
}

/// A clock before 1970 cannot be written down: that is said, nothing falls over, and with the clock right
/// the device goes on.
#[test]
fn a_clock_before_1970_is_an_error_and_no_end() {
    let crew = trained();
    let ines = &crew.athletes[0];
    let right = ines.now();
    ines.put_at(Instant { wall_ms: -86_400_000, ..right.clone() });
    let early = ines.open_again().unwrap();
    assert!(early.today(ines.now()).is_ok());
    assert!(early.tap(begin(), None, ines.now()).is_err());
    early.shut().unwrap();
    // Nobody starts half: the folder is still free when the clock is right.
    let new = crew.folder().join("new");
    let start = || Start {
        role: Role::Athlete,
        name: "Ana".into(),
        unit: MassUnit::Kg,
        chance: (0..80).collect(),
    };
    let home = || new.to_str().unwrap().to_owned();
    assert!(Holdfast::start(home(), start(), ines.now(), None).is_err());
    assert!(Holdfast::start(home(), start(), right.clone(), None).is_ok());
    ines.put_at(right);
    assert!(ines.open_again().unwrap().today(ines.now()).is_ok());
}

#[test]
fn a_home_that_cannot_be_is_named() {
    let folder = tempfile::tempdir().unwrap();
    let open = |home: &str| Device::open(folder.path().join(home), at("2026-11-03", 9));
    let nobody = open("none");
    assert!(matches!(nobody, Err(HoldfastError::NotFound { .. })));
    let file = folder.path().join("file");
    fs::write(&file, "x").unwrap();
    let under = Device::start(file.join("home"), "Ana", Role::Athlete, 1);
    let error = under.err().unwrap();
    assert!(matches!(error, HoldfastError::Storage { .. }), "{error}");
    assert!(error.to_string().contains("file"), "{error}");
    fs::create_dir_all(folder.path().join("home")).unwrap();
    fs::write(folder.path().join("home/device.json"), "{").unwrap();
    let error = open("home").err().unwrap().to_string();
    assert!(error.contains("device.json"), "{error}");
}

/// The power goes while a database is being rebuilt: the next opening goes on with it.
#[test]
fn a_rebuild_cut_short_is_finished_at_the_next_opening() {
    let crew = trained();
    let ines = &crew.athletes[0];
    let state = ines.open_again().unwrap().state_text().unwrap();
    let path = ines.home.join("holdfast.db");
    for suffix in ["", "-wal", "-shm"] {
        let _ = fs::remove_file(ines.home.join(format!("holdfast.db{suffix}")));
    }
    // As far as a rebuild gets before its first leaf: an empty database with its tables.
    let bare = crew.folder().join("bare");
    let spare = Device::start(bare.clone(), "x", Role::Athlete, 66).unwrap();
    spare.holdfast.shut().unwrap();
    let emptied = Connection::open(bare.join("holdfast.db")).unwrap();
    emptied
        .execute_batch(
            "DELETE FROM entry; DELETE FROM leaf; DELETE FROM record; DELETE FROM device_person",
        )
        .unwrap();
    emptied.close().unwrap();
    fs::copy(bare.join("holdfast.db"), &path).unwrap();
    let again = looked_through(ines);
    assert!(
        again
            .who()
            .unwrap()
            .opening
            .unwrap()
            .contains("entries were restored from this device's files"),
        "{:?}",
        again.who()
    );
    assert_eq!(again.state_text().unwrap(), state);
}
