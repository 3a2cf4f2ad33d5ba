//! Both implementations through the same random happenings, compared after each.

use proptest::prelude::*;

use super::super::{Cue, CueKind, HoldSpec, IntervalSpec, MAX_CUES, PassedCue, Trust};
use super::slow::{SlowClock, TICK_MS};
use super::{Act, Device, Instant, dues};

/// What can happen to a device with a clock on it.
#[derive(Clone, Debug)]
enum Event {
    Act(Act),
    /// Time passes, the phone awake or asleep.
    Wait {
        ticks: i64,
    },
    /// The wall clock is set, or the network sets it.
    SetWall {
        ticks: i64,
    },
    /// Off, and on again after a while.
    Reboot {
        off_ticks: i64,
    },
    /// Another time zone, or the night the clocks change.
    Zone {
        offset_min: i32,
    },
    /// The app is gone; the marks come back from their lines.
    Kill,
}

fn act() -> impl Strategy<Value = Event> {
    let acts = prop_oneof![
        4 => Just(Act::Begin), 4 => Just(Act::Pause), 4 => Just(Act::Resume),
        4 => Just(Act::Skip), 4 => Just(Act::Extend), 1 => Just(Act::Stop),
    ];
    acts.prop_map(Event::Act)
}

fn wait() -> impl Strategy<Value = Event> {
    prop_oneof![0..20_i64, 0..400_i64].prop_map(|ticks| Event::Wait { ticks })
}

/// Starts with a begin most of the time, so that most runs are about a running clock.
fn story(other: impl Strategy<Value = Event> + 'static) -> impl Strategy<Value = Vec<Event>> {
    let event = prop_oneof![5 => act(), 6 => wait(), 3 => other];
    let begin = prop_oneof![
        9 => Just(vec![Event::Act(Act::Begin)]), 1 => Just(Vec::new()),
    ];
    (begin, prop::collection::vec(event, 0..40)).prop_map(|(begin, rest)| [begin, rest].concat())
}

/// Mostly seconds, at times an hour, seldom more than half a day.
fn wall_set() -> impl Strategy<Value = Event> {
    let ticks = prop_oneof![
        8 => -600..600_i64, 4 => -40_000..40_000_i64, 1 => -1_000_000..1_000_000_i64,
        1 => 430_000..434_000_i64,
    ];
    ticks.prop_map(|ticks| Event::SetWall { ticks })
}

fn wall_set_back() -> impl Strategy<Value = Event> {
    (-40_000..0_i64).prop_map(|ticks| Event::SetWall { ticks })
}

fn reboot() -> impl Strategy<Value = Event> {
    (0..300_i64).prop_map(|off_ticks| Event::Reboot { off_ticks })
}

fn zone() -> impl Strategy<Value = Event> {
    (-720..840_i32).prop_map(|offset_min| Event::Zone { offset_min })
}

fn anything() -> impl Strategy<Value = Event> {
    prop_oneof![3 => wall_set(), 3 => reboot(), 1 => zone(), 1 => Just(Event::Kill)]
}

/// A length that is often nothing, often short, and at times long enough for every cue.
fn length(step_ms: i64) -> impl Strategy<Value = i64> {
    prop_oneof![1 => Just(0), 3 => 1..30_i64, 2 => 100..200_i64].prop_map(move |n| n * step_ms)
}

fn hold_spec() -> impl Strategy<Value = HoldSpec> {
    let sides = 0..4_u32;
    let times = (length(TICK_MS), length(2 * TICK_MS), length(TICK_MS));
    (times, sides, length(TICK_MS), length(TICK_MS)).prop_map(
        |((ready_ms, hold_ms, switch_ms), sides, contract_ms, relax_ms)| HoldSpec {
            ready_ms,
            hold_ms,
            switch_ms,
            sides,
            contract_ms,
            relax_ms,
        },
    )
}

fn interval_spec() -> impl Strategy<Value = IntervalSpec> {
    (length(TICK_MS), length(2 * TICK_MS), 0..6_u32)
        .prop_map(|(ready_ms, window_ms, windows)| IntervalSpec { ready_ms, window_ms, windows })
}

/// A device, and the slow clock as it was at the last mark.
struct Both {
    device: Device,
    slow: SlowClock,
    trust: Trust,
    last: Option<Instant>,
    /// Milliseconds that really passed.
    real_ms: i64,
    /// Milliseconds the wall clock was set forward by, all in all.
    forward_ms: i64,
}

impl Both {
    fn new(slow: SlowClock) -> Both {
        let (device, trust) = (Device::new(), Trust::Boot);
        Both { device, slow, trust, last: None, real_ms: 0, forward_ms: 0 }
    }

    /// The slow clock now.
    fn now(&self) -> (SlowClock, Trust) {
        let now = self.device.now();
        self.slow.come_to(self.trust, self.last.as_ref().unwrap_or(&now), &now)
    }

