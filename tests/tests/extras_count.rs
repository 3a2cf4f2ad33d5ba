//! What nobody planned counts: for days away, for strength, and as the athlete says it.

use holdfast_core::Mass;
use holdfast_core::coach::AttentionKind;
use holdfast_core::journal::Role;
use holdfast_core::session::{Correction, Tap};
use holdfast_tests::taps::{begin, finish, option, squat};
use holdfast_tests::views::load_texts;
use holdfast_tests::{Crew, Device, SMALL_PLAN, changed};

fn crew(names: &[&str]) -> Crew {
    Crew::start(&changed(SMALL_PLAN, "weeks = 2", "weeks = 8"), names).unwrap()
}

fn extra(movement: &str, load: Option<i64>, reps: Option<u32>) -> Tap {
    let (movement, load) = (movement.into(), load.map(Mass::kg));
    Tap::LogExtra { movement, set: None, load, reps, reserve: None }
}

const MADE: [(i64, u32); 3] = [(50, 8), (60, 6), (70, 6)];

/// Bell swings that nobody planned are days on which bell swings were done: no absence, and no track.
#[test]
fn it_counts_for_days_away_and_for_no_track() {
    let crew = crew(&["Ines", "Ana"]);
    let (ines, ana) = (&crew.athletes[0], &crew.athletes[1]);
    // Both do step-ups in place of squats on the 3rd; Ines also does them on her own on the 14th.
    for device in [ines, ana] {
        device.go_to("2026-11-03");
        device.tap(begin()).unwrap();
        device.tap(option(Some("box-squat"))).unwrap();
        for (kg, reps) in MADE {
            device.tap(squat(None, Some(kg), Some(reps), None)).unwrap();
        }
        device.tap(finish(7, 60)).unwrap();
    }
    ines.go_to("2026-11-14");
    ines.tap(begin()).unwrap();
    // A light set of the very same exercise, outside the day's own piece.
    ines.tap(extra("Squat to a box", Some(20), Some(5))).unwrap();
    ines.tap(finish(5, 30)).unwrap();
    let loads = [ines, ana].map(|device| {
        device.go_to("2026-11-27");
        device.tap(begin()).unwrap();
        load_texts(&device.tap(option(Some("box-squat"))).unwrap())
    });
    // 13 days since a set of it, beside 24: what was carried stays, and is not the 20 kg.
    assert_eq!(loads[0][0], "52.5 kg");
    assert_eq!(loads[1][0], "45 kg");
}

/// What was planned before somebody was in the crew was not planned for them.
#[test]
fn nobody_was_away_before_they_joined() {
    let crew = crew(&[]);
    crew.coach.go_to("2026-11-12");
    let eva = Device::start(crew.folder().join("eva"), "Eva", Role::Athlete, 90).unwrap();
    eva.go_to("2026-11-12");
    crew.join(&eva).unwrap();
    eva.exchange(&crew.carrier).unwrap();
    crew.coach.exchange(&crew.carrier).unwrap();
    let away = |date: &str| {
        let board = crew.coach.holdfast.board(date.parse().unwrap()).unwrap();
        let told = &board.rows[0].attention;
        let away = told.iter().find(|told| told.kind == AttentionKind::Away);
        away.map(|away| away.text.clone())
    };
    assert_eq!(away("2026-11-13"), None);
    let planned = "No session yet; 5 planned days missed";
    assert_eq!(away("2026-11-18").as_deref(), Some(planned));
}

/// What somebody can lift follows from what was done: whether it was planned changes nothing.
#[test]
fn strength_is_read_from_it_as_from_a_planned_set() {
    let crew = crew(&["Ines", "Ana"]);
    let (ines, ana) = (&crew.athletes[0], &crew.athletes[1]);
    for date in ["2026-11-03", "2026-11-05"] {
        [ines, ana].into_iter().for_each(|device| device.go_to(date));
        ines.tap(begin()).unwrap();
        ines.tap(Tap::LogExtra {
            movement: "Squat to a box".into(),
            set: None,
            load: Some(Mass::kg(60)),
            reps: Some(5),
            reserve: Some(1),
        })
        .unwrap();
        ana.tap(begin()).unwrap();
        ana.tap(option(Some("box-squat"))).unwrap();
        // The set of five.
        ana.tap(squat(Some(3), Some(60), Some(5), Some(1))).unwrap();
        for device in [ines, ana] {
            device.tap(finish(5, 30)).unwrap();
        }
    }
    crew.exchange_all().unwrap();
    let known = ["Ines", "Ana"].map(|name| {
        let page = crew.coach.holdfast.member(name.into(), "2026-11-06".parse().unwrap()).unwrap();
        page.strengths.into_iter().map(|one| (one.exercise, one.text)).collect::<Vec<_>>()
    });
    assert_eq!(known[0].len(), 1);
    assert_eq!(known[0], known[1]);
}

/// A movement that the plan does not know weighs what the athlete says, corrected on a later day as well; and as
/// many reps of it as they say are no slip.
#[test]
fn what_the_plan_does_not_know_is_the_athletes_word() {
    let crew = crew(&["Ines"]);
    let ines = &crew.athletes[0];
    ines.go_to("2026-11-03");
    ines.tap(begin()).unwrap();
    let screen = ines.tap(extra("Pull-up with a band", Some(-20), Some(50))).unwrap();
    assert_eq!(screen.doubt, None);
    ines.tap(finish(5, 30)).unwrap();
    ines.go_to("2026-11-05");
    let sets = ines.holdfast.sets(None, None, 3).unwrap();
    let lift = sets.sessions[0].sets[0].lift;
    let done = Correction::Done { load: Some(Mass::kg(-15)), reps: Some(45), reserve: None };
    let set = ines.holdfast.correct(lift, done, ines.now()).unwrap().unwrap();
    assert!(set.text.contains("45") && !set.text.contains("slip"), "{}", set.text);
}
