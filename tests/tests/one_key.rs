//! The one key: whoever only ever presses it trains the whole day, and pressed twice, held down or late it
//! never does more than was meant.

use holdfast_core::care::{Place, Sign};
use holdfast_core::clock::Act;
use holdfast_core::journal::{Part, Until};
use holdfast_core::plan::MeasuredWhen;
use holdfast_core::session::{
    KeyKind, PieceState, Question, Row, SessionScreen, SessionState, SideKeyKind, SideReading, Tap,
    Typed,
};
use holdfast_core::{Mass, Millis};
use holdfast_tests::taps::{
    begin, clock, finish, flag_in, held, put_off, range, rate, squat, window,
};
use holdfast_tests::train::squats;
use holdfast_tests::views::{hold, hold_clock, piece, strength};
use holdfast_tests::{Crew, DAY, Device, LONGER_DAY, MINUTE, SMALL_PLAN};
use proptest::prelude::*;

/// After so long another press is another press.
const APART: i64 = 600;

fn crew() -> Crew {
    Crew::start(SMALL_PLAN, &["Ines"]).unwrap()
}

/// Somebody on the first Tuesday.
fn on_tuesday(crew: &Crew) -> &Device {
    crew.athletes[0].go_to("2026-11-03");
    &crew.athletes[0]
}

/// Somebody who has done squats of 50, 60 and 70 kg, on the day after, with the session begun.
fn known_loads(crew: &Crew) -> &Device {
    squats(&crew.athletes[0], "2026-11-03", &[(50, 8), (60, 6), (70, 5)]);
    crew.athletes[0].go_to("2026-11-04");
    crew.athletes[0].tap(begin()).unwrap();
    crew.athletes[0].pass(1_000);
    &crew.athletes[0]
}

/// What somebody answers to what the key waits for.
fn sensible(shown: &SessionScreen, asked: Question) -> Tap {
    let row = shown.here.row.clone();
    match (asked, row) {
        (Question::Load | Question::Reserve | Question::Reps, Some(Row::Set { piece, set })) => {
            // Said with all there is to say, except what is known already.
            let load = (asked == Question::Load).then_some(Mass::kg(40));
            Tap::LogSet { piece, set: Some(set), load, reps: Some(8), reserve: Some(2) }
        }
        (Question::Range, Some(Row::Measure { piece, when })) => {
            let reading = |side| SideReading { side: Some(side), tenths: 100 + i64::from(side) };
            Tap::LogRange { piece, when, readings: vec![reading(1), reading(2)] }
        }
        (Question::Rpe, Some(Row::Finish)) => rate(7),
        other => panic!("asked for {other:?}"),
    }
}

/// The lines that a device wrote itself.
fn written(device: &Device) -> Vec<String> {
    let last = |shown: SessionScreen| shown.revision;
    let count = device.today().map(last).unwrap() as usize;
    let own: Vec<String> =
        device.journal().into_iter().filter(|journal| !is_coachs(journal)).collect();
    assert_eq!(own.len(), count, "the revision counts this device's entries");
    own
}

fn is_coachs(line: &str) -> bool {
    ["\"k\":\"plan\"", "\"role\":\"coach\"", "\"k\":\"admit\""].iter().any(|of| line.contains(of))
}

fn count(device: &Device, kind: &str) -> usize {
    let kind = format!("\"k\":\"{kind}\"");
    written(device).iter().filter(|line| line.contains(&kind)).count()
}

/// Presses the one key from before the session to its end, so long apart as `pause` says, and gives all
/// screens that were shown. `each` sees every screen with the one that its press gave.
fn pressing(
    device: &Device,
    mut pause: impl FnMut() -> i64,
    mut each: impl FnMut(&SessionScreen, &SessionScreen),
) -> SessionScreen {
    let mut shown = device.today().unwrap();
    for _ in 0..3_000 {
        if shown.state == SessionState::Finished {
            return shown;
        }
        device.pass(pause());
        // Every second a shell draws anew what a clock has moved.
        shown = device.today().unwrap();
        let after = match (&shown.here.key.tap, shown.here.key.asks) {
            (None, Some(asked)) => device.answer(&shown, sensible(&shown, asked)).unwrap(),
            _ => device.press(&shown).unwrap(),
        };
        assert!(!after.ignored, "{:?}", shown.here);
        each(&shown, &after);
        shown = after;
    }
    panic!("no end: {:?}", shown.here);
}

