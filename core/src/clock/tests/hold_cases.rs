//! Hold cases worked out by hand.

use super::super::{CueKind, During, HoldPhase, HoldSpec};
use super::{Act, Device, dues};
use crate::plan::{HOLD_READY_MS, HOLD_SWITCH_MS};
use crate::plan::{Hold, Technique};

const MINUTE: i64 = 60_000;
const HOUR: i64 = 3_600_000;

fn planned(technique: Technique) -> Hold {
    Hold {
        stretch: "couch".into(),
        hold_ms: 120_000,
        sides: 2,
        technique,
        contract_ms: 6_000,
        relax_ms: 20_000,
        measure: None,
        ready_ms: HOLD_READY_MS,
        switch_ms: HOLD_SWITCH_MS,
    }
}

/// Ready 0 to 5 s, side 1 to 125 s, switch to 135 s, side 2 to 255 s.
fn two_sides() -> HoldSpec {
    HoldSpec::of(&planned(Technique::Static))
}

fn holding(side: u32, left_ms: i64) -> HoldPhase {
    HoldPhase::Holding { side, left_ms, push: false }
}

#[test]
fn a_spec_follows_the_plan() {
    let mut spec = two_sides();
    assert_eq!((spec.contract_ms, spec.relax_ms), (0, 0), "static whatever the plan's lengths");
    (spec.contract_ms, spec.relax_ms) = (6_000, 20_000);
    assert_eq!(HoldSpec::of(&planned(Technique::ContractRelax)), spec);
}

#[test]
fn two_sides_with_a_pause() {
    let (spec, mut device) = (two_sides(), Device::new());
    assert_eq!(device.wait(9_000).hold(&spec).phase, HoldPhase::NotBegun);
    assert_eq!(device.hold(&spec).held_ms, [0, 0]);
    device.act(Act::Begin);
    assert_eq!(device.hold(&spec).phase, HoldPhase::Ready { left_ms: 5_000 });
    assert_eq!(device.wait(5_000).hold(&spec).phase, holding(1, 120_000));
    device.wait(30_000).act(Act::Pause).wait(HOUR);
    let paused = device.hold(&spec);
    let phase = HoldPhase::Paused { during: During::Work, side: 1, left_ms: 90_000 };
    assert_eq!((paused.phase, paused.held_ms, paused.cues), (phase, vec![30_000, 0], vec![]));
    device.act(Act::Resume);
    assert_eq!(device.wait(89_999).hold(&spec).phase, holding(1, 1));
    let switching = HoldPhase::Switching { to_side: 2, left_ms: 10_000 };
    assert_eq!(device.wait(1).hold(&spec).phase, switching);
    assert_eq!(device.hold(&spec).held_ms, [120_000, 0]);
    // A pause between sides stops the switch.
    device.wait(4_000).act(Act::Pause).wait(MINUTE);
    let phase = HoldPhase::Paused { during: During::Switch, side: 2, left_ms: 6_000 };
    assert_eq!(device.hold(&spec).phase, phase);
    device.act(Act::Resume).wait(6_000);
    assert_eq!(device.hold(&spec).phase, holding(2, 120_000));
    assert_eq!(
        device.wait(120_000).hold(&spec).phase,
        HoldPhase::Done { ran_out: true, ago_ms: 0 }
    );
    assert_eq!(device.hold(&spec).held_ms, [120_000, 120_000]);
}

#[test]
fn a_locked_screen_changes_nothing_and_running_out_unseen_says_how_long_ago() {
    let (spec, mut device) = (two_sides(), Device::new());
    device.act(Act::Begin).wait(200_000);
    assert_eq!(device.hold(&spec).phase, holding(2, 55_000));
    assert_eq!(device.hold(&spec).held_ms, [120_000, 65_000]);
    let over = device.wait(HOUR).hold(&spec);
    assert_eq!(over.phase, HoldPhase::Done { ran_out: true, ago_ms: HOUR - 55_000 });
    assert_eq!((over.held_ms, over.cues), (vec![120_000, 120_000], vec![]));
    // What is tapped on a finished clock is ignored, and the count goes on.
    device.act(Act::Stop).act(Act::Pause).act(Act::Begin).act(Act::Skip).wait(5);
    let phase = HoldPhase::Done { ran_out: true, ago_ms: HOUR - 54_995 };
    assert_eq!(device.hold(&spec).phase, phase);
}

