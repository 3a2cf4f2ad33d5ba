//! The builds of a whole ramp with the least plate handling.

use super::search::{TooMany, best};
use super::side::{Fewest, Side, Step};
use super::warm_up::WarmUpSet;
use crate::mass::Mass;
use crate::plan::{Build, Builds};

/// The most loads of one ramp.
pub const MOST_LOADS: usize = 200;

/// More beginnings of builds are not looked at before the search says that it proved nothing: some tenths of
/// a second at the most, on a laptop.
pub(super) const MOST_LOOKED_AT: usize = 3_000_000;

/// A ramp built, load by load.
///
/// Plates lie heaviest inside and lighter outwards, as lifters and federations load them. Handling is counted
/// on one side: the other side is handled alike. Putting on the first build counts, and so does taking off the
/// last: whoever lifts next finds an empty bar. Only the outermost plates can come off.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ramp {
    /// One for each warm-up set and each load, in order.
    pub steps: Vec<RampStep>,
    /// Plates put on or taken off a side over the whole ramp, until the bar is empty again.
    pub handled: u32,
    /// The same were each load built on its own, with the fewest plates; warm-up sets with the loads nearest to
    /// the planned ones.
    pub alone: u32,
    /// Whether that is proved to be the least.
    pub proof: Proof,
}

/// One load of a ramp, and what is done for it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RampStep {
    /// The load and the plates of a side, from the inside outwards.
    pub build: Build,
    /// Plates that come off a side first, the outermost first.
    pub off: Vec<Mass>,
    /// Plates that then go on a side, in this order.
    pub on: Vec<Mass>,
}

impl RampStep {
    /// Plates put on or taken off a side for this load.
    pub fn handled(&self) -> u32 {
        (self.off.len() + self.on.len()) as u32
    }
}

/// What is known about the handling of a ramp.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Proof {
    /// No builds of these loads need less. Of those that need as little, these have the warm-up loads that are
    /// the least away from the planned ones, added up; of those they move the least mass, and of those they have
    /// the fewest plates on the bar, added up over the sets.
    Least,
    /// The search was given up, because the kit or the ramp is too rich: each load has the build it
    /// would have alone, and perhaps less handling would do.
    NotLess {
        /// No builds of these loads need less than this.
        than: u32,
    },
}

/// Why a ramp cannot be built.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum RampError {
    /// The room cannot build one of the loads.
    #[error("{load} cannot be built")]
    Unbuildable {
        /// Which load, counted from 0.
        index: usize,
        /// The load.
        load: Mass,
        /// The next lighter build, where there is one.
        below: Option<Build>,
        /// The next heavier build, where there is one.
        above: Option<Build>,
    },
    /// More than [`MOST_LOADS`] loads.
    #[error("{found} loads, and {MOST_LOADS} is the most")]
    TooMany {
        /// How many.
        found: usize,
    },
}

/// Finds the builds of `loads`, in this order on one bar, that need the least plate handling: see
/// [`Ramp`] for what counts and [`Proof`] for ties. A row of bells has no plates to handle.
///
/// The optimum is exact: a shortest path through the builds of each step, see the module's sources. Its time
/// is bounded; where the bound cuts it short, [`Ramp::proof`] says so.
///
/// # Errors
/// [`RampError`] when a load cannot be built exactly, or there are more than [`MOST_LOADS`].
pub fn ramp(builds: &Builds, loads: &[Mass]) -> Result<Ramp, RampError> {
    ramp_from(builds, &[], loads)
}

/// The same with plates on a side already, in the order they went on: what cannot stay comes off first.
///
/// # Errors
/// As [`ramp`].
pub fn ramp_from(builds: &Builds, on: &[Mass], loads: &[Mass]) -> Result<Ramp, RampError> {
    ramp_within(builds, on, &[], loads, MOST_LOOKED_AT)
}

