//! One side of the bar over a ramp, in whole numbers: what it must weigh set by set, and the plates
//! there are for it. Both sides are always alike, so one is enough.

use crate::mass::Mass;
use crate::plan::{Builds, MAX_PLATES_A_SIDE};

/// One plate put on or taken off, in the price of a ramp. The rest of the price counts the plates
/// on the bar, a set at a time, so that of two ramps with the same handling the lighter bar wins: less
/// than this altogether, with 10 plates a side in 200 sets. The dearest ramp stays under 2^24.
pub(super) const HANDLED: i32 = 1 << 12;
/// The price of what cannot be. Three of them still fit the number.
pub(super) const NEVER: i32 = i32::MAX / 4;

/// A side and what it must weigh.
pub(super) struct Side {
    /// What one plate of each denomination weighs, heaviest first.
    pub(super) masses: Vec<Mass>,
    /// How many of each can be on the side at once.
    pub(super) most: Vec<u8>,
    /// What the side weighs at each step, as a place in `sums`. Neighbours differ: sets of one load
    /// in a row are one step, since changing plates between them never helps.
    pub(super) wanted: Vec<usize>,
    /// How many sets each step stands for.
    pub(super) sets: Vec<usize>,
    /// How many sets come before each step, and before the end.
    sets_before: Vec<i32>,
    /// Everything the side can weigh on the way to one of the wanted masses, lightest first.
    pub(super) sums: Vec<Mass>,
    /// Where a sum leads with one plate more, as a place in `sums`; `sums.len()` where that leads
    /// nowhere. A row of denominations for each sum.
    pub(super) next: Vec<u32>,
    /// With how many plates, of those there are, a side can weigh each sum: a bit for each number.
    pub(super) numbers: Vec<u16>,
}

impl Side {
    /// The side of a bar that is loaded to `loads` in turn, all of which `builds` can build.
    pub(super) fn new(builds: &Builds, loads: &[Mass]) -> Side {
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
        let plates = || builds.pairs.iter().filter(|stack| stack.mass <= heaviest);
        let masses: Vec<Mass> = plates().map(|stack| stack.mass).collect();
        let sums = on_the_way(&builds.sides_up_to(heaviest).collect::<Vec<Mass>>(), &wanted);
        let most: Vec<u8> =
            plates().map(|stack| stack.pairs.min(MAX_PLATES_A_SIDE) as u8).collect();
        let next = one_more(&sums, &masses);
        Side {
            numbers: numbers(&next, &most, sums.len()),
            most,
            wanted: wanted.iter().filter_map(|side| sums.binary_search(side).ok()).collect(),
            sets_before: (0..=steps.len())
                .map(|step| steps[..step].iter().map(|(_, sets)| *sets as i32).sum())
                .collect(),
            sets: steps.iter().map(|(_, sets)| *sets).collect(),
            next,
            masses,
            sums,
        }
    }

    /// Number of steps.
    pub(super) fn steps(&self) -> usize {
        self.wanted.len()
    }

    /// What a plate costs that stays on during steps `from..to`: put on once, taken off once unless
    /// it stays on after the last step, and seen on the bar in every set.
    pub(super) fn price(&self, from: usize, to: usize) -> i32 {
        let moves = if to == self.steps() { 1 } else { 2 };
        moves * HANDLED + (self.sets_before[to] - self.sets_before[from])
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

/// The numbers of plates that make each sum. Every part of a side that weighs a wanted mass is on the
/// way to it too, so no such part is missed by following only `next`.
fn numbers(next: &[u32], most: &[u8], sums: usize) -> Vec<u16> {
    let mut numbers = vec![0_u16; sums];
    if let Some(nothing) = numbers.first_mut() {
        *nothing = 1;
    }
    for (plate, most) in most.iter().enumerate() {
        // From the heaviest sum down, so that what is added to has none of this denomination yet.
        for from in (0..sums).rev() {
            let (mut to, mut made) = (from, numbers[from]);
            for _ in 0..*most {
                to = next[to * (next.len() / sums) + plate] as usize;
                made = made << 1 & ((1 << (MAX_PLATES_A_SIDE + 1)) - 1);
                if to == sums || made == 0 {
                    break;
                }
                numbers[to] |= made;
            }
        }
    }
    numbers
}
