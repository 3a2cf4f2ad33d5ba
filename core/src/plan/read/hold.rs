//! Hold pieces: a stretch, how long and how it is held.

use super::duration::{self, MINUTE, SECOND};
use super::field::Field;
use super::fields::Fields;
use super::given::Given;
use super::part::Part;
use crate::plan::{HOLD_READY_MS, HOLD_SWITCH_MS, Hold, Protocol, Technique};
use crate::say;

/// The longest time to get ready, in milliseconds.
const LONGEST_READY: i64 = 5 * MINUTE;
/// The longest time to switch, in milliseconds: after more than this a side is begun again.
const LONGEST_SWITCH: i64 = 2 * MINUTE;
const CONTRACT: &str = "contract = \"6 s\"";
const RELAX: &str = "relax = \"24 s\"";

/// Reads what is particular to a hold piece.
pub(super) fn read(mut fields: Fields<'_>, given: &Given) -> Option<Hold> {
    fields.rename(Part::Hold);
    let stretch = fields.required("stretch", "stretch = \"hip-flexor\"");
    let stretch = stretch.and_then(|field| given.stretches.find(field));
    let hold = fields.required("hold", "hold = \"2 min\"");
    let hold_ms = hold.and_then(|hold| hold.duration(5 * SECOND..=20 * MINUTE));
    let sides = fields.optional("sides").map_or(Some(2), |sides| sides.whole(1..=2));
    let written = fields.optional("technique");
    let technique = written.map_or(Some(Technique::Static), technique);
    let resisted = technique == Some(Technique::ContractRelax);
    let (contract, relax) = if resisted {
        (fields.required("contract", CONTRACT), fields.required("relax", RELAX))
    } else {
        (fields.optional("contract"), fields.optional("relax"))
    };
    let measure = fields.optional("measure").map(protocol);
    let ready = fields.optional("ready");
    let ready = ready.map_or(Some(HOLD_READY_MS), |field| field.duration(0..=LONGEST_READY));
    let switch = fields.optional("switch");
    let switch_ms = switch.map_or(Some(HOLD_SWITCH_MS), |field| switching(field, hold_ms, sides));
    let meant = fields.finish();
    let phases = match technique {
        Some(Technique::ContractRelax) => phases(contract, relax, hold_ms),
        // A misspelt `technique` is reported; whether these fit it is not known yet.
        Some(Technique::Static) if !meant.contains(&"technique") => {
            still(written, [("contract", contract), ("relax", relax)])
        }
        _ => None,
    };
    let (contract_ms, relax_ms) = phases?;
    let measure = match measure {
        Some(measure) => Some(measure?),
        None => None,
    };
    Some(Hold {
        stretch: stretch?.key(),
        hold_ms: hold_ms?,
        sides: sides?,
        technique: technique?,
        contract_ms,
        relax_ms,
        measure,
        ready_ms: ready?,
        switch_ms: switch_ms?,
    })
}

/// Time to switch in milliseconds: between two sides, and no longer than either.
fn switching(field: Field<'_>, hold: Option<i64>, sides: Option<u32>) -> Option<i64> {
    let switch = field.duration(0..=LONGEST_SWITCH)?;
    if sides == Some(1) {
        field.wrong(say::plan_day::switch_on_one_side(), say::plan_day::leave_switch_out());
        return None;
    }
    let Some(hold) = hold.filter(|hold| switch > *hold) else { return Some(switch) };
    let (switch, hold) = (duration::text(switch), duration::text(hold));
    field.wrong(say::plan_day::switch_too_long(switch, hold), say::plan_day::shorten_switch());
    None
}

fn technique(field: Field<'_>) -> Option<Technique> {
    Technique::from_text(field.one_of(&Technique::words())?)
}

fn protocol(field: Field<'_>) -> Option<Protocol> {
    Protocol::from_text(field.one_of(&Protocol::words())?)
}

/// Contraction and release in milliseconds; both fit into the hold at least once.
fn phases(
    contract: Option<Field<'_>>,
    relax: Option<Field<'_>>,
    hold: Option<i64>,
) -> Option<(i64, i64)> {
    let contract_ms = contract.and_then(|field| field.duration(SECOND..=60 * SECOND));
    let relax_ms = relax.and_then(|field| field.duration(SECOND..=120 * SECOND));
    let (contract, contract_ms, relax_ms, hold) = (contract?, contract_ms?, relax_ms?, hold?);
    if contract_ms + relax_ms > hold {
        let (cycle, hold) = (duration::text(contract_ms + relax_ms), duration::text(hold));
        let what = say::plan_day::phases_too_long(cycle, hold);
        contract.wrong(what, say::plan_day::shorten_phases());
        return None;
    }
    Some((contract_ms, relax_ms))
}

/// A still hold has neither contraction nor release.
fn still(
    technique: Option<Field<'_>>,
    phases: [(&str, Option<Field<'_>>); 2],
) -> Option<(i64, i64)> {
    let mut good = true;
    for (key, field) in phases {
        let Some(field) = field else { continue };
        good = false;
        let what = say::plan_day::phase_in_static(key);
        let help = say::plan_day::leave_phase_out(key);
        match technique {
            Some(_) => field.wrong(what, help),
            None => field.absent(what, help),
        }
    }
    good.then_some((0, 0))
}
