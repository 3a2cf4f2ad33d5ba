//! A clock as it is shown: of a hold, of windows, of a rest.

use super::screen::{ClockView, CueView, PhaseSpan, RestView, WindowView};
use crate::clock::{
    Cue, CueKind, During, HoldPhase, HoldSpec, HoldState, IntervalPhase, IntervalState, Phase,
    Trust,
};
use crate::instant::Millis;
use crate::plan::Interval;
use crate::say::clock as say;
use crate::words;

/// The most spans of a gauge: a side of more has none drawn.
const MOST_SPANS: usize = 400;

fn cue(cue: &Cue, words: String) -> CueView {
    let Cue { due_in_ms, due_boot_ms, kind, turn } = *cue;
    CueView { due_in: Millis(due_in_ms), due_boot_ms, kind, turn, words }
}

/// The next cue that is not due at this very moment.
fn next(cues: &[CueView]) -> Option<String> {
    let ahead = cues.iter().find(|cue| cue.due_in > Millis(0))?;
    Some(words::next_cue(&ahead.words, ahead.due_in.0))
}

/// A view of nothing in particular, to be filled in.
fn plain(phase: Phase, turn: u32, turns: u32, trust: Trust) -> ClockView {
    ClockView {
        phase,
        now: words::phase(phase, turn, turns),
        about: None,
        paused: false,
        runs: false,
        turn,
        turns,
        left: None,
        digits: None,
        over: None,
        to_go: None,
        turn_left: None,
        spans: Vec::new(),
        spent: Millis(0),
        mark: None,
        held: Vec::new(),
        length: Vec::new(),
        ends_in: None,
        next: None,
        cues: Vec::new(),
        went_by: None,
        trust,
        question: None,
    }
}

impl ClockView {
    /// With its digits in words.
    fn in_digits(mut self) -> ClockView {
        let rests = matches!(self.phase, Phase::Rest | Phase::RestOver);
        self.digits = self.left.map(|left| match rests {
            true => words::digits(left.0),
            false => words::floor_digits(left.0),
        });
        let over = self.over.filter(|_| self.phase == Phase::RestOver);
        self.to_go = match (self.turn_left, over) {
            (Some(left), _) => Some(words::to_go(left.0)),
            (None, Some(over)) => Some(words::over_by(over.0)),
            (None, None) => None,
        };
        self
    }
}

/// A hold's clock; none before it is begun.
pub fn hold_clock(spec: &HoldSpec, state: &HoldState) -> Option<ClockView> {
    let turns = state.held_ms.len() as u32;
    let side = |turn: u32| words::side(turn, turns);
    let mut view = match &state.phase {
        HoldPhase::NotBegun => return None,
        HoldPhase::Ready { left_ms } => ClockView {
            about: side(1),
            left: Some(Millis(*left_ms)),
            ..plain(Phase::Ready, 1, turns, state.trust)
        },
        HoldPhase::Holding { side: turn, left_ms, .. } => held(spec, state, *turn, *left_ms, turns),
        HoldPhase::Switching { to_side, left_ms } => ClockView {
            about: words::to_side(*to_side, turns),
            left: Some(Millis(*left_ms)),
            ..plain(Phase::Switch, *to_side, turns, state.trust)
        },
        HoldPhase::Paused { during, side: turn, left_ms } => {
            let inside = match during {
                During::Ready => plain(Phase::Ready, *turn, turns, state.trust),
                During::Switch => plain(Phase::Switch, *turn, turns, state.trust),
                During::Work => held(spec, state, *turn, *left_ms, turns),
            };
            let left = inside.left.or(Some(Millis(*left_ms)));
            let about = match during {
                During::Switch => words::before_side(*turn, turns),
                During::Ready | During::Work => side(*turn),
            };
            ClockView { paused: true, now: say::paused().into(), about, left, ..inside }
        }
        HoldPhase::Done { ran_out, ago_ms } => done(*ran_out, *ago_ms, turns, state.trust),
    };
    view.runs = !view.paused && view.phase != Phase::Done;
    view.held = state.held_ms.iter().copied().map(Millis).collect();
    view.length = state.length_ms.iter().copied().map(Millis).collect();
    view.ends_in = state.ends_in_ms.map(Millis);
    view.cues = state.cues.iter().map(|due| cue(due, words::cue(due.kind).into())).collect();
    view.next = next(&view.cues);
    Some(view.in_digits())
}

