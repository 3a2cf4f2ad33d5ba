//! The pieces of a day as one athlete sees them: loads worked out, logs filled in.

use super::able::able_view;
use super::bar::OnTheBar;
use super::doubt::doubt;
use super::log::SessionLog;
use super::screen::{
    ExpectedReps, FlagView, LoadView, OptionView, PieceKindView, PieceState, PieceView,
    SetDoneView, SetView, StrengthView,
};
use super::snapshot::Snapshot;
use crate::care::advice_for;
use crate::history::{Proposed, propose, set_done};
use crate::instant::{Instant, Millis};
use crate::journal::{Lift, Part, Until};
use crate::load::strength::RepsBand;
use crate::load::{Able, NextLoad, Prepared, Reason};
use crate::mass::{Mass, MassUnit};
use crate::plan::{Builds, Day, Exercise, Piece, PieceKind, Strength};
use crate::store::{Logged, date_of};
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
        let draw = |piece: &Piece| self.snapshot.drawn(&piece.name, || self.piece(piece));
        self.day.pieces.iter().map(draw).collect()
    }

    fn piece(&self, piece: &Piece) -> PieceView {
        let name = &piece.name;
        let (kind, movements, done, all) = match &piece.kind {
            PieceKind::Strength(strength) => {
                let view = self.strength(name, strength);
                let done = view.sets.iter().filter(|set| set.done.is_some()).count();
                let (all, movements) = (view.sets.len(), vec![strength.movement.as_str()]);
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

    /// What is proposed for a strength piece.
    pub(crate) fn proposal(&self, piece: &str, strength: &Strength) -> Proposed<'_> {
        let exercise = self.snapshot.exercise(piece, &strength.movement);
        let of = |lift: &&Logged<Lift>| lift.body.piece == piece && lift.body.exercise == exercise;
        let so_far = self.log().map_or(&[][..], |log| &log.lifts).iter().filter(of);
        let so_far = so_far.map(set_done).collect();
        let (past, flags) = (self.snapshot.past(piece), &self.snapshot.flags);
        propose(self.block, self.unit(), strength, exercise, past, flags, so_far)
    }

    fn strength(&self, name: &str, strength: &Strength) -> StrengthView {
        let Proposed { exercise, builds, history, loads } = self.proposal(name, strength);
        let (able, unit) = (history.able, self.unit());
        let lifts = self.log().map_or(&[][..], |log| &log.lifts);
        let done: Vec<&Lift> =
            lifts.iter().map(|lift| &lift.body).filter(|lift| lift.piece == name).collect();
        let on_the_bar = OnTheBar::new(self.block, builds, &loads, unit, &done);
        let movement = self.block.name_of(&exercise);
        let set = |next: &NextLoad| {
            let load = on_the_bar.load(next.set);
            self.set(name, strength, next, load, able.as_ref(), &movement)
        };
        let sets: Vec<SetView> = loads.iter().map(set).collect();
        let bar = (!builds.bar.is_empty()).then(|| builds.bar.clone());
        StrengthView {
            heading: words::strength_heading(&movement, bar.as_deref(), strength.rest_ms),
            movement,
            bar,
            able: able.map(|able| able_view(able, unit)),
            warm_up: on_the_bar.warm_up(),
            next_set: sets.iter().find(|set| set.done.is_none()).map(|set| set.set),
            sets,
            rest: Millis(strength.rest_ms),
            rest_text: words::clock_time(strength.rest_ms),
            exercise,
        }
    }

    fn set(
        &self,
        piece: &str,
        strength: &Strength,
        next: &NextLoad,
        load: Option<LoadView>,
        able: Option<&Able>,
        movement: &str,
    ) -> SetView {
        let set = next.set;
        let done = self.log().and_then(|log| log.lift(piece, set));
        let open = strength.scheme.is_open(set);
        let asked = strength.scheme.target(set).unwrap_or(0);
        let reps_text = words::reps(asked, open);
        let load_text = match (&load, &next.reason) {
            (Some(load), _) => load.text.clone(),
            (None, Reason::Free) => "no load".into(),
            (None, _) => "you say".into(),
        };
        SetView {
            set,
            asked,
            open,
            asked_text: words::set_asked(load.as_ref().map(|load| load.text.as_str()), &reps_text),
            reps_text,
            expected: able.zip(next.load.filter(|_| open)).map(expected),
            load,
            load_text,
            // What is done needs no advice any more how to find its load.
            why: (done.is_none() || !next.reason.asks())
                .then(|| words::why(&next.reason, self.unit())),
            reason: next.reason.clone(),
            from: next.from.clone(),
            done: done.map(|lift| self.set_done(lift, movement)),
        }
    }

    fn set_done(&self, lift: &Logged<Lift>, movement: &str) -> SetDoneView {
        let Lift { load, reps, reserve, .. } = lift.body;
        let (made, conflict) = (lift.body.made(), lift.heads > 1);
        let (load_text, lifted) = (self.load_text(load), self.block.name_of(&lift.body.exercise));
        let other = (lifted != movement).then_some(lifted.as_str());
        SetDoneView {
            text: words::set_done(load_text.as_deref(), reps, reserve, made, other, conflict),
            load,
            load_text,
            reps,
            reserve,
            made,
            doubt: doubt(&lift.body, self.builds_of(lift), self.unit()),
            movement: lifted,
            conflict,
        }
    }

    fn builds_of(&self, lift: &Logged<Lift>) -> &Builds {
        self.block.builds(&lift.body.exercise, self.unit())
    }

    fn options(&self, piece: &str, movements: &[&str]) -> Vec<OptionView> {
        let found = movements.iter().filter_map(|movement| self.block.movement(movement));
        found
            .flat_map(|movement| {
                let taken = self.log().and_then(|log| log.option(piece, &movement.key));
                // What the day before worked hard, and an option would spare.
                let hard = self.snapshot.hard.iter().find(|hard| hard.pattern == movement.pattern);
                movement.options.iter().map(move |option| {
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

    /// The open flags on what is done in a piece, the most urgent first.
    fn flags(&self, piece: &str, movements: &[&str]) -> Vec<FlagView> {
        let exercises: Vec<Exercise> =
            movements.iter().map(|movement| self.snapshot.exercise(piece, movement)).collect();
        let on_them =
            self.snapshot.flags.iter().filter(|flag| {
                exercises.iter().any(|exercise| exercise.is_near(&flag.body.exercise))
            });
        let mut views: Vec<FlagView> = on_them
            .map(|flag| FlagView {
                flag: flag.record,
                place: flag.body.place,
                severity: flag.body.severity,
                advice: advice_for(flag.body.place, flag.body.severity, &flag.body.signs),
                text: words::flagged(flag.body.place, flag.body.severity, date_of(flag)),
            })
            .collect();
        views.sort_by_key(|view| !view.advice.urgent);
        views
    }

    pub(super) fn load_text(&self, load: Option<Mass>) -> Option<String> {
        load.map(|load| words::load_text(load, self.unit()))
    }
}

fn progress(state: PieceState, done: usize, all: usize) -> Option<String> {
    match state {
        PieceState::Note => None,
        PieceState::Later => Some("later".into()),
        PieceState::Left => Some("left".into()),
        // A hold is one thing: it is done or not.
        PieceState::Todo if all == 1 => None,
        PieceState::Todo | PieceState::Done => Some(words::progress(done, all)),
    }
}

fn expected((able, load): (&Able, Mass)) -> ExpectedReps {
    let RepsBand { low, high, .. } = able.strength.expected_reps(load);
    ExpectedReps { low, high, text: words::expected_reps(low, high) }
}
