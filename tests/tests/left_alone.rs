//! What an exchange does not fetch again, does not list, and what a full check holds against each other.

use std::cell::RefCell;
use std::collections::BTreeSet;
use std::fs;

use holdfast_core::exchange::sealed::{SealedName, lane_tag};
use holdfast_core::exchange::{ExchangeDid, ExchangeReport, ExchangeStep, ListedFile};
use holdfast_core::{DeviceId, Restore};
use holdfast_tests::taps::kg;
use holdfast_tests::train::squats;
use holdfast_tests::{Carrier, Crew, Device, SMALL_PLAN, Writer, at, sha256};
use rusqlite::Connection;

/// One exchange, and the names that were asked for.
fn fetched(device: &Device, crew: &Crew) -> (ExchangeReport, Vec<String>) {
    let asked = RefCell::new(Vec::new());
    let get = |names: &[String]| {
        asked.borrow_mut().extend(names.to_vec());
        let mut files = crew.carrier.files();
        files.retain(|file| names.contains(&file.name));
        files
    };
    let report = device.exchange_by(crew.carrier.listing(), get, |_| Ok(0)).unwrap();
    (report, asked.into_inner())
}

/// Files under names of leaves that nobody wrote, with bytes that fit their names, or do not: those that fit come before all
/// others by name, torn ones after.
fn junk(crew: &Crew, count: u64, torn: bool) -> Vec<String> {
    let device = DeviceId(uuid::Uuid::from_u128(if torn { u128::MAX } else { 1 }));
    let one = |sequence: u64| {
        let content = format!("junk {sequence}").into_bytes();
        let hash = sha256(if torn { b"another" } else { &content });
        let (tag, hash) = ("0".repeat(8).parse().unwrap(), hash[..16].parse().unwrap());
        let name = SealedName { device, tag, sequence, hash };
        fs::write(crew.carrier.folder().join(name.to_string()), content).unwrap();
        name.to_string()
    };
    (1..=count).map(one).collect()
}

/// However many useless files lie there, and although they come first by name: each is fetched once, a fetching ends after
/// 200 of them, and what is of use arrives.
#[test]
fn useless_files_are_fetched_once_and_hold_nothing_up() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let (ines, coach) = (&crew.athletes[0], &crew.coach);
    squats(ines, "2026-11-03", &[(50, 8)]);
    ines.exchange(&crew.carrier).unwrap();
    let useless: BTreeSet<String> = junk(&crew, 450, false).into_iter().collect();
    let mut seen = BTreeSet::new();
    let mut rounds = 0;
    loop {
        let (report, names) = fetched(coach, &crew);
        let new: BTreeSet<String> =
            names.into_iter().filter(|name| useless.contains(name)).collect();
        // A step is done to its end.
        assert!(new.len() < 200 + 128, "{}", new.len());
        assert!(new.is_disjoint(&seen), "one is fetched again");
        // Known ones are named still.
        assert!(report.aside.len() >= seen.len() + new.len());
        let is_whole = !report.aside.iter().any(|file| file.name == "The whole folder");
        seen.extend(new);
        assert_eq!(is_whole, seen.len() == useless.len());
        if is_whole {
            break;
        }
        rounds += 1;
        assert!(rounds < 4);
    }
    let sets = coach.holdfast.sets(Some("Ines".into()), None, 1).unwrap();
    assert_eq!(sets.sessions.len(), 1);
    // Also after a start.
    coach.holdfast.shut().unwrap();
    let coach = Device::open(coach.home.clone(), at("2026-11-04", 9)).unwrap();
    let (_, names) = fetched(&coach, &crew);
    assert!(names.iter().all(|name| !useless.contains(name)), "{names:?}");
    // Nor after an exchange with another carrier, which has none of them.
    coach.exchange(&Carrier::new(crew.folder().join("stick"))).unwrap();
    let (_, names) = fetched(&coach, &crew);
    assert!(names.iter().all(|name| !useless.contains(name)), "{names:?}");
}

