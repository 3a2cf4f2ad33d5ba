//! What goes on the bar of a strength piece, set by set.

use std::sync::Arc;

use super::screen::{BuildView, ChangeView, LoadView, PlateView, WarmUpView};
use crate::journal::Lift;
use crate::load::{
    NextLoad, Prepared, Ramp, RampStep, WarmUpFor, WayUp, colour_of, warm_up_by_feel,
};
use crate::mass::{Mass, MassUnit};
use crate::plan::{Builds, LoadKind};
use crate::say::plates as say;
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
        let same_bar = |lift: &Lift| builds_of(lift) == builds.bar;
        let as_said = |lift: &Lift| {
            let next = loads.iter().find(|next| next.set == lift.set);
            let same = next.is_some_and(|next| next.load == lift.planned) && same_bar(lift);
            lift.load == lift.planned && same
        };
        if done.iter().all(|lift| as_said(&lift.body)) {
            return Bar::AsSaid;
        }
        let side = match done.last().map(|lift| &lift.body) {
            // Another bar was taken since, and that one is empty.
            Some(last) if last.side.is_some() && !same_bar(last) => Some(Vec::new()),
            last => last.filter(|last| same_bar(last)).and_then(|last| last.side.clone()),
        };
        match side {
            Some(side) => Bar::Has { side, done: done.iter().map(|lift| lift.body.set).collect() },
            None => Bar::Unknown,
        }
    }
}

/// A piece's warm-up and the steps of its ramp.
pub(crate) struct OnTheBar<'a> {
    builds: &'a Builds,
    unit: MassUnit,
    /// The way up as it was said at the beginning.
    way_up: WayUp,
    lift: WarmUpFor,
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
        lift: WarmUpFor,
    ) -> OnTheBar<'a> {
        let all: Vec<Mass> = loads.iter().filter_map(|next| next.load).collect();
        let way_up = block.way_up(builds, lift, &all);
        let mut found = OnTheBar { builds, unit, way_up, lift, steps: None, loads, bar };
        let ahead = found.ahead().filter_map(|next| next.load);
        found.steps = match bar {
            Bar::AsSaid => found.way_up.ramp.clone(),
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
        if self.loads.iter().any(|next| next.load.is_some()) {
            let sets = self.way_up.warm_up.iter().enumerate();
            return sets
                .map(|(index, set)| self.warm_up_set(set.reps, set.nearest(), index))
                .collect();
        }
        if !self.loads.first().is_some_and(|next| next.reason.is_first_time()) {
            return Vec::new();
        }
        let light = match self.builds.kind {
            LoadKind::Bells | LoadKind::Pair => say::light_bell(),
            LoadKind::Plates | LoadKind::Added | LoadKind::Assisted | LoadKind::Stack => {
                say::light()
            }
        };
        let sets = warm_up_by_feel(self.builds, self.lift).into_iter();
        let by_feel = |(reps, load)| match load {
            Some(load) => self.warm_up_set(reps, load, 0),
            None => WarmUpView { reps, load: None, text: words::warm_up(light, reps, None) },
        };
        sets.map(by_feel).collect()
    }

    fn warm_up_set(&self, reps: u32, nearest: Mass, index: usize) -> WarmUpView {
        let ramp = self.way_up.ramp.as_ref();
        let step = ramp.and_then(|ramp| ramp.steps.get(index));
        let load = step.map_or(nearest, |step| step.build.mass);
        let load = self.view_of(load, step);
        let build = load.build.as_ref().map(|build| build.text.as_str());
        let text = words::warm_up(&load.text, reps, build);
        WarmUpView { reps, load: Some(load), text }
    }

    /// The load of a set counted from 1.
    pub(crate) fn load(&self, set: u32) -> Option<LoadView> {
        let load = self.loads.iter().find(|next| next.set == set)?.load?;
        let with_load = self.ahead().filter(|next| next.load.is_some());
        let place = with_load.map(|next| next.set).position(|other| other == set);
        let warm_up = if *self.bar == Bar::AsSaid { self.way_up.warm_up.len() } else { 0 };
        let step = self.steps.as_ref().zip(place);
        let step = step.and_then(|(ramp, place)| ramp.steps.get(warm_up + place));
        Some(self.view_of(load, step))
    }

    fn view_of(&self, load: Mass, step: Option<&RampStep>) -> LoadView {
        // Without a ramp, as where one load cannot be built: each load as it would be alone.
        let per_side = match step {
            Some(RampStep { build, .. }) => Some(build.per_side.clone()),
            None => self.builds.exactly(load).map(|build| build.per_side),
        };
        let per_side = per_side.filter(|_| !self.builds.bar.is_empty());
        LoadView {
            mass: load,
            text: words::load_text(load, self.unit),
            number: load.number(self.unit),
            unit: self.unit.symbol().into(),
            build: per_side.map(|side| self.build(&side, step)),
            change: step.map(|step| self.change(step)),
            lighter: self.builds.below(load).map(|build| build.mass),
            heavier: self.builds.above(load).map(|build| build.mass),
        }
    }

    fn build(&self, per_side: &[Mass], step: Option<&RampStep>) -> BuildView {
        let unit = self.builds.unit;
        let plates = side_view(per_side, step, unit);
        let numbers: Vec<&str> = plates.iter().map(|plate| plate.number.as_str()).collect();
        BuildView {
            spoken: words::bar_from_inside(&numbers),
            plates,
            text: words::plates_text(per_side, unit),
            short: words::plates_alone(per_side, unit),
        }
    }

    fn change(&self, step: &RampStep) -> ChangeView {
        let unit = self.builds.unit;
        let plates = |side: &[Mass], on| side.iter().map(|mass| plate(*mass, unit, on)).collect();
        let text = |side: &[Mass]| (!side.is_empty()).then(|| words::plates_short(side, unit));
        ChangeView {
            off: plates(&step.off, false),
            off_text: text(&step.off),
            on: plates(&step.on, true),
            on_text: text(&step.on),
            text: words::change_text(step, unit),
        }
    }
}

/// The plates of a side to draw, from the middle of the bar outwards.
pub(super) fn side_view(
    per_side: &[Mass],
    step: Option<&RampStep>,
    unit: MassUnit,
) -> Vec<PlateView> {
    // What goes on lies outermost.
    let stays = per_side.len() - step.map_or(0, |step| step.on.len().min(per_side.len()));
    per_side.iter().enumerate().map(|(at, mass)| plate(*mass, unit, at >= stays)).collect()
}

fn plate(mass: Mass, unit: MassUnit, put_on: bool) -> PlateView {
    let unit = if mass.is_exact_in(unit) { unit } else { unit.other() };
    PlateView {
        mass,
        number: mass.number(unit),
        colour: colour_of(mass),
        diameter_mm: diameter_mm(mass),
        put_on,
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
