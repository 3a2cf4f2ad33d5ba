//! Corrections, what is flagged and cleared, and taps that cannot be.

use holdfast_core::care::{Place, Sign};
use holdfast_core::clock::Act;
use holdfast_core::journal::{RestAct, Role, Until};
use holdfast_core::plan::MeasuredWhen;
use holdfast_core::session::{KeyKind, PieceState, Row, SessionState, SideReading, Tap};
use holdfast_core::{Field, HoldfastError, Mass, Millis, PairDid};
use holdfast_tests::pairing::line_of;
use holdfast_tests::taps::{
    begin, begin_day, clear, clock, finish, flag, flag_in, held, kg, option, put_off, range,
    set_of, squat, window,
};
use holdfast_tests::views::{flags, hold, piece, reps, strength};
use holdfast_tests::{Crew, Device, EVERY_DAY, SMALL_PLAN, changed};

#[test]
fn an_ended_session_can_be_reopened_and_another_begun() {
    let crew = Crew::running().unwrap();
    let ines = &crew.athletes[0];
    let screen = ines.tap(finish(4, 20)).unwrap();
    assert_eq!(screen.state, SessionState::Finished);
    assert_eq!(ines.tap(Tap::Undo).unwrap().state, SessionState::Running);
    ines.tap(finish(5, 20)).unwrap();
    let screen = ines.tap(begin_day("Any evening")).unwrap();
    assert_eq!(screen.state, SessionState::Running);
    assert_eq!(reps(&ines.today().unwrap()), [None, None, None]);
}

#[test]
fn a_session_nobody_ended_does_not_block_the_next_day() {
    let crew = Crew::running().unwrap();
    let ines = &crew.athletes[0];
    ines.tap(kg(50)).unwrap();
    ines.go_to("2026-11-04");
    assert_eq!(ines.today().unwrap().state, SessionState::Ready);
    let screen = ines.tap(begin()).unwrap();
    // The set of the day before counts: that time was not finished, so the same again.
    let first = &strength(&screen).sets[0];
    assert_eq!(first.load.as_ref().unwrap().text, "50 kg");
    let why = first.why.as_ref().unwrap();
    assert!(why.contains("1 of 3 sets done"), "{why}");
}

#[test]
fn a_session_runs_on_past_midnight() {
    let crew = Crew::running().unwrap();
    let ines = &crew.athletes[0];
    ines.pass(7 * 60 * 60 * 1000);
    let screen = ines.tap(kg(50)).unwrap();
    assert_eq!(screen.state, SessionState::Running);
    assert_eq!(screen.date.to_string(), "2026-11-03");
}

#[test]
fn taps_that_cannot_be_say_why_and_save_nothing() {
    let crew = Crew::running().unwrap();
    let ines = &crew.athletes[0];
    let before = ines.holdfast.state_text().unwrap();
    let before_it = |side, tenths| range(MeasuredWhen::Before, side, tenths);
    let both = |of: &[(u32, i64)]| {
        let one = |(side, tenths): &(u32, i64)| SideReading { side: Some(*side), tenths: *tenths };
        let readings = of.iter().map(one).collect();
        Tap::LogRange { piece: "Calves".into(), when: MeasuredWhen::Before, readings }
    };
    let wrist = |severity| flag_in("Corners", Place::Wrist, severity, &[]);
    let wrong = [
        (squat(None, None, None, None), "Enter the load you used"),
        (squat(None, Some(0), None, None), "above zero"),
        (squat(None, Some(-5), None, None), "above zero"),
        (squat(Some(4), Some(5), None, None), "has 3 sets; there is no set 4"),
        (squat(Some(0), Some(5), None, None), "there is no set 0"),
        (squat(None, Some(5), Some(5000), None), "5000 is too many"),
        (squat(None, Some(5), None, Some(11)), "11 is too many"),
        (set_of("Bench", None, None, None), "There is no piece \"Bench\". This day has \"Squat\""),
        (set_of("Calves", None, None, None), "has no sets"),
        (window(Some(5), None, None), "has 4 windows; there is no window 5"),
        (window(None, None, Some(60_001)), "Time to spare is between 0 and"),
        (window(None, None, Some(-1)), "Time to spare is between 0 and"),
        (held(&[], None), "Nothing was held yet"),
        (held(&[0, 0], None), "Nothing was held yet"),
        (held(&[1, 2, 3], None), "has 2 sides"),
        (held(&[-1], None), "0 s to 30 min"),
        (before_it(None, 301), "A reading here is between 0.0 cm and 30.0 cm"),
        (before_it(Some(3), 100), "has 2 sides"),
        // Of two readings the first may be right: neither is saved.
        (both(&[(1, 100), (2, 301)]), "A reading here is between 0.0 cm and 30.0 cm"),
        (both(&[(1, 100), (3, 100)]), "has 2 sides"),
        (both(&[]), "at least one reading"),
        (Tap::ClearFlags { flags: vec![] }, "No flag is open here"),
        (Tap::Rest { act: RestAct::Minute }, "No rest is running"),
        (put_off("After", Until::Later), "has nothing to leave for later"),
        (clock("Squat", Act::Begin), "has no clock"),
        (clock("Calves", Act::Pause), "not running"),
        (clock("Calves", Act::Resume), "not paused"),
        (wrist(0), "from 1"),
        (wrist(11), "from 1"),
        (wrist(5), "bell-swing and press-up: say which"),
        (finish(11, 5), "from 0 to 10"),
        (begin(), "is still open"),
    ];
    for (tap, said) in wrong {
        let error = ines.tap(tap.clone()).expect_err(said);
        assert!(error.to_string().contains(said), "{tap:?}: {error}");
    }
    assert_eq!(ines.holdfast.state_text().unwrap(), before);
}

