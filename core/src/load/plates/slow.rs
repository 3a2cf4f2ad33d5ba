//! The slow way: every build there is for each load, and the cheapest way through them. It knows nothing of
//! prefixes: handling is what differs above the part two neighbours have in common.

use super::{RampStep, WarmUpSet};
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
    /// How far the warm-up loads are from the planned ones, in 10 ng.
    pub(super) away: u64,
    /// What they weigh.
    pub(super) mass: Mass,
    /// Plates on a side, added up over the sets.
    pub(super) plates: u32,
}

impl Cost {
    const NOTHING: Cost = Cost { handled: 0, away: 0, mass: Mass::ZERO, plates: 0 };
}

/// What builds cost, from a bar with plates `on`; the first are those of the warm-up.
pub(super) fn cost(
    builds: &Builds,
    on: &[Mass],
    warm_up: &[WarmUpSet],
    sides: &[Vec<Mass>],
) -> Cost {
    let mut cost = Cost::NOTHING;
    let mut before = on;
    for build in sides.iter().map(Vec::as_slice).chain([&[][..]]) {
        cost = with_change(cost, before, build);
        cost.plates += build.len() as u32;
        before = build;
    }
    for (set, side) in warm_up.iter().zip(sides) {
        let load = builds.empty + side.iter().copied().sum::<Mass>() * 2;
        cost.away += load.ten_ng.abs_diff(set.planned.ten_ng);
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
pub(super) fn slow(
    builds: &Builds,
    on: &[Mass],
    warm_up: &[WarmUpSet],
    loads: &[Mass],
) -> Option<Cost> {
    const MOST: usize = 1_000;
    let side = |load: &Mass| Mass { ten_ng: (*load - builds.empty).ten_ng / 2 };
    let of_set = |set: &WarmUpSet| {
        let stacks = set.loads().iter().flat_map(|load| {
            let away = load.ten_ng.abs_diff(set.planned.ten_ng);
            stacks(builds, side(load)).into_iter().map(move |stack| (stack, away))
        });
        let smallest = set.smallest_plate();
        stacks.filter(|(stack, _)| stack.iter().all(|plate| *plate >= smallest)).collect()
    };
    let of_load = |load: &Mass| stacks(builds, side(load)).into_iter().map(|stack| (stack, 0));
    let floats: Vec<Vec<(Vec<Mass>, u64)>> = warm_up.iter().map(of_set).collect();
    let fixed = loads.iter().map(|load| of_load(load).collect());
    let mut reached = vec![(on.to_vec(), Cost::NOTHING)];
    for choices in floats.into_iter().chain(fixed) {
        if choices.len() > MOST {
            return None;
        }
        let best = |(stack, away): (Vec<Mass>, u64)| {
            let costs = reached.iter().map(|(old, cost)| with_change(*cost, old, &stack));
            let cost = costs.min()?;
            let (plates, away) = (cost.plates + stack.len() as u32, cost.away + away);
            Some((stack, Cost { plates, away, ..cost }))
        };
        reached = choices.into_iter().filter_map(best).collect();
    }
    reached.iter().map(|(stack, cost)| with_change(*cost, stack, &[])).min()
}

/// The builds of a ramp without their loads.
pub(super) fn sides(steps: &[RampStep]) -> Vec<Vec<Mass>> {
    steps.iter().map(|step| step.build.per_side.clone()).collect()
}
