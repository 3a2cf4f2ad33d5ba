//! What people do when a phone or a laptop is lost, sold or stolen, or somebody leaves: the recovery code, stops and
//! removals, as the two sides of a thread see them.

use holdfast_core::journal::Role;
use holdfast_core::trust::{Head, Recovery, Stop};
use holdfast_core::{CrewPerson, Field, HoldfastError, RecoveryDid};
use holdfast_tests::pairing::pair;
use holdfast_tests::taps::flag;
use holdfast_tests::train::squats;
use holdfast_tests::{Carrier, Crew, Device, SMALL_PLAN, Writer};

/// Ana and Ben, who have trained; everybody has everything that is for them.
fn crew() -> Crew {
    let crew = Crew::start(SMALL_PLAN, &["Ana", "Ben"]).unwrap();
    for athlete in &crew.athletes {
        squats(athlete, "2026-11-03", &[(50, 8), (60, 6), (70, 6)]);
    }
    crew.exchange_all().unwrap();
    crew
}

fn error_of<T>(refused: Result<T, HoldfastError>) -> String {
    refused.err().unwrap().to_string()
}

fn state(device: &Device) -> String {
    device.holdfast.state_text().unwrap()
}

fn restored(crew: &Crew, name: &str, code: &str) -> Device {
    let now = crew.athletes[0].now();
    Device::restored(crew.folder().join(name), code, &crew.carrier, (7, now)).unwrap()
}

fn person(device: &Device, name: &str) -> CrewPerson {
    let screen = device.holdfast.crew().unwrap();
    screen.people.into_iter().find(|person| person.name == name).unwrap()
}

