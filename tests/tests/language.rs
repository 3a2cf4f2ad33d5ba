//! The language that somebody reads: their own choice, in their journal, and what the program speaks.

use catalogue::speaking;
use holdfast_core::{HoldfastError, Language};
use holdfast_tests::train::{squats, three_squats};
use holdfast_tests::{Crew, Device, SMALL_PLAN};

#[test]
fn a_choice_is_somebodys_own_and_can_be_taken_back() {
    let mut crew = Crew::start(SMALL_PLAN, &["Ines", "Zoë"]).unwrap();
    let ines = &mut crew.athletes[0];
    assert_eq!(ines.holdfast.who().unwrap().language, None);
    let who = ines.holdfast.choose_language(Some(Language::De), ines.now()).unwrap();
    assert_eq!(who.language, Some(Language::De));
    assert!(who.in_crew, "all else stays as it was");
    ines.kill().unwrap();
    assert_eq!(ines.holdfast.who().unwrap().language, Some(Language::De));
    assert!(ines.journal().iter().any(|line| line.contains(r#""language":"de""#)));
    crew.exchange_all().unwrap();
    assert_eq!(crew.athletes[1].holdfast.who().unwrap().language, None);
    let ines = &crew.athletes[0];
    let who = ines.holdfast.choose_language(None, ines.now()).unwrap();
    assert_eq!(who.language, None);
    assert!(!ines.holdfast.refold().unwrap());
}

/// What was drawn in one language is not shown in another.
#[test]
fn a_screen_is_in_the_language_that_is_spoken_now() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-03", &[(50, 8), (60, 6), (70, 6)]);
    three_squats(ines, "2026-11-05");
    for language in [Language::De, Language::En, Language::De] {
        speaking(language, || {
            let fresh = ines.open_again().unwrap().today(ines.now()).unwrap();
            let shown = ines.today().unwrap();
            assert_eq!(shown.pieces, fresh.pieces);
            assert_eq!(shown.heading, fresh.heading);
        });
    }
}

#[test]
fn the_board_and_its_errors_are_in_german_too() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-03", &[(50, 8), (60, 6), (70, 6)]);
    squats(ines, "2026-11-05", &[(52, 8), (62, 6), (72, 6)]);
    ines.exchange(&crew.carrier).unwrap();
    let first = &crew.carrier.leaves_of(ines)[0];
    std::fs::remove_file(crew.carrier.folder().join(&first.name)).unwrap();
    crew.coach.exchange(&crew.carrier).unwrap();
    let (board, said) = speaking(Language::De, || {
        let date = "2026-11-05".parse().unwrap();
        let refused = ines.holdfast.board(date).unwrap_err().to_string();
        (crew.coach.holdfast.board(date).unwrap(), refused)
    });
    assert_eq!(said, "Nur Coaches sehen den Überblick; dies ist das Athletengerät von Ines.");
    assert_eq!(board.heading, "Small block, Woche 1 von 2");
    let missing = "1 Datei vom Gerät von Ines ist nicht angekommen: Nummer 1.";
    assert_eq!(board.arrivals[0], missing);
    let nobody = speaking(Language::De, || {
        let device = Device::open(crew.folder().join("nobody"), ines.now());
        device.err().map(|error| error.to_string()).unwrap()
    });
    assert!(nobody.contains("/nobody: In diesem Ordner ist noch kein Gerät eingerichtet."));
}

/// An error is said in the language that is spoken when it is shown, where that is up to the core alone.
#[test]
fn what_is_not_there_is_named_in_both_languages() {
    let (what, name, reason) = (holdfast_core::Thing::Bar, Some("axle".into()), "So.".into());
    let missing = HoldfastError::NotFound { what, name, reason };
    assert_eq!(missing.to_string(), "There is no bar \"axle\". So.");
    let german = speaking(Language::De, || missing.to_string());
    assert_eq!(german, "Eine Stange „axle“ gibt es nicht. So.");
}
