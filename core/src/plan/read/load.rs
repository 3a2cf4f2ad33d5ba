//! How the loads of a strength piece are found.

use super::field::Field;
use super::fields::Fields;
use super::given::{MOST_REPS, MOST_SETS};
use super::part::Part;
use super::quantity::Weight;
use super::room::{Carrier, Room};
use crate::mass::Mass;
use crate::plan::{Lifted, LoadRule, Step, StepRule};
use crate::say;

const RULES: [&str; 5] = ["step", "percent", "reserve", "fixed", "free"];
const RULE: &str = "load = { rule = \"step\", step = \"2.5 kg\" }";
const STEP: &str = "step = [\"2.5 kg\", \"5 lb\"]";
const EARNED: &str = "earned_step = [\"5 kg\", \"10 lb\"]";
const PERCENTS: &str = "percents = [70, 75, 80]";
const RESERVE: &str = "reserve = 2";
const START: &str = "start = \"40 kg\"";
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

/// Reads a load rule and the loads of the first time. What it is for, the reps of the sets and what they
/// are done with, is not always known.
pub(super) fn read(
    field: Field<'_>,
    reps: Option<&[u32]>,
    carrier: Option<&Carrier>,
    room: &Room,
) -> Option<(LoadRule, Vec<Mass>)> {
    let mut fields = Fields::of(field, Part::Load, || say::plan::write_example(RULE))?;
    let rule = fields.required("rule", "rule = \"step\"");
    let Some(word) = rule.and_then(|rule| rule.one_of(&RULES)) else {
        fields.abandon();
        return None;
    };
    let loadable = word == "free" || rule.is_some_and(|rule| can_load(rule, word, carrier, room));
    let loads = Loads { sets: reps.map(<[u32]>::len), carrier: carrier.filter(|_| loadable), room };
    let read = match word {
        "step" => step(fields, reps, loads),
        "fixed" => {
            fields.rename(Part::Fixed);
            let field = fields.required("loads", LOADS);
            let fixed = field.and_then(|field| loads.read(field, LOADS));
            fields.finish();
            fixed.map(|loads| (LoadRule::Fixed { loads }, Vec::new()))
        }
        "percent" => percent(fields, loads),
        "reserve" => {
            fields.rename(Part::Reserve);
            let reserve = fields.required("reserve", RESERVE);
            let reserve = reserve.and_then(|reserve| reserve.whole(0..=MOST_RESERVE));
            let grows = grows(&mut fields);
            let start = start(&mut fields, loads);
            fields.finish();
            reserve.zip(grows).zip(start).map(|((reserve, (step, back_off_percent)), start)| {
                (LoadRule::Reserve { reserve, step, back_off_percent }, start)
            })
        }
        _ => {
            fields.rename(Part::Free);
            fields.finish();
            Some((LoadRule::Free, Vec::new()))
        }
    };
    read.filter(|_| loadable)
}

fn can_load(rule: Field<'_>, word: &str, carrier: Option<&Carrier>, room: &Room) -> bool {
    let Some(lifted) = carrier.map(|carrier| carrier.lifted) else { return true };
    if lifted == Lifted::Body {
        rule.wrong(say::plan_load::rule_for_body(rule.found()), say::plan_load::write_free());
        return false;
    }
    if lifted.is_on_a_body() && matches!(word, "percent" | "reserve") {
        let what = say::plan_load::rule_on_a_body(rule.found());
        rule.wrong(what, say::plan_load::write_step_fixed_or_free());
        return false;
    }
    room.check_has(rule, lifted)
}

