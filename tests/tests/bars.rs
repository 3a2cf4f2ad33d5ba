//! Another bar than the plan's, taken by the athlete.

use holdfast_core::coach::Answer;
use holdfast_core::load::Decision;
use holdfast_core::session::{SessionScreen, Tap, Typed};
use holdfast_core::{HoldfastResult, Mass};
use holdfast_tests::taps::{begin, finish_unrated, kg, option};
use holdfast_tests::train::squats;
use holdfast_tests::views::{build, change, loads, strength};
use holdfast_tests::{Crew, Device, SMALL_PLAN, changed};

const LONG: &str = "{ name = \"long bar\", mass = \"20 kg\" },";
const SHORT: &str = "{ name = \"short bar\", mass = \"14 kg\", collars = \"2 kg\" },";

fn plan() -> String {
    changed(SMALL_PLAN, LONG, &format!("{LONG} {SHORT}"))
}

fn take(ines: &Device, bar: &str) -> HoldfastResult<SessionScreen> {
    ines.tap(Tap::TakeBar { piece: "Squat".into(), bar: bar.into() })
}

fn bar(screen: &SessionScreen) -> &str {
    strength(screen).bar.as_deref().unwrap()
}

/// 50, 60 and 70 kg, all made: 52.5, 62.5 and 72.5 next. The short bar weighs 16 kg with its collars, and is
/// built in steps of 2.5 kg from there: 51, 61 and 71, the nearest below.
#[test]
fn loads_are_built_on_the_bar_taken_and_it_stays() {
    let crew = Crew::start(&plan(), &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-03", &[(50, 8), (60, 6), (70, 5)]);
    ines.go_to("2026-11-05");
    let screen = ines.tap(begin()).unwrap();
    let bars: Vec<(&str, bool)> =
        strength(&screen).bars.iter().map(|bar| (bar.text.as_str(), bar.taken)).collect();
    let collars = "short bar, 14 kg and collars 2 kg: 16 kg empty";
    assert_eq!(
        bars,
        [("long bar, 20 kg empty", true), (collars, false), ("pound bar, 45 lb empty", false)]
    );
    let half = |twice: i64| Some(Mass { ten_ng: Mass::kg(twice).ten_ng / 2 });
    assert_eq!(loads(&screen), [half(105), half(125), half(145)]);

    let screen = take(ines, " Short BAR ").unwrap();
    assert_eq!(bar(&screen), "short bar");
    assert_eq!(loads(&screen), [51, 61, 71].map(|kg| Some(Mass::kg(kg))));
    assert!(strength(&screen).heading.contains("short bar"), "{}", strength(&screen).heading);
    assert_eq!(screen.saved_text.as_deref(), Some("Squat, on the short bar"));
    let first = strength(&screen).sets[0].load.clone().unwrap();
    assert_eq!(build(&first).text, "10 + 5 + 2.5 kg a side");
    // Once a set is done, the other bar is an empty one.
    let screen = ines.tap(kg(51)).unwrap();
    assert_eq!(strength(&screen).sets[0].done.as_ref().unwrap().doubt, None);
    let screen_of_the_long = take(ines, "long bar").unwrap();
    let second = strength(&screen_of_the_long).sets[1].load.clone().unwrap();
    assert_eq!(change(&second), Some("put on 20 + 1.25 kg"));
    // One undo takes it back: the short bar has its plates on.
    let again = ines.tap(Tap::Undo).unwrap();
    assert_eq!(again.pieces, screen.pieces);
    assert_eq!(ines.open_again().unwrap().today(ines.now()).unwrap().pieces, screen.pieces);
    ines.tap(finish_unrated()).unwrap();

    // The next time too; an option of the movement has its own.
    ines.go_to("2026-11-06");
    let screen = ines.tap(begin()).unwrap();
    assert_eq!(bar(&screen), "short bar");
    assert_eq!(bar(&ines.tap(option(Some("box-squat"))).unwrap()), "long bar");
    assert_eq!(bar(&ines.tap(option(None)).unwrap()), "short bar");
    let export = ines.holdfast.export().unwrap();
    let sets = export.tables.iter().find(|table| table.name == "sets").unwrap();
    let column = sets.columns.iter().position(|column| column == "bar").unwrap();
    let bars: Vec<&str> = sets.rows.iter().map(|row| row.cells[column].as_str()).collect();
    assert_eq!(bars, ["long bar", "long bar", "long bar", "short bar"]);
}

/// 71 kg can be built on the short bar alone.
#[test]
fn a_coach_answers_for_the_bar_that_is_taken() {
    let crew = Crew::start(&plan(), &["Ines"]).unwrap();
    let (ines, coach) = (&crew.athletes[0], &crew.coach);
    ines.go_to("2026-11-03");
    ines.tap(begin()).unwrap();
    take(ines, "short bar").unwrap();
    for load in [51, 61, 71] {
        ines.tap(Tap::LogSet {
            piece: "Squat".into(),
            set: None,
            load: Some(Mass::kg(load)),
            reps: Some(8),
            reserve: None,
        })
        .unwrap();
    }
    ines.tap(finish_unrated()).unwrap();
    crew.exchange_all().unwrap();
    coach.go_to("2026-11-04");
    let page = coach.holdfast.member("Ines".into(), coach.now().date()).unwrap();
    let asked = &page.proposals[0];
    assert_eq!(asked.bar.as_deref(), Some("short bar"));
    let answer = |load| Answer {
        person: page.person,
        exercise: asked.exercise.clone(),
        track: asked.track.clone(),
        anyway: false,
        decision: Decision::Change,
        loads: vec![Mass::kg(load)],
        words: String::new(),
    };
    let refused = coach.holdfast.answer(answer(70), coach.now()).unwrap_err().to_string();
    assert!(refused.contains("71 kg") && refused.contains("68.5 kg"), "{refused}");
    coach.holdfast.answer(answer(71), coach.now()).unwrap();
    crew.exchange_all().unwrap();
    ines.go_to("2026-11-05");
    assert_eq!(loads(&ines.tap(begin()).unwrap())[2], Some(Mass::kg(71)));
}

/// The plan's word is newer than the athlete's where it gives another bar, and stands where it does not.
#[test]
fn a_plan_that_gives_another_bar_is_followed() {
    let crew = Crew::start(&plan(), &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    ines.go_to("2026-11-03");
    ines.tap(begin()).unwrap();
    take(ines, "short bar").unwrap();
    ines.tap(finish_unrated()).unwrap();
    let seen = |date: &str, plan: &str| {
        crew.coach.publish(plan).unwrap();
        crew.exchange_all().unwrap();
        ines.go_to(date);
        let screen = ines.tap(begin()).unwrap();
        ines.tap(finish_unrated()).unwrap();
        bar(&screen).to_owned()
    };
    let renamed = changed(&plan(), "weeks = 2", "weeks = 3");
    assert_eq!(seen("2026-11-04", &renamed), "short bar");
    let named = |bar: &str| {
        let movement = "movement = \"back-squat\"";
        changed(&plan(), movement, &format!("{movement}\n  bar = \"{bar}\""))
    };
    assert_eq!(seen("2026-11-05", &named("pound bar")), "pound bar");
    assert_eq!(seen("2026-11-06", &named("long bar")), "short bar");
    // A room without it.
    assert_eq!(seen("2026-11-07", SMALL_PLAN), "long bar");
}

#[test]
fn what_is_no_bar_of_the_room_is_told() {
    let crew = Crew::start(&plan(), &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    ines.go_to("2026-11-03");
    ines.tap(begin()).unwrap();
    let wrong = |piece: &str, bar: &str| {
        let tap = Tap::TakeBar { piece: piece.into(), bar: bar.into() };
        ines.tap(tap).unwrap_err().to_string()
    };
    assert_eq!(
        wrong("Squat", "log"),
        "There is no bar \"log\". This kit has long bar, short bar and pound bar."
    );
    assert_eq!(wrong("Squat", "long bar"), "The long bar is chosen already.");
    assert!(wrong("Corners", "long bar").contains("no sets"), "{}", wrong("Corners", "long bar"));
    let read = |typed: &str| {
        ines.holdfast.read_line(typed.into(), ines.now()).map_err(|error| error.to_string())
    };
    let tap = Tap::TakeBar { piece: "Squat".into(), bar: "short bar".into() };
    assert_eq!(read("bar short bar"), Ok(Typed::Tap { tap }));
    let which = "Type `bar` and one of long bar, short bar, pound bar.";
    assert_eq!(read("Bar"), Err(which.to_owned()));
    let bells = ines.tap(option(Some("step-up"))).unwrap();
    assert_eq!(wrong("Squat", "long bar"), "\"Squat\" needs no bar.");
    assert!(strength(&bells).bars.is_empty());
    let none = "There is no other bar for this.";
    assert_eq!(read("bar short bar"), Err(none.to_owned()));
}
