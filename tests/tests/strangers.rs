//! What no carrier and nobody of the crew can do: write for others, read what is not for them, or become somebody by
//! saying so. Each is done by hand, with the keys that the person has.

use data_encoding::HEXLOWER;
use holdfast_core::exchange::CarriedFile;
use holdfast_core::exchange::sealed::{SealedFault, SealedName};
use holdfast_core::journal::Role;
use holdfast_core::trust::{Certificate, Keys, Recovery};
use holdfast_core::{CrewPerson, DeviceId};
use holdfast_tests::taps::flag;
use holdfast_tests::train::squats;
use holdfast_tests::views::flags;
use holdfast_tests::{Crew, Device, SMALL_PLAN, Writer, sha256};
use serde_json::json;

/// Ana and Ben, who have trained; everybody has everything that is for them.
fn crew() -> Crew {
    let crew = Crew::start(SMALL_PLAN, &["Ana", "Ben"]).unwrap();
    for athlete in &crew.athletes {
        squats(athlete, "2026-11-03", &[(50, 8), (60, 6), (70, 6)]);
    }
    crew.exchange_all().unwrap();
    crew
}

fn keys(crew: &Crew) -> [Writer; 3] {
    [&crew.coach, &crew.athletes[0], &crew.athletes[1]].map(Writer::at)
}

fn states(crew: &Crew) -> Vec<String> {
    let all = crew.athletes.iter().chain([&crew.coach]);
    all.map(|device| device.holdfast.state_text().unwrap()).collect()
}

/// An entry as anybody can write it.
fn line(number: u64, kind: &str, record: &str, body: &str) -> String {
    format!(
        "{{\"v\":1,\"n\":{number},\"hlc\":{{\"ms\":1794000000000,\"count\":{number}}},\
         \"t\":\"2026-11-06T20:00:00.000+00:00\",\"k\":\"{kind}\",\"id\":\"{record}\",\"body\":{body}}}"
    )
}

const RECORD: &str = "01a1a291-0000-7000-8000-000000000001";

/// Everybody is given a file; nobody's state changes by it.
fn changes_nothing(crew: &Crew, file: &CarriedFile, what: &str) {
    let before = states(crew);
    for device in crew.athletes.iter().chain([&crew.coach]) {
        device.take_in(std::slice::from_ref(file)).unwrap();
    }
    assert_eq!(states(crew), before, "{what}");
}

#[test]
fn a_member_reads_neither_anothers_leaves_nor_the_coachs_about_them() {
    let crew = crew();
    let [maren, ana, ben] = keys(&crew);
    let (mut own, mut others) = (0, 0);
    for file in crew.carrier.files() {
        let leaf = maren.opens(&maren, &file);
        match (leaf.header.of == ana.person(), ana.reads(&maren, &file)) {
            (true, Ok(_)) => own += 1,
            (false, Err(SealedFault::NotForUs)) => others += 1,
            (_, found) => panic!("{found:?}"),
        }
    }
    assert!(own >= 3 && others >= 3, "{own} {others}");
    let journal = crew.athletes[0].journal().join("\n");
    assert!(!journal.contains(&ben.person().to_string()) && !journal.contains("\"Ben\""));
    // A header says nothing of another thread.
    for file in crew.carrier.files() {
        let leaf = maren.opens(&maren, &file);
        let other = if leaf.header.of == ana.person() { &ben } else { &ana };
        let names = [other.person().to_string(), other.device().to_string()];
        let of_coach = leaf.header.of == maren.person();
        assert!(of_coach || names.iter().all(|name| !leaf.header_line.contains(name)));
    }
}

