//! The exact search: a shortest path through the builds of one step after the other.
//!
//! A build is a multiset of plates, heaviest inside, and so a path in a tree of prefixes. From one build to
//! the next what they have in common inside stays on, the rest comes off, the new rest goes on. So for every
//! prefix of the builds before, the least price of getting down to it is kept; and a build's price is the
//! least over its own prefixes of that and the plates to put on. A shorter prefix than the longest that two
//! builds have in common only costs more, so the least is exact.

use std::cmp::Ordering;
use std::ops::Add;

use super::side::{Fewest, Side, Step};
use crate::plan::MAX_PLATES_A_SIDE;

/// What a ramp costs, in the order in which it counts.
#[derive(Clone, Copy, PartialEq, Eq)]
struct Price {
    /// Plates moved.
    moved: u32,
    /// Plates on the bar, added up over the sets: counts last.
    on_bar: u32,
    /// How far the loads are from the planned ones, in 10 ng.
    away: u64,
    /// Mass moved, in 10 ng.
    mass: u64,
}

impl Price {
    const NOTHING: Price = Price { moved: 0, on_bar: 0, away: 0, mass: 0 };

    /// What there is no way to.
    const NO_WAY: Price = Price { moved: u32::MAX / 4, ..Price::NOTHING };
}

impl Ord for Price {
    fn cmp(&self, other: &Price) -> Ordering {
        self.moved.cmp(&other.moved).then_with(|| {
            let rest = |price: &Price| (price.away, price.mass, price.on_bar);
            rest(self).cmp(&rest(other))
        })
    }
}

