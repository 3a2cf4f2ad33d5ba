//! Discomfort and emergency signs between two sessions, also days later.

use catalogue::{Language, speaking};
use holdfast_core::care::{Place, Sign};
use holdfast_core::coach::AttentionKind;
use holdfast_core::session::{KeyKind, NoticeKind, SessionScreen, SessionState, Tap, Typed};
use holdfast_core::{Field, HoldfastError};
use holdfast_tests::athlete::Athlete;
use holdfast_tests::taps::{begin, clear, finish, flag};
use holdfast_tests::train::squats;
use holdfast_tests::views::{flags, load_texts, piece, strength};
use holdfast_tests::{Crew, Device, SMALL_PLAN, changed, run};

const MADE: [(i64, u32); 3] = [(50, 8), (60, 6), (70, 9)];

fn crew(names: &[&str]) -> Crew {
    let crew = Crew::start(&changed(SMALL_PLAN, "weeks = 2", "weeks = 8"), names).unwrap();
    crew.athletes.iter().for_each(|device| squats(device, "2026-11-03", &MADE));
    crew
}

fn felt(movement: Option<&str>, place: Place, severity: u32, signs: &[Sign]) -> Tap {
    let (movement, signs) = (movement.map(str::to_owned), signs.to_vec());
    Tap::FlagBetween { movement, place, severity, signs, on: None }
}

fn loads(device: &Device, date: &str) -> Vec<String> {
    device.go_to(date);
    load_texts(&device.today().unwrap())
}

fn refused(device: &Device, tap: Tap) -> (Field, String) {
    match device.tap(tap) {
        Err(HoldfastError::Invalid { field, reason }) => (field, reason),
        other => panic!("{other:?}"),
    }
}

fn pain(crew: &Crew, date: &str) -> Vec<String> {
    crew.exchange_all().unwrap();
    let board = crew.coach.holdfast.board(date.parse().unwrap()).unwrap();
    let attention = board.rows.iter().flat_map(|row| &row.attention);
    let pain = attention.filter(|one| one.kind == AttentionKind::Pain);
    pain.map(|one| one.text.clone()).collect()
}

/// The care is the same as for what was flagged in a session, and so are the loads after it.
#[test]
fn it_is_cared_for_as_in_a_session() {
    for severity in [2, 5] {
        let crew = crew(&["Ines", "Ana"]);
        let (between, inside) = (&crew.athletes[0], &crew.athletes[1]);
        inside.tap(flag(Place::Knee, severity, &[])).unwrap();
        between.go_to("2026-11-04");
        let screen = between.tap(felt(Some("Back squat"), Place::Knee, severity, &[])).unwrap();
        assert_eq!(screen.state, SessionState::Ready);
        let shown = &screen.flags[0];
        assert_eq!(flags(&screen)[0].flag, shown.flag, "it stands in its piece as well");
        assert!(shown.text.starts_with("Back squat: knee"), "{}", shown.text);
        let known = &inside.today().unwrap().flags[0].advice;
        assert_eq!(&shown.advice, known);
        let after = loads(between, "2026-11-05");
        assert_eq!(after, loads(inside, "2026-11-05"));
        assert_eq!(after[0], if severity == 2 { "50 kg" } else { "-" });
        // Cleared it goes, outside a session too.
        let screen = between.tap(clear(shown.flag)).unwrap();
        assert_eq!(screen.flags, []);
    }
}

/// A place alone holds back what loads it, and nothing else.
#[test]
fn a_place_with_no_movement_holds_what_loads_it() {
    let crew = crew(&["Ines", "Ana"]);
    let (knee, wrist) = (&crew.athletes[0], &crew.athletes[1]);
    for (device, place) in [(knee, Place::Knee), (wrist, Place::Wrist)] {
        device.go_to("2026-11-04");
        device.tap(felt(None, place, 3, &[])).unwrap();
        let written = r#""session":null,"piece":null,"exercise":null"#;
        assert!(device.journal().iter().any(|line| line.contains(written)));
    }
    assert_eq!(loads(knee, "2026-11-05")[0], "50 kg");
    assert_ne!(loads(wrist, "2026-11-05")[0], "50 kg");
    let screen = knee.tap(begin()).unwrap();
    assert_eq!(piece(&screen, "Squat").flags.len(), 1);
    let screen = wrist.tap(begin()).unwrap();
    assert_eq!((piece(&screen, "Squat").flags.len(), screen.flags.len()), (0, 1));
    assert_eq!(pain(&crew, "2026-11-05").len(), 2);
    assert!(pain(&crew, "2026-11-05").contains(&"knee 3/10 on Wed 4 Nov, between sessions".into()));
    let page = crew.coach.holdfast.member("Ines".into(), "2026-11-05".parse().unwrap()).unwrap();
    let flag = &page.discomfort[0];
    assert_eq!((&flag.movement, flag.text.as_str()), (&None, "knee 3/10, not from a movement"));
}

