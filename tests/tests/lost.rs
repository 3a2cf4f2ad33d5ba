//! What people do when a phone or a laptop is lost, sold or stolen: the recovery code and stops, as the two sides of a
//! thread see them.

use holdfast_core::exchange::ExchangeDid;
use holdfast_core::journal::Role;
use holdfast_core::trust::Recovery;
use holdfast_core::{CrewPerson, Field, Holdfast, HoldfastError, RecoveryDid};
use holdfast_tests::pairing::pair;
use holdfast_tests::taps::flag;
use holdfast_tests::train::squats;
use holdfast_tests::{Carrier, Crew, Device, SMALL_PLAN};

/// Ana and Ben, who have trained; everybody has everything that is for them.
pub(super) fn crew() -> Crew {
    let crew = Crew::start(SMALL_PLAN, &["Ana", "Ben"]).unwrap();
    for athlete in &crew.athletes {
        squats(athlete, "2026-11-03", &[(50, 8), (60, 6), (70, 6)]);
    }
    crew.exchange_all().unwrap();
    crew
}

pub(super) fn error_of<T>(refused: Result<T, HoldfastError>) -> String {
    refused.err().unwrap().to_string()
}

pub(super) fn state(device: &Device) -> String {
    device.holdfast.state_text().unwrap()
}

pub(super) fn restored(crew: &Crew, name: &str, code: &str) -> Device {
    let now = crew.athletes[0].now();
    Device::restored(crew.folder().join(name), code, &crew.carrier, (7, now)).unwrap()
}

pub(super) fn person(device: &Device, name: &str) -> CrewPerson {
    let screen = device.holdfast.crew().unwrap();
    screen.people.into_iter().find(|person| person.name == name).unwrap()
}

pub(super) fn standing(device: &Device, name: &str) -> Vec<bool> {
    person(device, name).devices.iter().map(|device| device.standing).collect()
}

/// A device sends and reads nothing: a thief's, or one that hears of nothing yet.
pub(super) fn sends_unheard(crew: &Crew, device: &Device, name: &str) {
    let elsewhere = Carrier::new(crew.folder().join(name));
    device.exchange(&elsewhere).unwrap();
    elsewhere.copy_to(&crew.carrier);
}

#[test]
fn a_new_phone_has_the_whole_log_and_forgets_the_code() {
    let crew = crew();
    let [ana, ben] = &crew.athletes[..] else { panic!() };
    let code = ana.on_paper().unwrap();
    assert_eq!(ana.code().unwrap(), None);
    // Cut before anybody knows of another phone, and on its way while that one is set up.
    squats(ana, "2026-11-05", &[(52, 8)]);
    ana.holdfast.cut_leaves().unwrap();
    let phone = restored(&crew, "phone", &code);
    assert_eq!(phone.code().unwrap(), None, "the code was on paper already");
    let told = crew.coach.exchange(&crew.carrier).unwrap().told;
    assert!(told.len() == 1 && told[0].contains("Ana added a device"), "{told:?}");
    let told = ana.exchange(&crew.carrier).unwrap().told;
    assert!(told.len() == 1 && told[0].contains("Another device of yours"), "{told:?}");
    assert_eq!(phone.exchange(&crew.carrier).unwrap().entries, 3, "sealed again for the new phone");
    assert_eq!(state(&phone), state(ana));
    // It goes on where the old one was, and so does the old one.
    squats(&phone, "2026-11-06", &[(54, 8)]);
    for device in [&phone, ana, &phone] {
        device.exchange(&crew.carrier).unwrap();
    }
    assert_eq!(state(&phone), state(ana));
    // Nobody else hears of it.
    assert!(ben.exchange(&crew.carrier).unwrap().told.is_empty());
    assert_eq!(ben.holdfast.crew().unwrap().people.len(), 2);
}

/// What was sealed again is sealed again once, not at each exchange.
#[test]
fn nothing_is_sealed_again_for_who_has_it() {
    let crew = crew();
    let code = crew.athletes[0].on_paper().unwrap();
    let phone = restored(&crew, "phone", &code);
    let files = |crew: &Crew| crew.carrier.files().len();
    let before = files(&crew);
    crew.exchange_all().unwrap();
    phone.exchange(&crew.carrier).unwrap();
    crew.exchange_all().unwrap();
    assert_eq!(files(&crew), before, "it had read all of it with the code");
}