fn standing(device: &Device, name: &str) -> Vec<bool> {
    person(device, name).devices.iter().map(|device| device.standing).collect()
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
    ana.exchange(&crew.carrier).unwrap();
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
    let read = ana.exchange(&crew.carrier).unwrap();
    assert_eq!((read.leaves, read.aside.len()), (0, 0), "{read:?}");
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
    crew.coach.exchange(&crew.carrier).unwrap();
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
fn who_is_taken_out_is_told_and_sends_nothing_more() {
    let crew = crew();
    let [ana, ben] = &crew.athletes[..] else { panic!() };
    // With the code on paper alone it is the device that is told.
    ana.on_paper().unwrap();
    // One that the coach has not seen when Ana goes.
    squats(ana, "2026-11-05", &[(52, 8)]);
    let screen = crew.coach.holdfast.remove("ana".into(), None, crew.coach.now()).unwrap();
    assert!(screen.told.unwrap().contains("password"));
    let again = crew.coach.holdfast.remove("Ana".into(), None, crew.coach.now()).unwrap();
    assert!(again.told.unwrap().contains("already"));
    let board = crew.coach.holdfast.board("2026-11-06".parse().unwrap()).unwrap();
    let names: Vec<&str> = board.rows.iter().map(|row| row.name.as_str()).collect();
    assert_eq!(names, ["Ben"], "nobody decides about her any more");
    assert!(crew.coach.holdfast.member("Ana".into(), "2026-11-06".parse().unwrap()).is_ok());
    ana.holdfast.cut_leaves().unwrap();
    crew.coach.exchange(&crew.carrier).unwrap();
    let told = ana.exchange(&crew.carrier).unwrap().told;
    assert!(told[0].contains("no longer in the crew"), "{told:?}");
    // What was cut before is on its way, and does not count.
    assert_eq!(crew.coach.exchange(&crew.carrier).unwrap().aside.len(), 1);
    let before = crew.carrier.files().len();
    squats(ana, "2026-11-06", &[(54, 8)]);
    ana.exchange(&crew.carrier).unwrap();
    assert_eq!(crew.carrier.files().len(), before);
    assert_eq!(ana.today().unwrap().name, "Ana", "she goes on logging");
    // Nothing new is for her, and Ben hears nothing of it.
    crew.coach.publish(&SMALL_PLAN.replace("Small", "Other")).unwrap();
    crew.coach.exchange(&crew.carrier).unwrap();
    assert_eq!(ana.exchange(&crew.carrier).unwrap().leaves, 0);
    assert!(ben.exchange(&crew.carrier).unwrap().told.is_empty());
    // Neither may do it who is no coach, nor to the coach.
    let refused = error_of(ben.holdfast.remove("Maren".into(), None, ben.now()));
    assert!(refused.contains("coach"), "{refused}");
    let refused = error_of(crew.coach.holdfast.remove("Maren".into(), None, crew.coach.now()));
    assert!(refused.contains("coach"), "{refused}");
    let refused = error_of(crew.coach.holdfast.remove("Nobody".into(), None, crew.coach.now()));
    assert!(refused.contains("Ben"), "{refused}");
}

#[test]
fn who_was_taken_out_is_taken_in_again_in_person() {
    let crew = crew();
    let [ana, _] = &crew.athletes[..] else { panic!() };
    crew.coach.holdfast.remove("Ana".into(), None, crew.coach.now()).unwrap();
    crew.coach.exchange(&crew.carrier).unwrap();
    ana.exchange(&crew.carrier).unwrap();
    squats(ana, "2026-11-06", &[(54, 8)]);
    // Another coach's crew is another home.
    let other = Device::start(crew.folder().join("other"), "Mira", Role::Coach, 70).unwrap();
    assert!(pair(&other, ana, 71).is_err());
    pair(&crew.coach, ana, 72).unwrap();
    for device in [&crew.coach, ana, &crew.coach] {
        device.exchange(&crew.carrier).unwrap();
    }
    assert!(person(&crew.coach, "Ana").standing);
    assert!(person(ana, "Ana").standing);
    let sets = crew.coach.holdfast.sets(Some("Ana".into()), "2026-11-06".parse().ok(), 1).unwrap();
    assert_eq!(sets.sessions.len(), 1, "what she logged meanwhile is sent");
}

/// Of a removed device everything counts that was here when it went, in whatever order files come later.
#[test]
fn one_device_of_a_member_is_removed_for_ever() {
    let crew = crew();
    let [ana, _] = &crew.athletes[..] else { panic!() };
    let code = ana.on_paper().unwrap();
    let phone = restored(&crew, "phone", &code);
    crew.exchange_all().unwrap();
    let screen = crew.coach.holdfast.remove("Ana".into(), Some(1), crew.coach.now()).unwrap();
    assert!(screen.told.unwrap().contains("Device 1 of Ana"));
    crew.coach.exchange(&crew.carrier).unwrap();
    squats(ana, "2026-11-06", &[(54, 8)]);
    ana.exchange(&crew.carrier).unwrap();
    squats(&phone, "2026-11-06", &[(56, 8)]);
    phone.exchange(&crew.carrier).unwrap();
    crew.coach.exchange(&crew.carrier).unwrap();
    assert_eq!(standing(&crew.coach, "Ana"), [false, true]);
    phone.exchange(&crew.carrier).unwrap();
    // A laptop that reads it all at once, from the last file to the first, finds the same.
    let paper = crew.coach.on_paper().unwrap();
    let laptop = restored(&crew, "laptop", &paper);
    crew.coach.exchange(&crew.carrier).unwrap();
    let reversed = Device::restored(
        crew.folder().join("reversed"),
        &paper,
        &Carrier::new(crew.folder().join("carrier")),
        (8, crew.coach.now()),
    )
    .unwrap();
    for device in [&laptop, &crew.coach, &laptop] {
        device.exchange(&crew.carrier).unwrap();
    }
    assert_eq!(state(&laptop), state(&crew.coach));
    assert_eq!(state(&reversed), state(&crew.coach));
}

/// A stop by a device, by somebody else, or for another thread stops nothing.
#[test]
fn nobody_elses_word_stops_a_device() {
    let crew = crew();
    let [maren, ana, ben] = [&crew.coach, &crew.athletes[0], &crew.athletes[1]].map(Writer::at);
    let paper = Recovery::read(&crew.athletes[0].code().unwrap().unwrap()).unwrap().keys();
    let others = Recovery::read(&crew.athletes[1].code().unwrap().unwrap()).unwrap().keys();
    let nothing = Head { device: ana.device(), of: ana.person(), sequence: 0, content: [0; 32] };
    let stop = |by| Stop::sign(by, nothing).text();
    let mut turned = stop(&paper).into_bytes();
    turned[60] = if turned[60] == b'A' { b'B' } else { b'A' };
    let turned = String::from_utf8(turned).unwrap();
    let before = [&crew.coach, &crew.athletes[0]].map(state);
    for (at, text) in [stop(&ana.keys), stop(&others), turned].into_iter().enumerate() {
        let body = format!("{{\"of\":\"{}\",\"stop\":\"{text}\"}}", ben.person());
        let line = format!(
            "{{\"v\":1,\"n\":{},\"hlc\":{{\"ms\":1794000000000,\"count\":1}},\"t\":\"2026-11-06T20:00:00.000+00:00\",\
             \"k\":\"stop\",\"id\":\"01a1a291-0000-7000-8000-00000000000{at}\",\"body\":{body}}}",
            900 + at
        );
        let last = crew.carrier.leaves_of(&crew.athletes[1]);
        let last = ben.opens(&maren, last.last().unwrap());
        let leaf = ben.writes((maren.crew(), ben.person()), Some(&last), &[line]);
        let file = ben.seals(&leaf, &[&maren, &ana, &ben]);
        crew.coach.take_in(std::slice::from_ref(&file)).unwrap();
        crew.athletes[0].take_in(std::slice::from_ref(&file)).unwrap();
        assert_eq!(standing(&crew.coach, "Ana"), [true], "{at}");
        assert_eq!(standing(&crew.athletes[0], "Ana"), [true], "{at}");
    }
    let after = [&crew.coach, &crew.athletes[0]].map(state);
    assert_eq!(before[1], after[1]);
    for line in before[0].lines() {
        assert!(after[0].contains(line));
    }
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

/// Everything of one member goes, and of nobody else anything; no exchange brings it back.
#[test]
fn who_is_forgotten_is_gone_from_the_coachs_laptop_and_the_carrier() {
    let mut crew = crew();
    let refused = error_of(crew.coach.holdfast.forget("Ana".into(), crew.coach.now()));
    assert!(refused.contains("Take Ana out first"), "{refused}");
    let ben = person(&crew.coach, "Ben");
    let ana = person(&crew.coach, "Ana");
    crew.coach.holdfast.remove("Ana".into(), None, crew.coach.now()).unwrap();
    crew.exchange_all().unwrap();
    // One that she had cut before she knew comes only later.
    let before = state(&crew.coach);
    let done = crew.coach.holdfast.forget("Ana".into(), crew.coach.now()).unwrap();
    assert!(done.told.contains("Ana") && done.not_reached.len() == 4, "{done:?}");
    let gone = crew.coach.holdfast.forgotten_files(crew.carrier.listing()).unwrap();
    assert!(gone.len() >= 3, "{gone:?}");
    let check = |coach: &Device| {
        let id = ana.person.to_string().replace('-', "").to_uppercase();
        let after = state(coach);
        assert!(!after.contains(&id));
        // What was said to both of them stays, and what is Ben's.
        let bens = ben.person.to_string().replace('-', "").to_uppercase();
        let stays = |line: &&str| line.contains(&bens) || line.contains(" plan ");
        assert!(before.lines().filter(stays).count() > 5);
        for line in before.lines().filter(stays) {
            assert!(after.contains(line), "{line}");
        }
        assert_eq!(coach.holdfast.crew().unwrap().people.len(), 2);
        assert!(!coach.holdfast.refold().unwrap());
        let shelf = std::fs::read_dir(coach.home.join("leaves")).unwrap();
        for file in shelf {
            let name = file.unwrap().file_name().into_string().unwrap();
            assert!(!gone.contains(&name), "{name}");
        }
        // Not in a free page of the database either.
        for file in ["holdfast.db", "holdfast.db-wal", "tail.jsonl"] {
            let bytes = std::fs::read(coach.home.join(file)).unwrap_or_default();
            for secret in [&b"\"name\":\"Ana\""[..], b"\"label\":\"Ana\""] {
                assert!(!bytes.windows(secret.len()).any(|part| part == secret), "{file}");
            }
        }
    };
    check(&crew.coach);
    // Her phone, and the carrier, bring it again and again.
    crew.exchange_all().unwrap();
    check(&crew.coach);
    let files = crew.carrier.files();
    crew.coach.take_in_unasked(files).unwrap();
    check(&crew.coach);
    crew.coach.kill().unwrap();
    check(&crew.coach);
    // A database that is built again from the shelf does not bring it back: not even where a kill left her files there.
    crew.coach.holdfast.shut().unwrap();
    for file in crew.carrier.files().into_iter().filter(|file| gone.contains(&file.name)) {
        std::fs::write(crew.coach.home.join("leaves").join(file.name), file.content).unwrap();
    }
    std::fs::remove_file(crew.coach.home.join("holdfast.db")).unwrap();
    crew.coach = Device::open(crew.coach.home.clone(), crew.coach.now()).unwrap();
    check(&crew.coach);
    // Ben's thread has no hole.
    crew.exchange_all().unwrap();
    let board = crew.coach.holdfast.board("2026-11-06".parse().unwrap()).unwrap();
    assert!(board.arrivals.is_empty(), "{:?}", board.arrivals);
    // She can join again, as somebody new.
    let refused = pair(&crew.coach, &crew.athletes[0], 77).unwrap_err().to_string();
    assert!(refused.contains("new folder"), "{refused}");
    let anew = Device::start(crew.folder().join("anew"), "Ana", Role::Athlete, 78).unwrap();
    crew.join(&anew).unwrap();
    assert!(person(&crew.coach, "Ana").standing);
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

/// No removal makes anything count that did not: what it names is what counted.
#[test]
fn a_second_removal_lets_nothing_in() {
    let crew = crew();
    let [ana, _] = &crew.athletes[..] else { panic!() };
    crew.coach.holdfast.remove("Ana".into(), Some(1), crew.coach.now()).unwrap();
    squats(ana, "2026-11-05", &[(99, 8)]);
    ana.exchange(&crew.carrier).unwrap();
    assert_eq!(crew.coach.exchange(&crew.carrier).unwrap().aside.len(), 1);
    let before = state(&crew.coach);
    crew.coach.holdfast.remove("Ana".into(), None, crew.coach.now()).unwrap();
    let after = state(&crew.coach);
    let lifts = |state: &str| state.lines().filter(|line| line.contains(" lift ")).count();
    assert_eq!(lifts(&after), lifts(&before));
}
