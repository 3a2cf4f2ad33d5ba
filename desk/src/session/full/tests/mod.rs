//! Keys against the real core, without a terminal and on a clock that stands still.

mod any;
mod played;

use holdfast_core::Millis;
use holdfast_core::session::{PieceKindView, Row, SessionState, Tap};
use holdfast_tests::{SMALL_PLAN, changed};
use ratatui::crossterm::event::{KeyCode, KeyEvent, KeyModifiers};

use super::model::Mode;
pub(super) use played::{Played, text};

fn row(set: u32) -> Row {
    Row::Set { piece: "Squat".into(), set }
}

fn sets(ana: &Played) -> Vec<(u32, Option<String>, Option<u32>)> {
    let PieceKindView::Strength { view } = &ana.model.screen.pieces[0].kind else { panic!() };
    let done = view.sets.iter().filter_map(|set| set.done.clone());
    done.map(|done| (done.reps, done.load_text, done.reserve)).collect()
}

fn is_typing(ana: &Played) -> bool {
    matches!(ana.model.mode, Mode::Typing(_))
}

/// One press ends the rest, the next saves the set. On a first time it asks how many reps were left, and
/// a number is the answer.
#[test]
fn with_the_one_key_alone_sets_are_logged() {
    let mut ana = Played::small();
    // Without a load known the key asks for one.
    ana.key(KeyCode::Enter);
    assert!(is_typing(&ana) && sets(&ana).is_empty());
    ana.types("50 x 8, 3 left");
    assert_eq!(ana.said(), "Squat set 1, 50 kg × 8, 3 left");
    assert_eq!(ana.model.screen.here.key.words, "End the rest");
    ana.key(KeyCode::Char(' '));
    assert_eq!(ana.said(), "rest ended");
    ana.key(KeyCode::Enter);
    let Mode::Typing(typing) = &ana.model.mode else { panic!("no line is open") };
    assert!(typing.ask.ends_with("How many reps in reserve?"), "{}", typing.ask);
    ana.types("2");
    assert_eq!(sets(&ana)[1].0, 6, "the reps are those asked for");
    assert_eq!(sets(&ana)[1].2, Some(2));
    // No set of a first time is open: the last one asks the same.
    ana.key(KeyCode::Enter);
    ana.key(KeyCode::Enter);
    ana.types("1");
    assert_eq!((sets(&ana)[2].0, sets(&ana)[2].2), (5, Some(1)));
}

/// `k` asks which bar of the room: the one in use is marked, and the loads stand on the one chosen.
#[test]
fn another_bar_is_chosen_from_a_list() {
    let mut ana = Played::small();
    ana.key(KeyCode::Char('k'));
    let drawn = ana.drawn(80, 24);
    for line in ["Bars for Squat", "long bar, 20 kg empty, taken", "pound bar, 45 lb empty"] {
        assert!(drawn.contains(line), "{line}: {drawn}");
    }
    ana.key(KeyCode::Down);
    ana.key(KeyCode::Enter);
    assert_eq!(ana.said(), "Squat, on the pound bar");
    let PieceKindView::Strength { view } = &ana.model.screen.pieces[0].kind else { panic!() };
    assert_eq!(view.bar.as_deref(), Some("pound bar"));
}

/// In a room with one bar there is nothing to choose: the key says so.
#[test]
fn one_bar_leaves_nothing_to_choose() {
    let plan = changed(SMALL_PLAN, "{ name = \"pound bar\", mass = \"45 lb\" },", "");
    let mut ana = Played::of(&plan, "Any evening");
    ana.key(KeyCode::Char('k'));
    assert!(ana.drawn(80, 24).contains("There is no other bar for this."));
}

