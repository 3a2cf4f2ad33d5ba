//! What no plan foresaw: a session written afterwards.

use holdfast_core::coach::AttentionKind;
use holdfast_core::journal::RestAct;
use holdfast_core::session::{KeyKind, SessionState, SideKeyKind, Tap};
use holdfast_core::{Field, HoldfastError, Mass};
use holdfast_tests::athlete::Athlete;
use holdfast_tests::taps::{begin, begin_day, clock, finish, held, option, set, squat, window};
use holdfast_tests::train::squats;
use holdfast_tests::views::{load_texts, reps, strength};
use holdfast_tests::{Crew, Device, EVERY_DAY, SMALL_PLAN, changed, run};

fn afterwards(date: &str) -> Tap {
    Tap::WriteAfterwards { date: date.parse().unwrap(), day: None }
}

/// Squats of an earlier date, written now.
fn squats_of(device: &Device, date: &str, sets: &[(i64, u32)]) {
    device.tap(afterwards(date)).unwrap();
    for (kg, reps) in sets {
        device.tap(set(Some(Mass::kg(*kg)), Some(*reps))).unwrap();
    }
    device.tap(finish(7, 60)).unwrap();
}

fn long() -> String {
    changed(SMALL_PLAN, "weeks = 2", "weeks = 8")
}

fn refused(device: &Device, tap: Tap) -> (Field, String) {
    match device.tap(tap) {
        Err(HoldfastError::Invalid { field, reason }) => (field, reason),
        other => panic!("{other:?}"),
    }
}

/// What each set is proposed, and why.
fn proposed(device: &Device, date: &str) -> Vec<(String, Option<String>)> {
    device.go_to(date);
    let screen = device.today().unwrap();
    load_texts(&screen)
        .into_iter()
        .zip(strength(&screen).sets.iter().map(|set| set.why.clone()))
        .collect()
}

const FIRST: [(i64, u32); 3] = [(50, 8), (60, 6), (70, 6)];
const SECOND: [(i64, u32); 3] = [(50, 8), (60, 6), (70, 4)];
const THIRD: [(i64, u32); 3] = [(50, 8), (60, 6), (70, 4)];

/// Whenever it is written, it counts as if it had been written that day.
#[test]
fn a_session_written_afterwards_stands_at_its_date() {
    let crew = Crew::start(&long(), &["Ines", "Ana", "Zoe"]).unwrap();
    let [at_once, soon, late] = &crew.athletes[..] else { panic!() };
    squats(at_once, "2026-11-03", &FIRST);
    squats(at_once, "2026-11-05", &SECOND);
    squats(soon, "2026-11-03", &FIRST);
    soon.go_to("2026-11-06");
    squats_of(soon, "2026-11-05", &SECOND);
    squats(late, "2026-11-05", &SECOND);
    late.go_to("2026-11-06");
    squats_of(late, "2026-11-03", &FIRST);
    let wanted = proposed(at_once, "2026-11-07");
    assert!(wanted[2].1.as_ref().unwrap().contains("4 of 5"), "{wanted:?}");
    assert_eq!(proposed(soon, "2026-11-07"), wanted);
    assert_eq!(proposed(late, "2026-11-07"), wanted);
    for device in [at_once, soon, late] {
        squats(device, "2026-11-07", &THIRD);
    }
    // Missed twice running: the order of the three decides.
    let wanted = proposed(at_once, "2026-11-09");
    assert_eq!(proposed(soon, "2026-11-09"), wanted);
    assert_eq!(proposed(late, "2026-11-09"), wanted);
}