/// A file that is still arriving has its full size on some disks: it is tried again, after all others, until it is whole.
#[test]
fn what_may_still_be_arriving_is_tried_again_behind_the_others() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let (ines, coach) = (&crew.athletes[0], &crew.coach);
    squats(ines, "2026-11-03", &[(50, 8)]);
    ines.exchange(&crew.carrier).unwrap();
    let arriving = crew.carrier.leaves_of(ines).pop().unwrap();
    let path = crew.carrier.folder().join(&arriving.name);
    fs::write(&path, vec![0; arriving.content.len()]).unwrap();
    for round in 0..5 {
        let torn = if round == 0 { Vec::new() } else { junk(&crew, 40 * round, true) };
        let (_, names) = fetched(coach, &crew);
        let place = names.iter().position(|name| *name == arriving.name);
        let place = place.unwrap_or_else(|| panic!("round {round}: it is not tried again"));
        let new = torn.len().saturating_sub(40 * (round.max(1) - 1) as usize);
        assert!(round == 0 || place >= new, "round {round}: it stands before what is new");
    }
    fs::write(&path, &arriving.content).unwrap();
    fetched(coach, &crew);
    assert_eq!(coach.holdfast.sets(Some("Ines".into()), None, 1).unwrap().sessions.len(), 1);
}

/// One that stays torn, and came under another name meanwhile, is fetched a dozen times and then no more.
#[test]
fn what_came_under_another_name_is_not_waited_for() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let (ines, coach) = (&crew.athletes[0], &crew.coach);
    squats(ines, "2026-11-03", &[(50, 8)]);
    ines.exchange(&crew.carrier).unwrap();
    coach.exchange(&crew.carrier).unwrap();
    let leaf = crew.carrier.leaves_of(ines).pop().unwrap();
    let mut torn = SealedName::parse(&leaf.name).unwrap();
    torn.hash = "0123456789abcdef".parse().unwrap();
    fs::write(crew.carrier.folder().join(torn.to_string()), b"half").unwrap();
    let times = (0..20).filter(|_| fetched(coach, &crew).1.contains(&torn.to_string())).count();
    assert_eq!(times, 12);
}

/// A member's device lists the lanes of its own thread, and of whom it carries files for: not the crew's.
#[test]
fn a_member_looks_into_the_lanes_of_the_own_thread() {
    let crew = Crew::start(SMALL_PLAN, &["Ines", "Jon", "Kim"]).unwrap();
    for athlete in &crew.athletes {
        squats(athlete, "2026-11-03", &[(50, 8)]);
    }
    crew.exchange_all().unwrap();
    let lane = |name: &str| format!("{}-00000001", &name[..41]);
    let all: BTreeSet<String> = crew.carrier.files().iter().map(|file| lane(&file.name)).collect();
    // The coach's own, and for each member the member's and the coach's.
    assert_eq!(all.len(), 1 + 2 * 3);
    let mut named: Vec<String> = all.iter().cloned().collect();
    named.extend(["photos".to_owned(), String::new(), "x".repeat(50), "ä".repeat(50)]);
    let looks = |device: &Device| -> BTreeSet<String> {
        let (place, now) = ("https://files.example.org/".into(), device.now());
        let wanted = device.holdfast.to_look_into(place, named.clone(), now).unwrap();
        wanted.into_iter().collect()
    };
    assert_eq!(looks(&crew.coach), all);
    let of = crew.athletes.iter().map(looks).collect::<Vec<_>>();
    for (athlete, lanes) in crew.athletes.iter().zip(&of) {
        assert_eq!(lanes.len(), 2);
        assert!(
            crew.carrier.leaves_of(athlete).iter().all(|file| lanes.contains(&lane(&file.name)))
        );
    }
    assert!(of[0].is_disjoint(&of[1]) && of[1].is_disjoint(&of[2]) && of[0].is_disjoint(&of[2]));
    let [ines, jon, _] = &crew.athletes[..] else { panic!() };
    squats(jon, "2026-11-05", &[(50, 8)]);
    jon.holdfast.cut_leaves().unwrap();
    let stick = Carrier::new(crew.folder().join("stick"));
    jon.exchange(&stick).unwrap();
    ines.holdfast.take_along(stick.leaves_of(jon)).unwrap();
    assert!(looks(ines).is_superset(&of[0]) && looks(ines).len() == 3, "{:?}", looks(ines));
}

