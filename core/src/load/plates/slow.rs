//! The slow way: every build there is for each load, and the cheapest way through them. It knows nothing of
//! prefixes: handling is what differs above the part two neighbours have in common.

use super::RampStep;
use crate::mass::Mass;
use crate::plan::{Builds, MAX_PLATES_A_SIDE};

/// Every way a side can weigh `side`, heavier plates inside.
fn stacks(builds: &Builds, side: Mass) -> Vec<Vec<Mass>> {
    fn grow(
        builds: &Builds,
        plate: usize,
        left: Mass,
        stack: &mut Vec<Mass>,
        found: &mut Vec<Vec<Mass>>,
    ) {
        if left == Mass::ZERO {
            found.push(stack.clone());
            return;
        }
        let Some(plates) = builds.pairs.get(plate) else { return };
        let long = stack.len();
        for more in 0..=plates.pairs.min(MAX_PLATES_A_SIDE - long) {
            let weighs = plates.mass * more as i64;
            if weighs > left {
                break;
            }
            stack.extend(std::iter::repeat_n(plates.mass, more));
            grow(builds, plate + 1, left - weighs, stack, found);
            stack.truncate(long);
        }
    }
    let mut found = Vec::new();
    grow(builds, 0, side, &mut Vec::new(), &mut found);
    found
}

/// What counts, in its order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Cost {
    /// Plates put on and taken off a side, all of them off at the end.
    pub(super) handled: u32,
    /// What they weigh.
    pub(super) mass: Mass,
    /// Plates on a side, added up over the sets.
    pub(super) plates: u32,
}

/// What builds cost, from a bar with plates `on`.
pub(super) fn cost(on: &[Mass], builds: &[Vec<Mass>]) -> Cost {
    let mut cost = Cost { handled: 0, mass: Mass::ZERO, plates: 0 };
    let mut before = on;
    for build in builds.iter().map(Vec::as_slice).chain([&[][..]]) {
        cost = with_change(cost, before, build);
        cost.plates += build.len() as u32;
        before = build;
    }
    cost
}

fn with_change(cost: Cost, before: &[Mass], build: &[Mass]) -> Cost {
    let alike = before.iter().zip(build).take_while(|(a, b)| a == b).count();
    let moved = || before[alike..].iter().chain(&build[alike..]).copied();
    let handled = cost.handled + moved().count() as u32;
    Cost { handled, mass: cost.mass + moved().sum(), ..cost }
}

/// The cost of the best of all ramps; nothing when there are too many to try. Every load can be built.
pub(super) fn slow(builds: &Builds, on: &[Mass], loads: &[Mass]) -> Option<Cost> {
    const MOST: usize = 1_000;
    let sides = loads.iter().map(|load| Mass { ten_ng: (*load - builds.empty).ten_ng / 2 });
    let mut reached = vec![(on.to_vec(), Cost { handled: 0, mass: Mass::ZERO, plates: 0 })];
    for side in sides {
        let choices = stacks(builds, side);
        if choices.len() > MOST {
            return None;
        }
        let best = |stack: Vec<Mass>| {
            let costs = reached.iter().map(|(old, cost)| with_change(*cost, old, &stack));
            let cost = costs.min()?;
            let plates = cost.plates + stack.len() as u32;
            Some((stack, Cost { plates, ..cost }))
        };
        reached = choices.into_iter().filter_map(best).collect();
    }
    reached.iter().map(|(stack, cost)| with_change(*cost, stack, &[])).min()
}

/// The builds of a ramp without their loads.
pub(super) fn sides(steps: &[RampStep]) -> Vec<Vec<Mass>> {
    steps.iter().map(|step| step.build.per_side.clone()).collect()
}
