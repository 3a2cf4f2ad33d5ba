//! The exact search: the same question as the bound's, asked of the very plates that lie below.

use std::collections::HashMap;

use super::bound::Bound;
use super::side::{HANDLED, NEVER, Side};
use crate::plan::MAX_PLATES_A_SIDE;

/// The plates that lie on the bar below some steps, whatever their order.
struct Below {
    /// What they weigh, as a place in the side's sums.
    sum: usize,
    /// How many there are.
    plates: usize,
    /// How many of each denomination.
    used: Box<[u8]>,
}

/// What is not known yet.
const UNKNOWN: i32 = -1;
/// Nobody asked yet.
const UNASKED: u32 = u32::MAX;

/// The search and what it has proved so far.
pub(super) struct Search<'s> {
    side: &'s Side,
    bound: &'s Bound,
    below: Vec<Below>,
    known: HashMap<Box<[u8]>, u32>,
    /// Where one plate more leads: a row of denominations for each of `below`.
    longer: Vec<u32>,
    /// Twice the proved least price, and one more when it is exact: a square of steps for each of
    /// `below`.
    proved: Vec<i32>,
    /// How many more plates and ends of their stays may be tried.
    options: u32,
}

/// The search gave up.
pub(super) struct Cut {
    /// The price is not less than this.
    pub(super) not_less: i32,
}

