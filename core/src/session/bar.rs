//! What goes on the bar of a strength piece, set by set.

use std::sync::Arc;

use super::screen::{BuildView, ChangeView, LoadView, PlateView, WarmUpView};
use crate::journal::Lift;
use crate::load::{NextLoad, Prepared, Ramp, RampStep, WarmUpSet, colour_of, warm_up};
use crate::mass::{Mass, MassUnit};
use crate::plan::Builds;
use crate::store::Logged;
use crate::words;

/// What is known of the bar of a piece.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Bar {
    /// It goes from warm-up to the last set as was said at the beginning.
    AsSaid,
    /// Something else was lifted, or the loads have changed since: it has these plates on a side, and so many
    /// sets are done.
    Has {
        /// From the inside outwards.
        side: Vec<Mass>,
        /// The sets that are done.
        done: Vec<u32>,
    },
    /// Nobody knows.
    Unknown,
}

impl Bar {
    /// What the sets done leave on it. While they were lifted as proposed, and what was proposed still is, that is
    /// as was said; a first time is never like that, for its first load is the athlete's own. Otherwise the last
    /// set says.
    pub(crate) fn after(
        builds: &Builds,
        loads: &[NextLoad],
        done: &[&Logged<Lift>],
        builds_of: impl Fn(&Lift) -> String,
    ) -> Bar {
        let as_said = |lift: &Lift| {
            let next = loads.iter().find(|next| next.set == lift.set);
            lift.load == lift.planned && next.is_some_and(|next| next.load == lift.planned)
        };
        if done.iter().all(|lift| as_said(&lift.body)) {
            return Bar::AsSaid;
        }
        let last = done.last().map(|lift| &lift.body);
        let same_bar = |lift: &&Lift| builds_of(lift) == builds.bar;
        match last.filter(same_bar).and_then(|lift| lift.side.clone()) {
            Some(side) => Bar::Has { side, done: done.iter().map(|lift| lift.body.set).collect() },
            None => Bar::Unknown,
        }
    }
}

/// A piece's warm-up and the steps of its ramp.
pub(crate) struct OnTheBar<'a> {
    builds: &'a Builds,
    unit: MassUnit,
    warm_up: Vec<WarmUpSet>,
    /// One for each warm-up set, then one for each set that has a load; of a bar that has plates on, one for
    /// each set that has a load and is not done.
    steps: Option<Arc<Ramp>>,
    loads: &'a [NextLoad],
    bar: &'a Bar,
}

impl<'a> OnTheBar<'a> {
    /// Works out the ramp from what is known of the bar. Where nobody knows, each load is built as it would be
    /// alone, and no change is named.
    pub(crate) fn new(
        block: &Prepared,
        builds: &'a Builds,
        loads: &'a [NextLoad],
        unit: MassUnit,
        bar: &'a Bar,
    ) -> OnTheBar<'a> {
        let first = loads.iter().find_map(|next| next.load).filter(|_| !builds.bar.is_empty());
        let warm_up = first.map_or(Vec::new(), |first| warm_up(builds, first));
        let mut found = OnTheBar { builds, unit, warm_up, steps: None, loads, bar };
        let ahead = found.ahead().filter_map(|next| next.load);
        found.steps = match bar {
            Bar::AsSaid => {
                let warm_up = found.warm_up.iter().map(|set| set.load);
                block.ramp(builds, &[], &warm_up.chain(ahead).collect::<Vec<Mass>>())
            }
            Bar::Has { side, .. } => block.ramp(builds, side, &ahead.collect::<Vec<Mass>>()),
            Bar::Unknown => None,
        };
        found
    }

    /// The sets that the ramp is made for.
    fn ahead(&self) -> impl Iterator<Item = &'a NextLoad> + use<'a> {
        let done = match self.bar {
            Bar::Has { done, .. } => done.as_slice(),
            Bar::AsSaid | Bar::Unknown => &[],
        };
        self.loads.iter().filter(|next| !done.contains(&next.set))
    }

    /// The warm-up sets. They stay in the ramp once a set is done: what they left on the bar is what the
    /// next set starts from.
    pub(crate) fn warm_up(&self) -> Vec<WarmUpView> {
        let view = |(index, set): (usize, &WarmUpSet)| {
            let load = self.view(set.load, (*self.bar == Bar::AsSaid).then_some(index));
            let build = load.build.as_ref().map(|build| build.text.as_str());
            let text = words::warm_up(&load.text, set.reps, build);
            WarmUpView { reps: set.reps, load, text }
        };
        self.warm_up.iter().enumerate().map(view).collect()
    }

    /// The load of a set counted from 1.
    pub(crate) fn load(&self, set: u32) -> Option<LoadView> {
        let load = self.loads.iter().find(|next| next.set == set)?.load?;
        let with_load = self.ahead().filter(|next| next.load.is_some());
        let place = with_load.map(|next| next.set).position(|other| other == set);
        let warm_up = if *self.bar == Bar::AsSaid { self.warm_up.len() } else { 0 };
        Some(self.view(load, place.map(|place| warm_up + place)))
    }

    fn view(&self, load: Mass, index: Option<usize>) -> LoadView {
        let step = self.steps.as_ref().zip(index).and_then(|(ramp, index)| ramp.steps.get(index));
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
