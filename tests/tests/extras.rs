//! What nobody planned in a session: a set more, a set less, another movement.

use holdfast_core::care::Place;
use holdfast_core::session::{PieceState, Row, SessionScreen, SideKeyKind, Tap, Typed};
use holdfast_core::{Field, HoldfastError, Mass};
use holdfast_tests::athlete::Athlete;
use holdfast_tests::taps::{begin, finish, flag_in, set_of, squat};
use holdfast_tests::train::squats;
use holdfast_tests::views::{load_texts, piece, strength};
use holdfast_tests::{Crew, Device, SMALL_PLAN, changed, run};

fn crew(names: &[&str]) -> Crew {
    Crew::start(&changed(SMALL_PLAN, "weeks = 2", "weeks = 8"), names).unwrap()
}

fn extra(movement: &str, load: Option<i64>, reps: Option<u32>) -> Tap {
    let (movement, load) = (movement.into(), load.map(Mass::kg));
    Tap::LogExtra { movement, set: None, load, reps, reserve: None }
}

fn refused(device: &Device, tap: Tap) -> (Field, String) {
    match device.tap(tap) {
        Err(HoldfastError::Invalid { field, reason }) => (field, reason),
        other => panic!("{other:?}"),
    }
}

/// What is typed, done.
fn typed(device: &Device, line: &str) -> SessionScreen {
    match device.holdfast.read_line(line.into(), device.now()).unwrap() {
        Typed::Tap { tap } => device.tap(tap).unwrap(),
        other => panic!("{line}: {other:?}"),
    }
}

const MADE: [(i64, u32); 3] = [(50, 8), (60, 6), (70, 6)];

/// A session of squats with a set of 40 kg for 10 more.
fn with_one_more(device: &Device, date: &str) -> SessionScreen {
    device.go_to(date);
    device.tap(begin()).unwrap();
    for (kg, reps) in MADE {
        device.tap(squat(None, Some(kg), Some(reps), None)).unwrap();
    }
    let screen = device.tap(squat(Some(4), Some(40), Some(10), None)).unwrap();
    device.tap(finish(7, 60)).unwrap();
    screen
}

#[test]
fn a_set_more_is_shown_after_the_planned_ones_and_changes_no_load() {
    let crew = crew(&["Ines", "Ana"]);
    let (ines, ana) = (&crew.athletes[0], &crew.athletes[1]);
    let screen = with_one_more(ines, "2026-11-03");
    squats(ana, "2026-11-03", &MADE);
    let view = strength(&screen);
    let shown: Vec<(u32, bool)> = view.sets.iter().map(|set| (set.set, set.extra)).collect();
    assert_eq!(shown, [(1, false), (2, false), (3, false), (4, true)]);
    assert_eq!(view.sets[3].done.as_ref().unwrap().text, "40 kg × 10");
    let squat = piece(&screen, "Squat");
    assert_eq!((squat.state, squat.progress.as_deref()), (PieceState::Done, Some("done")));
    assert!(screen.saved_text.as_ref().unwrap().contains("Squat set 4, 40 kg × 10"));
    crew.exchange_all().unwrap();
    for date in ["2026-11-05", "2026-11-20", "2026-11-30"] {
        let proposed = |device: &Device| {
            device.go_to(date);
            let screen = device.today().unwrap();
            let why = strength(&screen).sets.iter().map(|set| set.why.clone()).collect::<Vec<_>>();
            (load_texts(&screen), why)
        };
        assert_eq!(proposed(ines), proposed(ana), "{date}");
    }
    // It counts for volume: 400 kg more than the three.
    let page = |name: &str| {
        crew.coach.holdfast.member(name.into(), "2026-11-04".parse().unwrap()).unwrap()
    };
    let (with, without) = (page("Ines"), page("Ana"));
    assert_eq!((with.sessions[0].sets, without.sessions[0].sets), (4, 3));
    assert_eq!(with.sessions[0].volume - without.sessions[0].volume, Mass::kg(400));
    assert!(with.lifts[0].points[0].made && with.lifts[0].points[0].last_reps == Some(6));
}