#[test]
fn the_wall_clock_does_not_matter_within_a_boot() {
    let (spec, mut device) = (two_sides(), Device::new());
    device.act(Act::Begin).wait(15_000).set_wall(-HOUR).wait(1_000);
    assert_eq!(device.hold(&spec).phase, holding(1, 109_000));
    device.act(Act::Pause).set_wall(5 * HOUR).act(Act::Resume).wait(1_000);
    assert_eq!(device.hold(&spec).phase, holding(1, 108_000));
}

#[test]
fn a_reboot_counts_by_the_wall_clock() {
    let (spec, mut device) = (two_sides(), Device::new());
    device.act(Act::Begin).wait(15_000).reboot(40_000).wait(2_000);
    assert_eq!(device.hold(&spec).phase, holding(1, 68_000));
    device.act(Act::Pause).wait(7_000).act(Act::Resume).wait(1_000);
    assert_eq!(device.hold(&spec).phase, holding(1, 67_000));
}

#[test]
fn a_wall_clock_set_back_across_a_reboot_claims_nothing() {
    let (spec, mut device) = (two_sides(), Device::new());
    device.act(Act::Begin).wait(15_000).act(Act::Pause).act(Act::Resume);
    device.wait(20_000).reboot(40_000).set_wall(-HOUR).wait(2_000);
    assert_eq!(device.hold(&spec).phase, holding(1, 110_000));
    // From a mark in the new boot on, its boot clock counts.
    device.act(Act::Resume).wait(3_000);
    assert_eq!(device.hold(&spec).phase, holding(1, 107_000));
    assert_eq!(device.hold(&spec).held_ms, [13_000, 0]);
}

#[test]
fn a_moment_before_the_last_mark_counts_nothing_and_nothing_twice() {
    let (spec, mut device) = (two_sides(), Device::new());
    device.act(Act::Begin).wait(15_000).act(Act::Pause).act(Act::Resume);
    let mut early = device.clone();
    early.wait(-8_000);
    assert_eq!(early.hold(&spec).phase, holding(1, 110_000));
    early.act(Act::Resume).wait(9_000);
    assert_eq!(early.hold(&spec).phase, holding(1, 109_000));
}

#[test]
fn a_stop_keeps_what_was_held() {
    let (spec, mut device) = (two_sides(), Device::new());
    device.act(Act::Begin).wait(150_000).act(Act::Stop).wait(7_000).act(Act::Resume).wait(1_000);
    let stopped = device.hold(&spec);
    assert_eq!(stopped.phase, HoldPhase::Done { ran_out: false, ago_ms: 8_000 });
    assert_eq!((stopped.held_ms, stopped.cues), (vec![120_000, 15_000], vec![]));
}

#[test]
fn a_skip_goes_to_the_next_stretch_and_ends_a_side_short() {
    let (spec, mut device) = (two_sides(), Device::new());
    device.act(Act::Begin).wait(2_000).act(Act::Skip);
    assert_eq!(device.hold(&spec).phase, holding(1, 120_000));
    device.wait(50_000).act(Act::Skip);
    assert_eq!(device.hold(&spec).phase, HoldPhase::Switching { to_side: 2, left_ms: 10_000 });
    assert_eq!(dues(&device.hold(&spec).cues)[0], (0, CueKind::SwitchSide));
    device.wait(1_000).act(Act::Skip);
    assert_eq!(device.hold(&spec).phase, holding(2, 120_000));
    device.wait(20_000).act(Act::Pause).act(Act::Skip);
    assert_eq!(device.hold(&spec).phase, HoldPhase::Done { ran_out: false, ago_ms: 0 });
    assert_eq!(dues(&device.hold(&spec).cues), [(0, CueKind::End)]);
    let later = device.wait(9_000).hold(&spec);
    assert_eq!(later.phase, HoldPhase::Done { ran_out: false, ago_ms: 9_000 });
    assert_eq!((later.held_ms, later.cues), (vec![50_000, 20_000], vec![]));
}

#[test]
fn a_skip_while_paused_stays_paused() {
    let (spec, mut device) = (two_sides(), Device::new());
    device.act(Act::Begin).wait(2_000).act(Act::Pause).act(Act::Skip).wait(MINUTE);
    let phase = HoldPhase::Paused { during: During::Work, side: 1, left_ms: 120_000 };
    assert_eq!(device.hold(&spec).phase, phase);
    assert_eq!(device.act(Act::Resume).wait(1).hold(&spec).phase, holding(1, 119_999));
}

