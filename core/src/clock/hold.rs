//! The hold clock: a stretch held for a time, side by side.

use serde::Serialize;

use super::cue::{Cue, CueKind, Gather, MAX_CUES, PassedCue, cues_ahead, cues_passed};
use super::timeline::{Course, Standing, Timeline, whole_ms};
use super::{During, MAX_SIDE_MS, Mark, Trust};
use crate::instant::Instant;
use crate::plan::{Hold, Technique, keyword};

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

keyword! {
    /// Why a side was held for less than the plan asks.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    WhyShort {
        /// The side was skipped before its end.
        Skipped = "skipped",
        /// The clock was stopped before the side's end.
        Stopped = "stopped",
        /// The phone was started again with another time, so part of it was not seen.
        Unseen = "unseen",
        /// What the athlete said, in the words beside it.
        Said = "said",
    }
}

/// What a hold clock says at a moment.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct HoldState {
    /// What is going on.
    pub phase: HoldPhase,
    /// Milliseconds really held so far, one a side. Never more than the side's length, nor than the
    /// time that passed by the clock's time rule: pauses and skipped time are not in it.
    pub held_ms: Vec<i64>,
    /// The cues ahead if nothing more is done, soonest first; none while paused.
    pub cues: Vec<Cue>,
    /// Milliseconds of each side, with what extending added.
    pub length_ms: Vec<i64>,
    /// Why a side was held for less than the plan asks, one a side; none for a side that was held
    /// long enough, or that can still be.
    pub short: Vec<Option<WhyShort>>,
    /// Milliseconds to the end of the last side if it runs on; none when it is not begun or over.
    pub ends_in_ms: Option<i64>,
    /// The cues since the last mark, the earliest first: what a phone that slept has missed.
    pub passed: Vec<PassedCue>,
    /// What the time rests on.
    pub trust: Trust,
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
    /// The timing of a planned hold.
    pub fn of(hold: &Hold) -> HoldSpec {
        let (contract_ms, relax_ms) = match hold.technique {
            Technique::Static => (0, 0),
            Technique::ContractRelax => (hold.contract_ms, hold.relax_ms),
        };
        HoldSpec {
            ready_ms: hold.ready_ms,
            hold_ms: hold.hold_ms,
            switch_ms: hold.switch_ms,
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

    /// Adds the contractions and releases of a side. A contraction that the side's end cuts off has
    /// no release: the cue for the side's end is enough.
    fn add_pushes(&self, side: u32, course: &Course, gather: &mut Gather) {
        let (contract, relax) = self.contract_and_relax();
        let start = course.start(side);
        let end = start + course.work_of(side);
        if contract == 0 {
            return;
        }
        if relax == 0 {
            return gather.add(CueKind::Contract, start, side);
        }
        // No more than can be listed, from the end that is wanted: a side may have millions.
        let cycle = contract + relax;
        let last = (gather.to.map_or(end, |to| to.min(end)) - start).max(0) / cycle;
        let from = (gather.from - start).max(0) / cycle;
        let most = MAX_CUES as i128;
        let first = if gather.latest { from.max(last - most) } else { from };
        for push in (first..=last.min(first + most)).map(|n| start + n * cycle) {
            for (kind, at) in [(CueKind::Contract, push), (CueKind::Release, push + contract)] {
                if at < end {
                    gather.add(kind, at, side);
                }
            }
        }
    }

    fn add_side(&self, side: u32, course: &Course, gather: &mut Gather) {
        let start = course.start(side);
        if side > 1 {
            gather.add(CueKind::SwitchSide, start - course.switch, side);
        }
        gather.add(CueKind::Begin, start, side);
        self.add_pushes(side, course, gather);
    }
}

/// What the hold clock says at `now`, after `marks` in the order they were made.
pub fn hold_state(spec: &HoldSpec, marks: &[Mark], now: &Instant) -> HoldState {
    let count = spec.sides.min(MAX_SIDES);
    let mut course = Course::new(spec.ready_ms, spec.hold_ms, spec.switch_ms, count);
    course.longest = Some(i128::from(MAX_SIDE_MS));
    let line = Timeline::fold(course, marks, now);
    let standing = line.standing();
    let phase = match standing {
        Standing::NotBegun => HoldPhase::NotBegun,
        Standing::Done { ran_out, ago_ms } => HoldPhase::Done { ran_out, ago_ms },
        Standing::Live { spot, paused } => {
            let (side, left_ms) = (spot.turn, spot.left_ms);
            match spot.during {
                during if paused => HoldPhase::Paused { during, side, left_ms },
                During::Ready => HoldPhase::Ready { left_ms },
                During::Work => {
                    HoldPhase::Holding { side, left_ms, push: spec.push_at(spot.spent_ms) }
                }
                During::Switch => HoldPhase::Switching { to_side: side, left_ms },
            }
        }
    };
    let over = matches!(standing, Standing::Done { .. });
    let short = |side: u32| {
        if line.worked_ms(side) >= spec.hold_ms.max(0) {
            return None;
        }
        match line.trust {
            _ if line.cut_from(side) > 0 => Some(WhyShort::Skipped),
            Trust::Unknown if over => Some(WhyShort::Unseen),
            _ => over.then_some(WhyShort::Stopped),
        }
    };
    let add_side = |side: u32, course: &Course, gather: &mut Gather| {
        spec.add_side(side, course, gather);
    };
    let sides = || 1..=count;
    HoldState {
        phase,
        held_ms: sides().map(|side| line.worked_ms(side)).collect(),
        cues: cues_ahead(&line, now.boot_ms, add_side),
        length_ms: sides().map(|side| whole_ms(line.course.work_of(side))).collect(),
        short: sides().map(short).collect(),
        ends_in_ms: line.ends_in_ms(),
        passed: cues_passed(&line, add_side),
        trust: line.trust,
    }
}
