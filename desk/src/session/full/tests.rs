//! Keys against the real core, without a terminal and on a clock that stands still.

use std::fmt::Write;

use holdfast_core::companion::{PieceView, SessionState, Tap};
use holdfast_tests::{Crew, DEMO_PLAN, Device, SMALL_PLAN};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use ratatui::Terminal;
use ratatui::backend::TestBackend;
use ratatui::buffer::Buffer;
use ratatui::crossterm::event::{KeyCode, KeyEvent, KeyModifiers};

use super::draw::draw;
use super::keys;
use super::model::{Mode, Model, Tone, Wish};
use crate::full::theme::Theme;

/// A session on a device in a folder of its own.
pub(super) struct Played {
    crew: Crew,
    pub(super) model: Model,
}

impl Played {
    pub(super) fn of(plan: &str, day: &str) -> Played {
        let crew = Crew::start(plan, &["Ana"]).unwrap();
        let screen = crew.athletes[0].tap(Tap::Begin { day: Some(day.into()) }).unwrap();
        Played { crew, model: Model::new(screen) }
    }

    pub(super) fn small() -> Played {
        Played::of(SMALL_PLAN, "Any evening")
    }

    fn device(&self) -> &Device {
        &self.crew.athletes[0]
    }

    /// Lets time pass and asks again, as each frame does.
    pub(super) fn pass(&mut self, ms: i64) {
        self.device().pass(ms);
        let at = self.device().now();
        self.model.refresh(self.crew.athletes[0].today(), &at);
    }

    /// A key, and what it asks for, done.
    pub(super) fn key(&mut self, code: KeyCode) -> Wish {
        self.press(KeyEvent::new(code, KeyModifiers::NONE))
    }

    fn press(&mut self, key: KeyEvent) -> Wish {
        let wish = keys::key(&mut self.model, key);
        if let Wish::Taps(taps) = &wish {
            for tap in taps {
                if !self.model.after(tap, self.crew.athletes[0].tap(tap.clone())) {
                    break;
                }
            }
        }
        wish
    }

    pub(super) fn types(&mut self, text: &str) {
        for letter in text.chars() {
            self.key(KeyCode::Char(letter));
        }
        self.key(KeyCode::Enter);
    }

    pub(super) fn said(&self) -> &str {
        self.model.said.as_ref().map_or("", |(_, text)| text)
    }

    /// What is drawn.
    pub(super) fn buffer(&self, width: u16, height: u16, theme: Theme) -> Buffer {
        let mut terminal = Terminal::new(TestBackend::new(width, height)).unwrap();
        terminal.draw(|frame| draw(frame, &self.model, theme)).unwrap();
        terminal.backend().buffer().clone()
    }

    /// What is drawn, as lines.
    pub(super) fn drawn(&self, width: u16, height: u16) -> String {
        text(&self.buffer(width, height, Theme::plain()))
    }
}

/// A buffer's letters, line by line.
pub(super) fn text(buffer: &Buffer) -> String {
    let mut text = String::new();
    for row in 0..buffer.area.height {
        let cells = (0..buffer.area.width).map(|column| buffer[(column, row)].symbol());
        let line: String = cells.collect();
        writeln!(text, "{}", line.trim_end()).unwrap();
    }
    text
}

fn log(set: u32) -> Wish {
    let (piece, set) = ("Squat".to_owned(), Some(set));
    Wish::Taps(vec![Tap::LogSet { piece, set, load: None, reps: None, reserve: None }])
}

#[test]
fn one_key_logs_a_set_as_planned() {
    let mut ana = Played::small();
    // Without a load known the key asks for one.
    assert_eq!(ana.key(KeyCode::Enter), Wish::Nothing);
    assert!(matches!(ana.model.mode, Mode::Typing(_)));
    ana.types("50 x 8 r3");
    assert!(ana.said().contains("Squat set 1, 50 kg x 8"), "{}", ana.said());
    assert_eq!(ana.key(KeyCode::Char(' ')), log(2));
    assert!(matches!(ana.model.said, Some((Tone::Saved, _))));
    assert!(ana.said().contains("Squat set 2, "), "{}", ana.said());
}

