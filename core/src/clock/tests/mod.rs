//! Tests of the clocks: cases worked out by hand, and a slow second implementation to agree with.

mod against_slow;
mod bounds;
mod hold_cases;
mod hold_extended;
mod interval_cases;
mod slow;

use super::{Act, Cue, CueKind, HoldSpec, HoldState, IntervalSpec, IntervalState, Mark};
use super::{hold_state, interval_state};
use crate::Instant;

/// A device that time passes for, and what was done on it.
#[derive(Clone, Debug)]
struct Device {
    wall_ms: i64,
    boot_ms: i64,
    boots: u32,
    offset_min: i32,
    marks: Vec<Mark>,
}

impl Device {
    fn new() -> Device {
        Device {
            wall_ms: 1_795_563_000_000,
            boot_ms: 86_400_000,
            boots: 1,
            offset_min: 60,
            marks: Vec::new(),
        }
    }

    fn now(&self) -> Instant {
        Instant {
            wall_ms: self.wall_ms,
            offset_min: self.offset_min,
            boot_ms: self.boot_ms,
            boot_id: format!("boot-{}", self.boots),
        }
    }

    /// Time passes: screen on or off, app there or killed, it is all the same.
    fn wait(&mut self, ms: i64) -> &mut Device {
        self.wall_ms += ms;
        self.boot_ms += ms;
        self
    }

    fn set_wall(&mut self, by_ms: i64) -> &mut Device {
        self.wall_ms += by_ms;
        self
    }

    /// Starts again, `ms` after it went off.
    fn reboot(&mut self, ms: i64) -> &mut Device {
        self.wall_ms += ms;
        self.boot_ms = 0;
        self.boots += 1;
        self
    }

    /// The app is killed and opened: the marks are read back from what is on disk.
    fn kill(&mut self) {
        let line = serde_json::to_string(&self.marks).unwrap();
        self.marks = serde_json::from_str(&line).unwrap();
    }

    fn act(&mut self, act: Act) -> &mut Device {
        self.marks.push(Mark { act, at: self.now() });
        self
    }

    fn hold(&self, spec: &HoldSpec) -> HoldState {
        hold_state(spec, &self.marks, &self.now())
    }

    fn interval(&self, spec: &IntervalSpec) -> IntervalState {
        interval_state(spec, &self.marks, &self.now())
    }
}

/// Cues in short, for comparing.
fn dues(cues: &[Cue]) -> Vec<(i64, CueKind)> {
    cues.iter().map(|cue| (cue.due_in_ms, cue.kind)).collect()
}