/// A side being held: the phase's own time in the big digits, the side's beside it.
fn held(spec: &HoldSpec, state: &HoldState, turn: u32, left_ms: i64, turns: u32) -> ClockView {
    let length = state.length_ms.get(turn as usize - 1).copied().unwrap_or(spec.hold_ms);
    let spent = Millis((length - left_ms).max(0));
    let spans = spans(spec, length);
    let now = spans.iter().find(|span| (span.from..span.to).contains(&spent));
    let phase = now.map_or(Phase::Hold, |span| span.phase);
    let phase_left = now.map_or(left_ms, |span| span.to.0 - spent.0);
    ClockView {
        about: words::side(turn, turns),
        left: Some(Millis(phase_left)),
        turn_left: (spec.contract_ms > 0).then_some(Millis(left_ms)),
        spans,
        spent,
        ..plain(phase, turn, turns, state.trust)
    }
}

/// The phases of a side of some length.
fn spans(spec: &HoldSpec, length: i64) -> Vec<PhaseSpan> {
    let (push, release) = (spec.contract_ms.max(0), spec.relax_ms.max(0));
    let whole = |phase| vec![PhaseSpan { phase, from: Millis(0), to: Millis(length) }];
    if push == 0 {
        return whole(Phase::Hold);
    }
    if release == 0 || length / (push + release) > MOST_SPANS as i64 / 2 {
        return whole(Phase::Push);
    }
    let mut spans = Vec::new();
    let mut from_ms = 0;
    while from_ms < length {
        let push = if spans.len() % 2 == 0 { (Phase::Push, push) } else { (Phase::LetGo, release) };
        let to_ms = (from_ms + push.1).min(length);
        spans.push(PhaseSpan { phase: push.0, from: Millis(from_ms), to: Millis(to_ms) });
        from_ms = to_ms;
    }
    spans
}

/// An interval's clock; none before it is begun. Cues and windows say what is to be done.
pub(super) fn interval_clock(
    interval: &Interval,
    state: &IntervalState,
    windows: &[WindowView],
) -> Option<ClockView> {
    let turns = interval.windows();
    let asked = |window: u32| {
        windows.iter().find(|shown| shown.window == window).map(|window| window.asked_text.clone())
    };
    let inside = |window: u32, left_ms: i64| ClockView {
        about: asked(window),
        left: Some(Millis(left_ms)),
        spans: vec![PhaseSpan {
            phase: Phase::Window,
            from: Millis(0),
            to: Millis(interval.window_ms),
        }],
        spent: Millis((interval.window_ms - left_ms).max(0)),
        mark: Some(Millis((interval.window_ms - interval.margin_ms).max(0))),
        ..plain(Phase::Window, window, turns, state.trust)
    };
    let ready = |left_ms: i64| ClockView {
        about: asked(1).map(say::first_window),
        left: Some(Millis(left_ms)),
        ..plain(Phase::Ready, 1, turns, state.trust)
    };
    let mut view = match &state.phase {
        IntervalPhase::NotBegun => return None,
        IntervalPhase::Ready { left_ms } => ready(*left_ms),
        IntervalPhase::Window { window, left_ms } => inside(*window, *left_ms),
        IntervalPhase::Paused { during, window, left_ms } => {
            let (inside, now) = match during {
                During::Ready => (ready(*left_ms), say::paused().into()),
                During::Work | During::Switch => {
                    (inside(*window, *left_ms), say::paused_in_window(window))
                }
            };
            ClockView { paused: true, now, ..inside }
        }
        IntervalPhase::Done { ran_out, ago_ms } => done(*ran_out, *ago_ms, turns, state.trust),
    };
    view.runs = !view.paused && view.phase != Phase::Done;
    view.ends_in = state.ends_in_ms.map(Millis);
    view.cues =
        state.cues.iter().map(|due| cue(due, spoken(due.kind, due.turn, windows))).collect();
    view.next = next(&view.cues);
    Some(view.in_digits())
}

