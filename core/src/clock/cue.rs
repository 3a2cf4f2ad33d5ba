//! Cues: the moments ahead at which an athlete who is not looking must be told something.

use serde::Serialize;

use super::timeline::{Timeline, whole_ms};
use crate::plan::keyword;

/// How long before the end of a side or window [`CueKind::LastSeconds`] is due, in milliseconds:
/// common practice, no source.
pub const LAST_SECONDS_MS: i64 = 10_000;

/// The most cues listed at once. A shell asks again long before it runs out of them.
pub const MAX_CUES: usize = 64;

keyword! {
    /// What a cue is for.
    CueKind {
        /// The time to get ready starts.
        GetReady = "get-ready",
        /// A side, or the first window, starts.
        Begin = "begin",
        /// Half of a side or window is over. Only where it comes before the last seconds.
        Halfway = "halfway",
        /// Push against the stretch.
        Contract = "contract",
        /// Let go and sink into the stretch.
        Release = "release",
        /// A side is over and the next is to be taken up.
        SwitchSide = "switch-side",
        /// A window is over and the next one runs.
        NextWindow = "next-window",
        /// [`LAST_SECONDS_MS`] are left of a side or window. Only where it is longer than that.
        LastSeconds = "last-seconds",
        /// It is over.
        End = "end",
    }
}

/// A cue that lies ahead if nothing more is done to the clock.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Cue {
    /// Milliseconds from now; 0 is due at this very moment.
    pub due_in_ms: i64,
    /// What it is for.
    pub kind: CueKind,
}

/// The cues ahead of a position, while they are being gathered.
pub(super) struct Ahead {
    pub(super) from: i128,
    cues: Vec<Cue>,
}

impl Ahead {
    /// Adds a cue at a position, unless that has been passed.
    pub(super) fn add(&mut self, kind: CueKind, at: i128) {
        if at >= self.from {
            self.cues.push(Cue { due_in_ms: whole_ms(at - self.from), kind });
        }
    }
}

/// Lists the cues ahead, soonest first and at most [`MAX_CUES`].
///
/// `of_turn` adds the cues that are one clock's own for the turn it is given, all of them after
/// those of the turn before. Turns of no length have none.
pub(super) fn cues_ahead(line: &Timeline, of_turn: impl Fn(u32, &mut Ahead)) -> Vec<Cue> {
    let Some(from) = line.running_from() else { return Vec::new() };
    let course = &line.course;
    let mut ahead = Ahead { from, cues: Vec::new() };
    if course.ready > 0 {
        ahead.add(CueKind::GetReady, 0);
    }
    let turns = if course.work > 0 { course.turns } else { 0 };
    for turn in course.turn_at(from)..=turns {
        if ahead.cues.len() >= MAX_CUES {
            break;
        }
        of_turn(turn, &mut ahead);
        let start = course.start(turn);
        let last = i128::from(LAST_SECONDS_MS);
        if course.work / 2 < course.work - last {
            ahead.add(CueKind::Halfway, start + course.work / 2);
        }
        if course.work > last {
            ahead.add(CueKind::LastSeconds, start + course.work - last);
        }
    }
    ahead.add(CueKind::End, course.end());
    ahead.cues.sort_by_key(|cue| cue.due_in_ms);
    ahead.cues.truncate(MAX_CUES);
    ahead.cues
}