/// What is put off comes back when all else is done, or not at all; a start forgets none of it.
#[test]
fn what_is_put_off_stays_put_off_after_a_start() {
    for (until, state) in [(Until::Later, PieceState::Later), (Until::Left, PieceState::Left)] {
        let crew = Crew::running().unwrap();
        let ines = &crew.athletes[0];
        for name in ["Squat", "Corners"] {
            let screen = ines.tap(put_off(name, until)).unwrap();
            assert_ne!(screen.here.row.as_ref().and_then(Row::piece), Some(name));
            let again = ines.open_again().unwrap().today(ines.now()).unwrap();
            for screen in [screen, again] {
                assert_eq!(piece(&screen, name).state, state);
            }
        }
        // One step back, one piece is there again.
        let screen = ines.tap(Tap::Undo).unwrap();
        assert_eq!(screen.here.row.as_ref().and_then(Row::piece), Some("Corners"));
        assert_eq!(piece(&screen, "Squat").state, state);
        // What is done all the same is done.
        let screen = ines.tap(squat(None, Some(50), None, None)).unwrap();
        assert_eq!(reps(&screen)[0], Some(8));
    }
}

/// What one tap says is one step, however much it is.
#[test]
fn both_readings_of_one_tap_come_and_go_together() {
    let crew = Crew::running().unwrap();
    let ines = &crew.athletes[0];
    let readings = [(1, 100), (2, 110)];
    let readings = readings.map(|(side, tenths)| SideReading { side: Some(side), tenths }).to_vec();
    let when = MeasuredWhen::Before;
    let screen = ines.tap(Tap::LogRange { piece: "Calves".into(), when, readings }).unwrap();
    assert_eq!(hold(&screen).range.as_ref().unwrap().readings.len(), 2);
    let said = "Calves before the hold, left 10.0 cm and Calves before the hold, right 11.0 cm";
    assert_eq!(screen.saved_text.as_deref(), Some(said));
    let screen = ines.tap(Tap::Undo).unwrap();
    assert_eq!(screen.undone.as_deref(), Some(said));
    assert!(hold(&screen).range.as_ref().unwrap().readings.is_empty());
}

/// What hurts may get less; an emergency sign stays until it is undone or cleared.
#[test]
fn a_later_flag_takes_no_emergency_sign_away() {
    let crew = Crew::running().unwrap();
    let ines = &crew.athletes[0];
    ines.tap(flag(Place::Knee, 6, &[Sign::DarkUrine])).unwrap();
    for (place, signs) in
        [(Place::Knee, &[][..]), (Place::Muscle, &[]), (Place::Knee, &[Sign::ChestPain])]
    {
        let screen = ines.tap(flag(place, 2, signs)).unwrap();
        assert_eq!(screen.here.key.kind, KeyKind::Care);
        assert_eq!(screen.here.key.tap, Some(Tap::Finish { rpe: None, minutes: None }));
        assert!(flags(&screen)[0].advice.urgent, "{screen:?}");
    }
    for _ in 0..4 {
        ines.tap(Tap::Undo).unwrap();
    }
    assert!(flags(&ines.today().unwrap()).is_empty());
}

