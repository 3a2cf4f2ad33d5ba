//! What is drawn, in the moments that matter.

use holdfast_core::session::{ChangeView, Notice, NoticeKind, PieceKindView};
use holdfast_tests::DEMO_PLAN;
use ratatui::crossterm::event::KeyCode;

use crate::full::theme::Theme;
use crate::session::full::tests::{Played, text};

/// Puts what is done to the bar into the sets of the first piece.
pub(super) fn with_change(ana: &mut Played, off: Option<&str>, on: Option<&str>) {
    let PieceKindView::Strength { view } = &mut ana.model.screen.pieces[0].kind else { panic!() };
    let to_come = view.sets.iter_mut().filter(|set| set.done.is_none());
    let Some(load) = to_come.filter_map(|set| set.load.as_mut()).next() else { return };
    let plates =
        |text: Option<&str>| text.iter().flat_map(|_| load.build.clone().unwrap().plates).collect();
    let text = [off.map(|off| format!("take off {off}")), on.map(|on| format!("put on {on}"))];
    load.change = Some(ChangeView {
        off: plates(off),
        off_text: off.map(str::to_owned),
        on: plates(on),
        on_text: on.map(str::to_owned),
        text: text.into_iter().flatten().collect::<Vec<_>>().join(", "),
    });
}

/// Letters with single spaces, as they read whatever way they are wrapped.
pub(super) fn read(drawn: &str) -> String {
    drawn.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn a_set_shows_load_plates_and_reason() {
    let mut ana = Played::small();
    ana.types("50 x 8, 3 left");
    ana.pass(3 * 3_600_000);
    let drawn = ana.drawn(80, 24);
    for wanted in [
        "Squat    1 of 3",
        "> 2  ",
        "52.5 kg × 6   10 + 5 + 1.25 kg a side",
        "did 50 kg × 8, 3 left",
        "kg a side",
        "why: ",
        "Heavy sets need safety bars",
        "Done: ",
        "u  undo",
        "q  leave",
        "Saved: ",
    ] {
        assert!(drawn.contains(wanted), "{wanted:?} in\n{drawn}");
    }
}

#[test]
fn a_rest_counts_down_and_then_up_with_the_next_set_beside_it() {
    let mut ana = Played::small();
    ana.types("50 x 8, 3 left");
    ana.pass(30_000);
    let drawn = ana.drawn(80, 24);
    assert!(drawn.contains("REST") && big(&drawn) >= 5, "{drawn}");
    assert!(drawn.contains("set 2 of 3"), "{drawn}");
    // Where the length comes from stands beside it, also where that takes two lines.
    for (columns, rows) in [(80, 24), (60, 20), (40, 24), (39, 10)] {
        let drawn = read(&ana.drawn(columns, rows));
        assert!(drawn.contains("of 2 min to go (from the plan)"), "{drawn}");
    }
    ana.pass(100_000);
    let drawn = ana.drawn(80, 24);
    assert!(drawn.contains("REST IS OVER"), "{drawn}");
    assert!(big(&ana.drawn(160, 50)) > big(&drawn), "a bigger window has bigger digits");
}

/// Rows with parts of big digits.
fn big(drawn: &str) -> usize {
    drawn.lines().filter(|line| line.contains(['\u{2588}', '\u{2580}', '\u{2584}'])).count()
}

/// What is done to the bar is the largest on the screen of a rest, and the clock the second.
#[test]
fn in_a_rest_what_to_put_on_is_the_largest() {
    let mut ana = Played::small();
    ana.types("50 x 8, 3 left");
    // The first load was the athlete's own, so the bar is known from the second set on.
    let rows_of = |drawn: &str, from: &str| {
        let lines = drawn.lines().skip_while(|line| !line.contains(from)).skip(1);
        lines.take_while(|line| big(line) > 0).count()
    };
    let mut seen = 0;
    for (columns, rows) in [(80, 24), (60, 20), (100, 30), (40, 24), (160, 50)] {
        with_change(&mut ana, Some("2.5 kg"), Some("20 + 5 kg"));
        let drawn = ana.drawn(columns, rows);
        assert!(drawn.contains("PUT ON") && drawn.contains("TAKE OFF"), "{drawn}");
        let put_on = rows_of(&drawn, "PUT ON");
        let clock = drawn.lines().skip_while(|line| !line.contains("REST")).collect::<Vec<_>>();
        let clock = big(&clock.join("\n"));
        assert!(put_on >= clock && put_on >= 3, "{put_on} and {clock}:\n{drawn}");
        seen += usize::from(clock > 0);
    }
    assert!(seen >= 4, "the clock has big digits too");
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
        (5_000, "PUSH", "next: let go in 0:05"),
        (6_000, "LET GO", "next: push in 0:23"),
        (114_000, "CHANGE SIDES", "next: go in 0:09"),
    ] {
        ana.pass(ms);
        let drawn = ana.drawn(80, 24);
        assert!(drawn.contains(now) && drawn.contains(next), "{now}, {next} in\n{drawn}");
    }
    ana.pass(400_000);
    let drawn = read(&ana.drawn(80, 24));
    assert!(drawn.contains("DONE") && drawn.contains("Is that right?"), "{drawn}");
}