/// Rulings, plans, admissions, removals, notes and the clearing of flags by a member; a lift by the coach in a member's thread.
#[test]
fn nobody_says_what_is_not_theirs_to_say() {
    let crew = crew();
    let ana_device = &crew.athletes[0];
    ana_device.go_to("2026-11-05");
    let screen = ana_device.tap(holdfast_tests::taps::begin()).unwrap();
    assert!(flags(&screen).is_empty());
    let raised =
        flags(&ana_device.tap(flag(holdfast_core::care::Place::Hip, 6, &[])).unwrap())[0].flag;
    crew.exchange_all().unwrap();
    let [maren, ana, ben] = keys(&crew);
    let person = ana.person();
    let plan = serde_json::json!({ "block": "Ben's block", "text": SMALL_PLAN }).to_string();
    let eve = Writer::of(99);
    let admit = |who: &Writer| {
        let keys = who.certificate.person_keys();
        let [sign, open] = [keys.sign, keys.open].map(|key| HEXLOWER.encode(&key));
        json!({ "person": who.person(), "sign": sign, "open": open, "label": "Eve" }).to_string()
    };
    let remove = |who: &Writer, device: Option<DeviceId>| {
        json!({ "person": who.person(), "device": device, "heads": [] }).to_string()
    };
    let max = format!(
        "{{\"person\":\"{person}\",\"exercise\":\"back-squat\",\"load\":90000000000000,\"tested\":true}}"
    );
    let profile = format!(
        "{{\"person\":\"{}\",\"name\":\"Maren\",\"role\":\"coach\",\"unit\":\"kg\",\"crew\":null}}",
        maren.person()
    );
    let promoted = format!(
        "{{\"person\":\"{}\",\"name\":\"Ben\",\"role\":\"coach\",\"unit\":\"kg\",\"crew\":null}}",
        ben.person()
    );
    let sets = |device: &Device, name: Option<String>| {
        device.holdfast.sets(name, None, 1).unwrap().sessions.remove(0)
    };
    let session = sets(&crew.coach, Some("Ana".into())).session;
    // On the coach's screens it would stand as the coach's own.
    let note =
        format!("{{\"person\":\"{person}\",\"session\":\"{session}\",\"words\":\"Go heavier\"}}");
    let ruling = json!({
        "person": ben.person(), "exercise": "back-squat", "scheme": "8,6,5 open", "after": session,
        "decision": "accept", "loads": [null], "words": "Go heavier",
    });
    let said = [
        ("note", note),
        ("profile", promoted),
        ("plan", plan),
        ("admit", admit(&eve)),
        ("admit", admit(&ana)),
        ("admit", admit(&ben)),
        ("remove", remove(&ana, None)),
        ("remove", remove(&ben, None)),
        ("remove", remove(&ben, Some(ben.device()))),
        ("ruling", ruling.to_string()),
        ("forgot", json!({ "person": ana.person() }).to_string()),
        ("forgot", json!({ "person": ben.person() }).to_string()),
        ("max", max),
        ("clear", format!("{{\"flag\":\"{raised}\"}}")),
        ("profile", profile),
        ("set-aside", format!("{{\"lift\":\"{RECORD}\",\"aside\":true}}")),
    ];
    let theirs = crew.carrier.leaves_of(&crew.athletes[1]);
    let last = ben.opens(&maren, theirs.last().unwrap());
    for (at, (kind, body)) in (1_000..).zip(&said) {
        // Each about something of its own: what Ben says of one record would change Ben's page.
        let words = line(at, kind, &format!("01a1a291-0000-7000-8000-{at:012}"), body);
        let leaf = ben.writes((maren.crew(), ben.person()), Some(&last), &[words]);
        let file = ben.seals(&leaf, &[&maren, &ana, &ben]);
        let before = crew.coach.holdfast.board("2026-11-05".parse().unwrap()).unwrap().rows;
        let people = standing(&crew.coach);
        let taken = crew.coach.take_in(std::slice::from_ref(&file)).unwrap();
        assert_eq!(
            taken.leaves, 1,
            "{kind}: it is a leaf of Ben's, and nothing else is wrong with it"
        );
        assert_eq!(ana_device.take_in(&[file]).unwrap().leaves, 0, "{kind}");
        assert_eq!(standing(&crew.coach), people, "{kind}");
        assert_eq!(rulings(&crew.coach), 0, "{kind}");
        let told = crew.coach.holdfast.board("2026-11-05".parse().unwrap()).unwrap().arrivals;
        assert!(told.iter().all(|line| line.contains("two histories")), "{kind} is read: {told:?}");
        let gone = crew.coach.holdfast.forgotten_files(crew.carrier.listing()).unwrap();
        assert!(gone.is_empty(), "{kind}");
        let after = crew.coach.holdfast.board("2026-11-05".parse().unwrap()).unwrap().rows;
        assert_eq!(after, before, "{kind}");
        let page = crew.coach.holdfast.member("Ana".into(), "2026-11-05".parse().unwrap()).unwrap();
        assert!(page.discomfort[0].open, "{kind}");
        assert!(page.notes.is_empty(), "{kind}");
        assert!(sets(&crew.coach, Some("Ana".into())).notes.is_empty(), "{kind}");
        assert!(sets(ana_device, None).notes.is_empty(), "{kind}");
        assert_eq!(flags(&ana_device.today().unwrap()).len(), 1, "{kind}");
        let who = crew.coach.holdfast.who().unwrap();
        assert_eq!((who.name.as_str(), who.role), ("Maren", Role::Coach), "{kind}");
    }
    // The coach logs a lift in Ana's thread: it is nobody's.
    let lift =
        crew.coach.journal().into_iter().find(|line| line.contains("\"k\":\"lift\"")).unwrap();
    let lift: serde_json::Value = serde_json::from_str(&lift).unwrap();
    let words = line(1_000, "lift", RECORD, &lift["body"].to_string());
    let leaf = maren.writes((maren.crew(), ana.person()), None, &[words]);
    let before = states(&crew);
    ana_device.take_in(&[maren.seals(&leaf, &[&ana])]).unwrap();
    assert_eq!(states(&crew), before);
}

