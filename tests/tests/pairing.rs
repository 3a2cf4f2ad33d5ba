//! Pairing, as two people in one room do it, and as somebody who is in between would have it.

use holdfast_core::exchange::ListedFile;
use holdfast_core::journal::Role;
use holdfast_core::trust::{Certificate, Keys, Message, Recovery, Reply};
use holdfast_core::{Field, HoldfastError, PairDid, PairFiles, PairScreen, PairStep, put_file};
use holdfast_tests::pairing::{line_of, pair, scan};
use holdfast_tests::{Carrier, Crew, Desk, Device, MINUTE, SMALL_PLAN};
use tempfile::TempDir;

/// A coach and somebody who is in no crew yet.
fn two() -> (TempDir, Device, Device) {
    let folder = TempDir::new().unwrap();
    let coach = Device::start(folder.path().join("coach"), "Maren", Role::Coach, 200).unwrap();
    let ana = Device::start(folder.path().join("ana"), "Ana", Role::Athlete, 1).unwrap();
    (folder, coach, ana)
}

fn invite(coach: &Device, chance: u8) -> PairScreen {
    coach.pair(PairDid::Invite { chance: vec![chance; 32] }).unwrap()
}

fn refused(done: holdfast_core::HoldfastResult<PairScreen>) -> String {
    match done {
        Err(HoldfastError::Invalid { field: Field::Pairing, reason }) => reason,
        other => panic!("{other:?}"),
    }
}

fn pick(line: Option<u32>) -> PairDid {
    PairDid::Pick { line, label: None }
}

#[test]
fn before_it_nothing_a_carrier_brings_counts_and_after_it_all_does() {
    let crew = Crew::start(SMALL_PLAN, &[]).unwrap();
    let ana = Device::start(crew.folder().join("ana"), "Ana", Role::Athlete, 1).unwrap();
    let error = ana.exchange(&crew.carrier).unwrap_err().to_string();
    assert!(error.contains("You are in no crew yet"), "{error}");
    assert!(!ana.holdfast.who().unwrap().in_crew);
    let [invited, answered, opened, compared, picked, matched] =
        pair(&crew.coach, &ana, 1).unwrap();
    assert_eq!((invited.step, answered.step), (PairStep::Shows, PairStep::Shows));
    assert_eq!((opened.step, opened.name.as_deref()), (PairStep::Pick, Some("Ana")));
    assert_eq!((compared.step, compared.words.len()), (PairStep::Compare, 4));
    let told = compared.told.unwrap();
    assert!(told.contains("your coach can read what you log here from today on"), "{told}");
    assert_eq!(picked.ask, "Ana is in your crew. The next exchange sends the plan.");
    assert_eq!(matched.step, PairStep::Done);
    assert!(ana.holdfast.who().unwrap().in_crew);
    // The plan is written into her thread now.
    crew.coach.exchange(&crew.carrier).unwrap();
    assert_eq!(ana.exchange(&crew.carrier).unwrap().leaves, 1);
}

/// Somebody fills a carrier with files that are called like answers: while a code is open sixteen are fetched, none that is
/// longer than an answer can be, and none of another pairing.
#[test]
fn of_the_answers_on_a_carrier_sixteen_are_fetched() {
    let (_folder, coach, ana) = two();
    let get = |listing: &[ListedFile]| coach.holdfast.pair_files(listing.to_vec()).unwrap().get;
    let invited = invite(&coach, 7);
    ana.pair(scan(&invited, 1)).unwrap();
    let answer = ana.holdfast.pair_files(Vec::new()).unwrap().put.remove(0).name;
    let (tag, _) = answer.split_once('-').unwrap();
    let listed = |tag: &str, at: u32, bytes: u64| {
        let name = format!("{tag}-2-{at:016x}.pair");
        ListedFile { name, bytes }
    };
    let others = [listed(tag, 900, 4_097), listed("0123456789abcdef", 901, 500)];
    let listing: Vec<ListedFile> =
        others.iter().cloned().chain((0..20).map(|at| listed(tag, at, 4_096))).collect();
    let fetched = get(&listing);
    assert_eq!(fetched.len(), 16);
    assert!(others.iter().all(|other| !fetched.contains(&other.name)), "{fetched:?}");
    coach.pair(PairDid::Stop).unwrap();
    assert!(get(&listing).is_empty());
}

