//! A clock on screen: what to do now, the time of this phase, what comes next.

use serde::Serialize;

use crate::clock::{CueKind, Phase, Trust};
use crate::instant::Millis;
use crate::load::RestBasis;

/// A clock that was begun, or a rest.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct ClockView {
    /// What it is in.
    pub phase: Phase,
    /// The same in words, as it is drawn and spoken.
    pub now: String,
    /// More about it: the side, or what the window asks for.
    pub about: Option<String>,
    /// True while it stands still.
    pub paused: bool,
    /// True while it counts.
    pub runs: bool,
    /// The side or window, counted from 1.
    pub turn: u32,
    /// How many there are.
    pub turns: u32,
    /// What is left of this phase: what the big digits count. None where it is over or not known.
    pub left: Option<Millis>,
    /// The big digits: of a rest `1:24`, of everything else seconds alone below a hundred. None where the time is over or
    /// not known.
    pub digits: Option<String>,
    /// How long it has been over; none until then.
    pub over: Option<Millis>,
    /// What is left of the whole side, or how long a rest has been over, in words; none where the digits say it all.
    pub to_go: Option<String>,
    /// What is left of the whole side, where the phase is only a part of it.
    pub turn_left: Option<Millis>,
    /// The phases of this side or window from its start, for a gauge; empty where there is none.
    pub spans: Vec<PhaseSpan>,
    /// How much of the spans is over.
    pub spent: Millis,
    /// How far into the window to be done, so that the planned time is to spare.
    pub mark: Option<Millis>,
    /// The time really held, one a side; empty for windows and rests.
    pub held: Vec<Millis>,
    /// The length of each side, with what extending added; empty for windows and rests.
    pub length: Vec<Millis>,
    /// The time to the end of the last side or window if it runs on.
    pub ends_in: Option<Millis>,
    /// The next cue: `next: halfway in 0:48`; none while none lies ahead.
    pub next: Option<String>,
    /// The cues ahead if nothing more is done, soonest first; none while paused.
    pub cues: Vec<CueView>,
    /// Cues that went by while nobody could give them, in one line.
    pub went_by: Option<String>,
    /// What the time rests on.
    pub trust: Trust,
    /// What the athlete should look at or answer about it.
    pub question: Option<String>,
}

/// A phase of a side or window.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct PhaseSpan {
    /// Which.
    pub phase: Phase,
    /// From when on, from the start of the side or window.
    pub from: Millis,
    /// Until when.
    pub to: Millis,
}

/// A cue that lies ahead if nothing more is done to the clock, with what to speak.
///
/// All of them can be scheduled at once, before the screen goes dark; a tap changes what lies ahead,
/// so a shell then takes back what it scheduled and schedules the new list.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct CueView {
    /// How long from now; 0 is due at this very moment.
    pub due_in: Millis,
    /// When it is due by the boot clock of the moment that was asked about: what alarms are set by.
    pub due_boot_ms: i64,
    /// What it is for.
    pub kind: CueKind,
    /// The side or window it is about, from 1; for the end of a rest the set to come.
    pub turn: u32,
    /// What to speak.
    pub words: String,
}

/// The rest that runs since the last set.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct RestView {
    /// The piece of the set it follows.
    pub piece: String,
    /// That set, counted from 1.
    pub set: u32,
    /// When that set was logged, by the wall clock, milliseconds since 1970.
    pub since_wall_ms: i64,
    /// The time rested; none when it is not known.
    pub rested: Option<Millis>,
    /// The least suggested: the rest is over then.
    pub suggested: Millis,
    /// The most suggested; the same where one length is suggested.
    pub most: Millis,
    /// Where that comes from.
    pub basis: RestBasis,
    /// Where the suggested length comes from, in words.
    pub suggested_text: String,
    /// The time left, 0 once it is over; none when it is not known.
    pub left: Option<Millis>,
    /// The time over, 0 until then; none when it is not known.
    pub over: Option<Millis>,
    /// The one cue, while it lies ahead.
    pub cue: Option<CueView>,
    /// What the time rests on.
    pub trust: Trust,
    /// How it stands, in words; where it is not known they say so.
    pub words: String,
}