/// Every row is logged, and none twice: nothing was corrected.
fn holds_every_row_once(device: &Device, last: &SessionScreen, before: usize) {
    assert_eq!(last.state, SessionState::Finished);
    for piece in &last.pieces {
        let whole = matches!(piece.state, PieceState::Done | PieceState::Note);
        assert!(whole, "{}: {:?}", piece.name, piece.progress);
    }
    let lines = &written(device)[before..];
    let entries = |kind: &str| {
        let kind = format!("\"k\":\"{kind}\"");
        let of_kind: Vec<_> = lines.iter().filter(|line| line.contains(&kind)).collect();
        assert!(of_kind.iter().all(|line| !line.contains("\"par\"")), "corrected: {of_kind:?}");
        of_kind.len()
    };
    let rows = |of: fn(&Row) -> bool| last.rows.iter().filter(|row| of(row)).count();
    assert_eq!(entries("lift"), rows(|row| matches!(row, Row::Set { .. })));
    assert_eq!(entries("window"), rows(|row| matches!(row, Row::Window { .. })));
    // Both sides each.
    assert_eq!(entries("hold"), 2 * rows(|row| matches!(row, Row::Hold { .. })));
    assert_eq!(entries("range"), 2 * rows(|row| matches!(row, Row::Measure { .. })));
    assert_eq!((entries("session"), entries("finish")), (1, 1));
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 12, failure_persistence: None, ..ProptestConfig::default() })]

    /// However long somebody takes: the first time with loads to be said, the next day with loads known.
    #[test]
    fn whoever_only_presses_it_logs_every_row_once(
        pauses in proptest::collection::vec(APART..80_000_i64, 1..20),
    ) {
        let crew = crew();
        let ines = on_tuesday(&crew);
        for _ in 0..2 {
            let before = written(ines).len();
            let mut next = pauses.iter().copied().cycle();
            let last = pressing(ines, || next.next().unwrap(), |_, _| {});
            holds_every_row_once(ines, &last, before);
            ines.pass(DAY);
        }
    }
}

#[test]
fn the_longest_day_too() {
    let crew = Crew::start(&format!("{SMALL_PLAN}\n{LONGER_DAY}"), &["Ines"]).unwrap();
    let ines = on_tuesday(&crew);
    let before = written(ines).len();
    let last = pressing(ines, || 45_000, |_, _| {});
    holds_every_row_once(ines, &last, before);
}

/// At every step of a day: the screen that was answered is answered again, at once or much later, and
/// nothing is done; nor is the new screen's key, within the time a finger bounces.
#[test]
fn answered_twice_or_at_once_nothing_more_is_done() {
    let crew = crew();
    let ines = on_tuesday(&crew);
    for _ in 0..2 {
        pressing(
            ines,
            || MINUTE / 2,
            |shown, after| {
                let entries = written(ines).len();
                let unchanged = |again: SessionScreen| {
                    assert!(again.ignored && again.saved.is_none(), "{:?}", again.here);
                    assert_eq!(written(ines).len(), entries);
                };
                let moved = after.revision != shown.revision;
                for pause in [0, 30, APART - 31, 20_000] {
                    ines.pass(pause);
                    // An older screen's key says what was meant then.
                    if let (Some(tap), true) = (shown.here.key.tap.clone(), moved) {
                        unchanged(ines.answer(shown, tap).unwrap());
                    }
                    if let (Some(tap), true) = (after.here.key.tap.clone(), pause < APART) {
                        unchanged(ines.answer(after, tap).unwrap());
                    }
                }
            },
        );
        ines.pass(DAY);
    }
}

