//! A strength piece as one athlete sees it: what is asked, and what is done of it.
//!
//! What is asked stays the same from set to set as long as the loads do, and making its texts costs
//! more than all else a tap does. So the snapshot keeps it, and a tap only adds what was done.

use std::sync::Arc;

use super::able::able_view;
use super::asked::Asked;
use super::bar::{Bar, OnTheBar};
use super::bars::builds_of;
use super::doubt::doubt;
use super::screen::{BuildView, ExpectedReps, LoadView, SetDoneView, SetView, StrengthView};
use super::sheet::Sheet;
use crate::history::{Proposed, propose, set_done};
use crate::instant::Millis;
use crate::journal::Lift;
use crate::load::strength::RepsBand;
use crate::load::{Able, NextLoad, Reason, WarmUpFor};
use crate::mass::Mass;
use crate::plan::{Builds, Exercise, Pattern, PieceKind, Strength};
use crate::say::screen as say;
use crate::store::Logged;
use crate::words::{self, Remarks};

impl Sheet<'_> {
    /// What is proposed for a strength piece.
    pub(crate) fn proposal(&self, piece: &str, strength: &Strength) -> Proposed<'_> {
        let exercise = self.snapshot.exercise(piece, &strength.movement);
        let of = |lift: &&Logged<Lift>| {
            let planned = lift.body.set <= strength.scheme.sets();
            lift.body.piece == piece && lift.body.exercise == exercise && planned
        };
        let so_far = self.log().map_or(&[][..], |log| &log.lifts).iter().filter(of);
        let aside = &self.snapshot.aside;
        let so_far = so_far.map(|lift| set_done(lift, aside.contains(&lift.record))).collect();
        let (past, flags) = (self.snapshot.past(piece), self.snapshot.flags_for_loads());
        let lifted = (exercise, self.snapshot.bar(piece));
        propose(self.block, self.unit(), strength, lifted, past, &flags, so_far)
    }

    /// What carries the loads of a strength piece now.
    pub(super) fn builds(&self, piece: &str, strength: &Strength, exercise: &Exercise) -> &Builds {
        self.block.builds_for(strength, exercise, self.unit(), self.snapshot.bar(piece))
    }

    pub(super) fn strength(&self, name: &str, strength: &Strength) -> StrengthView {
        self.with_what_is_done(&self.asked(name, strength), &self.done(name))
    }

    /// The plates of a side that a load of a set is built from: as the screen says for what it proposes,
    /// otherwise with the least handling from what is on the bar. None for what has no plates.
    pub(super) fn side_for(
        &self,
        (name, strength): (&str, &Strength),
        asked: &Asked,
        set: u32,
        load: Option<Mass>,
    ) -> Option<Vec<Mass>> {
        let (load, builds) = (load?, self.builds(name, strength, &asked.view.exercise));
        let proposed = asked.view.sets.iter().find(|view| view.set == set);
        let proposed = proposed.and_then(|view| view.load.as_ref());
        if let Some(view) = proposed.filter(|view| view.mass == load) {
            return view.build.as_ref().map(BuildView::side);
        }
        let left = self.done(name).iter().rfind(|lift| lift.body.set != set).map(|lift| {
            // Nobody knows: then it is as if all were taken off.
            lift.body.side.clone().unwrap_or_default()
        });
        let warm = || {
            let last = asked.view.warm_up.last().and_then(|set| set.load.as_ref()?.build.as_ref());
            last.map(BuildView::side).unwrap_or_default()
        };
        let ramp = self.block.ramp(builds, &left.unwrap_or_else(warm), &[load])?;
        ramp.steps.first().map(|step| step.build.per_side.clone())
    }

    /// The sets of a piece that are logged.
    pub(super) fn done(&self, name: &str) -> Vec<&Logged<Lift>> {
        let lifts = self.log().map_or(&[][..], |log| &log.lifts);
        lifts.iter().filter(|lift| lift.body.piece == name).collect()
    }

    /// What a piece asks for, as if nothing were done of it: worked out once for the sets done so far,
    /// and said anew only where that changes a load.
    pub(super) fn asked(&self, name: &str, strength: &Strength) -> Arc<Asked> {
        let done = self.done(name);
        let known = self.snapshot.asked(name);
        let lift = self.warm_up_for(name, strength);
        let same =
            |(asked, as_of): &&(Arc<Asked>, usize)| *as_of == done.len() && asked.lift == lift;
        if let Some((asked, _)) = known.as_ref().filter(same) {
            return Arc::clone(asked);
        }
        let proposed = self.proposal(name, strength);
        let bar = Bar::after(proposed.builds, &proposed.next.sets, &done, |lift| {
            builds_of(self.block, lift, self.unit()).bar.clone()
        });
        let said = |asked: &Asked| asked.next == proposed.next && asked.lift == lift;
        let same = |asked: &Asked| said(asked) && asked.bar == bar;
        let asked = match known.map(|(asked, _)| asked) {
            Some(asked) if same(&asked) => asked,
            // Loads by hand change what is on the bar with every set, and nothing else.
            Some(asked) if said(&asked) => {
                Arc::new(self.on_another_bar(&asked, proposed.builds, bar))
            }
            _ => Arc::new(self.said(strength, proposed, bar, lift)),
        };
        self.snapshot.keep_asked(name, &asked, done.len());
        asked
    }

    /// The same with other plates on the bar.
    fn on_another_bar(&self, asked: &Asked, builds: &Builds, bar: Bar) -> Asked {
        let (next, lift) = (asked.next.clone(), asked.lift);
        let on_the_bar = OnTheBar::new(self.block, builds, &next.sets, self.unit(), &bar, lift);
        let mut view = asked.view.clone();
        let changes = view.sets.iter_mut().map(|set| {
            set.load = on_the_bar.load(set.set);
            set.load.as_mut().and_then(|load| load.change.take())
        });
        let changes = changes.collect();
        Asked { next, easy: asked.easy, bar, lift, view, changes }
    }

    /// What is known of a lift before its warm-up. Nobody tells where it starts: a bar that is lifted by a hinge
    /// is taken to start on the floor. Warm it is by sets of the same pattern logged in another piece before it;
    /// before the session begins, by those planned before it.
    fn warm_up_for(&self, name: &str, strength: &Strength) -> WarmUpFor {
        let exercise =
            |name: &str, strength: &Strength| self.snapshot.exercise(name, &strength.movement);
        let own = exercise(name, strength);
        let Some(pattern) = self.block.pattern_of(&own) else { return WarmUpFor::default() };
        let is_same = |other: &Exercise| self.block.pattern_of(other) == Some(pattern);
        let warm = match self.log() {
            Some(log) => {
                let before = log.lifts.iter().take_while(|lift| lift.body.piece != name);
                before.map(|lift| &lift.body.exercise).any(is_same)
            }
            None => {
                let before = self.day.pieces.iter().take_while(|piece| piece.name != name);
                let mut before = before.filter_map(|piece| match &piece.kind {
                    PieceKind::Strength(strength) => Some(exercise(&piece.name, strength)),
                    _ => None,
                });
                before.any(|other| is_same(&other))
            }
        };
        let has_bar = self.builds(name, strength, &own).has_plates();
        WarmUpFor { from_floor: pattern == Pattern::Hinge && has_bar, warm }
    }

    fn said(
        &self,
        strength: &Strength,
        proposed: Proposed<'_>,
        bar: Bar,
        lift: WarmUpFor,
    ) -> Asked {
        let Proposed { exercise, builds, history, next, easy } = proposed;
        let (able, unit) = (history.able, self.unit());
        let on_the_bar = OnTheBar::new(self.block, builds, &next.sets, unit, &bar, lift);
        let set = |next: &NextLoad| {
            let mut load = on_the_bar.load(next.set);
            let change = load.as_mut().and_then(|load| load.change.take());
            (self.set(next, load, able.as_ref()), change)
        };
        let (sets, changes) = next.sets.iter().map(set).unzip();
        let movement = self.block.name_of(&exercise);
        let name = (!builds.bar.is_empty()).then(|| builds.bar.clone());
        let view = StrengthView {
            heading: words::strength_heading(
                &movement,
                name.as_deref(),
                // Without one in the plan it follows from what is lifted, set by set.
                strength.rest_said.then_some(strength.rest_ms),
            ),
            movement,
            bars: self.bars(builds),
            bar: name,
            able: able_view(able, history.informed, &next, unit),
            warm_up: on_the_bar.warm_up(),
            next_set: None,
            sets,
            rest: Millis(strength.rest_ms),
            rest_text: words::clock_time(strength.rest_ms),
            exercise,
        };
        Asked { next, easy, bar, lift, view, changes }
    }

    fn set(&self, next: &NextLoad, load: Option<LoadView>, able: Option<&Able>) -> SetView {
        let set = next.set;
        let (open, asked) = (next.open, next.reps);
        let reps_text = words::reps(asked, open);
        let load_text = match (&load, &next.reason) {
            (Some(load), _) => load.text.clone(),
            (None, Reason::Free) => say::no_load().into(),
            (None, Reason::Withdrawn { .. }) => say::load_withdrawn().into(),
            (None, _) => say::you_choose().into(),
        };
        SetView {
            set,
            extra: false,
            asked,
            open,
            asked_text: words::set_asked(load.as_ref().map(|load| load.text.as_str()), &reps_text),
            reps_text,
            expected: able.zip(next.load.filter(|_| open)).map(|known| expected(known, set)),
            load,
            load_text,
            why: Some(words::why(&next.reason, next.load, self.unit())),
            others: words::also(&next.others, self.unit()),
            reason: next.reason.clone(),
            from: next.from.clone(),
            done: None,
        }
    }

    fn with_what_is_done(&self, asked: &Asked, done: &[&Logged<Lift>]) -> StrengthView {
        let mut view = asked.view.clone();
        if !done.is_empty() {
            view.warm_up.clear();
        }
        for set in &mut view.sets {
            // A set logged again counts as it was logged last.
            let lift = done.iter().rev().find(|lift| lift.body.set == set.set);
            set.done = lift.map(|lift| self.set_done(lift, &view.movement));
            // What is done needs no advice any more how to find its load.
            set.why.take_if(|_| lift.is_some() && set.reason.asks());
        }
        view.next_set = view.sets.iter().find(|set| set.done.is_none()).map(|set| set.set);
        // What is on the bar is what the set before left there: known once that is done.
        let next = view.sets.iter().position(|set| set.done.is_none());
        if let Some((set, change)) =
            next.and_then(|at| view.sets.get_mut(at).zip(asked.changes.get(at)))
            && let Some(load) = &mut set.load
        {
            load.change.clone_from(change);
        }
        let planned = asked.next.sets.len() as u32;
        view.sets.extend(self.extra_sets(planned, done, &view.movement));
        view
    }

    pub(super) fn set_done(&self, lift: &Logged<Lift>, movement: &str) -> SetDoneView {
        let Lift { load, reps, reserve, .. } = lift.body;
        let (made, conflict) = (lift.body.made(), lift.heads > 1);
        let (load_text, lifted) = (self.load_text(load), self.block.name_of(&lift.body.exercise));
        let other = (lifted != movement).then_some(lifted.as_str());
        let aside = self.snapshot.aside.contains(&lift.record);
        let remarks = Remarks { short: !made, other, conflict, slip: lift.body.doubt, aside };
        let builds = builds_of(self.block, &lift.body, self.unit());
        SetDoneView {
            lift: lift.record,
            text: words::set_done(load_text.as_deref(), reps, reserve, remarks),
            load,
            load_text,
            reps,
            reserve,
            made,
            doubt: doubt(&lift.body, builds, self.unit()),
            movement: lifted,
            conflict,
        }
    }
}

fn expected((able, load): (&Able, Mass), set: u32) -> ExpectedReps {
    let RepsBand { low, high, .. } = able.strength.expected_reps(load, set.saturating_sub(1));
    ExpectedReps { low, high, text: words::expected_reps(low, high) }
}
