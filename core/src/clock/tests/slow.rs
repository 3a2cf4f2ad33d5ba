//! A second implementation, written to be plain and not quick: it lists every stretch and lives
//! through every tenth of a second.

use super::super::{
    CueKind, During, HoldPhase, HoldSpec, IntervalPhase, IntervalSpec, Trust, WhyShort,
};
use super::{Act, Instant};

/// All lengths and all moments in these tests are multiples of this.
pub(super) const TICK_MS: i64 = 100;

#[derive(Clone, Copy, Debug)]
struct Stretch {
    during: During,
    turn: u32,
    length_ms: i64,
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum How {
    Waiting,
    Going,
    Standing,
    RanOut,
    Ended,
}

/// A clock that is told of each tick and each act as it happens.
#[derive(Clone, Debug)]
pub(super) struct SlowClock {
    list: Vec<Stretch>,
    index: usize,
    spent_ms: i64,
    how: How,
    ago_ms: i64,
    stopped: bool,
    contract_ms: i64,
    relax_ms: i64,
    hold: bool,
    pub(super) worked_ms: Vec<i64>,
    /// Ticks lived through.
    ticks: i64,
    /// Cues since the last act, and the tick each was due at.
    passed: Vec<(i64, CueKind)>,
    /// Turns that a skip ended.
    skipped: Vec<u32>,
}

impl SlowClock {
    pub(super) fn hold(spec: &HoldSpec) -> SlowClock {
        let mut list = vec![(During::Ready, 1, spec.ready_ms)];
        for side in 1..=spec.sides {
            if side > 1 {
                list.push((During::Switch, side, spec.switch_ms));
            }
            list.push((During::Work, side, spec.hold_ms));
        }
        SlowClock {
            hold: true,
            ..SlowClock::new(&list, spec.sides, spec.contract_ms, spec.relax_ms)
        }
    }

    pub(super) fn interval(spec: &IntervalSpec) -> SlowClock {
        let mut list = vec![(During::Ready, 1, spec.ready_ms)];
        list.extend((1..=spec.windows).map(|window| (During::Work, window, spec.window_ms)));
        SlowClock::new(&list, spec.windows, 0, 0)
    }

    fn new(list: &[(During, u32, i64)], turns: u32, contract_ms: i64, relax_ms: i64) -> SlowClock {
        let stretch =
            |&(during, turn, length_ms): &(During, u32, i64)| Stretch { during, turn, length_ms };
        SlowClock {
            list: list.iter().map(stretch).collect(),
            index: 0,
            spent_ms: 0,
            how: How::Waiting,
            ago_ms: 0,
            stopped: false,
            contract_ms,
            relax_ms,
            hold: false,
            ticks: 0,
            passed: Vec::new(),
            skipped: Vec::new(),
            worked_ms: vec![0; turns as usize],
        }
    }

    fn live(&self) -> bool {
        self.how == How::Going || self.how == How::Standing
    }

    /// Leaves stretches that are over, and comes to an end with `how` after the last.
    fn settle(&mut self, how: How) {
        while self.list.get(self.index).is_some_and(|stretch| self.spent_ms >= stretch.length_ms) {
            self.index += 1;
            self.spent_ms = 0;
        }
        if self.index == self.list.len() {
            self.how = how;
        }
    }

    pub(super) fn tick(&mut self) {
        let due = match self.how {
            How::Going => self.cues_here(),
            How::RanOut | How::Ended if self.ago_ms == 0 && !self.stopped => vec![CueKind::End],
            _ => Vec::new(),
        };
        self.passed.extend(due.into_iter().map(|kind| (self.ticks, kind)));
        self.ticks += 1;
        match self.how {
            How::Waiting | How::Standing => {}
            How::RanOut | How::Ended => self.ago_ms += TICK_MS,
            How::Going => {
                let stretch = self.list[self.index];
                if stretch.during == During::Work {
                    self.worked_ms[stretch.turn as usize - 1] += TICK_MS;
                }
                self.spent_ms += TICK_MS;
                self.settle(How::RanOut);
            }
        }
    }

