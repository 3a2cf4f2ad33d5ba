//! What is drawn, in the moments that matter.

use holdfast_core::companion::{Notice, NoticeKind};
use holdfast_tests::DEMO_PLAN;
use ratatui::crossterm::event::KeyCode;

use crate::full::theme::Theme;
use crate::session::full::tests::{Played, text};

/// Letters with single spaces, as they read whatever way they are wrapped.
fn read(drawn: &str) -> String {
    drawn.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn a_set_shows_load_plates_and_reason() {
    let mut ana = Played::small();
    ana.types("50 x 8 r3");
    ana.pass(3 * 3_600_000);
    let drawn = ana.drawn(80, 24);
    for wanted in [
        "Squat    1 of 3",
        "> 2  ",
        "did 50 kg x 8, 3 in reserve",
        "kg a side",
        "why: ",
        "Heavy sets need safety bars",
        "Enter  set 2 as planned",
        "u  undo",
        "q  leave",
        "saved ",
    ] {
        assert!(drawn.contains(wanted), "{wanted:?} in\n{drawn}");
    }
}

#[test]
fn a_rest_counts_down_and_then_up_with_the_next_set_beside_it() {
    let mut ana = Played::small();
    ana.types("50 x 8 r3");
    ana.pass(30_000);
    let drawn = ana.drawn(80, 24);
    let big = |drawn: &str| drawn.lines().filter(|line| line.contains("██")).count();
    assert!(drawn.contains("REST") && big(&drawn) >= 5, "{drawn}");
    assert!(drawn.contains("set 2 of 3"), "{drawn}");
    // Where the length comes from stands beside it, also where that takes two lines.
    for (columns, rows) in [(80, 24), (60, 20), (40, 10)] {
        let drawn = read(&ana.drawn(columns, rows));
        assert!(drawn.contains("1 min 30 s of 2 min left, as the plan says"), "{drawn}");
    }
    ana.pass(100_000);
    let drawn = ana.drawn(80, 24);
    assert!(drawn.contains("REST IS OVER"), "{drawn}");
    assert!(big(&ana.drawn(160, 50)) > big(&drawn), "a bigger window has bigger digits");
}

#[test]
fn a_hold_says_push_and_let_go_and_what_comes_next() {
    let mut ana = Played::of(DEMO_PLAN, "Squat evening");
    ana.key(KeyCode::Char('s'));
    ana.key(KeyCode::Char('s'));
    ana.key(KeyCode::Enter);
    // The tap came at a whole second; five to get ready, six of contraction in thirty.
    for (ms, now, next) in [
        (1_000, "GET READY", "next: go in 0:04"),
        (5_000, "PUSH", "next: let go, go further in 0:05"),
        (6_000, "LET GO, SINK IN", "next: push in 0:23"),
        (114_000, "SWITCH SIDES", "next: go in 0:09"),
    ] {
        ana.pass(ms);
        let drawn = ana.drawn(80, 24);
        assert!(drawn.contains(now) && drawn.contains(next), "{now}, {next} in\n{drawn}");
    }
    ana.pass(400_000);
    let drawn = read(&ana.drawn(80, 24));
    assert!(drawn.contains("DONE") && drawn.contains("Is that right?"), "{drawn}");
}

#[test]
fn care_is_shown_whole_where_the_risk_is() {
    let mut ana = Played::small();
    ana.types("50 x 8 r3");
    ana.key(KeyCode::Char('e'));
    ana.types("flag low-back 5");
    let PlacedAdvice { lines } = PlacedAdvice::of(&ana);
    assert!(lines.len() >= 3);
    // With the rest running and after it, at the usual size.
    for ms in [1_000, 3 * 3_600_000] {
        ana.pass(ms);
        let drawn = ana.drawn(80, 24);
        assert!(drawn.contains("DISCOMFORT:"), "{drawn}");
        // The day's list stands beside it, so each line is looked for by its first words.
        for line in &lines {
            let first: Vec<&str> = line.split(' ').take(5).collect();
            assert!(read(&drawn).contains(&first.join(" ")), "{line:?} in\n{drawn}");
        }
    }
    assert!(ana.drawn(80, 24).contains("Squat !"));
}

/// The advice of the first piece's flag.
struct PlacedAdvice {
    lines: Vec<String>,
}

impl PlacedAdvice {
    fn of(ana: &Played) -> PlacedAdvice {
        let flags = crate::session::full::flags(ana.model.screen.pieces.first());
        PlacedAdvice { lines: flags[0].advice.lines.clone() }
    }
}

#[test]
fn notices_come_first_and_nothing_steers_the_terminal() {
    let mut ana = Played::small();
    ana.model.screen.heading = "Any\u{1b}[2J evening\u{7}".into();
    let text_of = |kind, text: &str| Notice { kind, text: text.into() };
    ana.model.screen.notices = vec![
        text_of(NoticeKind::Care, "Stop now."),
        text_of(NoticeKind::Warning, "Two devices\u{9b}5n disagree."),
    ];
    let drawn = ana.drawn(80, 24);
    let lines: Vec<&str> = drawn.lines().collect();
    assert!(lines[0].starts_with("Any[2J evening"), "{drawn}");
    assert_eq!(lines[1], "CARE: Stop now.");
    assert_eq!(lines[2], "note: Two devices5n disagree.");
    assert!(!drawn.chars().any(|letter| letter.is_control() && letter != '\n'), "{drawn:?}");
}

#[test]
fn colour_adds_nothing_that_words_do_not_say() {
    let mut ana = Played::small();
    ana.types("61 x 8");
    ana.key(KeyCode::Char('e'));
    ana.types("flag knee 4");
    let [plain, coloured] =
        [Theme::plain(), Theme::coloured_for_checks()].map(|theme| ana.buffer(80, 24, theme));
    assert_eq!(text(&plain), text(&coloured));
    assert_ne!(plain, coloured, "there is colour to leave out");
}

#[test]
fn too_small_says_so_and_the_least_size_shows_what_the_key_does() {
    let mut ana = Played::small();
    ana.types("50 x 8 r3");
    ana.pass(3 * 3_600_000);
    assert!(read(&ana.drawn(59, 24)).contains("too small"));
    assert!(read(&ana.drawn(80, 19)).contains("too small"));
    // A clock that runs is shown there too, before the words about the size.
    let mut zoe = Played::small();
    zoe.key(KeyCode::Char('s'));
    zoe.key(KeyCode::Char('s'));
    zoe.key(KeyCode::Char('s'));
    zoe.key(KeyCode::Enter);
    zoe.pass(11_000);
    for (columns, rows, time) in [(40, 10, "██"), (40, 4, "1:54"), (30, 1, "1:54")] {
        let drawn = zoe.drawn(columns, rows);
        assert!(drawn.contains("HOLD") && drawn.contains(time), "{columns} x {rows}:\n{drawn}");
    }
    assert!(zoe.drawn(40, 10).contains("q leaves; other keys want 60 x 20"));
    let least = ana.drawn(60, 20);
    assert!(least.contains("Enter  set 2 as planned") && least.contains("> 2  "), "{least}");
}
