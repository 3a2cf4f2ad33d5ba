//! One side of the bar over a ramp, in whole numbers: what it must weigh set by set, and the plates
//! there are for it. Both sides are always alike, so one is enough.

use super::warm_up::WarmUpSet;
use crate::mass::Mass;
use crate::plan::{Builds, MAX_PLATES_A_SIDE};

/// More plates than a side takes: what cannot be. Twice as many still fit the number.
const NEVER: u8 = u8::MAX / 2;

/// A side and what it must weigh.
pub(super) struct Side {
    /// What one plate of each denomination weighs, heaviest first.
    pub(super) masses: Vec<Mass>,
    /// How many of each can be on the side at once.
    pub(super) most: Vec<u8>,
    /// What it is built to, in turn.
    pub(super) steps: Vec<Step>,
    /// Everything the side can weigh on the way to one of the wanted masses: how many there are.
    pub(super) sums: usize,
    /// Where a sum leads with one plate more; `sums` where that leads nowhere. A row of denominations for
    /// each sum.
    next: Vec<u32>,
}

/// What the side may weigh for a set, or for sets of one load in a row: changing plates between those never
/// helps.
pub(super) struct Step {
    /// Places among the sums, rising, each with how far its load is from the planned one, in 10 ng.
    pub(super) wanted: Vec<(usize, u64)>,
    /// It is built with the first so many denominations.
    pub(super) plates: usize,
    /// How many sets it stands for.
    pub(super) sets: u32,
}

impl Step {
    /// How far a sum is from the planned load, where it is wanted.
    pub(super) fn away(&self, sum: usize) -> Option<u64> {
        let place = self.wanted.binary_search_by_key(&sum, |(sum, _)| *sum).ok()?;
        self.wanted.get(place).map(|(_, away)| *away)
    }
}

impl Side {
    /// The side of a bar with plates `on` that is loaded for each warm-up set and then to `loads` in turn, all of
    /// which `builds` can build.
    pub(super) fn new(builds: &Builds, on: &[Mass], warm_up: &[WarmUpSet], loads: &[Mass]) -> Side {
        // A load that can be built is an even number of units above the empty bar.
        let side = |load: Mass| Mass { ten_ng: (load - builds.empty).ten_ng / 2 };
        let equal = loads.chunk_by(|one, other| one == other);
        let fixed: Vec<(Mass, u32)> =
            equal.filter_map(|sets| Some((side(*sets.first()?), sets.len() as u32))).collect();
        let may_be = warm_up.iter().flat_map(|set| set.loads()).map(|load| side(*load));
        let mut wanted: Vec<Mass> = may_be.chain(fixed.iter().map(|(side, _)| *side)).collect();
        wanted.sort_unstable();
        wanted.dedup();
        let heaviest = wanted.last().copied().unwrap_or_default();
        let plates = || {
            builds.pairs.iter().filter(|stack| stack.mass <= heaviest || on.contains(&stack.mass))
        };
        let masses: Vec<Mass> = plates().map(|stack| stack.mass).collect();
        let sums = on_the_way(&builds.sides_up_to(heaviest).collect::<Vec<Mass>>(), &wanted);
        let floats = warm_up.iter().map(|set| Step {
            wanted: set
                .loads()
                .iter()
                .filter_map(|load| Some((sums.binary_search(&side(*load)).ok()?, set.away(*load))))
                .collect(),
            plates: masses.iter().filter(|mass| **mass >= set.smallest_plate()).count(),
            sets: 1,
        });
        let fixed = fixed.iter().map(|(side, sets)| Step {
            wanted: sums.binary_search(side).map(|sum| (sum, 0)).into_iter().collect(),
            plates: masses.len(),
            sets: *sets,
        });
        Side {
            most: plates().map(|stack| stack.pairs.min(MAX_PLATES_A_SIDE) as u8).collect(),
            steps: floats.chain(fixed).collect(),
            next: one_more(&sums, &masses),
            masses,
            sums: sums.len(),
        }
    }

