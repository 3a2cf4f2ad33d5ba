//! Whole lines, at every row.

use catalogue::{Language, speaking};
use chrono::NaiveDate;
use proptest::prelude::*;

use super::*;
use crate::instant::Millis;
use crate::mass::{Mass, MassUnit};
use crate::plan::{Because, Exercise, Technique};
use crate::session::screen::{
    Form, Here, HoldView, IntervalView, Key, KeyKind, OptionView, PieceState, PieceView, SideKey,
    SideView, WindowView,
};

fn piece(name: &str, kind: PieceKindView) -> PieceView {
    let option = OptionView {
        movement: "bell-swing".into(),
        key: "high-pull".into(),
        name: "High pull".into(),
        because: Because::Grip,
        because_text: String::new(),
        taken: false,
        suggested: None,
        from: Vec::new(),
    };
    PieceView {
        name: name.into(),
        state: PieceState::Todo,
        progress: None,
        options: vec![option],
        flags: Vec::new(),
        notes: Vec::new(),
        stands_at: None,
        kind,
    }
}

fn corners() -> PieceView {
    let window = |(movement, window): (&str, u32)| WindowView {
        window,
        movement: movement.into(),
        exercise: Exercise::of(movement),
        asked: 15,
        asked_text: String::new(),
        reps: None,
        spare: None,
        rushed: false,
        done_text: None,
        station: window,
        fewer: None,
        doubt: None,
    };
    let view = IntervalView {
        heading: String::new(),
        window: Millis(60_000),
        rounds: 1,
        margin: Millis(10_000),
        windows: ["bell-swing", "press-up"].into_iter().zip(1..).map(window).collect(),
        next_window: Some(1),
        clock: None,
        stations: Vec::new(),
        start_station: 1,
        total: Millis(120_000),
    };
    piece("Corners", PieceKindView::Interval { view })
}

fn calves() -> PieceView {
    let side = |side| SideView { side, name: None, held: None, held_text: None, short: None };
    let view = HoldView {
        heading: String::new(),
        stretch: "Calf stretch".into(),
        region: "calves".into(),
        hold: Millis(120_000),
        technique: Technique::Static,
        sides: [1, 2].map(side).to_vec(),
        range: None,
        clock: None,
        ready: Millis(10_000),
        switch: Millis(10_000),
        doubt: None,
    };
    piece("Calves", PieceKindView::Hold { view })
}

fn screen(row: Option<Row>, asks: Option<Question>) -> SessionScreen {
    let key = Key {
        kind: KeyKind::Waits,
        words: "Wait for the next window".into(),
        more: Some("Window 2 is logged.".into()),
        tap: None,
        asks,
    };
    let here = Here {
        row,
        chosen: false,
        done: false,
        title: String::new(),
        place: None,
        line: String::new(),
        notes: Vec::new(),
        movement: None,
        clock: None,
        key,
        side_keys: Vec::new(),
        form: Some(Form { ask: String::new(), hint: "reps: `7`".into() }),
    };
    SessionScreen {
        revision: 1,
        name: "Ines".into(),
        unit: MassUnit::Kg,
        date: NaiveDate::from_ymd_opt(2026, 11, 3).unwrap(),
        state: SessionState::Running,
        afterwards: false,
        flags: Vec::new(),
        notes: Vec::new(),
        heading: String::new(),
        block: None,
        day: None,
        days: Vec::new(),
        here,
        rows: Vec::new(),
        pieces: vec![corners(), calves()],
        came_to: Vec::new(),
        notices: Vec::new(),
        saved: None,
        saved_text: None,
        saved_line: None,
        doubt: None,
        undone: None,
        ignored: false,
        unpublished: 0,
        unpublished_text: None,
        rest: None,
        cues: Vec::new(),
    }
}

fn set() -> Row {
    Row::Set { piece: "Squat".into(), set: 2 }
}

fn window() -> Row {
    Row::Window { piece: "Corners".into(), window: 1 }
}

fn hold() -> Row {
    Row::Hold { piece: "Calves".into() }
}