impl PartialOrd for Price {
    fn partial_cmp(&self, other: &Price) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Add for Price {
    type Output = Price;
    fn add(self, other: Price) -> Price {
        Price {
            moved: self.moved + other.moved,
            on_bar: self.on_bar + other.on_bar,
            away: self.away + other.away,
            mass: self.mass.saturating_add(other.mass),
        }
    }
}

/// How many plates more than it needs a build has in the first round.
const SPARE: u8 = 1;

/// A prefix of builds of one step.
struct Node {
    parent: u32,
    /// The plate that it ends with.
    plate: u8,
    /// How many plates it has.
    depth: u8,
    /// The first child; its siblings follow one another by `sibling`. Nodes begin with the root, which is 0
    /// and nobody's child or sibling.
    child: u32,
    sibling: u32,
    /// The least price of getting down to it from a build of this step, and which build that is.
    down: Price,
    from: u32,
    /// For a whole build: the build of the step before that leads here.
    before: u32,
}

/// The builds of one step.
struct Layer {
    nodes: Vec<Node>,
}

/// The search gave up.
pub(super) struct TooMany;

/// The best builds of the whole ramp, one a step, as denominations from the inside outwards. The bar starts
/// with `on`, heaviest inside, and all plates come off in the end. `tables` are those of the steps, `known` is some
/// build of each, `most` bounds how many prefixes are looked at.
pub(super) fn best(
    side: &Side,
    on: &[usize],
    tables: &[Fewest],
    known: &[Vec<usize>],
    most: usize,
) -> Result<Vec<Vec<usize>>, TooMany> {
    let mut left = most;
    // First among builds of few plates: what is found there is nearly always the best, and shows how little
    // is worth looking at among all of them.
    let found = among(side, on, tables, known, SPARE, &mut left)?;
    among(side, on, tables, &found, MAX_PLATES_A_SIDE as u8, &mut left)
}

/// The best among the builds that have at most so many plates more than they need; no worse than `known`.
fn among(
    side: &Side,
    on: &[usize],
    tables: &[Fewest],
    known: &[Vec<usize>],
    spare: u8,
    left: &mut usize,
) -> Result<Vec<Vec<usize>>, TooMany> {
    let enough = enough(side, on, known);
    // The most plates that this step or a later one needs, and how far their loads are away, at the least.
    let mut later: Vec<(u8, u64)> = Vec::with_capacity(tables.len());
    for (step, fewest) in side.steps.iter().zip(tables).rev() {
        let (plates, away) = later.last().copied().unwrap_or_default();
        let nearest = step.wanted.iter().map(|(_, away)| *away).min().unwrap_or(0);
        later.push((fewest.from(0, 0).max(plates), away + nearest));
    }
    let mut layers = vec![Layer::of_one(side, on)];
    for ((step, fewest), later) in side.steps.iter().zip(tables).zip(later.iter().rev()) {
        let before = layers.last().ok_or(TooMany)?;
        let longest = fewest.from(0, 0).saturating_add(spare).min(MAX_PLATES_A_SIDE as u8);
        let nodes = Vec::with_capacity(before.nodes.len());
        let (later, left) = (*later, &mut *left);
        let mut grow = Grow { side, before, step, fewest, longest, later, enough, left, nodes };
        grow.nodes.push(Node::root());
        let Node { down: least, from: via, .. } = before.nodes[0];
        grow.below(0, 0, 0, Reached { sum: 0, above: Some(0), least, via })?;
        let nodes = grow.nodes;
        layers.push(Layer { nodes }.settled(side));
    }
    let mut builds = Vec::with_capacity(side.steps.len());
    let mut at = layers.last().map_or(0, |layer| layer.nodes[0].from);
    for layer in layers[1..].iter().rev() {
        builds.push(layer.build(at));
        at = layer.nodes[at as usize].before;
    }
    builds.reverse();
    Ok(builds)
}

/// How many plates such builds move, and how far their loads are away: no better ones cost more.
fn enough(side: &Side, on: &[usize], builds: &[Vec<usize>]) -> (u32, u64) {
    let (mut before, mut moved, mut away) = (on, 0, 0);
    for build in builds.iter().map(Vec::as_slice).chain([&[][..]]) {
        let alike = before.iter().zip(build).take_while(|(a, b)| a == b).count();
        moved += before.len() + build.len() - 2 * alike;
        before = build;
    }
    for (build, step) in builds.iter().zip(&side.steps) {
        let sum = build.iter().try_fold(0, |sum, plate| side.one_more(sum, *plate));
        away += sum.and_then(|sum| step.away(sum)).unwrap_or(0);
    }
    (moved as u32, away)
}

/// One plate put on or taken off.
fn moved(side: &Side, plate: usize) -> Price {
    Price { moved: 1, mass: side.masses[plate].ten_ng.unsigned_abs(), ..Price::NOTHING }
}

impl Node {
    fn root() -> Node {
        Node {
            parent: 0,
            plate: 0,
            depth: 0,
            child: 0,
            sibling: 0,
            down: Price::NO_WAY,
            from: 0,
            before: 0,
        }
    }
}

impl Layer {
    /// The bar as it is.
    fn of_one(side: &Side, on: &[usize]) -> Layer {
        let mut nodes = vec![Node::root()];
        for plate in on {
            let parent = nodes.len() as u32 - 1;
            nodes[parent as usize].child = parent + 1;
            let depth = nodes[parent as usize].depth + 1;
            nodes.push(Node { parent, plate: *plate as u8, depth, ..Node::root() });
        }
        let last = nodes.len() - 1;
        nodes[last].down = Price::NOTHING;
        nodes[last].from = last as u32;
        Layer { nodes }.settled(side)
    }

    /// With the least price of getting down to every prefix. A child stands behind its parent.
    fn settled(mut self, side: &Side) -> Layer {
        for at in (1..self.nodes.len()).rev() {
            let Node { parent, plate, down, from, .. } = self.nodes[at];
            let price = down + moved(side, plate as usize);
            let parent = &mut self.nodes[parent as usize];
            // Of equally good ones the first, which has the heavier plates inside.
            if price <= parent.down {
                (parent.down, parent.from) = (price, from);
            }
        }
        self
    }

    /// The child of a prefix that has one plate more.
    fn longer(&self, at: u32, plate: usize) -> Option<u32> {
        let mut child = self.nodes[at as usize].child;
        while child != 0 {
            let node = &self.nodes[child as usize];
            // Heavier plates come first.
            match (node.plate as usize).cmp(&plate) {
                std::cmp::Ordering::Equal => return Some(child),
                std::cmp::Ordering::Greater => return None,
                std::cmp::Ordering::Less => child = node.sibling,
            }
        }
        None
    }

