//! What is written to disk and drawn on screens, as it is today: a change here is a change of a
//! format, and needs a decision.

use holdfast_core::Mass;
use holdfast_core::care::Place;
use holdfast_core::clock::Act;
use holdfast_core::companion::Tap;
use holdfast_core::plan::MeasuredWhen;
use holdfast_tests::{Crew, SMALL_PLAN};

use crate::whole_loop::{begin, finish, set};

/// A crew in which every kind of entry is written once.
fn one_of_each() -> Crew {
    let crew = Crew::start(SMALL_PLAN, &["Zoë"]).unwrap();
    let zoe = &crew.athletes[0];
    zoe.go_to("2026-11-03");
    zoe.tap(begin()).unwrap();
    zoe.tap(set(Some(Mass::kg(50)), None)).unwrap();
    let piece = || "Squat".to_owned();
    zoe.tap(Tap::LogSet {
        piece: piece(),
        set: Some(1),
        load: None,
        reps: Some(9),
        reserve: Some(1),
    })
    .unwrap();
    zoe.tap(set(Some(Mass::lb(135)), None)).unwrap();
    zoe.tap(Tap::Undo).unwrap();
    let option = Some("box-squat".to_owned());
    zoe.tap(Tap::TakeOption { piece: piece(), movement: None, option }).unwrap();
    let window =
        Tap::LogWindow { piece: "Corners".into(), window: None, reps: None, spare_ms: Some(9_000) };
    zoe.tap(window).unwrap();
    let range =
        |when, tenths| Tap::LogRange { piece: "Calves".into(), when, side: Some(1), tenths };
    zoe.tap(range(MeasuredWhen::Before, 100)).unwrap();
    zoe.tap(Tap::Clock { piece: "Calves".into(), act: Act::Begin, station: None }).unwrap();
    zoe.pass(100_000);
    zoe.tap(Tap::LogHold { piece: "Calves".into(), held_ms: vec![], said: None }).unwrap();
    let (place, signs) = (Place::Knee, vec![]);
    zoe.tap(Tap::Flag { piece: piece(), movement: None, place, severity: 3, signs }).unwrap();
    zoe.tap(finish(7, 45)).unwrap();
    zoe.exchange(&crew.carrier).unwrap();
    crew
}

#[test]
fn leaves_are_written_as_before() {
    let crew = one_of_each();
    let mut text = String::new();
    for file in crew.carrier.files() {
        text += &format!("--- {}\n{}", file.name, String::from_utf8(file.content).unwrap());
    }
    // The plan's own text is another file's business.
    let plan = serde_json::to_string(SMALL_PLAN).unwrap();
    insta::assert_snapshot!("leaves", text.replace(&plan, "\"(the plan)\""));
}

#[test]
fn screens_are_drawn_as_before() {
    let crew = one_of_each();
    insta::assert_json_snapshot!("session_screen", crew.athletes[0].today().unwrap());
    crew.coach.exchange(&crew.carrier).unwrap();
    let date = "2026-11-03".parse().unwrap();
    insta::assert_json_snapshot!("board_screen", crew.coach.companion.board(date).unwrap());
    let page = crew.coach.companion.member("Zoë".into(), date).unwrap();
    insta::assert_json_snapshot!("member_screen", page);
}

/// Whatever is tapped: the screen that comes back is the one a fresh start would show, for nothing
/// is kept that is not on disk.
mod kept {
    use holdfast_core::Holdfast;
    use proptest::prelude::*;

    use super::*;

    fn any_tap() -> impl Strategy<Value = Tap> {
        let squat = || "Squat".to_owned();
        let calves = || "Calves".to_owned();
        prop_oneof![
            4 => (proptest::option::of(1_u32..4), proptest::option::of(20_i64..100), proptest::option::of(0_u32..12))
                .prop_map(move |(set, load, reps)| Tap::LogSet { piece: squat(), set, load: load.map(Mass::kg), reps, reserve: None }),
            2 => (proptest::option::of(1_u32..5), 0_i64..60_000)
                .prop_map(|(window, spare)| Tap::LogWindow { piece: "Corners".into(), window, reps: None, spare_ms: Some(spare) }),
            1 => any::<bool>().prop_map(move |on| Tap::TakeOption {
                piece: "Squat".into(), movement: None, option: on.then(|| "box-squat".to_owned()) }),
            2 => prop_oneof![Just(Act::Begin), Just(Act::Pause), Just(Act::Resume), Just(Act::Skip), Just(Act::Stop)]
                .prop_map(move |act| Tap::Clock { piece: calves(), act, station: None }),
            1 => Just(Tap::LogHold { piece: "Calves".into(), held_ms: vec![], said: None }),
            1 => (0_i64..300).prop_map(|tenths| Tap::LogRange {
                piece: "Calves".into(), when: MeasuredWhen::Before, side: None, tenths }),
            1 => (1_u32..11).prop_map(|severity| Tap::Flag {
                piece: "Squat".into(), movement: None, place: Place::Hip, severity, signs: vec![] }),
            2 => Just(Tap::Undo),
            1 => Just(finish(5, 30)),
            1 => Just(Tap::Begin { day: Some("Any evening".into()) }),
        ]
    }

    proptest! {
        #![proptest_config(ProptestConfig { cases: 12, ..ProptestConfig::default() })]

        #[test]
        fn a_screen_is_what_is_on_disk(taps in proptest::collection::vec((any_tap(), 0_i64..90_000), 1..25)) {
            let crew = Crew::start(SMALL_PLAN, &["Zoë"]).unwrap();
            let zoe = &crew.athletes[0];
            zoe.go_to("2026-11-03");
            zoe.tap(begin()).unwrap();
            for (tap, pause) in taps {
                zoe.pass(pause);
                // A tap that cannot be changes nothing, and that is checked the same way.
                let shown = zoe.tap(tap.clone()).ok();
                let home = zoe.home.to_string_lossy().into_owned();
                let fresh = Holdfast::open(home, zoe.now()).unwrap().today(zoe.now()).unwrap();
                let mut shown = shown.unwrap_or_else(|| zoe.today().unwrap());
                shown.saved = None;
                shown.undone.clear();
                prop_assert_eq!(shown, fresh, "after {:?}", tap);
            }
            prop_assert!(!zoe.companion.refold().unwrap());
        }
    }

    /// A second process writes between two taps of the first: its entry is on the next screen.
    #[test]
    fn another_process_is_seen() {
        let crew = Crew::start(SMALL_PLAN, &["Zoë"]).unwrap();
        let zoe = &crew.athletes[0];
        zoe.go_to("2026-11-03");
        zoe.tap(begin()).unwrap();
        zoe.tap(set(Some(Mass::kg(50)), None)).unwrap();
        let other = Holdfast::open(zoe.home.to_string_lossy().into_owned(), zoe.now()).unwrap();
        zoe.pass(1_000);
        other.tap(set(Some(Mass::kg(60)), None), zoe.now()).unwrap();
        let screen = zoe.tap(set(Some(Mass::kg(70)), None)).unwrap();
        let done = crate::whole_loop::strength(&screen).sets.iter();
        let loads: Vec<_> = done.map(|set| set.done.as_ref().unwrap().load).collect();
        assert_eq!(loads, [50, 60, 70].map(|kg| Some(Mass::kg(kg))));
        // Two writers, one journal: the numbers do not clash.
        assert!(!zoe.companion.refold().unwrap());
    }
}