/// The digits count the phase; the side and its own time stand small beside it.
#[test]
fn the_big_digits_of_a_hold_count_the_phase() {
    let mut ana = Played::of(DEMO_PLAN, "Squat evening");
    for key in [KeyCode::Char('s'), KeyCode::Char('s'), KeyCode::Enter] {
        ana.key(key);
    }
    ana.pass(7_000);
    for (columns, rows) in [(80, 24), (60, 20), (40, 24), (40, 14)] {
        let drawn = ana.drawn(columns, rows);
        let digits = crate::full::digits::rows("0:04", 1);
        let small = drawn.contains("0:04");
        let large = big(&drawn) >= digits.len();
        assert!(small || large, "{drawn}");
        assert!(drawn.contains("left, 1:58 to go"), "{drawn}");
    }
}

#[test]
fn care_is_shown_where_the_risk_is_and_v_shows_all_of_it() {
    let mut ana = Played::small();
    ana.types("50 x 8, 3 left");
    ana.types("flag low-back 5");
    let advice = ana.model.screen.pieces[0].flags[0].advice.clone();
    assert!(advice.lines.len() >= 3);
    let always = &advice.lines[..advice.always as usize];
    // With the rest running and after it, at every size.
    for ms in [1_000, 3 * 3_600_000] {
        ana.pass(ms);
        for (columns, rows) in [(80, 24), (60, 20), (40, 24), (40, 14)] {
            let drawn = ana.drawn(columns, rows);
            assert!(drawn.contains("DISCOMFORT:"), "{drawn}");
            for line in always {
                assert!(read(&drawn).contains(line), "{line:?} in\n{drawn}");
            }
        }
    }
    assert!(ana.drawn(80, 24).contains("Squat !"));
    ana.key(KeyCode::Char('v'));
    for line in &advice.lines {
        assert!(read(&ana.drawn(80, 24)).contains(line), "{line}");
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
    assert_eq!(lines[1], "WARNING: Stop now.");
    assert_eq!(lines[2], "note: Two devices5n disagree.");
    assert!(!drawn.chars().any(|letter| letter.is_control() && letter != '\n'), "{drawn:?}");
}

#[test]
fn colour_adds_nothing_that_words_do_not_say() {
    let mut ana = Played::small();
    ana.types("61 x 8");
    ana.types("flag knee 4");
    let [plain, coloured] =
        [Theme::plain(), Theme::coloured_for_checks()].map(|theme| ana.buffer(80, 24, theme));
    assert_eq!(text(&plain), text(&coloured));
    assert_ne!(plain, coloured, "there is colour to leave out");
}

#[test]
fn too_small_says_so_and_the_least_size_shows_what_the_key_does() {
    let mut ana = Played::small();
    ana.types("50 x 8, 3 left");
    ana.pass(3 * 3_600_000);
    assert!(read(&ana.drawn(39, 24)).contains("too small"));
    assert!(read(&ana.drawn(80, 13)).contains("too small"));
    // A clock that runs is shown there too, before the words about the size.
    let mut zoe = Played::small();
    for key in [KeyCode::Char('s'), KeyCode::Char('s'), KeyCode::Char('s'), KeyCode::Enter] {
        zoe.key(key);
    }
    zoe.pass(11_000);
    assert!(big(&zoe.drawn(40, 10)) >= 5, "{}", zoe.drawn(40, 10));
    for (columns, rows, time) in [(40, 10, ""), (40, 3, "1:54"), (30, 1, "1:54")] {
        let drawn = zoe.drawn(columns, rows);
        assert!(drawn.contains("HOLD") && drawn.contains(time), "{columns} x {rows}:\n{drawn}");
    }
    assert!(zoe.drawn(40, 10).contains("q leaves. Other keys need 40 × 14."));
    let least = ana.drawn(40, 14);
    assert!(least.contains(" Enter   Done: ") && least.contains("> 2  "), "{least}");
}

/// Cues that nobody gave are told by the clock, until the next one.
#[test]
fn what_went_by_in_a_sleep_stands_under_the_clock() {
    let mut ana = Played::small();
    for key in [KeyCode::Char('s'), KeyCode::Char('s'), KeyCode::Char('s'), KeyCode::Enter] {
        ana.key(key);
    }
    (0..60).for_each(|_| ana.pass(200));
    assert!(!ana.drawn(80, 24).contains("missed cues"));
    // At 12 s of 5 + 120: asleep until 100 s. Get ready and go were given before.
    ana.pass(88_000);
    assert!(ana.drawn(80, 24).contains("missed cues: halfway"), "{}", ana.drawn(80, 24));
    (0..80).for_each(|_| ana.pass(203));
    let drawn = ana.drawn(80, 24);
    assert!(!drawn.contains("missed cues"), "ten seconds were said: {drawn}");
}
