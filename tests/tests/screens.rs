//! The screens of one scripted session, which Kotlin and Swift must see as they are here.
//!
//! The kits under `android/kit` and `ios/Kit` play the same script and hold what they see against
//! the file this check keeps, `bindings/fixtures/screens.snap.json`. A step added here is added there.

use catalogue::Language;
use holdfast_core::care::Place;
use holdfast_core::clock::Act;
use holdfast_core::coach::{Answer, MaxGiven, NoteGiven, SetNamed, SetOfPiece};
use holdfast_core::journal::Role;
use holdfast_core::load::Decision;
use holdfast_core::plan::MeasuredWhen;
use holdfast_core::session::Tap;
use holdfast_core::{Mass, MassUnit, Start};
use holdfast_tests::pairing::pair;
use holdfast_tests::taps::{
    begin, clock, finish, finish_unrated, flag, held, kg, option, range, set, window,
};
use holdfast_tests::{Carrier, Device, SMALL_PLAN};
use serde::Serialize;
use serde_json::{Value, json};
use tempfile::TempDir;

/// Somebody's device. The kits draw the same chance: counted up from a first byte.
fn device(homes: &TempDir, role: Role, name: &str, unit: MassUnit, chance: u8) -> Device {
    let start = Start {
        role,
        name: name.into(),
        unit,
        chance: (0..80).map(|at| chance.wrapping_add(at)).collect(),
    };
    Device::started(homes.path().join(name), start).unwrap()
}

fn value(shown: impl Serialize) -> Value {
    serde_json::to_value(shown).unwrap()
}

/// Everything that is seen in the scripted session, in order.
fn story() -> Vec<Value> {
    let homes = TempDir::new().unwrap();
    let carrier = Carrier::new(homes.path().join("carrier"));
    let coach = device(&homes, Role::Coach, "Märta", MassUnit::Kg, 0);
    let zoe = device(&homes, Role::Athlete, "Zoë", MassUnit::Kg, 60);
    let jun = device(&homes, Role::Athlete, "Łucja 純", MassUnit::Lb, 120);
    let mut seen = Vec::new();

    let text = SMALL_PLAN.as_bytes().to_vec();
    let plan = coach.holdfast.publish("small-plan.toml".into(), text, coach.now());
    seen.push(value(plan.unwrap()));
    for (player, chance) in [(&zoe, 1), (&jun, 2)] {
        seen.extend(pair(&coach, player, chance).unwrap().map(value));
    }
    for player in [&coach, &zoe, &jun] {
        seen.push(value(player.exchange(&carrier).unwrap()));
        seen.push(value(player.holdfast.who().unwrap()));
    }

    zoe.go_to("2026-11-03");
    seen.push(value(zoe.today().unwrap()));
    seen.push(value(zoe.tap(begin()).unwrap()));
    seen.push(value(zoe.tap(kg(50)).unwrap()));
    seen.push(value(zoe.tap(option(Some("box-squat"))).unwrap()));
    seen.push(value(zoe.tap(option(None)).unwrap()));
    for bar in ["pound bar", "long bar"] {
        let (piece, bar) = ("Squat".into(), bar.into());
        seen.push(value(zoe.tap(Tap::TakeBar { piece, bar }).unwrap()));
    }
    seen.push(value(zoe.tap(set(Some(Mass::kg(60)), Some(6))).unwrap()));
    seen.push(value(zoe.tap(set(Some(Mass::kg(70)), Some(8))).unwrap()));
    for (words, private) in [("Griff rutschte", false), ("schlief schlecht", true)] {
        let words = words.into();
        seen.push(value(zoe.tap(Tap::Note { row: None, words, private }).unwrap()));
    }
    seen.push(value(zoe.tap(clock("Corners", Act::Begin)).unwrap()));
    zoe.pass(53_000);
    seen.push(value(zoe.tap(window(None, None, None)).unwrap()));
    zoe.pass(60_000);
    seen.push(value(zoe.tap(window(None, None, Some(4_000))).unwrap()));
    seen.push(value(zoe.tap(range(MeasuredWhen::Before, Some(1), 100)).unwrap()));
    seen.push(value(zoe.tap(clock("Calves", Act::Begin)).unwrap()));
    zoe.pass(135_000);
    seen.push(value(zoe.today().unwrap()));
    zoe.pass(60_000);
    seen.push(value(zoe.tap(held(&[], None)).unwrap()));
    seen.push(value(zoe.tap(range(MeasuredWhen::After, Some(1), 130)).unwrap()));
    seen.push(value(zoe.tap(flag(Place::Knee, 6, &[])).unwrap()));
    seen.push(value(zoe.tap(Tap::Undo).unwrap()));
    seen.push(value(zoe.tap(flag(Place::Knee, 4, &[])).unwrap()));
    seen.push(value(zoe.tap(finish(7, 60)).unwrap()));

    jun.go_to("2026-11-03");
    seen.push(value(jun.tap(begin()).unwrap()));
    for (pounds, reps) in [(95, 8), (115, 6), (135, 3)] {
        seen.push(value(jun.tap(set(Some(Mass::lb(pounds)), Some(reps))).unwrap()));
    }
    seen.push(value(jun.tap(finish_unrated()).unwrap()));

    let date = "2026-11-04".parse().unwrap();
    coach.go_to("2026-11-04");
    for player in [&zoe, &jun, &coach] {
        seen.push(value(player.exchange(&carrier).unwrap()));
    }
    seen.push(value(coach.holdfast.board(date).unwrap()));
    let page = coach.holdfast.member("łucja 純".into(), date).unwrap();
    let asked = &page.proposals[0];
    let answer = Answer {
        person: page.person,
        exercise: asked.exercise.clone(),
        track: asked.track.clone(),
        anyway: false,
        decision: Decision::Accept,
        loads: vec![],
        words: "Gut so – weiter!".into(),
    };
    seen.push(value(&page));
    coach.holdfast.answer(answer, coach.now()).unwrap();
    let page = coach.holdfast.member("Zoë".into(), date).unwrap();
    seen.push(value(&page));
    let note = NoteGiven {
        member: Some("Zoë".into()),
        on: Some("2026-11-03".parse().unwrap()),
        set: Some(SetOfPiece { piece: "Squat".into(), set: 3 }),
        session: None,
        words: Some("Kreide 純".into()),
        private: false,
    };
    seen.push(value(coach.holdfast.note(note, coach.now()).unwrap()));
    let flag = page.discomfort[0].flag;
    coach.holdfast.clear_flag(page.person, flag, coach.now()).unwrap();
    for player in [&coach, &zoe, &jun] {
        seen.push(value(player.exchange(&carrier).unwrap()));
    }
    zoe.go_to("2026-11-05");
    seen.push(value(zoe.today().unwrap()));
    jun.go_to("2026-11-04");
    let next = "2026-11-05".parse().unwrap();
    seen.push(value(jun.holdfast.preview(next, None, jun.now()).unwrap()));

    let listed = zoe.holdfast.sets(None, None, 1).unwrap();
    let last = listed.sessions[0].sets[2].lift;
    seen.push(value(&listed));
    let correction = zoe.holdfast.read_correction("80 x 5, 1 left".into()).unwrap();
    seen.push(value(zoe.holdfast.correct(last, correction, zoe.now()).unwrap()));
    let tested = MaxGiven {
        member: None,
        movement: "Back squat".into(),
        load: Some(Mass::kg(90)),
        anyway: false,
    };
    seen.push(value(zoe.holdfast.give_max(tested, zoe.now()).unwrap()));
    for player in [&zoe, &coach] {
        seen.push(value(player.exchange(&carrier).unwrap()));
    }
    let on = "2026-11-03".parse().unwrap();
    let named =
        SetNamed { member: Some("Zoë".into()), on, piece: "Squat".into(), set: 1, session: None };
    let first = coach.holdfast.find_set(named).unwrap();
    seen.push(value(&first));
    seen.push(value(coach.holdfast.set_aside(first.lift, true, coach.now()).unwrap()));
    seen.push(value(coach.holdfast.member("Zoë".into(), date).unwrap()));
    for player in [&coach, &zoe] {
        seen.push(value(player.exchange(&carrier).unwrap()));
    }
    seen.push(value(zoe.today().unwrap()));
    seen.push(value(coach.holdfast.export().unwrap()));
    seen
}