/// Leaves in others' threads, of other crews, by people nobody knows, under certificates that are not theirs.
#[test]
fn nobody_writes_where_they_are_not() {
    let crew = crew();
    let [maren, ana, ben] = keys(&crew);
    let words = |number| line(number, "session", RECORD, "{}");
    let all = [&maren, &ana, &ben];
    // A member in another's thread, and in the coach's own.
    for of in [ana.person(), maren.person()] {
        let leaf = ben.writes((maren.crew(), of), None, &[words(1_000)]);
        changes_nothing(&crew, &ben.seals(&leaf, &all), "another's thread");
    }
    // The same leaf, sealed on by somebody it was for: it stays in its thread.
    let hers = crew.carrier.leaves_of(&crew.athletes[0]).pop().unwrap();
    let plan = crew.carrier.leaves_of(&crew.coach).pop().unwrap();
    for file in [hers, plan] {
        let leaf = maren.opens(&maren, &file);
        let writer = if leaf.header.device == maren.device() { &maren } else { &ana };
        let again = writer.seals(&leaf, &all);
        assert_ne!(again.name, file.name);
        changes_nothing(&crew, &again, "sealed on");
    }
    // Another crew's, and somebody whom nobody took in.
    let eve = Writer::of(99);
    for (crew_id, of) in
        [(eve.crew(), eve.person()), (maren.crew(), eve.person()), (eve.crew(), ana.person())]
    {
        let leaf = eve.writes((crew_id, of), None, &[words(1)]);
        changes_nothing(&crew, &eve.seals(&leaf, &all), "a stranger's");
    }
    let told = crew.coach.holdfast.board("2026-11-05".parse().unwrap()).unwrap().arrivals;
    assert!(told.iter().any(|line| line.contains("somebody this crew does not know")), "{told:?}");
    // Ana's device key under a certificate of Ben's.
    let ben_person = Recovery::new(std::array::from_fn(|at| 62 + at as u8)).keys();
    assert_eq!(ben_person.public(), ben.certificate.person_keys());
    let stolen = Certificate::sign(&ben_person, &ana.certificate.device_keys(), 2);
    let forger = Writer::with(Keys::new(&[7; 32], &[8; 32]), stolen);
    let leaf = forger.writes((maren.crew(), ben.person()), None, &[words(1)]);
    changes_nothing(&crew, &forger.seals(&leaf, &all), "a stolen key");
}