/// What a cue speaks, with the movement of the window that starts.
pub(super) fn spoken(kind: CueKind, turn: u32, windows: &[WindowView]) -> String {
    let movement = match kind {
        CueKind::Begin | CueKind::NextWindow => windows
            .iter()
            .find(|window| window.window == turn)
            .map(|window| window.movement.as_str()),
        _ => None,
    };
    movement.map_or_else(|| words::cue(kind).into(), |name| words::window_cue(kind, name))
}

fn done(ran_out: bool, ago_ms: i64, turns: u32, trust: Trust) -> ClockView {
    let now = if ran_out { say::done() } else { say::stopped() };
    let about = (trust != Trust::Unknown).then(|| words::long_ago(ago_ms));
    ClockView {
        now: now.into(),
        about,
        over: Some(Millis(ago_ms)),
        ..plain(Phase::Done, turns, turns, trust)
    }
}

/// A rest: down to its end, then up from there.
pub(super) fn rest_clock(rest: &RestView) -> ClockView {
    let over = rest.over.filter(|over| *over > Millis(0));
    let phase = if over.is_some() { Phase::RestOver } else { Phase::Rest };
    let whole = PhaseSpan { phase: Phase::Rest, from: Millis(0), to: rest.suggested };
    let view = ClockView {
        about: Some(rest.words.clone()),
        runs: rest.rested.is_some(),
        left: rest.left.filter(|_| over.is_none()),
        over,
        spans: vec![whole],
        spent: rest.rested.unwrap_or_default().min(rest.suggested),
        ends_in: rest.left.filter(|left| *left > Millis(0)),
        cues: rest.cue.iter().cloned().collect(),
        ..plain(phase, 1, 1, rest.trust)
    };
    view.in_digits()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::clock::{Act, Mark, hold_state};
    use crate::instant::Instant;

    fn at(ms: i64) -> Instant {
        Instant { wall_ms: ms, offset_min: 0, boot_ms: ms, boot_id: "a".into() }
    }

    fn view(spec: &HoldSpec, ms: i64) -> ClockView {
        let marks = [Mark { act: Act::Begin, at: at(0) }];
        hold_clock(spec, &hold_state(spec, &marks, &at(ms))).unwrap()
    }

    /// Two minutes of 6 s push and 24 s let go: the big digits are the phase's, the side's stand beside.
    #[test]
    fn the_big_digits_count_the_phase() {
        let spec = HoldSpec {
            ready_ms: 5_000,
            hold_ms: 120_000,
            switch_ms: 10_000,
            sides: 2,
            contract_ms: 6_000,
            relax_ms: 24_000,
        };
        for (ms, phase, left, side) in [
            (1_000, Phase::Ready, 4_000, None),
            (5_000, Phase::Push, 6_000, Some(120_000)),
            (10_000, Phase::Push, 1_000, Some(115_000)),
            (11_000, Phase::LetGo, 24_000, Some(114_000)),
            (124_000, Phase::LetGo, 1_000, Some(1_000)),
            (125_000, Phase::Switch, 10_000, None),
            (135_000, Phase::Push, 6_000, Some(120_000)),
        ] {
            let view = view(&spec, ms);
            let shown = (view.phase, view.left, view.turn_left);
            assert_eq!(shown, (phase, Some(Millis(left)), side.map(Millis)));
        }
        let spans = view(&spec, 5_000).spans;
        assert_eq!(spans.len(), 8);
        assert!(spans.windows(2).all(|two| two[0].to == two[1].from));
        assert_eq!(view(&spec, 5_000).about.as_deref(), Some("left"));
        assert_eq!(view(&spec, 136_000).about.as_deref(), Some("right"));
    }

    /// Whatever the lengths: the phase that is shown lasts as long as its digits say, and not longer.
    #[test]
    fn a_phase_lasts_as_long_as_its_digits_say() {
        let spec = HoldSpec {
            ready_ms: 0,
            hold_ms: 47_000,
            switch_ms: 0,
            sides: 1,
            contract_ms: 6_000,
            relax_ms: 11_000,
        };
        for ms in (0..47_000).step_by(500) {
            let now = view(&spec, ms);
            let left = now.left.unwrap().0;
            let last = view(&spec, ms + left - 1);
            let after = view(&spec, ms + left);
            assert_eq!(last.phase, now.phase, "at {ms}");
            assert_ne!(after.phase, now.phase, "at {ms}");
        }
    }
}
