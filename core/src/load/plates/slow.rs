//! The slow way: every order of plates there is for each load, and the cheapest way through them.
//! It knows nothing of stays or intervals: handling is what differs above the part two neighbours
//! have in common.

use super::RampStep;
use crate::mass::Mass;
use crate::plan::{Builds, MAX_PLATES_A_SIDE};

/// Every order in which a side can weigh `side`, heavier plates inside first.
fn stacks(builds: &Builds, side: Mass) -> Vec<Vec<Mass>> {
    fn grow(builds: &Builds, left: Mass, stack: &mut Vec<Mass>, found: &mut Vec<Vec<Mass>>) {
        if left == Mass::ZERO {
            found.push(stack.clone());
            return;
        }
        for plates in &builds.pairs {
            let used = stack.iter().filter(|plate| **plate == plates.mass).count();
            let room = stack.len() < MAX_PLATES_A_SIDE && used < plates.pairs;
            if room && plates.mass <= left {
                stack.push(plates.mass);
                grow(builds, left - plates.mass, stack, found);
                stack.pop();
            }
        }
    }
    let mut found = Vec::new();
    grow(builds, side, &mut Vec::new(), &mut found);
    found
}

/// Handling and plates on the bar of the best ramp, and how many ramps share them.
pub(super) struct Slow {
    /// Plates put on and taken off a side.
    pub(super) handled: u32,
    /// Plates on a side, added up over the sets.
    pub(super) plates: u32,
    /// The builds of every ramp that is as good, while they are few.
    pub(super) all: Vec<Vec<Vec<Mass>>>,
}

/// The best of all ramps; nothing when there are too many to try. Every load can be built.
pub(super) fn slow(builds: &Builds, loads: &[Mass]) -> Option<Slow> {
    const MOST: usize = 400;
    let sides = loads.iter().map(|load| Mass { ten_ng: (*load - builds.empty).ten_ng / 2 });
    let choices: Vec<Vec<Vec<Mass>>> = sides.map(|side| stacks(builds, side)).collect();
    if choices.iter().any(|choices| choices.len() > MOST) {
        return None;
    }
    // For each choice of the last load: its price, and the choices before it that lead there.
    type Reached = ((u32, u32), Vec<usize>);
    let mut reached: Vec<Vec<Reached>> = Vec::new();
    for (at, choices_here) in choices.iter().enumerate() {
        let mut here = Vec::new();
        for stack in choices_here {
            let len = stack.len() as u32;
            let Some(before) = at.checked_sub(1) else {
                here.push(((len, len), Vec::new()));
                continue;
            };
            let mut best = ((u32::MAX, u32::MAX), Vec::new());
            for (from, old) in choices[before].iter().enumerate() {
                let alike = old.iter().zip(stack).take_while(|(a, b)| a == b).count();
                let moved = (old.len() + stack.len() - 2 * alike) as u32;
                let (handled, plates) = reached[before][from].0;
                let price = (handled + moved, plates + len);
                if price < best.0 {
                    best = (price, vec![from]);
                } else if price == best.0 {
                    best.1.push(from);
                }
            }
            here.push(best);
        }
        reached.push(here);
    }
    let last = reached.last()?;
    let (handled, plates) = last.iter().map(|found| found.0).min()?;
    let mut all = Vec::new();
    let ends = (0..last.len()).filter(|end| last[*end].0 == (handled, plates));
    let mut open: Vec<Vec<usize>> = ends.map(|end| vec![end]).collect();
    while let Some(way) = open.pop() {
        if all.len() + open.len() > 20_000 {
            return None;
        }
        let at = loads.len() - way.len();
        if at == 0 {
            let builds = way.iter().rev().enumerate();
            all.push(builds.map(|(at, choice)| choices[at][*choice].clone()).collect());
            continue;
        }
        for from in &reached[at][*way.last()?].1 {
            open.push(way.iter().chain([from]).copied().collect());
        }
    }
    Some(Slow { handled, plates, all })
}

/// What the third rule compares: every plate in the order it goes on, and the last set it is on.
pub(super) fn stays(builds: &[Vec<Mass>]) -> Vec<(Mass, usize)> {
    let mut stays = Vec::new();
    let mut before: &[Mass] = &[];
    for (set, build) in builds.iter().enumerate() {
        let alike = before.iter().zip(build).take_while(|(a, b)| a == b).count();
        for at in alike..build.len() {
            let stays_on = |later: &&Vec<Mass>| later.get(..=at) == Some(&build[..=at]);
            let more = builds[set + 1..].iter().take_while(stays_on).count();
            stays.push((build[at], set + more));
        }
        before = build;
    }
    stays
}

/// The builds of a ramp without their loads.
pub(super) fn sides(steps: &[RampStep]) -> Vec<Vec<Mass>> {
    steps.iter().map(|step| step.build.per_side.clone()).collect()
}
