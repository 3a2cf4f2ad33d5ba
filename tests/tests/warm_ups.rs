//! Warm-ups as an athlete meets them: the first time, from the floor, the second lift of a pattern; and the rest
//! after a set with an empty bar.

use holdfast_core::Mass;
use holdfast_core::journal::Until;
use holdfast_core::load::RestBasis;
use holdfast_core::session::{PieceKindView, SessionScreen, Tap};
use holdfast_tests::taps::{begin, put_off, set, squat};
use holdfast_tests::train::squats;
use holdfast_tests::views::{piece, strength};
use holdfast_tests::{Crew, SMALL_PLAN, changed};

/// A second piece of squats after the first.
const MORE: &str = r#"
  [[day.piece]]
  kind = "strength"
  name = "More squats"
  movement = "back-squat"
  reps = [10, 10]
  load = { rule = "step", step = ["2.5 kg", "5 lb"] }
"#;

fn warm_up(screen: &SessionScreen, of: &str) -> Vec<String> {
    match &piece(screen, of).kind {
        PieceKindView::Strength { view } => {
            view.warm_up.iter().map(|set| set.text.clone()).collect()
        }
        _ => panic!("{of} is no strength piece"),
    }
}

/// By hand, 55 kg on a bar of 20, 2.75 times as heavy: 20, 20 + 5/12 and 20 + 9/12 of 35 kg, which are 34.6 and
/// 46.25, 2.75 kg either way.
#[test]
fn a_warm_up_leads_to_the_first_set() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-03", &[(50, 8), (60, 6), (70, 8)]);
    ines.go_to("2026-11-05");
    let screen = ines.tap(begin()).unwrap();
    assert_eq!(strength(&screen).sets[0].load.as_ref().unwrap().mass, Mass::kg(55));
    assert_eq!(
        warm_up(&screen, "Squat"),
        [
            "20 kg × 10 (empty bar)",
            "35 kg × 5 (5 + 2.5 kg a side)",
            "45 kg × 3 (10 + 2.5 kg a side)"
        ]
    );
    let screen = ines.tap(set(None, None)).unwrap();
    assert!(strength(&screen).warm_up.is_empty(), "warm now");
}

#[test]
fn a_first_time_is_warmed_up_to_by_feel() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    ines.go_to("2026-11-03");
    let screen = ines.tap(begin()).unwrap();
    assert_eq!(warm_up(&screen, "Squat"), ["20 kg × 10 (empty bar)", "light × 5"]);
    let sets = &strength(&screen).warm_up;
    assert_eq!(sets[0].load.as_ref().map(|load| load.mass), Some(Mass::kg(20)));
    assert!(sets[1].load.is_none(), "no load is invented");
    let bells = changed(SMALL_PLAN, "\"squat\"\nlifted = \"bar\"", "\"squat\"\nlifted = \"bell\"");
    let crew = Crew::start(&bells, &["Ines"]).unwrap();
    crew.athletes[0].go_to("2026-11-03");
    let screen = crew.athletes[0].tap(begin()).unwrap();
    assert_eq!(warm_up(&screen, "Squat"), ["light bell × 10"]);
}

/// A bar that is lifted by a hinge starts on the floor: nothing with the empty bar, which would lie too low.
#[test]
fn nothing_is_lifted_from_the_floor_with_an_empty_bar() {
    let plan = changed(SMALL_PLAN, "pattern = \"squat\"", "pattern = \"hinge\"");
    let crew = Crew::start(&plan, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    ines.go_to("2026-11-03");
    assert_eq!(warm_up(&ines.today().unwrap(), "Squat"), ["light × 5"]);
    squats(ines, "2026-11-03", &[(100, 8), (105, 6), (110, 6)]);
    ines.go_to("2026-11-05");
    // 102.5 kg, from 40: 66 and 86.9 kg are planned.
    let sets = warm_up(&ines.today().unwrap(), "Squat");
    assert_eq!(sets[0], "40 kg × 5 (10 kg a side)");
    assert!(sets.len() == 3 && sets.iter().all(|set| !set.contains("empty")), "{sets:?}");
}

/// Before the session by what is planned, in it by what was done: a piece that was put off warms nobody up.
#[test]
fn a_second_lift_of_a_pattern_has_a_shorter_warm_up() {
    let crew = Crew::start(&format!("{SMALL_PLAN}{MORE}"), &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    let (long, short) = (["20 kg × 10 (empty bar)", "light × 5"], ["light × 5"]);
    ines.go_to("2026-11-03");
    assert_eq!(warm_up(&ines.today().unwrap(), "More squats"), short, "as planned");
    ines.tap(begin()).unwrap();
    let screen = ines.tap(put_off("Squat", Until::Later)).unwrap();
    assert_eq!(warm_up(&screen, "More squats"), long, "nothing was done");
    let screen = ines.tap(squat(None, Some(50), Some(8), Some(2))).unwrap();
    assert_eq!(warm_up(&screen, "More squats"), short);
    let again = ines.open_again().unwrap().today(ines.now()).unwrap();
    assert_eq!(again.pieces, screen.pieces);
    let screen = ines.tap(Tap::Undo).unwrap();
    assert_eq!(warm_up(&screen, "More squats"), long, "taken back");
}

/// A few reps with an empty bar are no heavy set, unless the athlete says that nothing was left.
#[test]
fn after_an_empty_bar_no_long_rest_is_suggested() {
    let plan = changed(SMALL_PLAN, "  rest = \"2 min\"\n", "");
    let crew = Crew::start(&plan, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    ines.go_to("2026-11-03");
    ines.tap(begin()).unwrap();
    let basis = |kg, reserve| {
        let screen = ines.tap(squat(Some(1), Some(kg), Some(5), reserve)).unwrap();
        screen.rest.unwrap().basis
    };
    assert_eq!(basis(20, None), RestBasis::Usual);
    assert_eq!(basis(20, Some(0)), RestBasis::Published);
    assert_eq!(basis(40, None), RestBasis::Published);
}
