//! Masses of which one is taken at a time: listed, or in even steps.

use super::field::Field;
use super::fields::Fields;
use super::part::Part;
use super::quantity::Weight;
use crate::mass::MassUnit;
use crate::plan::Stack;
use crate::say;

/// No machine has more.
const MOST: usize = 100;

/// Reads a list of masses, or a table with the first, the last and the step between two; `example` is a
/// line that writes one.
pub(super) fn read(field: Field<'_>, example: &str) -> Option<Stack> {
    match field.as_table() {
        Some(_) => in_steps(field, example),
        None => listed(field, example),
    }
}

fn listed(field: Field<'_>, example: &str) -> Option<Stack> {
    let mut stack: Option<Stack> = None;
    let mut good = true;
    for entry in field.list(1..=MOST, example)? {
        let Some(Weight { mass, unit }) = entry.mass() else {
            good = false;
            continue;
        };
        let stack = stack.get_or_insert(Stack { unit, masses: Vec::new() });
        if alike(entry, unit, stack.unit).is_none() {
            good = false;
        } else if stack.masses.contains(&mass) {
            entry.wrong(say::plan::listed_twice(entry.found()), say::plan::take_one_out());
            good = false;
        } else {
            stack.masses.push(mass);
        }
    }
    let mut stack = stack.filter(|_| good)?;
    stack.masses.sort();
    Some(stack)
}

fn in_steps(field: Field<'_>, example: &str) -> Option<Stack> {
    let mut fields = Fields::of(field, Part::Stack, || say::plan::write_example(example))?;
    let from = fields.required("from", "from = \"10 kg\"").and_then(Field::mass);
    let last = fields.required("to", "to = \"100 kg\"");
    let to = last.and_then(Field::mass);
    let between = fields.required("step", "step = \"10 kg\"");
    let step = between.and_then(Field::mass);
    fields.finish();
    let (Weight { mass: from, unit }, to, step) = (from?, to?, step?);
    let (last, between) = (last?, between?);
    let same = (alike(last, to.unit, unit), alike(between, step.unit, unit));
    let ((), ()) = (same.0?, same.1?);
    let (to, step) = (to.mass, step.mass);
    if to < from {
        last.cant_be(say::plan_kit::last_of_stack(from.text(unit)));
        return None;
    }
    let (span, each) = ((to - from).ten_ng, step.ten_ng);
    let below = from + step * (span / each);
    if below != to {
        let what = say::plan_kit::uneven_stack(from.text(unit), step.text(unit), to.text(unit));
        let help = say::plan_kit::end_of_stack(below.text(unit), (below + step).text(unit));
        last.wrong(what, help);
        return None;
    }
    if span / each >= MOST as i64 {
        let (count, most) = (span / each + 1, MOST);
        between.wrong(say::plan_kit::stack_too_long(count, most), say::plan_kit::larger_step());
        return None;
    }
    let masses = (0..=span / each).map(|count| from + step * count).collect();
    Some(Stack { unit, masses })
}

/// Nothing where a mass is not marked in the unit of the others, which is reported.
fn alike(field: Field<'_>, unit: MassUnit, others: MassUnit) -> Option<()> {
    if unit == others {
        return Some(());
    }
    field.cant_be(say::plan_kit::unit_of_others(others.symbol()));
    None
}
