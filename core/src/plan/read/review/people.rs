//! What lies ahead of people from where they are: a next load that the step does not reach, or one far away.

use std::collections::BTreeMap;

use super::apart::{Gap, help};
use super::place::Path;
use super::{Placed, Review, SetAt, Whereabouts, fixed};
use crate::mass::MassUnit;
use crate::plan::read::words::{clip, in_a_row, names};
use crate::plan::{Step, StepRule, Strength};
use crate::say::{plan, plan_note as note};

/// So many groups of people at one load are named in a note, and so many people in a group: enough to act on,
/// and short. Common practice, no source.
const MOST_GROUPS: usize = 4;
/// See [`MOST_GROUPS`].
const MOST_NAMES: usize = 5;
/// Reps over the plan's in every set that bring back a load made lately: see the load rules.
const OVER: i128 = 2;

/// The people of a piece.
pub(super) struct Here {
    people: Vec<Person>,
    /// True where there are people, and a load of each is known.
    known: bool,
}

struct Person {
    name: String,
    /// The unit that what they lift is marked in.
    unit: MassUnit,
    ways: Vec<Way>,
}

/// The way from the load of a set to the next one that the room builds.
#[derive(Clone, Copy)]
struct Way {
    gap: Gap,
    /// True where no set carries the load as it is: somebody begins there.
    begins: bool,
    /// The reps that get the next load proposed where the step does not; only of a wide gap.
    reps: i128,
    /// True where the next load is proposed by now.
    proposed: bool,
}

/// What people have in common: whether reps prepare the next load, the load and the next one, and whether they
/// begin there. Ordered as it is told: what nothing prepares first, then the lightest.
type Spot = (bool, Gap, bool);

/// The people of a spot, by name, and the reps that it takes each of them: their sets there differ.
#[derive(Default)]
struct Group {
    names: Vec<String>,
    reps: Vec<i128>,
}

/// Everybody who is known to do a piece.
pub(super) fn here(review: &Review<'_>, placed: &Placed<'_, Strength>) -> Here {
    let of_it = |who: &&Whereabouts| who.day == placed.day && who.piece == placed.piece.name;
    let all: Vec<&Whereabouts> = review.people.iter().filter(of_it).collect();
    let known = !all.is_empty() && all.iter().all(|who| !who.sets.is_empty());
    Here { people: all.into_iter().map(|who| person(review, placed, who)).collect(), known }
}

fn person(review: &Review<'_>, placed: &Placed<'_, Strength>, who: &Whereabouts) -> Person {
    let builds = review.rack.builds(review.block, Some(placed.kind), &who.exercise, who.unit);
    let reps_of = |set: u32| placed.kind.scheme.target(set).unwrap_or(1);
    let sets: Vec<_> = who
        .sets
        .iter()
        // Of what hangs on a body no percent says how far the next pick is, and one pick is the most at once.
        .filter(|_| !builds.is_picks())
        .filter_map(|set| {
            let from = builds.at_or_below(set.load)?.mass;
            Some((set, Gap { from, to: builds.above(from)?.mass }))
        })
        .collect();
    let way = |(_, gap): &(&SetAt, Gap)| {
        // Sets at one load go up together, by the fewest of their reps.
        let alike = || sets.iter().filter(|(_, other)| other == gap);
        let reps = || alike().map(|(set, _)| reps_of(set.set));
        let prepared = gap.reps_before(reps().min().unwrap_or(1));
        let again = alike().any(|(set, _)| set.made >= Some(gap.to));
        let at_it = |set: &SetAt| set.carried && set.load == gap.from;
        let back = reps().max().map(|most| i128::from(most) + OVER).filter(|_| again);
        Way {
            gap: *gap,
            begins: !alike().any(|(set, _)| at_it(set)),
            reps: back.map_or(prepared, |back| prepared.min(back)),
            proposed: alike().all(|(set, gap)| set.proposed >= Some(gap.to)),
        }
    };
    let name = match who.exercise.option {
        None => clip(&who.name),
        Some(_) => note::with_option(clip(&who.name), clip(&review.block.name_of(&who.exercise))),
    };
    Person { name, unit: builds.unit, ways: sets.iter().map(way).collect() }
}

impl Person {
    /// The ways ahead that are wide. Of whoever is given the next load by now it is no longer ahead.
    fn far(&self) -> impl Iterator<Item = &Way> {
        self.ways.iter().filter(|way| way.gap.is_wide() && !way.proposed)
    }
}

