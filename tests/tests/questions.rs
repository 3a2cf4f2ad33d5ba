//! Questions as screens: whatever is touched, the key says what is missing or saves what it says.

use catalogue::{Language, speaking};
use holdfast_core::care::Sign;
use holdfast_core::plan::MeasuredWhen;
use holdfast_core::session::{
    Answers, Ask, Choice, KeyKind, QuestionField, QuestionScreen, Row, SessionState, Tap,
};
use holdfast_core::{Mass, MassUnit};
use holdfast_tests::taps::{begin, begin_day, finish, kg};
use holdfast_tests::train::squats;
use holdfast_tests::{Crew, Device, SMALL_PLAN, seed_or};
use rand::RngExt;
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::SeedableRng;

const EVERY_KIND: &str = include_str!("../../bindings/fixtures/every-kind.toml");

fn ask(device: &Device, ask: &Ask, answers: Option<Answers>) -> QuestionScreen {
    device.holdfast.question(ask.clone(), answers, device.now()).unwrap()
}

/// Everything on a question that can be touched.
fn touches(question: &QuestionScreen) -> Vec<Choice> {
    let of = |field: &QuestionField| match field {
        QuestionField::Stepper { less, more, typed, .. } => {
            let typed = typed.iter().flat_map(|typed| {
                ["82.5", "0", "heavy"].map(|text| {
                    let then = Answers { typed: Some(text.into()), ..typed.then.clone() };
                    Choice { words: typed.words.clone(), ..plain(then) }
                })
            });
            less.iter().chain(more).cloned().chain(typed).collect()
        }
        QuestionField::Choices { choices, .. } => choices.clone(),
        // What is typed is written into what is answered so far.
        QuestionField::Words { then, label } => {
            let words = Some("grip slipped".to_owned());
            let then = Answers { words, ..then.clone() };
            vec![Choice { words: label.clone(), ..plain(then) }]
        }
    };
    question.fields.iter().flat_map(of).collect()
}

fn plain(then: Answers) -> Choice {
    Choice { words: String::new(), more: Vec::new(), chosen: false, care: false, then }
}

fn set(set: u32, whole: bool) -> Ask {
    Ask::Row { row: Row::Set { piece: "Squat".into(), set }, whole }
}

/// Every question that a screen can lead to.
fn asks(device: &Device) -> Vec<Ask> {
    let screen = device.today().unwrap();
    let mut asks = vec![Ask::Day, Ask::Extra, Ask::Note { row: None }, Ask::Hurts { row: None }];
    for row in &screen.rows {
        asks.extend([false, true].map(|whole| Ask::Row { row: row.clone(), whole }));
        asks.push(Ask::Note { row: Some(row.clone()) });
        asks.push(Ask::Hurts { row: Some(row.clone()) });
    }
    for piece in &screen.pieces {
        let piece = piece.name.clone();
        asks.extend([
            Ask::Option { piece: piece.clone() },
            Ask::Station { piece: piece.clone() },
            Ask::Clear { piece: piece.clone() },
            Ask::Bar { piece },
        ]);
    }
    asks
}

/// Seeded: whoever touches anything in any question comes to a key that waits for something or does what it says, and
/// that is accepted.
#[test]
fn any_touches_lead_to_a_key_that_is_accepted() {
    let seed = seed_or(20_261_128);
    let (mut saved, mut asked) = (0, 0);
    for seed in seed..seed + 12 {
        let mut chance = ChaCha8Rng::seed_from_u64(seed);
        let plan = if seed % 2 == 0 { EVERY_KIND } else { SMALL_PLAN };
        let crew = Crew::start(plan, &["Ines"]).unwrap();
        let ines = &crew.athletes[0];
        ines.go_to("2026-11-03");
        let day = ines.today().unwrap().days[0].clone();
        ines.tap(begin_day(&day)).unwrap();
        for _ in 0..60 {
            if ines.today().unwrap().state != SessionState::Running {
                break;
            }
            let asks = asks(ines);
            let ask_for = &asks[chance.random_range(0..asks.len())];
            let (mut answers, mut question) = (None, None);
            for _ in 0..chance.random_range(0..12) {
                let asked = ines.holdfast.question(ask_for.clone(), answers.clone(), ines.now());
                // Nothing of the kind is there.
                let Ok(asked) = asked else { break };
                let touches = touches(&asked);
                let touched = touches.get(chance.random_range(0..touches.len().max(1)));
                answers = Some(touched.map(|choice| choice.then.clone()).unwrap_or_default());
                question = Some(ask(ines, ask_for, answers.clone()));
            }
            let Some(question) = question else { continue };
            asked += 1;
            let key = &question.key;
            assert!(!key.words.is_empty() && !question.title.is_empty(), "seed {seed}");
            assert_eq!(key.kind == KeyKind::Waits, key.tap.is_none(), "seed {seed}: {key:?}");
            let Some(tap) = key.tap.clone() else { continue };
            // A session ends once; where it hurts is between sessions for nobody who trains.
            if matches!(tap, Tap::Begin { .. }) {
                continue;
            }
            ines.pass(5_000);
            let done = ines.tap(tap.clone());
            let done = done.unwrap_or_else(|error| panic!("seed {seed}: {tap:?}: {error}"));
            saved += u32::from(done.saved.is_some());
        }
    }
    println!("{asked} questions, {saved} answers saved");
    assert!(saved > 150 && asked > 200, "{asked} {saved}");
}