/// Nobody was away who trained: 24 days are three weeks, 13 and 11 are not.
#[test]
fn a_session_written_afterwards_ends_an_absence() {
    let crew = Crew::start(&long(), &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-03", &FIRST);
    let away = proposed(ines, "2026-11-27");
    assert_eq!(away[0].0, "45 kg", "{away:?}");
    squats_of(ines, "2026-11-14", &FIRST);
    let back = proposed(ines, "2026-11-27");
    assert_eq!(back[0].0, "52.5 kg", "{back:?}");
}

/// What is proposed in it is what was proposed then: later sessions were not known.
#[test]
fn its_loads_are_those_of_that_date() {
    let crew = Crew::start(&long(), &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-03", &FIRST);
    let then = proposed(ines, "2026-11-05");
    squats(ines, "2026-11-10", &[(60, 8), (70, 6), (80, 9)]);
    ines.go_to("2026-11-11");
    let screen = ines.tap(afterwards("2026-11-05")).unwrap();
    let loads: Vec<String> = then.into_iter().map(|(load, _)| load).collect();
    assert_eq!(load_texts(&screen), loads);
    assert_eq!((screen.date.to_string(), screen.afterwards), ("2026-11-05".into(), true));
}

#[test]
fn no_clock_and_no_rest_runs_for_it() {
    let crew = Crew::start(&long(), &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    ines.go_to("2026-11-06");
    let screen = ines.tap(afterwards("2026-11-05")).unwrap();
    assert_eq!(screen.state, SessionState::Running);
    assert!(screen.saved_text.unwrap().contains("written afterwards: Any evening, Thu 5 Nov"));
    assert!(screen.notices.iter().any(|notice| notice.text.contains("no clock and no rest runs")));
    let screen = ines.tap(squat(None, Some(50), Some(8), None)).unwrap();
    assert_eq!((screen.rest, screen.here.clock, screen.cues.len()), (None, None, 0));
    let (field, _) = refused(ines, Tap::Rest { act: RestAct::Minute });
    assert_eq!(field, Field::Rest);
    for piece in ["Corners", "Calves"] {
        let (field, why) = refused(ines, clock(piece, holdfast_core::clock::Act::Begin));
        assert_eq!(
            (field, why.as_str()),
            (Field::Clock, "No clock runs for a session written afterwards. Type what you did.")
        );
    }
    ines.tap(squat(None, Some(60), Some(6), None)).unwrap();
    // From here on the one key logs all there is, as planned.
    let mut screen = ines.tap(squat(None, Some(70), Some(5), None)).unwrap();
    let acts = [SideKeyKind::Begin, SideKeyKind::Station, SideKeyKind::Minute];
    for saved in
        ["window 1, 15 done", "window 2, 10 done", "window 3, 15 done", "window 4, 10 done"]
    {
        assert_eq!(screen.here.key.kind, KeyKind::Saves);
        assert!(screen.here.side_keys.iter().all(|key| !acts.contains(&key.kind)));
        ines.pass(1000);
        screen = ines.press(&screen).unwrap();
        assert!(screen.saved_text.as_ref().unwrap().contains(saved), "{:?}", screen.saved_text);
    }
    let screen =
        ines.choose(Some(holdfast_core::session::Row::Hold { piece: "Calves".into() })).unwrap();
    assert_eq!(screen.here.key.words, "Save 2 min and 2 min");
    ines.pass(1000);
    let screen = ines.press(&screen).unwrap();
    assert!(screen.saved_text.unwrap().contains("held left 2 min, right 2 min"));
    assert_eq!(screen.doubt, None, "nobody counted how long the session went on");
    // How long it took, nobody counted.
    let (field, why) = refused(ines, holdfast_tests::taps::rate(7));
    assert_eq!(field, Field::Minutes);
    assert!(why.contains("`7 60`"), "{why}");
    assert_eq!(ines.tap(finish(7, 60)).unwrap().state, SessionState::Finished);
    // Rated again it takes as long as was said.
    ines.tap(holdfast_tests::taps::rate(5)).unwrap();
    let page = ines.holdfast.member("Ines".into(), "2026-11-06".parse().unwrap()).unwrap();
    let session = &page.sessions[0];
    let date = session.date.to_string();
    assert_eq!(
        (date.as_str(), session.rpe, session.minutes, session.load),
        ("2026-11-05", Some(5), Some(60), Some(300))
    );
}

#[test]
fn only_the_last_weeks_are_written_afterwards() {
    let crew = Crew::start(&long(), &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-03", &FIRST);
    ines.go_to("2026-12-02");
    for date in ["2026-12-02", "2026-12-03", "2027-12-01", "2026-11-03", "1970-01-01"] {
        let (field, why) = refused(ines, afterwards(date));
        assert_eq!(field, Field::Date);
        assert_eq!(
            why,
            "A session can be written afterwards for the last 4 weeks, up to yesterday."
        );
    }
    let elsewhere =
        Tap::WriteAfterwards { date: "2026-11-30".parse().unwrap(), day: Some("Never".into()) };
    assert!(matches!(ines.tap(elsewhere), Err(HoldfastError::NotFound { .. })));
    // Not while another one runs, and not the other way round.
    ines.tap(begin()).unwrap();
    assert_eq!(refused(ines, afterwards("2026-11-30")).0, Field::Session);
    ines.tap(finish(5, 50)).unwrap();
    ines.tap(afterwards("2026-11-30")).unwrap();
    assert_eq!(refused(ines, begin()).0, Field::Session);
}

/// The battery died after a set: the rest of that session is written the next day, into the same session.
#[test]
fn a_session_that_was_left_open_goes_on_afterwards() {
    let crew = Crew::start(&long(), &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    ines.go_to("2026-11-05");
    ines.tap(begin()).unwrap();
    ines.tap(squat(None, Some(50), Some(8), None)).unwrap();
    ines.go_to("2026-11-06");
    let screen = ines.today().unwrap();
    assert_eq!(screen.state, SessionState::Ready);
    let said = "\"Any evening\" on Thu 5 Nov was left open; what you logged counts. To add to it or finish it: \
                `session --on 2026-11-05`.";
    assert!(screen.notices.iter().any(|notice| notice.text == said), "{:?}", screen.notices);
    let screen = ines.tap(afterwards("2026-11-05")).unwrap();
    assert_eq!(reps(&screen), [Some(8), None, None]);
    for (kg, reps) in [(60, 6), (70, 5)] {
        ines.tap(squat(None, Some(kg), Some(reps), None)).unwrap();
    }
    ines.tap(finish(7, 60)).unwrap();
    let page = ines.holdfast.member("Ines".into(), "2026-11-06".parse().unwrap()).unwrap();
    assert_eq!(page.sessions.len(), 1);
    assert_eq!(
        (page.sessions[0].sets, page.sessions[0].date.to_string()),
        (3, "2026-11-05".into())
    );
    let next = proposed(ines, "2026-11-07");
    assert_eq!(next[0].0, "52.5 kg", "all three were made: {next:?}");
    let notices = ines.today().unwrap().notices;
    assert!(notices.iter().all(|notice| !notice.text.contains("left open")), "{notices:?}");
}

/// Once it is done, the day is as it was before: the session trained today still is, and one planned begins.
#[test]
fn what_was_written_afterwards_does_not_stand_before_today() {
    let crew = Crew::start(&long(), &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-06", &FIRST);
    squats_of(ines, "2026-11-05", &FIRST);
    assert_eq!(ines.today().unwrap().date.to_string(), "2026-11-05", "it can still be taken back");
    ines.pass(2 * 60 * 60 * 1000);
    let screen = ines.today().unwrap();
    assert_eq!(
        (screen.state, screen.date.to_string()),
        (SessionState::Finished, "2026-11-06".into())
    );
    ines.go_to("2026-11-08");
    squats_of(ines, "2026-11-07", &FIRST);
    let screen = ines.tap(begin()).unwrap();
    assert_eq!((screen.state, screen.afterwards), (SessionState::Running, false));
    assert_eq!(screen.date.to_string(), "2026-11-08");
}

/// The coach sees it at its date, in its week, in its load.
#[test]
fn the_coach_sees_it_at_its_date() {
    let crew = Crew::start(&long(), &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-17", &FIRST);
    ines.go_to("2026-11-18");
    ines.tap(afterwards("2026-11-05")).unwrap();
    ines.tap(option(Some("box-squat"))).unwrap();
    ines.tap(squat(None, Some(40), Some(8), None)).unwrap();
    ines.tap(window(Some(1), Some(15), Some(5000))).unwrap();
    ines.tap(held(&[120_000, 60_000], None)).unwrap();
    ines.tap(finish(6, 50)).unwrap();
    crew.exchange_all().unwrap();
    let page = crew.coach.holdfast.member("Ines".into(), "2026-11-18".parse().unwrap()).unwrap();
    let dates: Vec<String> = page.sessions.iter().map(|session| session.date.to_string()).collect();
    assert_eq!(dates, ["2026-11-05", "2026-11-17"]);
    let sets = crew.coach.holdfast.sets(Some("Ines".into()), None, 5).unwrap();
    let dates = sets.sessions.iter().map(|session| session.date.to_string());
    assert_eq!(dates.collect::<Vec<_>>(), ["2026-11-05", "2026-11-17"]);
    let weeks: Vec<(String, u32)> =
        page.weeks.iter().map(|week| (week.week_of.to_string(), week.load)).collect();
    assert_eq!(weeks, [("2026-11-02".into(), 300), ("2026-11-16".into(), 420)]);
    assert_eq!(page.options[0].date.to_string(), "2026-11-05");
    assert_eq!(page.regions[0].week_of.to_string(), "2026-11-02");
    let box_squat = page.lifts.iter().find(|lift| lift.movement == "Squat to a box").unwrap();
    assert_eq!(box_squat.points[0].date.to_string(), "2026-11-05");
    let export = crew.coach.holdfast.export().unwrap();
    for name in ["sessions", "finishes", "sets", "windows", "holds", "options"] {
        let table = export.tables.iter().find(|table| table.name == name).unwrap();
        let found = table.rows.iter().any(|row| row.cells[1] == "2026-11-05");
        assert!(found, "{name}: {:?}", table.rows);
    }
    let board = crew.coach.holdfast.board("2026-11-18".parse().unwrap()).unwrap();
    assert_eq!((board.rows[0].trained, board.rows[0].week_load), (2, 420));
    assert_eq!(board.rows[0].last.unwrap().to_string(), "2026-11-17");
}

/// An answer given after a session that was written later is not used up by it.
#[test]
fn an_answer_outlives_a_session_that_was_trained_before_it() {
    use holdfast_core::coach::Answer;
    use holdfast_core::load::Decision;
    let crew = Crew::start(&long(), &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-03", &FIRST);
    crew.exchange_all().unwrap();
    crew.coach.go_to("2026-11-06");
    let page = crew.coach.holdfast.member("Ines".into(), "2026-11-06".parse().unwrap()).unwrap();
    let answer = Answer {
        person: page.person,
        exercise: page.proposals[0].exercise.clone(),
        track: page.proposals[0].track.clone(),
        decision: Decision::Change,
        loads: vec![Mass::kg(45), Mass::kg(50), Mass::kg(55)],
        words: "Slower.".into(),
        anyway: false,
    };
    crew.coach.holdfast.answer(answer, crew.coach.now()).unwrap();
    crew.exchange_all().unwrap();
    ines.go_to("2026-11-08");
    squats_of(ines, "2026-11-05", &FIRST);
    let loads = |date| proposed(ines, date).into_iter().map(|(load, _)| load).collect::<Vec<_>>();
    assert_eq!(loads("2026-11-09"), ["45 kg", "50 kg", "55 kg"]);
    // One that was trained after it does use it up.
    squats_of(ines, "2026-11-08", &[(45, 8), (50, 6), (55, 9)]);
    assert_eq!(loads("2026-11-10")[0], "47.5 kg");
}

#[test]
fn the_program_writes_an_earlier_session() {
    let ana = Athlete::with_plan(&holdfast_tests::this_week());
    let yesterday = chrono::Utc::now().date_naive() - chrono::Days::new(1);
    let plan_has_it = chrono::Datelike::weekday(&yesterday) != chrono::Weekday::Sun;
    let typed = "50 x 8\n60 x 6\n70 x 5\n\n\n\n\nskip\n\nskip\nfinish 7\n\n7 50\n";
    let on = yesterday.to_string();
    let ran = run(ana.home(), &["session", "--on", &on, "--day", "Any evening"], typed);
    if !plan_has_it && !ran.fine {
        // Yesterday was before the block began: no plan is there for it.
        return;
    }
    assert!(ran.fine, "{ran:?}");
    assert!(ran.out.contains("no clock and no rest runs"), "{}", ran.out);
    assert!(ran.out.contains("Squat set 3, 70 kg × 5"), "{}", ran.out);
    assert!(ran.out.contains("Corners window 4, 10 done"), "{}", ran.out);
    assert!(ran.out.contains("Say how long it took as well"), "{}", ran.out);
    assert!(
        ran.out.contains("Type a rating from 0 to 10, then the minutes it took"),
        "{}",
        ran.out
    );
    assert!(ran.out.contains("Session finished and saved."), "{}", ran.out);
    let ran = run(ana.home(), &["session", "--on", &on, "--day", "Any evening"], "");
    assert!(ran.fine && ran.out.contains("Done for today"), "{ran:?}");
    // Today's own session begins as ever.
    let ran = run(ana.home(), &["session", "--day", "Any evening"], "quit\n");
    assert!(ran.fine && ran.out.contains("Session left open"), "{ran:?}");
    let said = |language| {
        let long_ago = ["--lang", language, "session", "--on", "2020-01-01", "--plain"];
        let ran = run(ana.home(), &long_ago, "");
        assert!(!ran.fine, "{ran:?}");
        ran.err
    };
    assert!(said("en").contains("The session \"Any evening\" of "), "{}", said("en"));
    assert!(run(ana.home(), &["session", "--day", "Any evening"], "finish 5\n").fine);
    assert!(said("en").contains("for the last 4 weeks, up to yesterday."), "{}", said("en"));
    assert!(said("de").contains("Nachtragen geht für die letzten 4 Wochen, bis gestern."));
}

/// Three days a week, each under its own name.
fn three_days() -> String {
    let plan = changed(&long(), EVERY_DAY, r#"["tuesday"]"#);
    let note = |name: &str, on: &str| {
        let piece = "[[day.piece]]\nkind = \"note\"\nname = \"N\"\ntext = \"Sweep.\"\n";
        format!("\n[[day]]\nname = \"{name}\"\non = [\"{on}\"]\n{piece}")
    };
    plan + &note("Long", "thursday") + &note("Short", "saturday")
}

/// What the board says of one athlete: sessions trained, days planned, and whether they were away.
fn seen(crew: &Crew, date: &str) -> (u32, u32, Option<String>) {
    crew.exchange_all().unwrap();
    let board = crew.coach.holdfast.board(date.parse().unwrap()).unwrap();
    let row = &board.rows[0];
    let away = row.attention.iter().find(|one| one.kind == AttentionKind::Away);
    (row.trained, row.planned, away.map(|away| away.text.clone()))
}

#[test]
fn a_day_trained_on_another_date_of_its_week_is_not_missed() {
    let crew = Crew::start(&three_days(), &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    ines.go_to("2026-11-03");
    ines.tap(begin_day("Long")).unwrap();
    ines.tap(finish(5, 40)).unwrap();
    // Tuesday's own day, and Thursday's that is trained already.
    assert_eq!(seen(&crew, "2026-11-04"), (1, 2, None));
    // Since then only Saturday's was missed.
    assert_eq!(seen(&crew, "2026-11-08"), (1, 3, None));
    // A week later it makes up for nothing: Saturday, Tuesday and Thursday are missed.
    let (trained, planned, away) = seen(&crew, "2026-11-13");
    assert_eq!((trained, planned), (1, 5));
    assert_eq!(away.as_deref(), Some("Last trained Tue 3 Nov; 3 planned days missed since"));
}

#[test]
fn one_session_makes_up_for_one_day() {
    let crew = Crew::start(&three_days(), &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    for date in ["2026-11-02", "2026-11-03"] {
        ines.go_to(date);
        ines.tap(begin_day("Long")).unwrap();
        ines.tap(finish(5, 40)).unwrap();
    }
    // The second of them is no other day's.
    assert_eq!(seen(&crew, "2026-11-10").2, None);
    assert_eq!(
        seen(&crew, "2026-11-11"),
        (2, 4, Some("Last trained Tue 3 Nov; 2 planned days missed since".into()))
    );
}
