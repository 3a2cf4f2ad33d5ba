//! Options of a movement.

use holdfast_core::session::{PieceKindView, SessionScreen, StrengthView, Tap, Typed};
use holdfast_tests::athlete::Athlete;
use holdfast_tests::taps::begin;
use holdfast_tests::views::piece;
use holdfast_tests::{Crew, EVERY_KIND, SMALL_PLAN, run, this_week};

fn view<'a>(screen: &'a SessionScreen, name: &str) -> &'a StrengthView {
    match &piece(screen, name).kind {
        PieceKindView::Strength { view } => view,
        other => panic!("{other:?}"),
    }
}

/// A plan says a load of the movement: an option of it may be carried by a bell, or be much harder. Whatever rule it
/// stands in, the first load of an option is the athlete's.
#[test]
fn what_the_plan_gives_a_movement_is_not_given_its_options() {
    let crew = Crew::start(EVERY_KIND, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    ines.go_to("2026-11-03");
    let screen = ines.tap(begin()).unwrap();
    for (name, option) in [("Heavy squat", "light-squat"), ("Rows", "press-down")] {
        let own = view(&screen, name);
        assert!(own.sets.iter().all(|set| set.load.is_some()), "{name}");
        let (piece, option) = (name.to_owned(), Some(option.to_owned()));
        let screen = ines.tap(Tap::TakeOption { piece, movement: None, option }).unwrap();
        let taken = view(&screen, name);
        assert_ne!(taken.exercise, own.exercise);
        assert!(taken.sets.iter().all(|set| set.load.is_none()), "{name}");
    }
}

/// An option is typed by its key or by its name, in whatever case, or by a part of it that no other has.
#[test]
fn an_option_is_typed_as_it_is_named() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    ines.go_to("2026-11-03");
    ines.tap(begin()).unwrap();
    let read = |typed: &str| ines.holdfast.read_line(format!("option {typed}"), ines.now());
    for (typed, key) in [
        ("box-squat", "box-squat"),
        ("BOX-SQUAT", "box-squat"),
        ("squat to a box", "box-squat"),
        ("Box", "box-squat"),
        ("bell", "step-up"),
    ] {
        let Ok(Typed::Tap { tap: Tap::TakeOption { option, .. } }) = read(typed) else {
            panic!("{typed}")
        };
        assert_eq!(option.as_deref(), Some(key), "{typed}");
    }
    for typed in ["", "t", "lunge"] {
        assert!(read(typed).is_err(), "{typed:?} is neither or both");
    }
}

/// In pain the prompt names what may be done instead.
#[test]
fn in_pain_the_options_are_named() {
    let ana = Athlete::with_plan(&this_week());
    let said = run(ana.home(), &["session", "--plain"], "\nflag knee 6\nquit\n").out;
    let after = said.split("> flag knee 6").nth(1).unwrap_or_default();
    assert!(after.contains("options: box-squat (low back), step-up (sore legs)"), "{said}");
}