/// Loads go through what the room can build, up and down, and the key says what it saves.
#[test]
fn loads_step_through_what_the_room_can_build() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-03", &[(50, 8), (60, 6), (70, 6)]);
    ines.go_to("2026-11-10");
    ines.tap(begin()).unwrap();
    let question = ask(ines, &set(1, true), None);
    let stepper = |question: &QuestionScreen| match &question.fields[0] {
        QuestionField::Stepper { value, unit, less, more, .. } => {
            assert_eq!(unit.as_deref(), Some("kg"));
            (value.clone().unwrap(), less.clone(), more.clone())
        }
        other => panic!("{other:?}"),
    };
    let (proposed, ..) = stepper(&question);
    let mut heavier = vec![proposed.clone()];
    let mut last = question;
    for _ in 0..4 {
        let (.., more) = stepper(&last);
        let more = more.unwrap();
        last = ask(ines, &set(1, true), Some(more.then.clone()));
        heavier.push(stepper(&last).0);
        assert_eq!(more.words, stepper(&last).0);
    }
    let screen = ines.today().unwrap();
    let holdfast_core::session::PieceKindView::Strength { view } = &screen.pieces[0].kind else {
        panic!("no sets")
    };
    let load = view.sets[0].load.as_ref().unwrap();
    assert_eq!(heavier[0], load.mass.number(screen.unit));
    assert_eq!(heavier[1], load.heavier.unwrap().number(screen.unit));
    // Back down they are the same, and the proposed one is named.
    for step in heavier.iter().rev().skip(1) {
        let (_, less, _) = stepper(&last);
        let less = less.unwrap();
        let named = if *step == proposed { format!("{step} proposed") } else { step.clone() };
        assert_eq!(less.words, named);
        last = ask(ines, &set(1, true), Some(less.then));
    }
    let (_, less, _) = stepper(&last);
    last = ask(ines, &set(1, true), Some(less.unwrap().then));
    let key = last.key;
    let Some(Tap::LogSet { load: Some(load), reps: Some(8), .. }) = key.tap else {
        panic!("{key:?}")
    };
    assert_eq!(key.words, format!("Save {} kg × 8", load.number(screen.unit)));
    assert_eq!(key.more.as_deref(), Some("Saves set 1 and starts the rest."));
    assert!(load < view.sets[0].load.as_ref().unwrap().mass);
}

/// What has to be said is waited for, one thing after the other.
#[test]
fn an_open_set_waits_for_its_reps_and_a_first_time_for_load_and_reserve() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    ines.go_to("2026-11-03");
    ines.tap(begin()).unwrap();
    let first = ask(ines, &set(1, false), None);
    assert_eq!((first.key.kind, first.key.words.as_str()), (KeyKind::Waits, "Choose the load"));
    let QuestionField::Stepper { value: None, less: None, more: Some(lightest), .. } =
        &first.fields[0]
    else {
        panic!("{:?}", first.fields[0])
    };
    let chosen = ask(ines, &set(1, false), Some(lightest.then.clone()));
    assert_eq!(chosen.key.words, "Choose the reps left");
    let left = touches(&chosen).into_iter().find(|choice| choice.words == "5 or more").unwrap();
    let done = ask(ines, &set(1, false), Some(left.then));
    let Some(Tap::LogSet { load: Some(_), reserve: Some(5), .. }) = done.key.tap else {
        panic!("{:?}", done.key)
    };
    for load in [50, 60, 70] {
        ines.tap(kg(load)).unwrap();
    }
    ines.tap(finish(7, 60)).unwrap();
    // From the second time on the last set is open.
    ines.go_to("2026-11-10");
    ines.tap(begin()).unwrap();
    let open = ask(ines, &set(3, false), None);
    assert_eq!(open.key.words, "Choose the reps");
    let keys: Vec<String> = touches(&open).into_iter().map(|choice| choice.words).collect();
    assert!(keys.contains(&"12".to_owned()) && keys.contains(&"13 or more".to_owned()), "{keys:?}");
}

