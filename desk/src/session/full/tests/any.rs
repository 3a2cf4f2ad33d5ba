//! Any keys at any size.

use holdfast_tests::{DEMO_PLAN, SMALL_PLAN};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use ratatui::crossterm::event::{KeyCode, KeyEvent, KeyModifiers};

use super::Played;
use crate::full::theme::Theme;
use crate::session::full::model::{Mode, Tone};

/// Nothing breaks, nothing is drawn that steers a terminal, and what is called
/// saved is in the journal.
#[test]
fn any_keys_at_any_size() {
    let seed = 20_261_125;
    println!("seed {seed}");
    let mut chance = ChaCha8Rng::seed_from_u64(seed);
    let letters: Vec<char> = "eeuodcsfwbpnxmv+?q  0123456789xr.".chars().collect();
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
                let lines = [
                    "50x8",
                    "60 x 5, 1 left",
                    "2",
                    "12 8",
                    "7",
                    "10.5 11",
                    "120 95",
                    "flag knee 3",
                ];
                ana.press(KeyEvent::new(KeyCode::Char('u'), KeyModifiers::CONTROL));
                ana.types(lines[chance.random_range(0..lines.len())]);
            }
            ana.key(match chance.random_range(0..10) {
                0 | 1 => KeyCode::Enter,
                2 => KeyCode::Up,
                3 => KeyCode::Down,
                4 => KeyCode::Esc,
                5 => KeyCode::Tab,
                _ => KeyCode::Char(letters[chance.random_range(0..letters.len())]),
            });
            let number = ana.revision();
            assert!(number >= highest, "{number} after {highest}");
            saved += u64::from(number > highest);
            highest = number;
            let wrong = matches!(&ana.model.said, Some((Tone::NotSaved, text)) if text.is_empty());
            assert!(!wrong, "what is refused says why");
            ana.pass(chance.random_range(0..20_000));
            let (width, height) = (chance.random_range(1..140), chance.random_range(1..50));
            let drawn = ana.buffer(width, height, Theme::plain());
            assert!(drawn.content.iter().all(|cell| !cell.symbol().contains(char::is_control)));
            frames += 1;
        }
        let journal = ana.holdfast().export().unwrap().journal;
        assert!(journal.len() as u64 >= highest, "{highest} of {}", journal.len());
    }
    assert!(saved > 50 && frames == 1_200, "only {saved} taps were saved");
}