/// Where the plan later asks for a fourth set, a set more was none of it.
#[test]
fn a_set_more_is_not_carried_where_a_set_is_added() {
    let crew = crew(&["Ines", "Ana"]);
    let (ines, ana) = (&crew.athletes[0], &crew.athletes[1]);
    with_one_more(ines, "2026-11-03");
    squats(ana, "2026-11-03", &MADE);
    let plan = changed(SMALL_PLAN, "weeks = 2", "weeks = 8");
    crew.coach.publish(&changed(&plan, "reps = [8, 6, 5]", "reps = [8, 6, 5, 5]")).unwrap();
    crew.exchange_all().unwrap();
    let loads = [ines, ana].map(|device| {
        device.go_to("2026-11-05");
        load_texts(&device.today().unwrap())
    });
    assert_eq!(loads[0], loads[1]);
    assert_eq!(loads[0].len(), 4);
}

#[test]
fn a_set_more_comes_after_all_planned_ones_one_by_one_up_to_ten() {
    let crew = crew(&["Ines"]);
    let ines = &crew.athletes[0];
    ines.go_to("2026-11-03");
    ines.tap(begin()).unwrap();
    let fourth = || squat(Some(4), Some(40), Some(10), None);
    assert_eq!(refused(ines, fourth()).1, "This piece has 3 sets; there is no set 4.");
    for (kg, reps) in MADE {
        ines.tap(squat(None, Some(kg), Some(reps), None)).unwrap();
    }
    // Without its number nothing is logged: a key that bounced is no set.
    assert_eq!(refused(ines, squat(None, Some(40), Some(10), None)).0, Field::Set);
    assert_eq!(
        refused(ines, squat(Some(5), Some(40), Some(10), None)).1,
        "The next set here is set 4."
    );
    assert_eq!(refused(ines, squat(Some(4), None, None, None)).0, Field::Reps);
    // The load of the set before, where none is said.
    let screen = ines.tap(squat(Some(4), None, Some(3), None)).unwrap();
    assert_eq!(strength(&screen).sets[3].done.as_ref().unwrap().text, "70 kg × 3");
    // A correction changes what it names.
    let screen = ines.tap(squat(Some(4), Some(65), None, Some(1))).unwrap();
    assert_eq!(strength(&screen).sets[3].done.as_ref().unwrap().text, "65 kg × 3, 1 left");
    for set in 5..=13 {
        ines.tap(squat(Some(set), Some(40), Some(5), None)).unwrap();
    }
    let (field, why) = refused(ines, squat(Some(14), Some(40), Some(5), None));
    assert_eq!((field, why.as_str()), (Field::Set, "10 sets over those planned are the most."));
    let screen = ines.tap(Tap::Undo).unwrap();
    assert_eq!(strength(&screen).sets.len(), 12);
    let row = Row::Set { piece: "Squat".into(), set: 12 };
    let screen = ines.choose(Some(row)).unwrap();
    assert_eq!(screen.here.title, "Back squat, extra set 12");
}

/// A set less is named at the end, and the loads hold.
#[test]
fn a_set_less_is_named_at_the_end_and_nothing_goes_up() {
    let crew = crew(&["Ines"]);
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-03", &MADE);
    ines.go_to("2026-11-05");
    ines.tap(begin()).unwrap();
    for (kg, reps) in [(50, 8), (60, 6)] {
        ines.tap(squat(None, Some(kg), Some(reps), None)).unwrap();
    }
    let screen = ines.choose(Some(Row::Finish)).unwrap();
    assert!(
        screen.here.notes.iter().any(|note| note.contains("Squat (2 of 3)")),
        "{:?}",
        screen.here.notes
    );
    ines.tap(finish(7, 60)).unwrap();
    ines.go_to("2026-11-07");
    let screen = ines.today().unwrap();
    assert_eq!(load_texts(&screen), ["50 kg", "60 kg", "70 kg"]);
    assert!(strength(&screen).sets[0].why.as_ref().unwrap().contains("2 of 3 sets done"));
}

