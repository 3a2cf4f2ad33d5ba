//! The pieces of a day as one athlete sees them: loads worked out, logs filled in.

use super::log::SessionLog;
use super::screen::{OptionView, PieceKindView, PieceState, PieceView};
use super::snapshot::Snapshot;
use crate::instant::Instant;
use crate::journal::{Part, Until};
use crate::load::Prepared;
use crate::mass::{Mass, MassUnit};
use crate::plan::{Day, Piece, PieceKind};
use crate::say::screen as say;
use crate::words;

/// What a sheet is made from.
pub(crate) struct Sheet<'a> {
    pub(crate) snapshot: &'a Snapshot,
    pub(crate) block: &'a Prepared,
    pub(crate) day: &'a Day,
    pub(crate) now: &'a Instant,
}

impl Sheet<'_> {
    /// Every piece of the day.
    pub(crate) fn pieces(&self) -> Vec<PieceView> {
        let draw = |piece: &Piece| match piece.kind {
            // Drawn from what it asks for, which is kept.
            PieceKind::Strength(_) => self.piece(piece),
            _ => self.snapshot.drawn(&piece.name, || self.piece(piece)),
        };
        self.day.pieces.iter().map(draw).chain(self.unplanned()).collect()
    }

    fn piece(&self, piece: &Piece) -> PieceView {
        let name = &piece.name;
        let (kind, movements, done, all) = match &piece.kind {
            PieceKind::Strength(strength) => {
                let view = self.strength(name, strength);
                let planned = || view.sets.iter().filter(|set| !set.extra);
                let done = planned().filter(|set| set.done.is_some()).count();
                let (all, movements) = (planned().count(), vec![strength.movement.as_str()]);
                (PieceKindView::Strength { view }, movements, done, all)
            }
            PieceKind::Interval(interval) => {
                let view = self.interval(name, interval);
                let done = view.windows.iter().filter(|window| window.reps.is_some()).count();
                let (all, movements) = (view.windows.len(), interval.movements());
                (PieceKindView::Interval { view }, movements, done, all)
            }
            PieceKind::Hold(hold) => {
                let view = self.hold(name, hold);
                // One side logged is a hold ended early: the other is not asked for again.
                let done = usize::from(view.sides.iter().any(|side| side.held.is_some()));
                (PieceKindView::Hold { view }, vec![hold.stretch.as_str()], done, 1)
            }
            PieceKind::Note(note) => {
                let kind = PieceKindView::Note { text: note.text.clone() };
                (kind, Vec::new(), 0, 0)
            }
        };
        let state = self.state(name, done, all);
        PieceView {
            stands_at: None,
            name: name.clone(),
            progress: progress(state, done, all),
            state,
            options: self.options(name, &movements),
            flags: self.flags(name, &movements),
            notes: self.notes(name),
            kind,
        }
    }

    fn state(&self, piece: &str, done: usize, all: usize) -> PieceState {
        let put_off = self.log().and_then(|log| log.put_off(piece, Part::Work));
        match put_off {
            _ if all == 0 => PieceState::Note,
            _ if done == all => PieceState::Done,
            Some(Until::Later) => PieceState::Later,
            Some(Until::Left) => PieceState::Left,
            None => PieceState::Todo,
        }
    }

    pub(super) fn log(&self) -> Option<&SessionLog> {
        self.snapshot.log.as_ref()
    }

    pub(super) fn unit(&self) -> MassUnit {
        self.snapshot.profile.unit
    }

    /// The options there are; none while somebody has an emergency sign.
    fn options(&self, piece: &str, movements: &[&str]) -> Vec<OptionView> {
        if self.snapshot.flags.open.iter().any(|flag| !flag.body.signs.is_empty()) {
            return Vec::new();
        }
        let found = movements.iter().filter_map(|movement| self.block.movement(movement));
        found
            .flat_map(|movement| {
                let taken = self.log().and_then(|log| log.option(piece, &movement.key));
                // What the day before worked hard, and an option would spare.
                let hard = self.snapshot.hard.iter().find(|hard| hard.pattern == movement.pattern);
                let hurts = |option: &str| {
                    let exercise = movement.exercise(Some(option));
                    self.snapshot
                        .flags
                        .open
                        .iter()
                        .any(|flag| flag.body.exercise.as_ref() == Some(&exercise))
                };
                // One that hurts is no way out; the one that is taken stays, to go back from.
                let offered = movement.options.iter().filter(move |option| {
                    taken == Some(option.key.as_str()) || !hurts(&option.key)
                });
                offered.map(move |option| {
                    let hard = hard.filter(|hard| option.pattern != hard.pattern);
                    OptionView {
                        movement: movement.key.clone(),
                        key: option.key.clone(),
                        name: option.name.clone(),
                        because: option.because,
                        because_text: words::because(option.because).to_owned(),
                        taken: taken == Some(option.key.as_str()),
                        suggested: hard.map(words::spared),
                        from: hard.map_or(Vec::new(), |hard| hard.from.clone()),
                    }
                })
            })
            .collect()
    }

    pub(super) fn load_text(&self, load: Option<Mass>) -> Option<String> {
        load.map(|load| words::load_text(load, self.unit()))
    }
}

fn progress(state: PieceState, done: usize, all: usize) -> Option<String> {
    match state {
        PieceState::Note => None,
        PieceState::Later => Some(say::later().into()),
        PieceState::Left => Some(say::left_for_today().into()),
        // A hold is one thing: it is done or not.
        PieceState::Todo if all == 1 => None,
        PieceState::Todo | PieceState::Done => Some(words::progress(done, all)),
    }
}