#[test]
fn a_lost_phone_is_stopped_with_the_code() {
    let crew = crew();
    let [ana, _] = &crew.athletes[..] else { panic!() };
    let code = ana.on_paper().unwrap();
    let phone = restored(&crew, "phone", &code);
    for wrong in ["", "0123", &Recovery::new([9; 16]).code()] {
        let refused = phone.holdfast.stop(1, Some(wrong.to_owned()), phone.now());
        let invalid =
            matches!(&refused, Err(HoldfastError::Invalid { field: Field::Recovery, .. }));
        assert!(invalid, "{wrong}: {refused:?}");
    }
    assert!(phone.holdfast.stop(2, Some(code.clone()), phone.now()).is_err(), "itself");
    assert!(
        phone.holdfast.stop(3, Some(code.clone()), phone.now()).is_err(),
        "none of that number"
    );
    let before = state(&crew.coach);
    phone.holdfast.stop(1, Some(code), phone.now()).unwrap();
    phone.exchange(&crew.carrier).unwrap();
    // Whoever has the old phone goes on writing, and also what it wrote before anybody told it.
    ana.tap(flag(holdfast_core::care::Place::Knee, 4, &[])).unwrap();
    sends_unheard(&crew, ana, "unheard");
    let report = crew.coach.exchange(&crew.carrier).unwrap();
    assert!(report.told.iter().any(|told| told.contains("no longer counts")), "{report:?}");
    assert_eq!(report.aside.len(), 1, "{report:?}");
    assert_eq!(standing(&crew.coach, "Ana"), [false, true]);
    let after = state(&crew.coach);
    for line in before.lines() {
        assert!(after.contains(line), "what it wrote before counts: {line}");
    }
    assert!(!after.contains("flag"), "{after}");
    // From now on nothing is sealed to it.
    crew.coach.publish(&SMALL_PLAN.replace("Small", "Other")).unwrap();
    crew.coach.exchange(&crew.carrier).unwrap();
    // Turned up again, it is told, reads nothing else, brings nothing, and has no code to give away.
    let read = ana.exchange(&crew.carrier).unwrap();
    assert_eq!((read.leaves, read.entries, read.put), (2, 2, 0), "{read:?}");
    assert!(read.told.iter().any(|told| told.contains("This device was stopped")), "{read:?}");
    squats(ana, "2026-11-06", &[(54, 8)]);
    assert_eq!(ana.exchange(&crew.carrier).unwrap().put, 0);
    // Each time, or weeks of log would go nowhere without a word.
    assert!(ana.holdfast.who().unwrap().opening.unwrap().contains("was stopped"));
    assert!(phone.exchange(&crew.carrier).unwrap().entries > 0);
}

#[test]
fn a_new_laptop_has_everybodys_log_and_stops_the_stolen_one() {
    let crew = crew();
    let [ana, ben] = &crew.athletes[..] else { panic!() };
    let code = crew.coach.on_paper().unwrap();
    let laptop = restored(&crew, "laptop", &code);
    assert_eq!(laptop.holdfast.who().unwrap().role, Role::Coach);
    laptop.holdfast.stop(1, Some(code), laptop.now()).unwrap();
    laptop.exchange(&crew.carrier).unwrap();
    // The thief removes everybody and publishes a plan, and does it first as far as anybody can tell.
    for name in ["Ana", "Ben"] {
        crew.coach.holdfast.remove(name.into(), None, crew.coach.now()).unwrap();
    }
    crew.coach.publish(&SMALL_PLAN.replace("Small", "Thief")).unwrap();
    sends_unheard(&crew, &crew.coach, "unheard");
    for member in [ana, ben] {
        let told = member.exchange(&crew.carrier).unwrap().told;
        assert!(told.iter().any(|told| told.contains("added a device")), "{told:?}");
        assert_eq!(standing(member, "Maren"), [false, true]);
        assert!(!state(member).contains("Thief"));
        squats(member, "2026-11-06", &[(54, 8)]);
        member.exchange(&crew.carrier).unwrap();
    }
    let exchanged = laptop.exchange(&crew.carrier).unwrap();
    assert!(exchanged.entries > 0, "{exchanged:?}");
    for name in ["Ana", "Ben"] {
        assert!(person(&laptop, name).standing);
        assert_eq!(person(&laptop, name).devices.len(), 1);
    }
    assert!(!state(&laptop).contains("Thief"));
    // Somebody new is taken in by it.
    let eva = Device::start(crew.folder().join("eva"), "Eva", Role::Athlete, 90).unwrap();
    pair(&laptop, &eva, 91).unwrap();
    laptop.exchange(&crew.carrier).unwrap();
    assert!(eva.exchange(&crew.carrier).unwrap().entries > 0);
    assert!(person(&eva, "Maren").coach);
}