    pub(super) fn act(&mut self, act: Act) {
        self.passed.clear();
        let during = self.list.get(self.index).map(|stretch| stretch.during);
        let working = self.live() && during == Some(During::Work);
        match act {
            Act::Begin if self.how == How::Waiting => {
                self.how = How::Going;
                self.settle(How::RanOut);
            }
            Act::Pause if self.how == How::Going => self.how = How::Standing,
            Act::Resume if self.how == How::Standing => self.how = How::Going,
            Act::Extend if working && self.hold => {
                let length = &mut self.list[self.index].length_ms;
                // A quarter of a minute more, and half an hour at the most.
                if *length + 15_000 <= 1_800_000 {
                    *length += 15_000;
                }
            }
            Act::Skip if self.live() => {
                if working {
                    self.skipped.push(self.list[self.index].turn);
                }
                self.index += 1;
                self.spent_ms = 0;
                self.settle(How::Ended);
            }
            Act::Stop if self.live() => {
                self.how = How::Ended;
                self.stopped = true;
            }
            _ => {}
        }
    }

    /// Counts contractions and releases down one by one.
    fn pushing(&self) -> bool {
        let (mut left, mut push) = (self.spent_ms, true);
        if self.contract_ms == 0 || self.relax_ms == 0 {
            return self.contract_ms > 0;
        }
        loop {
            let length = if push { self.contract_ms } else { self.relax_ms };
            if left < length {
                return push;
            }
            left -= length;
            push = !push;
        }
    }

    pub(super) fn hold_phase(&self) -> HoldPhase {
        let (during, side, left_ms) = match self.how {
            How::Waiting => return HoldPhase::NotBegun,
            How::RanOut | How::Ended => {
                return HoldPhase::Done { ran_out: self.how == How::RanOut, ago_ms: self.ago_ms };
            }
            How::Going | How::Standing => {
                let stretch = self.list[self.index];
                (stretch.during, stretch.turn, stretch.length_ms - self.spent_ms)
            }
        };
        match (self.how, during) {
            (How::Standing, _) => HoldPhase::Paused { during, side, left_ms },
            (_, During::Ready) => HoldPhase::Ready { left_ms },
            (_, During::Work) => HoldPhase::Holding { side, left_ms, push: self.pushing() },
            (_, During::Switch) => HoldPhase::Switching { to_side: side, left_ms },
        }
    }

    pub(super) fn interval_phase(&self) -> IntervalPhase {
        match self.hold_phase() {
            HoldPhase::NotBegun => IntervalPhase::NotBegun,
            HoldPhase::Ready { left_ms } => IntervalPhase::Ready { left_ms },
            HoldPhase::Holding { side: window, left_ms, .. } => {
                IntervalPhase::Window { window, left_ms }
            }
            HoldPhase::Switching { .. } => panic!("an interval has no switch"),
            HoldPhase::Paused { during, side: window, left_ms } => {
                IntervalPhase::Paused { during, window, left_ms }
            }
            HoldPhase::Done { ran_out, ago_ms } => IntervalPhase::Done { ran_out, ago_ms },
        }
    }

    /// What the clock has come to by a moment when it was last known at another. Nothing but the
    /// naked rule, and a tick for every tenth of a second.
    pub(super) fn come_to(
        &self,
        trust: Trust,
        last: &Instant,
        now: &Instant,
    ) -> (SlowClock, Trust) {
        if self.how == How::Waiting || self.how == How::Standing {
            return (self.clone(), trust);
        }
        let rebooted = last.boot_id != now.boot_id;
        let ms = if rebooted { now.wall_ms - last.wall_ms } else { now.boot_ms - last.boot_ms };
        if rebooted && ms < 0 {
            return (self.clone(), Trust::Unknown);
        }
        let half_a_day = 12 * 60 * 60 * 1000;
        let mut lived = self.clone();
        for _ in 0..ms / TICK_MS {
            if rebooted && lived.ago_ms > half_a_day {
                break;
            }
            lived.tick();
        }
        match rebooted {
            false => (lived, trust),
            true if lived.ago_ms > half_a_day => (self.clone(), Trust::Unknown),
            true => (lived, trust.max(Trust::Wall)),
        }
    }

