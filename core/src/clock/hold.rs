//! The hold clock: a stretch held for a time, side by side.

use serde::Serialize;

use super::cue::{Ahead, Cue, CueKind, MAX_CUES, cues_ahead};
use super::timeline::{Course, Reading, Timeline};
use super::{During, Mark};
use crate::Instant;
use crate::plan::{Hold, Technique};

/// Milliseconds to get into the stretch before the first side: common practice, no source.
pub const HOLD_READY_MS: i64 = 5_000;

/// Milliseconds to change over to the next side: common practice, no source.
pub const HOLD_SWITCH_MS: i64 = 10_000;

/// The most sides a hold clock counts.
pub const MAX_SIDES: u32 = 64;

/// How a hold is timed. A length below 0 is taken as 0.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct HoldSpec {
    /// Milliseconds to get ready before the first side.
    pub ready_ms: i64,
    /// Milliseconds each side is held.
    pub hold_ms: i64,
    /// Milliseconds to change over to the next side.
    pub switch_ms: i64,
    /// How many sides; those beyond [`MAX_SIDES`] are not counted.
    pub sides: u32,
    /// Milliseconds of each contraction; 0 for a static hold. Each side starts with a contraction:
    /// contract first, then relax, and so on until the side ends.
    pub contract_ms: i64,
    /// Milliseconds of each release; 0 makes the whole side one contraction.
    pub relax_ms: i64,
}

/// What a hold clock says at a moment.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct HoldState {
    /// What is going on.
    pub phase: HoldPhase,
    /// Milliseconds really held so far, one a side. Never more than the side asks for, nor than the
    /// time that passed by the clock's time rule: pauses and skipped time are not in it.
    pub held_ms: Vec<i64>,
    /// The cues ahead if nothing more is done, soonest first; none while paused.
    pub cues: Vec<Cue>,
}

/// What is going on in a hold.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "phase", rename_all = "kebab-case")]
pub enum HoldPhase {
    /// Nothing yet.
    NotBegun,
    /// Getting ready for the first side.
    Ready {
        /// Milliseconds left of it.
        left_ms: i64,
    },
    /// A side is being held.
    Holding {
        /// Which, from 1.
        side: u32,
        /// Milliseconds left of it.
        left_ms: i64,
        /// True while contracting against the stretch.
        push: bool,
    },
    /// Changing over to the next side.
    Switching {
        /// The side to take up, from 1.
        to_side: u32,
        /// Milliseconds left of the change.
        left_ms: i64,
    },
    /// Standing still.
    Paused {
        /// What it stands still in.
        during: During,
        /// The side being held, or the one to be taken up next, from 1.
        side: u32,
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

impl HoldSpec {
    /// The timing of a planned hold, with the usual times to get ready and to switch.
    pub fn of(hold: &Hold) -> HoldSpec {
        let (contract_ms, relax_ms) = match hold.technique {
            Technique::Static => (0, 0),
            Technique::ContractRelax => (hold.contract_ms, hold.relax_ms),
        };
        HoldSpec {
            ready_ms: HOLD_READY_MS,
            hold_ms: hold.hold_ms,
            switch_ms: HOLD_SWITCH_MS,
            sides: hold.sides,
            contract_ms,
            relax_ms,
        }
    }

    /// Milliseconds of a contraction and of the release after it.
    fn contract_and_relax(&self) -> (i128, i128) {
        (i128::from(self.contract_ms.max(0)), i128::from(self.relax_ms.max(0)))
    }

    /// True when a side is in a contraction after `spent_ms` of it.
    fn push_at(&self, spent_ms: i64) -> bool {
        let (contract, relax) = self.contract_and_relax();
        contract > 0 && i128::from(spent_ms) % (contract + relax) < contract
    }

    /// Adds the contractions and releases of a side from `start` to `end`. A contraction that the
    /// side's end cuts off has no release: the cue for the side's end is enough.
    fn add_pushes(&self, start: i128, end: i128, ahead: &mut Ahead) {
        let (contract, relax) = self.contract_and_relax();
        if contract == 0 {
            return;
        }
        if relax == 0 {
            return ahead.add(CueKind::Contract, start);
        }
        // From the cycle that is running, and no more than can be listed: a side may have millions.
        let cycle = contract + relax;
        let first = start + (ahead.from - start).max(0) / cycle * cycle;
        for push in (0..=MAX_CUES as i128).map(|n| first + n * cycle) {
            for (kind, at) in [(CueKind::Contract, push), (CueKind::Release, push + contract)] {
                if at < end {
                    ahead.add(kind, at);
                }
            }
        }
    }
}

/// What the hold clock says at `now`, after `marks` in the order they were made.
pub fn hold_state(spec: &HoldSpec, marks: &[Mark], now: &Instant) -> HoldState {
    let sides = spec.sides.min(MAX_SIDES);
    let course = Course::new(spec.ready_ms, spec.hold_ms, spec.switch_ms, sides);
    let line = Timeline::fold(course, marks, now);
    let phase = match line.reading() {
        Reading::NotBegun => HoldPhase::NotBegun,
        Reading::Done { ran_out, ago_ms } => HoldPhase::Done { ran_out, ago_ms },
        Reading::Live { place, paused } => {
            let (side, left_ms) = (place.turn, place.left_ms);
            match place.during {
                during if paused => HoldPhase::Paused { during, side, left_ms },
                During::Ready => HoldPhase::Ready { left_ms },
                During::Work => {
                    HoldPhase::Holding { side, left_ms, push: spec.push_at(place.spent_ms) }
                }
                During::Switch => HoldPhase::Switching { to_side: side, left_ms },
            }
        }
    };
    let cues = cues_ahead(&line, |side, ahead| {
        let start = course.start(side);
        if side > 1 {
            ahead.add(CueKind::SwitchSide, start - course.switch);
        }
        ahead.add(CueKind::Begin, start);
        spec.add_pushes(start, start + course.work, ahead);
    });
    HoldState { phase, held_ms: (1..=sides).map(|side| line.worked_ms(side)).collect(), cues }
}
