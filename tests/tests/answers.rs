//! What a coach answers, and what they are told of it: by the core, and by the program as it is typed.

use holdfast_core::Mass;
use holdfast_core::care::Place;
use holdfast_core::coach::{Answer, MemberScreen};
use holdfast_core::load::Decision;
use holdfast_tests::taps::{finish, flag};
use holdfast_tests::train::three_squats;
use holdfast_tests::views::{load_texts, strength};
use holdfast_tests::{Crew, Desk, SMALL_PLAN, changed, this_week};

/// The small plan's day with a light squat of its own behind the squat.
fn two_squats(plan: &str) -> String {
    let light = "  [[day.piece]]\n  kind = \"strength\"\n  name = \"Squat light\"\n  movement = \"back-squat\"\n  \
                 reps = [5, 5]\n  load = { rule = \"step\", step = \"2.5 kg\" }\n\n  [[day.piece]]\n  kind = \"interval\"";
    changed(plan, "  [[day.piece]]\n  kind = \"interval\"", light)
}

/// A coach, and Ana who trained both squats today; the carrier's folder.
fn trained() -> (Desk, String) {
    let desk = Desk::new();
    desk.write("plan.toml", two_squats(&this_week()));
    let (plan, carrier) = (desk.path("plan.toml"), desk.path("carrier"));
    desk.fine("coach", &["start", "--as", "coach", "--name", "Maren"], "");
    desk.fine("coach", &["publish", &plan, "--carrier", &carrier], "");
    desk.fine("ana", &["start", "--as", "athlete", "--name", "Ana"], "");
    desk.pair("coach", "ana");
    desk.fine("ana", &["exchange", "--carrier", &carrier], "");
    let typed =
        "65 x 8, 2 left\n\n65 x 6, 2 left\n\n65 x 5\n\n45 x 5, 2 left\n\n45 x 5, 2 left\nquit\n";
    let said = desk.fine("ana", &["session"], typed);
    assert!(said.contains("Squat light set 2, 45 kg × 5, 2 left"), "{said}");
    desk.fine("ana", &["exchange", "--carrier", &carrier], "");
    desk.fine("coach", &["exchange", "--carrier", &carrier], "");
    (desk, carrier)
}

#[test]
fn two_pieces_of_one_movement_are_told_apart() {
    let (desk, _) = trained();
    for page in [&["board"] as &[&str], &["member", "Ana"]] {
        let said = desk.fine("coach", page, "");
        assert!(said.contains("Back squat (Squat): 65 / 65 / 65 kg ->"), "{said}");
        assert!(said.contains("Back squat (Squat light): 45 / 45 kg ->"), "{said}");
    }
    let refused = desk.wrong("coach", &["answer", "Ana", "Back squat", "refuse"]);
    let asked = "Ana has more than one proposal for Back squat: \"Squat\" and \"Squat light\". Name the piece. \
                 Add --piece and one of these names.";
    assert!(refused.contains(asked), "{refused}");
    for which in [
        &["answer", "ana", "back squat", "refuse", "--piece", "SQUAT LIGHT"] as &[&str],
        &["answer", "Ana", "squat light", "refuse"],
    ] {
        let said = desk.fine("coach", which, "");
        assert!(said.contains("Back squat (Squat light): 45 / 45 kg -> 45 / 45 kg"), "{said}");
    }
    let said = desk.fine("coach", &["board"], "");
    assert!(said.contains("Back squat (Squat): 65 / 65 / 65 kg ->"), "{said}");
    assert!(said.contains("Back squat (Squat light) (refused): 45 / 45 kg"), "{said}");
    let none = desk.wrong("coach", &["answer", "Ana", "Bench", "refuse"]);
    assert!(
        none.contains("proposals for Back squat (Squat) and Back squat (Squat light)."),
        "{none}"
    );
}

/// Pain holds an answer: the coach is told at once and on every page, and the athlete beside the set.
#[test]
fn an_answer_that_pain_holds_is_said() {
    let crew = Crew::start(SMALL_PLAN, &["Bram"]).unwrap();
    let (bram, coach) = (&crew.athletes[0], &crew.coach);
    three_squats(bram, "2026-11-03");
    bram.tap(flag(Place::Knee, 5, &[])).unwrap();
    bram.tap(finish(5, 30)).unwrap();
    crew.exchange_all().unwrap();
    coach.go_to("2026-11-04");
    let page = || coach.holdfast.member("Bram".into(), "2026-11-04".parse().unwrap()).unwrap();
    let clear = |open: &MemberScreen| {
        coach.holdfast.clear_flag(open.person, open.discomfort[0].flag, coach.now()).unwrap();
    };
    let cleared = || {
        let tables = coach.holdfast.export().unwrap().tables;
        let flags = tables.into_iter().find(|table| table.name == "discomfort").unwrap();
        let at = flags.columns.iter().position(|column| column == "cleared").unwrap();
        flags.rows[0].cells[at].clone()
    };
    assert_eq!(cleared(), "false");
    clear(&page());
    assert_eq!(cleared(), "true");
    let asked = page().proposals.remove(0);
    assert_eq!((asked.next_text.as_str(), asked.held), ("45 / 52.5 / 62.5 kg", None));
    let answer = Answer {
        person: page().person,
        exercise: asked.exercise,
        track: asked.track,
        anyway: false,
        decision: Decision::Change,
        loads: vec![Mass::kg(70)],
        words: "Deep first.".into(),
    };
    coach.holdfast.answer(answer, coach.now()).unwrap();
    let held = "The answer stands until this is trained again: 52.5 / 60 / 70 kg. Pain holds it for one session, \
                the first one after it; that session uses the answer up.";
    let told = page().proposals.remove(0);
    assert_eq!(
        (told.next_text.as_str(), told.held.as_deref()),
        ("45 / 52.5 / 62.5 kg", Some(held))
    );
    assert_eq!(told.ruled, Some(Decision::Change));
    assert_eq!(
        coach.holdfast.board("2026-11-04".parse().unwrap()).unwrap().rows[0].proposals,
        [told]
    );
    crew.exchange_all().unwrap();
    bram.go_to("2026-11-05");
    let screen = bram.today().unwrap();
    assert_eq!(load_texts(&screen), ["45 kg", "52.5 kg", "62.5 kg"]);
    let others = strength(&screen).sets[2].others.clone();
    let also = "also: the coach's answer of 70 kg stands and is held: \"Deep first.\"";
    assert_eq!(others.as_deref(), Some(also));
}

/// The same as it is typed, with a flag that is still open.
#[test]
fn an_answer_that_pain_holds_is_said_where_it_is_typed() {
    let (desk, carrier) = trained();
    desk.fine("coach", &["answer", "Ana", "Squat light", "change", "--load", "47.5"], "");
    desk.fine("ana", &["flag", "knee", "2", "--movement", "Back squat"], "");
    desk.fine("ana", &["exchange", "--carrier", &carrier], "");
    desk.fine("coach", &["exchange", "--carrier", &carrier], "");
    let held = "The answer stands until this is trained again: 47.5 / 47.5 kg. Pain holds it until the flag is cleared.";
    for page in [&["board"] as &[&str], &["member", "Ana"]] {
        let said = desk.fine("coach", page, "");
        assert!(
            said.contains("Back squat (Squat light) (changed): 45 / 45 kg -> 45 / 45 kg"),
            "{said}"
        );
        assert_eq!(said.matches(held).count(), 1, "{said}");
    }
    let html = desk.path("out.html");
    desk.fine("coach", &["report", &html], "");
    assert!(std::fs::read_to_string(html).unwrap().contains("Pain holds it until the flag"));
}
