//! The way up to the first work set. Every number here is common practice, no source.

use std::collections::BTreeMap;

use crate::mass::Mass;
use crate::plan::{Builds, MAX_PLATES_A_SIDE, WarmUpRule};

/// From so many percent of the lightest load on the work load has so many sets before it.
const SETS: [(i64, usize); 7] =
    [(1000, 7), (700, 6), (500, 5), (350, 4), (225, 3), (150, 2), (115, 1)];
/// Reps of the empty bar or the lightest bell.
const LIGHTEST_REPS: u32 = 10;
/// Reps of the sets after it, for one, two, three sets and so on.
const REPS: [&[u32]; 8] = [
    &[],
    &[5],
    &[5, 3],
    &[5, 3, 2],
    &[5, 3, 2, 1],
    &[5, 4, 3, 2, 1],
    &[6, 5, 4, 3, 2, 1],
    &[7, 6, 5, 4, 3, 2, 1],
];
/// The last step, to the work load, is this many parts of the way; each step before it one part more.
const LAST_STEP: usize = 3;
/// How far a set may be from where it is planned, in percent of the work load.
const REACH_PERCENT: u32 = 5;
/// The lightest plate that stands as high as every heavier one: under it a bar on the floor lies too low to be
/// lifted from there.
const HIGH_PLATE: Mass = Mass::kg(10);

/// What is known of a lift before its warm-up.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct WarmUpFor {
    /// True when it starts on the floor. Then nothing is lifted with the empty bar, which would lie too low: the
    /// first set has the lightest plates that hold the bar where it is lifted from. Common practice, no source.
    pub from_floor: bool,
    /// True when the same pattern was trained earlier that day: only the heavier half of the sets is left.
    pub warm: bool,
}

/// One set on the way up: what it may weigh, for a search that saves handling to choose from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WarmUpSet {
    /// What it would weigh by the rule, whatever the room builds.
    pub planned: Mass,
    /// Reps, 1 or more.
    pub reps: u32,
    /// What the room builds near that, lightest first; at least one.
    loads: Vec<Mass>,
    smallest_plate: Mass,
}

impl WarmUpSet {
    /// The load nearest to the plan, the lighter one on a tie.
    pub fn nearest(&self) -> Mass {
        self.loads.iter().min_by_key(|load| self.away(**load)).copied().unwrap_or(self.planned)
    }

    /// How far a load is from the plan, in 10 ng.
    pub(super) fn away(&self, load: Mass) -> u64 {
        load.ten_ng.abs_diff(self.planned.ten_ng)
    }

    /// Every load it may have, lightest first.
    pub fn loads(&self) -> &[Mass] {
        &self.loads
    }

    /// No plate of its builds is lighter than this.
    pub fn smallest_plate(&self) -> Mass {
        self.smallest_plate
    }
}

/// The sets before a work set of `work`: from the lightest load up to near the work load, the more the
/// heavier that is beside the lightest, in steps that get smaller towards the top and with ever fewer reps.
///
/// A set may lie within 5 % of the work load of where it is planned and at most halfway to its neighbours, of
/// which the work load is one: so loads always rise and stay below it. There it keeps to `rule` where a build
/// does, otherwise to its smallest plate, otherwise it is any build. Where there is none, and of bells, it is the heaviest build under the plan,
/// and left out where that is no heavier than the set before. The empty bar is always allowed. No ratio means
/// anything of what is added to a body or taken off it: there it is the easiest the room has, and halfway from
/// that to the work load. Common practice, no source.
pub fn warm_up(builds: &Builds, work: Mass, lift: WarmUpFor, rule: WarmUpRule) -> Vec<WarmUpSet> {
    let Some(lightest) = lightest(builds, lift.from_floor) else { return Vec::new() };
    let mut planned =
        if builds.is_picks() { halfway(lightest, work) } else { planned(lightest, work) };
    if lift.warm {
        planned.drain(..planned.len().div_ceil(2));
    }
    let near = Near::new(builds, work, rule);
    let mut sets: Vec<WarmUpSet> = Vec::new();
    for (at, load) in planned.iter().copied().enumerate() {
        let before = at.checked_sub(1).map(|before| planned[before]);
        let after = planned.get(at + 1).copied().unwrap_or(work);
        let between = |build: &Mass| {
            before.is_none_or(|before| *build - load > before - *build)
                && *build - load <= after - *build
        };
        let (loads, smallest_plate) = match builds.exactly(load).filter(|_| load == lightest) {
            Some(_) => (vec![load], Mass::ZERO),
            None => near.loads(load, between),
        };
        // A room with large gaps gives the same for two plans.
        let last = sets.last().and_then(|set| set.loads.last());
        if loads.first().is_some_and(|first| last.is_none_or(|last| first > last)) {
            sets.push(WarmUpSet { planned: load, reps: 0, loads, smallest_plate });
        }
    }
    let of_the_lightest = sets.first().is_some_and(|set| set.planned == lightest);
    let light = of_the_lightest && !lift.from_floor && !builds.is_picks();
    let reps = REPS[sets.len() - usize::from(light)].iter().copied();
    let reps = light.then_some(LIGHTEST_REPS).into_iter().chain(reps);
    sets.iter_mut().zip(reps).for_each(|(set, reps)| set.reps = reps);
    sets
}

