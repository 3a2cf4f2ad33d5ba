//! Cues that went by while nobody could give them: the app was not running, or it slept.

use crate::clock::{CueKind, PassedCue};
use crate::instant::Instant;
use crate::words;

/// A cue that came so many milliseconds ago is not given any more: the screen shows how things stand.
pub const LATE_MS: i64 = 2_000;

/// The cues that went by, of each clock on a screen.
#[derive(Default)]
pub(crate) struct WentBy {
    missed: Vec<Missed>,
    looked: Option<Instant>,
}

/// A cue of a piece's clock.
#[derive(Clone, PartialEq, Eq)]
struct Missed {
    piece: String,
    kind: CueKind,
    turn: u32,
    words: String,
}

/// The cues that passed on a piece's clock since something was done to it, each with its words.
pub(crate) struct Passed {
    pub(crate) piece: String,
    pub(crate) cues: Vec<(PassedCue, String)>,
}

impl WentBy {
    /// Takes in what has passed as of a moment. What went by is told until the next cue is given, or
    /// something is done to the clock.
    pub(crate) fn look(&mut self, passed: &[Passed], now: &Instant) {
        let gap = self.looked.replace(now.clone()).map(|before| now.ms_since(&before));
        let mut told = Vec::new();
        for Passed { piece, cues } in passed {
            // What was due at the last look itself was given by it.
            let since = |cue: &PassedCue| gap.is_none_or(|gap| cue.ago_ms < gap);
            // The same bounds as those within which a cue is given.
            let given = |cue: &PassedCue| gap.is_some() && since(cue) && cue.ago_ms <= LATE_MS;
            if cues.iter().any(|(cue, _)| given(cue)) {
                continue;
            }
            for (cue, words) in cues {
                let (piece, words) = (piece.clone(), words.clone());
                let missed = Missed { piece, kind: cue.kind, turn: cue.turn, words };
                if since(cue) || self.missed.contains(&missed) {
                    told.push(missed);
                }
            }
        }
        self.missed = told;
    }

    /// What went by on a piece's clock, in a line; none where nothing did.
    pub(crate) fn line(&self, piece: &str) -> Option<String> {
        let of_it = self.missed.iter().filter(|missed| missed.piece == piece);
        let said: Vec<String> = of_it.map(|missed| missed.words.clone()).collect();
        (!said.is_empty()).then(|| words::went_by(&said))
    }
}