impl<'s> Search<'s> {
    /// Nothing lies on the bar, and nothing is proved. So many plates and ends of their stays may be tried.
    pub(super) fn new(side: &'s Side, bound: &'s Bound, options: u32) -> Search<'s> {
        let mut search = Search {
            side,
            bound,
            below: Vec::new(),
            known: HashMap::new(),
            longer: Vec::new(),
            proved: Vec::new(),
            options,
        };
        search.meet(vec![0; side.masses.len()].into(), 0, 0);
        search
    }

    /// The best builds of the whole ramp, one a step, as denominations from the inside outwards.
    pub(super) fn best(&mut self) -> Result<Vec<Vec<usize>>, Cut> {
        let steps = self.side.steps();
        let mut not_less = self.floor(0, steps, 0);
        // Asked with little room first and then with more: what is proved with little room is soon
        // proved, and makes the next round quicker. More room than the optimum needs is waste.
        let mut room = 0;
        loop {
            let most = not_less + room;
            let Some(price) = self.least(0, steps, 0, most) else { return Err(Cut { not_less }) };
            room = if price / HANDLED == not_less / HANDLED { room * 2 + 1 } else { 0 };
            not_less = price;
            if price <= most {
                break;
            }
        }
        let mut builds = Vec::with_capacity(steps);
        match self.lay(0, steps, 0, &mut Vec::new(), &mut builds) {
            Some(()) => Ok(builds),
            None => Err(Cut { not_less }),
        }
    }

    /// The least price of steps `from..to` above `below`: exact when it is at most `most`, otherwise
    /// a bound that is more than `most`. Nothing when the search gave up.
    fn least(&mut self, from: usize, to: usize, below: u32, most: i32) -> Option<i32> {
        if from == to {
            return Some(0);
        }
        let at = self.place(from, to, below);
        let known = self.proved[at];
        let floor = self.floor(from, to, below);
        if (known != UNKNOWN && known & 1 == 1) || floor > most {
            return Some(floor);
        }
        let least = if self.below[below as usize].sum == self.side.wanted[from] {
            self.least(from + 1, to, below, most)?
        } else {
            self.least_laid(from, to, below, most, floor)?
        };
        self.proved[at] = least * 2 + i32::from(least <= most);
        Some(least)
    }

    /// The same, where the first step wants one more plate.
    fn least_laid(
        &mut self,
        from: usize,
        to: usize,
        below: u32,
        most: i32,
        floor: i32,
    ) -> Option<i32> {
        let options = self.side.masses.len() * (to - from);
        self.options = self.options.checked_sub(u32::try_from(options).ok()?)?;
        let (mut room, mut found, mut beyond) = (most, None, NEVER);
        let plates = self.below[below as usize].plates;
        let rests: Vec<i32> = (from..=to).map(|end| self.floor(end, to, below)).collect();
        for plate in 0..self.side.masses.len() {
            let Some((sum, mut longer)) = self.one_more(below, plate) else { continue };
            for end in from + 1..=to {
                if sum > self.side.wanted[end - 1] {
                    break;
                }
                let (price, mut rest) = (self.side.price(from, end), rests[end - from]);
                let mut over = match longer {
                    Some(longer) => self.floor(from, end, longer),
                    None => self.bound.least(from, end, sum, plates + 1),
                };
                if price + over + rest > room {
                    beyond = beyond.min(price + over + rest);
                    continue;
                }
                let longer = *longer.get_or_insert_with(|| self.longer(below, plate, sum));
                if price + over + rest <= room {
                    over = self.least(from, end, longer, room - price - rest)?;
                }
                if price + over + rest <= room {
                    rest = self.least(end, to, below, room - price - over)?;
                }
                let sum = price + over + rest;
                if sum > room {
                    beyond = beyond.min(sum);
                    continue;
                }
                if sum == floor {
                    return Some(sum);
                }
                found = Some(sum);
                room = sum - 1;
            }
        }
        Some(found.unwrap_or(beyond.min(NEVER)))
    }

    /// Lays the plates of the best ramp: at every place the heaviest plate that an optimum allows,
    /// kept on for as long as one allows.
    fn lay(
        &mut self,
        from: usize,
        to: usize,
        below: u32,
        inside: &mut Vec<usize>,
        builds: &mut Vec<Vec<usize>>,
    ) -> Option<()> {
        if from == to {
            return Some(());
        }
        if self.below[below as usize].sum == self.side.wanted[from] {
            builds.push(inside.clone());
            return self.lay(from + 1, to, below, inside, builds);
        }
        let least = self.least(from, to, below, NEVER)?;
        for plate in 0..self.side.masses.len() {
            let Some((sum, longer)) = self.one_more(below, plate) else { continue };
            let longer = longer.unwrap_or_else(|| self.longer(below, plate, sum));
            for end in (from + 1..=to).rev() {
                let price = self.side.price(from, end);
                let rest = self.floor(end, to, below);
                if price + self.floor(from, end, longer) + rest > least {
                    continue;
                }
                let over = self.least(from, end, longer, least - price - rest)?;
                if price + over + rest > least {
                    continue;
                }
                if price + over + self.least(end, to, below, least - price - over)? == least {
                    inside.push(plate);
                    self.lay(from, end, longer, inside, builds)?;
                    inside.pop();
                    return self.lay(end, to, below, inside, builds);
                }
            }
        }
        None
    }

    /// The best bound proved so far.
    fn floor(&self, from: usize, to: usize, below: u32) -> i32 {
        if from == to {
            return 0;
        }
        match self.proved[self.place(from, to, below)] {
            UNKNOWN => {
                let Below { sum, plates, .. } = &self.below[below as usize];
                self.bound.least(from, to, *sum, *plates)
            }
            proved => proved / 2,
        }
    }

    fn place(&self, from: usize, to: usize, below: u32) -> usize {
        let steps = self.side.steps();
        (below as usize * steps + from) * steps + to - 1
    }

    /// What lies below would weigh with one plate more, and its name if it has one already; nothing
    /// when the side has no such plate left or that leads nowhere.
    fn one_more(&self, below: u32, plate: usize) -> Option<(usize, Option<u32>)> {
        let at = below as usize * self.side.masses.len() + plate;
        let Below { sum, plates, used } = &self.below[below as usize];
        let sum = self.side.next[sum * self.side.masses.len() + plate] as usize;
        let full = *plates >= MAX_PLATES_A_SIDE || used[plate] >= self.side.most[plate];
        let known = Some(self.longer[at]).filter(|longer| *longer != UNASKED);
        (!full && sum < self.side.sums.len()).then_some((sum, known))
    }

    /// What lies below with one plate more, which then weighs `sum`.
    fn longer(&mut self, below: u32, plate: usize, sum: usize) -> u32 {
        let Below { plates, used, .. } = &self.below[below as usize];
        let (mut used, plates) = (used.clone(), plates + 1);
        used[plate] += 1;
        let longer = match self.known.get(&used) {
            Some(known) => *known,
            None => self.meet(used, sum, plates),
        };
        self.longer[below as usize * self.side.masses.len() + plate] = longer;
        longer
    }

    fn meet(&mut self, used: Box<[u8]>, sum: usize, plates: usize) -> u32 {
        let (steps, name) = (self.side.steps(), self.below.len() as u32);
        self.longer.extend(std::iter::repeat_n(UNASKED, self.side.masses.len()));
        self.proved.extend(std::iter::repeat_n(UNKNOWN, steps * steps));
        self.known.insert(used.clone(), name);
        self.below.push(Below { sum, plates, used });
        name
    }
}
