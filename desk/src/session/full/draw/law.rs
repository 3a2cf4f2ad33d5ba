//! The law of the screen, at every size, in every state and in every language: whenever a key saves, what
//! it saves is in sight, and so are the words of the key; and whoever hurts reads what to do.

use catalogue::{Language, speaking, spoken};
use holdfast_core::care::{Place, Sign};
use holdfast_core::session::{KeyKind, Notice, NoticeKind, PieceKindView, Row, Tap};
use holdfast_tests::{DEMO_PLAN, SMALL_PLAN, changed};
use ratatui::crossterm::event::KeyCode;

use super::tests::{read, with_change};
use super::{BESIDE, LEAST};
use crate::say;
use crate::session::full::model::Mode;
use crate::session::full::tests::Played;

const SIZES: [(u16, u16); 9] =
    [(80, 24), (60, 20), (100, 30), (40, 24), (59, 19), (160, 50), (72, 15), (40, 16), LEAST];

/// What can be read: the whole width, and the part beside the day's list.
fn readable(ana: &Played, (columns, rows): (u16, u16)) -> [String; 2] {
    let drawn = ana.drawn(columns, rows);
    let left = match columns {
        ..BESIDE => 0,
        BESIDE..100 => 26,
        _ => 33,
    };
    let right: String =
        drawn.lines().map(|line| line.chars().skip(left).collect::<String>() + "\n").collect();
    [read(&drawn), read(&right)]
}

/// What the row at hand asks for, where that is something to lift or to do in a window.
fn asked(ana: &Played) -> Option<String> {
    match (ana.model.row()?, &ana.model.piece()?.kind) {
        (Row::Set { set, .. }, PieceKindView::Strength { view }) => {
            let set = view.sets.iter().find(|shown| shown.set == *set)?;
            // With much pain nothing is lifted.
            let lifts = ana.model.screen.here.key.kind != KeyKind::Care;
            (set.done.is_none() && lifts).then(|| set.asked_text.clone())
        }
        (Row::Window { window, .. }, PieceKindView::Interval { view }) => {
            Some(view.windows.iter().find(|shown| shown.window == *window)?.asked_text.clone())
        }
        _ => None,
    }
}

/// All that must be in sight.
fn wanted(ana: &Played) -> Vec<String> {
    let mut wanted = Vec::new();
    match &ana.model.mode {
        Mode::Day => {
            wanted.push(ana.model.screen.here.key.words.clone());
            wanted.extend(asked(ana));
        }
        Mode::Typing(typing) => {
            wanted.extend([typing.ask.clone(), format!("> {}_", typing.text)]);
            wanted.extend(typing.wrong.clone());
            wanted.extend(asked(ana));
        }
        Mode::Picking(picker) => {
            wanted.extend([picker.ask.clone(), picker.line(picker.at)]);
        }
        Mode::Help(_) | Mode::Whole(_) => {}
    }
    if let (Mode::Day | Mode::Typing(_), Some(piece)) = (&ana.model.mode, ana.model.piece())
        && let Some(flag) = piece.flags.first()
    {
        wanted.extend(flag.advice.lines.iter().take(flag.advice.always as usize).cloned());
    }
    wanted
}

fn holds(name: &str, ana: &Played) {
    for size in SIZES {
        let seen = readable(ana, size);
        for wanted in wanted(ana) {
            let wanted = read(&wanted);
            assert!(
                seen.iter().any(|seen| seen.contains(&wanted)),
                "{}: {name} at {size:?}: {wanted:?} is cut in\n{}",
                spoken(),
                ana.drawn(size.0, size.1)
            );
        }
    }
}

fn in_every_language(law: impl Fn()) {
    Language::ALL.into_iter().for_each(|language| speaking(language, &law));
}

fn keys(ana: &mut Played, keys: &str) {
    keys.chars().for_each(|key| ana.key(KeyCode::Char(key)));
}

fn flag(ana: &mut Played, place: Place, severity: u32, signs: Vec<Sign>) {
    let piece = ana.model.row().and_then(Row::piece).unwrap().to_owned();
    let movement = ana.model.screen.here.movement.clone();
    let done = ana.device().tap(Tap::Flag { piece, movement, place, severity, signs });
    ana.model.refresh(done);
}

/// An athlete on a second day, who knows their loads, at the first set.
fn known(mut ana: Played, load: &str) -> Played {
    for set in 1..=3 {
        ana.types(&format!("set {set} {load} x 8, 2 left"));
    }
    ana.types("finish 6");
    ana.device().go_to("2026-11-04");
    let screen = ana.device().tap(Tap::Begin { day: Some("Any evening".into()) });
    ana.model.refresh(screen);
    ana
}

