//! The pieces of a day that a clock times, as one athlete sees them.

use super::doubt::doubt_of_hold;
use super::pace::fewer_reps;
use super::screen::{HoldView, IntervalView, RangeView, ReadingView, SideView, WindowView};
use super::session_log::SessionLog;
use super::sheet::Sheet;
use crate::clock::{
    CueKind, HoldPhase, HoldSpec, IntervalPhase, IntervalSpec, IntervalState, Mark, hold_state,
    interval_state,
};
use crate::instant::Instant;
use crate::plan::{Hold, Interval, MeasuredWhen};
use crate::review::judge_range;
use crate::words;

impl Sheet<'_> {
    pub(super) fn interval(&self, name: &str, interval: &Interval) -> IntervalView {
        let spec = IntervalSpec::of(interval);
        let start = self.log().map_or(1, |log| log.start_station(name));
        let count = interval.stations.len() as u32;
        let windows = (1..=interval.windows())
            .filter_map(|window| self.window(name, interval, start, window));
        let windows: Vec<WindowView> = windows.collect();
        let mut movements: Vec<&str> = Vec::new();
        for station in &interval.stations {
            if !movements.contains(&station.movement.as_str()) {
                movements.push(&station.movement);
            }
        }
        let subjects: Vec<String> =
            movements.iter().map(|movement| self.reading.subject(name, movement)).collect();
        let subjects: Vec<&str> = subjects.iter().map(String::as_str).collect();
        let clock = self.log().and_then(|log| interval_clock(log, name, &spec, self.now));
        let clock = clock.map(|clock| with_movements(clock, &windows));
        let open: Vec<u32> =
            windows.iter().filter(|window| window.reps.is_none()).map(|it| it.window).collect();
        IntervalView {
            name: name.to_owned(),
            window_ms: interval.window_ms,
            window_text: words::clock_time(interval.window_ms),
            rounds: interval.rounds,
            margin_ms: interval.margin_ms,
            margin_text: words::clock_time(interval.margin_ms),
            next_window: open.first().copied(),
            windows,
            options: self.options(name, &movements),
            flags: self.flag_views(&subjects),
            stations: count,
            start_station: start,
            total_ms: interval.total_ms(),
            total_text: words::clock_time(interval.total_ms()),
            ask: self.ask(clock.as_ref(), |clock| words::interval_ask(clock, &open)),
            clock,
        }
    }

    fn window(
        &self,
        name: &str,
        interval: &Interval,
        start: u32,
        window: u32,
    ) -> Option<WindowView> {
        let station = interval.station_from(start, window)?;
        let done = self.log().and_then(|log| log.window(name, window)).map(|done| &done.body);
        // What was done stays what it was, whatever option or station is chosen afterwards.
        let subject = done
            .map_or_else(|| self.reading.subject(name, &station.movement), |it| it.subject.clone());
        let key = subject.split('/').next().unwrap_or_default();
        let load =
            done.map_or_else(|| self.block.station_load(&subject, station.load), |done| done.load);
        let asked = done.map_or(station.reps, |done| done.asked);
        let spare_ms = done.and_then(|done| done.spare_ms);
        // A window to come is judged by the latest one at the same station.
        let same = |log: &SessionLog| {
            let at_it = log.windows.iter().map(|it| &it.body);
            let at_it = at_it.filter(|it| it.piece == name && it.subject == subject);
            at_it
                .filter(|it| it.reps > 0 && it.spare_ms.is_some())
                .max_by_key(|it| it.window)
                .cloned()
        };
        let latest = self.log().filter(|_| done.is_none()).and_then(same);
        let reps = done.map_or(asked, |done| done.reps);
        let paced = done.cloned().or(latest);
        Some(WindowView {
            window,
            movement: self.block.name_of(&subject),
            key: key.to_owned(),
            asked,
            load_text: self.load_text(load),
            reps: done.map(|done| done.reps),
            spare_ms,
            spare_text: spare_ms.map_or(String::new(), words::clock_time),
            tight: spare_ms.is_some_and(|spare| spare < interval.margin_ms),
            station: interval.station_index(start, window),
            fewer: paced.and_then(|paced| fewer_reps(interval, &paced, reps)),
        })
    }

    /// What to ask about a clock; nothing once the session is finished.
    fn ask<T>(&self, clock: Option<&T>, asked: impl Fn(&T) -> String) -> String {
        let running = self.log().is_some_and(|log| log.finish.is_none());
        clock.filter(|_| running).map_or(String::new(), asked)
    }

    pub(super) fn hold(&self, name: &str, hold: &Hold) -> HoldView {
        let spec = HoldSpec::of(hold);
        let stretch = self.block.stretch(&hold.stretch);
        let run = self.log().map(|log| log.marks(name, |run, at| hold_over(&spec, run, at)));
        let sides = (1..=hold.sides).map(|side| {
            let held = self.log().and_then(|log| log.hold(name, side)).map(|held| &held.body);
            let held_ms = held.map(|held| held.held_ms);
            SideView {
                side,
                held_ms,
                held_text: held_ms.map_or(String::new(), words::clock_time),
                short: held.and_then(|held| held.short),
                short_text: held
                    .map_or(String::new(), |held| words::short(held.short, held.said.as_deref())),
            }
        });
        let sides: Vec<SideView> = sides.collect();
        let clock = run.filter(|run| !run.is_empty()).map(|run| hold_state(&spec, &run, self.now));
        let logged: Vec<i64> = sides.iter().filter_map(|side| side.held_ms).collect();
        HoldView {
            name: name.to_owned(),
            stretch: stretch.map_or(hold.stretch.clone(), |stretch| stretch.name.clone()),
            region: stretch.map_or(String::new(), |stretch| stretch.region.clone()),
            hold_ms: hold.hold_ms,
            hold_text: words::clock_time(hold.hold_ms),
            technique: hold.technique,
            sides,
            range: self.range(name, hold),
            flags: self.flag_views(&[&hold.stretch]),
            ready_ms: hold.ready_ms,
            switch_ms: hold.switch_ms,
            ask: self.ask(clock.as_ref(), |clock| words::hold_ask(clock, &logged)),
            doubt: self.log().map_or(String::new(), |log| doubt_of_hold(log, name)),
            clock,
        }
    }

    fn range(&self, name: &str, hold: &Hold) -> Option<RangeView> {
        let protocol = hold.measure?;
        let logged = self.log().map_or(&[][..], |log| &log.ranges);
        let readings: Vec<ReadingView> = logged
            .iter()
            .filter(|it| it.body.piece == name && it.body.protocol == protocol)
            .map(|it| ReadingView {
                when: it.body.when,
                side: it.body.side,
                tenths: it.body.tenths,
                text: words::tenths(it.body.tenths, protocol.unit()),
            })
            .collect();
        let of = |when, side| {
            readings.iter().find(|it| it.when == when && it.side == side).map(|it| it.tenths)
        };
        let mut sides: Vec<Option<u32>> = readings.iter().map(|reading| reading.side).collect();
        sides.sort_unstable();
        sides.dedup();
        let judged = sides.into_iter().filter_map(|side| {
            let (before, after) = (of(MeasuredWhen::Before, side)?, of(MeasuredWhen::After, side)?);
            let side = side.map_or(String::new(), |side| format!("side {side}: "));
            Some(format!("{side}{}", judge_range(protocol, before, after)))
        });
        Some(RangeView {
            protocol,
            name: words::protocol(protocol).to_owned(),
            sides: hold.sides,
            judged: judged.collect(),
            readings,
        })
    }
}

