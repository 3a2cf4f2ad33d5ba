//! What goes on the bar of a strength piece, set by set.

use super::screen::{LoadView, WarmUpView};
use crate::journal::Lift;
use crate::load::{NextLoad, Prepared, Rack, Ramp, RampStep, WarmUpSet, warm_up};
use crate::mass::{Mass, MassUnit};
use crate::words;

/// A piece's warm-up and the steps of its ramp.
pub(crate) struct OnTheBar<'a> {
    rack: &'a Rack,
    unit: MassUnit,
    warm_up: Vec<WarmUpSet>,
    /// One for each warm-up set, then one for each set that has a load.
    steps: Option<Ramp>,
    loads: &'a [NextLoad],
    fresh: bool,
}

impl<'a> OnTheBar<'a> {
    /// Works out the ramp, as long as everything done of the piece went by it. Otherwise nobody knows
    /// which plates are on the bar: then each load is built as it would be alone, and no change is
    /// named.
    pub(crate) fn new(
        block: &Prepared,
        rack: &'a Rack,
        loads: &'a [NextLoad],
        unit: MassUnit,
        done: &[&Lift],
    ) -> OnTheBar<'a> {
        let fresh = done.is_empty();

        let work = loads.iter().filter_map(|next| next.load);
        let first = work.clone().next().filter(|_| !rack.bar.is_empty());
        let warm_up = first.map_or(Vec::new(), |first| warm_up(rack, first));
        let whole: Vec<Mass> = warm_up.iter().map(|set| set.load).chain(work).collect();
        let steps = by_the_ramp(loads, done).then(|| block.ramp(rack, &whole)).flatten();
        OnTheBar { rack, unit, warm_up, steps, loads, fresh }
    }

    /// The warm-up sets, while no set is done. They stay in the ramp afterwards: what they left on the
    /// bar is what the next set starts from.
    pub(crate) fn warm_up(&self) -> Vec<WarmUpView> {
        let view = |(index, set): (usize, &WarmUpSet)| WarmUpView {
            reps: set.reps,
            load: self.view(set.load, index),
        };
        let shown = self.warm_up.iter().enumerate().filter(|_| self.fresh);
        shown.map(view).collect()
    }

    /// The load of a set counted from 1.
    pub(crate) fn load(&self, set: u32) -> Option<LoadView> {
        let load = self.loads.iter().find(|next| next.set == set)?.load?;
        let before = self.loads.iter().filter(|next| next.set < set && next.load.is_some()).count();
        Some(self.view(load, self.warm_up.len() + before))
    }

    fn view(&self, load: Mass, index: usize) -> LoadView {
        let text = words::load_text(load, self.unit);
        let step = self.steps.as_ref().and_then(|ramp| ramp.steps.get(index));
        // Without a ramp, as where one load cannot be built: each load as it would be alone.
        let per_side = match step {
            Some(RampStep { build, .. }) => Some(build.per_side.clone()),
            None => self.rack.exactly(load).map(|build| build.per_side),
        };
        let unit = self.rack.unit;
        let on_a_bar = per_side.as_ref().filter(|_| !self.rack.bar.is_empty());
        LoadView {
            mass: load,
            text,
            build: on_a_bar.map_or(String::new(), |side| words::plates_text(side, unit)),
            change: step.map_or(String::new(), |step| words::change_text(step, unit)),
            per_side: per_side.unwrap_or_default(),
        }
    }
}

/// True while the sets done were lifted as proposed and what was proposed still is. A first time is never
/// like that: its first load is the athlete's own.
fn by_the_ramp(loads: &[NextLoad], done: &[&Lift]) -> bool {
    done.iter().all(|lift| {
        let next = loads.iter().find(|next| next.set == lift.set);
        lift.load == lift.planned && next.is_some_and(|next| next.load == lift.planned)
    })
}