/// A member's device knows its own thread's files by their names, and fetches no others.
#[test]
fn a_member_fetches_files_of_the_own_thread_alone() {
    let crew = Crew::start(SMALL_PLAN, &["Ines", "Jon", "Kim"]).unwrap();
    for athlete in &crew.athletes {
        squats(athlete, "2026-11-03", &[(50, 8)]);
        athlete.exchange(&crew.carrier).unwrap();
    }
    crew.coach.publish(&SMALL_PLAN.replace("Small", "Other")).unwrap();
    crew.coach.exchange(&crew.carrier).unwrap();
    let [maren, ines] = [&crew.coach, &crew.athletes[0]].map(Writer::at);
    let (_, names) = fetched(&crew.athletes[0], &crew);
    assert!(!names.is_empty());
    for name in names.iter().map(|name| SealedName::parse(name).unwrap()) {
        assert_eq!(name.tag, lane_tag(maren.crew(), ines.person(), name.device), "{name}");
    }
}

/// A folder with more files than any crew writes is no carrier's: what stands behind the hundred thousandth is not looked at,
/// neither in an exchange nor by somebody who has their recovery code alone.
#[test]
fn a_listing_ends_at_a_hundred_thousand_names() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let (ines, coach) = (&crew.athletes[0], &crew.coach);
    squats(ines, "2026-11-03", &[(50, 8)]);
    ines.exchange(&crew.carrier).unwrap();
    let last = crew.carrier.leaves_of(ines).pop().unwrap();
    let behind = |others: usize| -> Vec<ListedFile> {
        let hidden = (0..others).map(|at| ListedFile { name: format!(".{at}"), bytes: 1 });
        let bytes = last.content.len() as u64;
        hidden.chain([ListedFile { name: last.name.clone(), bytes }]).collect()
    };
    let fetches = |others: usize| {
        let asked = RefCell::new(Vec::new());
        let get = |names: &[String]| {
            asked.borrow_mut().extend(names.to_vec());
            vec![last.clone()]
        };
        let report = coach.exchange_by(behind(others), get, |_| Ok(0)).unwrap();
        let told = report.aside.iter().any(|file| file.name == "The whole folder");
        (asked.into_inner(), told)
    };
    let finds = |others: usize| {
        let search = Restore::begin(ines.code().unwrap().unwrap()).unwrap();
        search.step(ExchangeDid::Begin).unwrap();
        match search.step(ExchangeDid::Listed { files: behind(others) }).unwrap() {
            ExchangeStep::Get { names } => names,
            _ => Vec::new(),
        }
    };
    assert_eq!(fetches(100_000), (vec![], true));
    assert_eq!(fetches(99_999), (vec![last.name.clone()], false));
    assert_eq!(finds(100_000), [""; 0]);
    assert_eq!(finds(99_999), [last.name.as_str()]);
}

/// What lies in files and what lies in the database is held against each other, and so is the order of files.
#[test]
fn a_full_check_follows_every_chain_and_opens_every_file() {
    let crew = Crew::running().unwrap();
    let ines = &crew.athletes[0];
    ines.tap(kg(50)).unwrap();
    crew.exchange_all().unwrap();
    ines.tap(kg(60)).unwrap();
    crew.exchange_all().unwrap();
    let verified = ines.holdfast.verify().unwrap();
    assert_eq!((verified.trouble.len(), verified.unopened), (0, 0), "{verified:?}");
    assert_eq!((verified.signed, verified.chains), (verified.leaves, 2));
    let spoiled = |sql: &str| {
        let home = crew.folder().join("spoiled");
        let _ = fs::remove_dir_all(&home);
        ines.copy_to(&home);
        // An entry that is gone would come back from there.
        fs::remove_file(home.join("tail.jsonl")).unwrap();
        let database = Connection::open(home.join("holdfast.db")).unwrap();
        assert!(database.execute(sql, []).unwrap() > 0, "{sql}");
        database.close().unwrap();
        let again = Device::open(home, ines.now()).unwrap();
        again.holdfast.verify().unwrap().trouble.join("\n")
    };
    ines.holdfast.shut().unwrap();
    let said = spoiled("UPDATE leaf SET previous = zeroblob(32) WHERE sequence = 2");
    assert!(said.contains("Upload 2") && said.contains("does not follow"), "{said}");
    let said = spoiled("UPDATE leaf SET previous = zeroblob(32) WHERE sequence = 1");
    assert!(said.contains("Upload 1"), "{said}");
    let said = spoiled(
        "DELETE FROM entry WHERE kind = 'lift' AND n = (SELECT min(n) FROM entry WHERE kind = 'lift')",
    );
    assert!(said.contains("other entries than this file"), "{said}");
}
