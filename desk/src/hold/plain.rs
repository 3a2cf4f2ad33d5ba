//! A hold in lines: each cue as it comes, ending by itself.

use std::time::Duration;

use holdfast_core::clock::HoldPhase;

use super::Timer;
use crate::fault::{Fault, Outcome};
use crate::full::signals::Signals;
use crate::full::sound::Sound;
use crate::now::now;
use crate::{print, say};

/// How often signals are looked at.
const LOOK_MS: i64 = 100;

pub(super) fn run(timer: &mut Timer, sound: &mut Sound) -> Outcome {
    let signals = Signals::watch().map_err(|error| Fault::Typed(say::fault::no_signals(error)))?;
    print::out(&format!("{}\n", say::hold::caution()))?;
    let mut watch = timer.begin();
    loop {
        let at = now();
        let due = watch.due(&at);
        if !due.is_empty() {
            print::out(&format!("{}\n", due.join(", ")))?;
            sound.cue(&due);
        }
        let cues = timer.cues(&at);
        let done = matches!(timer.state(&at).phase, HoldPhase::Done { .. });
        // The last cue is due at the end itself, and is given after it.
        if done && cues.is_empty() {
            return Ok(());
        }
        watch.set(cues, &at);
        if let Some(signal) = signals.come() {
            return Err(Fault::Signal(signal));
        }
        let ms = watch.next_ms().unwrap_or(1).clamp(1, LOOK_MS);
        std::thread::sleep(Duration::from_millis(ms.unsigned_abs()));
    }
}
