//! Taps on windows, and on the clocks of windows and holds.

use super::Taps;
use super::sets::MAX_REPS;
use super::within;
use crate::clock::{
    Act, During, EXTEND_MS, HoldPhase, HoldState, IntervalPhase, IntervalSpec, IntervalState,
    MAX_SIDE_MS, Mark, interval_state,
};
use crate::error::{Error, Field, Result};
use crate::journal::{ClockMark, WindowDone};
use crate::plan::{Interval, PieceKind};
use crate::say;
use crate::session::timed::interval_over;
use crate::store::Draft;
use crate::words;

impl Taps<'_> {
    pub(super) fn log_window(
        &self,
        name: &str,
        window: Option<u32>,
        reps: Option<u32>,
        spare_ms: Option<i64>,
    ) -> Result<Draft> {
        let PieceKind::Interval(interval) = &self.piece(name)?.kind else {
            return Err(Error::invalid(Field::Piece, say::tap::no_windows(name)));
        };
        let count = interval.windows();
        let next = || (1..=count).find(|window| self.log.window(name, *window).is_none());
        let window = window
            .or_else(next)
            .ok_or_else(|| Error::invalid(Field::Window, say::tap::all_windows_logged(count)))?;
        let start = self.log.start_station(name);
        let station = interval.station_from(start, window).ok_or_else(|| {
            Error::invalid(Field::Window, say::tap::no_such_window(count, window))
        })?;
        let logged = self.log.window(name, window);
        // A correction changes what it names and nothing else.
        let earlier = logged.map(|done| &done.body);
        let asked = earlier.map_or(station.reps, |done| done.asked);
        let reps = reps.or(earlier.map(|done| done.reps)).unwrap_or(asked);
        within(Field::Reps, reps, MAX_REPS, say::tap::reps_too_many)?;
        if spare_ms.is_some_and(|spare| !(0..=interval.window_ms).contains(&spare)) {
            let reason = say::tap::spare_too_long(words::clock_time(interval.window_ms));
            return Err(Error::invalid(Field::Spare, reason));
        }
        let phase = self.interval_run(name, interval).phase;
        if logged.is_none() && is_to_come(&phase, window) {
            return Err(Error::invalid(Field::Window, say::tap::window_not_begun(window)));
        }
        let clock = match phase {
            IntervalPhase::Window { window: running, left_ms } if running == window => {
                Some(left_ms)
            }
            _ => None,
        };
        let exercise = earlier.map_or_else(
            || self.sheet.snapshot.exercise(name, &station.movement),
            |done| done.exercise.clone(),
        );
        let load = earlier.map_or_else(
            || self.sheet.block.station_load(&exercise, station.load),
            |done| done.load,
        );
        let before = earlier.and_then(|done| done.spare_ms);
        let done = WindowDone {
            session: self.log.id(),
            piece: name.to_owned(),
            window,
            load,
            exercise,
            asked,
            reps,
            spare_ms: spare_ms.or(before).or(clock),
            margin_ms: interval.margin_ms,
            at: earlier.map_or_else(|| Some(self.at.clone()), |done| done.at.clone()),
            on: self.log.on(),
        };
        Ok(Draft::new_or_corrected(logged.map(|done| done.record), done))
    }

    pub(super) fn clock(&self, name: &str, act: Act, station: Option<u32>) -> Result<Draft> {
        if self.log.is_afterwards() && act == Act::Begin {
            return Err(Error::invalid(Field::Clock, say::tap::no_clock_afterwards()));
        }
        let (begun, paused, extends) = match &self.piece(name)?.kind {
            PieceKind::Hold(hold) => {
                let state = self.hold_run(name, hold, None);
                let paused = matches!(state.phase, HoldPhase::Paused { .. });
                let begun = !matches!(state.phase, HoldPhase::NotBegun | HoldPhase::Done { .. });
                (begun, paused, extends(&state))
            }
            PieceKind::Interval(interval) => {
                let state = self.interval_run(name, interval).phase;
                let paused = matches!(state, IntervalPhase::Paused { .. });
                let begun = !matches!(state, IntervalPhase::NotBegun | IntervalPhase::Done { .. });
                (begun, paused, Err(say::tap::windows_of_one_length().into()))
            }
            PieceKind::Strength(_) | PieceKind::Note(_) => {
                return Err(Error::invalid(Field::Piece, say::tap::no_clock(name)));
            }
        };
        let wrong = match act {
            Act::Begin if begun => Some(say::tap::clock_running().into()),
            Act::Pause if !begun || paused => Some(say::tap::clock_not_running().into()),
            Act::Resume if !paused => Some(say::tap::clock_not_paused().into()),
            Act::Extend => extends.err(),
            Act::Skip | Act::Stop if !begun => Some(say::tap::clock_not_running().into()),
            _ => None,
        };
        if let Some(reason) = wrong {
            return Err(Error::invalid(Field::Clock, reason));
        }
        self.check_station(name, act, station)?;
        Ok(Draft::new(ClockMark { station, ..self.mark(name, act) }))
    }

    fn check_station(&self, name: &str, act: Act, station: Option<u32>) -> Result<()> {
        let Some(station) = station else { return Ok(()) };
        let PieceKind::Interval(interval) = &self.piece(name)?.kind else {
            return Err(Error::invalid(Field::Station, say::tap::no_stations(name)));
        };
        if act != Act::Begin {
            return Err(Error::invalid(Field::Station, say::tap::station_at_start()));
        }
        let count = interval.stations.len();
        if station == 0 || station as usize > count {
            let reason = say::tap::no_such_station(count, name, station);
            return Err(Error::invalid(Field::Station, reason));
        }
        // Which window is whose is counted from the start: what is logged would be another movement's.
        let start = self.log.start_station(name);
        if station != start && self.log.windows.iter().any(|window| window.body.piece == name) {
            return Err(Error::invalid(Field::Station, say::tap::station_fixed(start)));
        }
        Ok(())
    }

    pub(super) fn mark(&self, name: &str, act: Act) -> ClockMark {
        let mark = Mark { act, at: self.at.clone() };
        ClockMark { session: self.log.id(), piece: name.to_owned(), mark, station: None }
    }

    /// True where a clock that was begun would be out of reach once its piece is put off.
    pub(super) fn clock_stands_in_the_way(&self, name: &str, kind: &PieceKind) -> bool {
        match kind {
            PieceKind::Hold(hold) => {
                let held = self.hold_run(name, hold, None).held_ms.iter().any(|ms| *ms > 0);
                let logged = (1..=hold.sides).any(|side| self.log.hold(name, side).is_some());
                self.is_counting(name, hold) || (held && !logged)
            }
            PieceKind::Interval(interval) => self.windows_run(name, interval),
            PieceKind::Strength(_) | PieceKind::Note(_) => false,
        }
    }

    /// True while the windows' clock runs or stands still.
    pub(super) fn windows_run(&self, name: &str, interval: &Interval) -> bool {
        let phase = self.interval_run(name, interval).phase;
        !matches!(phase, IntervalPhase::NotBegun | IntervalPhase::Done { .. })
    }

    fn interval_run(&self, name: &str, interval: &Interval) -> IntervalState {
        let spec = IntervalSpec::of(interval);
        let run = self.log.marks(name, |run, at| interval_over(&spec, run, at));
        interval_state(&spec, &run, self.at)
    }
}

/// True for a window that the running clock has not reached.
fn is_to_come(phase: &IntervalPhase, window: u32) -> bool {
    match phase {
        IntervalPhase::Ready { .. } | IntervalPhase::Paused { during: During::Ready, .. } => true,
        IntervalPhase::Window { window: running, .. }
        | IntervalPhase::Paused { window: running, .. } => window > *running,
        IntervalPhase::NotBegun | IntervalPhase::Done { .. } => false,
    }
}

/// Whether the side being held can be made longer, otherwise why not.
fn extends(state: &HoldState) -> std::result::Result<(), String> {
    let side = match state.phase {
        HoldPhase::Holding { side, .. } | HoldPhase::Paused { during: During::Work, side, .. } => {
            side
        }
        _ => return Err(say::tap::no_side_held().into()),
    };
    let length = state.length_ms.get(side as usize - 1).copied().unwrap_or(0);
    if length.saturating_add(EXTEND_MS) > MAX_SIDE_MS {
        return Err(say::tap::side_too_long(words::clock_time(MAX_SIDE_MS)));
    }
    Ok(())
}