/// What looks like a slip is confirmed with a letter: the question names the set, and the key that undoes it.
#[test]
fn a_slip_is_confirmed_with_a_letter() {
    let mut ana = Played::small();
    ana.types("50 x 8, 2 left");
    ana.types("90 x 6");
    let asked = "Really? Far from the proposed 52.5 kg. r: set 2 is right. u: it was a slip.";
    let drawn = ana.drawn(100, 30);
    assert!(drawn.contains(asked), "{drawn}");
    ana.key(KeyCode::Char('r'));
    assert_eq!(ana.said(), "Squat set 2, 90 kg × 6");
    let drawn = ana.drawn(100, 30);
    assert!(!drawn.contains("Really?") && !drawn.contains("is right"), "{drawn}");
    let revision = ana.revision();
    ana.key(KeyCode::Char('r'));
    assert!(ana.drawn(100, 30).contains("No set looks like a slip."));
    assert_eq!(ana.revision(), revision);
}

/// Where all is known a press saves, a press ends the rest, and a press saves.
#[test]
fn what_is_planned_is_a_press_a_set() {
    let mut ana = Played::small();
    for typed in ["50 x 8, 3 left", "set 2 55 x 6, 2 left", "set 3 55 x 6, 2 left"] {
        ana.types(typed);
    }
    ana.types("finish 6");
    ana.device().go_to("2026-11-04");
    let screen = ana.device().tap(Tap::Begin { day: None });
    ana.model.refresh(screen);
    ana.key(KeyCode::Enter);
    assert!(ana.said().starts_with("Squat set 1, "), "{}", ana.said());
    ana.key(KeyCode::Enter);
    assert_eq!(ana.said(), "rest ended");
    ana.key(KeyCode::Enter);
    assert!(ana.said().starts_with("Squat set 2, "), "{}", ana.said());
    assert_eq!(sets(&ana).len(), 2);
}

#[test]
fn a_key_pressed_twice_is_taken_once_and_says_so() {
    let mut ana = Played::small();
    ana.types("50 x 8, 3 left");
    ana.key(KeyCode::Enter);
    let revision = ana.revision();
    ana.key_at_once(KeyCode::Char('u'));
    assert_eq!(ana.revision(), revision, "the rest stays ended");
    assert!(ana.model.twice);
    let drawn = ana.drawn(80, 24);
    assert!(drawn.contains("Saved: rest ended (pressed twice, counted once)"), "{drawn}");
    ana.key(KeyCode::Char('u'));
    assert!(!ana.model.twice && ana.said().starts_with("Undone: rest ended"));
}

#[test]
fn what_is_done_is_never_logged_again_by_the_one_key() {
    let mut ana = Played::small();
    ana.types("50 x 8, 3 left");
    ana.key(KeyCode::Up);
    assert_eq!(ana.model.row(), Some(&row(1)));
    // On the done set the key opens its line; empty, it changes nothing.
    ana.key(KeyCode::Enter);
    let revision = ana.revision();
    ana.key(KeyCode::Enter);
    assert!(is_typing(&ana) && ana.revision() == revision);
    ana.types("7");
    assert_eq!(sets(&ana), [(7, Some("50 kg".into()), Some(3))]);
    // And it follows the day again.
    assert_eq!(ana.model.row(), Some(&row(2)));
}

#[test]
fn up_and_down_go_row_by_row_and_tab_piece_by_piece() {
    let mut ana = Played::small();
    let piece = |ana: &Played| ana.model.row().and_then(Row::piece).map(str::to_owned);
    let mut seen = Vec::new();
    for _ in 0..20 {
        ana.key(KeyCode::Down);
        seen.extend(ana.model.row().cloned());
    }
    seen.dedup();
    assert_eq!(seen, ana.model.screen.rows[1..]);
    ana.key(KeyCode::Esc);
    assert_eq!(ana.model.row(), Some(&row(1)));
    ana.types("50 x 8");
    ana.key(KeyCode::Tab);
    assert_eq!(piece(&ana).as_deref(), Some("Corners"));
    ana.key(KeyCode::BackTab);
    assert_eq!(ana.model.row(), Some(&row(2)), "where the piece stands");
    let mut names = Vec::new();
    for _ in 0..4 {
        ana.key(KeyCode::Tab);
        names.push(piece(&ana));
    }
    let named = |name: &str| Some(name.to_owned());
    assert_eq!(names, [named("Corners"), named("Calves"), None, None]);
}

