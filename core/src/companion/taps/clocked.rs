//! Taps on pieces that a clock times: windows, holds, and the range measured around them.

use super::{MAX_REPS, Taps, new_or_corrected, within};
use crate::clock::{
    Act, During, EXTEND_MS, HoldPhase, HoldSpec, HoldState, IntervalPhase, IntervalSpec,
    MAX_SIDE_MS, Mark, WhyShort, hold_state, interval_state,
};
use crate::companion::timed::{hold_over, interval_over};
use crate::error::{Error, Result};
use crate::journal::{ClockMark, Held, Range, WindowDone};
use crate::plan::{Hold, MeasuredWhen, Work};
use crate::store::Draft;
use crate::words;

const MAX_SAID_CHARS: usize = 200;

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
        let start = self.log.start_station(name);
        let station = interval.station_from(start, window).ok_or_else(|| {
            Error::invalid("window", format!("window {window} of {count} there is not"))
        })?;
        let logged = self.log.window(name, window);
        // A correction changes what it names and nothing else.
        let earlier = logged.map(|done| &done.body);
        let asked = earlier.map_or(station.reps, |done| done.asked);
        let reps = reps.or(earlier.map(|done| done.reps)).unwrap_or(asked);
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
        let subject = earlier.map_or_else(
            || self.sheet.reading.subject(name, &station.movement),
            |done| done.subject.clone(),
        );
        let load = earlier.map_or_else(
            || self.sheet.block.station_load(&subject, station.load),
            |done| done.load,
        );
        let before = earlier.and_then(|done| done.spare_ms);
        let done = WindowDone {
            session: self.log.id(),
            piece: name.to_owned(),
            window,
            load,
            subject,
            asked,
            reps,
            spare_ms: spare_ms.or(before).or(clock),
            margin_ms: interval.margin_ms,
            at: earlier.map_or_else(|| Some(self.at.clone()), |done| done.at.clone()),
        };
        Ok(new_or_corrected(logged.map(|done| done.record), done))
    }

    pub(super) fn clock(&self, name: &str, act: Act, station: Option<u32>) -> Result<Draft> {
        let (begun, paused, extends) = match &self.piece(name)?.work {
            Work::Hold(hold) => {
                let state = self.hold_run(name, hold, None);
                let paused = matches!(state.phase, HoldPhase::Paused { .. });
                let begun = !matches!(state.phase, HoldPhase::NotBegun | HoldPhase::Done { .. });
                (begun, paused, extends(&state))
            }
            Work::Interval(interval) => {
                let spec = IntervalSpec::of(interval);
                let run = self.log.marks(name, |run, at| interval_over(&spec, run, at));
                let state = interval_state(&spec, &run, self.at).phase;
                let paused = matches!(state, IntervalPhase::Paused { .. });
                let begun = !matches!(state, IntervalPhase::NotBegun | IntervalPhase::Done { .. });
                (begun, paused, Err("windows are of one length: they cannot be extended".into()))
            }
            _ => return Err(Error::invalid("piece", format!("\"{name}\" has no clock"))),
        };
        let wrong = match act {
            Act::Begin if begun => Some("the clock is running already".into()),
            Act::Pause if !begun || paused => Some("the clock is not running".into()),
            Act::Resume if !paused => Some("the clock is not paused".into()),
            Act::Extend => extends.err(),
            Act::Skip | Act::Stop if !begun => Some("the clock is not running".into()),
            _ => None,
        };
        if let Some(reason) = wrong {
            return Err(Error::invalid("clock", reason));
        }
        self.check_station(name, act, station)?;
        Ok(Draft::new(ClockMark { station, ..self.mark(name, act) }))
    }

    fn check_station(&self, name: &str, act: Act, station: Option<u32>) -> Result<()> {
        let Some(station) = station else { return Ok(()) };
        let Work::Interval(interval) = &self.piece(name)?.work else {
            return Err(Error::invalid("station", format!("\"{name}\" has no stations")));
        };
        if act != Act::Begin {
            return Err(Error::invalid("station", "it is said when the clock is begun"));
        }
        let count = interval.stations.len();
        if station == 0 || station as usize > count {
            let stations = words::count(count as u64, "station");
            let reason = format!("\"{name}\" has {stations}: there is no station {station}");
            return Err(Error::invalid("station", reason));
        }
        // Which window is whose is counted from the start: what is logged would be another movement's.
        let start = self.log.start_station(name);
        if station != start && self.log.windows.iter().any(|it| it.body.piece == name) {
            let reason = format!(
                "windows are logged from station {start} on: take them back to start elsewhere"
            );
            return Err(Error::invalid("station", reason));
        }
        Ok(())
    }

    fn mark(&self, name: &str, act: Act) -> ClockMark {
        let mark = Mark { act, at: self.at.clone() };
        ClockMark { session: self.log.id(), piece: name.to_owned(), mark, station: None }
    }

    /// The state of a hold's clock now, after one act more when one is given.
    fn hold_run(&self, name: &str, hold: &Hold, act: Option<Act>) -> HoldState {
        let spec = HoldSpec::of(hold);
        let mut run = self.log.marks(name, |run, at| hold_over(&spec, run, at));
        run.extend(act.map(|act| Mark { act, at: self.at.clone() }));
        hold_state(&spec, &run, self.at)
    }

    pub(super) fn log_hold(
        &self,
        name: &str,
        by_hand: Vec<i64>,
        said: Option<String>,
    ) -> Result<Vec<Draft>> {
        let Work::Hold(hold) = &self.piece(name)?.work else {
            return Err(Error::invalid("piece", format!("\"{name}\" is not a hold")));
        };
        let said = said.map(|said| sentence(&said)).transpose()?;
        // Whatever is logged, the clock has no more to count.
        let stop = self.is_counting(name, hold).then_some(Act::Stop);
        let mut drafts: Vec<Draft> =
            stop.map(|act| Draft::new(self.mark(name, act))).into_iter().collect();
        let clock = by_hand.is_empty().then(|| self.hold_run(name, hold, stop));
        let (held, short) =
            clock.map_or((by_hand, Vec::new()), |clock| (clock.held_ms, clock.short));
        if held.len() > hold.sides as usize {
            return Err(Error::invalid(
                "sides",
                format!("\"{name}\" has {}", words::count(u64::from(hold.sides), "side")),
            ));
        }
        if held.iter().any(|ms| !(0..=MAX_SIDE_MS).contains(ms)) {
            return Err(Error::invalid("seconds", "a side is held for 0 s to 30 min"));
        }
        if held.iter().all(|ms| *ms == 0) {
            return Err(Error::invalid(
                "seconds",
                "nothing was held yet: start the clock, or say the seconds of each side",
            ));
        }
        let region = self.sheet.block.stretch(&hold.stretch).map(|it| it.region.clone());
        let any_short = held.iter().any(|held_ms| *held_ms < hold.hold_ms);
        for (held_ms, side) in held.into_iter().zip(1..) {
            // What was said goes with the sides that are short; where none is, with all.
            let is_short = held_ms < hold.hold_ms;
            let said = said.clone().filter(|_| is_short || !any_short);
            let by_clock = short.get(side as usize - 1).copied().flatten();
            let left_out = (held_ms == 0).then_some(WhyShort::Skipped);
            let by_hand = if said.is_some() { Some(WhyShort::Said) } else { left_out };
            let logged = self.log.hold(name, side);
            let held = Held {
                session: self.log.id(),
                piece: name.to_owned(),
                stretch: hold.stretch.clone(),
                region: region.clone().unwrap_or_default(),
                side,
                technique: hold.technique,
                asked_ms: hold.hold_ms,
                held_ms,
                short: by_clock.or(by_hand).filter(|_| is_short),
                said,
                at: logged.map_or_else(|| Some(self.at.clone()), |it| it.body.at.clone()),
            };
            drafts.push(new_or_corrected(logged.map(|it| it.record), held));
        }
        Ok(drafts)
    }

    fn is_counting(&self, name: &str, hold: &Hold) -> bool {
        !matches!(
            self.hold_run(name, hold, None).phase,
            HoldPhase::NotBegun | HoldPhase::Done { .. }
        )
    }

    /// Stops every clock of the session; seconds held that nobody logged are logged.
    pub(super) fn end_clocks(&self) -> Result<Vec<Draft>> {
        let mut drafts = Vec::new();
        for piece in &self.sheet.day.pieces {
            let name = piece.name.as_str();
            let counts = match &piece.work {
                Work::Hold(hold) => {
                    let held = self.hold_run(name, hold, None).held_ms.iter().any(|ms| *ms > 0);
                    if held && self.log.hold(name, 1).is_none() && self.log.hold(name, 2).is_none()
                    {
                        drafts.extend(self.log_hold(name, Vec::new(), None)?);
                        continue;
                    }
                    self.is_counting(name, hold)
                }
                Work::Interval(interval) => {
                    let spec = IntervalSpec::of(interval);
                    let run = self.log.marks(name, |run, at| interval_over(&spec, run, at));
                    let phase = interval_state(&spec, &run, self.at).phase;
                    !matches!(phase, IntervalPhase::NotBegun | IntervalPhase::Done { .. })
                }
                _ => false,
            };
            drafts.extend(counts.then(|| Draft::new(self.mark(name, Act::Stop))));
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

/// Whether the side being held can be made longer, otherwise why not.
fn extends(state: &HoldState) -> std::result::Result<(), String> {
    let side = match state.phase {
        HoldPhase::Holding { side, .. } | HoldPhase::Paused { during: During::Work, side, .. } => {
            side
        }
        _ => return Err("no side is being held".into()),
    };
    let length = state.length_ms.get(side as usize - 1).copied().unwrap_or(0);
    if length.saturating_add(EXTEND_MS) > MAX_SIDE_MS {
        let most = words::clock_time(MAX_SIDE_MS);
        return Err(format!("a side is held for {most} at most"));
    }
    Ok(())
}

/// What the athlete said, as one line that fits on a screen.
fn sentence(said: &str) -> Result<String> {
    let said = said.trim();
    let fits = (1..=MAX_SAID_CHARS).contains(&said.chars().count());
    if !fits || said.chars().any(char::is_control) {
        let reason = format!("it has 1 to {MAX_SAID_CHARS} characters and no line breaks");
        return Err(Error::invalid("what was said", reason));
    }
    Ok(said.to_owned())
}
