//! Extending, what passed unseen, and what cannot be known: hold cases worked out by hand.

use super::super::{
    CueKind, During, EXTEND_MS, FAR_MS, HoldPhase, HoldSpec, MAX_SIDE_MS, Trust, WhyShort,
};
use super::{Act, Device, dues};

const HOUR: i64 = 3_600_000;

/// Ready 0 to 5 s, side 1 to 125 s, switch to 135 s, side 2 to 255 s.
fn two_sides() -> HoldSpec {
    HoldSpec {
        ready_ms: 5_000,
        hold_ms: 120_000,
        switch_ms: 10_000,
        sides: 2,
        contract_ms: 0,
        relax_ms: 0,
    }
}

fn holding(side: u32, left_ms: i64) -> HoldPhase {
    HoldPhase::Holding { side, left_ms, push: false }
}

#[test]
fn extending_adds_up_on_the_side_that_is_held_and_on_no_other() {
    let (spec, mut device) = (two_sides(), Device::new());
    device.act(Act::Extend).act(Act::Begin).act(Act::Extend).wait(15_000);
    assert_eq!(device.hold(&spec).phase, holding(1, 110_000), "nothing was held to extend");
    device.act(Act::Extend).act(Act::Extend);
    let state = device.hold(&spec);
    assert_eq!((state.phase, state.length_ms), (holding(1, 140_000), vec![150_000, 120_000]));
    // 10 s of side one were held, so it ends in 140 s; then 10 s of switch and 120 s.
    assert_eq!(state.ends_in_ms, Some(140_000 + 10_000 + 120_000));
    let due = [
        (65_000, CueKind::Halfway),
        (130_000, CueKind::LastSeconds),
        (140_000, CueKind::SwitchSide),
        (150_000, CueKind::Begin),
    ];
    assert_eq!(dues(&state.cues)[..4], due);
    device.wait(140_000);
    let switching = HoldPhase::Switching { to_side: 2, left_ms: 10_000 };
    assert_eq!(device.hold(&spec).phase, switching);
    assert_eq!(device.act(Act::Extend).hold(&spec).length_ms, [150_000, 120_000], "a switch");
    device.wait(130_000);
    let state = device.hold(&spec);
    assert_eq!(state.phase, HoldPhase::Done { ran_out: true, ago_ms: 0 });
    assert_eq!((state.held_ms, state.short), (vec![150_000, 120_000], vec![None, None]));
}

#[test]
fn an_extended_side_can_be_paused_skipped_and_stopped() {
    let (spec, mut device) = (two_sides(), Device::new());
    device.act(Act::Begin).wait(125_000 - 1_000).act(Act::Pause).act(Act::Extend).wait(HOUR);
    let paused = HoldPhase::Paused { during: During::Work, side: 1, left_ms: 16_000 };
    assert_eq!(device.hold(&spec).phase, paused);
    // 119 + 4 s were held: more than asked, so nothing is short though it was skipped.
    device.act(Act::Resume).wait(4_000).act(Act::Skip);
    let state = device.hold(&spec);
    assert_eq!((state.held_ms, state.short), (vec![123_000, 0], vec![None, None]));
    device.wait(10_000 + 30_000).act(Act::Skip);
    let state = device.hold(&spec);
    assert_eq!(
        (state.held_ms, state.short),
        (vec![123_000, 30_000], vec![None, Some(WhyShort::Skipped)])
    );
}

#[test]
fn why_a_side_is_short_is_known_once_it_cannot_get_longer() {
    let (spec, mut device) = (two_sides(), Device::new());
    device.act(Act::Begin).wait(65_000);
    assert_eq!(device.hold(&spec).short, [None, None], "it still runs");
    let mut stopped = device.clone();
    let short = stopped.act(Act::Stop).hold(&spec).short;
    assert_eq!(short, [Some(WhyShort::Stopped), Some(WhyShort::Stopped)]);
    let short = device.act(Act::Skip).wait(20_000).act(Act::Stop).hold(&spec).short;
    assert_eq!(short, [Some(WhyShort::Skipped), Some(WhyShort::Stopped)]);
}