/// The same from an empty bar with warm-up sets before the loads, whose own loads are chosen among those they may
/// have. The loads after them never move.
///
/// # Errors
/// As [`ramp`]; the warm-up sets count as loads.
pub fn ramp_with_warm_up(
    builds: &Builds,
    warm_up: &[WarmUpSet],
    loads: &[Mass],
) -> Result<Ramp, RampError> {
    ramp_within(builds, &[], warm_up, loads, MOST_LOOKED_AT)
}

/// The same within another limit.
pub(super) fn ramp_within(
    builds: &Builds,
    on: &[Mass],
    warm_up: &[WarmUpSet],
    loads: &[Mass],
    most: usize,
) -> Result<Ramp, RampError> {
    let found = warm_up.len() + loads.len();
    if found > MOST_LOADS {
        return Err(RampError::TooMany { found });
    }
    let mut alone = Vec::with_capacity(found);
    let nearest = warm_up.iter().map(WarmUpSet::nearest);
    for (index, load) in nearest.chain(loads.iter().copied()).enumerate() {
        alone.push(builds.exactly(load).ok_or_else(|| RampError::Unbuildable {
            index,
            load,
            below: builds.at_or_below(load),
            above: builds.above(load),
        })?);
    }
    if builds.pairs.is_empty() {
        // Bells, or a bar without plates.
        return Ok(in_turn(on, alone, Proof::Least));
    }
    let side = Side::new(builds, on, warm_up, loads);
    let build = |places: &[usize]| {
        let per_side: Vec<Mass> = places.iter().map(|plate| side.masses[*plate]).collect();
        Build { mass: builds.empty + per_side.iter().copied().sum::<Mass>() * 2, per_side }
    };
    for ((set, step), alone) in warm_up.iter().zip(&side.steps).zip(&mut alone) {
        // Not every build of the load will do.
        let nearest = step.wanted.iter().min_by_key(|(_, away)| *away);
        let nearest: Vec<(usize, u64)> = nearest.copied().into_iter().collect();
        if set.smallest_plate() > Mass::ZERO {
            *alone = build(&side.build(&side.fewest(&nearest, step.plates), step.plates));
        }
    }
    let table = |step: &Step| side.fewest(&step.wanted, step.plates);
    let tables: Vec<Fewest> = side.steps.iter().map(table).collect();
    let known = side.steps.iter().zip(&tables);
    let known: Vec<Vec<usize>> =
        known.map(|(step, fewest)| side.build(fewest, step.plates)).collect();
    match best(&side, &side.places(on), &tables, &known, most) {
        Ok(steps) => {
            let steps = steps.iter().zip(&side.steps);
            let sides = steps.flat_map(|(build, step)| {
                std::iter::repeat_n(build.as_slice(), step.sets as usize)
            });
            let least = in_turn(on, sides.map(build).collect(), Proof::Least);
            Ok(Ramp { alone: in_turn(on, alone, Proof::Least).handled, ..least })
        }
        Err(TooMany) => {
            // Whatever goes on comes off again.
            let fewest = known.iter().map(Vec::len).max().unwrap_or(0);
            let than = (fewest * 2).saturating_sub(on.len()) as u32;
            Ok(in_turn(on, alone, Proof::NotLess { than }))
        }
    }
}

/// What is done for each build after the one before it.
fn in_turn(on: &[Mass], builds: Vec<Build>, proof: Proof) -> Ramp {
    let mut steps: Vec<RampStep> = Vec::with_capacity(builds.len());
    for build in builds {
        let before = steps.last().map_or(on, |step| &step.build.per_side);
        let alike = before.iter().zip(&build.per_side).take_while(|(a, b)| a == b).count();
        let off = before[alike..].iter().rev().copied().collect();
        let on = build.per_side[alike..].to_vec();
        steps.push(RampStep { build, off, on });
    }
    let left = steps.last().map_or(on, |step| &step.build.per_side).len() as u32;
    let handled = steps.iter().map(RampStep::handled).sum::<u32>() + left;
    Ramp { steps, handled, alone: handled, proof }
}
