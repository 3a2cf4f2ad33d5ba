//! A key that bounces, or is held down, counts once: nobody lifts two sets in half a second.

use std::time::{Duration, Instant};

use ratatui::crossterm::event::{KeyCode, KeyEvent};

use super::model::{Mode, Model};

/// Longer than the time after which a key held down begins to repeat.
const APART: Duration = Duration::from_millis(700);

/// When the one key was pressed last.
#[derive(Default)]
pub(super) struct Bounce {
    last: Option<Instant>,
}

impl Bounce {
    /// True for the one key pressed again so soon that it cannot be meant. A line with something typed
    /// into it was meant, however fast.
    pub(super) fn is(&mut self, key: KeyEvent, model: &Model, now: Instant) -> bool {
        let marks = matches!(model.mode, Mode::Picking(_)) && key.code == KeyCode::Char(' ');
        let one = matches!(key.code, KeyCode::Enter | KeyCode::Char(' ')) && !marks;
        let typed = matches!(&model.mode, Mode::Typing(typing) if !typing.text.is_empty());
        if !one {
            return false;
        }
        // Each one that is too soon begins the time anew: a key held down repeats for long.
        let last = self.last.replace(now);
        !typed && last.is_some_and(|last| now.saturating_duration_since(last) < APART)
    }
}

#[cfg(test)]
mod tests {
    use super::super::tests::Played;
    use super::*;

    #[test]
    fn the_one_key_counts_once_however_long_it_is_held() {
        let mut ana = Played::small();
        let mut bounce = Bounce::default();
        let begun = Instant::now();
        let mut is = |ana: &Played, code: KeyCode, ms: u64| {
            bounce.is(KeyEvent::from(code), &ana.model, begun + Duration::from_millis(ms))
        };
        assert!(!is(&ana, KeyCode::Enter, 0));
        // Held down: a pause, then again and again.
        for ms in (500..3000).step_by(30) {
            assert!(is(&ana, KeyCode::Enter, ms), "{ms}");
            assert!(!is(&ana, KeyCode::Down, ms), "other keys may follow at once");
        }
        assert!(is(&ana, KeyCode::Char(' '), 3500), "the other one key");
        assert!(!is(&ana, KeyCode::Enter, 4300));
        // A typed line may be ended at once; what opens after it is not answered by the same press.
        ana.key(KeyCode::Char('e'));
        "50x8".chars().for_each(|letter| drop(ana.key(KeyCode::Char(letter))));
        assert!(!is(&ana, KeyCode::Enter, 4400));
        ana.key(KeyCode::Enter);
        assert!(is(&ana, KeyCode::Enter, 4450));
    }
}
