//! Both implementations through the same random happenings, compared after each.

use proptest::prelude::*;

use super::super::{HoldSpec, IntervalSpec, MAX_CUES};
use super::slow::{SlowClock, TICK_MS};
use super::{Act, Device, dues};

/// What can happen to a device with a clock on it.
#[derive(Clone, Debug)]
enum Event {
    Act(Act),
    Wait { ticks: i64 },
    SetWall { by_ms: i64 },
    Reboot { off_ticks: i64 },
}

fn act() -> impl Strategy<Value = Event> {
    let acts = prop_oneof![
        4 => Just(Act::Begin), 4 => Just(Act::Pause), 4 => Just(Act::Resume),
        4 => Just(Act::Skip), 1 => Just(Act::Stop),
    ];
    acts.prop_map(Event::Act)
}

fn wait() -> impl Strategy<Value = Event> {
    prop_oneof![0..20_i64, 0..400_i64].prop_map(|ticks| Event::Wait { ticks })
}

/// Starts with a begin most of the time, so that most runs are about a running clock.
fn story(other: impl Strategy<Value = Event> + 'static) -> impl Strategy<Value = Vec<Event>> {
    let event = prop_oneof![3 => act(), 4 => wait(), 1 => other];
    let begin = prop_oneof![
        9 => Just(vec![Event::Act(Act::Begin)]), 1 => Just(Vec::new()),
    ];
    (begin, prop::collection::vec(event, 0..40)).prop_map(|(begin, rest)| [begin, rest].concat())
}

fn wall_set() -> impl Strategy<Value = Event> {
    (-4_000_000..4_000_000_i64).prop_map(|by_ms| Event::SetWall { by_ms })
}

fn wall_set_back() -> impl Strategy<Value = Event> {
    (-4_000_000..0_i64).prop_map(|by_ms| Event::SetWall { by_ms })
}

fn reboot() -> impl Strategy<Value = Event> {
    (0..300_i64).prop_map(|off_ticks| Event::Reboot { off_ticks })
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

/// Lets an event happen to the device and to the slow clock on it. Gives the time that really
/// passed, in milliseconds.
fn happen(event: &Event, device: &mut Device, slow: &mut SlowClock) -> i64 {
    let ticks = match *event {
        Event::Act(act) => {
            device.act(act);
            slow.act(act);
            return 0;
        }
        Event::SetWall { by_ms } => {
            device.set_wall(by_ms);
            return 0;
        }
        Event::Wait { ticks } => {
            device.wait(ticks * TICK_MS);
            ticks
        }
        Event::Reboot { off_ticks } => {
            device.reboot(off_ticks * TICK_MS);
            off_ticks
        }
    };
    (0..ticks).for_each(|_| slow.tick());
    ticks * TICK_MS
}

/// Cues in one order, without those of a last moment that the limit may have cut through.
fn comparable(mut cues: Vec<(i64, super::CueKind)>) -> Vec<(i64, super::CueKind)> {
    cues.sort();
    if cues.len() >= MAX_CUES {
        let last = cues[MAX_CUES - 1].0;
        cues.retain(|(due, _)| *due < last);
    }
    cues
}

fn hold_agrees(spec: &HoldSpec, story: &[Event]) -> Result<(), TestCaseError> {
    let (mut device, mut slow) = (Device::new(), SlowClock::hold(spec));
    for event in story {
        happen(event, &mut device, &mut slow);
        let state = device.hold(spec);
        prop_assert_eq!(&state.phase, &slow.hold_phase());
        prop_assert_eq!(&state.held_ms, &slow.worked_ms);
        if spec.hold_ms > 0 {
            prop_assert_eq!(comparable(dues(&state.cues)), comparable(slow.cues()));
        }
    }
    Ok(())
}

fn interval_agrees(spec: &IntervalSpec, story: &[Event]) -> Result<(), TestCaseError> {
    let (mut device, mut slow) = (Device::new(), SlowClock::interval(spec));
    for event in story {
        happen(event, &mut device, &mut slow);
        let state = device.interval(spec);
        prop_assert_eq!(&state.phase, &slow.interval_phase());
        if spec.window_ms > 0 {
            prop_assert_eq!(comparable(dues(&state.cues)), comparable(slow.cues()));
        }
    }
    Ok(())
}

proptest! {
    #[test]
    fn hold_clocks_agree_whatever_the_wall_clock_does(
        spec in hold_spec(), story in story(wall_set()),
    ) {
        hold_agrees(&spec, &story)?;
    }

    #[test]
    fn hold_clocks_agree_through_reboots(spec in hold_spec(), story in story(reboot())) {
        hold_agrees(&spec, &story)?;
    }

    #[test]
    fn interval_clocks_agree_whatever_the_wall_clock_does(
        spec in interval_spec(), story in story(wall_set()),
    ) {
        interval_agrees(&spec, &story)?;
    }

    #[test]
    fn interval_clocks_agree_through_reboots(spec in interval_spec(), story in story(reboot())) {
        interval_agrees(&spec, &story)?;
    }

    /// Reboots and a wall clock that is only ever set back cannot make up time.
    #[test]
    fn never_more_is_held_than_time_passed(
        spec in hold_spec(), story in story(prop_oneof![reboot(), wall_set_back()]),
    ) {
        let (mut device, mut slow, mut real_ms) = (Device::new(), SlowClock::hold(&spec), 0);
        for event in &story {
            real_ms += happen(event, &mut device, &mut slow);
            let held = device.hold(&spec).held_ms;
            prop_assert!(held.iter().sum::<i64>() <= real_ms, "{held:?} in {real_ms} ms");
            prop_assert!(held.iter().all(|side| (0..=spec.hold_ms).contains(side)));
        }
    }
}