#[test]
fn screens_are_the_same_in_every_language() {
    let seen = story();
    let mut settings = insta::Settings::new();
    settings.set_snapshot_path("../../bindings/fixtures");
    settings.set_prepend_module_to_snapshot(false);
    let shown = serde_json::to_vec_pretty(&json!(seen)).unwrap();
    settings.bind(|| insta::assert_binary_snapshot!("screens.json", shown));
}

/// What stands in both: texts that are alike word for word.
fn alike(one: &Value, other: &Value, key: &str, found: &mut Vec<String>) {
    match (one, other) {
        (Value::Object(one), Value::Object(other)) => {
            assert_eq!(one.keys().collect::<Vec<_>>(), other.keys().collect::<Vec<_>>());
            // Lines of the journal and the names of columns are data.
            let shown =
                one.iter().filter(|(key, _)| !["journal", "columns"].contains(&key.as_str()));
            shown.for_each(|(key, value)| alike(value, &other[key], key, found));
        }
        (Value::Array(one), Value::Array(other)) => {
            assert_eq!(one.len(), other.len(), "{key}: {one:?} {other:?}");
            one.iter().zip(other).for_each(|(one, other)| alike(one, other, key, found));
        }
        (Value::String(one), Value::String(other)) if one == other => found.push(one.clone()),
        _ => {}
    }
}

/// What else was written by somebody of the crew.
const WRITTEN: &str = "Gut so – weiter! Łucja 純 Märta Zoë Griff rutschte schlief schlecht Kreide";

/// The same session in German: every sentence of it is another one, and only what the coach and the crew
/// wrote themselves stands there as it was written.
#[test]
fn a_session_in_german_holds_no_english() {
    let english = story();
    let german = catalogue::speaking(Language::De, story);
    let mut found = Vec::new();
    alike(&json!(english), &json!(german), "", &mut found);
    // An abbreviation's full stop and a sentence's never meet.
    let text = json!(german).to_string();
    let twice = text.split("..").filter(|before| before.ends_with(char::is_alphanumeric));
    let twice: Vec<&str> = twice.map(|before| before.rsplit('"').next().unwrap()).collect();
    assert!(twice.is_empty(), "{twice:?}");
    // Those that are compared in a pairing are the same in every language: two phones may speak two.
    let compared =
        |text: &str| text.split(' ').all(|word| holdfast_core::trust::WORDS.contains(&word));
    found.retain(|text| {
        let words = text.split(|letter: char| !letter.is_alphabetic());
        let known = |word: &str| SMALL_PLAN.contains(word) || WRITTEN.contains(word);
        let words: Vec<&str> = words.filter(|word| word.chars().count() > 1).collect();
        let own = compared(text);
        !own && text.contains(' ') && words.len() > 1 && !words.into_iter().all(known)
    });
    found.sort();
    found.dedup();
    assert!(found.is_empty(), "{found:#?}");
}