/// The same whichever comes first: the thief's removals, or the stop.
#[test]
fn a_stop_undoes_what_a_thief_did_before_it_came() {
    let crew = crew();
    let [ana, _] = &crew.athletes[..] else { panic!() };
    let code = crew.coach.on_paper().unwrap();
    let laptop = restored(&crew, "laptop", &code);
    crew.coach.holdfast.remove("Ana".into(), None, crew.coach.now()).unwrap();
    crew.coach.exchange(&crew.carrier).unwrap();
    let told = ana.exchange(&crew.carrier).unwrap().told;
    assert!(told.iter().any(|told| told.contains("no longer in the crew")), "{told:?}");
    laptop.holdfast.stop(1, Some(code), laptop.now()).unwrap();
    laptop.exchange(&crew.carrier).unwrap();
    ana.exchange(&crew.carrier).unwrap();
    assert!(person(ana, "Ana").standing);
    squats(ana, "2026-11-06", &[(54, 8)]);
    ana.exchange(&crew.carrier).unwrap();
    assert!(laptop.exchange(&crew.carrier).unwrap().entries > 0);
    assert!(person(&laptop, "Ana").standing);
}

#[test]
fn what_cannot_be_restored_says_why() {
    let crew = crew();
    let now = || crew.coach.now();
    let refused = |code: &str, carrier: &Carrier| {
        let home = crew.folder().join("none");
        let refused = error_of(Device::restored(home.clone(), code, carrier, (7, now())));
        assert!(!home.exists(), "nothing was written");
        refused
    };
    let code = crew.athletes[0].code().unwrap().unwrap();
    let empty = Carrier::new(crew.folder().join("empty"));
    assert!(refused(&code, &empty).contains("Nothing on this carrier opens"));
    let others = Recovery::new([9; 16]).code();
    assert!(refused(&others, &crew.carrier).contains("Nothing on this carrier opens"));
    assert!(refused(&code[..8], &crew.carrier).contains("32"));
    // Only her own files are there.
    for file in crew.carrier.leaves_of(&crew.athletes[0]) {
        std::fs::write(empty.folder().join(&file.name), &file.content).unwrap();
    }
    assert!(refused(&code, &empty).contains("nothing of your coach"));
}

/// A home folder that was copied, when the code is on paper: only its person knows which of the two goes on.
#[test]
fn a_copied_home_asks_for_the_code() {
    let crew = crew();
    let [ana, _] = &crew.athletes[..] else { panic!() };
    let code = ana.on_paper().unwrap();
    std::fs::copy(ana.home.join("place"), crew.folder().join("place")).unwrap();
    let copied = |name: &str| {
        let folder = crew.folder().join(name);
        ana.copy_to(&folder);
        std::fs::copy(ana.home.join("place"), folder.join("place")).unwrap();
        Device::open(folder, ana.now()).unwrap()
    };
    let copy = copied("copy");
    let look = |device: &Device| device.holdfast.recovery(RecoveryDid::Look, device.now()).unwrap();
    assert!(look(&copy).elsewhere);
    assert_eq!(copy.holdfast.who().unwrap().device, ana.holdfast.who().unwrap().device);
    let wrong = RecoveryDid::Copied { code: None };
    assert!(copy.holdfast.recovery(wrong, copy.now()).is_err());
    copy.holdfast.recovery(RecoveryDid::Copied { code: Some(code) }, copy.now()).unwrap();
    assert!(!look(&copy).elsewhere);
    assert_eq!(copy.holdfast.who().unwrap().opening, None, "nothing was missing");
    assert_ne!(copy.holdfast.who().unwrap().device, ana.holdfast.who().unwrap().device);
    copy.exchange(&crew.carrier).unwrap();
    crew.exchange_all().unwrap();
    copy.exchange(&crew.carrier).unwrap();
    assert_eq!(standing(&crew.coach, "Ana"), [true, true]);
    assert_eq!(state(&copy), state(ana));
    // Moved, it stays what it was.
    let moved = copied("moved");
    assert!(look(&moved).elsewhere);
    moved.holdfast.recovery(RecoveryDid::Moved, moved.now()).unwrap();
    assert!(!look(&moved).elsewhere);
    assert_eq!(moved.holdfast.who().unwrap().device, ana.holdfast.who().unwrap().device);
}

