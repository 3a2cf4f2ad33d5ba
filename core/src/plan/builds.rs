//! What can be loaded in the room: a bar with its plates, bells, a belt, a machine.

use std::cmp::Reverse;
use std::collections::BTreeMap;

use super::{Bar, Bell, Kit, Machine, Stack};
use crate::mass::{Mass, MassUnit};

/// What loads are made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum LoadKind {
    /// A bar with plates on both sides.
    Plates,
    /// One bell.
    Bells,
    /// Two bells of one mass: the load is the mass of one.
    Pair,
    /// What hangs on a body, from nothing upward.
    Added,
    /// What is taken off a body, with a minus, up to nothing.
    Assisted,
    /// The stack of a machine.
    Stack,
}

/// Every load one bar (or a row of bells, a belt, a machine) can be built to, found once and looked up
/// often.
#[derive(Clone, Debug)]
pub struct Builds {
    /// What the loads are made of.
    pub kind: LoadKind,
    /// The bar's name; empty for all that is no bar.
    pub bar: String,
    /// The unit its parts are marked in.
    pub unit: MassUnit,
    /// The bar with its collars and nothing else.
    pub(crate) empty: Mass,
    /// The plates it takes, heaviest first.
    pub(crate) pairs: Vec<Pairs>,
    builds: BTreeMap<Mass, Vec<Mass>>,
}

/// A load and the plates that make it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Build {
    /// The whole load: bar, collars and both sides.
    pub mass: Mass,
    /// The plates of one side, from the collar of the bar outwards, heaviest first; none for all that is
    /// no bar.
    pub per_side: Vec<Mass>,
}

/// Plates of one mass, as many as both sides can have alike.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Pairs {
    /// One plate.
    pub(crate) mass: Mass,
    /// How many a side can have.
    pub(crate) pairs: usize,
}

/// No hand loads more than this many plates a side (common practice, no source).
pub(crate) const MAX_PLATES_A_SIDE: usize = 10;

/// No belt carries more than this many plates (common practice, no source).
const MAX_PLATES_HUNG: usize = 4;

/// The plates of a kit that go onto a bar marked in `unit`, heaviest first.
fn pairs_for(kit: &Kit, unit: MassUnit) -> Vec<Pairs> {
    let mut singles: BTreeMap<Reverse<Mass>, usize> = BTreeMap::new();
    for stack in kit.plates.iter().filter(|stack| kit.takes(unit, stack.unit)) {
        *singles.entry(Reverse(stack.mass)).or_default() += stack.count as usize;
    }
    // A plate of no mass changes no load.
    let pairs = singles.into_iter().map(|(mass, count)| Pairs { mass: mass.0, pairs: count / 2 });
    pairs.filter(|stack| stack.pairs > 0 && stack.mass > Mass::ZERO).collect()
}

impl Builds {
    /// Finds every load `bar` can be built to, both sides alike, each with the fewest plates a
    /// side and, of equally few, the heavier ones inside. The plates are those marked in the bar's
    /// unit, or all of them in a kit that mixes units.
    ///
    /// The number of different loads grows with the product of the counts in the worst case; the
    /// plan reader refuses a kit with more than 10,000.
    pub fn bar(kit: &Kit, bar: &Bar) -> Builds {
        let pairs = pairs_for(kit, bar.unit);
        let mut sides: BTreeMap<Mass, Vec<Mass>> = BTreeMap::from([(Mass::ZERO, Vec::new())]);
        for stack in &pairs {
            // A snapshot, so that each stack is used at most as often as it has pairs.
            let before: Vec<_> = sides.iter().map(|(sum, side)| (*sum, side.clone())).collect();
            for (sum, side) in before {
                let room = MAX_PLATES_A_SIDE.saturating_sub(side.len()).min(stack.pairs);
                for used in 1..=room {
                    let mut longer = side.clone();
                    longer.extend(std::iter::repeat_n(stack.mass, used));
                    let sum = sum + stack.mass * used as i64;
                    let better = sides.get(&sum).is_none_or(|known| rank(&longer) < rank(known));
                    if better {
                        sides.insert(sum, longer);
                    }
                }
            }
        }
        let empty = bar.mass + bar.collars;
        let builds = sides.into_iter().map(|(side, plates)| (empty + side * 2, plates)).collect();
        let kind = LoadKind::Plates;
        Builds { kind, bar: bar.name.clone(), unit: bar.unit, empty, pairs, builds }
    }

