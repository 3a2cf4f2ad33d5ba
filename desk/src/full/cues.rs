//! Cues as they fall due.

use holdfast_core::Instant;
use holdfast_core::session::{CueView, LATE_MS};

/// The cues ahead, as of the moment they were last asked for.
#[derive(Default)]
pub(crate) struct Watch {
    ahead: Vec<CueView>,
    since: Option<Instant>,
}

impl Watch {
    /// Takes the cues ahead of a moment in place of those known so far.
    pub(crate) fn set(&mut self, ahead: Vec<CueView>, at: &Instant) {
        self.ahead = ahead;
        self.since = Some(at.clone());
    }

    /// The words of the cues that fell due before `now`. One that is due at `now` itself is still
    /// ahead in the answer the core gives for it.
    pub(crate) fn due(&self, now: &Instant) -> Vec<String> {
        let passed = self.since.as_ref().map_or(0, |since| now.ms_since(since));
        let due = self.ahead.iter().take_while(|cue| cue.due_in.0 < passed);
        let in_time = due.filter(|cue| passed - cue.due_in.0 <= LATE_MS);
        in_time.map(|cue| cue.words.clone()).collect()
    }

    /// Milliseconds from the moment they were asked for until just after the next one.
    pub(crate) fn next_ms(&self) -> Option<i64> {
        self.ahead.first().map(|cue| cue.due_in.0.saturating_add(1))
    }
}

#[cfg(test)]
mod tests {
    use holdfast_core::clock::{Act, HoldSpec, Mark, hold_state};
    use holdfast_core::session::hold_clock;

    use super::*;

    fn at(ms: i64) -> Instant {
        Instant { wall_ms: ms, offset_min: 0, boot_ms: ms, boot_id: "test".into() }
    }

    fn cues(spec: &HoldSpec, marks: &[Mark], now: &Instant) -> Vec<CueView> {
        hold_clock(spec, &hold_state(spec, marks, now)).map_or(Vec::new(), |clock| clock.cues)
    }

    /// Whatever the rhythm of asking, each cue is given once and in order.
    #[test]
    fn each_cue_is_given_once() {
        let spec = HoldSpec {
            ready_ms: 1_000,
            hold_ms: 30_000,
            switch_ms: 2_000,
            sides: 2,
            contract_ms: 6_000,
            relax_ms: 20_000,
        };
        let marks = [Mark { act: Act::Begin, at: at(0) }];
        let once: Vec<String> =
            cues(&spec, &marks, &at(0)).into_iter().map(|cue| cue.words).collect();
        assert_eq!(once.len(), 15, "{once:?}");
        for step in [1, 7, 50, 100, 250, 333, 500, 1_000, 1_999] {
            let (mut watch, mut given) = (Watch::default(), Vec::new());
            for now in (0..70_000).step_by(step).map(at) {
                given.extend(watch.due(&now));
                watch.set(cues(&spec, &marks, &now), &now);
            }
            assert_eq!(given, once, "asked each {step} ms");
        }
    }

    #[test]
    fn nothing_is_given_late() {
        let mut watch = Watch::default();
        let spec = HoldSpec {
            ready_ms: 1_000,
            hold_ms: 30_000,
            switch_ms: 0,
            sides: 1,
            contract_ms: 0,
            relax_ms: 0,
        };
        let marks = [Mark { act: Act::Begin, at: at(0) }];
        watch.set(cues(&spec, &marks, &at(0)), &at(0));
        // Ready at 0, go at 1 s, halfway at 16 s, ten seconds at 21 s, done at 31 s.
        assert_eq!(watch.due(&at(22_000)), ["ten seconds"]);
        assert!(watch.due(&at(60_000)).is_empty());
    }
}