const LONG: &str = "Back squat, heels on thin plates, with a pause at the bottom";

fn long_names() -> Played {
    let plan = changed(SMALL_PLAN, "name = \"Back squat\"", &format!("name = \"{LONG}\""));
    let plan = changed(
        &plan,
        "name = \"Bell swing\"",
        "name = \"Bell swing with both hands, up to the eyes and no higher\"",
    );
    Played::of(&plan, "Any evening")
}

/// A session in each of the states of a set.
fn of_a_set(of: &str, ana: &mut dyn FnMut() -> Played) {
    let fresh = ana();
    assert!(!fresh.model.screen.here.key.words.is_empty());
    holds(&format!("{of}: fresh"), &fresh);
    for (place, severity, signs) in [
        (Place::LowBack, 2, vec![]),
        (Place::Muscle, 3, vec![]),
        (Place::Knee, 2, vec![]),
        (Place::LowBack, 5, vec![]),
        (Place::UpperBack, 3, vec![Sign::SaddleNumbness]),
    ] {
        let mut ana = ana();
        let name = format!("{of}: {place:?} {severity} {signs:?}");
        flag(&mut ana, place, severity, signs);
        holds(&name, &ana);
        keys(&mut ana, "6");
        holds(&format!("{name}, typing"), &ana);
        ana.key(KeyCode::Esc);
        let mark = |kind, text: &str| Notice { kind, text: text.into() };
        ana.model.screen.notices.extend([
            mark(
                NoticeKind::Warning,
                "two of your devices disagree about 1 entry; the later one is shown",
            ),
            mark(
                NoticeKind::Info,
                "Calf stretch at the wall is held 2 min before Squat: hold it after",
            ),
        ]);
        ana.model.screen.doubt = Some("far from the 60 kg proposed".into());
        holds(&format!("{name}, notices"), &ana);
    }
    let mut slip = ana();
    slip.types("55 x 8, 2 left");
    slip.types("99 x 6");
    holds(&format!("{of}: a slip"), &slip);
    let mut resting = ana();
    resting.types("55 x 8, 2 left");
    for (off, on) in [
        (None, None),
        (None, Some("5 kg")),
        (Some("2.5 kg"), Some("20 + 5 kg")),
        (Some("45 + 10 + 5 + 2.5 lb"), Some("20 kg + 45 lb + 1.25 kg")),
    ] {
        for (name, ms) in [("rest", 1_000), ("rest over", 130_000)] {
            resting.pass(ms);
            with_change(&mut resting, off, on);
            holds(&format!("{of}: {name}, {off:?} {on:?}"), &resting);
        }
        resting.types("55 x 8, 2 left");
        keys(&mut resting, "u");
    }
    flag(&mut resting, Place::LowBack, 2, vec![]);
    holds(&format!("{of}: rest with a flag"), &resting);
    with_change(&mut resting, Some("2.5 kg"), Some("20 + 5 kg"));
    holds(&format!("{of}: rest with a flag and a change"), &resting);
    resting.key(KeyCode::Up);
    holds(&format!("{of}: done"), &resting);
    resting.key(KeyCode::Enter);
    holds(&format!("{of}: correcting"), &resting);
    resting.key(KeyCode::Esc);
    resting.key(KeyCode::Esc);
    resting.types("55 x 6, 2 left");
    resting.pass(600_000);
    holds(&format!("{of}: open set"), &resting);
    resting.key(KeyCode::Enter);
    holds(&format!("{of}: open set, reps asked"), &resting);
}

#[test]
fn a_first_time() {
    in_every_language(|| of_a_set("first time", &mut Played::small));
}

#[test]
fn a_set_with_a_warm_up() {
    in_every_language(|| of_a_set("known", &mut || known(Played::small(), "60")));
}

#[test]
fn loads_in_two_units() {
    // A room without pounds.
    let pounds = |line: &&str| line.contains(" lb\"") && line.starts_with("  {");
    let lines: Vec<&str> = SMALL_PLAN.lines().filter(|line| !pounds(line)).collect();
    let plan = lines.join("\n");
    let asked = asked(&known(Played::in_pounds(&plan, "Any evening"), "42.5 kg")).unwrap();
    assert!(asked.contains("lb (") && asked.contains("kg)"), "{asked}");
    in_every_language(|| {
        let mut ana = || known(Played::in_pounds(&plan, "Any evening"), "42.5 kg");
        of_a_set("two units", &mut ana);
    });
}

