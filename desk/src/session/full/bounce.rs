//! Which presses of a session's keys come too soon to be meant.

use std::time::Instant;

use ratatui::crossterm::event::{KeyCode, KeyEvent};

use super::form::{Choice, Picker};
use super::model::{Mode, Model};
use crate::full::bounce::Bounce;

/// True for a key pressed again so soon that it cannot be meant. What is typed into a line was
/// meant, however fast, and so was the Enter that ends it.
pub(super) fn too_soon(bounce: &mut Bounce, key: KeyEvent, model: &Model, now: Instant) -> bool {
    let letter = matches!(key.code, KeyCode::Char(_));
    match &model.mode {
        Mode::Typing(_) if letter => false,
        // What opens after the line is still not answered by the same press.
        Mode::Typing(typing) => bounce.is(key, now) && typing.text.is_empty(),
        // A mark is seen at once and taken back by the next press.
        Mode::Picking(Picker { choice: Choice::Signs { .. }, .. }) if letter => false,
        Mode::Picking(_) | Mode::Day | Mode::Help(_) => bounce.is(key, now),
    }
}

#[cfg(test)]
mod tests {
    use std::time::Duration;

    use super::super::tests::Played;
    use super::*;

    /// A session whose keys come at given moments.
    struct Keys {
        ana: Played,
        bounce: Bounce,
        begun: Instant,
    }

    impl Keys {
        /// Presses a key as the program does, and says whether it was taken.
        fn press(&mut self, code: KeyCode, ms: u64) -> bool {
            let (key, now) = (KeyEvent::from(code), self.begun + Duration::from_millis(ms));
            let taken = !too_soon(&mut self.bounce, key, &self.ana.model, now);
            if taken {
                self.ana.key(code);
            }
            taken
        }
    }

    fn keys() -> Keys {
        Keys { ana: Played::small(), bounce: Bounce::default(), begun: Instant::now() }
    }

    #[test]
    fn undo_held_down_takes_back_one_thing() {
        let mut keys = keys();
        for typed in ["50 x 8", "50 x 6", "50 x 5"] {
            keys.press(KeyCode::Char('e'), 0);
            typed.chars().for_each(|letter| assert!(keys.press(KeyCode::Char(letter), 0)));
            assert!(keys.press(KeyCode::Enter, 0), "a typed line is ended at once");
        }
        keys.press(KeyCode::Char('u'), 1_000);
        for ms in (1_500..2_400).step_by(30) {
            keys.press(KeyCode::Char('u'), ms);
        }
        assert!(keys.ana.said().starts_with("saved") && keys.ana.said().contains("set 3"));
        let screen = &keys.ana.model.screen;
        let holdfast_core::companion::PieceView::Strength { view } = &screen.pieces[0] else {
            panic!("no sets")
        };
        assert_eq!(view.next_set, Some(3), "two sets are left");
    }

    #[test]
    fn what_is_typed_is_meant_and_what_opens_after_it_is_not_answered_by_the_same_press() {
        let mut keys = keys();
        keys.press(KeyCode::Char('e'), 0);
        "xxuu  ".chars().for_each(|letter| assert!(keys.press(KeyCode::Char(letter), 0)));
        assert!(keys.press(KeyCode::Enter, 0) && keys.press(KeyCode::Enter, 10));
        for _ in 0..6 {
            keys.press(KeyCode::Backspace, 20);
        }
        assert!(!keys.press(KeyCode::Enter, 500), "an empty line is ended by one that is meant");
        "50x8".chars().for_each(|letter| assert!(keys.press(KeyCode::Char(letter), 500)));
        assert!(keys.press(KeyCode::Enter, 510));
        assert!(!keys.press(KeyCode::Enter, 560) && !keys.press(KeyCode::Char(' '), 1_200));
        assert!(keys.press(KeyCode::Enter, 2_000));
    }

    #[test]
    fn a_key_that_closed_the_help_does_nothing_more_while_it_is_held() {
        let mut keys = keys();
        keys.press(KeyCode::Char('?'), 0);
        assert!(keys.press(KeyCode::Char('s'), 100));
        assert!(matches!(keys.ana.model.mode, Mode::Day));
        assert!(!keys.press(KeyCode::Char('s'), 600));
    }
}