/// Names are hints: hundreds of files that only look right cost no more than their listing, and are named.
#[test]
fn names_that_lie_are_left_alone() {
    let crew = crew();
    let [maren, ana, _] = keys(&crew);
    let real = crew.carrier.leaves_of(&crew.athletes[0]).remove(0);
    let name = SealedName::parse(&real.name).unwrap();
    let before = states(&crew);
    let forged: Vec<CarriedFile> = (0..200_u64)
        .map(|at| {
            let hash = format!("{at:016x}").parse().unwrap();
            let name = SealedName { sequence: 100 + at, hash, ..name };
            CarriedFile { name: name.to_string(), content: real.content.clone() }
        })
        .collect();
    let report = crew.coach.take_in(&forged).unwrap();
    assert_eq!((report.leaves, report.aside.len()), (0, 200));
    // The right bytes under a name that says another place.
    let leaf = ana.opens(&maren, &real);
    let moved = SealedName { sequence: leaf.header.sequence + 7, ..name };
    let file = CarriedFile { name: moved.to_string(), content: real.content };
    let report = crew.coach.take_in(&[file]).unwrap();
    assert_eq!(report.leaves, 0, "{report:?}");
    assert_eq!(states(&crew), before);
}

/// Who is in the crew by what name, and whether they and their devices stand.
fn standing(device: &Device) -> Vec<(String, bool, Vec<bool>)> {
    let people = device.holdfast.crew().unwrap().people.into_iter();
    let devices = |person: &CrewPerson| person.devices.iter().map(|one| one.standing).collect();
    people.map(|person| (person.name.clone(), person.standing, devices(&person))).collect()
}

/// How many of a coach's answers a device goes by.
fn rulings(device: &Device) -> usize {
    let state = device.holdfast.state_text().unwrap();
    state.lines().filter(|line| line.contains(" ruling ")).count()
}

/// Files that say to be her own, at places that she has not come to: her device believes none, and goes on where it was.
#[test]
fn nobody_goes_on_in_somebodys_name() {
    let crew = crew();
    let [maren, ana, _] = keys(&crew);
    let phone = &crew.athletes[0];
    let own = |crew: &Crew| ana.opens(&maren, &crew.carrier.leaves_of(phone).pop().unwrap());
    let (head, real) = (own(&crew), crew.carrier.leaves_of(phone).pop().unwrap());
    let name = SealedName::parse(&real.name).unwrap();
    let wrong = (1..=200).map(|at| {
        let hash = format!("{at:016x}").parse().unwrap();
        let name = SealedName { sequence: head.header.sequence + at, hash, ..name };
        CarriedFile { name: name.to_string(), content: real.content.clone() }
    });
    // Their hashes are right, and there is nothing behind them.
    let junk = (1..=10).map(|at| {
        let content = format!("junk {at}").into_bytes();
        let hash = sha256(&content)[..16].parse().unwrap();
        let name = SealedName { sequence: head.header.sequence + at, hash, ..name };
        CarriedFile { name: name.to_string(), content }
    });
    let before = phone.holdfast.state_text().unwrap();
    for forged in [wrong.collect::<Vec<_>>(), junk.collect()] {
        let report = phone.take_in(&forged).unwrap();
        assert_eq!((report.leaves, report.aside.len()), (0, forged.len()), "{report:?}");
        assert_eq!(phone.holdfast.state_text().unwrap(), before);
    }
    phone.go_to("2026-11-05");
    phone.tap(holdfast_tests::taps::begin()).unwrap();
    phone.holdfast.cut_leaves().unwrap();
    phone.exchange(&crew.carrier).unwrap();
    let next = own(&crew).header;
    assert_eq!(next.sequence, head.header.sequence + 1);
    assert_eq!(next.previous, HEXLOWER.encode(&head.content));
}

/// A device that is in no crew takes nothing in, whatever a folder holds.
#[test]
fn a_folder_makes_nobody_a_member() {
    let crew = crew();
    let eve = Device::start(crew.folder().join("eve"), "Eve", Role::Athlete, 99).unwrap();
    let before = eve.holdfast.state_text().unwrap();
    assert!(eve.exchange(&crew.carrier).is_err());
    assert!(eve.take_in(&crew.carrier.files()).is_err());
    assert_eq!(eve.holdfast.state_text().unwrap(), before);
}