    /// No load at all.
    pub fn none(kind: LoadKind, unit: MassUnit) -> Builds {
        Builds::of(kind, unit, [])
    }

    fn of(kind: LoadKind, unit: MassUnit, loads: impl IntoIterator<Item = Mass>) -> Builds {
        let builds = loads.into_iter().map(|load| (load, Vec::new())).collect();
        Builds { kind, bar: String::new(), unit, empty: Mass::ZERO, pairs: Vec::new(), builds }
    }

    /// The loads a row of bells offers, one bell a load.
    pub fn bells(bells: &[Bell], unit: MassUnit) -> Builds {
        let marked = bells.first().map_or(unit, |bell| bell.unit);
        Builds::of(LoadKind::Bells, marked, bells.iter().map(|bell| bell.mass))
    }

    /// The loads that bells offer in pairs, of which the mass of one is the load.
    pub fn pairs(bells: &[Bell], unit: MassUnit) -> Builds {
        let twice: Vec<&Bell> = bells.iter().filter(|bell| bell.count >= 2).collect();
        let marked = twice.first().map_or(unit, |bell| bell.unit);
        Builds::of(LoadKind::Pair, marked, twice.iter().map(|bell| bell.mass))
    }

    /// What can hang on a body: nothing, a few single plates, or one bell. The plates and bells are those
    /// marked in `unit`; all of them in a kit that mixes units, or where none is marked in it.
    pub fn added(kit: &Kit, unit: MassUnit) -> Builds {
        let marked = kit.plates.iter().map(|stack| stack.unit);
        let all =
            kit.mixed || !marked.chain(kit.bells.iter().map(|bell| bell.unit)).any(|of| of == unit);
        let mut sums: BTreeMap<Mass, usize> = BTreeMap::from([(Mass::ZERO, 0)]);
        for stack in kit.plates.iter().filter(|stack| all || stack.unit == unit) {
            for (sum, hung) in sums.clone() {
                let room = MAX_PLATES_HUNG.saturating_sub(hung).min(stack.count as usize);
                for more in 1..=room {
                    let fewest = sums.entry(sum + stack.mass * more as i64).or_insert(usize::MAX);
                    *fewest = (*fewest).min(hung + more);
                }
            }
        }
        let bells = kit.bells.iter().filter(|bell| all || bell.unit == unit);
        Builds::of(LoadKind::Added, unit, sums.into_keys().chain(bells.map(|bell| bell.mass)))
    }

    /// What assistance leaves of a body: each of its masses taken off, and nothing taken off.
    pub fn assisted(assistance: &Stack) -> Builds {
        let less = assistance.masses.iter().map(|mass| Mass::ZERO - *mass);
        let free = (!assistance.masses.is_empty()).then_some(Mass::ZERO);
        Builds::of(LoadKind::Assisted, assistance.unit, less.chain(free))
    }

    /// What a machine's pin can be put at.
    pub fn machine(machine: &Machine) -> Builds {
        let Stack { unit, masses } = &machine.stack;
        Builds::of(LoadKind::Stack, *unit, masses.iter().copied())
    }

    /// True where loads go up and down by one pick, because percent of them mean nothing near zero: what
    /// is added to a body or taken off it.
    pub fn is_picks(&self) -> bool {
        matches!(self.kind, LoadKind::Added | LoadKind::Assisted)
    }

    /// True where plates are put on and taken off a bar.
    pub fn has_plates(&self) -> bool {
        self.kind == LoadKind::Plates && !self.bar.is_empty()
    }

