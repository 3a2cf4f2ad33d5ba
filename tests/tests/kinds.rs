//! What is lifted, from the plan to the coach's page: loads with a minus where a body is assisted, zero where
//! nothing is added, and neither anywhere else.

use holdfast_core::Mass;
use holdfast_core::coach::{Answer, AttentionKind};
use holdfast_core::load::Decision;
use holdfast_core::session::{
    PieceKindView, Question, Row, SessionScreen, SessionState, SetView, Tap,
};
use holdfast_tests::taps::{begin, finish_unrated, rate, set_of};
use holdfast_tests::views::piece;
use holdfast_tests::{Crew, EVERY_KIND};

fn sets<'s>(screen: &'s SessionScreen, name: &str) -> &'s [SetView] {
    let PieceKindView::Strength { view } = &piece(screen, name).kind else { panic!("{name}") };
    &view.sets
}

#[test]
fn a_load_is_below_zero_only_where_a_body_is_assisted() {
    let crew = Crew::start(EVERY_KIND, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    ines.go_to("2026-11-03");
    ines.tap(begin()).unwrap();
    let log = |piece, kg, reps| ines.tap(set_of(piece, None, Some(Mass::kg(kg)), Some(reps)));
    for (piece, kg, wanted) in [
        ("Chin-ups", 20, "log it with a minus, such as -20 kg."),
        ("Dips", -5, "What is added to body weight can't be below zero."),
        ("Heavy squat", -40, "A load must be above zero."),
        ("Heavy squat", 0, "A load must be above zero."),
        ("Carry", 0, "A load must be above zero."),
        ("Rows", -5, "A load must be above zero."),
    ] {
        let said = log(piece, kg, 5).unwrap_err().to_string();
        assert!(said.contains(wanted), "{piece} {kg}: {said}");
    }
    log("Chin-ups", -20, 6).unwrap();
    log("Chin-ups", 0, 2).unwrap();
    log("Dips", 0, 8).unwrap();
    let screen = log("Heavy squat", 40, 5).unwrap();
    let done = |piece, set: usize| {
        let done = sets(&screen, piece)[set].done.as_ref().unwrap();
        (done.load, done.load_text.clone(), done.doubt.clone())
    };
    let text = |text: &str| Some(text.to_owned());
    assert_eq!(done("Chin-ups", 0), (Some(Mass::kg(-20)), text("-20 kg"), None));
    assert_eq!(done("Chin-ups", 1).0, Some(Mass::ZERO));
    assert_eq!(done("Dips", 0), (Some(Mass::ZERO), text("0 kg"), None));
    let options = sets(&screen, "Chin-ups")[0].load.iter();
    assert!(options.clone().all(|load| load.build.is_none()), "no plates");

    // -15 kg is no mass that this room can take off.
    let fix = set_of("Chin-ups", Some(1), Some(Mass::kg(-15)), None);
    let screen = ines.tap(fix).unwrap();
    let doubt = sets(&screen, "Chin-ups")[0].done.as_ref().unwrap().doubt.clone().unwrap();
    assert!(doubt.contains("-15 kg") && doubt.contains("-20 kg and -10 kg"), "{doubt}");
    ines.tap(set_of("Chin-ups", Some(1), Some(Mass::kg(-20)), None)).unwrap();

    // What was taken off a body takes nothing off the volume: 40 kg times five.
    ines.tap(finish_unrated()).unwrap();
    crew.exchange_all().unwrap();
    let page = crew.coach.holdfast.member("Ines".into(), "2026-11-03".parse().unwrap()).unwrap();
    assert_eq!((page.sessions[0].sets, page.sessions[0].volume), (4, Mass::kg(200)));
    assert!(page.strengths.iter().all(|series| series.exercise.movement != "chin-up"));
    assert_eq!(crew.coach.holdfast.verify().unwrap().repaired, None);
    // What cannot be logged cannot be answered either, in the same words.
    crew.coach.go_to("2026-11-04");
    for (piece, kg) in [("Chin-ups", 20), ("Dips", -5), ("Heavy squat", -40)] {
        let logged = ines.tap(set_of(piece, Some(1), Some(Mass::kg(kg)), Some(5)));
        let asked = page.proposals.iter().find(|proposal| proposal.piece == piece).unwrap();
        let answer = Answer {
            person: page.person,
            exercise: asked.exercise.clone(),
            track: asked.track.clone(),
            anyway: true,
            decision: Decision::Change,
            loads: vec![Mass::kg(kg)],
            words: String::new(),
        };
        let refused = crew.coach.holdfast.answer(answer, crew.coach.now()).unwrap_err();
        assert_eq!(refused.to_string(), logged.unwrap_err().to_string(), "{piece}");
    }
}

/// Presses the one key until the day is done, a little more than a window apart.
fn by_one_key(of: &holdfast_tests::Device) {
    let mut screen = of.tap(begin()).unwrap();
    for _ in 0..200 {
        if screen.state == SessionState::Finished {
            return;
        }
        of.pass(70_000);
        let key = of.today().unwrap().here.key;
        screen = match (key.tap, key.asks) {
            (Some(tap), _) => of.tap(tap).unwrap(),
            (None, Some(Question::Rpe)) => of.tap(rate(7)).unwrap(),
            // A percentage of nothing known yet.
            (None, Some(Question::Reserve)) => {
                let Some(Row::Set { piece, set }) = screen.here.row else { panic!() };
                let (load, reps, reserve) = (None, Some(5), Some(2));
                of.tap(Tap::LogSet { piece, set: Some(set), load, reps, reserve }).unwrap()
            }
            other => panic!("{other:?} at {}", screen.here.line),
        };
    }
    panic!("not done: {}", screen.here.line);
}

/// Whoever only presses the key trains the whole day, whatever is lifted in it; and a week later everything that
/// the plan lets climb asks for more, in load or in reps.
#[test]
fn whatever_is_lifted_is_logged_with_one_key_and_climbs() {
    let crew = Crew::start(EVERY_KIND, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    ines.go_to("2026-11-03");
    by_one_key(ines);
    ines.go_to("2026-11-10");
    let screen = ines.today().unwrap();
    let asked =
        |name| sets(&screen, name).iter().map(|set| set.asked_text.clone()).collect::<Vec<_>>();
    // (30 + 20) x 12 / 16 - 30 = 7.5 is under half of 20 reps; 20 reps are the top of the carry.
    for (name, wanted) in [
        ("Heavy squat", vec!["42.5 kg × 5", "47.5 kg × 5"]),
        ("Light squat", vec!["30 kg × 12"]),
        ("Dips", vec!["1.25 kg × 8", "1.25 kg × 8"]),
        ("Chin-ups", vec!["-10 kg × 6", "-10 kg × 6"]),
    ] {
        assert_eq!(asked(name), wanted, "{name}");
    }
    // Nothing says what can be lifted once: the same load, and the question.
    assert!(sets(&screen, "Press")[0].why.as_ref().unwrap().starts_with("How many more reps"));
    by_one_key(ines);
    // In the easy week everything is lighter, a set is left out, and nothing counts for what comes after.
    ines.go_to("2026-11-24");
    let easy = ines.today().unwrap();
    assert_eq!(sets(&easy, "Heavy squat").len(), 1);
    assert!(sets(&easy, "Heavy squat")[0].why.as_ref().unwrap().starts_with("easy week: "));
    // A set more than it asks for is no missed one, wherever it is read, and hides no progress.
    ines.tap(begin()).unwrap();
    ines.tap(set_of("Heavy squat", None, None, None)).unwrap();
    let screen = ines.tap(set_of("Heavy squat", Some(2), Some(Mass::kg(40)), Some(3))).unwrap();
    let more = &sets(&screen, "Heavy squat")[1];
    assert!(more.extra && more.done.as_ref().unwrap().made);
    assert_eq!(more.done.as_ref().unwrap().text, "40 kg × 3");
    ines.tap(finish_unrated()).unwrap();
    crew.exchange_all().unwrap();
    let page = crew.coach.holdfast.member("Ines".into(), "2026-11-25".parse().unwrap()).unwrap();
    let squats =
        page.lifts.iter().find(|lift| lift.scheme == "5,5" && lift.movement == "Squat").unwrap();
    let last = squats.points.last().unwrap();
    assert_eq!((last.made, last.last_reps), (true, None));
    let mut up = page.attention.iter().filter(|look| look.kind == AttentionKind::Progress);
    assert!(up.any(|look| look.text == "Squat: last set went from 45 kg to 47.5 kg"));
    let tables = crew.coach.holdfast.export().unwrap().tables;
    let table = tables.iter().find(|table| table.name == "sets").unwrap();
    let column = |name: &str| table.columns.iter().position(|column| column == name).unwrap();
    let row = table.rows.iter().rfind(|row| row.cells[column("piece")] == "Heavy squat").unwrap();
    let cells = ["easy_week", "set", "asked", "reps"].map(|name| &row.cells[column(name)]);
    assert_eq!(cells, ["true", "2", "0", "3"]);
}
