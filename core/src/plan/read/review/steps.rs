//! Steps that add nothing, that are written for one unit only, and rules without plates.

use super::place::Path;
use super::{Placed, Review, people};
use crate::mass::Mass;
use crate::plan::read::words::clip;
use crate::plan::{Builds, LoadKind, LoadRule, Step, StepRule, Strength};
use crate::say::plan_note as say;

pub(super) fn review(review: &Review<'_>) {
    for placed in review.strengths() {
        let load = placed.at.key("load");
        let carriers = review.carriers(placed.kind);
        match &placed.kind.load {
            LoadRule::Step(rule) => {
                earned_below_step(review, &load, rule);
                let told = people::here(review, &placed).too_small(review, &load, &rule.step);
                for builds in carriers.iter().filter(|_| !told) {
                    too_small(review, &load, &placed, &rule.step, builds);
                }
                one_unit(review, &load.key("step"), "step", &rule.step, &carriers);
                if !rule.earned_step.is_empty() {
                    let at = load.key("earned_step");
                    one_unit(review, &at, "earned_step", &rule.earned_step, &carriers);
                }
            }
            LoadRule::Percent { step, .. } | LoadRule::Reserve { step, .. } => {
                if !step.is_empty() {
                    one_unit(review, &load.key("step"), "step", step, &carriers);
                }
            }
            LoadRule::Fixed { .. } | LoadRule::Free => continue,
        }
        for builds in carriers.iter().filter(|builds| builds.kind == LoadKind::Plates) {
            if builds.loads().nth(1).is_none() && builds.loads().next().is_some() {
                let what = say::no_plates(clip(&builds.bar));
                review.note(&load.key("rule"), what, say::add_plates());
            }
        }
    }
}

/// An earned step that is no larger than the step it stands in for.
fn earned_below_step(review: &Review<'_>, load: &Path<'_>, rule: &StepRule) {
    for (index, earned) in rule.earned_step.iter().enumerate() {
        let usual = rule.step.iter().find(|step| step.unit == earned.unit);
        if let Some(step) = usual.filter(|step| earned.mass <= step.mass) {
            let (earned, step) = (earned.mass.text(earned.unit), step.mass.text(step.unit));
            let at = load.key("earned_step").index(index);
            review.note(&at, say::earned_too_small(earned, step), say::larger_earned());
        }
    }
}

/// A step that leads to no other load: from where the plan starts, where it says so, otherwise from none
/// of the loads that there are.
fn too_small(
    review: &Review<'_>,
    load: &Path<'_>,
    placed: &Placed<'_, Strength>,
    steps: &[Step],
    builds: &Builds,
) {
    // A unit without a step has a note of its own.
    let Some(index) = steps.iter().position(|step| step.unit == builds.unit) else { return };
    let step = steps[index];
    let at = load.key("step").index(index);
    let text = |mass: Mass| mass.exact_text();
    let by = step.mass.text(step.unit);
    let start: Vec<Mass> = placed.kind.start.clone();
    if !start.is_empty() {
        let stuck = start.iter().filter(|from| builds.exactly(**from).is_some()).find_map(|from| {
            let next = builds.above(*from)?.mass;
            (next > *from + step.mass).then_some((*from, next))
        });
        if let Some((from, next)) = stuck {
            let what = say::step_too_small_from(text(from), by, text(next));
            review.note(&at, what, say::larger_step(text(next - from)));
        }
        return;
    }
    let gaps = builds.loads().zip(builds.loads().skip(1)).map(|(load, next)| next - load);
    if let Some(least) = gaps.min().filter(|least| *least > step.mass) {
        review.note(&at, say::step_too_small(by, text(least)), say::larger_step(text(least)));
    }
}

/// A step that has no mass in a unit that somebody's bar is loaded in.
fn one_unit(review: &Review<'_>, at: &Path<'_>, key: &str, steps: &[Step], carriers: &[&Builds]) {
    for builds in carriers.iter().filter(|builds| builds.loads().nth(1).is_some()) {
        if steps.iter().any(|step| step.unit == builds.unit) {
            continue;
        }
        let unit = builds.unit.symbol();
        let what = match builds.bar.is_empty() {
            true => say::no_step_in_unit(key, unit),
            false => say::no_step_in_unit_of_bar(key, unit, clip(&builds.bar)),
        };
        review.note(at, what, say::step_in_each_unit(unit));
    }
}