/// Whatever was shown was stored before: a kill after any step goes on with the same codes and words.
#[test]
fn killed_after_any_step_it_goes_on_where_it_was() {
    for kills in 0..64_u32 {
        let (_folder, mut coach, mut ana) = two();
        let mut at = 0;
        let mut done = |device: &mut Device, did: PairDid| {
            let shown = device.pair(did).unwrap();
            at += 1;
            if kills & (1 << (at - 1)) != 0 {
                device.kill().unwrap();
                let again = device.pair(PairDid::Look).unwrap();
                assert_eq!(again, shown, "kills {kills:b}");
            }
            shown
        };
        let invited = done(&mut coach, PairDid::Invite { chance: vec![7; 32] });
        let answered = done(&mut ana, scan(&invited, 1));
        // The same code again, with other chance, gets the same answer.
        assert_eq!(ana.pair(scan(&invited, 9)).unwrap(), answered);
        let opened = done(&mut coach, scan(&answered, 0));
        assert_eq!(coach.pair(scan(&answered, 0)).unwrap(), opened);
        let compared = done(&mut ana, scan(&opened, 1));
        done(&mut coach, pick(line_of(&opened, &compared)));
        done(&mut ana, PairDid::Match { matches: true, share_earlier: true });
        assert!(ana.holdfast.who().unwrap().in_crew);
        let admitted = coach.journal().iter().filter(|line| line.contains("\"admit\"")).count();
        assert_eq!(admitted, 1);
    }
}

/// The words differ for whoever is in between, and picking without listening is found in two of three.
#[test]
fn words_that_do_not_match_share_nothing() {
    let (_folder, coach, ana) = two();
    for (chance, wrong) in [(1, None), (2, Some(4))] {
        let answered = ana.pair(scan(&invite(&coach, chance), chance)).unwrap();
        let opened = coach.pair(scan(&answered, 0)).unwrap();
        ana.pair(scan(&opened, 0)).unwrap();
        let told = coach.pair(pick(wrong)).unwrap();
        assert!(told.told.unwrap().contains("Nothing was shared"));
        let told = ana.pair(PairDid::Match { matches: false, share_earlier: false }).unwrap();
        assert!(told.told.unwrap().contains("Nothing was shared"));
    }
    for device in [&coach, &ana] {
        let ask = device.pair(PairDid::Look).unwrap().ask;
        assert_eq!(ask, "2 attempts failed. Pair in one room, screen to screen.");
    }
    assert!(!ana.holdfast.who().unwrap().in_crew);
    assert!(!coach.journal().iter().any(|line| line.contains("\"admit\"")));
    // Where it works after all, nothing failed any more.
    pair(&coach, &ana, 3).unwrap();
    coach.pair(PairDid::Stop).unwrap();
    assert!(coach.pair(PairDid::Look).unwrap().ask.starts_with("Nobody is being paired"));
}

/// Another person's answer to a code: one before it is opened ends it, one after it is refused.
#[test]
fn a_code_is_opened_for_one_answer() {
    let (folder, coach, ana) = two();
    let ben = Device::start(folder.path().join("ben"), "Ben", Role::Athlete, 2).unwrap();
    let invited = invite(&coach, 1);
    let [first, second] = [&ana, &ben].map(|device| device.pair(scan(&invited, 1)).unwrap());
    let opened = coach.pair(scan(&first, 0)).unwrap();
    assert!(refused(coach.pair(scan(&second, 0))).contains("Another device has answered"));
    assert_eq!(coach.pair(PairDid::Look).unwrap(), opened, "it stands for the first");
    // What was opened for Ana gives Ben other words.
    let [for_ana, for_ben] = [&ana, &ben].map(|device| device.pair(scan(&opened, 0)).unwrap());
    assert!(line_of(&opened, &for_ana).is_some() && line_of(&opened, &for_ben).is_none());
}