/// In whatever order they are given: before comes before after, and left before right.
#[test]
fn readings_stand_in_one_order_however_they_were_given() {
    use MeasuredWhen::{After, Before};
    let crew = Crew::running().unwrap();
    let ines = &crew.athletes[0];
    let given = [(After, 2, 120), (Before, 2, 110), (After, 1, 105), (Before, 1, 100)];
    for (when, side, tenths) in given {
        ines.tap(range(when, Some(side), tenths)).unwrap();
    }
    let shown = hold(&ines.today().unwrap()).range.clone().unwrap();
    let order: Vec<_> =
        shown.readings.iter().map(|shown| (shown.when, shown.side, shown.tenths)).collect();
    assert_eq!(
        order,
        [
            (Before, Some(1), 100),
            (Before, Some(2), 110),
            (After, Some(1), 105),
            (After, Some(2), 120)
        ]
    );
    let judged: Vec<_> = shown.judged.iter().map(|line| line.split(':').next()).collect();
    assert_eq!(judged, [Some("left"), Some("right")]);
}

#[test]
fn a_hold_can_be_logged_by_hand_and_corrected() {
    let crew = Crew::running().unwrap();
    let ines = &crew.athletes[0];
    ines.tap(held(&[120_000, 95_000], None)).unwrap();
    let screen = ines.tap(held(&[110_000], None)).unwrap();
    let sides: Vec<_> = hold(&screen).sides.iter().map(|side| side.held).collect();
    assert_eq!(sides, [Some(Millis(110_000)), Some(Millis(95_000))]);
}

#[test]
fn a_plan_published_again_leaves_the_running_session_alone() {
    let crew = Crew::running().unwrap();
    let ines = &crew.athletes[0];
    let again = changed(SMALL_PLAN, "reps = [8, 6, 5]", "reps = [3, 3]");
    let summary = crew.coach.publish(&again).unwrap();
    assert!(summary.replaced);
    crew.coach.exchange(&crew.carrier).unwrap();
    ines.exchange(&crew.carrier).unwrap();
    assert_eq!(strength(&ines.today().unwrap()).sets.len(), 3);
    ines.tap(finish(5, 30)).unwrap();
    ines.go_to("2026-11-04");
    assert_eq!(strength(&ines.today().unwrap()).sets.len(), 2);
}

#[test]
fn a_device_that_is_shut_says_so_and_shutting_twice_is_harmless() {
    let crew = Crew::running().unwrap();
    let ines = &crew.athletes[0];
    ines.holdfast.shut().unwrap();
    ines.holdfast.shut().unwrap();
    let error = ines.today().unwrap_err();
    assert!(matches!(error, HoldfastError::Invalid { field: Field::Home, .. }), "{error}");
}

#[test]
fn names_are_checked_and_a_home_is_somebodys() {
    let folder = tempfile::tempdir().unwrap();
    let start = |name: &str| Device::start(folder.path().join("x"), name, Role::Athlete, 1);
    for name in ["", "   ", "a\nb", &"x".repeat(41)] {
        assert!(start(name).is_err(), "{name:?}");
    }
    start("Zoë 🚣").unwrap();
    let taken = start("Ana").err().unwrap().to_string();
    assert!(taken.contains("is already Zoë 🚣's"), "{taken}");
}

#[test]
fn two_of_one_name_can_be_told_apart() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let other = Device::start(crew.folder().join("other"), "ines", Role::Athlete, 90).unwrap();
    // What the coach calls them differs; what they call themselves does not.
    let alike = crew.join(&other).unwrap_err().to_string();
    assert!(alike.contains("You call somebody else ines already"), "{alike}");
    let [opened, compared] =
        [&crew.coach, &other].map(|device| device.pair(PairDid::Look).unwrap());
    let (line, label) = (line_of(&opened, &compared), Some("Ines B.".into()));
    crew.coach.pair(PairDid::Pick { line, label }).unwrap();
    other.pair(PairDid::Match { matches: true, share_earlier: true }).unwrap();
    crew.coach.exchange(&crew.carrier).unwrap();
    other.exchange(&crew.carrier).unwrap();
    crew.exchange_all().unwrap();
    let date = "2026-11-03".parse().unwrap();
    let board = crew.coach.holdfast.board(date).unwrap();
    let names: Vec<&str> = board.rows.iter().map(|row| row.name.as_str()).collect();
    assert_eq!(names, ["Ines", "Ines B."]);
    for name in names {
        assert_eq!(crew.coach.holdfast.member(name.into(), date).unwrap().name, name);
    }
    // To herself she is what she calls herself.
    assert_eq!(other.holdfast.who().unwrap().name, "ines");
}

/// Pain that comes back after a flag was cleared is a new flag, and stops progression again.
#[test]
fn pain_flagged_again_after_clearing_is_open_again() {
    let crew = Crew::running().unwrap();
    let ines = &crew.athletes[0];
    let screen = ines.tap(flag(Place::Knee, 2, &[])).unwrap();
    let first = flags(&screen)[0].flag;
    let screen = ines.tap(clear(first)).unwrap();
    assert!(flags(&screen).is_empty());
    // Taking the clearing back opens it again; then it is cleared for good.
    assert_eq!(flags(&ines.tap(Tap::Undo).unwrap()).len(), 1);
    ines.tap(clear(first)).unwrap();
    let screen = ines.tap(flag(Place::Knee, 9, &[Sign::ChestPain])).unwrap();
    assert_eq!(flags(&screen).len(), 1);
    assert!(flags(&screen)[0].advice.urgent);
}

