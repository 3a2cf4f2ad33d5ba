//! How the loads of a strength piece are found.

use super::field::Field;
use super::fields::Fields;
use super::given::MOST_SETS;
use super::quantity::Weight;
use super::room::Room;
use super::words::counted;
use crate::mass::Mass;
use crate::plan::{Lifted, LoadRule, Step, StepRule};

const RULES: [&str; 5] = ["step", "percent", "reserve", "fixed", "free"];
const RULE: &str = "load = { rule = \"step\", step = \"2.5 kg\" }";
const STEP: &str = "step = [\"2.5 kg\", \"5 lb\"]";
const EARNED: &str = "earned_step = [\"5 kg\", \"10 lb\"]";
const PERCENTS: &str = "percents = [70, 75, 80]";
const RESERVE: &str = "reserve = 2";
const LOADS: &str = "loads = [\"60 kg\", \"65 kg\", \"70 kg\"]";

/// Reps past the target that earn the larger step, when the plan does not say.
const USUAL_EARNED_BY: u32 = 3;
/// Nobody can tell apart more reps in reserve than these: ratings are off by more than two reps from
/// seven on (Hackett et al., J Strength Cond Res 2017;31:2162-2168).
const MOST_RESERVE: u32 = 6;
/// Percent taken off after two misses, when the plan does not say.
const USUAL_BACK_OFF: u32 = 10;

/// Reads a load rule. What it is for, the number of sets and what is lifted, is not always known.
pub(super) fn read(
    field: Field<'_>,
    sets: Option<usize>,
    lifted: Option<Lifted>,
    room: &Room,
) -> Option<LoadRule> {
    let mut fields = Fields::of(field, "a load", RULE)?;
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
            fields.rename("a load with the rule \"reserve\"");
            let reserve = fields.required("reserve", RESERVE);
            let reserve = reserve.and_then(|reserve| reserve.whole(0..=MOST_RESERVE));
            fields.finish();
            reserve.map(|reserve| LoadRule::Reserve { reserve })
        }
        _ => {
            fields.rename("a load with the rule \"free\"");
            fields.finish();
            Some(LoadRule::Free)
        }
    };
    read.filter(|_| loadable)
}

fn can_load(rule: Field<'_>, lifted: Option<Lifted>, room: &Room) -> bool {
    let Some(lifted) = lifted else { return true };
    if lifted == Lifted::Body {
        let what = format!("`rule` can't be {} for a movement with the body alone", rule.found());
        rule.wrong(what, "write rule = \"free\"");
        return false;
    }
    room.check_has(rule, lifted)
}

fn step(mut fields: Fields<'_>) -> Option<StepRule> {
    fields.rename("a load with the rule \"step\"");
    let step = fields.required("step", STEP).and_then(|field| steps(field, STEP));
    let earned = fields.optional("earned_step");
    let earned_step = earned.map_or(Some(Vec::new()), |field| steps(field, EARNED));
    let by = fields.optional("earned_by");
    let earned_by = by.map_or(Some(USUAL_EARNED_BY), |by| by.whole(1..=20));
    let back_off = fields.optional("back_off");
    let back_off = back_off.map_or(Some(USUAL_BACK_OFF), |percent| percent.whole(1..=50));
    let meant = fields.finish();
    if let (Some(by), None, false) = (by, earned, meant.contains(&"earned_step")) {
        let help = format!("add `{EARNED}`, or leave `earned_by` out");
        by.absent("`earned_by` has no `earned_step` to earn", help);
        return None;
    }
    Some(StepRule {
        step: step?,
        earned_step: earned_step?,
        earned_by: earned_by?,
        back_off_percent: back_off?,
    })
}

/// Steps of at most one in each unit.
fn steps(field: Field<'_>, example: &str) -> Option<Vec<Step>> {
    let mut steps: Vec<Step> = Vec::new();
    let mut good = true;
    for entry in field.one_or_list(MOST_SETS, example)? {
        match entry.mass() {
            Some(Weight { unit, .. }) if steps.iter().any(|step| step.unit == unit) => {
                let what = format!("{} is a second step in {}", entry.found(), unit.symbol());
                entry.wrong(what, format!("write one step a unit, such as `{example}`"));
                good = false;
            }
            Some(Weight { mass, unit }) => steps.push(Step { mass, unit }),
            None => good = false,
        }
    }
    good.then_some(steps)
}

fn percent(mut fields: Fields<'_>, sets: Option<usize>) -> Option<LoadRule> {
    fields.rename("a load with the rule \"percent\"");
    let field = fields.required("percents", PERCENTS);
    let entries = field.and_then(|field| field.one_or_list(MOST_SETS, PERCENTS));
    fields.finish();
    let (field, entries) = (field?, entries?);
    one_each(field, entries.len(), sets, "percent", "`percents = 75`");
    let percents: Vec<Option<u32>> =
        entries.into_iter().map(|entry| entry.whole(30..=100)).collect();
    let percents: Option<Vec<u32>> = percents.into_iter().collect();
    percents.map(|percents| LoadRule::Percent { percents })
}

/// A list must have one entry a set; one alone is for all.
fn one_each(field: Field<'_>, found: usize, sets: Option<usize>, what: &str, alone: &str) {
    let Some(sets) = sets.filter(|sets| field.is_list() && *sets != found) else { return };
    let (found, sets) = (counted(found, what), counted(sets, "set"));
    let help = format!("write one {what} for each set, or one alone for all: {alone}");
    field.absent(format!("`{what}s` has {found} for {sets}"), help);
}

fn fixed(
    mut fields: Fields<'_>,
    sets: Option<usize>,
    lifted: Option<Lifted>,
    room: &Room,
) -> Option<Vec<Mass>> {
    fields.rename("a load with the rule \"fixed\"");
    let field = fields.required("loads", LOADS);
    let entries = field.and_then(|field| field.one_or_list(MOST_SETS, LOADS));
    fields.finish();
    let (field, entries) = (field?, entries?);
    one_each(field, entries.len(), sets, "load", "`loads = \"60 kg\"`");
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