/// A sign is ticked on a screen of its own, and the key then says to get care.
#[test]
fn a_sign_changes_what_the_key_says() {
    let crew = Crew::running().unwrap();
    let ines = &crew.athletes[0];
    let hurts = Ask::Hurts { row: ines.today().unwrap().here.row };
    let touch = |answers: Option<Answers>, words: &str| {
        let question = ask(ines, &hurts, answers);
        let found = touches(&question).into_iter().find(|choice| choice.words == words);
        Some(found.unwrap_or_else(|| panic!("{words}: {question:?}")).then)
    };
    let answers = touch(touch(None, "knee"), "4");
    let question = ask(ines, &hurts, answers.clone());
    assert_eq!(question.key.words, "Save: knee, 4 of 10");
    let cared: Vec<String> = touches(&question)
        .into_iter()
        .filter(|choice| choice.care && choice.words.parse::<u32>().is_ok())
        .map(|choice| choice.words)
        .collect();
    assert_eq!(cared, ["4", "5", "6", "7", "8", "9", "10"]);
    let signs = touch(answers, "Numbness, weakness, dizziness or chest pain?");
    let ticked = touch(signs, "chest pain");
    let question = ask(ines, &hurts, ticked.clone());
    assert_eq!(question.key.more.as_deref(), Some("Stop now and get emergency care."));
    let Some(Tap::Flag { signs, .. }) = &question.key.tap else { panic!("{:?}", question.key) };
    assert_eq!(*signs, [Sign::ChestPain]);
    // Saved, it can be cleared: by the question for that, one flag at a time.
    let answers = touch(touch(None, "hip"), "2");
    ines.tap(ask(ines, &hurts, answers).key.tap.unwrap()).unwrap();
    let clear = Ask::Clear { piece: "Squat".into() };
    let question = ask(ines, &clear, None);
    assert_eq!(question.key.kind, KeyKind::Waits);
    let flag = touches(&question).remove(0);
    assert!(flag.words.starts_with("hip 2/10"), "{}", flag.words);
    ines.tap(ask(ines, &clear, Some(flag.then)).key.tap.unwrap()).unwrap();
    assert!(ines.holdfast.question(clear, None, ines.now()).is_err(), "nothing is left to clear");
    // Ticked once more it is taken away.
    let question = ask(ines, &hurts, touch(ticked, "chest pain"));
    let Some(Tap::Flag { signs, .. }) = &question.key.tap else { panic!("{:?}", question.key) };
    assert!(signs.is_empty());
}

/// In both languages; what is not there is not asked.
#[test]
fn questions_are_asked_in_both_languages_and_only_where_they_are_there() {
    let crew = Crew::start(EVERY_KIND, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    let measure = Row::Measure { piece: "Nowhere".into(), when: MeasuredWhen::Before };
    let nowhere = Ask::Row { row: measure, whole: false };
    assert!(ines.holdfast.question(nowhere, None, ines.now()).is_err());
    ines.go_to("2026-11-03");
    let day = ines.today().unwrap().days[0].clone();
    ines.tap(begin_day(&day)).unwrap();
    for ask_for in asks(ines) {
        let said = |language| {
            speaking(language, || ines.holdfast.question(ask_for.clone(), None, ines.now()).ok())
        };
        let [en, de] = [Language::En, Language::De].map(said);
        assert_eq!(en.is_some(), de.is_some(), "{ask_for:?}");
        if let (Some(en), Some(de)) = (en, de) {
            assert_ne!(en.key.words, "");
            assert!(en.title != de.title || en.about == Some(en.title.clone()), "{en:?}");
        }
    }
}

/// What is typed for a load is the load, in the reader's unit and however a decimal is written; what is none is never saved, and
/// what was proposed not in its place.
#[test]
fn a_load_can_be_typed() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-03", &[(50, 8), (60, 6), (70, 6)]);
    ines.go_to("2026-11-10");
    ines.tap(begin()).unwrap();
    let extra = Answers { words: Some("Sled".into()), reps: Some(5), ..Answers::default() };
    for (question, answers) in [(set(1, true), Answers::default()), (Ask::Extra, extra)] {
        let asked = ask(ines, &question, Some(answers));
        let typed = asked.fields.iter().find_map(|field| match field {
            QuestionField::Stepper { typed, .. } => typed.clone(),
            _ => None,
        });
        let typed = typed.unwrap().then;
        let key = |text: &str| {
            let answers = Answers { typed: Some(text.into()), ..typed.clone() };
            ask(ines, &question, Some(answers)).key
        };
        for (text, thousandths) in [("42,5", 42_500), (" 42.5 ", 42_500), ("45", 45_000)] {
            let load = match key(text).tap {
                Some(Tap::LogSet { load, .. } | Tap::LogExtra { load, .. }) => load,
                other => panic!("{other:?}"),
            };
            assert_eq!(load, Some(Mass::thousandths(thousandths, MassUnit::Kg)), "{text}");
        }
        for text in ["", "0", "-5", "heavy", "4.5.5", "99999"] {
            let key = key(text);
            assert_eq!((key.kind, key.tap), (KeyKind::Waits, None), "{text:?}");
            assert!(key.words.starts_with("Type a load, such as"), "{}", key.words);
        }
    }
}