#[test]
fn nothing_counts_before_the_first_begin_and_no_second_one_does() {
    let (spec, mut device) = (two_sides(), Device::new());
    device.act(Act::Resume).act(Act::Skip).act(Act::Pause).act(Act::Stop).wait(MINUTE);
    assert_eq!(device.hold(&spec).phase, HoldPhase::NotBegun);
    device.act(Act::Begin).wait(15_000).act(Act::Begin).act(Act::Resume);
    assert_eq!(device.hold(&spec).phase, holding(1, 110_000));
    device.act(Act::Pause).wait(MINUTE).act(Act::Pause).act(Act::Begin).wait(MINUTE);
    assert_eq!(device.act(Act::Resume).hold(&spec).phase, holding(1, 110_000));
}

#[test]
fn cues_of_a_static_hold() {
    let (spec, mut device) = (two_sides(), Device::new());
    assert_eq!(device.hold(&spec).cues, []);
    device.act(Act::Begin);
    let all = [
        (0, CueKind::GetReady),
        (5_000, CueKind::Begin),
        (65_000, CueKind::Halfway),
        (115_000, CueKind::LastSeconds),
        (125_000, CueKind::SwitchSide),
        (135_000, CueKind::Begin),
        (195_000, CueKind::Halfway),
        (245_000, CueKind::LastSeconds),
        (255_000, CueKind::End),
    ];
    assert_eq!(dues(&device.hold(&spec).cues), all);
    device.wait(115_001);
    let rest: Vec<_> = all[4..].iter().map(|(due, kind)| (due - 115_001, *kind)).collect();
    assert_eq!(dues(&device.hold(&spec).cues), rest);
}

#[test]
fn contract_relax_starts_with_the_contraction_on_each_side() {
    // Ready 5 s; sides of 30 s: push 6, relax 10, push 6, relax the last 8.
    let spec = HoldSpec { hold_ms: 30_000, contract_ms: 6_000, relax_ms: 10_000, ..two_sides() };
    let mut device = Device::new();
    device.act(Act::Begin).wait(5_000);
    let side = |from: i64| {
        [
            (from, CueKind::Begin),
            (from, CueKind::Contract),
            (from + 6_000, CueKind::Release),
            (from + 15_000, CueKind::Halfway),
            (from + 16_000, CueKind::Contract),
            (from + 20_000, CueKind::LastSeconds),
            (from + 22_000, CueKind::Release),
        ]
    };
    let mut all = side(0).to_vec();
    all.push((30_000, CueKind::SwitchSide));
    all.extend(side(40_000));
    all.push((70_000, CueKind::End));
    let mut seen = dues(&device.hold(&spec).cues);
    seen.sort_by_key(|(due, _)| *due);
    assert_eq!(seen, all);

    for (at, push) in [(0, true), (5_999, true), (6_000, false), (15_999, false), (16_000, true)] {
        let mut then = device.clone();
        let left_ms = 30_000 - at;
        let phase = HoldPhase::Holding { side: 1, left_ms, push };
        assert_eq!(then.wait(at).hold(&spec).phase, phase, "{at} ms into the side");
    }
    // A pause in a contraction keeps what was left of it.
    device.wait(4_000).act(Act::Pause).wait(MINUTE).act(Act::Resume);
    assert_eq!(dues(&device.hold(&spec).cues)[0], (2_000, CueKind::Release));
}

#[test]
fn no_release_is_due_at_the_end_of_a_side_or_without_relaxing() {
    let spec = HoldSpec { hold_ms: 6_000, sides: 1, contract_ms: 6_000, ..two_sides() };
    let mut device = Device::new();
    device.act(Act::Begin).act(Act::Skip);
    let cues = [(0, CueKind::Begin), (0, CueKind::Contract), (6_000, CueKind::End)];
    for relax_ms in [-1, 0, 10_000] {
        let spec = HoldSpec { relax_ms, ..spec.clone() };
        assert_eq!(dues(&device.hold(&spec).cues), cues, "relax {relax_ms}");
        let phase = HoldPhase::Holding { side: 1, left_ms: 1, push: true };
        assert_eq!(device.clone().wait(5_999).hold(&spec).phase, phase, "relax {relax_ms}");
    }
}
