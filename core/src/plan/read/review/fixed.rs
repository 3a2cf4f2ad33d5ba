//! Loads that the plan gives: built on the bar that will really be taken, and in weeks one after the other.

use std::collections::BTreeMap;

use super::place::Path;
use super::{Review, Whereabouts};
use crate::mass::{Mass, MassUnit};
use crate::plan::read::words::{clip, names};
use crate::plan::{Bar, Builds, Exercise, Lifted, LoadRule, PieceKind, Strength};
use crate::say::{plan_kit, plan_note as say};

/// No load goes up by more than a tenth from one time to the next: the upper end of the 2 to 10 % of the
/// American College of Sports Medicine's position stand (Ratamess et al., Med Sci Sports Exerc
/// 2009;41:687-708).
pub(super) const MOST_PERCENT: u32 = 110;

pub(super) fn review(review: &Review<'_>) {
    for placed in review.strengths() {
        let load = placed.at.key("load");
        if let LoadRule::Fixed { loads } = &placed.kind.load {
            each(review, &load.key("loads"), loads, Some(placed.kind), &placed.kind.movement);
        }
        each(
            review,
            &load.key("start"),
            &placed.kind.start,
            Some(placed.kind),
            &placed.kind.movement,
        );
    }
    for interval in review.intervals() {
        for (index, station) in interval.kind.stations.iter().enumerate() {
            let at = interval.at.key("station").index(index).key("load");
            one(review, &at, station.load, None, &station.movement);
        }
    }
    weeks(review);
    people(review);
}

/// Notes loads more than a tenth over what people made lately, and more than one build: nobody is given them at once.
fn people(review: &Review<'_>) {
    for placed in review.strengths() {
        let LoadRule::Fixed { loads } = &placed.kind.load else { continue };
        let mut over: BTreeMap<(usize, Mass), Vec<String>> = BTreeMap::new();
        let of_it = |who: &&Whereabouts| who.day == placed.day && who.piece == placed.piece.name;
        for who in review.people.iter().filter(of_it).filter(|who| who.exercise.option.is_none()) {
            let builds =
                review.rack.builds(review.block, Some(placed.kind), &who.exercise, who.unit);
            let far =
                who.sets.iter().filter(|set| set.carried && !builds.is_picks()).filter_map(|set| {
                    let index = (set.set as usize - 1).min(loads.len() - 1);
                    let heaviest = set.made.map_or(set.load, |made| made.max(set.load));
                    let next = builds.above(heaviest).map_or(heaviest, |build| build.mass);
                    let most = heaviest.percent(MOST_PERCENT).max(next);
                    (loads[index] > most).then_some((index, heaviest))
                });
            // The widest of somebody's jumps says it.
            if let Some(worst) = far.max_by_key(|(index, heaviest)| loads[*index] - *heaviest) {
                over.entry(worst).or_default().push(clip(&who.name));
            }
        }
        for ((index, from), mut who) in over {
            who.sort();
            let (load, from) = (loads[index].exact_text(), from.exact_text());
            let what = say::fixed_over_people(who.len(), load, from, names(&who));
            let at = placed.at.key("load").key("loads").index(index);
            review.note(&at, what, say::capped_there());
        }
    }
}

fn each(
    review: &Review<'_>,
    at: &Path<'_>,
    loads: &[Mass],
    piece: Option<&Strength>,
    movement: &str,
) {
    for (index, load) in loads.iter().enumerate() {
        one(review, &at.index(index), Some(*load), piece, movement);
    }
}

/// Reports a load that some bar of the kit makes and not the one that will be taken.
fn one(
    review: &Review<'_>,
    at: &Path<'_>,
    load: Option<Mass>,
    piece: Option<&Strength>,
    movement: &str,
) {
    let Some(load) = load.filter(|_| review.lifted(movement) == Lifted::Bar) else { return };
    let unit = if load.is_exact_in(MassUnit::Kg) { MassUnit::Kg } else { MassUnit::Lb };
    let builds = review.rack.builds(review.block, piece, &Exercise::of(movement), unit);
    if builds.exactly(load).is_some() {
        return;
    }
    let what = plan_kit::bar_cant_be(clip(&builds.bar), load.text(unit));
    let able = |bar: &&Bar| {
        let on = review.rack.bar(review.block, &bar.name);
        on.and_then(|builds| builds.exactly(load)).is_some()
    };
    let help = match review.block.kit.bars.iter().find(able) {
        Some(bar) => say::name_bar(clip(&bar.name)),
        None => nearest(builds, load),
    };
    review.wrong(at, what, help);
}

fn nearest(builds: &Builds, load: Mass) -> String {
    match (builds.below(load), builds.above(load)) {
        (Some(below), Some(above)) => {
            plan_kit::nearest_loads(below.mass.exact_text(), above.mass.exact_text())
        }
        (Some(below), None) => plan_kit::heaviest_load(below.mass.exact_text()),
        (None, Some(above)) => plan_kit::lightest_load(above.mass.exact_text()),
        (None, None) => plan_kit::no_bar().to_owned(),
    }
}

/// Notes loads that go up by more than a tenth from one time to the next on the same track: of pieces
/// whose days, and so their order, the plan gives. One build up is never too much.
fn weeks(review: &Review<'_>) {
    let mut before: BTreeMap<(&str, &str), (Vec<Mass>, u32)> = BTreeMap::new();
    let mut told: Vec<(usize, usize)> = Vec::new();
    for planned in review.block.planned_until(review.block.ends()) {
        let days = review.block.days.iter().enumerate();
        let Some((day, of)) = days.clone().find(|(_, day)| day.name == planned.day) else {
            continue;
        };
        for (index, piece) in of.pieces.iter().enumerate() {
            let PieceKind::Strength(strength) = &piece.kind else { continue };
            let LoadRule::Fixed { loads } = &strength.load else { continue };
            let sets = strength.scheme.sets() as usize;
            let all: Vec<Mass> = loads.iter().copied().cycle().take(sets).collect();
            let track = (strength.movement.as_str(), strength.track(&piece.name));
            let last = before.insert(track, (all.clone(), planned.week));
            let Some((last, week)) = last.filter(|_| !told.contains(&(day, index))) else {
                continue;
            };
            let exercise = Exercise::of(&strength.movement);
            let over = last.iter().zip(&all).position(|(last, load)| {
                let unit = if load.is_exact_in(MassUnit::Kg) { MassUnit::Kg } else { MassUnit::Lb };
                let builds = review.rack.builds(review.block, Some(strength), &exercise, unit);
                let one_up = builds.above(*last).is_none_or(|build| build.mass >= *load);
                !one_up && !builds.is_picks() && *load > last.percent(MOST_PERCENT)
            });
            let Some(set) = over else { continue };
            let (from, to) = (last[set], all[set]);
            let at = Path::new().key("day").index(day).key("piece").index(index).key("load");
            let at = at.key("loads").index(set);
            let what = say::fixed_over_cap(to.exact_text(), from.exact_text(), week);
            review.note(&at, what, say::smaller_jump());
            told.push((day, index));
        }
    }
}