#[test]
fn names_longer_than_a_line() {
    in_every_language(|| {
        of_a_set("long names", &mut || known(long_names(), "60"));
        of_windows("long names", &mut long_names);
    });
}

fn of_windows(of: &str, ana: &mut dyn FnMut() -> Played) {
    for hurts in [false, true] {
        let mut ana = ana();
        let holds = |name: &str, ana: &Played| holds(&format!("{of}: {name}, hurts: {hurts}"), ana);
        keys(&mut ana, "s");
        if hurts {
            flag(&mut ana, Place::LowBack, 2, vec![]);
        }
        holds("windows not begun", &ana);
        ana.key(KeyCode::Enter);
        holds("get ready", &ana);
        ana.pass(20_000);
        holds("window running", &ana);
        keys(&mut ana, "p");
        holds("window paused", &ana);
        keys(&mut ana, "p");
        ana.key(KeyCode::Enter);
        holds("window logged", &ana);
        ana.pass(110_000);
        holds("window forgotten", &ana);
        ana.key(KeyCode::Up);
        holds("window forgotten, chosen", &ana);
        ana.pass(600_000);
        holds("windows over", &ana);
        ana.pass(3_600_000);
        holds("windows long over", &ana);
    }
}

#[test]
fn windows() {
    in_every_language(|| of_windows("windows", &mut Played::small));
}

#[test]
fn holds_and_measures() {
    in_every_language(a_hold_with_measures);
}

fn a_hold_with_measures() {
    let mut ana = Played::of(DEMO_PLAN, "Squat evening");
    keys(&mut ana, "ss");
    holds("hold not begun", &ana);
    ana.key(KeyCode::Enter);
    for (name, ms) in [
        ("ready", 1_000),
        ("push", 6_000),
        ("let go", 6_000),
        ("switch", 114_000),
        ("other side", 10_000),
    ] {
        ana.pass(ms);
        holds(name, &ana);
    }
    keys(&mut ana, "p");
    holds("hold paused", &ana);
    keys(&mut ana, "p");
    flag(&mut ana, Place::Hip, 2, vec![]);
    holds("hold with a flag", &ana);
    ana.pass(600_000);
    holds("hold done", &ana);
    ana.key(KeyCode::Enter);
    holds("measure", &ana);
    ana.key(KeyCode::Enter);
    holds("measure typing", &ana);
    ana.types("10.5 11");
    ana.types("held 120 95");
    holds("measure after", &ana);
    ana.types("11 11.5");
    holds("finish", &ana);
    ana.key(KeyCode::Enter);
    holds("rating", &ana);
    ana.types("seven");
    holds("rating refused", &ana);
    ana.key(KeyCode::Esc);
    ana.types("finish 7");
    holds("finished", &ana);
}

#[test]
fn lists() {
    in_every_language(all_lists);
}

fn all_lists() {
    for (name, open) in
        [("options", "o"), ("places", "d"), ("stations", "sw"), ("help", "?"), ("all", "v")]
    {
        let mut ana = Played::small();
        keys(&mut ana, open);
        for _ in 0..12 {
            holds(name, &ana);
            ana.key(KeyCode::Down);
        }
    }
    let mut ana = Played::small();
    keys(&mut ana, "d");
    ana.key(KeyCode::Enter);
    holds("severity", &ana);
    ana.types("5");
    holds("signs", &ana);
    ana.key(KeyCode::Enter);
    keys(&mut ana, "c");
    holds("clear", &ana);
}

/// What stands alone in a row of the least screen fits into it, and the names of keys into their column.
#[test]
fn labels_fit_their_places() {
    in_every_language(|| {
        let wide = |text: &str| textwrap::core::display_width(text);
        let small = say::full::too_small_with_clock(LEAST.0, LEAST.1);
        let rows =
            [small.as_str(), say::full::take_off(), say::full::put_on(), say::full::bar_ready()];
        for text in rows {
            assert!(wide(text) <= usize::from(LEAST.0), "{text}");
        }
        for text in [say::full::keys_one(), say::full::keys_type(), say::full::keys_leave()] {
            assert!(wide(text) <= 13, "{text}");
        }
        // Beside the narrowest list of the day, and all keys of a list in one row.
        assert!(wide(say::full::discomfort_in_day()) <= 25);
        let mut ana = Played::small();
        for key in ["?", "e"] {
            keys(&mut ana, key);
            let last = ana.drawn(LEAST.0, LEAST.1);
            let last = last.lines().last().unwrap();
            assert!(last.contains(say::full::does_go_back()), "{last}");
            ana.key(KeyCode::Esc);
        }
    });
}