    /// Plates as places among the denominations; those that the room has not are left out.
    pub(super) fn places(&self, plates: &[Mass]) -> Vec<usize> {
        let place = |plate: &Mass| self.masses.iter().position(|mass| mass == plate);
        plates.iter().filter_map(place).collect()
    }

    /// Where a sum leads with one plate more.
    pub(super) fn one_more(&self, sum: usize, plate: usize) -> Option<usize> {
        let next = self.next[sum * self.masses.len() + plate] as usize;
        (next < self.sums).then_some(next)
    }

    /// The fewest plates that lead to one of some wanted sums with the first so many denominations.
    pub(super) fn fewest(&self, wanted: &[(usize, u64)], plates: usize) -> Fewest {
        let width = wanted.last().map_or(0, |(sum, _)| sum + 1);
        let mut rows = vec![NEVER; (plates + 1) * width];
        for (sum, _) in wanted {
            rows[plates * width + sum] = 0;
        }
        for plate in (0..plates).rev() {
            let (rows, after) = rows.split_at_mut((plate + 1) * width);
            let (row, after) = (&mut rows[plate * width..], &after[..width]);
            for sum in 0..width {
                let (mut least, mut at) = (after[sum], sum);
                for used in 1..=self.most[plate] {
                    let next = self.one_more(at, plate).filter(|next| *next < width);
                    let Some(next) = next else { break };
                    at = next;
                    least = least.min(after[at] + used);
                }
                row[sum] = least;
            }
        }
        Fewest { rows, width }
    }

    /// A build of the fewest plates, the heaviest ones inside.
    pub(super) fn build(&self, fewest: &Fewest, plates: usize) -> Vec<usize> {
        let (mut build, mut sum) = (Vec::new(), 0);
        for plate in 0..plates {
            let needed = fewest.from(plate, sum);
            let (mut at, mut found) = (sum, (sum, 0));
            for used in 0..=self.most[plate] {
                if fewest.from(plate + 1, at).saturating_add(used) == needed {
                    found = (at, used);
                }
                let Some(next) = self.one_more(at, plate) else { break };
                at = next;
            }
            sum = found.0;
            build.extend(std::iter::repeat_n(plate, usize::from(found.1)));
        }
        build
    }
}

/// How many plates lead from each sum to a wanted one at the least, with the denominations from each one on.
pub(super) struct Fewest {
    /// A row of sums up to the heaviest wanted one for each denomination, and one for none.
    rows: Vec<u8>,
    width: usize,
}

impl Fewest {
    /// The least from `sum`, with every plate of the denomination `plate` and all lighter; more than a side
    /// takes where there is no way.
    pub(super) fn from(&self, plate: usize, sum: usize) -> u8 {
        if sum < self.width { self.rows[plate * self.width + sum] } else { NEVER }
    }
}

/// The sums from which one of the wanted masses can still be reached with plates there are.
fn on_the_way(sums: &[Mass], wanted: &[Mass]) -> Vec<Mass> {
    let mut needed = vec![false; sums.len()];
    for side in wanted {
        // One finger runs up the sums, the other down to what is left.
        let mut left = sums.len();
        for (at, sum) in sums.iter().enumerate().take_while(|(_, sum)| *sum <= side) {
            while left > 0 && sums[left - 1] + *sum > *side {
                left -= 1;
            }
            needed[at] |= left > 0 && sums[left - 1] + *sum == *side;
        }
    }
    sums.iter().zip(needed).filter(|(_, needed)| *needed).map(|(sum, _)| *sum).collect()
}

fn one_more(sums: &[Mass], masses: &[Mass]) -> Vec<u32> {
    let nowhere = sums.len();
    let mut next = vec![nowhere as u32; sums.len() * masses.len()];
    for (plate, mass) in masses.iter().enumerate() {
        let mut to = 0;
        for (from, sum) in sums.iter().enumerate() {
            while to < sums.len() && sums[to] < *sum + *mass {
                to += 1;
            }
            if to < sums.len() && sums[to] == *sum + *mass {
                next[from * masses.len() + plate] = to as u32;
            }
        }
    }
    next
}
