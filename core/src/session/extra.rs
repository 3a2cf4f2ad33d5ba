//! What nobody planned and somebody did all the same: sets over those planned, and other movements.

use super::log::SessionLog;
use super::screen::{PieceKindView, PieceState, PieceView, SetView, StrengthView};
use super::sheet::Sheet;
use crate::instant::Millis;
use crate::journal::Lift;
use crate::load::Reason;
use crate::plan::Exercise;
use crate::say::screen as say;
use crate::store::{Logged, date_of};
use crate::words::{self, Remarks};

impl Sheet<'_> {
    /// The sets done over so many planned ones, in order.
    pub(super) fn extra_sets(
        &self,
        planned: u32,
        done: &[&Logged<Lift>],
        movement: &str,
    ) -> Vec<SetView> {
        let over = done.iter().map(|lift| lift.body.set).filter(|set| *set > planned);
        let mut over: Vec<u32> = over.collect();
        over.sort_unstable();
        over.dedup();
        let view = |set: u32| {
            // A set logged again counts as it was logged last.
            let lift = done.iter().rev().find(|lift| lift.body.set == set)?;
            Some(SetView {
                set,
                extra: true,
                asked: 0,
                open: false,
                reps_text: String::new(),
                load: None,
                load_text: say::extra().into(),
                asked_text: say::extra().into(),
                reason: Reason::Free,
                why: None,
                others: None,
                from: Vec::new(),
                expected: None,
                done: Some(self.set_done(lift, movement)),
            })
        };
        over.into_iter().filter_map(view).collect()
    }

    /// The movements nobody planned that were done in this session, each a piece of its own.
    pub(super) fn unplanned(&self) -> Vec<PieceView> {
        let names = self.log().map_or(Vec::new(), SessionLog::unplanned_pieces);
        names.into_iter().map(|(name, exercise)| self.unplanned_piece(name, exercise)).collect()
    }

    fn unplanned_piece(&self, name: &str, exercise: &Exercise) -> PieceView {
        let movement = self.name_of(name, exercise);
        let sets = self.extra_sets(0, &self.done(name), &self.block.name_of(exercise));
        let heading = match self.snapshot.last_set(exercise) {
            Some(last) => {
                say::unplanned_last(&movement, self.last_text(last), words::day(date_of(last)))
            }
            None => say::unplanned(&movement),
        };
        let progress = say::sets_done(sets.len());
        let view = StrengthView {
            movement,
            exercise: exercise.clone(),
            bar: None,
            bars: Vec::new(),
            heading,
            able: None,
            warm_up: Vec::new(),
            sets,
            next_set: None,
            rest: Millis(0),
            rest_text: String::new(),
        };
        PieceView {
            name: name.to_owned(),
            state: PieceState::Done,
            progress: Some(progress),
            options: Vec::new(),
            flags: self.flags_on(std::slice::from_ref(exercise)),
            notes: self.notes(name),
            stands_at: None,
            kind: PieceKindView::Strength { view },
        }
    }

    /// The plan's name of a movement; one that the plan has not is called as the athlete calls it.
    fn name_of(&self, piece: &str, exercise: &Exercise) -> String {
        let known = self.block.lifted_in(exercise).is_some();
        if known { self.block.name_of(exercise) } else { piece.to_owned() }
    }

    /// What was done of a set that was done before: `20 kg × 12`.
    pub(super) fn last_text(&self, last: &Logged<Lift>) -> String {
        let Lift { load, reps, reserve, .. } = last.body;
        words::set_done(self.load_text(load).as_deref(), reps, reserve, Remarks::default())
    }
}