#[test]
fn what_is_done_is_never_logged_anew_by_the_one_key() {
    let mut ana = Played::small();
    ana.types("50 x 8 r3");
    ana.key(KeyCode::Up);
    // On the done set the key opens its line; empty, it changes nothing.
    assert_eq!(ana.key(KeyCode::Enter), Wish::Nothing);
    ana.types("7");
    let PieceView::Strength { view } = &ana.model.screen.pieces[0] else { panic!() };
    let done = view.sets[0].done.as_ref().unwrap();
    assert_eq!((done.reps, done.load_text.as_str(), done.reserve), (7, "50 kg", Some(3)));
    // And leads back to what is next.
    assert_eq!(ana.key(KeyCode::Enter), log(2));
}

#[test]
fn the_one_key_follows_a_holds_clock() {
    let mut ana = Played::small();
    // Sets, windows, the reading before.
    for what in ["Squat: later", "Corners: later", "the reading: later"] {
        ana.key(KeyCode::Char('s'));
        assert!(ana.said().starts_with(what), "{}", ana.said());
    }
    let mut said = Vec::new();
    // Begin, pause, go on; run out; log.
    for ms in [7_000, 3_000, 300_000, 0] {
        ana.key(KeyCode::Enter);
        said.push(ana.said().to_owned());
        ana.pass(ms);
    }
    assert!(said[0].ends_with("clock, begin") && said[1].ends_with("clock, pause"), "{said:?}");
    assert!(said[2].ends_with("clock, resume"), "{said:?}");
    assert!(said[3].contains("Calves, held side 1 120 s, side 2 120 s"), "{said:?}");
}

#[test]
fn a_second_press_does_not_log_the_window_to_come() {
    let mut ana = Played::small();
    ana.key(KeyCode::Char('s'));
    ana.key(KeyCode::Enter);
    assert!(ana.said().ends_with("clock, begin"), "{}", ana.said());
    ana.pass(40_000);
    assert!(matches!(ana.key(KeyCode::Enter), Wish::Taps(_)));
    assert_eq!(ana.key(KeyCode::Enter), Wish::Nothing);
    assert!(ana.said().contains("window 1 is logged"), "{}", ana.said());
    // The third window runs and the second was forgotten: the third is the one that is logged.
    ana.pass(100_000);
    let Wish::Taps(taps) = ana.key(KeyCode::Enter) else { panic!() };
    assert!(matches!(&taps[0], Tap::LogWindow { window: Some(3), .. }), "{taps:?}");
    assert!(ana.drawn(80, 24).contains("window 2: not logged"));
}

#[test]
fn a_session_ends_with_a_rating_and_can_be_opened_again() {
    let mut ana = Played::small();
    ana.types("50 x 8");
    ana.key(KeyCode::Char('f'));
    ana.types("12");
    assert!(matches!(ana.model.mode, Mode::Typing(_)), "12 is no rating");
    ana.key(KeyCode::Backspace);
    ana.key(KeyCode::Backspace);
    ana.types("8");
    assert_eq!(ana.model.screen.state, SessionState::Finished);
    assert_eq!(ana.key(KeyCode::Char('u')), Wish::Taps(vec![Tap::Undo]));
    assert_eq!(ana.model.screen.state, SessionState::Running);
}

