//! Absurd specs and absurd marks: answers that are still answers, and at once.

use proptest::prelude::*;

use super::super::{
    HoldPhase, HoldSpec, IntervalPhase, IntervalSpec, MAX_CUES, MAX_SIDE_MS, MAX_SIDES,
};
use super::{Act, CueKind, Device, Instant, Mark, dues, hold_state, interval_state};

#[test]
fn a_billion_windows_are_counted_by_arithmetic() {
    let spec = IntervalSpec { ready_ms: 0, window_ms: 60_000, windows: 1_000_000_000 };
    let mut device = Device::new();
    device.act(Act::Begin).wait(60_000 * 999_999_999 + 1);
    let phase = IntervalPhase::Window { window: 1_000_000_000, left_ms: 59_999 };
    assert_eq!(device.interval(&spec).phase, phase);
    // Of all that a phone has missed in two thousand years, the latest.
    let passed = device.interval(&spec).passed;
    assert_eq!(passed.len(), MAX_CUES);
    let latest = passed.last().map(|cue| (cue.ago_ms, cue.kind, cue.turn));
    assert_eq!(latest, Some((1, CueKind::NextWindow, 1_000_000_000)));
    let mut fresh = Device::new();
    assert_eq!(fresh.act(Act::Begin).interval(&spec).cues.len(), MAX_CUES);
}

#[test]
fn a_million_contractions_are_listed_from_the_one_that_is_running() {
    let spec = HoldSpec {
        ready_ms: 0,
        hold_ms: 2_000_000,
        switch_ms: 0,
        sides: 1,
        contract_ms: 1,
        relax_ms: 1,
    };
    let mut device = Device::new();
    let cues = dues(&device.act(Act::Begin).wait(1_500_001).hold(&spec).cues);
    assert_eq!(cues[..2], [(0, CueKind::Release), (1, CueKind::Contract)]);
    assert_eq!((cues.len(), cues[MAX_CUES - 1].0), (MAX_CUES, MAX_CUES as i64 - 1));
    let passed = device.hold(&spec).passed;
    let ago = |index: usize| (passed[index].ago_ms, passed[index].kind);
    assert_eq!(ago(MAX_CUES - 1), (1, CueKind::Contract));
    assert_eq!((passed.len(), ago(0).0), (MAX_CUES, MAX_CUES as i64));
}

#[test]
fn nothing_to_do_is_done_at_once() {
    let spec = IntervalSpec { ready_ms: -5, window_ms: 0, windows: u32::MAX };
    let mut device = Device::new();
    let state = device.act(Act::Begin).interval(&spec);
    assert_eq!(state.phase, IntervalPhase::Done { ran_out: true, ago_ms: 0 });
    assert_eq!(dues(&state.cues), [(0, CueKind::End)]);

    let spec = HoldSpec {
        ready_ms: 5_000,
        hold_ms: 120_000,
        switch_ms: 10_000,
        sides: 0,
        contract_ms: 0,
        relax_ms: 0,
    };
    let state = device.wait(5_000).hold(&spec);
    assert_eq!(state.phase, HoldPhase::Done { ran_out: true, ago_ms: 0 });
    assert!(state.held_ms.is_empty());
}

/// Any number, with the edges often.
fn wild() -> impl Strategy<Value = i64> {
    prop_oneof![Just(i64::MIN), Just(i64::MAX), -3..3_i64, -100_000..100_000_i64, any::<i64>()]
}

fn wild_count() -> impl Strategy<Value = u32> {
    prop_oneof![0..3_u32, Just(u32::MAX), any::<u32>()]
}

fn wild_instant() -> impl Strategy<Value = Instant> {
    (wild(), any::<i32>(), wild(), 0..3_u32).prop_map(|(wall_ms, offset_min, boot_ms, boot)| {
        Instant { wall_ms, offset_min, boot_ms, boot_id: boot.to_string() }
    })
}

fn wild_marks() -> impl Strategy<Value = Vec<Mark>> {
    let act = prop::sample::select(Act::ALL);
    let mark = (act, wild_instant()).prop_map(|(act, at)| Mark { act, at });
    let begin = wild_instant().prop_map(|at| Mark { act: Act::Begin, at });
    (begin, prop::collection::vec(mark, 0..20)).prop_map(|(begin, mut marks)| {
        marks.insert(0, begin);
        marks
    })
}

proptest! {
    #[test]
    fn nothing_overflows_or_takes_long(
        lengths in (wild(), wild(), wild(), wild(), wild()),
        count in wild_count(),
        marks in wild_marks(),
        now in wild_instant(),
    ) {
        let (ready_ms, work_ms, switch_ms, contract_ms, relax_ms) = lengths;
        let hold =
            HoldSpec { ready_ms, hold_ms: work_ms, switch_ms, sides: count, contract_ms, relax_ms };
        let state = hold_state(&hold, &marks, &now);
        prop_assert_eq!(state.held_ms.len(), count.min(MAX_SIDES) as usize);
        let mut sides = state.held_ms.iter().zip(&state.length_ms);
        prop_assert!(sides.all(|(held, length)| (0..=*length).contains(held)));
        // Extending alone makes a side longer, and never past half an hour.
        prop_assert!(state.length_ms.iter().all(|ms| *ms == work_ms.max(0) || *ms <= MAX_SIDE_MS));
        let interval = IntervalSpec { ready_ms, window_ms: work_ms, windows: count };
        let other = interval_state(&interval, &marks, &now);
        for passed in [state.passed, other.passed] {
            prop_assert!(passed.len() <= MAX_CUES);
            prop_assert!(passed.is_sorted_by(|a, b| a.ago_ms >= b.ago_ms));
            prop_assert!(passed.iter().all(|cue| cue.ago_ms > 0));
        }
        for cues in [state.cues, other.cues] {
            prop_assert!(cues.len() <= MAX_CUES);
            prop_assert!(cues.is_sorted_by_key(|cue| cue.due_in_ms));
            prop_assert!(cues.iter().all(|cue| cue.due_in_ms >= 0));
        }
    }
}

#[test]
fn marks_are_kept_as_words_and_come_back() {
    let mark = Mark { act: Act::Skip, at: Device::new().now() };
    let text = serde_json::to_string(&mark).unwrap();
    assert!(text.starts_with(r#"{"act":"skip","at":{"#), "{text}");
    assert_eq!(serde_json::from_str::<Mark>(&text).unwrap(), mark);
}
