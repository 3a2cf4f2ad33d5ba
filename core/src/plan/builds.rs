//! What a bar can be loaded to with the room's plates.

use std::cmp::Reverse;
use std::collections::BTreeMap;

use super::{Bar, Bell, Kit};
use crate::mass::{Mass, MassUnit};

/// Every load one bar (or a row of bells) can be built to, found once and looked up often.
#[derive(Clone, Debug)]
pub struct Builds {
    /// The bar's name; empty for bells.
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
    /// The plates of one side, from the collar of the bar outwards, heaviest first.
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
        Builds { bar: bar.name.clone(), unit: bar.unit, empty, pairs, builds }
    }

    /// The loads a row of bells offers, one bell a load.
    pub fn bells(bells: &[Bell], unit: MassUnit) -> Builds {
        let builds = bells.iter().map(|bell| (bell.mass, Vec::new())).collect();
        let marked = bells.first().map_or(unit, |bell| bell.unit);
        let (empty, pairs) = (Mass::ZERO, Vec::new());
        Builds { bar: String::new(), unit: marked, empty, pairs, builds }
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
