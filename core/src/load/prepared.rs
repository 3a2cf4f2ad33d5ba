//! A block with everything its room can build worked out once.

use std::ops::Deref;
use std::sync::{Arc, Mutex, PoisonError};

use super::{Ramp, WarmUpFor, WarmUpSet, ramp_from, ramp_with_warm_up, warm_up};
use crate::mass::{Mass, MassUnit};
use crate::plan::{Block, Builds, Exercise, Rack, Strength};

/// A block and the rack of its room. Working out a builds takes longer than a durable commit, and
/// every tap looks one up.
#[derive(Debug)]
pub struct Prepared {
    block: Block,
    /// The latest ramps asked for, by bar and loads: every tap asks for the same again.
    ramps: Mutex<Vec<(Ask, WayUp)>>,
    rack: Rack,
}

impl Prepared {
    /// Works out what the block's room can build.
    pub fn new(block: Block) -> Prepared {
        let rack = Rack::new(&block);
        // Those of most sessions, so that no tap waits for them.
        for unit in [MassUnit::Kg, MassUnit::Lb] {
            if let Some(bar) = block.kit.bar_for(unit) {
                rack.bar(&block, &bar.name);
            }
        }
        Prepared { rack, ramps: Mutex::default(), block }
    }

    /// What carries the load of a movement, or an option of one, whatever the piece: the bar is the one
    /// that the option or the movement names, otherwise one marked in the unit the athlete prefers where
    /// there is one. Nothing carries body mass.
    pub fn builds(&self, exercise: &Exercise, unit: MassUnit) -> &Builds {
        self.rack.builds(&self.block, None, exercise, unit)
    }

    /// [`Prepared::builds`] in a piece, whose bar goes before all others but the one that the athlete takes.
    pub fn builds_for(
        &self,
        piece: &Strength,
        exercise: &Exercise,
        unit: MassUnit,
        taken: Option<&str>,
    ) -> &Builds {
        let planned = self.rack.builds(&self.block, Some(piece), exercise, unit);
        let taken = taken.filter(|_| planned.has_plates());
        taken.and_then(|bar| self.on_bar(bar)).unwrap_or(planned)
    }

    /// What a bar of the kit can be built to.
    pub fn on_bar(&self, name: &str) -> Option<&Builds> {
        self.rack.bar(&self.block, name)
    }
}

/// A ramp asked for.
#[derive(Debug, PartialEq, Eq)]
struct Ask {
    /// The bar's name.
    bar: String,
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
    /// One step for each warm-up set and each load; none for what has no plates, and where one of the loads cannot be
    /// built.
    pub ramp: Option<Arc<Ramp>>,
}

/// So many ramps are remembered: a long day has fewer strength pieces.
const MOST_RAMPS: usize = 16;

impl Prepared {
    /// The builds of loads in this order with the least plate handling, on a bar with plates `on` a side
    /// already; none for what has no plates, and where one of the loads cannot be built.
    pub fn ramp(&self, builds: &Builds, on: &[Mass], loads: &[Mass]) -> Option<Arc<Ramp>> {
        if !builds.has_plates() {
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
            let sets = warm_up(builds, *first, lift, self.block.kit.warm_up_rule(builds.unit));
            let ramp = builds
                .has_plates()
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
        if !builds.has_plates() {
            return make();
        }
        let mut known = self.ramps.lock().unwrap_or_else(PoisonError::into_inner);
        let same = |(ask, _): &&(Ask, WayUp)| {
            ask.bar == builds.bar && ask.on == on && ask.lift == lift && ask.loads == loads
        };
        if let Some((_, found)) = known.iter().find(same) {
            return found.clone();
        }
        let found = make();
        if known.len() == MOST_RAMPS {
            known.remove(0);
        }
        let (bar, on, loads) = (builds.bar.clone(), on.to_vec(), loads.to_vec());
        known.push((Ask { bar, on, lift, loads }, found.clone()));
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixtures::kg;
    use crate::plan::{PieceKind, read_plan};

    const EVERY_KIND: &[u8] = include_bytes!("../../../bindings/fixtures/every-kind.toml");

    /// 40 kg is 10 a side on the bar of 20 kg, and 10 + 2.5 on that of 15 kg: one ramp is not taken for
    /// the other, whichever was asked for first.
    #[test]
    fn each_bar_has_its_own_ramps() {
        let block = Prepared::new(read_plan(EVERY_KIND).unwrap());
        let (squat, press) = (Exercise::of("squat"), Exercise::of("press"));
        let PieceKind::Strength(light) = &block.days[0].piece("Light squat").unwrap().kind else {
            panic!()
        };
        let long = block.builds(&squat, MassUnit::Kg);
        let short = block.builds(&press, MassUnit::Kg);
        assert_eq!(block.builds_for(light, &squat, MassUnit::Lb, None).bar, "short bar");
        let own = block.builds_for(light, &squat, MassUnit::Lb, Some("pound bar"));
        assert_eq!(own.bar, "pound bar");
        assert_eq!(block.on_bar("short bar").unwrap().bar, short.bar);
        assert!(block.on_bar("no bar").is_none());
        let side = |builds| {
            let ramp = block.ramp(builds, &[], &[kg("40")]).unwrap();
            ramp.steps[0].build.per_side.clone()
        };
        for _ in 0..2 {
            assert_eq!(side(long), [kg("10")]);
            assert_eq!(side(short), [kg("10"), kg("2.5")]);
        }
        let walk = block.builds(&Exercise::of("farmer-walk"), MassUnit::Kg);
        assert_eq!(block.ramp(walk, &[], &[kg("12")]), None, "nothing is put on a bell");
    }
}
