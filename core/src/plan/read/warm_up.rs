//! What warm-ups keep to.

use super::field::Field;
use super::fields::Fields;
use super::part::Part;
use super::quantity::Weight;
use crate::plan::WarmUpRule;
use crate::say;

const WARM_UP: &str = "warm-up = { smallest = \"5 kg\", multiple = \"10 kg\" }";

/// Reads the smallest plate of a warm-up and what its loads are multiples of; one may be left out.
pub(super) fn read(field: Field<'_>) -> Option<WarmUpRule> {
    let mut fields = Fields::of(field, Part::WarmUp, || say::plan::write_example(WARM_UP))?;
    let (smallest, multiple) = (fields.optional("smallest"), fields.optional("multiple"));
    let meant = fields.finish();
    if smallest.is_none() && multiple.is_none() {
        if meant.is_empty() {
            field.absent(say::plan_kit::nothing_for_warm_ups(), say::plan::write_example(WARM_UP));
        }
        return None;
    }
    let read = |field: Option<Field<'_>>| match field {
        Some(field) => field.mass().map(Some),
        None => Some(None),
    };
    let (smallest_plate, multiple_of) = (read(smallest)?, read(multiple)?);
    let unit = smallest_plate.or(multiple_of).map(|weight| weight.unit)?;
    if let (Some(field), Some(weight)) = (multiple, multiple_of)
        && weight.unit != unit
    {
        field.cant_be(say::plan_kit::unit_of_smallest(unit.symbol()));
        return None;
    }
    let usual = WarmUpRule::usual(unit);
    let mass = |of: Option<Weight>, usual| of.map_or(usual, |weight| weight.mass);
    Some(WarmUpRule {
        unit,
        smallest_plate: mass(smallest_plate, usual.smallest_plate),
        multiple: mass(multiple_of, usual.multiple),
    })
}
