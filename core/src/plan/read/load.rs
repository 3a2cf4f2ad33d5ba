//! How the loads of a strength piece are found.

use super::field::Field;
use super::fields::Fields;
use super::given::MOST_SETS;
use super::part::Part;
use super::quantity::Weight;
use super::room::Room;
use crate::mass::Mass;
use crate::plan::{Lifted, LoadRule, Step, StepRule};
use crate::say;

const RULES: [&str; 5] = ["step", "percent", "reserve", "fixed", "free"];
const RULE: &str = "load = { rule = \"step\", step = \"2.5 kg\" }";
const STEP: &str = "step = [\"2.5 kg\", \"5 lb\"]";
const EARNED: &str = "earned_step = [\"5 kg\", \"10 lb\"]";
const PERCENTS: &str = "percents = [70, 75, 80]";
const RESERVE: &str = "reserve = 2";
const LOADS: &str = "loads = [\"60 kg\", \"65 kg\", \"70 kg\"]";

/// Reps past the target that earn the larger step, when the plan does not say.
const USUAL_EARNED_BY: u32 = 2;
/// Reps stop rising here, when the plan does not say. Common practice, no source.
const USUAL_TOP: u32 = 20;
/// Nobody can tell apart more reps in reserve than these: ratings are off by more than two reps from
/// seven on (Hackett et al., J Strength Cond Res 2017;31:2162-2168).
const MOST_RESERVE: u32 = 6;
/// Percent taken off after two misses, when the plan does not say. Common practice, no source.
const USUAL_BACK_OFF: u32 = 5;

/// Reads a load rule. What it is for, the number of sets and what is lifted, is not always known.
pub(super) fn read(
    field: Field<'_>,
    sets: Option<usize>,
    lifted: Option<Lifted>,
    room: &Room,
) -> Option<LoadRule> {
    let mut fields = Fields::of(field, Part::Load, || say::plan::write_example(RULE))?;
    let rule = fields.required("rule", "rule = \"step\"");
    let Some(word) = rule.and_then(|rule| rule.one_of(&RULES)) else {
        fields.abandon();
        return None;
    };
    let loadable = word == "free" || rule.is_some_and(|rule| can_load(rule, lifted, room));
    let read = match word {
        "step" => step(fields).map(LoadRule::Step),
        "fixed" => {
            let loads = fixed(fields, sets, lifted.filter(|_| loadable), room);
            loads.map(|loads| LoadRule::Fixed { loads })
        }
        "percent" => percent(fields, sets),
        "reserve" => {
            fields.rename(Part::Reserve);
            let reserve = fields.required("reserve", RESERVE);
            let reserve = reserve.and_then(|reserve| reserve.whole(0..=MOST_RESERVE));
            fields.finish();
            reserve.map(|reserve| LoadRule::Reserve {
                reserve,
                step: Vec::new(),
                back_off_percent: USUAL_BACK_OFF,
            })
        }
        _ => {
            fields.rename(Part::Free);
            fields.finish();
            Some(LoadRule::Free)
        }
    };
    read.filter(|_| loadable)
}

fn can_load(rule: Field<'_>, lifted: Option<Lifted>, room: &Room) -> bool {
    let Some(lifted) = lifted else { return true };
    if lifted == Lifted::Body {
        rule.wrong(say::plan_load::rule_for_body(rule.found()), say::plan_load::write_free());
        return false;
    }
    room.check_has(rule, lifted)
}

fn step(mut fields: Fields<'_>) -> Option<StepRule> {
    fields.rename(Part::Step);
    let step = fields.required("step", STEP).and_then(|field| steps(field, STEP));
    let earned = fields.optional("earned_step");
    let earned_step = earned.map_or(Some(Vec::new()), |field| steps(field, EARNED));
    let by = fields.optional("earned_by");
    let earned_by = by.map_or(Some(USUAL_EARNED_BY), |by| by.whole(1..=20));
    let back_off = fields.optional("back_off");
    let back_off = back_off.map_or(Some(USUAL_BACK_OFF), |percent| percent.whole(1..=50));
    let meant = fields.finish();
    if let (Some(by), None, false) = (by, earned, meant.contains(&"earned_step")) {
        by.absent(say::plan_load::nothing_to_earn(), say::plan_load::add_earned_step(EARNED));
        return None;
    }
    Some(StepRule {
        step: step?,
        earned_step: earned_step?,
        earned_by: earned_by?,
        back_off_percent: back_off?,
        top: USUAL_TOP,
    })
}

/// Steps of at most one in each unit.
fn steps(field: Field<'_>, example: &str) -> Option<Vec<Step>> {
    let mut steps: Vec<Step> = Vec::new();
    let mut good = true;
    for entry in field.one_or_list(MOST_SETS, example)? {
        match entry.mass() {
            Some(Weight { unit, .. }) if steps.iter().any(|step| step.unit == unit) => {
                let what = say::plan_load::second_step(entry.found(), unit.symbol());
                entry.wrong(what, say::plan_load::one_step_a_unit(example));
                good = false;
            }
            Some(Weight { mass, unit }) => steps.push(Step { mass, unit }),
            None => good = false,
        }
    }
    good.then_some(steps)
}

fn percent(mut fields: Fields<'_>, sets: Option<usize>) -> Option<LoadRule> {
    fields.rename(Part::Percent);
    let field = fields.required("percents", PERCENTS);
    let entries = field.and_then(|field| field.one_or_list(MOST_SETS, PERCENTS));
    fields.finish();
    let (field, entries) = (field?, entries?);
    one_each(field, entries.len(), sets, say::plan_load::percent_for_each_set);
    let percents: Vec<Option<u32>> =
        entries.into_iter().map(|entry| entry.whole(30..=100)).collect();
    let percents: Option<Vec<u32>> = percents.into_iter().collect();
    percents.map(|percents| LoadRule::Percent {
        percents,
        step: Vec::new(),
        back_off_percent: USUAL_BACK_OFF,
    })
}

/// A list must have one entry a set; one alone is for all.
fn one_each(field: Field<'_>, found: usize, sets: Option<usize>, help: fn() -> &'static str) {
    let Some(sets) = sets.filter(|sets| field.is_list() && *sets != found) else { return };
    field.absent(say::plan_load::not_one_for_each_set(found, sets, field.key()), help());
}

fn fixed(
    mut fields: Fields<'_>,
    sets: Option<usize>,
    lifted: Option<Lifted>,
    room: &Room,
) -> Option<Vec<Mass>> {
    fields.rename(Part::Fixed);
    let field = fields.required("loads", LOADS);
    let entries = field.and_then(|field| field.one_or_list(MOST_SETS, LOADS));
    fields.finish();
    let (field, entries) = (field?, entries?);
    one_each(field, entries.len(), sets, say::plan_load::load_for_each_set);
    let loads = entries.into_iter().map(|entry| {
        let weight = entry.mass()?;
        if let Some(lifted) = lifted {
            room.check_load(entry, weight, lifted);
        }
        Some(weight.mass)
    });
    let loads: Vec<Option<Mass>> = loads.collect();
    loads.into_iter().collect()
}