#[test]
fn a_correction_changes_what_it_names_and_nothing_else() {
    let crew = Crew::running().unwrap();
    let ines = &crew.athletes[0];
    ines.tap(squat(None, Some(50), Some(3), Some(1))).unwrap();
    ines.tap(option(Some("box-squat"))).unwrap();
    let screen = ines.tap(squat(Some(1), Some(55), None, None)).unwrap();
    let done = strength(&screen).sets[0].done.clone().unwrap();
    assert_eq!((done.load, done.reps, done.reserve), (Some(Mass::kg(55)), 3, Some(1)));
    assert_eq!(done.movement, "Back squat");
}

/// A phone whose clock was a year ahead for one evening, and one that woke up in 1970.
#[test]
fn a_wrong_clock_does_not_end_logging() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    let day = || begin_day("Any evening");
    for date in ["2027-11-03", "2026-11-03", "1970-01-02", "2026-11-04"] {
        ines.go_to(date);
        assert_eq!(ines.tap(day()).unwrap().state, SessionState::Running, "{date}");
        let screen = ines.tap(kg(50)).unwrap();
        assert!(strength(&screen).sets[0].done.is_some(), "{date}");
        ines.tap(finish(5, 30)).unwrap();
    }
    // A clock no entry can carry is refused in words, and nothing breaks.
    let mut far = ines.now();
    far.wall_ms = 2_000_000_000_000_000;
    let refused = ines.holdfast.tap(day(), None, far.clone()).unwrap_err().to_string();
    assert!(refused.contains("outside the years"), "{refused}");
    for wall_ms in [i64::MAX, i64::MIN] {
        far.wall_ms = wall_ms;
        let _ = ines.holdfast.today(far.clone());
    }
}

/// The shelf cannot be written: what was saved is saved, and the screen says what is amiss.
#[test]
fn a_full_shelf_is_a_notice_and_no_error() {
    let crew = Crew::running().unwrap();
    let ines = &crew.athletes[0];
    std::fs::remove_dir_all(ines.home.join("leaves")).unwrap();
    std::fs::write(ines.home.join("leaves"), "in the way").unwrap();
    let screen = ines.tap(finish(5, 30)).unwrap();
    assert_eq!(screen.state, SessionState::Finished);
    let said: Vec<_> = screen.notices.iter().map(|notice| notice.text.as_str()).collect();
    assert!(said.iter().any(|text| text.contains("Everything is saved")), "{said:?}");
}

#[test]
fn a_block_has_ended_only_when_it_has() {
    let plan = changed(SMALL_PLAN, EVERY_DAY, r#"["monday"]"#);
    let crew = Crew::start(&plan, &["Ines"]).unwrap();
    let heading = |date| {
        crew.athletes[0].go_to(date);
        crew.athletes[0].today().unwrap().heading
    };
    // Two weeks from Monday 2 November.
    assert!(heading("2026-11-03").starts_with("Nothing planned today. Next:"));
    for last in ["2026-11-10", "2026-11-15"] {
        assert!(
            heading(last).contains("has no more days planned; it ends on Sun 15 Nov"),
            "{last}"
        );
    }
    assert!(heading("2026-11-16").contains("ended on Sun 15 Nov"));
}

/// An entry says whether the athlete gave the reps: a key pressed does not, a correction of the load alone
/// keeps what was said, and one of the reps gives them.
#[test]
fn an_entry_says_who_gave_the_reps() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    ines.go_to("2026-11-03");
    ines.tap(begin()).unwrap();
    ines.tap(squat(None, Some(50), None, None)).unwrap();
    ines.tap(squat(None, Some(60), Some(6), None)).unwrap();
    ines.tap(squat(Some(1), Some(52), None, None)).unwrap();
    ines.tap(squat(Some(2), Some(62), None, None)).unwrap();
    ines.tap(squat(Some(1), None, Some(8), None)).unwrap();
    let journal = ines.holdfast.export().unwrap().journal;
    let bodies =
        journal.iter().map(|line| serde_json::from_str::<serde_json::Value>(line).unwrap());
    let lifts = bodies.filter(|line| line["k"] == "lift");
    let counted: Vec<_> = lifts.map(|line| line["body"]["counted"].as_bool().unwrap()).collect();
    assert_eq!(counted, [false, true, false, true, true]);
}