#[test]
fn codes_of_another_time_and_place_are_refused_in_words() {
    let (folder, coach, ana) = two();
    let ove = Device::start(folder.path().join("ove"), "Ove", Role::Coach, 90).unwrap();
    for text in ["", "HF1:", "HF2:ABC", "hello", "HF1:ZZZZ"] {
        let odd = PairDid::Scan { text: text.into(), chance: vec![1; 32] };
        assert_eq!(refused(ana.pair(odd.clone())), "This is no pairing code.", "{text}");
        assert_eq!(refused(coach.pair(odd)), "This is no pairing code.", "{text}");
    }
    // An opening before its code, and another coach's.
    let invited = invite(&coach, 1);
    let answered = ana.pair(scan(&invited, 1)).unwrap();
    assert!(refused(ove.pair(scan(&answered, 0))).contains("No code waits"));
    invite(&ove, 2);
    let stolen = ove.pair(scan(&answered, 0)).unwrap();
    assert!(refused(ana.pair(scan(&stolen, 0))).contains("This is not the code you scanned."));
    // Eleven minutes later.
    coach.pass(11 * MINUTE);
    assert!(refused(coach.pair(scan(&answered, 0))).contains("more than ten minutes old"));
    assert!(refused(coach.pair(scan(&answered, 0))).contains("No code waits"));
    // An answer to an earlier code of the same coach opens, and its words are none of the member's.
    let second = invite(&coach, 5);
    let opened = coach.pair(scan(&answered, 0)).unwrap();
    assert!(refused(ana.pair(scan(&opened, 0))).contains("not the code you scanned"));
    assert_ne!(second.code, invited.code);
    // What each side does not do.
    assert!(
        refused(ana.pair(PairDid::Match { matches: true, share_earlier: true }))
            .contains("no words to compare")
    );
    assert!(ana.pair(PairDid::Invite { chance: vec![1; 32] }).is_err());
    assert!(coach.pair(PairDid::Match { matches: true, share_earlier: true }).is_err());
    pair(&coach, &ana, 6).unwrap();
    // Until the coach's word has come they may meet again, for a wrong line is picked by a slip; but no other coach.
    assert!(pair(&ove, &ana, 7).unwrap_err().to_string().contains("another crew"));
    let carrier = Carrier::new(folder.path().join("carrier"));
    coach.exchange(&carrier).unwrap();
    ana.exchange(&carrier).unwrap();
    assert!(refused(ana.pair(scan(&invite(&ove, 8), 1))).contains("in a crew already"));
}

/// A name that would move a terminal's cursor, and a certificate that is none.
#[test]
fn what_is_in_a_code_is_checked_before_it_is_shown() {
    let (_folder, coach, _ana) = two();
    let (person, device) = (Recovery::new([9; 16]), Keys::new(&[9; 32], &[8; 32]));
    let certificate = Certificate::sign(&person.keys(), &device.public(), 1);
    let answer = |name: &str| {
        let reply = Reply { certificate, nonce: [3; 16], name: name.into() };
        PairDid::Scan { text: reply.text(), chance: Vec::new() }
    };
    invite(&coach, 1);
    assert_eq!(refused(coach.pair(answer("A\u{1b}[2Jna"))), "This is no pairing code.");
    let opened = coach.pair(answer("Ana")).unwrap();
    assert_eq!(opened.name.as_deref(), Some("Ana"));
}

/// Looks once at what a folder has of a pairing, as a shell does: brings one's own, takes the other's, brings what follows.
fn look(device: &Device, carrier: &Carrier) -> holdfast_core::HoldfastResult<PairScreen> {
    let bring = || {
        let files = device.holdfast.pair_files(carrier.listing())?;
        for file in files.put {
            put_file(carrier.folder(), &file)?;
        }
        Ok::<_, HoldfastError>(files.get)
    };
    let wanted = bring()?;
    let mut files = carrier.files();
    files.retain(|file| wanted.contains(&file.name));
    let screen = device.pair(PairDid::Fetched { files })?;
    bring()?;
    Ok(screen)
}

