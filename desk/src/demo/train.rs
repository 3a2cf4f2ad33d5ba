//! One member trains one evening: reads the screen as a phone shows it, and taps.

use holdfast_core::clock::{Act, INTERVAL_READY_MS};
use holdfast_core::plan::MeasuredWhen;
use holdfast_core::session::{
    HoldView, IntervalView, PieceKindView, PieceView, SessionScreen, SideReading, StrengthView, Tap,
};
use holdfast_core::{Holdfast, Instant, Mass};
use rand::{Rng, RngExt};

use super::people::{GAINS_FOR, Member};
use crate::fault::Outcome;

/// How long a set takes, besides the rest after it.
const SET_MS: i64 = 40_000;

/// A member with a phone in hand.
struct Phone<'a, R> {
    holdfast: &'a Holdfast,
    member: &'a Member,
    at: Instant,
    week: u32,
    /// How this evening's body compares with the usual one, in thousandths.
    form: i64,
    chance: &'a mut R,
}

/// Trains one evening. Gives the moment it ended.
pub(crate) fn train(
    holdfast: &Holdfast,
    member: &Member,
    at: Instant,
    week: u32,
    chance: &mut impl Rng,
) -> Outcome<Instant> {
    let form = 1000 + chance.random_range(-12..=12);
    let mut phone = Phone { holdfast, member, at, week, form, chance };
    let screen = phone.tap(Tap::Begin { day: None })?;
    phone.pass(8 * 60_000);
    for piece in &screen.pieces {
        match &piece.kind {
            PieceKindView::Strength { view } => phone.strength(&piece.name, view)?,
            PieceKindView::Interval { view } => phone.interval(piece, view)?,
            PieceKindView::Hold { view } => phone.hold(&piece.name, view)?,
            PieceKindView::Note { .. } => {}
        }
        phone.pass(3 * 60_000);
    }
    let rpe = member.rpe + phone.chance.random_range(0..=1);
    phone.tap(Tap::Finish { rpe: Some(rpe), minutes: None })?;
    Ok(phone.at)
}