#[test]
fn a_movement_nobody_planned_is_a_piece_of_its_own() {
    let crew = crew(&["Ines"]);
    let ines = &crew.athletes[0];
    ines.go_to("2026-11-03");
    ines.tap(begin()).unwrap();
    ines.tap(squat(None, Some(50), Some(8), None)).unwrap();
    let resting = ines.today().unwrap().rest.is_some();
    // One of the plan, by its name; one that nobody has heard of, however it is written.
    ines.tap(extra("press-UP", None, Some(12))).unwrap();
    ines.tap(extra("Face pull", Some(20), Some(12))).unwrap();
    let screen = ines.tap(extra("  face   PULL ", Some(25), Some(10))).unwrap();
    assert_eq!(screen.rest.is_some(), resting, "the rest of the squats goes on");
    let names: Vec<&str> = screen.pieces.iter().map(|piece| piece.name.as_str()).collect();
    assert_eq!(names, ["Squat", "Corners", "Calves", "After", "Press-up", "Face pull"]);
    let face_pull = piece(&screen, "Face pull");
    assert_eq!(face_pull.progress.as_deref(), Some("2 sets"));
    let holdfast_core::session::PieceKindView::Strength { view } = &face_pull.kind else {
        panic!()
    };
    assert_eq!(
        (view.exercise.to_string(), view.heading.as_str()),
        ("face-pull".into(), "Face pull, not planned")
    );
    let done: Vec<&str> =
        view.sets.iter().map(|set| set.done.as_ref().unwrap().text.as_str()).collect();
    assert_eq!(done, ["20 kg × 12", "25 kg × 10"]);
    // The day goes on where it was.
    assert_eq!(screen.here.row, Some(Row::Set { piece: "Squat".into(), set: 2 }));
    // It is corrected in its row, flagged, and taken back.
    ines.tap(set_of("Face pull", Some(2), None, Some(8))).unwrap();
    let screen = ines.tap(flag_in("Face pull", Place::Shoulder, 3, &[])).unwrap();
    assert_eq!(piece(&screen, "Face pull").flags.len(), 1);
    ines.tap(Tap::Undo).unwrap();
    ines.tap(Tap::Undo).unwrap();
    let screen = ines.tap(Tap::Undo).unwrap();
    assert_eq!(piece(&screen, "Face pull").progress.as_deref(), Some("1 set"));
    ines.tap(finish(7, 60)).unwrap();

    // Next time it is shown what was done last; nothing is proposed.
    ines.go_to("2026-11-05");
    ines.tap(begin()).unwrap();
    let (field, why) = refused(ines, extra("face pull", None, None));
    let wanted = "Say how many reps of face pull you did. Last time: 20 kg × 12, Tue 3 Nov";
    assert_eq!((field, why.as_str()), (Field::Reps, wanted));
    let screen = ines.tap(extra("face pull", Some(20), Some(13))).unwrap();
    let holdfast_core::session::PieceKindView::Strength { view } =
        &piece(&screen, "face pull").kind
    else {
        panic!()
    };
    assert_eq!(view.heading, "face pull, not planned; last time 20 kg × 12, Tue 3 Nov");
    ines.tap(finish(7, 60)).unwrap();

    // The coach sees it under its own exercise.
    crew.exchange_all().unwrap();
    let page = crew.coach.holdfast.member("Ines".into(), "2026-11-05".parse().unwrap()).unwrap();
    let found = page.lifts.iter().find(|lift| lift.exercise.to_string() == "face-pull").unwrap();
    let points: Vec<(Option<Mass>, Option<u32>)> =
        found.points.iter().map(|point| (point.heaviest, point.last_reps)).collect();
    assert_eq!(points, [(Some(Mass::kg(20)), Some(12)), (Some(Mass::kg(20)), Some(13))]);
    // 50 x 8, and 20 x 12; press-ups weigh nothing that is known.
    assert_eq!(page.sessions[0].volume, Mass::kg(640));
    assert!(page.proposals.iter().all(|proposal| proposal.exercise.to_string() == "back-squat"));
}

#[test]
fn names_that_cannot_be_say_why() {
    let crew = crew(&["Ines"]);
    let ines = &crew.athletes[0];
    ines.go_to("2026-11-03");
    ines.tap(begin()).unwrap();
    for name in ["Back squat", "back-squat"] {
        let (field, why) = refused(ines, extra(name, Some(50), Some(5)));
        assert_eq!(
            (field, why.as_str()),
            (Field::Movement, "Back squat is in \"Squat\" today. Log it there.")
        );
    }
    let long = "x".repeat(41);
    for name in ["", "  ", "12", "a/b", "bell\nring", long.as_str()] {
        let (field, why) = refused(ines, extra(name, Some(50), Some(5)));
        assert_eq!(
            (field, why.as_str()),
            (Field::Movement, "Name a movement in 1 to 40 characters, without a slash.")
        );
    }
    // What is lifted says what a load means where the plan knows it; elsewhere it is the athlete's own.
    assert_eq!(refused(ines, extra("bell-swing", Some(-5), Some(5))).0, Field::Load);
    ines.tap(extra("Pull-up with a band", Some(-20), Some(5))).unwrap();
    // A piece keeps its name: "Squat" is one already.
    let screen = ines.tap(extra("squat", Some(10), Some(5))).unwrap();
    assert_eq!(screen.pieces.last().unwrap().name, "squat");
    let screen = ines.tap(extra("Corners", Some(10), Some(5))).unwrap();
    assert_eq!(screen.pieces.last().unwrap().name, "Corners+");
}