/// Severe, it takes the loads of what loads it, and everything else goes no higher and not to the end, until it is
/// cleared: the first session after that is no heavier anywhere either.
#[test]
fn a_severe_place_with_no_movement_takes_loads_away() {
    let crew = crew(&["Ines", "Ana"]);
    let (knee, wrist) = (&crew.athletes[0], &crew.athletes[1]);
    for (device, place) in [(knee, Place::Knee), (wrist, Place::Wrist)] {
        device.go_to("2026-11-04");
        device.tap(felt(None, place, 8, &[])).unwrap();
    }
    assert_eq!(loads(knee, "2026-11-05"), ["-"; 3]);
    assert_eq!(loads(wrist, "2026-11-05"), ["50 kg", "60 kg", "70 kg"]);
    let screen = wrist.today().unwrap();
    assert!(strength(&screen).sets.iter().all(|set| !set.open));
    // The one key leaves what loads it.
    let screen = knee.tap(begin()).unwrap();
    assert_eq!(
        (screen.here.key.kind, screen.here.key.words.as_str()),
        (KeyKind::Care, "No more Back squat today")
    );
    let open = screen.flags[0].flag;
    assert!(screen.flags[0].advice.lines.join(" ").contains("no load for what loads this place"));
    knee.tap(clear(open)).unwrap();
    wrist.tap(clear(wrist.today().unwrap().flags[0].flag)).unwrap();
    assert_eq!(loads(knee, "2026-11-06"), ["45 kg", "52.5 kg", "62.5 kg"]);
    assert_eq!(loads(wrist, "2026-11-06"), ["50 kg", "60 kg", "70 kg"]);
}

fn read(device: &Device, typed: &str) -> Tap {
    match device.holdfast.read_flag(typed.into(), device.now()).unwrap() {
        Typed::Tap { tap } => tap,
        other => panic!("{other:?}"),
    }
}

/// What hurts today is of today, and of no movement unless a session runs: not of one that is over, nor of another
/// day's that is written just now, nor of what was felt on another day.
#[test]
fn a_flag_is_of_today_whatever_is_open() {
    let crew = crew(&["Ines"]);
    let ines = &crew.athletes[0];
    let unnamed = |tap: &Tap| matches!(tap, Tap::FlagBetween { movement: None, on: None, .. });
    ines.go_to("2026-11-04");
    assert!(unnamed(&read(ines, "flag knee 3")), "before a session");
    ines.tap(begin()).unwrap();
    assert!(matches!(read(ines, "flag knee 3"), Tap::Flag { .. }), "in one");
    ines.tap(finish(7, 60)).unwrap();
    assert!(unnamed(&read(ines, "flag knee 3")), "after it");
    ines.go_to("2026-11-06");
    let date = "2026-11-05".parse().unwrap();
    ines.tap(Tap::WriteAfterwards { date, day: None }).unwrap();
    let flag = read(ines, "flag knee 8");
    assert!(unnamed(&flag), "beside another day's");
    let screen = ines.tap(flag).unwrap();
    assert_eq!(screen.flags[0].text, "knee 8/10, flagged Fri 6 Nov");
    // The same day it is corrected; another day has its own.
    let screen = ines.tap(read(ines, "flag knee 6")).unwrap();
    assert_eq!(screen.flags.len(), 1);
    ines.go_to("2026-11-08");
    let screen = ines.tap(read(ines, "flag knee 7 chest pain")).unwrap();
    let texts: Vec<&str> = screen.flags.iter().map(|flag| flag.text.as_str()).collect();
    assert_eq!(texts.len(), 2);
    assert!(
        texts[0].ends_with("flagged Sun 8 Nov)") && texts[1].ends_with("flagged Fri 6 Nov"),
        "{texts:?}"
    );
}

fn care(screen: &SessionScreen) -> Option<&str> {
    let first = screen.notices.first()?;
    (first.kind == NoticeKind::Care).then_some(first.text.as_str())
}

/// Dark urine comes days later.
#[test]
fn an_emergency_sign_stands_on_top_until_it_is_cleared() {
    let crew = crew(&["Ines"]);
    let ines = &crew.athletes[0];
    ines.go_to("2026-11-06");
    let screen = ines.tap(felt(None, Place::Muscle, 6, &[Sign::DarkUrine])).unwrap();
    assert_eq!(care(&screen), Some("Stop now and get emergency care."));
    assert!(screen.flags[0].advice.urgent);
    // Nothing said later takes it away.
    let screen = ines.tap(felt(None, Place::Muscle, 2, &[])).unwrap();
    assert_eq!((care(&screen).is_some(), screen.flags.len()), (true, 1));
    let texts = pain(&crew, "2026-11-06");
    assert!(texts[0].starts_with("Emergency signs: dark urine"), "{texts:?}");
    assert_eq!(loads(ines, "2026-11-07"), ["-"; 3]);
    let screen = ines.tap(begin()).unwrap();
    assert_eq!(screen.here.key.kind, KeyKind::Care);
    let flag = screen.flags[0].flag;
    let person =
        crew.coach.holdfast.member("Ines".into(), "2026-11-07".parse().unwrap()).unwrap().person;
    crew.coach.go_to("2026-11-08");
    crew.coach.holdfast.clear_flag(person, flag, crew.coach.now()).unwrap();
    assert_eq!(pain(&crew, "2026-11-08"), [""; 0]);
    // The page goes on naming what it was.
    let of = || {
        let page =
            crew.coach.holdfast.member("Ines".into(), "2026-11-08".parse().unwrap()).unwrap();
        page.discomfort.into_iter().find(|of| of.flag == flag).unwrap()
    };
    let said = "muscle 2/10 with dark urine after training or days later, not from a movement";
    assert_eq!((of().open, of().text.as_str()), (false, said));
    let german = speaking(Language::De, of).text;
    assert!(german.ends_with(", nicht durch eine Übung") && german.contains(", dazu "), "{german}");
    assert_eq!(care(&ines.today().unwrap()), None);
}