/// A phone and a laptop that are set up at the same time seal before either knows of the other.
#[test]
fn two_devices_that_come_at_once_are_introduced() {
    let crew = crew();
    let [ana, _] = &crew.athletes[..] else { panic!() };
    let (code, paper) = (ana.on_paper().unwrap(), crew.coach.on_paper().unwrap());
    let elsewhere = Carrier::new(crew.folder().join("elsewhere"));
    crew.carrier.copy_to(&elsewhere);
    let phone = restored(&crew, "phone", &code);
    let home = crew.folder().join("laptop");
    let laptop = Device::restored(home, &paper, &elsewhere, (9, crew.coach.now())).unwrap();
    elsewhere.copy_to(&crew.carrier);
    for _ in 0..2 {
        crew.exchange_all().unwrap();
        phone.exchange(&crew.carrier).unwrap();
        laptop.exchange(&crew.carrier).unwrap();
    }
    assert_eq!(standing(&laptop, "Ana"), [true, true]);
    assert_eq!(standing(&phone, "Maren"), [true, true]);
    assert_eq!(state(&laptop), state(&crew.coach));
    let before = crew.carrier.files().len();
    crew.exchange_all().unwrap();
    assert_eq!(crew.carrier.files().len(), before, "once");
    squats(&phone, "2026-11-06", &[(56, 8)]);
    phone.exchange(&crew.carrier).unwrap();
    assert_eq!(laptop.exchange(&crew.carrier).unwrap().aside.len(), 0);
    crew.coach.exchange(&crew.carrier).unwrap();
    assert_eq!(state(&laptop), state(&crew.coach));
}

/// A phone whose code was never typed back is stopped: once it hears of that it has no code any more.
#[test]
fn a_stopped_device_forgets_the_code() {
    let crew = crew();
    let [ana, _] = &crew.athletes[..] else { panic!() };
    let code = ana.code().unwrap().unwrap();
    let phone = restored(&crew, "phone", &code);
    phone.holdfast.stop(1, Some(code), phone.now()).unwrap();
    phone.exchange(&crew.carrier).unwrap();
    assert!(ana.code().unwrap().is_some());
    ana.exchange(&crew.carrier).unwrap();
    assert_eq!(ana.code().unwrap(), None);
    assert!(
        !ana.holdfast.crew().unwrap().people.iter().any(|person| {
            person.devices.iter().any(|device| device.is_this && device.standing)
        })
    );
}

/// The first copy is lost, and the other, which was it, seals again what they wrote together: with the signature that it
/// has, and none of its own.
#[test]
fn a_copy_signs_nothing_for_the_device_it_was() {
    let crew = crew();
    let [ana, _] = &crew.athletes[..] else { panic!() };
    let code = ana.on_paper().unwrap();
    let folder = crew.folder().join("copy");
    ana.copy_to(&folder);
    std::fs::copy(ana.home.join("place"), folder.join("place")).unwrap();
    let copy = Device::open(folder, ana.now()).unwrap();
    copy.holdfast.recovery(RecoveryDid::Copied { code: Some(code.clone()) }, copy.now()).unwrap();
    copy.exchange(&crew.carrier).unwrap();
    let before = crew.carrier.leaves_of(ana).len();
    copy.holdfast.stop(1, Some(code), copy.now()).unwrap();
    copy.exchange(&crew.carrier).unwrap();
    // Nobody has said yet to have seen them.
    assert_eq!(crew.carrier.leaves_of(ana).len(), before + 2, "sealed again");
    let read = crew.coach.exchange(&crew.carrier).unwrap();
    assert!(read.aside.is_empty(), "{read:?}");
    assert_eq!(standing(&crew.coach, "Ana"), [false, true]);
}