#[test]
fn control_c_leaves_from_everywhere() {
    for open in ["", "?", "e", "d", "o"] {
        let mut ana = Played::small();
        open.chars().for_each(|key| drop(ana.key(KeyCode::Char(key))));
        let key = KeyEvent::new(KeyCode::Char('c'), KeyModifiers::CONTROL);
        assert_eq!(keys::key(&mut ana.model, key), Wish::Leave, "after {open:?}");
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
    let again = |ana: &Played| {
        let screen = ana.crew.athletes[0].today().unwrap();
        Played { crew: Crew::start(SMALL_PLAN, &[]).unwrap(), model: Model::new(screen) }
    };
    let back = again(&ana);
    assert_eq!(back.model.at().name(), Some("Calves"));
    assert!(back.drawn(80, 24).contains("side 1 of 2"), "{}", back.drawn(80, 24));
    // Also when it ran out meanwhile: its seconds wait to be logged.
    ana.pass(900_000);
    assert_eq!(again(&ana).model.at().name(), Some("Calves"));
    ana.key(KeyCode::Enter);
    assert!(ana.said().contains("Calves, held side 1 120 s"), "{}", ana.said());
    assert_eq!(again(&ana).model.at().name(), Some("Squat"), "then the day goes on");
}

#[test]
fn control_keys_take_nothing_back() {
    let mut ana = Played::small();
    ana.types("50 x 8");
    let control = |letter| KeyEvent::new(KeyCode::Char(letter), KeyModifiers::CONTROL);
    for letter in "uesfn".chars() {
        assert_eq!(ana.press(control(letter)), Wish::Nothing, "{letter}");
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
    ana.key(KeyCode::Char('e'));
    ana.types("flag knee 11");
    let Mode::Typing(typing) = &ana.model.mode else { panic!("the line was closed") };
    assert_eq!(typing.text, "flag knee 11");
    assert!(typing.hint.starts_with("not saved: "), "{}", typing.hint);
    ana.press(KeyEvent::new(KeyCode::Char('u'), KeyModifiers::CONTROL));
    ana.types("flag knee 3");
    assert!(ana.said().contains("Squat, knee 3/10"), "{}", ana.said());
    assert!(matches!(ana.model.mode, Mode::Day));
}

/// Any keys at any size: nothing breaks, nothing is drawn that steers a terminal, and what is called
/// saved is in the journal.
#[test]
fn any_keys_at_any_size() {
    let seed = 20_261_125;
    println!("seed {seed}");
    let mut chance = ChaCha8Rng::seed_from_u64(seed);
    let letters: Vec<char> = "eeuodcsfwbpnx+?q  0123456789xr.".chars().collect();
    let plans =
        [(SMALL_PLAN, "Any evening"), (DEMO_PLAN, "Squat evening"), (DEMO_PLAN, "Row evening")];
    let (mut saved, mut frames) = (0, 0);
    for (plan, day) in plans {
        let mut ana = Played::of(plan, day);
        let mut highest = 0;
        for _ in 0..400 {
            let typing = matches!(ana.model.mode, Mode::Typing(_));
            if typing && chance.random_bool(0.5) {
                // Something that makes sense now and then.
                let lines = ["50x8", "60 x 5 r1", "12 8", "7", "10.5 11", "120 95", "flag knee 3"];
                ana.press(KeyEvent::new(KeyCode::Char('u'), KeyModifiers::CONTROL));
                ana.types(lines[chance.random_range(0..lines.len())]);
            }
            ana.key(match chance.random_range(0..10) {
                0 | 1 => KeyCode::Enter,
                2 => KeyCode::Up,
                3 => KeyCode::Down,
                4 => KeyCode::Esc,
                _ => KeyCode::Char(letters[chance.random_range(0..letters.len())]),
            });
            if let Some((Tone::Saved, text)) = &ana.model.said {
                let number = text.trim_start_matches("saved ").split(':').next().unwrap();
                let number: u64 = number.parse().unwrap();
                assert!(number >= highest, "{text} after {highest}");
                saved += u64::from(number > highest);
                highest = number;
            }
            ana.pass(chance.random_range(0..20_000));
            let (width, height) = (chance.random_range(1..140), chance.random_range(1..50));
            let drawn = ana.buffer(width, height, Theme::plain());
            assert!(drawn.content.iter().all(|cell| !cell.symbol().contains(char::is_control)));
            frames += 1;
        }
        let journal = ana.device().companion.export().unwrap().journal;
        assert!(journal.len() as u64 >= highest, "{highest} of {}", journal.len());
    }
    assert!(saved > 50 && frames == 1_200, "only {saved} taps were saved");
}