/// Held down for three seconds it is pressed once, whatever comes after: each repeat answers the screen
/// that is shown by then.
#[test]
fn held_down_it_is_pressed_once() {
    let crew = crew();
    let ines = known_loads(&crew);
    for kind in ["lift", "rest", "lift", "rest"] {
        let (entries, of_kind) = (written(ines).len(), count(ines, kind));
        let mut shown = ines.today().unwrap();
        for _ in 0..100 {
            shown = ines.press(&shown).unwrap();
            ines.pass(30);
        }
        assert_eq!((written(ines).len(), count(ines, kind)), (entries + 1, of_kind + 1));
        ines.pass(APART);
    }
}

/// A line that was typed is meant, however fast.
#[test]
fn a_typed_line_is_always_taken() {
    let crew = crew();
    let ines = known_loads(&crew);
    let shown = ines.press(&ines.today().unwrap()).unwrap();
    assert!(shown.saved.is_some());
    for line in ["7", "set 1 50 x 7", "undo", "7"] {
        let Typed::Tap { tap } = ines.holdfast.read_line(line.into(), ines.now()).unwrap() else {
            panic!("{line}")
        };
        let after = ines.tap_now(tap).unwrap();
        assert!(after.saved.is_some() && !after.ignored, "{line}");
    }
}

/// Fifteen seconds more and fifteen more are half a minute: that key is pressed twice on purpose.
#[test]
fn extending_twice_counts_twice() {
    let crew = crew();
    let ines = on_tuesday(&crew);
    ines.tap(begin()).unwrap();
    ines.tap(clock("Calves", Act::Begin)).unwrap();
    ines.pass(10_000);
    let mut shown = ines.today().unwrap();
    let extend = |shown: &SessionScreen| {
        let key = shown.here.side_keys.iter().find(|key| key.kind == SideKeyKind::Extend);
        key.unwrap().tap.clone().unwrap()
    };
    for _ in 0..2 {
        ines.pass(100);
        shown = ines.answer(&shown, extend(&shown)).unwrap();
        assert!(!shown.ignored);
    }
    assert_eq!(hold_clock(&shown).length[0], Millis(2 * MINUTE + 30_000));
    // The screen before it still cannot be answered again.
    let older = SessionScreen { revision: shown.revision - 1, ..shown.clone() };
    assert!(ines.answer(&older, extend(&older)).unwrap().ignored);
}

/// What is over is over: the key only leaves.
#[test]
fn after_the_end_it_adds_nothing() {
    let crew = crew();
    let ines = known_loads(&crew);
    ines.tap(finish(7, 40)).unwrap();
    let entries = written(ines).len();
    for _ in 0..5 {
        ines.pass(1_000);
        let shown = ines.today().unwrap();
        let here = &shown.here;
        // The sets nobody did are not offered any more.
        assert_eq!((here.row.clone(), here.key.kind), (Some(Row::Finish), KeyKind::Moves));
        assert_eq!((&here.key.tap, here.key.asks), (&None, None));
        ines.press(&shown).unwrap();
        assert_eq!(ines.holdfast.read_line(String::new(), ines.now()).unwrap(), Typed::Leave);
    }
    assert_eq!(written(ines).len(), entries);
}

/// One press ends the rest, the next saves the set, and the third ends the rest after that set.
#[test]
fn three_presses_in_a_rest_do_not_save_three_sets() {
    let crew = crew();
    let ines = known_loads(&crew);
    let mut shown = ines.press(&ines.today().unwrap()).unwrap();
    ines.pass(20_000);
    for (kind, lifts, rests) in [("rest", 4, 1), ("log-set", 5, 1), ("rest", 5, 2)] {
        shown = ines.today().unwrap();
        let tap = serde_json::to_value(shown.here.key.tap.clone().unwrap()).unwrap();
        assert_eq!(tap["tap"], kind);
        shown = ines.press(&shown).unwrap();
        // Three sets of the day before.
        assert_eq!((count(ines, "lift"), count(ines, "rest")), (lifts, rests));
        ines.pass(1_000);
    }
    // The third set is open: its reps are asked for, and no press counts them.
    shown = ines.press(&shown).unwrap();
    assert_eq!((shown.here.key.asks, count(ines, "lift")), (Some(Question::Reps), 5));
}

