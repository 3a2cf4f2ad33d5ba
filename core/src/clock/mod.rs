//! Clocks: what a hold or an interval piece shows at a moment, as a pure function of what was done
//! to the clock and of that moment.
//!
//! Nothing ticks. A shell keeps the marks, passes the moment it draws, and gets the same answer
//! whether the screen was on, the app was killed or the phone was started again in between.
//!
//! **The time rule.** The time between one mark and the next, and between the last mark and now, is
//! [`Instant::elapsed_since`](crate::Instant::elapsed_since), and never negative:
//!
//! - *In one boot* the boot clock decides. A wall clock set back or forward, another time zone, the
//!   night the clocks change: none of it matters.
//! - *The phone was started again*: its boot clock began again, so the wall clock is trusted, and the
//!   state says so ([`Trust::Wall`]). A wall clock that was set in the same stretch cannot be told
//!   from time passing; so what was held is shown to be confirmed, and can be said by hand.
//! - *Both*: the phone was started again and the wall clock ran backwards, or lies more than
//!   [`FAR_MS`] past the clock's own end. Then nothing is known of that stretch, nothing of it is
//!   counted, and the state says so ([`Trust::Unknown`]): the clock stands where it was last seen,
//!   and counts on from the next mark by the boot clock that runs now.
//! - A moment that its boot's own clock puts before the last known moment is taken as that last
//!   known moment.
//!
//! What a clock has run is the sum over the stretches in which it ran, so no clock counts more than
//! the time that can have passed. Seconds typed by hand are the athlete's word, up to
//! [`MAX_SIDE_MS`] a side; more than the session had gone on is asked about.
//!
//! **Marks that make no sense are ignored**, whatever put them there: anything before the
//! first [`Act::Begin`], a second `Begin`, `Pause` when paused, `Resume` when not, `Extend` when no
//! side is being held or the side is as long as it may become, and anything once the clock is done.
//! They are still moments at which the device was seen, so the time rule counts through them.
//! `Skip` while paused moves on and stays paused; `Stop` while paused stops; `Extend` while paused
//! makes the side longer and stays paused.

mod cue;
mod hold;
mod interval;
mod timeline;

#[cfg(test)]
mod tests;

use serde::{Deserialize, Serialize};

use crate::instant::Instant;
use crate::plan::keyword;

pub use cue::{Cue, CueKind, LAST_SECONDS_MS, MAX_CUES, PassedCue};
pub use hold::{HoldPhase, HoldSpec, HoldState, MAX_SIDES, WhyShort, hold_state};
pub use interval::{INTERVAL_READY_MS, IntervalPhase, IntervalSpec, IntervalState, interval_state};

/// What one [`Act::Extend`] adds to the side being held, in milliseconds: common practice, no
/// source.
pub const EXTEND_MS: i64 = 15_000;

/// The longest that extending makes a side, in milliseconds; as long as a side logged by hand.
pub const MAX_SIDE_MS: i64 = 30 * 60 * 1000;

/// A wall clock that after a reboot is further past a clock's own end than this, in milliseconds, is
/// not believed: a session is over by then, so it was set. Our own choice.
pub const FAR_MS: i64 = 12 * 60 * 60 * 1000;

keyword! {
    /// What an athlete does to a clock.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    Act {
        /// Starts it, with the time to get ready.
        Begin = "begin",
        /// Stands it still.
        Pause = "pause",
        /// Lets it run again from where it stood.
        Resume = "resume",
        /// Makes the side being held longer by [`EXTEND_MS`], up to [`MAX_SIDE_MS`]; again, longer
        /// again. Windows are of one length and cannot be extended.
        Extend = "extend",
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

keyword! {
    /// What an athlete does while a clock runs: one name each, on screen, spoken and logged.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    Phase {
        /// Getting ready, before the first side or window.
        Ready = "ready",
        /// Holding a side still.
        Hold = "hold",
        /// Pushing against the stretch; plans call it to contract.
        Push = "push",
        /// Letting go, further into the stretch; plans call it to relax.
        LetGo = "let-go",
        /// Changing over to the other side.
        Switch = "switch",
        /// Working in a window.
        Window = "window",
        /// Resting.
        Rest = "rest",
        /// The rest is over.
        RestOver = "rest-over",
        /// Over.
        Done = "done",
    }
}

keyword! {
    /// What a clock's time rests on: the least sure of the stretches in which it ran or was over.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    Trust {
        /// The boot clock all along: sure.
        Boot = "boot",
        /// The phone was started again, and its wall clock was believed.
        Wall = "wall",
        /// The phone was started again and its wall clock was set too: at least one stretch is not
        /// known, and none of it is counted.
        Unknown = "unknown",
    }
}