    fn happen(&mut self, event: &Event) {
        match *event {
            Event::Act(act) => {
                (self.slow, self.trust) = self.now();
                self.slow.act(act);
                self.last = Some(self.device.now());
                self.device.act(act);
            }
            Event::Wait { ticks } => {
                self.real_ms += ticks * TICK_MS;
                self.device.wait(ticks * TICK_MS);
            }
            Event::SetWall { ticks } => {
                self.forward_ms += (ticks * TICK_MS).max(0);
                self.device.set_wall(ticks * TICK_MS);
            }
            Event::Reboot { off_ticks } => {
                self.real_ms += off_ticks * TICK_MS;
                self.device.reboot(off_ticks * TICK_MS);
            }
            Event::Zone { offset_min } => self.device.offset_min = offset_min,
            Event::Kill => self.device.kill(),
        }
    }

    /// The most that can have been held. In one boot that is the time that passed. Across boots a
    /// wall clock set forward cannot be told from time passing.
    fn at_most_ms(&self) -> i64 {
        self.real_ms + if self.device.boots > 1 { self.forward_ms } else { 0 }
    }
}

/// Cues in one order, without those of a moment that the limit may have cut through.
fn comparable(mut cues: Vec<(i64, CueKind)>) -> Vec<(i64, CueKind)> {
    cues.sort();
    if cues.len() >= MAX_CUES {
        let last = cues[MAX_CUES - 1].0;
        cues.retain(|(due, _)| *due < last);
    }
    cues
}

fn cues_agree(
    both: &Both,
    slow: &SlowClock,
    cues: &[Cue],
    passed: &[PassedCue],
) -> Result<(), TestCaseError> {
    prop_assert_eq!(comparable(dues(cues)), comparable(slow.cues()));
    let missed = passed.iter().map(|cue| (cue.ago_ms, cue.kind)).collect();
    prop_assert_eq!(comparable(missed), comparable(slow.passed()));
    prop_assert!(passed.is_sorted_by(|a, b| a.ago_ms >= b.ago_ms));
    let now = both.device.now().boot_ms;
    prop_assert!(cues.iter().all(|cue| cue.due_boot_ms - now == cue.due_in_ms));
    Ok(())
}

fn hold_agrees(spec: &HoldSpec, story: &[Event]) -> Result<(), TestCaseError> {
    let mut both = Both::new(SlowClock::hold(spec));
    for event in story {
        both.happen(event);
        let (state, (slow, trust)) = (both.device.hold(spec), both.now());
        prop_assert_eq!(&state.phase, &slow.hold_phase());
        prop_assert_eq!(&state.held_ms, &slow.worked_ms);
        prop_assert_eq!(&state.length_ms, &slow.lengths());
        prop_assert_eq!(&state.short, &slow.short(spec.hold_ms, trust));
        prop_assert_eq!(state.ends_in_ms, slow.ends_in());
        prop_assert_eq!(state.trust, trust);
        if spec.hold_ms > 0 {
            cues_agree(&both, &slow, &state.cues, &state.passed)?;
        }
        let (held, most) = (state.held_ms.iter().sum::<i64>(), both.at_most_ms());
        prop_assert!(held <= most, "{held} held in {most} ms");
    }
    Ok(())
}

fn interval_agrees(spec: &IntervalSpec, story: &[Event]) -> Result<(), TestCaseError> {
    let mut both = Both::new(SlowClock::interval(spec));
    for event in story {
        both.happen(event);
        let (state, (slow, trust)) = (both.device.interval(spec), both.now());
        prop_assert_eq!(&state.phase, &slow.interval_phase());
        prop_assert_eq!(state.ends_in_ms, slow.ends_in());
        prop_assert_eq!(state.trust, trust);
        if spec.window_ms > 0 {
            cues_agree(&both, &slow, &state.cues, &state.passed)?;
        }
    }
    Ok(())
}

proptest! {
    #[test]
    fn hold_clocks_agree_whatever_happens(spec in hold_spec(), story in story(anything())) {
        hold_agrees(&spec, &story)?;
    }

    #[test]
    fn interval_clocks_agree_whatever_happens(
        spec in interval_spec(), story in story(anything()),
    ) {
        interval_agrees(&spec, &story)?;
    }

    /// Reboots and a wall clock that is only ever set back cannot make up time.
    #[test]
    fn never_more_is_held_than_time_passed(
        spec in hold_spec(), story in story(prop_oneof![reboot(), wall_set_back(), zone()]),
    ) {
        let mut both = Both::new(SlowClock::hold(&spec));
        for event in &story {
            both.happen(event);
            let (state, real) = (both.device.hold(&spec), both.real_ms);
            prop_assert!(state.held_ms.iter().sum::<i64>() <= real, "{state:?} in {real} ms");
            let mut sides = state.held_ms.iter().zip(&state.length_ms);
            prop_assert!(sides.all(|(held, length)| (0..=*length).contains(held)));
        }
    }
}