fn readings() -> Row {
    Row::Measure { piece: "Calves".into(), when: MeasuredWhen::Before }
}

fn refused(typed: &str, screen: &SessionScreen) -> String {
    match read(typed, screen) {
        Err(Error::Invalid { field: Field::Words, reason }) => reason,
        other => panic!("{typed}: {other:?}"),
    }
}

#[test]
fn a_set_can_be_named_and_a_capital_is_no_other_command() {
    let at_set = screen(Some(set()), None);
    for typed in ["set 1 40,5 x 8, 2 left", "Set 1: 40.5 kg x 8, 2 übrig", "set 1, 40,5x8r2"] {
        let wanted = Tap::LogSet {
            piece: "Squat".into(),
            set: Some(1),
            load: Some(Mass::thousandths(40_500, MassUnit::Kg)),
            reps: Some(8),
            reserve: Some(2),
        };
        assert_eq!(read(typed, &at_set).unwrap(), Typed::Tap { tap: wanted }, "{typed}");
    }
    assert_eq!(read("Undo", &at_set).unwrap(), Typed::Tap { tap: Tap::Undo });
    assert_eq!(read("Quit", &at_set).unwrap(), Typed::Leave);
    // What is asked for is answered by a number alone.
    let asked = screen(Some(set()), Some(Question::Reserve));
    let Ok(Typed::Tap { tap: Tap::LogSet { reps: None, reserve: Some(2), .. } }) =
        read("2", &asked)
    else {
        panic!("{:?}", read("2", &asked))
    };
}

#[test]
fn what_follows_a_command_and_means_nothing_is_shown() {
    let at_window = screen(Some(window()), None);
    for (typed, starts) in [
        ("undo twice", "\"twice\" means nothing after `undo`."),
        ("pause now", "\"now\" means nothing after `pause`."),
        ("begin at two", "\"at two\" is not a station."),
        ("window", "Type `window`, its number"),
        ("window one 12", "\"one\" is not a number."),
        ("finish 11", "\"11\" is not a rating from 0 to 10."),
        ("finish 7 8 9", "\"8 9\""),
        ("option", "Type `option` and one of high-pull;"),
        ("option swim", "\"swim\" is not an option here."),
        ("option none at all", "\"none at all\" is not an option here."),
        ("flag wrist 2 swing", "\"swing\" is neither an emergency sign nor a movement here."),
    ] {
        let said = refused(typed, &at_window);
        assert!(said.starts_with(starts), "{typed}: {said}");
    }
    let pressed = "Wait for the next window. Window 2 is logged.";
    assert_eq!(refused("", &at_window), pressed);
    assert_eq!(refused("", &screen(Some(set()), Some(Question::Reps))), "Type reps: `7`");
    let german = speaking(Language::De, || refused("undo doppelt", &at_window));
    assert_eq!(german, "„doppelt“ passt nicht hinter `undo`.");
    assert!(refused("8", &screen(None, None)).contains("Press Enter"));
}

/// Each line of the help can be typed where it stands, in the language it stands in.
#[test]
fn help_shows_lines_that_are_read() {
    for language in Language::ALL {
        for row in [set(), window(), hold(), readings(), Row::Finish] {
            let screen = screen(Some(row), None);
            speaking(language, || {
                let lines = help::lines(&screen).map(|(typed, _)| typed());
                // The key's own, and words in capitals that stand for others.
                // What is right is right of a set that looks like a slip, and a set more is one of a piece
                // that is done: here there is neither.
                let own = [
                    say::line::enter(),
                    say::line::option(),
                    say::line::flag(),
                    say::line::right(),
                    say::line::extra(),
                    "skip",
                ];
                for line in lines.filter(|line| !own.contains(line)) {
                    let apart = if line.starts_with("pause") { ", " } else { "\n" };
                    for typed in line.split(apart) {
                        let read = read(typed, &screen);
                        assert!(read.is_ok(), "{language}: {typed}: {read:?}");
                    }
                }
            });
        }
    }
    // What confirms a slip is shown, and read, while there is one.
    let mut slip = screen(Some(set()), None);
    assert!(!line_help(&slip).contains("\n  right "));
    assert!(read("right", &slip).is_err());
    let lift = crate::id::RecordId(crate::id::random([1; 16]));
    let (kind, tap) = (SideKeyKind::Sure, Some(Tap::Sure { lift }));
    slip.here.side_keys.push(SideKey { kind, words: String::new(), tap });
    assert!(line_help(&slip).contains("\n  right "), "{}", line_help(&slip));
    assert_eq!(read("Right", &slip).unwrap(), Typed::Tap { tap: Tap::Sure { lift } });
    let german = speaking(Language::De, || line_help(&screen(Some(set()), None)));
    assert!(german.contains("\n  40 x 8, 2 übrig   und 2 Wdh."), "{german}");
}

