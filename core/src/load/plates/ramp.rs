//! The builds of a whole ramp with the least plate handling.

use super::bound::Bound;
use super::search::{Cut, Search};
use super::side::{HANDLED, Side};
use crate::mass::Mass;
use crate::plan::{Build, Builds};

/// The most loads of one ramp.
pub const MOST_LOADS: usize = 200;

/// How long the search may go on before it says that it proved nothing.
#[derive(Clone, Copy)]
pub(super) struct Limits {
    /// A larger table of bounds is not begun, in elementary steps.
    pub(super) work: usize,
    /// More plates and ends of their stays are not tried.
    pub(super) options: u32,
}

impl Limits {
    /// Together some tenths of a second at the most, on a laptop.
    pub(super) const DEFAULT: Limits = Limits { work: 30_000_000, options: 10_000_000 };
}

/// A ramp built, load by load.
///
/// Handling is counted on one side: the other side is handled alike. The bar starts empty, so
/// putting on the first build counts; the last build stays on, so taking it off does not. Only the
/// outermost plates can come off.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ramp {
    /// One for each load, in order.
    pub steps: Vec<RampStep>,
    /// Plates put on or taken off a side over the whole ramp.
    pub handled: u32,
    /// Whether that is proved to be the least.
    pub proof: Proof,
}

/// One load of a ramp, and what is done for it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RampStep {
    /// The load and the plates of a side, from the inside outwards. Not sorted: a light plate that
    /// stays on may lie inside a heavy one.
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
    /// No builds of these loads need less. Of those that need as little, these have the fewest
    /// plates on the bar, added up over the sets; and of those, going through the sets and from
    /// the collar outwards, the heavier plate, and of two alike the one that stays on for longer.
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
/// The optimum is exact: an interval recursion over the steps, see the module's sources. Its time
/// is bounded; where the bound cuts it short, [`Ramp::proof`] says so.
///
/// # Errors
/// [`RampError`] when a load cannot be built exactly, or there are more than [`MOST_LOADS`].
pub fn ramp(builds: &Builds, loads: &[Mass]) -> Result<Ramp, RampError> {
    ramp_within(builds, loads, Limits::DEFAULT)
}

/// The same within other limits.
pub(super) fn ramp_within(
    builds: &Builds,
    loads: &[Mass],
    limits: Limits,
) -> Result<Ramp, RampError> {
    if loads.len() > MOST_LOADS {
        return Err(RampError::TooMany { found: loads.len() });
    }
    let mut alone = Vec::with_capacity(loads.len());
    for (index, load) in loads.iter().copied().enumerate() {
        alone.push(builds.exactly(load).ok_or_else(|| RampError::Unbuildable {
            index,
            load,
            below: builds.at_or_below(load),
            above: builds.above(load),
        })?);
    }
    if builds.pairs.is_empty() {
        // Bells, or a bar without plates.
        return Ok(in_turn(alone, Proof::Least));
    }
    let side = Side::new(builds, loads);
    let fewest = alone.iter().map(|build| build.per_side.len()).max().unwrap_or(0) as u32;
    if Bound::work(&side) > limits.work {
        return Ok(in_turn(alone, Proof::NotLess { than: fewest }));
    }
    let bound = Bound::new(&side);
    match Search::new(&side, &bound, limits.options).best() {
        Ok(steps) => {
            let steps = steps.iter().zip(&side.sets);
            let sides = steps.flat_map(|(build, sets)| std::iter::repeat_n(build, *sets));
            let builds = loads.iter().zip(sides).map(|(load, build)| Build {
                mass: *load,
                per_side: build.iter().map(|plate| side.masses[*plate]).collect(),
            });
            Ok(in_turn(builds.collect(), Proof::Least))
        }
        Err(Cut { not_less }) => {
            let than = fewest.max((not_less / HANDLED) as u32);
            Ok(in_turn(alone, Proof::NotLess { than }))
        }
    }
}

/// What is done for each build after the one before it.
fn in_turn(builds: Vec<Build>, proof: Proof) -> Ramp {
    let mut steps: Vec<RampStep> = Vec::with_capacity(builds.len());
    for build in builds {
        let before = steps.last().map_or(&[][..], |step| &step.build.per_side);
        let alike = before.iter().zip(&build.per_side).take_while(|(a, b)| a == b).count();
        let off = before[alike..].iter().rev().copied().collect();
        let on = build.per_side[alike..].to_vec();
        steps.push(RampStep { build, off, on });
    }
    let handled = steps.iter().map(RampStep::handled).sum();
    Ramp { steps, handled, proof }
}