#[test]
fn a_typed_line_means_the_piece_that_is_done() {
    let crew = crew(&["Ines"]);
    let ines = &crew.athletes[0];
    ines.go_to("2026-11-03");
    ines.tap(begin()).unwrap();
    let read = |line: &str| {
        ines.holdfast.read_line(line.into(), ines.now()).map_err(|error| error.to_string())
    };
    assert!(read("extra 60 x 8").unwrap_err().contains("No piece here has all its sets yet."));
    assert!(read("extra").unwrap_err().contains("`extra 60 x 8` is a set more"));
    assert!(read("extra 60 x 8 easy").unwrap_err().contains("\"easy\""));
    for (kg, reps) in MADE {
        ines.tap(squat(None, Some(kg), Some(reps), None)).unwrap();
    }
    // The row at hand is in the next piece by now.
    let screen = typed(ines, "extra 60 x 8, 2 left");
    assert_eq!(strength(&screen).sets[3].done.as_ref().unwrap().text, "60 kg × 8, 2 left");
    let screen = typed(ines, "extra face pull 20 x 12");
    assert_eq!(piece(&screen, "face pull").progress.as_deref(), Some("1 set"));
    let screen = ines.choose(Some(Row::Finish)).unwrap();
    assert!(screen.here.side_keys.iter().any(|key| key.kind == SideKeyKind::Extra));
    let screen = typed(ines, "extra 22.5 x 10");
    assert_eq!(piece(&screen, "face pull").progress.as_deref(), Some("2 sets"));
    let shown = holdfast_core::session::line_help(&screen);
    assert!(shown.contains("extra 60 x 8"), "{shown}");
}

#[test]
fn the_program_logs_them_in_both_languages() {
    let ana = Athlete::with_plan(SMALL_PLAN);
    let line = "50 x 8\n\n60 x 6\n\n70 x 5\nextra 40 x 10\nextra face pull 20 x 12\nextra face pull\nsheet\nquit\n";
    let ran = run(ana.home(), &["session", "--day", "Any evening"], line);
    assert!(ran.fine, "{ran:?}");
    for said in [
        "Squat set 4, 40 kg × 10",
        "face pull set 1, 20 kg × 12",
        "Last time",
        "face pull, not planned",
    ] {
        let known = said != "Last time";
        assert_eq!(ran.out.contains(said), known, "{said}: {}", ran.out);
    }
    assert!(ran.out.contains("Say how many reps of face pull you did."), "{}", ran.out);
    let ran = run(
        ana.home(),
        &["--lang", "de", "session"],
        "sheet\nextra\nextra Klimmzug\nextra Klimmzug 8\nquit\n",
    );
    assert!(ran.fine, "{ran:?}");
    for said in [
        "face pull, nicht geplant",
        "`extra 60 x 8` ist noch ein Satz",
        "Wie viele Wdh. waren es bei Klimmzug?",
        "Klimmzug Satz 1, 8",
    ] {
        assert!(ran.out.contains(said), "{said}: {}", ran.out);
    }
}

/// On the smallest screen there is, and on a usual one.
#[cfg(unix)]
#[test]
fn a_full_screen_has_a_key_for_them() {
    for (columns, rows) in [(40, 14), (80, 24)] {
        let ana = Athlete::with_plan(SMALL_PLAN);
        let mut terminal = ana.session(columns, rows);
        terminal.sees("set 1 of 3");
        terminal.does("a", "Log all planned sets");
        terminal.does("50x8\r", "Squat set 1");
        terminal.does("e60x6\r", "Squat set 2");
        terminal.does("e70x5\r", "Squat set 3");
        terminal.does("\x1b[Z", "did 50 kg");
        terminal.does("a40x10\r", "Squat set 4");
        terminal.does("\x1b[Z", "did 50 kg");
        terminal.does("aface pull 20x12\r", "face pull set 1");
        terminal.does("q", "left open");
    }
}