/// The coach's code goes by hand, everything after it over the folder, and both may be killed after any look.
#[test]
fn over_a_carrier_nobody_scans_back() {
    for kills in 0..32_u32 {
        let (folder, mut coach, mut ana) = two();
        let carrier = Carrier::new(folder.path().join("carrier"));
        let mut at = 0;
        let mut looks = |device: &mut Device| {
            let screen = look(device, &carrier).unwrap();
            at += 1;
            if kills & (1 << (at - 1)) != 0 {
                device.kill().unwrap();
            }
            screen
        };
        let invited = invite(&coach, 7);
        assert_eq!(looks(&mut coach).code, invited.code, "nobody has answered");
        let answered = ana.pair(scan(&invited, 1)).unwrap();
        let gone = looks(&mut ana);
        assert_eq!((gone.step, gone.code), (PairStep::Shows, None));
        assert_eq!(ana.pair(scan(&invited, 1)).unwrap().code, answered.code, "by hand after all");
        let opened = looks(&mut coach);
        assert_eq!((opened.step, opened.name.as_deref()), (PairStep::Pick, Some("Ana")));
        let compared = looks(&mut ana);
        assert_eq!(compared.step, PairStep::Compare);
        assert_eq!(looks(&mut coach), opened, "looking again changes nothing");
        // One file a side, and none of them is what the screens show.
        let files = carrier.files();
        assert_eq!(files.len(), 2, "kills {kills:b}");
        // Nothing of it is to be scanned, until somebody asks for that.
        assert_eq!((&opened.code, &ana.pair(PairDid::Look).unwrap().code), (&None, &None));
        assert!(files.iter().all(|file| Some(&file.name) != answered.code.as_ref()));
        coach.pair(pick(line_of(&opened, &compared))).unwrap();
        ana.pair(PairDid::Match { matches: true, share_earlier: false }).unwrap();
        // The files stay, and an exchange passes them by.
        for device in [&coach, &ana, &coach] {
            assert!(device.exchange(&carrier).unwrap().aside.is_empty());
        }
        assert!(ana.holdfast.who().unwrap().in_crew);
        for device in [&coach, &ana] {
            assert_eq!(
                device.holdfast.pair_files(carrier.listing()).unwrap(),
                PairFiles::default()
            );
        }
    }
}

/// Whoever has the code and the folder too: before the opening nobody is taken in, after it the first stays.
#[test]
fn over_a_carrier_a_second_answer_is_told() {
    let (folder, coach, ana) = two();
    let ben = Device::start(folder.path().join("ben"), "Ben", Role::Athlete, 2).unwrap();
    let carrier = Carrier::new(folder.path().join("carrier"));
    let invited = invite(&coach, 1);
    for device in [&ana, &ben] {
        device.pair(scan(&invited, 1)).unwrap();
        look(device, &carrier).unwrap();
    }
    assert!(refused(look(&coach, &carrier)).contains("Two devices answered"));
    assert_eq!(coach.pair(PairDid::Look).unwrap().step, PairStep::Nothing);
    // Another time Ana is first.
    let invited = invite(&coach, 2);
    ana.pair(scan(&invited, 1)).unwrap();
    look(&ana, &carrier).unwrap();
    let opened = look(&coach, &carrier).unwrap();
    ben.pair(scan(&invited, 1)).unwrap();
    look(&ben, &carrier).unwrap();
    let again = look(&coach, &carrier).unwrap();
    assert!(again.told.unwrap().contains("Another device has answered"));
    assert_eq!((again.step, again.lines), (PairStep::Pick, opened.lines.clone()));
    let told = look(&ben, &carrier).unwrap();
    assert_eq!(told.step, PairStep::Shows);
    assert!(told.told.unwrap().contains("Another device has answered this code"));
    assert!(line_of(&opened, &look(&ana, &carrier).unwrap()).is_some());
}

/// Files that are no messages, under names that would be theirs; a folder that loses what it was given; a code of the day before.
#[test]
fn over_a_carrier_junk_and_loss_stop_nothing() {
    let (folder, coach, ana) = two();
    let carrier = Carrier::new(folder.path().join("carrier"));
    let invited = invite(&coach, 1);
    ana.pair(scan(&invited, 1)).unwrap();
    look(&ana, &carrier).unwrap();
    let name = carrier.listing().pop().unwrap().name;
    let (begin, _) = name.rsplit_once('-').unwrap();
    for (number, content) in [(0, Vec::new()), (1, vec![7; 4_000]), (2, vec![7; 5_000])] {
        let name = format!("{begin}-{number:0>16}.pair");
        std::fs::write(carrier.folder().join(name), content).unwrap();
    }
    std::fs::remove_file(carrier.folder().join(&name)).unwrap();
    assert_eq!(look(&coach, &carrier).unwrap().step, PairStep::Shows);
    look(&ana, &carrier).unwrap();
    assert_eq!(look(&coach, &carrier).unwrap().step, PairStep::Pick);
    let (_folder, other_coach, other) = two();
    let invited = invite(&other_coach, 1);
    other.pair(scan(&invited, 1)).unwrap();
    look(&other, &carrier).unwrap();
    other_coach.pass(11 * MINUTE);
    assert!(refused(look(&other_coach, &carrier)).contains("more than ten minutes old"));
    assert!(refused(look(&other_coach, &carrier)).contains("No pairing is under way."));
}

