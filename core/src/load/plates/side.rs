//! One side of the bar over a ramp, in whole numbers: what it must weigh set by set, and the plates
//! there are for it. Both sides are always alike, so one is enough.

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
    /// What the side weighs at each step, as a place in its sums. Neighbours differ: sets of one load
    /// in a row are one step, since changing plates between them never helps.
    pub(super) wanted: Vec<usize>,
    /// How many sets each step stands for.
    pub(super) sets: Vec<usize>,
    /// Everything the side can weigh on the way to one of the wanted masses: how many there are.
    pub(super) sums: usize,
    /// Where a sum leads with one plate more; `sums` where that leads nowhere. A row of denominations for
    /// each sum.
    next: Vec<u32>,
}

impl Side {
    /// The side of a bar with plates `on` that is loaded to `loads` in turn, all of which `builds` can build.
    pub(super) fn new(builds: &Builds, on: &[Mass], loads: &[Mass]) -> Side {
        let mut steps: Vec<(Mass, usize)> = Vec::new();
        for load in loads {
            // A load that can be built is an even number of units above the empty bar.
            let side = Mass { ten_ng: (*load - builds.empty).ten_ng / 2 };
            match steps.last_mut() {
                Some((last, sets)) if *last == side => *sets += 1,
                _ => steps.push((side, 1)),
            }
        }
        let wanted: Vec<Mass> = steps.iter().map(|(side, _)| *side).collect();
        let heaviest = wanted.iter().copied().max().unwrap_or_default();
        let plates = || {
            builds.pairs.iter().filter(|stack| stack.mass <= heaviest || on.contains(&stack.mass))
        };
        let masses: Vec<Mass> = plates().map(|stack| stack.mass).collect();
        let sums = on_the_way(&builds.sides_up_to(heaviest).collect::<Vec<Mass>>(), &wanted);
        Side {
            most: plates().map(|stack| stack.pairs.min(MAX_PLATES_A_SIDE) as u8).collect(),
            wanted: wanted.iter().filter_map(|side| sums.binary_search(side).ok()).collect(),
            sets: steps.iter().map(|(_, sets)| *sets).collect(),
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

    /// The fewest plates that lead to a wanted sum.
    pub(super) fn fewest(&self, wanted: usize) -> Fewest {
        let (plates, width) = (self.masses.len(), wanted + 1);
        let mut rows = vec![NEVER; (plates + 1) * width];
        rows[plates * width + wanted] = 0;
        for plate in (0..plates).rev() {
            let (rows, after) = rows.split_at_mut((plate + 1) * width);
            let (row, after) = (&mut rows[plate * width..], &after[..width]);
            for sum in 0..width {
                let (mut least, mut at) = (after[sum], sum);
                for used in 1..=self.most[plate] {
                    let next = self.one_more(at, plate).filter(|next| *next <= wanted);
                    let Some(next) = next else { break };
                    at = next;
                    least = least.min(after[at] + used);
                }
                row[sum] = least;
            }
        }
        Fewest { rows, width }
    }
}

/// How many plates lead from each sum to a wanted one at the least, with the denominations from each one on.
pub(super) struct Fewest {
    /// A row of sums up to the wanted one for each denomination, and one for none.
    rows: Vec<u8>,
    width: usize,
}

impl Fewest {
    /// The least from `sum`, with every plate of the denomination `plate` and all lighter; more than a side
    /// takes where there is no way.
    pub(super) fn from(&self, plate: usize, sum: usize) -> u8 {
        if sum < self.width { self.rows[plate * self.width + sum] } else { NEVER }
    }

    /// True for the wanted sum.
    pub(super) fn is_done(&self, sum: usize) -> bool {
        sum + 1 == self.width
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