#[test]
fn it_says_when_it_was_felt_and_what_cannot_be() {
    let crew = crew(&["Ines"]);
    let ines = &crew.athletes[0];
    ines.go_to("2026-11-12");
    let on = |date: &str| Tap::FlagBetween {
        movement: Some("calf stretch at the WALL".into()),
        place: Place::Ankle,
        severity: 3,
        signs: Vec::new(),
        on: Some(date.parse().unwrap()),
    };
    for date in ["2026-11-13", "2026-10-14", "1970-01-01"] {
        let (field, why) = refused(ines, on(date));
        assert_eq!(
            (field, why.as_str()),
            (Field::Date, "Flag what you felt in the last 4 weeks, today included.")
        );
    }
    let screen = ines.tap(on("2026-11-10")).unwrap();
    assert!(screen.flags[0].text.contains("flagged Tue 10 Nov"), "{}", screen.flags[0].text);
    assert_eq!(piece(&screen, "Calves").flags.len(), 1);
    assert_eq!(pain(&crew, "2026-11-12"), ["ankle 3/10 in Calf stretch at the wall on Tue 10 Nov"]);
    assert_eq!(refused(ines, felt(None, Place::Knee, 0, &[])).0, Field::Severity);
    let (field, why) = refused(ines, felt(Some("Rowing"), Place::Knee, 3, &[]));
    assert_eq!(field, Field::Movement);
    assert!(why.starts_with("\"Rowing\" is not in the plan. Movements: Back squat"), "{why}");
    // One that nobody planned and she did is known.
    ines.tap(begin()).unwrap();
    let extra = Tap::LogExtra {
        movement: "Rowing".into(),
        set: None,
        load: None,
        reps: Some(20),
        reserve: None,
    };
    ines.tap(extra).unwrap();
    let screen = ines.tap(felt(Some("Rowing"), Place::Knee, 3, &[])).unwrap();
    assert_eq!(piece(&screen, "Rowing").flags.len(), 1);
    // It is of no session: undo takes back the set.
    let screen = ines.tap(Tap::Undo).unwrap();
    assert!(screen.undone.unwrap().contains("Rowing set 1"));
    assert_eq!(screen.flags.len(), 2);
}

#[test]
fn the_program_flags_without_a_session_in_both_languages() {
    let ana = Athlete::with_plan(SMALL_PLAN);
    let ran = run(ana.home(), &["flag", "low", "back", "3", "--movement", "back-squat"], "");
    assert!(ran.fine, "{ran:?}");
    assert!(ran.out.contains("Flagged. What is open now, and what to do:"), "{}", ran.out);
    assert!(ran.out.contains("Back squat: low back 3/10"), "{}", ran.out);
    let ran = run(ana.home(), &["flag", "muscle", "6", "with", "dark", "urine"], "");
    assert!(ran.out.contains("WARNING: Stop now and get emergency care."), "{}", ran.out);
    let ran = run(ana.home(), &["today"], "");
    assert!(ran.out.contains("WARNING: Stop now and get emergency care."), "{}", ran.out);
    for (typed, why) in
        [("joint 3", "is not one of the places"), ("knee", "how bad"), ("knee 4 maybe", "maybe")]
    {
        let args: Vec<&str> = std::iter::once("flag").chain(typed.split(' ')).collect();
        let ran = run(ana.home(), &args, "");
        assert!(!ran.fine && ran.err.contains(why), "{typed}: {ran:?}");
    }
    let ran = run(ana.home(), &["--lang", "de", "flag", "Knie", "2"], "");
    assert!(ran.fine && ran.out.contains("Gemeldet. Das ist jetzt offen"), "{ran:?}");
    let ran = run(ana.home(), &["clear"], "");
    assert!(ran.fine && ran.out.contains("Cleared: knee 2/10, not from a movement"), "{ran:?}");
    let ran = run(ana.home(), &["today"], "");
    assert!(!ran.out.contains("WARNING"), "{}", ran.out);
}