fn step(
    mut fields: Fields<'_>,
    reps: Option<&[u32]>,
    loads: Loads<'_>,
) -> Option<(LoadRule, Vec<Mass>)> {
    fields.rename(Part::Step);
    let step = fields.required("step", STEP).and_then(|field| steps(field, STEP));
    let earned = fields.optional("earned_step");
    let earned_step = earned.map_or(Some(Vec::new()), |field| steps(field, EARNED));
    let by = fields.optional("earned_by");
    let earned_by = by.map_or(Some(USUAL_EARNED_BY), |by| by.whole(1..=20));
    let back_off = back_off(&mut fields);
    // Reps that a plan asks for are never above their end.
    let most = reps.and_then(|reps| reps.iter().copied().max()).unwrap_or(1);
    let top = fields.optional("top");
    let top = top.map_or(Some(USUAL_TOP.max(most)), |top| top.whole(most..=MOST_REPS));
    let start = start(&mut fields, loads);
    let meant = fields.finish();
    if let (Some(by), None, false) = (by, earned, meant.contains(&"earned_step")) {
        by.absent(say::plan_load::nothing_to_earn(), say::plan_load::add_earned_step(EARNED));
        return None;
    }
    let rule = StepRule {
        step: step?,
        earned_step: earned_step?,
        earned_by: earned_by?,
        back_off_percent: back_off?,
        top: top?,
    };
    Some((LoadRule::Step(rule), start?))
}

fn back_off(fields: &mut Fields<'_>) -> Option<u32> {
    let percent = fields.optional("back_off");
    percent.map_or(Some(USUAL_BACK_OFF), |percent| percent.whole(1..=50))
}

/// What the one-rep max behind a rule goes up by, and the percent it goes down by.
fn grows(fields: &mut Fields<'_>) -> Option<(Vec<Step>, u32)> {
    let step = fields.optional("step").map_or(Some(Vec::new()), |field| steps(field, STEP));
    let back_off = back_off(fields);
    step.zip(back_off)
}

/// The loads of the first time; none where none are written.
fn start(fields: &mut Fields<'_>, loads: Loads<'_>) -> Option<Vec<Mass>> {
    fields.optional("start").map_or(Some(Vec::new()), |field| loads.read(field, START))
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

fn percent(mut fields: Fields<'_>, loads: Loads<'_>) -> Option<(LoadRule, Vec<Mass>)> {
    fields.rename(Part::Percent);
    let field = fields.required("percents", PERCENTS);
    let entries = field.and_then(|field| field.one_or_list(MOST_SETS, PERCENTS));
    let grows = grows(&mut fields);
    let start = start(&mut fields, loads);
    fields.finish();
    let (field, entries) = (field?, entries?);
    one_each(field, entries.len(), loads.sets, say::plan_load::percent_for_each_set);
    let percents: Vec<Option<u32>> =
        entries.into_iter().map(|entry| entry.whole(30..=100)).collect();
    let percents: Option<Vec<u32>> = percents.into_iter().collect();
    let (step, back_off_percent) = grows?;
    Some((LoadRule::Percent { percents: percents?, step, back_off_percent }, start?))
}

/// A list must have one entry a set; one alone is for all.
fn one_each(field: Field<'_>, found: usize, sets: Option<usize>, help: fn() -> &'static str) {
    let Some(sets) = sets.filter(|sets| field.is_list() && *sets != found) else { return };
    field.absent(say::plan_load::not_one_for_each_set(found, sets, field.key()), help());
}

/// What loads are for: so many sets, done with something. Neither is always known.
#[derive(Clone, Copy)]
struct Loads<'a> {
    sets: Option<usize>,
    carrier: Option<&'a Carrier>,
    room: &'a Room,
}

impl Loads<'_> {
    /// Reads one load for all sets, or one a set, each of which the kit must be able to build; `example` is
    /// a line that writes them.
    fn read(self, field: Field<'_>, example: &str) -> Option<Vec<Mass>> {
        let entries = field.one_or_list(MOST_SETS, example)?;
        one_each(field, entries.len(), self.sets, say::plan_load::load_for_each_set);
        let loads = entries.into_iter().map(|entry| {
            let weight = entry.load(self.carrier.map(|carrier| carrier.lifted))?;
            if let Some(carrier) = self.carrier {
                self.room.check_load(entry, weight, carrier);
            }
            Some(weight.mass)
        });
        let loads: Vec<Option<Mass>> = loads.collect();
        loads.into_iter().collect()
    }
}