/// How many numbers a line asks to log, `named` when it names its set or window.
fn numbers(typed: &Typed, named: bool) -> usize {
    let Typed::Tap { tap } = typed else { return 0 };
    let of = |some: &[bool]| some.iter().filter(|some| **some).count();
    match tap {
        Tap::LogSet { load, reps, reserve, .. } => {
            of(&[named, load.is_some(), reps.is_some(), reserve.is_some()])
        }
        Tap::LogWindow { reps, spare, .. } => of(&[named, reps.is_some(), spare.is_some()]),
        Tap::Clock { station, .. } => of(&[station.is_some()]),
        Tap::LogHold { held, .. } => held.len(),
        Tap::LogRange { readings, .. } => readings.len(),
        Tap::Flag { .. } => 1,
        Tap::Finish { rpe, minutes } => of(&[rpe.is_some(), minutes.is_some()]),
        _ => 0,
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2000, ..ProptestConfig::default() })]

    /// At every row and in both languages: a line means all that it says, or it is refused with a sentence.
    #[test]
    fn a_line_means_all_that_it_says_or_is_refused(
        first in "(undo|skip|clear|finish|option|flag|begin|next|stop|held|set|window|\\?|quit|sheet|Undo)?",
        words in proptest::collection::vec(
            "[1-9]|1[0-9]|x|left|übrig|r|s|reps|none|high-pull|knee|Knie|k|chest pain|press-up|zzz|-",
            0..5,
        ),
        row in 0..6_usize,
        german in any::<bool>(),
    ) {
        let language = if german { Language::De } else { Language::En };
        let row = [None, Some(set()), Some(window()), Some(hold()), Some(readings()), Some(Row::Finish)][row].clone();
        let screen = screen(row, None);
        let typed = format!("{first} {}", words.join(" "));
        match speaking(language, || read(&typed, &screen)) {
            Ok(meant) => {
                let said = match &meant {
                    Typed::Tap { tap: Tap::LogHold { said, .. } } => said.clone().unwrap_or_default(),
                    _ => String::new(),
                };
                let digits = |text: &str| text.split(|l: char| !l.is_ascii_digit()).filter(|d| !d.is_empty()).count();
                let named = ["set", "window"].contains(&first.as_str());
                prop_assert_eq!(numbers(&meant, named) + digits(&said), digits(&typed), "{}", typed);
                let stray = |text: &str| text.matches("zzz").count() + text.matches(" -").count();
                let because = format!(" {said}");
                // A minus before a load means what is taken off a body.
                let minus = |load: &crate::mass::Mass| *load < crate::mass::Mass::ZERO;
                let minus = match &meant {
                    Typed::Tap { tap: Tap::LogSet { load, .. } } => load.as_ref().is_some_and(minus),
                    _ => false,
                };
                prop_assert_eq!(stray(&typed), stray(&because) + usize::from(minus), "{}", typed);
            }
            Err(Error::Invalid { reason, .. }) => {
                prop_assert!(reason.ends_with('.') || reason.ends_with('`'), "{}: {}", typed, reason);
            }
            Err(other) => prop_assert!(false, "{}: {}", typed, other),
        }
    }
}