    /// Every load that can be built, lightest first.
    pub fn loads(&self) -> impl DoubleEndedIterator<Item = Mass> {
        self.builds.keys().copied()
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

    /// The lightest build of at least `load`.
    pub fn at_or_above(&self, load: Mass) -> Option<Build> {
        let (mass, side) = self.builds.range(load..).next()?;
        Some(Build { mass: *mass, per_side: side.clone() })
    }

    /// The lightest build above `load`.
    pub fn above(&self, load: Mass) -> Option<Build> {
        let after = (std::ops::Bound::Excluded(load), std::ops::Bound::Unbounded);
        let (mass, side) = self.builds.range(after).next()?;
        Some(Build { mass: *mass, per_side: side.clone() })
    }

    /// The heaviest build below `load`.
    pub fn below(&self, load: Mass) -> Option<Build> {
        let (mass, side) = self.builds.range(..load).next_back()?;
        Some(Build { mass: *mass, per_side: side.clone() })
    }

    /// What the plates of one side can weigh, lightest first, at most `most`.
    pub(crate) fn sides_up_to(&self, most: Mass) -> impl Iterator<Item = Mass> {
        let sides = self.builds.range(..=self.empty + most * 2);
        sides.map(|(_, plates)| plates.iter().copied().sum())
    }

    /// The lightest build there is.
    pub fn lightest(&self) -> Option<Build> {
        let (mass, side) = self.builds.iter().next()?;
        Some(Build { mass: *mass, per_side: side.clone() })
    }
}

/// Orders sides that weigh the same, the better one first: fewer plates, then heavier ones inside.
fn rank(side: &[Mass]) -> (usize, Reverse<&[Mass]>) {
    (side.len(), Reverse(side))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixtures::{self, kg};

    fn builds(collars: &str, plates: &[(&str, u32)]) -> Builds {
        let plates: Vec<_> = plates.iter().map(|(mass, count)| (kg(mass), *count)).collect();
        fixtures::builds(&fixtures::kit(collars, &plates))
    }

    /// The loading check with competition discs: a 20 kg bar, collars of 2.5 kg each, and 25 + 20
    /// a side is 115 kg (disc and collar masses of the IWF's technical rules, section 3.3).
    #[test]
    fn a_competition_bar_adds_up() {
        let builds = builds("5", &[("25", 2), ("20", 2), ("0.5", 2)]);
        let build = builds.exactly(kg("115")).unwrap();
        assert_eq!(build.per_side, [kg("25"), kg("20")]);
        assert_eq!(builds.above(kg("115")).unwrap().mass, kg("116"), "the smallest step is 1 kg");
    }

    /// Taking the heaviest plate first fails here: 3 kg a side is 1.5 + 1.5, not 2.5 + something.
    #[test]
    fn the_search_is_exact_where_greed_fails() {
        let builds = builds("0", &[("2.5", 2), ("1.5", 4)]);
        assert_eq!(builds.exactly(kg("26")).unwrap().per_side, [kg("1.5"), kg("1.5")]);
    }

    /// 15 + 15 and 20 + 10 are two plates each: the heavier one goes inside.
    #[test]
    fn of_equally_few_plates_the_heavier_lie_inside() {
        let builds = builds("0", &[("10", 2), ("20", 2), ("15", 4)]);
        assert_eq!(builds.exactly(kg("80")).unwrap().per_side, [kg("20"), kg("10")]);
    }

    #[test]
    fn plates_run_out_and_come_in_pairs() {
        let builds = builds("0", &[("10", 3)]);
        assert_eq!(builds.at_or_below(kg("500")).unwrap().mass, kg("40"));
        assert_eq!(builds.at_or_below(kg("39.9")).unwrap().mass, kg("20"));
        assert_eq!(builds.above(kg("20")).unwrap().mass, kg("40"));
        assert_eq!(builds.at_or_above(kg("20")).unwrap().mass, kg("20"));
        assert_eq!(builds.at_or_above(kg("20.5")).unwrap().mass, kg("40"));
        assert_eq!(builds.at_or_below(kg("19.9")), None);
        assert_eq!(builds.above(kg("40")), None);
    }

    /// Against every way there is to fill one side of a small kit.
    #[test]
    fn every_build_is_found_with_the_fewest_plates() {
        let stacks = [("5", 4), ("2.5", 4), ("1.25", 2), ("1", 4)];
        let builds = builds("0", &stacks);
        let mut best: BTreeMap<Mass, usize> = BTreeMap::new();
        for counts in (0..3 * 3 * 2 * 3).map(|i| [i % 3, i / 3 % 3, i / 9 % 2, i / 18]) {
            let side: Mass = stacks.iter().zip(counts).map(|((mass, _), n)| kg(mass) * n).sum();
            let plates = counts.iter().sum::<i64>() as usize;
            let fewest = best.entry(kg("20") + side * 2).or_insert(plates);
            *fewest = plates.min(*fewest);
        }
        let found: BTreeMap<Mass, usize> =
            builds.builds.iter().map(|(mass, side)| (*mass, side.len())).collect();
        assert_eq!(found, best);
    }
}
