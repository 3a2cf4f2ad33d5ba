//! Taps on holds, and on the range measured around them.

use super::Taps;
use crate::clock::{Act, HoldPhase, HoldSpec, HoldState, MAX_SIDE_MS, Mark, WhyShort, hold_state};
use crate::error::{Error, Field, Result};
use crate::journal::{Held, Range};
use crate::plan::{Hold, MeasuredWhen, PieceKind};
use crate::say;
use crate::session::SideReading;
use crate::session::timed::hold_over;
use crate::store::Draft;
use crate::words;

const MAX_SAID_CHARS: usize = 200;

impl Taps<'_> {
    /// The state of a hold's clock now, after one act more when one is given.
    pub(super) fn hold_run(&self, name: &str, hold: &Hold, act: Option<Act>) -> HoldState {
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
        let PieceKind::Hold(hold) = &self.piece(name)?.kind else {
            return Err(Error::invalid(Field::Piece, say::tap::not_a_hold(name)));
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
            return Err(Error::invalid(Field::Side, say::tap::sides_are(hold.sides, name)));
        }
        if held.iter().any(|ms| !(0..=MAX_SIDE_MS).contains(ms)) {
            let reason = say::tap::held_out_of_range(words::clock_time(MAX_SIDE_MS));
            return Err(Error::invalid(Field::Seconds, reason));
        }
        if held.iter().all(|ms| *ms == 0) {
            return Err(Error::invalid(Field::Seconds, say::tap::nothing_held()));
        }
        let region = self.sheet.block.stretch(&hold.stretch).map(|stretch| stretch.region.clone());
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
                at: logged.map_or_else(|| Some(self.at.clone()), |at| at.body.at.clone()),
                on: self.log.on(),
            };
            drafts.push(Draft::new_or_corrected(logged.map(|logged| logged.record), held));
        }
        Ok(drafts)
    }

    pub(super) fn is_counting(&self, name: &str, hold: &Hold) -> bool {
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
            let counts = match &piece.kind {
                PieceKind::Hold(hold) => {
                    let held = self.hold_run(name, hold, None).held_ms.iter().any(|ms| *ms > 0);
                    if held && self.log.hold(name, 1).is_none() && self.log.hold(name, 2).is_none()
                    {
                        drafts.extend(self.log_hold(name, Vec::new(), None)?);
                        continue;
                    }
                    self.is_counting(name, hold)
                }
                PieceKind::Interval(interval) => self.windows_run(name, interval),
                PieceKind::Strength(_) | PieceKind::Note(_) => false,
            };
            drafts.extend(counts.then(|| Draft::new(self.mark(name, Act::Stop))));
        }
        Ok(drafts)
    }

    /// The readings of a measure, all of them or none.
    pub(super) fn log_range(
        &self,
        name: &str,
        when: MeasuredWhen,
        readings: &[SideReading],
    ) -> Result<Vec<Draft>> {
        let PieceKind::Hold(hold) = &self.piece(name)?.kind else {
            return Err(Error::invalid(Field::Piece, say::tap::not_a_hold(name)));
        };
        if readings.is_empty() {
            return Err(Error::invalid(Field::Range, say::tap::no_readings()));
        }
        readings.iter().map(|reading| self.one_reading(name, hold, when, *reading)).collect()
    }

    fn one_reading(
        &self,
        name: &str,
        hold: &Hold,
        when: MeasuredWhen,
        SideReading { side, tenths }: SideReading,
    ) -> Result<Draft> {
        let Some(protocol) = hold.measure else {
            return Err(Error::invalid(Field::Measure, say::tap::no_measure(name)));
        };
        if side.is_some_and(|side| side == 0 || side > hold.sides) {
            return Err(Error::invalid(Field::Side, say::tap::sides_are(hold.sides, name)));
        }
        let sane = protocol.sane_tenths();
        if !sane.contains(&tenths) {
            let [low, high] =
                [*sane.start(), *sane.end()].map(|tenths| words::tenths(tenths, protocol.unit()));
            return Err(Error::invalid(Field::Range, say::tap::reading_out_of_range(low, high)));
        }
        let same = |range: &Range| range.piece == name && range.when == when && range.side == side;
        let before = self.log.ranges.iter().rev().find(|range| same(&range.body));
        let (session, piece) = (self.log.id(), name.to_owned());
        let on = self.log.on();
        let range = Range { session, piece, protocol, when, side, tenths, on };
        Ok(Draft::new_or_corrected(before.map(|range| range.record), range))
    }
}

/// What the athlete said, as one line that fits on a screen.
fn sentence(said: &str) -> Result<String> {
    let said = said.trim();
    let fits = (1..=MAX_SAID_CHARS).contains(&said.chars().count());
    if !fits || said.chars().any(char::is_control) {
        return Err(Error::invalid(Field::Said, say::tap::said_too_long(MAX_SAID_CHARS)));
    }
    Ok(said.to_owned())
}