#[test]
fn a_minute_more_and_put_off_are_the_cores_to_say() {
    let mut ana = Played::small();
    ana.key(KeyCode::Char('m'));
    assert_eq!(ana.said(), "No rest is running.");
    ana.types("50 x 8, 3 left");
    let left = |ana: &Played| ana.model.screen.rest.as_ref().and_then(|rest| rest.left);
    let before = left(&ana).unwrap();
    ana.key(KeyCode::Char('m'));
    assert_eq!(ana.said(), "1 min more rest");
    assert_eq!(left(&ana), Some(Millis(before.0 + 59_000)));
    // A clock that runs cannot be left behind: the core says what to do first.
    ana.key(KeyCode::Tab);
    ana.key(KeyCode::Enter);
    ana.key(KeyCode::Char('s'));
    assert!(ana.said().contains("has started: log or stop it first"), "{}", ana.said());
    ana.key(KeyCode::Char('z'));
    assert_eq!(ana.said(), "? shows all keys.");
}

#[test]
fn the_one_key_follows_a_holds_clock() {
    let mut ana = Played::small();
    // Sets, windows, the measure before.
    for what in ["Squat: later", "Corners: later", "Calves, reading before the hold: later"] {
        ana.key(KeyCode::Char('s'));
        assert_eq!(ana.said(), what);
    }
    let mut said = Vec::new();
    // Begin, pause, go on; run out; log.
    for ms in [7_000, 3_000, 300_000, 0] {
        ana.key(KeyCode::Enter);
        said.push(ana.said().to_owned());
        ana.pass(ms);
    }
    assert_eq!(said[..2], ["Calves, clock started", "Calves, clock paused"]);
    assert_eq!(said[2..], ["Calves, clock resumed", "Calves, held left 2 min, right 2 min"]);
}

/// Letters do what the one key does where it does that.
#[test]
fn p_pauses_and_goes_on_and_b_begins() {
    let mut ana = Played::small();
    for letter in ['s', 's', 's', 'b', 'p', 'p', 'n', 'x'] {
        ana.key(KeyCode::Char(letter));
    }
    assert_eq!(ana.said(), "Calves, clock stopped");
    ana.key(KeyCode::Char('p'));
    assert_eq!(ana.said(), "No clock is running here.");
}

#[test]
fn a_second_press_does_not_log_the_window_to_come() {
    let mut ana = Played::small();
    ana.key(KeyCode::Char('s'));
    ana.key(KeyCode::Enter);
    assert_eq!(ana.said(), "Corners, clock started");
    ana.pass(40_000);
    ana.key(KeyCode::Enter);
    let revision = ana.revision();
    ana.key(KeyCode::Enter);
    assert_eq!((ana.said(), ana.revision()), ("Window 1 is logged.", revision));
    // The third window runs and the second was forgotten: the third is the one that is logged.
    ana.pass(100_000);
    ana.key(KeyCode::Enter);
    assert!(ana.said().starts_with("Corners window 3, "), "{}", ana.said());
    assert!(ana.drawn(80, 24).contains("not logged"), "{}", ana.drawn(80, 24));
}

#[test]
fn a_session_ends_with_a_rating_and_can_be_opened_again() {
    let mut ana = Played::small();
    ana.types("50 x 8");
    ana.key(KeyCode::Char('f'));
    ana.types("12");
    assert!(is_typing(&ana), "12 is no rating");
    ana.key(KeyCode::Backspace);
    ana.key(KeyCode::Backspace);
    ana.types("8");
    assert_eq!(ana.model.screen.state, SessionState::Finished);
    // Its key leaves, and logs nothing.
    let revision = ana.revision();
    ana.key(KeyCode::Enter);
    assert!(ana.left && ana.revision() == revision);
    ana.key(KeyCode::Char('u'));
    assert_eq!(ana.model.screen.state, SessionState::Running);
}