/// Wherever somebody looks while they rest, the key saves no set: it ends the rest.
#[test]
fn in_a_rest_no_row_lets_the_key_save_a_set() {
    let crew = crew();
    let ines = known_loads(&crew);
    let shown = ines.press(&ines.today().unwrap()).unwrap();
    ines.pass(20_000);
    let sets = shown.rows.iter().filter(|row| matches!(row, Row::Set { set: 2.., .. }));
    for row in sets {
        let key = ines.choose(Some(row.clone())).unwrap().here.key;
        let tap = serde_json::to_value(key.tap.unwrap()).unwrap();
        assert_eq!(tap["tap"], "rest", "{row:?}");
    }
}

/// With a sign of an emergency, wherever somebody is and whatever hurts how much, the key ends the session.
#[test]
fn with_an_emergency_sign_it_finishes() {
    for sign in Sign::ALL {
        let crew = crew();
        let ines = known_loads(&crew);
        let shown = ines.tap(flag_in("Calves", Place::Other, 1, &[*sign])).unwrap();
        for row in &shown.rows {
            let key = ines.choose(Some(row.clone())).unwrap().here.key;
            let ends = Tap::Finish { rpe: None, minutes: None };
            assert_eq!((key.kind, key.tap), (KeyKind::Care, Some(ends)), "{row:?}");
        }
        ines.pass(1_000);
        let shown = ines.press(&ines.today().unwrap()).unwrap();
        assert_eq!(shown.state, SessionState::Finished);
    }
}

/// From four of ten on the movement itself is left, its options stay beside; below it goes on.
#[test]
fn pain_that_should_stop_a_movement_makes_it_leave() {
    for (name, severity) in
        (1..=10).flat_map(|severity| [("Squat", severity), ("Calves", severity)])
    {
        let crew = crew();
        let ines = known_loads(&crew);
        let shown = ines.today().unwrap();
        let first = shown.rows.iter().find(|row| row.piece() == Some(name)).cloned();
        ines.choose(first).unwrap();
        let shown = ines.tap(flag_in(name, Place::Knee, severity, &[])).unwrap();
        assert_eq!(piece(&shown, name).flags.len(), 1);
        let key = &shown.here.key;
        if severity < 4 {
            assert_ne!(key.kind, KeyKind::Care, "{name} {severity}");
            continue;
        }
        let leaves = put_off(name, Until::Left);
        assert_eq!((key.kind, key.tap.as_ref()), (KeyKind::Care, Some(&leaves)), "{severity}");
        let options = shown.here.side_keys.iter().any(|key| key.kind == SideKeyKind::Option);
        assert_eq!(options, !piece(&shown, name).options.is_empty());
        assert_eq!(options, name == "Squat");
        ines.pass(1_000);
        let left = ines.press(&shown).unwrap();
        assert_eq!(piece(&left, name).state, PieceState::Left);
        // It stays left after a start, with all that belongs to it: when the others are left too, nothing is
        // left to do.
        let again = ines.open_again().unwrap().today(ines.now()).unwrap();
        assert_eq!(piece(&again, name).state, PieceState::Left);
        let others = ["Squat", "Corners", "Calves"].into_iter().filter(|other| *other != name);
        others.for_each(|other| drop(ines.tap(put_off(other, Until::Left)).unwrap()));
        assert_eq!(ines.today().unwrap().here.row, Some(Row::Finish), "{name}");
    }
}