impl<R: Rng> Phone<'_, R> {
    fn pass(&mut self, ms: i64) {
        self.at.wall_ms += ms;
        self.at.boot_ms += ms;
    }

    fn tap(&mut self, tap: Tap) -> Outcome<SessionScreen> {
        Ok(self.holdfast.tap(tap, None, self.at.clone())?)
    }

    fn strength(&mut self, name: &str, view: &StrengthView) -> Outcome {
        let movement = view.exercise.movement.clone();
        let mut view = view.clone();
        if let Some((_, option)) = self.member.options.iter().find(|(of, _)| *of == movement) {
            let option = Some((*option).to_owned());
            let screen =
                self.tap(Tap::TakeOption { piece: name.to_owned(), movement: None, option })?;
            let found = screen.pieces.into_iter().find_map(|piece| match piece.kind {
                PieceKindView::Strength { view } if piece.name == name => Some(view),
                _ => None,
            });
            view = found.unwrap_or(view);
        }
        let largest = of(&self.member.largest, &movement).copied().unwrap_or(Mass::kg(60));
        let first = of(&self.member.first, &movement).cloned().unwrap_or_default();
        for set in &view.sets {
            self.pass(SET_MS);
            let proposed = set.load.as_ref().map(|load| load.mass);
            let chosen = first.get(set.set as usize - 1).copied();
            let load = proposed.or(chosen).unwrap_or(Mass::kg(20));
            let can = self.reps_at(load, largest);
            let reps = if set.open { can } else { can.min(set.asked) };
            let left = can - reps;
            let planned = proposed.is_some() && reps == set.asked && !set.open;
            self.tap(Tap::LogSet {
                piece: name.to_owned(),
                set: Some(set.set),
                // One tap with nothing typed when it went as planned.
                load: if proposed.is_some() { None } else { Some(load) },
                reps: if planned { None } else { Some(reps) },
                reserve: (!set.open && left <= 4).then_some(left),
            })?;
            if let Some((week, piece, place, severity)) = self.member.hurts
                && (week, piece, 2) == (self.week, name, set.set)
            {
                let (piece, movement, signs) = (piece.to_owned(), None, Vec::new());
                self.tap(Tap::Flag { piece, movement, place, severity, signs })?;
                // The rest of the piece is left out.
                return Ok(());
            }
            self.pass(view.rest.0);
        }
        Ok(())
    }

    /// Reps a simulated body has at a load: the Epley line backwards, in whole reps.
    fn reps_at(&self, load: Mass, largest: Mass) -> u32 {
        let largest = i128::from(largest.ten_ng) * i128::from(self.form) / 1000;
        let reps = 30 * (largest - i128::from(load.ten_ng)) / i128::from(load.ten_ng.max(1));
        u32::try_from(reps).unwrap_or(0).min(20)
    }

    fn interval(&mut self, piece: &PieceView, view: &IntervalView) -> Outcome {
        for (movement, option) in self.member.options {
            if piece.options.iter().any(|known| known.movement == *movement && known.key == *option)
            {
                let (name, movement) = (piece.name.clone(), Some((*movement).to_owned()));
                self.tap(Tap::TakeOption {
                    piece: name,
                    movement,
                    option: Some((*option).to_owned()),
                })?;
            }
        }
        self.clock(&piece.name, Act::Begin)?;
        self.pass(INTERVAL_READY_MS);
        for window in &view.windows {
            let pace = self.member.pace_ms + self.chance.random_range(-200..=200);
            // Nobody works into the last three seconds.
            let most = (view.window.0 - 3_000) / pace;
            let reps = i64::from(window.asked).min(most);
            self.pass(reps * pace);
            let as_asked = reps == i64::from(window.asked);
            self.tap(Tap::LogWindow {
                piece: piece.name.clone(),
                window: None,
                reps: if as_asked { None } else { u32::try_from(reps).ok() },
                // The running clock knows what was to spare.
                spare: None,
            })?;
            self.pass(view.window.0 - reps * pace);
        }
        Ok(())
    }

    fn hold(&mut self, name: &str, view: &HoldView) -> Outcome {
        self.measure(name, view, MeasuredWhen::Before)?;
        self.clock(name, Act::Begin)?;
        let short = view.hold.0 - self.member.second_side_ms;
        let sides = view.sides.len() as i64;
        let whole = view.ready.0 + sides * view.hold.0 + (sides - 1) * view.switch.0;
        self.pass(whole - short.max(0));
        self.tap(Tap::LogHold { piece: name.to_owned(), held: Vec::new(), said: None })?;
        self.pass(20_000);
        self.measure(name, view, MeasuredWhen::After)
    }

    fn measure(&mut self, name: &str, view: &HoldView, when: MeasuredWhen) -> Outcome {
        let Some(range) = &view.range else { return Ok(()) };
        let (first, gained) = self.member.range;
        let warm = if when == MeasuredWhen::After { 8 } else { 0 };
        // Nobody gains for ever.
        let week = (i64::from(self.week) - 1).min(GAINS_FOR);
        let mut readings = Vec::new();
        for side in 1..=range.sides {
            let tenths = first + week * gained + warm + self.chance.random_range(-4..=4);
            let side = (range.sides == 2).then_some(side);
            readings.push(SideReading { side, tenths });
        }
        self.tap(Tap::LogRange { piece: name.to_owned(), when, readings })?;
        Ok(())
    }

    fn clock(&mut self, piece: &str, act: Act) -> Outcome<SessionScreen> {
        self.tap(Tap::Clock { piece: piece.to_owned(), act, station: None })
    }
}

fn of<'a, T>(by_movement: &'a [(&'static str, T); 2], movement: &str) -> Option<&'a T> {
    by_movement.iter().find(|(of, _)| *of == movement).map(|(_, movement)| movement)
}
