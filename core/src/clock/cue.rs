//! Cues: the moments at which an athlete who is not looking must be told something.

use serde::Serialize;

use super::timeline::{Course, Timeline, whole_ms};
use crate::plan::keyword;

/// How long before the end of a side or window [`CueKind::LastSeconds`] is due, in milliseconds:
/// common practice, no source.
pub const LAST_SECONDS_MS: i64 = 10_000;

/// The most cues listed at once. A shell asks again long before it runs out of them.
pub const MAX_CUES: usize = 64;

keyword! {
    /// What a cue is for.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
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
        /// The rest between sets is over.
        RestOver = "rest-over",
    }
}

/// A cue that lies ahead if nothing more is done to the clock.
///
/// All of them can be scheduled at once, before the screen goes dark; a mark changes what lies
/// ahead, so a shell then takes back what it scheduled and schedules the new list.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Cue {
    /// Milliseconds from now; 0 is due at this very moment.
    pub due_in_ms: i64,
    /// When it is due by the boot clock of the moment that was asked about: what alarms are set by.
    pub due_boot_ms: i64,
    /// What it is for.
    pub kind: CueKind,
    /// The side or window it is about, from 1; for [`CueKind::GetReady`] the first, for
    /// [`CueKind::End`] the last, for [`CueKind::RestOver`] the set to come.
    pub turn: u32,
}

/// A cue that has passed since the athlete last did something to the clock.
///
/// A shell that was awake gave it when it was due. One that slept shows what it missed, and gives
/// none of it late: the state is what counts.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct PassedCue {
    /// Milliseconds since it was due, more than 0.
    pub ago_ms: i64,
    /// What it was for.
    pub kind: CueKind,
    /// As in [`Cue::turn`].
    pub turn: u32,
}

/// Cues in a stretch of a course, while they are being gathered.
pub(super) struct Gather {
    /// The first position that counts.
    pub(super) from: i128,
    /// The first that does not; none when all up to the end do.
    pub(super) to: Option<i128>,
    /// Of more than can be listed the latest are wanted, not the soonest.
    pub(super) latest: bool,
    found: Vec<(i128, CueKind, u32)>,
}

impl Gather {
    /// Adds a cue at a position, unless it lies outside.
    pub(super) fn add(&mut self, kind: CueKind, at: i128, turn: u32) {
        if at >= self.from && self.to.is_none_or(|to| at < to) {
            self.found.push((at, kind, turn));
        }
    }

    /// The cues of one turn, with those that are one clock's own from `of_turn`.
    fn turn(&mut self, course: &Course, turn: u32, of_turn: impl Fn(u32, &Course, &mut Gather)) {
        of_turn(turn, course, self);
        let (start, work) = (course.start(turn), course.work_of(turn));
        let last = i128::from(LAST_SECONDS_MS);
        if work / 2 < work - last {
            self.add(CueKind::Halfway, start + work / 2, turn);
        }
        if work > last {
            self.add(CueKind::LastSeconds, start + work - last, turn);
        }
    }

    /// Gathers, soonest first and at most [`MAX_CUES`]. Turns of no length have no cues.
    fn all(
        mut self,
        course: &Course,
        of_turn: impl Fn(u32, &Course, &mut Gather),
    ) -> Vec<(i128, CueKind, u32)> {
        let turns = if course.work > 0 { course.turns } else { 0 };
        if course.ready > 0 {
            self.add(CueKind::GetReady, 0, 1);
        }
        self.add(CueKind::End, course.end(), course.turns);
        let first = course.turn_at(self.from);
        if let (true, Some(to)) = (self.latest, self.to) {
            // The switch to a turn comes before its start.
            let last = course.turn_at(to).saturating_add(1).min(turns);
            for turn in (first..=last).rev() {
                if self.found.len() >= MAX_CUES + 2 {
                    break;
                }
                self.turn(course, turn, &of_turn);
            }
        } else {
            for turn in first..=turns {
                if self.found.len() >= MAX_CUES + 2 {
                    break;
                }
                self.turn(course, turn, &of_turn);
            }
        }
        self.found.sort_by_key(|(at, ..)| *at);
        if self.latest {
            let over = self.found.len().saturating_sub(MAX_CUES);
            self.found.drain(..over);
        } else {
            self.found.truncate(MAX_CUES);
        }
        self.found
    }
}

/// The cues ahead if nothing more is done, soonest first and at most [`MAX_CUES`].
///
/// `of_turn` adds the cues that are one clock's own for the turn it is given, all of them after
/// those of the turn before.
pub(super) fn cues_ahead(
    line: &Timeline,
    now_boot_ms: i64,
    of_turn: impl Fn(u32, &Course, &mut Gather),
) -> Vec<Cue> {
    let Some(from) = line.running_from() else { return Vec::new() };
    let gather = Gather { from, to: None, latest: false, found: Vec::new() };
    let cue = |(at, kind, turn): (i128, CueKind, u32)| {
        let due_in_ms = whole_ms(at - from);
        let due_boot_ms = now_boot_ms.saturating_add(due_in_ms);
        Cue { due_in_ms, due_boot_ms, kind, turn }
    };
    gather.all(&line.course, of_turn).into_iter().map(cue).collect()
}

/// The cues since the last mark, the earliest first and at most the latest [`MAX_CUES`].
pub(super) fn cues_passed(
    line: &Timeline,
    of_turn: impl Fn(u32, &Course, &mut Gather),
) -> Vec<PassedCue> {
    let Some((from, to)) = line.run_since_mark() else { return Vec::new() };
    let gather = Gather { from, to: Some(to), latest: true, found: Vec::new() };
    let passed = |(at, kind, turn): (i128, CueKind, u32)| PassedCue {
        ago_ms: whole_ms(to - at),
        kind,
        turn,
    };
    gather.all(&line.course, of_turn).into_iter().map(passed).collect()
}
