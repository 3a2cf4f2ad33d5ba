//! A key that bounces, or is held down, counts once: nobody means the same thing twice in half a second.

use std::collections::HashMap;
use std::time::{Duration, Instant};

use ratatui::crossterm::event::{KeyCode, KeyEvent, KeyModifiers};

/// Longer than the time after which a key held down begins to repeat.
const APART: Duration = Duration::from_millis(700);

/// For a key that is meant several times in a row: shorter than two taps, longer than two repeats.
const APART_IN_A_ROW: Duration = Duration::from_millis(150);

/// When each key that does something was pressed last.
#[derive(Default)]
pub(crate) struct Bounce {
    last: HashMap<KeyCode, Instant>,
}

impl Bounce {
    /// Takes note of a key and says whether it came so soon after its last press that it cannot be
    /// meant. Keys that only move or open something are always meant.
    pub(crate) fn is(&mut self, key: KeyEvent, now: Instant) -> bool {
        let Some((key, apart)) = guarded(key) else { return false };
        // Each press that is too soon begins the time again: a key held down repeats for long.
        let last = self.last.insert(key, now);
        last.is_some_and(|last| now.saturating_duration_since(last) < apart)
    }
}

/// The key a press counts for, and how far apart two presses are two.
fn guarded(key: KeyEvent) -> Option<(KeyCode, Duration)> {
    match key.code {
        KeyCode::Enter | KeyCode::Char(' ') => Some((KeyCode::Enter, APART)),
        KeyCode::Char(_) if key.modifiers.contains(KeyModifiers::CONTROL) => None,
        KeyCode::Char('+' | '=') => Some((KeyCode::Char('+'), APART_IN_A_ROW)),
        KeyCode::Char('u' | 'n' | 'x' | 'p' | 'b' | 's') => Some((key.code, APART)),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The presses that are taken of one key pressed at these milliseconds.
    fn taken(code: KeyCode, at: impl IntoIterator<Item = u64>) -> Vec<u64> {
        let (mut bounce, begun) = (Bounce::default(), Instant::now());
        let mut is = |ms| bounce.is(KeyEvent::from(code), begun + Duration::from_millis(ms));
        at.into_iter().filter(|ms| !is(*ms)).collect()
    }

    /// A second of holding down: the first repeat after half a second, then each 30 ms.
    fn held_down() -> impl Iterator<Item = u64> {
        std::iter::once(0).chain((500..1_400).step_by(30))
    }

    #[test]
    fn a_key_that_does_something_counts_once_however_long_it_is_held() {
        for letter in "unxpbs ".chars().map(KeyCode::Char).chain([KeyCode::Enter]) {
            assert_eq!(taken(letter, held_down()), [0], "{letter}");
            assert_eq!(taken(letter, [0, 60, 120, 800, 1_600]), [0, 1_600], "{letter}");
        }
    }

    #[test]
    fn two_taps_of_plus_are_two_and_held_down_it_adds_no_minutes() {
        for plus in ['+', '='] {
            assert_eq!(taken(KeyCode::Char(plus), [0, 20, 200, 400]), [0, 200, 400]);
            assert_eq!(taken(KeyCode::Char(plus), held_down()), [0, 500]);
        }
    }

    #[test]
    fn keys_that_only_move_may_follow_at_once() {
        for code in "03eod?q".chars().map(KeyCode::Char).chain([KeyCode::Up, KeyCode::Esc]) {
            assert_eq!(taken(code, held_down()).len(), 31, "{code}");
        }
    }

    #[test]
    fn each_key_has_its_own_time_and_enter_and_space_are_one_key() {
        let (mut bounce, begun) = (Bounce::default(), Instant::now());
        let mut is =
            |code: KeyCode, ms| bounce.is(KeyEvent::from(code), begun + Duration::from_millis(ms));
        assert!(!is(KeyCode::Enter, 0));
        assert!(!is(KeyCode::Char('n'), 10) && !is(KeyCode::Char('x'), 20));
        assert!(is(KeyCode::Char(' '), 300) && is(KeyCode::Enter, 900));
        assert!(is(KeyCode::Char('n'), 600), "other keys do not end its time");
        assert!(!is(KeyCode::Char(' '), 1_600));
    }
}
