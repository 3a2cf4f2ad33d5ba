//! Taps on pieces that a clock times: windows, holds, and the range measured around them.

use super::{MAX_REPS, Taps, new_or_corrected, within};
use crate::clock::{
    Act, HoldPhase, HoldSpec, IntervalPhase, IntervalSpec, Mark, hold_state, interval_state,
};
use crate::companion::sheet::{hold_over, interval_over};
use crate::error::{Error, Result};
use crate::journal::{ClockMark, Held, Range, WindowDone};
use crate::plan::{Hold, MeasuredWhen, Work};
use crate::store::Draft;
use crate::words;

const MAX_HELD_MS: i64 = 30 * 60 * 1000;

impl Taps<'_> {
    pub(super) fn log_window(
        &self,
        name: &str,
        window: Option<u32>,
        reps: Option<u32>,
        spare_ms: Option<i64>,
    ) -> Result<Draft> {
        let Work::Interval(interval) = &self.piece(name)?.work else {
            return Err(Error::invalid("piece", format!("\"{name}\" has no windows")));
        };
        let count = interval.windows();
        let next = || (1..=count).find(|window| self.log.window(name, *window).is_none());
        let window = window.or_else(next).ok_or_else(|| {
            Error::invalid("window", format!("all {count} are logged; name one to correct it"))
        })?;
        let station = interval.station(window).ok_or_else(|| {
            Error::invalid("window", format!("window {window} of {count} there is not"))
        })?;
        let earlier = self.log.window(name, window).map(|done| done.body.reps);
        let reps = reps.or(earlier).unwrap_or(station.reps);
        within("reps", reps, MAX_REPS)?;
        if spare_ms.is_some_and(|spare| !(0..=interval.window_ms).contains(&spare)) {
            let reason =
                format!("between 0 and the window's {}", words::clock_time(interval.window_ms));
            return Err(Error::invalid("to spare", reason));
        }
        let spec = IntervalSpec::of(interval);
        let run = self.log.marks(name, |run, at| interval_over(&spec, run, at));
        let clock = match interval_state(&spec, &run, self.at).phase {
            IntervalPhase::Window { window: running, left_ms } if running == window => {
                Some(left_ms)
            }
            _ => None,
        };
        let subject = self.sheet.reading.subject(name, &station.movement);
        let logged = self.log.window(name, window);
        let before = logged.and_then(|done| done.body.spare_ms);
        let done = WindowDone {
            session: self.log.id(),
            piece: name.to_owned(),
            window,
            load: self.sheet.block.station_load(&subject, station.load),
            subject,
            asked: station.reps,
            reps,
            spare_ms: spare_ms.or(before).or(clock),
            margin_ms: interval.margin_ms,
        };
        Ok(new_or_corrected(logged.map(|done| done.record), done))
    }

    pub(super) fn clock(&self, name: &str, act: Act) -> Result<Draft> {
        let (state, running, paused) = match &self.piece(name)?.work {
            Work::Hold(hold) => {
                let (_, state) = self.hold_run(name, hold);
                let paused = matches!(state, HoldPhase::Paused { .. });
                let idle = matches!(state, HoldPhase::NotBegun | HoldPhase::Done { .. });
                (idle, !idle, paused)
            }
            Work::Interval(interval) => {
                let spec = IntervalSpec::of(interval);
                let run = self.log.marks(name, |run, at| interval_over(&spec, run, at));
                let state = interval_state(&spec, &run, self.at).phase;
                let paused = matches!(state, IntervalPhase::Paused { .. });
                let idle = matches!(state, IntervalPhase::NotBegun | IntervalPhase::Done { .. });
                (idle, !idle, paused)
            }
            _ => return Err(Error::invalid("piece", format!("\"{name}\" has no clock"))),
        };
        let wrong = match act {
            Act::Begin if !state => Some("the clock is running already"),
            Act::Pause if !running || paused => Some("the clock is not running"),
            Act::Resume if !paused => Some("the clock is not paused"),
            Act::Skip | Act::Stop if !running => Some("the clock is not running"),
            _ => None,
        };
        match wrong {
            Some(reason) => Err(Error::invalid("clock", reason)),
            None => Ok(Draft::new(self.mark(name, act))),
        }
    }

    fn mark(&self, name: &str, act: Act) -> ClockMark {
        let mark = Mark { act, at: self.at.clone() };
        ClockMark { session: self.log.id(), piece: name.to_owned(), mark }
    }

    fn hold_run(&self, name: &str, hold: &Hold) -> (Vec<i64>, HoldPhase) {
        let spec = HoldSpec::of(hold);
        let run = self.log.marks(name, |run, at| hold_over(&spec, run, at));
        let state = hold_state(&spec, &run, self.at);
        (state.held_ms, state.phase)
    }

    pub(super) fn log_hold(&self, name: &str, by_hand: Vec<i64>) -> Result<Vec<Draft>> {
        let Work::Hold(hold) = &self.piece(name)?.work else {
            return Err(Error::invalid("piece", format!("\"{name}\" is not a hold")));
        };
        let (counted, phase) = self.hold_run(name, hold);
        let (held, mut drafts) = if by_hand.is_empty() {
            let running = !matches!(phase, HoldPhase::NotBegun | HoldPhase::Done { .. });
            let stop = running.then(|| Draft::new(self.mark(name, Act::Stop)));
            (counted, stop.into_iter().collect())
        } else {
            (by_hand, Vec::new())
        };
        if held.len() > hold.sides as usize {
            return Err(Error::invalid(
                "sides",
                format!("\"{name}\" has {}", words::count(u64::from(hold.sides), "side")),
            ));
        }
        if held.iter().any(|ms| !(0..=MAX_HELD_MS).contains(ms)) {
            return Err(Error::invalid("seconds", "a side is held for 0 s to 30 min"));
        }
        if held.iter().all(|ms| *ms == 0) {
            return Err(Error::invalid(
                "seconds",
                "nothing was held yet: start the clock, or say the seconds of each side",
            ));
        }
        let region = self.sheet.block.stretch(&hold.stretch).map(|it| it.region.clone());
        for (held_ms, side) in held.into_iter().zip(1..).filter(|(held_ms, _)| *held_ms > 0) {
            let held = Held {
                session: self.log.id(),
                piece: name.to_owned(),
                stretch: hold.stretch.clone(),
                region: region.clone().unwrap_or_default(),
                side,
                technique: hold.technique,
                asked_ms: hold.hold_ms,
                held_ms,
            };
            drafts.push(new_or_corrected(self.log.hold(name, side).map(|it| it.record), held));
        }
        Ok(drafts)
    }

    pub(super) fn log_range(
        &self,
        name: &str,
        when: MeasuredWhen,
        side: Option<u32>,
        tenths: i64,
    ) -> Result<Draft> {
        let Work::Hold(hold) = &self.piece(name)?.work else {
            return Err(Error::invalid("piece", format!("\"{name}\" is not a hold")));
        };
        let Some(protocol) = hold.measure else {
            return Err(Error::invalid("measure", format!("the plan asks for none in \"{name}\"")));
        };
        if side.is_some_and(|side| side == 0 || side > hold.sides) {
            return Err(Error::invalid(
                "side",
                format!("\"{name}\" has {}", words::count(u64::from(hold.sides), "side")),
            ));
        }
        let sane = protocol.sane_tenths();
        if !sane.contains(&tenths) {
            let [low, high] =
                [*sane.start(), *sane.end()].map(|it| words::tenths(it, protocol.unit()));
            return Err(Error::invalid("reading", format!("between {low} and {high}")));
        }
        let mut before = self.log.ranges.iter().rev();
        let before =
            before.find(|it| it.body.piece == name && it.body.when == when && it.body.side == side);
        let range =
            Range { session: self.log.id(), piece: name.to_owned(), protocol, when, side, tenths };
        Ok(new_or_corrected(before.map(|it| it.record), range))
    }
}