#[test]
fn control_c_leaves_from_everywhere() {
    for open in ["", "?", "v", "e", "d", "o"] {
        let mut ana = Played::small();
        open.chars().for_each(|key| ana.key(KeyCode::Char(key)));
        ana.press(KeyEvent::new(KeyCode::Char('c'), KeyModifiers::CONTROL));
        assert!(ana.left, "after {open:?}");
    }
}

/// Earlier pieces were put off, the hold runs, and the program is killed: the new one is at the hold.
#[test]
fn whoever_comes_back_is_at_the_clock_that_runs() {
    let mut ana = Played::small();
    for _ in 0..3 {
        ana.key(KeyCode::Char('s'));
    }
    ana.key(KeyCode::Enter);
    ana.pass(9_000);
    let back = ana.come_back();
    assert_eq!(back.model.row().and_then(Row::piece), Some("Calves"));
    assert!(back.drawn(80, 24).contains("left"), "{}", back.drawn(80, 24));
    // Also when it ran out meanwhile: its seconds wait to be logged.
    ana.pass(900_000);
    assert_eq!(ana.come_back().model.row().and_then(Row::piece), Some("Calves"));
    ana.key(KeyCode::Enter);
    assert!(ana.said().starts_with("Calves, held left 2 min"), "{}", ana.said());
    assert_ne!(ana.come_back().model.row().and_then(Row::piece), Some("Calves"), "the day goes on");
}

#[test]
fn control_keys_take_nothing_back() {
    let mut ana = Played::small();
    ana.types("50 x 8");
    let control = |letter| KeyEvent::new(KeyCode::Char(letter), KeyModifiers::CONTROL);
    let revision = ana.revision();
    for letter in "uesfnm".chars() {
        ana.press(control(letter));
        assert_eq!(ana.revision(), revision, "{letter}");
        assert!(matches!(ana.model.mode, Mode::Day), "{letter}");
    }
    // In a line it empties the line.
    ana.key(KeyCode::Char('e'));
    ana.key(KeyCode::Char('6'));
    ana.press(control('u'));
    let Mode::Typing(typing) = &ana.model.mode else { panic!("no line is open") };
    assert_eq!(typing.text, "");
}

/// A line that cannot be saved stays open, so that what is typed next falls to no other key.
#[test]
fn a_refused_line_stays_to_be_put_right() {
    let mut ana = Played::small();
    ana.types("flag knee 11");
    let Mode::Typing(typing) = &ana.model.mode else { panic!("the line was closed") };
    assert_eq!(typing.text, "flag knee 11");
    let wrong = typing.wrong.clone().unwrap();
    assert!(wrong.contains("from 1"), "{wrong}");
    assert!(ana.drawn(40, 24).contains("> flag knee 11_"), "{}", ana.drawn(40, 24));
    ana.press(KeyEvent::new(KeyCode::Char('u'), KeyModifiers::CONTROL));
    ana.types("flag knee 3");
    assert!(ana.said().contains("knee 3/10"), "{}", ana.said());
    assert!(matches!(ana.model.mode, Mode::Day));
}

/// Pain in a window is about the movement of that window.
#[test]
fn where_it_hurts_is_flagged_for_the_movement_at_hand() {
    let mut ana = Played::small();
    ana.key(KeyCode::Tab);
    ana.key(KeyCode::Down);
    ana.key(KeyCode::Char('d'));
    for _ in 0..7 {
        ana.key(KeyCode::Down);
    }
    ana.key(KeyCode::Enter);
    ana.types("5");
    ana.key(KeyCode::Enter);
    assert_eq!(ana.said(), "Corners, Press-up: knee 5/10");
    // Severe pain: the key leaves the movement, and saves nothing of it.
    assert!(ana.model.screen.here.key.words.starts_with("No more"));
    ana.key(KeyCode::Char('d'));
    ana.key(KeyCode::Esc);
    assert_eq!(ana.said(), "Nothing flagged. Press d to try again.");
}