/// The clock of an interval piece, once it was begun.
fn interval_clock(
    log: &SessionLog,
    name: &str,
    spec: &IntervalSpec,
    now: &Instant,
) -> Option<IntervalState> {
    let run = log.marks(name, |run, at| interval_over(spec, run, at));
    (!run.is_empty()).then(|| interval_state(spec, &run, now))
}

/// The cues with what is to be done in the window that starts.
fn with_movements(mut clock: IntervalState, windows: &[WindowView]) -> IntervalState {
    let movement = |kind: CueKind, window: u32| match kind {
        CueKind::Begin | CueKind::NextWindow => {
            let found = windows.iter().find(|it| it.window == window);
            found.map(|it| words::window_cue(kind, &it.movement))
        }
        _ => None,
    };
    for cue in &mut clock.cues {
        cue.words = movement(cue.kind, cue.turn).unwrap_or_else(|| cue.words.clone());
    }
    for cue in &mut clock.passed {
        cue.words = movement(cue.kind, cue.turn).unwrap_or_else(|| cue.words.clone());
    }
    clock
}

/// True when a hold's clock with these marks is over at a moment.
pub(crate) fn hold_over(spec: &HoldSpec, run: &[Mark], at: &Instant) -> bool {
    matches!(hold_state(spec, run, at).phase, HoldPhase::Done { .. })
}

/// True when an interval's clock with these marks is over at a moment.
pub(crate) fn interval_over(spec: &IntervalSpec, run: &[Mark], at: &Instant) -> bool {
    matches!(interval_state(spec, run, at).phase, IntervalPhase::Done { .. })
}