/// A stop right after its home was made: it says so at the next opening, or nobody would ever seal to it.
#[test]
fn a_device_that_was_killed_before_its_first_word_says_it_later() {
    let crew = crew();
    let [ana, _] = &crew.athletes[..] else { panic!() };
    let code = ana.on_paper().unwrap();
    let search = holdfast_core::Restore::begin(code).unwrap();
    search.step(ExchangeDid::Begin).unwrap();
    search.step(ExchangeDid::Listed { files: crew.carrier.listing() }).unwrap();
    let files = crew.carrier.files();
    search.step(ExchangeDid::Got { files, unread: Vec::new() }).unwrap();
    let home = crew.folder().join("phone");
    let path = home.to_string_lossy().into_owned();
    let made = Holdfast::restore(path, &search, (0..64).collect(), ana.now(), None).unwrap();
    made.shut().unwrap();
    let database = rusqlite::Connection::open(home.join("holdfast.db")).unwrap();
    for table in ["entry", "record", "outbox"] {
        database.execute(&format!("DELETE FROM {table}"), []).unwrap();
    }
    database.close().unwrap();
    std::fs::remove_file(home.join("tail.jsonl")).unwrap();
    let phone = Device::open(home, ana.now()).unwrap();
    assert_eq!(phone.holdfast.who().unwrap().opening, None, "nothing was lost");
    phone.exchange(&crew.carrier).unwrap();
    crew.coach.exchange(&crew.carrier).unwrap();
    assert_eq!(standing(&crew.coach, "Ana"), [true, true]);
}

/// What was set up with the recovery code stands in two places as everything else does: with its database gone a phone, and a
/// coach's laptop, build all of it again, once the code is forgotten there. What is kept for that goes to no carrier.
#[test]
fn a_restored_device_is_built_again_from_its_own_files() {
    for name in ["phone", "laptop"] {
        let crew = crew();
        let of = if name == "phone" { &crew.athletes[0] } else { &crew.coach };
        let code = of.on_paper().unwrap();
        crew.exchange_all().unwrap();
        let home = restored(&crew, name, &code).home;
        let open = || Device::open(home.clone(), crew.coach.now()).unwrap();
        let device = open();
        device.exchange(&crew.carrier).unwrap();
        let (state, journal) = (device.holdfast.state_text().unwrap(), device.journal());
        assert!(journal.len() > 4, "{name}: {journal:?}");
        let found = device.holdfast.verify().unwrap();
        assert_eq!((found.unopened, &found.trouble), (0, &Vec::new()), "{name}: {found:?}");
        device.holdfast.shut().unwrap();
        for (at, damage) in [&b"no database"[..], b""].into_iter().enumerate() {
            std::fs::write(home.join("holdfast.db"), damage).unwrap();
            let again = open();
            assert_eq!(again.holdfast.state_text().unwrap(), state, "{name}, {at}");
            assert_eq!(again.journal(), journal, "{name}, {at}");
            again.exchange(&crew.carrier).unwrap();
            let own = |file: &holdfast_core::exchange::ListedFile| file.name.ends_with(".own");
            assert!(!crew.carrier.listing().iter().any(own), "{name}, {at}");
            again.holdfast.shut().unwrap();
        }
    }
}

/// Of somebody with two phones it is said which one a file is missing of.
#[test]
fn a_missing_file_is_told_by_the_device_it_is_of() {
    let crew = crew();
    let code = crew.athletes[0].on_paper().unwrap();
    let phone = restored(&crew, "phone", &code);
    for date in ["2026-11-05", "2026-11-06", "2026-11-07"] {
        squats(&phone, date, &[(52, 8)]);
        phone.exchange(&crew.carrier).unwrap();
    }
    let leaves = crew.carrier.leaves_of(&phone);
    let gone = &leaves[leaves.len() - 2];
    std::fs::remove_file(crew.carrier.folder().join(&gone.name)).unwrap();
    crew.coach.exchange(&crew.carrier).unwrap();
    let board = crew.coach.holdfast.board("2026-11-08".parse().unwrap()).unwrap();
    assert!(
        board.arrivals[0].starts_with("1 file from Ana's device 2 has not arrived"),
        "{board:?}"
    );
}