/// A reading is typed to a tenth, in either way to write it; what no tape shows is never saved. What was read on an earlier
/// day stands beside, and steps begin there.
#[test]
fn a_reading_can_be_typed_beside_the_last_one() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    let row = Row::Measure { piece: "Calves".into(), when: MeasuredWhen::Before };
    let measure = Ask::Row { row, whole: false };
    ines.go_to("2026-11-03");
    ines.tap(begin()).unwrap();
    let labels = |question: &QuestionScreen| -> Vec<String> {
        let label = |field: &QuestionField| match field {
            QuestionField::Stepper { label, .. } => label.clone(),
            other => panic!("{other:?}"),
        };
        question.fields.iter().map(label).collect()
    };
    let asked = ask(ines, &measure, None);
    assert_eq!(labels(&asked), ["left", "right"]);
    let typed = |question: &QuestionScreen, side: usize, text: &str| {
        let QuestionField::Stepper { typed: Some(typed), .. } = &question.fields[side] else {
            panic!("{question:?}")
        };
        let answers = Answers { typed: Some(text.into()), ..typed.then.clone() };
        ask(ines, &measure, Some(answers))
    };
    for text in ["", "31", "10.55", "-1", "a", "1e1", "+9"] {
        let key = typed(&asked, 0, text).key;
        assert_eq!((key.kind, key.tap), (KeyKind::Waits, None), "{text:?}");
        assert_eq!(key.words, "Type the reading: 0.0 cm to 30.0 cm");
    }
    let left = typed(&asked, 0, "10.3");
    assert_eq!(left.key.words, "Choose the reading", "the right is still to come");
    let both = typed(&left, 1, "9,6");
    assert_eq!(both.key.words, "Save 10.3 cm and 9.6 cm");
    ines.tap(both.key.tap.unwrap()).unwrap();
    ines.tap(finish(5, 60)).unwrap();
    ines.go_to("2026-11-04");
    ines.tap(begin()).unwrap();
    let next = ask(ines, &measure, None);
    assert_eq!(labels(&next), ["left, last 10.3 cm", "right, last 9.6 cm"]);
    let QuestionField::Stepper { more: Some(more), .. } = &next.fields[0] else { panic!() };
    assert_eq!(more.words, "10.3 cm", "the steps begin there");
    // What is read today is beside nothing: the last is of another day.
    let both = typed(&typed(&next, 0, "12"), 1, "11");
    ines.tap(both.key.tap.unwrap()).unwrap();
    let row = Row::Measure { piece: "Calves".into(), when: MeasuredWhen::After };
    let after = ask(ines, &Ask::Row { row, whole: false }, None);
    assert_eq!(labels(&after), ["left, last 10.3 cm", "right, last 9.6 cm"]);
}

/// What nobody planned may have had no load; then that is said, and a load that was forgotten is not taken for it.
#[test]
fn extra_work_waits_for_a_load_or_for_none() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    ines.go_to("2026-11-03");
    ines.tap(begin()).unwrap();
    let answers = Answers { words: Some("Sled".into()), reps: Some(5), ..Answers::default() };
    let asked = ask(ines, &Ask::Extra, Some(answers));
    assert_eq!((asked.key.words.as_str(), asked.key.tap), ("Choose the load, or none", None));
    let stepper = asked.fields.iter().find_map(|field| match field {
        QuestionField::Stepper { less, more, .. } => Some((less.clone(), more.clone())),
        _ => None,
    });
    let (none, some) = stepper.unwrap();
    let (none, some) = (none.unwrap(), some.unwrap());
    assert_eq!(none.words, "none");
    let without = ask(ines, &Ask::Extra, Some(none.then));
    assert!(matches!(without.key.tap, Some(Tap::LogExtra { load: None, .. })), "{without:?}");
    let shown = without.fields.iter().any(|field| {
        matches!(field, QuestionField::Stepper { value: Some(value), unit: None, .. } if value == "none")
    });
    assert!(shown, "{without:?}");
    let with = ask(ines, &Ask::Extra, Some(some.then));
    assert!(matches!(with.key.tap, Some(Tap::LogExtra { load: Some(_), .. })));
}
