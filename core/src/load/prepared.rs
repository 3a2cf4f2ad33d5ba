//! A block with everything its room can build worked out once.

use std::ops::Deref;
use std::sync::{Arc, Mutex, PoisonError};

use super::{Ramp, WarmUpFor, WarmUpRule, WarmUpSet, ramp_from, ramp_with_warm_up, warm_up};
use crate::mass::{Mass, MassUnit};
use crate::plan::{Block, Builds, Exercise, Lifted};

/// A block and the racks of its room. Working out a builds takes longer than a durable commit, and
/// every tap looks one up.
#[derive(Debug)]
pub struct Prepared {
    block: Block,
    /// The latest ramps asked for, by bar and loads: every tap asks for the same again.
    ramps: Mutex<Vec<(Ask, WayUp)>>,
    in_kg: Builds,
    in_lb: Builds,
    bells: Builds,
    nothing: Builds,
}

impl Prepared {
    /// Works out what the block's room can build.
    pub fn new(block: Block) -> Prepared {
        let bar = |unit| match block.kit.bar_for(unit) {
            Some(bar) => Builds::bar(&block.kit, bar),
            None => Builds::bells(&[], unit),
        };
        Prepared {
            in_kg: bar(MassUnit::Kg),
            in_lb: bar(MassUnit::Lb),
            bells: Builds::bells(&block.kit.bells, MassUnit::Kg),
            nothing: Builds::bells(&[], MassUnit::Kg),
            ramps: Mutex::default(),
            block,
        }
    }

    /// What carries the load of a movement, or an option of one, with a bar marked in
    /// the unit the athlete prefers where there is one. Nothing carries body mass.
    pub fn builds(&self, exercise: &Exercise, unit: MassUnit) -> &Builds {
        let lifted = self.block.lifted_in(exercise);
        let lifted =
            lifted.map(|(movement, option)| option.map_or(movement.lifted, |option| option.lifted));
        match (lifted.unwrap_or(Lifted::Body), unit) {
            (Lifted::Bar, MassUnit::Kg) => &self.in_kg,
            (Lifted::Bar, MassUnit::Lb) => &self.in_lb,
            (Lifted::Bell, _) => &self.bells,
            (Lifted::Body, _) => &self.nothing,
        }
    }
}

/// A ramp asked for.
#[derive(Debug, PartialEq, Eq)]
struct Ask {
    /// The bar's unit, or that of the bells.
    unit: MassUnit,
    bells: bool,
    /// Plates on a side already.
    on: Vec<Mass>,
    /// None without a warm-up.
    lift: Option<WarmUpFor>,
    loads: Vec<Mass>,
}

/// A warm-up, and a ramp through it and the loads after it.
#[derive(Clone, Debug, Default)]
pub struct WayUp {
    /// The warm-up sets.
    pub warm_up: Arc<[WarmUpSet]>,
    /// One step for each warm-up set and each load; none for a row of bells, and where one of the loads cannot be
    /// built.
    pub ramp: Option<Arc<Ramp>>,
}

/// So many ramps are remembered: a long day has fewer strength pieces.
const MOST_RAMPS: usize = 16;

impl Prepared {
    /// The builds of loads in this order with the least plate handling, on a bar with plates `on` a side
    /// already; none for a row of bells, and where one of the loads cannot be built.
    pub fn ramp(&self, builds: &Builds, on: &[Mass], loads: &[Mass]) -> Option<Arc<Ramp>> {
        if builds.bar.is_empty() {
            return None;
        }
        let make = || {
            let ramp = ramp_from(builds, on, loads).ok().map(Arc::new);
            WayUp { warm_up: Arc::default(), ramp }
        };
        self.known(builds, on, None, loads, make).ramp
    }

    /// The warm-up for the first of some loads, and the same from an empty bar with it in front.
    pub fn way_up(&self, builds: &Builds, lift: WarmUpFor, loads: &[Mass]) -> WayUp {
        let Some(first) = loads.first() else { return WayUp::default() };
        let make = || {
            let sets = warm_up(builds, *first, lift, WarmUpRule::usual(builds.unit));
            let ramp = (!builds.bar.is_empty())
                .then(|| ramp_with_warm_up(builds, &sets, loads).ok().map(Arc::new));
            WayUp { warm_up: sets.into(), ramp: ramp.flatten() }
        };
        self.known(builds, &[], Some(lift), loads, make)
    }

    fn known(
        &self,
        builds: &Builds,
        on: &[Mass],
        lift: Option<WarmUpFor>,
        loads: &[Mass],
        make: impl FnOnce() -> WayUp,
    ) -> WayUp {
        let (unit, bells) = (builds.unit, builds.bar.is_empty());
        let mut known = self.ramps.lock().unwrap_or_else(PoisonError::into_inner);
        let same = |(ask, _): &&(Ask, WayUp)| {
            ask.unit == unit
                && ask.bells == bells
                && ask.on == on
                && ask.lift == lift
                && ask.loads == loads
        };
        if let Some((_, found)) = known.iter().find(same) {
            return found.clone();
        }
        let found = make();
        if known.len() == MOST_RAMPS {
            known.remove(0);
        }
        let (on, loads) = (on.to_vec(), loads.to_vec());
        known.push((Ask { unit, bells, on, lift, loads }, found.clone()));
        found
    }

    /// The load a station gives for an exercise: an option carried by something else than its movement
    /// (body mass for a bell) does not take the movement's load.
    pub fn station_load(&self, exercise: &Exercise, load: Option<Mass>) -> Option<Mass> {
        let same = match self.block.lifted_in(exercise) {
            Some((movement, Some(option))) => option.lifted == movement.lifted,
            _ => true,
        };
        load.filter(|_| same)
    }
}

impl Deref for Prepared {
    type Target = Block;

    fn deref(&self) -> &Block {
        &self.block
    }
}