    fn build(&self, mut at: u32) -> Vec<usize> {
        let mut build = Vec::new();
        while at != 0 {
            let node = &self.nodes[at as usize];
            build.push(node.plate as usize);
            at = node.parent;
        }
        build.reverse();
        build
    }
}

/// How a prefix of the step at hand is reached.
#[derive(Clone, Copy)]
struct Reached {
    sum: usize,
    /// The same prefix among those of the step before.
    above: Option<u32>,
    /// The least price of getting down to one of its prefixes and putting on what it has more.
    least: Price,
    /// The build of the step before that this starts from.
    via: u32,
}

/// The builds of a step, grown plate by plate, heaviest inside.
struct Grow<'a> {
    side: &'a Side,
    before: &'a Layer,
    step: &'a Step,
    fewest: &'a Fewest,
    /// The most plates of a build.
    longest: u8,
    /// The plates that this step or a later one needs, and how far their loads are away, at the least.
    later: (u8, u64),
    /// What moves more plates than this, or as many with loads farther away, is not looked at.
    enough: (u32, u64),
    left: &'a mut usize,
    nodes: Vec<Node>,
}

impl Grow<'_> {
    /// Grows every build that begins with the prefix `at`, which has `used` plates of the denomination `plate`
    /// and none lighter.
    fn below(&mut self, at: u32, plate: usize, used: u8, reached: Reached) -> Result<(), TooMany> {
        let depth = self.nodes[at as usize].depth;
        if let Some(away) = self.step.away(reached.sum) {
            let on_bar = self.step.sets * u32::from(depth);
            let node = &mut self.nodes[at as usize];
            node.down = reached.least + Price { on_bar, away, ..Price::NOTHING };
            (node.from, node.before) = (at, reached.via);
        }
        let mut last = 0;
        for next in plate..self.step.plates {
            let used = if next == plate { used } else { 0 };
            if used == self.side.most[next] || depth == self.longest {
                continue;
            }
            let Some(sum) = self.side.one_more(reached.sum, next) else { continue };
            // As if none of this denomination were used yet, unless all are: a beginning that leads nowhere is
            // sooner tried than found out.
            let lighter = usize::from(used + 1 == self.side.most[next]);
            let needed = self.fewest.from(next + lighter, sum);
            if depth + 1 + needed > self.longest {
                continue;
            }
            let longer = self.longer(reached, sum, next);
            // Whatever goes on comes off again in the end, and so do the plates a later step needs. A build before
            // that has this prefix too may have more in common: each plate of that is one less to take off now,
            // and one more in the end.
            let more = match longer.above {
                Some(_) => depth + 1,
                None => 2 * (depth + 1 + needed).max(self.later.0) - (depth + 1),
            };
            let Price { moved, away, .. } = longer.least;
            if (moved + u32::from(more), away + self.later.1) > self.enough {
                continue;
            }
            *self.left = self.left.checked_sub(1).ok_or(TooMany)?;
            let child = self.nodes.len() as u32;
            let link = if last == 0 { at } else { last };
            let link = &mut self.nodes[link as usize];
            if last == 0 {
                link.child = child
            } else {
                link.sibling = child
            }
            last = child;
            self.nodes.push(Node {
                parent: at,
                plate: next as u8,
                depth: depth + 1,
                ..Node::root()
            });
            self.below(child, next, used + 1, longer)?;
        }
        Ok(())
    }

    fn longer(&self, reached: Reached, sum: usize, plate: usize) -> Reached {
        let price = moved(self.side, plate);
        let above = reached.above.and_then(|above| self.before.longer(above, plate));
        let longer = Reached { sum, above, least: reached.least + price, via: reached.via };
        match above.map(|above| &self.before.nodes[above as usize]) {
            Some(node) if node.down <= longer.least => {
                Reached { least: node.down, via: node.from, ..longer }
            }
            _ => longer,
        }
    }
}
