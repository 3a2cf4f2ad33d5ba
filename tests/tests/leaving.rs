//! Somebody leaves, is taken out, comes back, wants to be forgotten: as the two sides of a thread see it.

use holdfast_core::PairDid;
use holdfast_core::journal::Role;
use holdfast_core::trust::{Head, Recovery, Stop};
use holdfast_tests::pairing::{line_of, pair, scan};
use holdfast_tests::train::squats;
use holdfast_tests::{Carrier, Device, SMALL_PLAN, Writer, changed};

use crate::lost::{crew, error_of, person, restored, sends_unheard, standing, state};

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
    sends_unheard(&crew, ana, "unheard");
    crew.coach.exchange(&crew.carrier).unwrap();
    let told = ana.exchange(&crew.carrier).unwrap().told;
    assert!(told[0].contains("no longer in the crew"), "{told:?}");
    assert!(
        crew.coach.holdfast.board("2026-11-06".parse().unwrap()).unwrap().arrivals[0]
            .contains("taken out")
    );
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
    assert!(done.told.contains("Ana") && done.not_reached.len() == 5, "{done:?}");
    let gone = crew.coach.holdfast.forgotten_files(crew.carrier.listing()).unwrap();
    assert!(gone.len() >= 3, "{gone:?}");
    let held: Vec<_> =
        crew.carrier.files().into_iter().filter(|file| gone.contains(&file.name)).collect();
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
    // Her phone knows, and brings nothing back where it was deleted.
    for name in &gone {
        std::fs::remove_file(crew.carrier.folder().join(name)).unwrap();
    }
    crew.exchange_all().unwrap();
    assert!(crew.coach.holdfast.forgotten_files(crew.carrier.listing()).unwrap().is_empty());
    // The carrier brings it again: one that keeps what is deleted does.
    for file in &held {
        std::fs::write(crew.carrier.folder().join(&file.name), &file.content).unwrap();
    }
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

/// What says that she left is deleted with her thread, so a laptop that was away never reads it. It hears that she was
/// forgotten, and from then on nothing goes to her from it either.
#[test]
fn a_laptop_that_was_away_seals_nothing_to_who_was_forgotten_on_another() {
    let crew = crew();
    let [ana, ben] = &crew.athletes[..] else { panic!() };
    let code = crew.coach.on_paper().unwrap();
    let second = restored(&crew, "second", &code);
    for device in [&crew.coach, ana, ben, &second] {
        device.exchange(&crew.carrier).unwrap();
    }
    second.publish(&changed(SMALL_PLAN, "Small block", "Second block")).unwrap();
    second.exchange(&crew.carrier).unwrap();
    assert_eq!(ana.exchange(&crew.carrier).unwrap().entries, 1, "she is in the crew");

    crew.coach.holdfast.remove("Ana".into(), None, crew.coach.now()).unwrap();
    crew.coach.exchange(&crew.carrier).unwrap();
    crew.coach.holdfast.forget("Ana".into(), crew.coach.now()).unwrap();
    for name in crew.coach.holdfast.forgotten_files(crew.carrier.listing()).unwrap() {
        std::fs::remove_file(crew.carrier.folder().join(name)).unwrap();
    }
    crew.coach.exchange(&crew.carrier).unwrap();
    let told = second.exchange(&crew.carrier).unwrap().told;
    assert!(told.len() == 1 && told[0].contains("has forgotten Ana"), "{told:?}");
    let hers = person(&second, "Ana");
    assert!(hers.standing && hers.state.unwrap().contains("Take Ana out here too"));
    second.publish(&changed(SMALL_PLAN, "Small block", "Without her")).unwrap();
    assert!(second.exchange(&crew.carrier).unwrap().told.is_empty(), "said once");
    assert_eq!(ana.exchange(&crew.carrier).unwrap().entries, 0, "sealed to her no more");
    assert!(ben.exchange(&crew.carrier).unwrap().entries > 0);

    second.holdfast.remove("Ana".into(), None, second.now()).unwrap();
    second.exchange(&crew.carrier).unwrap();
    second.holdfast.forget("Ana".into(), second.now()).unwrap();
    for device in [&second, &crew.coach, &second] {
        device.exchange(&crew.carrier).unwrap();
    }
    assert_eq!(state(&second), state(&crew.coach));
}

