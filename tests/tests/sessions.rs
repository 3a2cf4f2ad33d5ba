//! A session that is over: what it came to, and its sets on a page, to be corrected on whatever day.

use catalogue::{Language, speaking};
use holdfast_core::page::{PageAct, PageAsk, PageRow, PageScreen};
use holdfast_core::session::{
    Answers, Ask, Choice, Correction, KeyKind, QuestionField, QuestionScreen, Row, Tap,
};
use holdfast_core::{Millis, RecordId};
use holdfast_tests::taps::{begin, finish};
use holdfast_tests::train::squats;
use holdfast_tests::{Crew, Device, SMALL_PLAN, changed};

fn page(device: &Device, ask: PageAsk) -> PageScreen {
    device.holdfast.page(ask, device.now()).unwrap()
}

/// The page of the latest session but so many.
fn session(device: &Device, member: Option<&str>, back: usize) -> PageScreen {
    let history = page(device, PageAsk::History { member: member.map(str::to_owned) });
    let sessions = history.rows.iter().filter_map(|row| match &row.does {
        Some(PageAct::Open { page: ask @ PageAsk::Session { .. } }) => Some(ask.clone()),
        _ => None,
    });
    page(device, sessions.collect::<Vec<PageAsk>>()[back].clone())
}

fn lift(row: &PageRow) -> RecordId {
    match &row.does {
        Some(PageAct::Ask { ask: Ask::Logged { lift } }) => *lift,
        other => panic!("{other:?}"),
    }
}

fn ask(device: &Device, lift: RecordId, answers: Option<Answers>) -> QuestionScreen {
    device.holdfast.question(Ask::Logged { lift }, answers, device.now()).unwrap()
}

