//! Cues that went by while this program could not give them: it was not running, or it slept.

use holdfast_core::Instant;
use holdfast_core::clock::{CueKind, PassedCue};
use holdfast_core::companion::{PieceView, SessionScreen};

use crate::full::cues::LATE_MS;
use crate::session::full::name;

/// The most that are told: the latest say where the clock is.
const MOST: usize = 4;

/// The cues that went by, of each clock on a screen.
#[derive(Default)]
pub(super) struct WentBy {
    cues: Vec<Missed>,
    looked: Option<Instant>,
}

/// A cue of a piece's clock.
#[derive(PartialEq, Eq)]
struct Missed {
    piece: String,
    kind: CueKind,
    turn: u32,
    words: String,
}

impl WentBy {
    /// Takes in a screen as of a moment. What went by is told until the next cue is given, or
    /// something is done to the clock.
    pub(super) fn look(&mut self, screen: &SessionScreen, now: &Instant) {
        let gap = self.looked.replace(now.clone()).map(|before| now.ms_since(&before));
        let mut told = Vec::new();
        for piece in &screen.pieces {
            let since = |cue: &PassedCue| gap.is_none_or(|gap| cue.ago_ms <= gap);
            // The same bounds as those within which a cue is given.
            let given = |cue: &PassedCue| gap.is_some() && since(cue) && cue.ago_ms <= LATE_MS;
            let passed = passed(piece);
            if passed.iter().any(given) {
                continue;
            }
            for cue in passed {
                let missed = Missed {
                    piece: name(piece).to_owned(),
                    kind: cue.kind,
                    turn: cue.turn,
                    words: cue.words.clone(),
                };
                if since(cue) || self.cues.contains(&missed) {
                    told.push(missed);
                }
            }
        }
        self.cues = told;
    }

    /// What went by on a piece's clock, in a line; none where nothing did.
    pub(super) fn line(&self, piece: &str) -> Option<String> {
        let words: Vec<&str> =
            self.cues.iter().filter(|it| it.piece == piece).map(|it| it.words.as_str()).collect();
        let latest = words.len().saturating_sub(MOST);
        let more = if latest > 0 { "...; " } else { "" };
        (!words.is_empty()).then(|| format!("went by: {more}{}", words[latest..].join("; ")))
    }
}

/// The cues that passed on a piece's clock since something was done to it.
fn passed(piece: &PieceView) -> &[PassedCue] {
    let passed = match piece {
        PieceView::Interval { view } => view.clock.as_ref().map(|clock| &clock.passed),
        PieceView::Hold { view } => view.clock.as_ref().map(|clock| &clock.passed),
        _ => None,
    };
    passed.map_or(&[], Vec::as_slice)
}

#[cfg(test)]
mod tests {
    use ratatui::crossterm::event::KeyCode;

    use super::super::tests::Played;

    /// The hold's clock, begun and seen begin.
    fn holding() -> Played {
        let mut ana = Played::small();
        for _ in 0..3 {
            ana.key(KeyCode::Char('s'));
        }
        ana.pass(0);
        ana.key(KeyCode::Enter);
        ana
    }

    fn line(ana: &Played) -> Option<String> {
        ana.model.went_by.line("Calves")
    }

    #[test]
    fn cues_that_were_given_are_not_told_again() {
        let mut ana = holding();
        for _ in 0..1_400 {
            ana.pass(200);
            assert_eq!(line(&ana), None);
        }
    }

    #[test]
    fn what_went_by_in_a_sleep_is_told_until_the_next_cue() {
        let mut ana = holding();
        (0..60).for_each(|_| ana.pass(200));
        // At 12 s of 5 + 120: asleep until 100 s. Get ready and go were given before.
        ana.pass(88_000);
        assert_eq!(line(&ana).as_deref(), Some("went by: halfway"));
        assert!(ana.drawn(80, 24).contains("went by: halfway"), "{}", ana.drawn(80, 24));
        (0..70).for_each(|_| ana.pass(200));
        assert_eq!(line(&ana).as_deref(), Some("went by: halfway"), "nothing came since");
        (0..10).for_each(|_| ana.pass(200));
        assert_eq!(line(&ana), None, "ten seconds were said");
    }

    #[test]
    fn who_comes_back_is_told_until_something_is_done_to_the_clock() {
        let mut ana = holding();
        // Another program, at 80 s.
        ana.model = super::super::model::Model::new(ana.model.screen.clone());
        ana.pass(80_000);
        assert_eq!(line(&ana).as_deref(), Some("went by: get ready; go; halfway"));
        ana.pass(70_000);
        let told = "went by: ...; halfway; ten seconds; switch sides; go";
        assert_eq!(line(&ana).as_deref(), Some(told));
        ana.key(KeyCode::Enter);
        ana.pass(200);
        assert_eq!(line(&ana), None);
    }
}
