//! Options of a movement.

use holdfast_core::session::{PieceKindView, SessionScreen, StrengthView, Tap};
use holdfast_tests::taps::begin;
use holdfast_tests::views::piece;
use holdfast_tests::{Crew, EVERY_KIND};

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
