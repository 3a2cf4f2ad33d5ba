//! What a bar can be loaded to with the room's plates.

use std::collections::BTreeMap;

use crate::mass::{Mass, MassUnit};
use crate::plan::{Bar, Bell, Kit};

/// Every load one bar (or a row of bells) can be built to, found once and looked up often.
#[derive(Clone, Debug)]
pub struct Rack {
    /// The bar's name; empty for bells.
    pub bar: String,
    /// The unit its parts are marked in.
    pub unit: MassUnit,
    builds: BTreeMap<Mass, Vec<Mass>>,
}

/// A load and the plates that make it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Build {
    /// The whole load: bar, collars and both sides.
    pub mass: Mass,
    /// The plates of one side, from the collar of the bar outwards, heaviest first.
    pub per_side: Vec<Mass>,
}

/// No hand loads more than this many plates a side.
const MAX_PLATES_A_SIDE: usize = 10;

impl Rack {
    /// Finds every load `bar` can be built to with plates marked in its unit, in pairs, each with
    /// the fewest plates a side.
    pub fn bar(kit: &Kit, bar: &Bar) -> Rack {
        let mut sides: BTreeMap<Mass, Vec<Mass>> = BTreeMap::from([(Mass::ZERO, Vec::new())]);
        let mut stacks: Vec<_> = kit.plates.iter().filter(|s| s.unit == bar.unit).collect();
        stacks.sort_by_key(|stack| std::cmp::Reverse(stack.mass));
        for stack in stacks {
            let pairs = (stack.count / 2) as usize;
            // A snapshot, so that each stack is used at most `pairs` times.
            let before: Vec<_> = sides.iter().map(|(sum, side)| (*sum, side.clone())).collect();
            for (sum, side) in before {
                let room = MAX_PLATES_A_SIDE.saturating_sub(side.len()).min(pairs);
                for used in 1..=room {
                    let mut longer = side.clone();
                    longer.extend(std::iter::repeat_n(stack.mass, used));
                    let sum = sum + stack.mass * used as i64;
                    let shorter = sides.get(&sum).is_none_or(|known| longer.len() < known.len());
                    if shorter {
                        sides.insert(sum, longer);
                    }
                }
            }
        }
        let empty = bar.mass + bar.collars;
        let builds = sides.into_iter().map(|(side, plates)| (empty + side * 2, plates)).collect();
        Rack { bar: bar.name.clone(), unit: bar.unit, builds }
    }

    /// The loads a row of bells offers, one bell a load.
    pub fn bells(bells: &[Bell], unit: MassUnit) -> Rack {
        let builds = bells.iter().map(|bell| (bell.mass, Vec::new())).collect();
        let marked = bells.first().map_or(unit, |bell| bell.unit);
        Rack { bar: String::new(), unit: marked, builds }
    }

    /// The exact build for `load`.
    pub fn exactly(&self, load: Mass) -> Option<Build> {
        let per_side = self.builds.get(&load)?.clone();
        Some(Build { mass: load, per_side })
    }

    /// The heaviest build of at most `load`.
    pub fn at_or_below(&self, load: Mass) -> Option<Build> {
        let (mass, side) = self.builds.range(..=load).next_back()?;
        Some(Build { mass: *mass, per_side: side.clone() })
    }

    /// The lightest build above `load`.
    pub fn above(&self, load: Mass) -> Option<Build> {
        let after = (std::ops::Bound::Excluded(load), std::ops::Bound::Unbounded);
        let (mass, side) = self.builds.range(after).next()?;
        Some(Build { mass: *mass, per_side: side.clone() })
    }

    /// True when nothing can be built at all.
    pub fn is_empty(&self) -> bool {
        self.builds.is_empty()
    }
}
