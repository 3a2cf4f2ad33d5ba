//! What goes on the bar of a strength piece, set by set.

use std::sync::Arc;

use super::screen::{BuildView, ChangeView, LoadView, PlateView, WarmUpView};
use crate::journal::Lift;
use crate::load::{NextLoad, Prepared, Ramp, RampStep, WarmUpSet, colour_of, warm_up};
use crate::mass::{Mass, MassUnit};
use crate::plan::Builds;
use crate::store::Logged;
use crate::words;

/// A piece's warm-up and the steps of its ramp.
pub(crate) struct OnTheBar<'a> {
    builds: &'a Builds,
    unit: MassUnit,
    warm_up: Vec<WarmUpSet>,
    /// One for each warm-up set, then one for each set that has a load.
    steps: Option<Arc<Ramp>>,
    loads: &'a [NextLoad],
}

impl<'a> OnTheBar<'a> {
    /// Works out the ramp where the piece goes by it. Otherwise nobody knows which plates are on the
    /// bar: then each load is built as it would be alone, and no change is named.
    pub(crate) fn new(
        block: &Prepared,
        builds: &'a Builds,
        loads: &'a [NextLoad],
        unit: MassUnit,
        by_the_ramp: bool,
    ) -> OnTheBar<'a> {
        let work = loads.iter().filter_map(|next| next.load);
        let first = work.clone().next().filter(|_| !builds.bar.is_empty());
        let warm_up = first.map_or(Vec::new(), |first| warm_up(builds, first));
        let whole: Vec<Mass> = warm_up.iter().map(|set| set.load).chain(work).collect();
        let steps = by_the_ramp.then(|| block.ramp(builds, &whole)).flatten();
        OnTheBar { builds, unit, warm_up, steps, loads }
    }

    /// The warm-up sets. They stay in the ramp once a set is done: what they left on the bar is what the
    /// next set starts from.
    pub(crate) fn warm_up(&self) -> Vec<WarmUpView> {
        let view = |(index, set): (usize, &WarmUpSet)| {
            let load = self.view(set.load, index);
            let build = load.build.as_ref().map(|build| build.text.as_str());
            let text = words::warm_up(&load.text, set.reps, build);
            WarmUpView { reps: set.reps, load, text }
        };
        self.warm_up.iter().enumerate().map(view).collect()
    }

    /// The load of a set counted from 1.
    pub(crate) fn load(&self, set: u32) -> Option<LoadView> {
        let load = self.loads.iter().find(|next| next.set == set)?.load?;
        let before = self.loads.iter().filter(|next| next.set < set && next.load.is_some()).count();
        Some(self.view(load, self.warm_up.len() + before))
    }

    fn view(&self, load: Mass, index: usize) -> LoadView {
        let step = self.steps.as_ref().and_then(|ramp| ramp.steps.get(index));
        // Without a ramp, as where one load cannot be built: each load as it would be alone.
        let per_side = match step {
            Some(RampStep { build, .. }) => Some(build.per_side.clone()),
            None => self.builds.exactly(load).map(|build| build.per_side),
        };
        let per_side = per_side.filter(|_| !self.builds.bar.is_empty());
        LoadView {
            mass: load,
            text: words::load_text(load, self.unit),
            build: per_side.map(|side| self.build(&side, step)),
            change: step.map(|step| self.change(step)),
            lighter: self.builds.below(load).map(|build| build.mass),
            heavier: self.builds.above(load).map(|build| build.mass),
        }
    }

    fn build(&self, per_side: &[Mass], step: Option<&RampStep>) -> BuildView {
        let unit = self.builds.unit;
        // What goes on lies outermost.
        let stays = per_side.len() - step.map_or(0, |step| step.on.len().min(per_side.len()));
        let plate = |(at, mass): (usize, &Mass)| self.plate(*mass, at >= stays);
        BuildView {
            plates: per_side.iter().enumerate().map(plate).collect(),
            text: words::plates_text(per_side, unit),
            short: words::plates_alone(per_side, unit),
        }
    }

    fn change(&self, step: &RampStep) -> ChangeView {
        let unit = self.builds.unit;
        let plates = |side: &[Mass], on| side.iter().map(|mass| self.plate(*mass, on)).collect();
        let text = |side: &[Mass]| (!side.is_empty()).then(|| words::plates_short(side, unit));
        ChangeView {
            off: plates(&step.off, false),
            off_text: text(&step.off),
            on: plates(&step.on, true),
            on_text: text(&step.on),
            text: words::change_text(step, unit),
        }
    }

    fn plate(&self, mass: Mass, put_on: bool) -> PlateView {
        let unit = if mass.is_exact_in(self.builds.unit) {
            self.builds.unit
        } else {
            self.builds.unit.other()
        };
        PlateView {
            mass,
            number: mass.number(unit),
            colour: colour_of(mass),
            diameter_mm: diameter_mm(mass),
            put_on,
        }
    }
}

/// The diameter of a plate: the federations' 450 mm from 10 kg up; below that common sizes, no source.
fn diameter_mm(plate: Mass) -> u32 {
    match plate {
        plate if plate >= Mass::kg(10) => 450,
        plate if plate >= Mass::kg(5) => 230,
        plate if plate >= Mass::thousandths(2_500, MassUnit::Kg) => 210,
        _ => 160,
    }
}

/// True while the sets done were lifted as proposed and what was proposed still is. A first time is never
/// like that: its first load is the athlete's own.
pub(crate) fn by_the_ramp(loads: &[NextLoad], done: &[&Logged<Lift>]) -> bool {
    done.iter().map(|lift| &lift.body).all(|lift| {
        let next = loads.iter().find(|next| next.set == lift.set);
        lift.load == lift.planned && next.is_some_and(|next| next.load == lift.planned)
    })
}