/// The sets before a first time, whose loads nobody knows yet: reps, and a load only where it is the empty bar;
/// the others are light by feel: one of what is added to a body or taken off it. None where nothing is lifted. Common practice, no source.
pub fn warm_up_by_feel(builds: &Builds, lift: WarmUpFor) -> Vec<(u32, Option<Mass>)> {
    let Some(lightest) = builds.lightest() else { return Vec::new() };
    let light = (REPS[1][0], None);
    match (builds.bar.is_empty(), lift.warm || lift.from_floor || builds.is_picks()) {
        (_, true) => vec![light],
        (true, false) => vec![(LIGHTEST_REPS, None)],
        (false, false) => vec![(LIGHTEST_REPS, Some(lightest.mass)), light],
    }
}

/// What a warm-up begins with.
fn lightest(builds: &Builds, from_floor: bool) -> Option<Mass> {
    if !from_floor || builds.pairs.is_empty() {
        return builds.lightest().map(|build| build.mass);
    }
    let plate = builds.pairs.iter().map(|stack| stack.mass).filter(|mass| *mass >= HIGH_PLATE);
    // Without such plates the bar stands on blocks, or lower: some plate there is.
    let plate = plate.min().or(builds.pairs.first().map(|stack| stack.mass))?;
    Some(builds.empty + plate * 2)
}

/// What the sets would weigh in a room that builds everything.
fn planned(lightest: Mass, work: Mass) -> Vec<Mass> {
    let times = |percent: i64| i128::from(lightest.ten_ng) * i128::from(percent) / 100;
    let enough = |row: &&(i64, usize)| i128::from(work.ten_ng) >= times(row.0);
    let sets = SETS.iter().find(enough).map_or(0, |(_, sets)| *sets);
    let step = |at: usize| (sets - at + LAST_STEP) as i128;
    let all: i128 = (1..=sets).map(step).sum();
    let way = i128::from(work.ten_ng) - i128::from(lightest.ten_ng);
    let load = |at: usize| {
        let so_far: i128 = (1..=at).map(step).sum();
        Mass { ten_ng: lightest.ten_ng + (way * so_far / all.max(1)) as i64 }
    };
    (0..sets).map(load).collect()
}

/// The easiest, and halfway from there to the work load; nothing where that is no heavier.
fn halfway(lightest: Mass, work: Mass) -> Vec<Mass> {
    let half = Mass { ten_ng: lightest.ten_ng + (work.ten_ng - lightest.ten_ng) / 2 };
    if work > lightest { vec![lightest, half] } else { Vec::new() }
}

/// What the room builds near a planned load.
struct Near<'a> {
    builds: &'a Builds,
    work: Mass,
    rule: WarmUpRule,
    /// What plates that are not too small build, each side.
    coarse: BTreeMap<Mass, usize>,
}

impl<'a> Near<'a> {
    fn new(builds: &'a Builds, work: Mass, rule: WarmUpRule) -> Near<'a> {
        // Each sum with the fewest plates it takes.
        let mut coarse = BTreeMap::from([(Mass::ZERO, 0)]);
        for stack in builds.pairs.iter().filter(|stack| stack.mass >= rule.smallest_plate) {
            let before: Vec<(Mass, usize)> =
                coarse.iter().map(|(sum, used)| (*sum, *used)).collect();
            for (sum, used) in before {
                for more in 1..=stack.pairs.min(MAX_PLATES_A_SIDE - used) {
                    let sum = sum + stack.mass * more as i64;
                    if builds.empty + sum * 2 > work {
                        break;
                    }
                    let fewest = coarse.entry(sum).or_insert(used + more);
                    *fewest = (*fewest).min(used + more);
                }
            }
        }
        Near { builds, work, rule, coarse }
    }

    /// The loads for a set planned at `load`, and the lightest plate they are built with.
    fn loads(&self, load: Mass, between: impl Fn(&Mass) -> bool) -> (Vec<Mass>, Mass) {
        let below = self.builds.at_or_below(load).map(|build| build.mass);
        if self.builds.pairs.is_empty() {
            return (below.into_iter().collect(), Mass::ZERO);
        }
        let reach = self.work.percent(REACH_PERCENT);
        let allowed = |build: &Mass| between(build) && *build <= self.work;
        let coarse = self.coarse.keys().map(|side| self.builds.empty + *side * 2);
        let near = |build: &Mass| *build >= load - reach && *build <= load + reach;
        let coarse: Vec<Mass> = coarse.filter(|build| near(build) && allowed(build)).collect();
        let round = |build: &Mass| *build == self.builds.empty || self.rule.is_round(*build);
        let rounded: Vec<Mass> = coarse.iter().copied().filter(round).collect();
        // A bar of 17 kg is built to no multiple of 5, and has a warm-up without small plates all the same.
        if let Some(found) = [rounded, coarse].into_iter().find(|found| !found.is_empty()) {
            return (found, self.rule.smallest_plate);
        }
        let next = |build: &Mass| self.builds.above(*build).map(|build| build.mass);
        let first = self.builds.above(load - reach - Mass { ten_ng: 1 }).map(|build| build.mass);
        let any = std::iter::successors(first, next).take_while(|build| *build <= load + reach);
        let any: Vec<Mass> = any.filter(allowed).collect();
        if any.is_empty() { (below.into_iter().collect(), Mass::ZERO) } else { (any, Mass::ZERO) }
    }
}