/// Takes a set that was logged two weeks ago as a heavier one, by touch, with no session running: it reads so on its page, and
/// the coach's page of it shows the same and lets nobody touch it.
#[test]
fn a_set_of_an_earlier_day_is_corrected_by_touch() {
    let plan = changed(SMALL_PLAN, "weeks = 2", "weeks = 8");
    let crew = Crew::start(&plan, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-03", &[(40, 8), (45, 6), (50, 6)]);
    squats(ines, "2026-11-10", &[(45, 8), (50, 6), (55, 6)]);
    ines.go_to("2026-11-20");
    let shown = session(ines, None, 1);
    assert_eq!((shown.title.as_str(), shown.beside.as_deref()), ("Any evening", Some("Tue 3 Nov")));
    let titles: Vec<&str> = shown.rows.iter().map(|row| row.title.as_str()).collect();
    assert_eq!(titles, ["40 kg × 8", "45 kg × 6", "50 kg × 6"]);
    assert_eq!(shown.rows[0].heading.as_deref(), Some("Squat"));
    let second = lift(&shown.rows[1]);
    let asked = ask(ines, second, None);
    assert_eq!(asked.about.as_deref(), Some("Back squat, set 2"));
    assert_eq!(asked.title, "What did you lift on Tue 3 Nov?");
    assert_eq!(
        (asked.key.kind, asked.key.tap.clone()),
        (KeyKind::Waits, None),
        "nothing is wrong yet"
    );
    let QuestionField::Stepper { value, more: Some(heavier), .. } = &asked.fields[0] else {
        panic!("{asked:?}")
    };
    assert_eq!(value.as_deref(), Some("45"));
    let asked = ask(ines, second, Some(heavier.then.clone()));
    let is = format!("{} kg × 6", heavier.words);
    assert_eq!(asked.key.words, format!("Save {is}"));
    assert_eq!(asked.key.more.as_deref(), Some("It is logged as 45 kg × 6."));
    ines.tap(asked.key.tap.unwrap()).unwrap();
    assert_eq!(session(ines, None, 1).rows[1].title, is);
    assert_eq!(session(ines, None, 0).rows[1].title, "50 kg × 6", "of that day alone");
    crew.exchange_all().unwrap();
    crew.coach.go_to("2026-11-20");
    let seen = session(&crew.coach, Some("Ines"), 1);
    assert_eq!(seen.rows[1].title, is);
    assert!(seen.rows.iter().all(|row| row.does.is_none()), "a coach corrects nobody's log");
    assert!(
        crew.coach.holdfast.question(Ask::Logged { lift: second }, None, crew.coach.now()).is_err()
    );
}

/// One that was not done is taken back; one that looks like a slip is said to be right.
#[test]
fn a_set_that_was_not_done_goes_and_a_slip_is_confirmed() {
    let plan = changed(SMALL_PLAN, "weeks = 2", "weeks = 8");
    let crew = Crew::start(&plan, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-03", &[(40, 8), (45, 6), (50, 6)]);
    squats(ines, "2026-11-10", &[(45, 8), (50, 6), (550, 6)]);
    ines.go_to("2026-11-12");
    let rows = session(ines, None, 0).rows;
    assert_eq!(rows[2].title, "550 kg × 6 (may be a slip)");
    let slip = lift(&rows[2]);
    let asked = ask(ines, slip, None);
    assert_eq!(asked.key.words, "550 kg × 6 is right");
    assert!(matches!(asked.key.tap, Some(Tap::Correct { correction: Correction::Right, .. })));
    let undone = |question: &QuestionScreen| -> Choice {
        let Some(QuestionField::Choices { choices, .. }) = question.fields.last() else {
            panic!("{question:?}")
        };
        choices[0].clone()
    };
    let chosen = ask(ines, slip, Some(undone(&asked).then));
    assert_eq!((chosen.fields.len(), chosen.key.words.as_str()), (1, "Take back 550 kg × 6"));
    let again = ask(ines, slip, Some(undone(&chosen).then));
    assert_eq!(again, asked, "touched twice it was done after all");
    ines.tap(asked.key.tap.unwrap()).unwrap();
    assert_eq!(session(ines, None, 0).rows[2].title, "550 kg × 6");
    ines.go_to("2026-11-13");
    ines.tap(chosen.key.tap.unwrap()).unwrap();
    assert_eq!(session(ines, None, 0).rows.len(), 2);
    assert!(ines.holdfast.question(Ask::Logged { lift: slip }, None, ines.now()).is_err());
}

/// What a session came to is counted from what is logged, and the next day is the plan's.
#[test]
fn a_session_says_what_it_came_to_and_what_is_next() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-03", &[(40, 8), (45, 6), (50, 6)]);
    let of = |lines: &[holdfast_core::session::SumView]| -> Vec<(String, String, Vec<String>)> {
        lines.iter().map(|sum| (sum.title.clone(), sum.done.clone(), sum.more.clone())).collect()
    };
    let none: Vec<String> = Vec::new();
    let screen = ines.today().unwrap();
    assert_eq!(
        of(&screen.came_to),
        [
            ("Squat".into(), "3 of 3 sets".into(), none.clone()),
            ("Corners".into(), "not done".into(), none.clone()),
            ("Calves".into(), "not done".into(), none.clone()),
            ("Next".into(), "Any evening, Wed 4 Nov".into(), none.clone()),
        ]
    );
    assert_eq!(screen.came_to[0].row, Some(Row::Set { piece: "Squat".into(), set: 1 }));
    assert!(screen.came_to[0].all && !screen.came_to[1].all);
    ines.go_to("2026-11-15");
    ines.tap(begin()).unwrap();
    assert!(ines.today().unwrap().came_to.is_empty(), "between two sets nobody reads it");
    for reps in [8, 6, 7] {
        let (piece, set, load, reserve) = ("Squat".into(), None, None, None);
        ines.tap(Tap::LogSet { piece, set, load, reps: Some(reps), reserve }).unwrap();
    }
    for (reps, spare) in [(5, 12), (5, 10), (5, 9)] {
        let (piece, spare) = ("Corners".into(), Some(Millis(spare * 1_000)));
        ines.tap(Tap::LogWindow { piece, window: None, reps: Some(reps), spare }).unwrap();
    }
    let held = [120_000, 65_000].map(Millis).to_vec();
    ines.tap(Tap::LogHold { piece: "Calves".into(), held, said: None }).unwrap();
    ines.tap(finish(7, 60)).unwrap();
    let came = of(&ines.today().unwrap().came_to);
    let last = ines.holdfast.sets(None, Some("2026-11-15".parse().unwrap()), 0).unwrap();
    let last = &last.sessions[0].sets[2].text;
    assert_eq!(came[0].1, "3 of 3 sets");
    assert_eq!(came[0].2, [format!("open set: {last}, 5 asked")]);
    assert_eq!(
        (came[1].1.as_str(), came[1].2.clone()),
        ("3 of 4 windows", vec!["2 with 10 s or more to spare".into()])
    );
    assert!(came[2].1.starts_with("left 2 min and right 1 min 5 s"), "{}", came[2].1);
    assert!(came.iter().all(|line| line.0 != "Next"), "the plan ends");
    let german = speaking(Language::De, || of(&ines.today().unwrap().came_to));
    assert_eq!(german[0].1, "3 von 3 Sätzen");
    // The same on its page, but for the sets: those have rows.
    let shown = session(ines, None, 0);
    assert!(
        shown.rows.iter().any(|row| row.title.contains("held left 2 min, right 1 min 5 s")),
        "{shown:?}"
    );
    assert_eq!(shown.rows.iter().filter(|row| row.title.starts_with("Corners window")).count(), 3);
}

/// In the session that runs a correction shows at once, is what was saved last, and undo takes it back.
#[test]
fn a_correction_in_the_session_that_runs_is_shown_and_undone() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-03", &[(40, 8), (45, 6), (50, 6)]);
    ines.go_to("2026-11-04");
    ines.tap(begin()).unwrap();
    let (piece, set, load, reps, reserve) = ("Squat".to_owned(), None, None, None, None);
    let screen = ines.tap(Tap::LogSet { piece, set, load, reps, reserve }).unwrap();
    let was = screen.saved_line.clone().unwrap();
    assert_eq!(was.text, format!("Saved: {}", screen.saved_text.unwrap()));
    assert_eq!(was.short, "Set 1");
    let rows = session(ines, None, 0).rows;
    let first = lift(&rows[0]);
    let correction = Correction::Done { load: None, reps: Some(7), reserve: None };
    let corrected = ines.tap(Tap::Correct { lift: first, correction }).unwrap();
    assert!(corrected.saved.is_some());
    assert!(corrected.saved_line.unwrap().text.contains("× 7"));
    let undone = ines.tap(Tap::Undo).unwrap();
    assert!(undone.undone.unwrap().contains("× 7"), "what undo took back");
    assert_eq!(session(ines, None, 0).rows[0].title, rows[0].title);
}

/// While a session runs a set of another day is corrected too: undo still takes back what was saved in the session, and the screen
/// is what is on disk.
#[test]
fn a_correction_of_another_day_leaves_the_session_that_runs_as_it_is() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-03", &[(40, 8), (45, 6), (50, 6)]);
    ines.go_to("2026-11-04");
    ines.tap(begin()).unwrap();
    let (piece, set, load, reps, reserve) = ("Squat".to_owned(), None, None, None, None);
    let stood = ines.tap(Tap::LogSet { piece, set, load, reps, reserve }).unwrap();
    let first = lift(&session(ines, None, 1).rows[0]);
    let correction = Correction::Done { load: None, reps: Some(5), reserve: None };
    let corrected = ines.tap(Tap::Correct { lift: first, correction }).unwrap();
    assert_eq!(corrected.saved_line, stood.saved_line, "what undo takes back");
    let fresh = ines.open_again().unwrap().today(ines.now()).unwrap();
    let mut shown = ines.today().unwrap();
    shown.saved = None;
    assert_eq!(shown, fresh);
    assert_eq!(session(ines, None, 1).rows[0].title, "40 kg × 5 (short)");
}