/// Pain in one movement of several leaves the others alone, and a clock that runs is stopped, not left.
#[test]
fn pain_in_windows_and_holds_stops_their_clock() {
    let crew = crew();
    let ines = known_loads(&crew);
    let bell = |severity| Tap::Flag {
        piece: "Corners".into(),
        movement: Some("bell-swing".into()),
        place: Place::LowBack,
        severity,
        signs: vec![],
    };
    ines.tap(bell(5)).unwrap();
    let at = |window| {
        let row = Row::Window { piece: "Corners".into(), window };
        ines.choose(Some(row)).unwrap().here.key
    };
    assert_eq!((at(1).kind, at(2).kind), (KeyKind::Care, KeyKind::Moves));
    // The words say what this press does: all of the piece is left, or the clock stops.
    assert_eq!(at(1).words, "No more Corners today");
    ines.tap(clock("Corners", Act::Begin)).unwrap();
    assert_eq!(at(1).tap, Some(clock("Corners", Act::Stop)));
    assert_eq!(at(1).words, "Stop Corners");
    ines.tap(clock("Corners", Act::Stop)).unwrap();
    // Nothing chosen by hand any more: the clock that runs is what is at hand.
    ines.choose(None).unwrap();
    ines.tap(clock("Calves", Act::Begin)).unwrap();
    ines.pass(30_000);
    let shown = ines.tap(flag_in("Calves", Place::Ankle, 6, &[])).unwrap();
    assert_eq!(shown.here.key.tap, Some(clock("Calves", Act::Stop)));
    ines.pass(1_000);
    let shown = ines.press(&ines.today().unwrap()).unwrap();
    // What was held until then is kept.
    assert_eq!(shown.here.key.kind, KeyKind::Saves);
    ines.pass(1_000);
    let shown = ines.press(&ines.today().unwrap()).unwrap();
    assert!(hold(&shown).sides[0].held.is_some());
}

/// A day that is being trained, looked at by its name, shows what is done of it.
#[test]
fn a_running_day_by_its_name_is_the_running_session() {
    let crew = crew();
    let ines = known_loads(&crew);
    let shown = ines.press(&ines.today().unwrap()).unwrap();
    let day = shown.day.clone();
    assert!(day.is_some());
    let named = ines.holdfast.preview(ines.now().date(), day, ines.now()).unwrap();
    assert_eq!(strength(&named), strength(&shown));
}

/// Nobody ends a session without being told what of it is open.
#[test]
fn at_the_end_stands_what_is_not_done() {
    let crew = crew();
    let ines = known_loads(&crew);
    let at_the_end = || ines.holdfast.choose(Some(Row::Finish), ines.now()).unwrap().here;
    let shown = at_the_end();
    assert_eq!(shown.title, "Not everything is logged.");
    assert_eq!(
        shown.notes.last().unwrap(),
        "Not done: Squat (0 of 3), Corners (0 of 4) and Calves."
    );
    ines.tap(squat(None, None, None, None)).unwrap();
    ines.tap(put_off("Corners", Until::Later)).unwrap();
    let measure = |part| Tap::PutOff { piece: "Calves".into(), part, until: Until::Later };
    ines.tap(measure(Part::Before)).unwrap();
    ines.tap(held(&[60_000, 60_000], None)).unwrap();
    let shown = at_the_end();
    assert_eq!(
        shown.notes.last().unwrap(),
        "Not done: Squat (1 of 3), Corners (later) and Calves, reading before the hold."
    );
    ines.tap(range(MeasuredWhen::Before, Some(1), 100)).unwrap();
    ines.tap(range(MeasuredWhen::Before, Some(2), 100)).unwrap();
    ines.tap(squat(None, None, None, None)).unwrap();
    ines.tap(squat(None, None, Some(5), None)).unwrap();
    for _ in 0..4 {
        ines.tap(window(None, None, None)).unwrap();
    }
    let shown = at_the_end();
    assert_eq!(shown.title, "Everything is logged.");
    assert!(!shown.notes.iter().any(|note| note.starts_with("Not done")), "{:?}", shown.notes);
}
