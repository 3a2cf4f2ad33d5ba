//! The pieces of a day that a clock times, as one athlete sees them.

use super::clock_view::{hold_clock, interval_clock, spoken};
use super::doubt::{doubt_of_hold, doubt_of_window};
use super::log::SessionLog;
use super::pace::fewer_reps;
use super::screen::{HoldView, IntervalView, RangeView, ReadingView, SideView, WindowView};
use super::sheet::Sheet;
use super::went_by::Passed;
use crate::clock::{
    HoldPhase, HoldSpec, HoldState, IntervalPhase, IntervalSpec, IntervalState, Mark, hold_state,
    interval_state,
};
use crate::instant::{Instant, Millis};
use crate::plan::{Exercise, Hold, Interval, MeasuredWhen, Piece, PieceKind};
use crate::say::screen as say;
use crate::words;

impl Sheet<'_> {
    pub(super) fn interval(&self, name: &str, interval: &Interval) -> IntervalView {
        let windows = self.windows(name, interval);
        let open: Vec<u32> = windows
            .iter()
            .filter(|window| window.reps.is_none())
            .map(|window| window.window)
            .collect();
        let state = self.interval_state(name, interval);
        let clock = state.and_then(|state| {
            let mut clock = interval_clock(interval, &state, &windows)?;
            clock.question = self.runs().then(|| words::interval_question(&state, &open)).flatten();
            Some(clock)
        });
        let station = |station: u32| {
            let window = windows.iter().find(|window| window.station == station)?;
            Some(window.asked_text.clone())
        };
        let count = interval.stations.len() as u32;
        IntervalView {
            heading: words::interval_heading(
                interval.windows(),
                interval.window_ms,
                interval.rounds,
                interval.margin_ms,
            ),
            window: Millis(interval.window_ms),
            rounds: interval.rounds,
            margin: Millis(interval.margin_ms),
            next_window: open.first().copied(),
            clock,
            stations: (1..=count).filter_map(station).collect(),
            start_station: self.log().map_or(1, |log| log.start_station(name)),
            total: Millis(interval.total_ms()),
            windows,
        }
    }

    fn windows(&self, name: &str, interval: &Interval) -> Vec<WindowView> {
        let start = self.log().map_or(1, |log| log.start_station(name));
        (1..=interval.windows())
            .filter_map(|window| self.window(name, interval, start, window))
            .collect()
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
        let exercise: Exercise = done.map_or_else(
            || self.snapshot.exercise(name, &station.movement),
            |done| done.exercise.clone(),
        );
        let load =
            done.map_or_else(|| self.block.station_load(&exercise, station.load), |done| done.load);
        let asked = done.map_or(station.reps, |done| done.asked);
        let spare_ms = done.and_then(|done| done.spare_ms);
        // A window to come is judged by the latest one at the same station.
        let same = |log: &SessionLog| {
            let at_it = log.windows.iter().map(|window| &window.body);
            let at_it = at_it.filter(|other| other.piece == name && other.exercise == exercise);
            at_it
                .filter(|other| other.reps > 0 && other.spare_ms.is_some())
                .max_by_key(|other| other.window)
                .cloned()
        };
        let latest = self.log().filter(|_| done.is_none()).and_then(same);
        let reps = done.map_or(asked, |done| done.reps);
        let paced = done.cloned().or(latest);
        let rushed = spare_ms.is_some_and(|spare| spare < interval.margin_ms);
        let movement = self.block.name_of(&exercise);
        let load_text = self.load_text(load);
        Some(WindowView {
            window,
            asked,
            asked_text: words::window_asked(asked, &movement, load_text.as_deref()),
            movement,
            exercise,
            reps: done.map(|done| done.reps),
            spare: spare_ms.map(Millis),
            rushed,
            done_text: done.map(|done| words::window_done(done.reps, spare_ms, rushed)),
            station: interval.station_index(start, window),
            fewer: paced.and_then(|paced| fewer_reps(interval, &paced, reps)),
            doubt: done.and_then(|done| doubt_of_window(done, interval.window_ms)),
        })
    }

    /// True while the session runs: nothing is asked about the clocks of one that is over.
    fn runs(&self) -> bool {
        self.log().is_some_and(|log| log.finish.is_none())
    }

    /// The state of an interval's clock; none before it is begun.
    fn interval_state(&self, name: &str, interval: &Interval) -> Option<IntervalState> {
        let spec = IntervalSpec::of(interval);
        let run = self.log()?.marks(name, |run, at| interval_over(&spec, run, at));
        (!run.is_empty()).then(|| interval_state(&spec, &run, self.now))
    }

    /// The state of a hold's clock; none before it is begun.
    fn hold_state(&self, name: &str, hold: &Hold) -> Option<HoldState> {
        let spec = HoldSpec::of(hold);
        let run = self.log()?.marks(name, |run, at| hold_over(&spec, run, at));
        (!run.is_empty()).then(|| hold_state(&spec, &run, self.now))
    }

    pub(super) fn hold(&self, name: &str, hold: &Hold) -> HoldView {
        let stretch = self.block.stretch(&hold.stretch);
        let sides = (1..=hold.sides).map(|side| {
            let held = self.log().and_then(|log| log.hold(name, side)).map(|held| &held.body);
            let text =
                held.map(|held| words::held_side(held.held_ms, held.short, held.said.as_deref()));
            SideView {
                side,
                name: words::side(side, hold.sides),
                held: held.map(|held| Millis(held.held_ms)),
                held_text: text,
                short: held.and_then(|held| held.short),
            }
        });
        let sides: Vec<SideView> = sides.collect();
        let logged: Vec<i64> = sides.iter().filter_map(|side| Some(side.held?.0)).collect();
        let clock = self.hold_state(name, hold).and_then(|state| {
            let mut clock = hold_clock(&HoldSpec::of(hold), &state)?;
            clock.question = self.runs().then(|| words::hold_question(&state, &logged)).flatten();
            Some(clock)
        });
        let name_of_it = stretch.map_or(hold.stretch.clone(), |stretch| stretch.name.clone());
        HoldView {
            heading: words::hold_heading(&name_of_it, hold.hold_ms, hold.sides, hold.technique),
            stretch: name_of_it,
            region: stretch.map_or(String::new(), |stretch| stretch.region.clone()),
            hold: Millis(hold.hold_ms),
            technique: hold.technique,
            sides,
            range: self.range(name, hold),
            clock,
            ready: Millis(hold.ready_ms),
            switch: Millis(hold.switch_ms),
            doubt: self.log().and_then(|log| doubt_of_hold(log, name)),
        }
    }

    fn range(&self, name: &str, hold: &Hold) -> Option<RangeView> {
        let protocol = hold.measure?;
        let logged = self.log().map_or(&[][..], |log| &log.ranges);
        let mut readings: Vec<ReadingView> = logged
            .iter()
            .map(|range| &range.body)
            .filter(|range| range.piece == name && range.protocol == protocol)
            .map(|range| ReadingView {
                when: range.when,
                side: range.side,
                tenths: range.tenths,
                text: words::reading(range.when, range.side, range.tenths, protocol),
            })
            .collect();
        readings.sort_by_key(|reading| (reading.when == MeasuredWhen::After, reading.side));
        let of = |when, side| {
            readings
                .iter()
                .find(|reading| reading.when == when && reading.side == side)
                .map(|reading| reading.tenths)
        };
        let mut sides: Vec<Option<u32>> = readings.iter().map(|reading| reading.side).collect();
        sides.sort_unstable();
        sides.dedup();
        let judged = sides.into_iter().filter_map(|side| {
            let (before, after) = (of(MeasuredWhen::Before, side)?, of(MeasuredWhen::After, side)?);
            let judged = words::judged(protocol, before, after);
            Some(match words::side_of_two(side) {
                Some(side) => say::titled(side, judged),
                None => judged,
            })
        });
        Some(RangeView {
            protocol,
            name: words::protocol(protocol).to_owned(),
            unit: protocol.unit().text().to_owned(),
            sides: hold.sides,
            judged: judged.collect(),
            readings,
        })
    }

    /// The cues that have passed on each clock that runs, since something was done to it.
    pub(super) fn passed(&self) -> Vec<Passed> {
        let of_piece = |piece: &Piece| {
            let name = piece.name.as_str();
            let cues = match &piece.kind {
                PieceKind::Interval(interval) => {
                    let passed = self.interval_state(name, interval)?.passed;
                    let windows = self.windows(name, interval);
                    let spoken = |kind, turn| spoken(kind, turn, &windows);
                    passed
                        .into_iter()
                        .map(|cue| (cue.clone(), spoken(cue.kind, cue.turn)))
                        .collect()
                }
                PieceKind::Hold(hold) => {
                    let passed = self.hold_state(name, hold)?.passed;
                    let words = |kind| words::cue(kind).to_owned();
                    passed.into_iter().map(|cue| (cue.clone(), words(cue.kind))).collect()
                }
                PieceKind::Strength(_) | PieceKind::Note(_) => return None,
            };
            Some(Passed { piece: name.to_owned(), cues })
        };
        self.day.pieces.iter().filter_map(of_piece).collect()
    }
}

/// True when a hold's clock with these marks is over at a moment.
pub(crate) fn hold_over(spec: &HoldSpec, run: &[Mark], at: &Instant) -> bool {
    matches!(hold_state(spec, run, at).phase, HoldPhase::Done { .. })
}

/// True when an interval's clock with these marks is over at a moment.
pub(crate) fn interval_over(spec: &IntervalSpec, run: &[Mark], at: &Instant) -> bool {
    matches!(interval_state(spec, run, at).phase, IntervalPhase::Done { .. })
}
