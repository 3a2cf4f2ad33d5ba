//! Clocks: what a hold or an interval piece shows at a moment, as a pure function of what was done
//! to the clock and of that moment.
//!
//! Nothing ticks. A shell keeps the marks, passes the moment it draws, and gets the same answer
//! whether the screen was on, the app was killed or the phone was started again in between.
//!
//! **The time rule.** The time between one mark and the next, and between the last mark and now, is
//! [`Instant::ms_since`]: the boot clock inside one boot, the wall clock across boots, never
//! negative. A moment that its boot's own clock puts before the last known moment is taken as that
//! last known moment. What a clock has run is the sum over the stretches in which it ran.
//!
//! **Marks that make no sense are passed over**, whatever put them there: anything before the
//! first [`Act::Begin`], a second `Begin`, `Pause` when paused, `Resume` when not, and anything
//! once the clock is done. They are still moments at which the device was seen, so the time rule
//! counts through them. `Skip` while paused moves on and stays paused; `Stop` while paused stops.

mod cue;
mod hold;
mod interval;
mod timeline;

#[cfg(test)]
mod tests;

use serde::{Deserialize, Serialize};

use crate::Instant;
use crate::plan::keyword;

pub use cue::{Cue, CueKind, LAST_SECONDS_MS, MAX_CUES};
pub use hold::{
    HOLD_READY_MS, HOLD_SWITCH_MS, HoldPhase, HoldSpec, HoldState, MAX_SIDES, hold_state,
};
pub use interval::{INTERVAL_READY_MS, IntervalPhase, IntervalSpec, IntervalState, interval_state};

keyword! {
    /// What an athlete does to a clock.
    Act {
        /// Starts it, with the time to get ready.
        Begin = "begin",
        /// Stands it still.
        Pause = "pause",
        /// Lets it run again from where it stood.
        Resume = "resume",
        /// Ends the current side, window, switch or time to get ready now, and goes to the next.
        Skip = "skip",
        /// Ends it for good. What was held by then counts.
        Stop = "stop",
    }
}

/// An act and the moment it was done.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Mark {
    /// What was done.
    pub act: Act,
    /// When.
    pub at: Instant,
}

keyword! {
    /// The kind of stretch a clock is in.
    During {
        /// Getting ready, before the first side or window.
        Ready = "ready",
        /// A side being held, or a window.
        Work = "work",
        /// Changing over to the next side.
        Switch = "switch",
    }
}