/// A thief's laptop that forgets somebody takes nothing from them for good: once it is stopped they have all they missed.
#[test]
fn who_was_forgotten_by_a_device_that_is_stopped_is_given_what_they_missed() {
    let crew = crew();
    let [ana, _] = &crew.athletes[..] else { panic!() };
    let code = crew.coach.on_paper().unwrap();
    let second = restored(&crew, "second", &code);
    for device in [&crew.coach, ana, &second] {
        device.exchange(&crew.carrier).unwrap();
    }
    crew.coach.holdfast.remove("Ana".into(), None, crew.coach.now()).unwrap();
    crew.coach.holdfast.forget("Ana".into(), crew.coach.now()).unwrap();
    sends_unheard(&crew, &crew.coach, "thief");
    second.exchange(&crew.carrier).unwrap();
    second.publish(&changed(SMALL_PLAN, "Small block", "Second block")).unwrap();
    second.exchange(&crew.carrier).unwrap();
    let stopped = second.holdfast.stop(1, Some(code), second.now()).unwrap();
    assert!(person(&second, "Ana").state.is_none(), "{stopped:?}");
    for device in [&second, ana, &second, ana] {
        device.exchange(&crew.carrier).unwrap();
    }
    assert!(ana.journal().iter().any(|line| line.contains("Second block")));
}

/// No removal makes anything count that did not: what it names is what counted.
#[test]
fn a_second_removal_lets_nothing_in() {
    let crew = crew();
    let [ana, _] = &crew.athletes[..] else { panic!() };
    crew.coach.holdfast.remove("Ana".into(), Some(1), crew.coach.now()).unwrap();
    squats(ana, "2026-11-05", &[(99, 8)]);
    sends_unheard(&crew, ana, "unheard");
    assert_eq!(crew.coach.exchange(&crew.carrier).unwrap().aside.len(), 1);
    let before = state(&crew.coach);
    crew.coach.holdfast.remove("Ana".into(), None, crew.coach.now()).unwrap();
    let after = state(&crew.coach);
    let lifts = |state: &str| state.lines().filter(|line| line.contains(" lift ")).count();
    assert_eq!(lifts(&after), lifts(&before));
}

/// A wrong line by a slip, and two people of one name: neither locks anybody out, or up.
#[test]
fn a_slip_in_pairing_is_put_right_in_person() {
    let crew = crew();
    let eva = Device::start(crew.folder().join("eva"), "Eva", Role::Athlete, 90).unwrap();
    let shown = pair_with(&crew.coach, &eva, 91, |right| if right == 1 { 2 } else { 1 });
    assert!(shown.contains("Nothing was shared"), "{shown}");
    pair(&crew.coach, &eva, 92).unwrap();
    crew.coach.exchange(&crew.carrier).unwrap();
    eva.exchange(&crew.carrier).unwrap();
    assert!(person(&crew.coach, "Eva").standing);
    let namesake = Device::start(crew.folder().join("maren"), "maren", Role::Athlete, 93).unwrap();
    assert!(pair(&crew.coach, &namesake, 94).unwrap_err().to_string().contains("Choose another"));
}

/// Pairs with the coach picking another line than the one that is right; gives what the coach is told.
fn pair_with(coach: &Device, member: &Device, chance: u8, picks: impl Fn(u32) -> u32) -> String {
    let invited = coach.pair(PairDid::Invite { chance: vec![chance; 32] }).unwrap();
    let answered = member.pair(scan(&invited, chance)).unwrap();
    let opened = coach.pair(scan(&answered, chance)).unwrap();
    let compared = member.pair(scan(&opened, chance)).unwrap();
    let line = line_of(&opened, &compared).map(picks);
    let picked = coach.pair(PairDid::Pick { line, label: None }).unwrap();
    member.pair(PairDid::Match { matches: true, share_earlier: true }).unwrap();
    picked.told.unwrap_or_default()
}

/// Nothing is cut for nobody: what somebody logs who is out keeps its second place beside the database.
#[test]
fn who_is_out_loses_nothing_with_the_database() {
    let crew = crew();
    let [ana, _] = &crew.athletes[..] else { panic!() };
    crew.coach.holdfast.remove("Ana".into(), None, crew.coach.now()).unwrap();
    crew.coach.exchange(&crew.carrier).unwrap();
    ana.exchange(&crew.carrier).unwrap();
    squats(ana, "2026-11-06", &[(54, 8)]);
    ana.holdfast.cut_leaves().unwrap();
    let before = state(ana);
    assert!(ana.holdfast.who().unwrap().opening.unwrap().contains("no longer in the crew"));
    ana.holdfast.shut().unwrap();
    std::fs::remove_file(ana.home.join("holdfast.db")).unwrap();
    let again = Device::open(ana.home.clone(), ana.now()).unwrap();
    assert_eq!(state(&again), before);
}
