//! Interval cases worked out by hand.

use super::super::{CueKind, During, IntervalPhase, IntervalSpec};
use super::{Act, Device, dues};
use crate::plan::{Interval, Station};

/// Ready 0 to 10 s, windows to 70, 130, 190 and 250 s.
fn four_minutes() -> IntervalSpec {
    let station = Station { movement: "swing".into(), reps: 15, load: None };
    IntervalSpec::of(&Interval {
        window_ms: 60_000,
        rounds: 2,
        stations: vec![station.clone(), station],
        margin_ms: 10_000,
    })
}

fn window(window: u32, left_ms: i64) -> IntervalPhase {
    IntervalPhase::Window { window, left_ms }
}

#[test]
fn windows_follow_each_other_with_nothing_between() {
    let (spec, mut device) = (four_minutes(), Device::new());
    assert_eq!(device.interval(&spec).phase, IntervalPhase::NotBegun);
    device.act(Act::Begin).wait(1_000);
    assert_eq!(device.interval(&spec).phase, IntervalPhase::Ready { left_ms: 9_000 });
    assert_eq!(device.interval(&spec).window_ends_in_ms, None);
    assert_eq!(device.wait(9_000).interval(&spec).phase, window(1, 60_000));
    assert_eq!(device.wait(59_999).interval(&spec).phase, window(1, 1));
    assert_eq!(device.interval(&spec).window_ends_in_ms, Some(1));
    assert_eq!(device.wait(1).interval(&spec).phase, window(2, 60_000));
    assert_eq!(device.wait(179_999).interval(&spec).phase, window(4, 1));
    let done = device.wait(1).interval(&spec);
    assert_eq!(done.phase, IntervalPhase::Done { ran_out: true, ago_ms: 0 });
    assert_eq!((done.window_ends_in_ms, dues(&done.cues)), (None, vec![(0, CueKind::End)]));
}

#[test]
fn pause_skip_and_stop() {
    let (spec, mut device) = (four_minutes(), Device::new());
    device.act(Act::Begin).act(Act::Skip).wait(20_000).act(Act::Pause).wait(99_000);
    let paused = device.interval(&spec);
    let phase = IntervalPhase::Paused { during: During::Work, window: 1, left_ms: 40_000 };
    assert_eq!((paused.phase, paused.window_ends_in_ms, paused.cues), (phase, None, vec![]));
    device.act(Act::Resume).wait(1_000).act(Act::Skip);
    assert_eq!(device.interval(&spec).phase, window(2, 60_000), "at once");
    device.wait(61_000);
    assert_eq!(device.interval(&spec).phase, window(3, 59_000));
    let mut skipper = device.clone();
    skipper.act(Act::Skip).act(Act::Skip).wait(5_000);
    let skipped = IntervalPhase::Done { ran_out: false, ago_ms: 5_000 };
    assert_eq!(skipper.interval(&spec).phase, skipped);
    device.act(Act::Stop).wait(4_000);
    let stopped = IntervalPhase::Done { ran_out: false, ago_ms: 4_000 };
    assert_eq!(device.interval(&spec).phase, stopped);
}

#[test]
fn a_locked_screen_a_reboot_and_running_out_unseen() {
    let (spec, mut device) = (four_minutes(), Device::new());
    device.act(Act::Begin).wait(80_000).set_wall(-3_600_000).wait(1_000);
    assert_eq!(device.interval(&spec).phase, window(2, 49_000));
    device.set_wall(3_600_000).reboot(60_000);
    assert_eq!(device.interval(&spec).phase, window(3, 49_000));
    device.wait(600_000);
    let phase = IntervalPhase::Done { ran_out: true, ago_ms: 491_000 };
    assert_eq!(device.interval(&spec).phase, phase);
}

#[test]
fn cues_of_windows() {
    let spec = IntervalSpec { windows: 2, ..four_minutes() };
    let mut device = Device::new();
    device.act(Act::Begin);
    let all = [
        (0, CueKind::GetReady),
        (10_000, CueKind::Begin),
        (40_000, CueKind::Halfway),
        (60_000, CueKind::LastSeconds),
        (70_000, CueKind::NextWindow),
        (100_000, CueKind::Halfway),
        (120_000, CueKind::LastSeconds),
        (130_000, CueKind::End),
    ];
    assert_eq!(dues(&device.interval(&spec).cues), all);
    // A window's start is due at the very millisecond of it, and not after.
    let first = |device: &Device| dues(&device.interval(&spec).cues)[0];
    assert_eq!(first(device.wait(70_000)), (0, CueKind::NextWindow));
    assert_eq!(first(device.wait(1)), (29_999, CueKind::Halfway));
}

#[test]
fn short_windows_have_no_halfway_and_no_last_seconds() {
    for (window_ms, expected) in [
        (10_000, vec![(0, CueKind::Begin), (10_000, CueKind::End)]),
        (20_000, vec![(0, CueKind::Begin), (10_000, CueKind::LastSeconds), (20_000, CueKind::End)]),
    ] {
        let spec = IntervalSpec { ready_ms: 0, window_ms, windows: 1 };
        assert_eq!(dues(&Device::new().act(Act::Begin).interval(&spec).cues), expected);
    }
}