    /// Cues since the last act: how long ago, and what for.
    pub(super) fn passed(&self) -> Vec<(i64, CueKind)> {
        self.passed.iter().map(|(tick, kind)| ((self.ticks - tick) * TICK_MS, *kind)).collect()
    }

    /// The length of each side.
    pub(super) fn lengths(&self) -> Vec<i64> {
        let sides = self.list.iter().filter(|stretch| stretch.during == During::Work);
        sides.map(|stretch| stretch.length_ms).collect()
    }

    /// Why each side was short of what the plan asks.
    pub(super) fn short(&self, asked_ms: i64, trust: Trust) -> Vec<Option<WhyShort>> {
        let over = self.how == How::RanOut || self.how == How::Ended;
        let why = |(held, side): (&i64, u32)| {
            if *held >= asked_ms {
                None
            } else if self.skipped.contains(&side) {
                Some(WhyShort::Skipped)
            } else if !over {
                None
            } else if trust == Trust::Unknown {
                Some(WhyShort::Unseen)
            } else {
                Some(WhyShort::Stopped)
            }
        };
        self.worked_ms.iter().zip(1..).map(why).collect()
    }

    /// Milliseconds to the end, counted by living through them.
    pub(super) fn ends_in(&self) -> Option<i64> {
        if !self.live() {
            return None;
        }
        let (mut clock, mut ms) = (self.clone(), 0);
        clock.how = How::Going;
        while clock.how == How::Going {
            clock.tick();
            ms += TICK_MS;
        }
        Some(ms)
    }

    /// The cues ahead, found by living through what is left. Turns must have a length.
    pub(super) fn cues(&self) -> Vec<(i64, CueKind)> {
        let (mut clock, mut ahead, mut due) = (self.clone(), Vec::new(), 0);
        while clock.how == How::Going {
            ahead.extend(clock.cues_here().into_iter().map(|kind| (due, kind)));
            clock.tick();
            due += TICK_MS;
        }
        let over = clock.how == How::RanOut || clock.how == How::Ended;
        if over && clock.ago_ms == 0 && !clock.stopped {
            ahead.push((due, CueKind::End));
        }
        ahead
    }

    fn cues_here(&self) -> Vec<CueKind> {
        let (stretch, spent) = (self.list[self.index], self.spent_ms);
        let mut kinds = Vec::new();
        match (stretch.during, spent) {
            (During::Ready, 0) => kinds.push(CueKind::GetReady),
            (During::Switch, 0) => kinds.push(CueKind::SwitchSide),
            (During::Work, 0) if !self.hold && stretch.turn > 1 => kinds.push(CueKind::NextWindow),
            (During::Work, 0) => {
                if stretch.turn > 1 && self.list[self.index - 1].length_ms == 0 {
                    kinds.push(CueKind::SwitchSide);
                }
                kinds.push(CueKind::Begin);
            }
            _ => {}
        }
        if stretch.during != During::Work {
            return kinds;
        }
        if spent * 2 == stretch.length_ms && stretch.length_ms > 20_000 {
            kinds.push(CueKind::Halfway);
        }
        if spent > 0 && stretch.length_ms - spent == 10_000 {
            kinds.push(CueKind::LastSeconds);
        }
        if self.contract_ms > 0 {
            let before = SlowClock { spent_ms: spent - TICK_MS, ..self.clone() };
            match (spent > 0 && before.pushing(), self.pushing()) {
                (false, true) => kinds.push(CueKind::Contract),
                (true, false) => kinds.push(CueKind::Release),
                _ => {}
            }
        }
        kinds
    }
}