impl Here {
    /// Tells of people whose next load is further than the step. True where what is known of them stands instead
    /// of what the plan says alone.
    pub(super) fn too_small(&self, review: &Review<'_>, load: &Path<'_>, steps: &[Step]) -> bool {
        let mut told = false;
        for (index, step) in steps.iter().enumerate() {
            // A wide gap has a note of its own: there no step helps, as nobody goes up by more than a tenth.
            let short = |way: &&Way| !way.gap.is_wide() && way.gap.to > way.gap.from + step.mass;
            let found = self.people.iter().filter(|who| who.unit == step.unit).filter_map(|who| {
                let far = who.ways.iter().filter(short);
                Some((who, *far.max_by_key(|way| (way.gap.to - way.gap.from, way.gap.from))?))
            });
            let groups = grouped(found, i128::MAX);
            if groups.is_empty() {
                continue;
            }
            told = true;
            let near = |gap: &Gap| gap.to <= gap.from.percent(fixed::MOST_PERCENT);
            let gaps = groups.keys().map(|(_, gap, _)| *gap).filter(near);
            let help = match gaps.map(|gap| gap.to - gap.from).max() {
                Some(enough) => note::larger_step_there(enough.exact_text()),
                None => note::fill_gap().to_owned(),
            };
            let lead = note::step_too_small_there(step.mass.exact_text());
            let what = sentences(lead, &groups, said);
            review.note(&load.key("step").index(index), what, help);
        }
        // A gap that people are before says more than that the step is smaller.
        told || self.known || self.people.iter().any(|who| who.far().next().is_some())
    }

    /// The same of people whose next load is far away.
    pub(super) fn gaps(&self, review: &Review<'_>, load: &Path<'_>, rule: &StepRule) -> bool {
        let top = i128::from(rule.top);
        let worse = |one: &&Way, other: &&Way| {
            let unprepared = (one.reps > top).cmp(&(other.reps > top));
            let wider = one.gap.cmp_width(other.gap);
            unprepared.then(wider).then(one.gap.from.cmp(&other.gap.from))
        };
        let found = self.people.iter().filter_map(|who| Some((who, *who.far().max_by(worse)?)));
        let groups = grouped(found, top);
        if groups.is_empty() {
            return self.known;
        }
        let what = sentences(String::new(), &groups, |spot, group| {
            let reps = || group.reps.iter().copied();
            let then = match (reps().min(), reps().max()) {
                _ if !spot.0 => note::not_prepared(top),
                (Some(least), Some(most)) if least < most => note::reached_after_some(least, most),
                (_, most) => note::reached_after(most.unwrap_or(top)),
            };
            sentence(said(spot, group), then)
        });
        let reps = groups.values().flat_map(|group| &group.reps).copied();
        let help = help(reps.max().unwrap_or(0), top);
        review.note(&load.key("step"), what, help);
        true
    }
}

/// People with the same way ahead; `top` is the most reps that are asked.
fn grouped<'p>(found: impl Iterator<Item = (&'p Person, Way)>, top: i128) -> BTreeMap<Spot, Group> {
    let mut groups: BTreeMap<Spot, Group> = BTreeMap::new();
    for (who, way) in found {
        let group = groups.entry((way.reps <= top, way.gap, way.begins)).or_default();
        group.names.push(who.name.clone());
        group.reps.push(way.reps);
    }
    groups.values_mut().for_each(|group| group.names.sort());
    groups
}

/// One sentence after the other: what leads, the first groups, and how many people are left.
fn sentences(
    lead: String,
    groups: &BTreeMap<Spot, Group>,
    of: impl Fn(&Spot, &Group) -> String,
) -> String {
    // A last group takes no more room than the number of its people.
    let most = if groups.len() == MOST_GROUPS + 1 { groups.len() } else { MOST_GROUPS };
    let first = groups.iter().take(most).map(|(spot, group)| of(spot, group));
    let text = first.fold(lead, sentence);
    match groups.values().skip(most).map(|group| group.names.len()).sum() {
        0 => text,
        others => sentence(text, note::same_for_others(others)),
    }
}

fn sentence(before: String, next: String) -> String {
    if before.is_empty() { next } else { plan::both_sentences(before, next) }
}

/// Who is where, and what comes next there.
fn said((_, gap, begins): &Spot, group: &Group) -> String {
    let count = group.names.len();
    let people = match group.names.get(..MOST_NAMES) {
        Some(first) if count > MOST_NAMES + 1 => {
            note::and_others(count - MOST_NAMES, in_a_row(first))
        }
        _ => names(&group.names),
    };
    let (from, to) = (gap.from.exact_text(), gap.to.exact_text());
    match begins {
        false => note::people_at(count, people, from, to, gap.percent()),
        true => note::people_begin(count, people, from, to, gap.percent()),
    }
}