/// As two people type it, over a folder.
#[test]
fn the_program_pairs_over_a_folder() {
    let desk = Desk::new();
    desk.fine("coach", &["start", "--as", "coach", "--name", "Maren"], "");
    desk.fine("ana", &["start", "--as", "athlete", "--name", "Ana"], "");
    let carrier = Carrier::new(desk.path("carrier"));
    let folder = carrier.folder().to_string_lossy().into_owned();
    let missing = desk.wrong("coach", &["invite", "--carrier", &desk.path("nowhere")]);
    assert!(missing.contains("nowhere") && missing.contains("no such folder"), "{missing}");
    let invited = desk.fine("coach", &["invite", "--carrier", &folder], "");
    assert!(invited.contains(&format!("holdfast invite --carrier {folder}")), "{invited}");
    let code = invited.lines().find(|line| line.starts_with("HF1:")).unwrap();
    let joins = desk.fine("ana", &["join", code, "--carrier", &folder], "");
    assert!(joins.contains("not there yet") && !joins.contains("HF1:"), "{joins}");
    let picks = desk.fine("coach", &["invite", "--carrier", &folder, "--watch"], "");
    let compares = desk.fine("ana", &["join", "--carrier", &folder, "--watch"], "");
    assert!(picks.contains("Ana reads you four words") && !picks.contains("HF1:"), "{picks}");
    let words = compares.lines().find_map(|line| line.strip_prefix("    ")).unwrap();
    let words = words.split_whitespace().collect::<Vec<_>>().join(" ");
    let line =
        picks.lines().find_map(|line| Some(line.trim().strip_suffix(&words)?.trim().to_owned()));
    desk.fine("coach", &["invite", "--line", &line.unwrap()], "");
    let said = desk.fine("ana", &["join", "--match"], "");
    assert!(said.contains("You have joined."), "{said}");
    desk.fine("coach", &["exchange", "--carrier", &folder], "");
    let said = desk.fine("ana", &["exchange", "--carrier", &folder], "");
    assert!(said.contains("Fetched 1 file"), "{said}");
}

/// As two people type it, in both languages.
#[test]
fn the_program_pairs_two_homes() {
    let desk = Desk::new();
    desk.fine("coach", &["start", "--as", "coach", "--name", "Maren"], "");
    let said = desk.fine("ana", &["start", "--as", "athlete", "--name", "Ana"], "");
    assert!(said.contains("join CODE"), "{said}");
    let svg = desk.path("code.svg");
    let said = desk.fine("coach", &["invite", "--svg", &svg], "");
    assert!(said.contains("It works once, for ten minutes."), "{said}");
    assert!(said.lines().all(|line| line.chars().count() <= 120), "{said}");
    assert!(std::fs::read_to_string(svg).unwrap().starts_with("<svg"));
    // Asked again it is the same one.
    let code = |said: &str| said.lines().find(|line| line.starts_with("HF1:")).map(str::to_owned);
    assert_eq!(code(&desk.fine("coach", &["invite"], "")), code(&said));
    let german = desk.fine("ana", &["--lang", "de", "join"], "");
    assert!(german.contains("Du bist noch in keiner Crew."), "{german}");
    let wrong = desk.wrong("ana", &["join", "HF1:123"]);
    assert!(wrong.contains("This is no pairing code."), "{wrong}");
    let carrier = Carrier::new(desk.path("carrier"));
    desk.pair("coach", "ana");
    let said = desk.fine("ana", &["join"], "");
    assert!(said.contains("You have joined."), "{said}");
    let folder = carrier.folder().to_string_lossy().into_owned();
    desk.fine("ana", &["exchange", "--carrier", &folder], "");
}