#[test]
fn a_side_becomes_no_longer_than_half_an_hour() {
    let (spec, mut device) = (two_sides(), Device::new());
    device.act(Act::Begin).wait(6_000);
    let times = (MAX_SIDE_MS - spec.hold_ms) / EXTEND_MS;
    (0..times + 50).for_each(|_| {
        device.act(Act::Extend);
    });
    assert_eq!(device.hold(&spec).length_ms, [MAX_SIDE_MS, spec.hold_ms]);
    let long = HoldSpec { hold_ms: 10 * HOUR, ..spec };
    assert_eq!(device.hold(&long).length_ms, [10 * HOUR, 10 * HOUR], "never made shorter");
}

#[test]
fn what_a_sleep_swallowed_is_listed_and_not_given_in_a_burst() {
    let (spec, mut device) = (two_sides(), Device::new());
    assert!(device.act(Act::Begin).hold(&spec).passed.is_empty(), "due now, so not passed");
    // Asleep until 40 s into side two.
    device.wait(175_000);
    let state = device.hold(&spec);
    let passed: Vec<_> = state.passed.iter().map(|cue| (cue.ago_ms, cue.kind, cue.turn)).collect();
    let expected = [
        (175_000, CueKind::GetReady, 1),
        (170_000, CueKind::Begin, 1),
        (110_000, CueKind::Halfway, 1),
        (60_000, CueKind::LastSeconds, 1),
        (50_000, CueKind::SwitchSide, 2),
        (40_000, CueKind::Begin, 2),
    ];
    assert_eq!(passed, expected);
    assert_eq!(dues(&state.cues)[0], (20_000, CueKind::Halfway), "only what lies ahead is due");
    // The athlete is back: what is older than that has been seen.
    device.act(Act::Pause).act(Act::Resume).wait(20_001);
    let state = device.hold(&spec);
    assert_eq!(state.passed.len(), 1);
    assert_eq!((state.passed[0].ago_ms, state.passed[0].kind), (1, CueKind::Halfway));
    let done = device.wait(60_000 - 1 + 5_000).hold(&spec);
    let last = done.passed.last().map(|cue| (cue.ago_ms, cue.kind));
    assert_eq!(last, Some((5_000, CueKind::End)));
}

#[test]
fn a_reboot_is_trusted_and_said_and_both_together_are_not_claimed() {
    let spec = two_sides();
    let mut begun = Device::new();
    begun.act(Act::Begin).wait(15_000).act(Act::Pause).act(Act::Resume).wait(20_000);
    assert_eq!(begun.hold(&spec).trust, Trust::Boot);
    let mut set = begun.clone();
    set.set_wall(-HOUR);
    set.offset_min = -480;
    assert_eq!((set.hold(&spec).trust, set.hold(&spec).held_ms[0]), (Trust::Boot, 30_000));

    let mut rebooted = begun.clone();
    let state = rebooted.reboot(40_000).hold(&spec);
    assert_eq!((state.trust, state.held_ms), (Trust::Wall, vec![70_000, 0]));

    // Rebooted and set back: nothing since the last mark is claimed.
    let mut back = begun.clone();
    let state = back.reboot(40_000).set_wall(-HOUR).hold(&spec);
    assert_eq!((state.trust, &state.held_ms), (Trust::Unknown, &vec![10_000, 0]));
    assert_eq!(state.phase, holding(1, 110_000));
    assert!(state.passed.is_empty());
    // From the next mark the new boot counts, and the doubt stays.
    let state = back.act(Act::Resume).wait(7_000).act(Act::Stop).hold(&spec);
    assert_eq!((state.trust, state.held_ms), (Trust::Unknown, vec![17_000, 0]));
    assert_eq!(state.short, [Some(WhyShort::Unseen), Some(WhyShort::Unseen)]);

    // Rebooted and set far forward: 240 s of the course were left at the last mark.
    for (past_the_end, trust) in [(FAR_MS, Trust::Wall), (FAR_MS + 1, Trust::Unknown)] {
        let mut far = begun.clone();
        let state = far.reboot(0).set_wall(240_000 - 20_000 + past_the_end).hold(&spec);
        assert_eq!(state.trust, trust);
        let held = if trust == Trust::Wall { [120_000, 120_000] } else { [10_000, 0] };
        assert_eq!(state.held_ms, held);
    }

    // A clock that stood still loses nothing by it.
    let mut paused = begun.clone();
    paused.act(Act::Pause).reboot(40_000).set_wall(-HOUR);
    let state = paused.act(Act::Resume).wait(1_000).hold(&spec);
    assert_eq!((state.trust, state.held_ms), (Trust::Boot, vec![31_000, 0]));
}
