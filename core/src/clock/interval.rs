//! The interval clock: windows of one length, each starting as the one before it ends.

use serde::Serialize;

use super::cue::{Cue, CueKind, Gather, PassedCue, cues_ahead, cues_passed};
use super::timeline::{Course, Standing, Timeline};
use super::{During, Mark, Trust};
use crate::instant::Instant;
use crate::plan::Interval;

/// Milliseconds to get ready before the first window: common practice, no source.
pub const INTERVAL_READY_MS: i64 = 10_000;

/// How an interval piece is timed. A length below 0 is taken as 0.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct IntervalSpec {
    /// Milliseconds to get ready before the first window.
    pub ready_ms: i64,
    /// Milliseconds of one window.
    pub window_ms: i64,
    /// How many windows.
    pub windows: u32,
}

/// What an interval clock says at a moment.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct IntervalState {
    /// What is going on.
    pub phase: IntervalPhase,
    /// Milliseconds from now to the end of the window that is running; none when none is.
    pub window_ends_in_ms: Option<i64>,
    /// The cues ahead if nothing more is done, soonest first; none while paused.
    pub cues: Vec<Cue>,
    /// Milliseconds to the end of the last window if it runs on; none when it is not begun or over.
    pub ends_in_ms: Option<i64>,
    /// The cues since the last mark, the earliest first: what a phone that slept has missed.
    pub passed: Vec<PassedCue>,
    /// What the time rests on.
    pub trust: Trust,
}

/// What is going on in an interval piece.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "phase", rename_all = "kebab-case")]
pub enum IntervalPhase {
    /// Nothing yet.
    NotBegun,
    /// Getting ready for the first window.
    Ready {
        /// Milliseconds left of it.
        left_ms: i64,
    },
    /// A window is running.
    Window {
        /// Which, from 1.
        window: u32,
        /// Milliseconds left of it.
        left_ms: i64,
    },
    /// Standing still.
    Paused {
        /// What it stands still in: getting ready, or a window.
        during: During,
        /// The window it is in, or 1 while getting ready.
        window: u32,
        /// Milliseconds that will be left of it on going on.
        left_ms: i64,
    },
    /// Over.
    Done {
        /// True when the time ran out; false when a stop or a skip ended it.
        ran_out: bool,
        /// Milliseconds since.
        ago_ms: i64,
    },
}

impl IntervalSpec {
    /// The timing of a planned interval piece, with the usual time to get ready.
    pub fn of(interval: &Interval) -> IntervalSpec {
        IntervalSpec {
            ready_ms: INTERVAL_READY_MS,
            window_ms: interval.window_ms,
            windows: interval.windows(),
        }
    }
}

/// What the interval clock says at `now`, after `marks` in the order they were made.
pub fn interval_state(spec: &IntervalSpec, marks: &[Mark], now: &Instant) -> IntervalState {
    let course = Course::new(spec.ready_ms, spec.window_ms, 0, spec.windows);
    let line = Timeline::fold(course, marks, now);
    let phase = match line.standing() {
        Standing::NotBegun => IntervalPhase::NotBegun,
        Standing::Done { ran_out, ago_ms } => IntervalPhase::Done { ran_out, ago_ms },
        Standing::Live { spot, paused } => {
            let (window, left_ms) = (spot.turn, spot.left_ms);
            match spot.during {
                during if paused => IntervalPhase::Paused { during, window, left_ms },
                During::Ready => IntervalPhase::Ready { left_ms },
                // With a switch of no length there is never a moment in one.
                During::Work | During::Switch => IntervalPhase::Window { window, left_ms },
            }
        }
    };
    let window_ends_in_ms = match phase {
        IntervalPhase::Window { left_ms, .. } => Some(left_ms),
        _ => None,
    };
    let add_window = |window: u32, course: &Course, gather: &mut Gather| {
        let kind = if window == 1 { CueKind::Begin } else { CueKind::NextWindow };
        gather.add(kind, course.start(window), window);
    };
    IntervalState {
        phase,
        window_ends_in_ms,
        cues: cues_ahead(&line, now.boot_ms, add_window),
        ends_in_ms: line.ends_in_ms(),
        passed: cues_passed(&line, add_window),
        trust: line.trust,
    }
}
