//! Presses that come too soon to be meant, of those keys that are no taps: the core knows its own.

use std::time::Instant;

use ratatui::crossterm::event::{KeyCode, KeyEvent};

use super::form::{Choice, Picker};
use super::model::{Mode, Model};
use crate::full::bounce::Bounce;

/// What was pressed last, and whether that went to a line, a list or a text.
#[derive(Default)]
pub(super) struct Bounced {
    presses: Bounce,
    in_form: bool,
}

impl Bounced {
    /// Takes note of a key, and says whether it is a press that was taken already. What is typed into a
    /// line was meant, however fast, and so was the Enter that ends it.
    pub(super) fn is(&mut self, key: KeyEvent, model: &Model, now: Instant) -> bool {
        let letter = matches!(key.code, KeyCode::Char(_));
        let before = std::mem::replace(&mut self.in_form, !matches!(model.mode, Mode::Day));
        match &model.mode {
            Mode::Typing(_) if letter => false,
            // What opens after the line is still not answered by the same press.
            Mode::Typing(typing) => self.presses.is(key, now) && typing.text.is_empty(),
            // A mark is seen at once and taken back by the next press.
            Mode::Picking(Picker { choice: Choice::Signs { .. }, .. }) if letter => false,
            Mode::Picking(_) | Mode::Help(_) | Mode::Whole(_) => self.presses.is(key, now),
            Mode::Day => {
                let soon = self.presses.is(key, now);
                // Each 15 s more is wanted for itself: the core takes them all.
                let more = matches!(key.code, KeyCode::Char('+' | '='));
                // Held down, it is the same press all along.
                self.in_form = before && soon;
                soon && (before || more)
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use std::time::Duration;

    use holdfast_core::session::PieceKindView;

    use super::super::tests::Played;
    use super::*;

    /// A session whose keys come at given moments.
    struct Keys {
        ana: Played,
        bounced: Bounced,
        begun: Instant,
        ms: u64,
    }

    impl Keys {
        /// Presses a key as the program does, and says whether it was taken.
        fn press(&mut self, code: KeyCode, ms: u64) -> bool {
            self.ana.pass((ms.saturating_sub(self.ms)) as i64);
            self.ms = ms;
            let (key, now) = (KeyEvent::from(code), self.begun + Duration::from_millis(ms));
            if self.bounced.is(key, &self.ana.model, now) {
                return false;
            }
            self.ana.key_at_once(code);
            !self.ana.model.twice
        }

        fn types(&mut self, text: &str, ms: u64) {
            text.chars().for_each(|letter| assert!(self.press(KeyCode::Char(letter), ms)));
        }
    }

    fn keys() -> Keys {
        let (bounced, begun) = (Bounced::default(), Instant::now());
        Keys { ana: Played::small(), bounced, begun, ms: 0 }
    }

    #[test]
    fn undo_held_down_takes_back_one_thing() {
        let mut keys = keys();
        for (ms, typed) in [(0, "50 x 8"), (1_000, "50 x 6"), (2_000, "50 x 5")] {
            keys.press(KeyCode::Char('e'), ms);
            keys.types(typed, ms);
            assert!(keys.press(KeyCode::Enter, ms), "a typed line is ended at once");
        }
        keys.press(KeyCode::Char('u'), 4_000);
        for ms in (4_500..5_400).step_by(30) {
            keys.press(KeyCode::Char('u'), ms);
        }
        assert!(keys.ana.said().starts_with("Undone: Squat set 3"), "{}", keys.ana.said());
        assert!(keys.ana.model.twice);
        let PieceKindView::Strength { view } = &keys.ana.model.screen.pieces[0].kind else {
            panic!("no sets")
        };
        assert_eq!(view.next_set, Some(3), "two sets are left");
    }

    #[test]
    fn what_is_typed_is_meant_and_what_opens_after_it_is_not_answered_by_the_same_press() {
        let mut keys = keys();
        keys.press(KeyCode::Char('e'), 0);
        keys.types("xxuu  ", 0);
        assert!(keys.press(KeyCode::Enter, 0) && keys.press(KeyCode::Enter, 10));
        for _ in 0..6 {
            keys.press(KeyCode::Backspace, 20);
        }
        assert!(!keys.press(KeyCode::Enter, 500), "an empty line is ended by one that is meant");
        keys.types("50x8", 500);
        assert!(keys.press(KeyCode::Enter, 510));
        // The rest is not ended by the press that ended the line.
        assert!(!keys.press(KeyCode::Enter, 560) && !keys.press(KeyCode::Char(' '), 1_200));
        assert!(keys.press(KeyCode::Enter, 2_000));
    }

    #[test]
    fn a_key_that_closed_the_help_does_nothing_more_while_it_is_held() {
        let mut keys = keys();
        keys.press(KeyCode::Char('?'), 0);
        assert!(keys.press(KeyCode::Char('s'), 100), "it does nothing there");
        assert!(matches!(keys.ana.model.mode, Mode::Help(_)));
        assert!(keys.press(KeyCode::Char(' '), 200));
        assert!(matches!(keys.ana.model.mode, Mode::Day));
        assert!(!keys.press(KeyCode::Char(' '), 600));
    }

    /// Held down, the key of the session's end does not end it without a rating.
    #[test]
    fn a_press_held_down_rates_nothing() {
        let mut keys = keys();
        for letter in ['s', 's', 's', 's'] {
            keys.ana.key(KeyCode::Char(letter));
        }
        for ms in std::iter::once(10_000).chain((10_500..11_400).step_by(30)) {
            keys.press(KeyCode::Enter, ms);
        }
        assert!(matches!(keys.ana.model.mode, Mode::Typing(_)));
    }

    #[test]
    fn fifteen_seconds_more_are_wanted_each_for_itself_but_not_held_down() {
        let mut keys = keys();
        for letter in ['s', 's', 's'] {
            keys.ana.key(KeyCode::Char(letter));
        }
        keys.ana.key(KeyCode::Enter);
        keys.ana.pass(10_000);
        let plus = |keys: &mut Keys, ms| keys.press(KeyCode::Char('+'), ms);
        assert!(plus(&mut keys, 20_000) && plus(&mut keys, 20_200) && plus(&mut keys, 20_400));
        assert!((20_430..21_400).step_by(30).all(|ms| !plus(&mut keys, ms)));
    }
}
