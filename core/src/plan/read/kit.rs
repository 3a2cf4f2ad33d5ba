//! The kit: bars, plates, bells and machines of the room.

use toml::de::DeTable;

use super::field::Field;
use super::fields::{Fields, whole_plan};
use super::part::Part;
use super::problems::Problems;
use super::quantity::Weight;
use super::room::{Known, Room};
use super::{stack, warm_up};
use crate::mass::{Mass, MassUnit};
use crate::plan::{Bar, Bell, Kit, Machine, PlateStack, Stack};
use crate::say;

/// No room has more kinds of bar.
const MOST_BARS: usize = 20;
/// No room has more machines.
const MOST_MACHINES: usize = 40;
/// No room has more kinds of plate, or of bell.
const MOST_KINDS: usize = 40;

const BAR: &str = "bar = [{ name = \"long bar\", mass = \"20 kg\", count = 2 }]";
const PLATE: &str = "plate = [{ mass = \"10 kg\", count = 4 }]";
const MACHINE: &str = "machine = [{ name = \"leg press\", stack = { from = \"10 kg\", to = \"100 kg\", step = \"10 kg\" } }]";
const STACK: &str = "stack = [\"10 kg\", \"20 kg\", \"30 kg\"]";
const ASSISTANCE: &str = "assistance = [\"10 kg\", \"20 kg\"]";
const BELL: &str = "bell = [{ mass = \"16 kg\", count = 3 }]";

/// Reads only the kit of a plan, for somebody who wants to load one of its bars.
pub(super) fn read_alone<'r>(tree: &'r DeTable<'r>, problems: &'r Problems<'r>) -> Option<Kit> {
    let mut plan = whole_plan(tree, problems);
    let field = plan.required("kit", "[kit]");
    for other in ["block", "movement", "stretch", "day"] {
        plan.optional(other);
    }
    plan.finish();
    let room = read(field?);
    room.check_has_bar(field?).then_some(room.kit)
}

/// Reads the kit into what its loads can be checked against.
pub(super) fn read(field: Field<'_>) -> Room {
    let help = || say::plan::write_example("[kit]");
    let Some(mut fields) = Fields::of(field, Part::Kit, help) else { return Room::unknown() };
    let name = fields.optional("name").map(|name| name.text(0..=60, false));
    let bars = fields.optional("bar").map_or(Some(Vec::new()), bars);
    let plate = fields.optional("plate");
    let plates = plate.map_or(Some(Vec::new()), plates);
    let bells = fields.optional("bell").map_or(Some(Vec::new()), bells);
    let machines = fields.optional("machine").map_or(Some(Vec::new()), machines);
    let assistance = fields.optional("assistance");
    let assistance =
        assistance.map_or(Some(Stack::default()), |field| stack::read(field, ASSISTANCE));
    let mixed = fields.optional("mixed").map_or(Some(false), Field::flag);
    let warm_up = fields.optional("warm-up").and_then(warm_up::read);
    let meant = fields.finish();
    let meant_none = |keys: &[&str]| !keys.iter().any(|key| meant.contains(key));
    let bars_known = bars.is_some()
        && plates.is_some()
        && mixed.is_some()
        && meant_none(&["bar", "plate", "mixed"]);
    let known = Known {
        bars: bars_known,
        bells: bells.is_some() && meant_none(&["bell"]),
        machines: machines.is_some() && meant_none(&["machine"]),
        assistance: assistance.is_some() && meant_none(&["assistance"]),
    };
    let kit = Kit {
        name: name.flatten().unwrap_or_default(),
        bars: bars.unwrap_or_default(),
        plates: plates.unwrap_or_default(),
        bells: bells.unwrap_or_default(),
        machines: machines.unwrap_or_default(),
        assistance: assistance.unwrap_or_default(),
        mixed: mixed.unwrap_or_default(),
        warm_up,
    };
    Room::new(kit, plate, known)
}

/// Reads every entry of a list of tables; nothing when one of them has a problem.
fn each<T>(
    field: Field<'_>,
    most: usize,
    part: Part,
    example: &str,
    mut one: impl FnMut(Fields<'_>) -> Option<T>,
) -> Option<Vec<T>> {
    let entries = field.list(0..=most, example)?;
    let help = || say::plan::write_example(example);
    let read: Vec<Option<T>> =
        entries.into_iter().map(|entry| one(Fields::of(entry, part, help)?)).collect();
    read.into_iter().collect()
}

fn bars(field: Field<'_>) -> Option<Vec<Bar>> {
    let mut names = Vec::new();
    each(field, MOST_BARS, Part::Bar, BAR, |mut fields| {
        let written = fields.required("name", "name = \"long bar\"");
        let name = written.and_then(Field::name);
        let mass = fields.required("mass", "mass = \"20 kg\"").and_then(Field::mass);
        let collars = fields.optional("collars");
        let collars = collars.map_or(Some(Mass::ZERO), |collars| marked_alike(collars, mass));
        let count = fields.optional("count").map_or(Some(1), |count| count.whole(1..=50));
        fields.finish();
        let name = not_before(&mut names, written?, name?, &BARS)?;
        let Weight { mass, unit } = mass?;
        Some(Bar { name, mass, unit, collars: collars?, count: count? })
    })
}

/// Collars are marked in the unit of their bar, so that the whole load is exact in it.
fn marked_alike(collars: Field<'_>, bar: Option<Weight>) -> Option<Mass> {
    let weight = collars.mass_or_none()?;
    let Some(bar) = bar.filter(|bar| bar.unit != weight.unit) else { return Some(weight.mass) };
    collars.cant_be(say::plan_kit::unit_of_bar(bar.unit.symbol()));
    None
}

fn plates(field: Field<'_>) -> Option<Vec<PlateStack>> {
    let mut seen = Vec::new();
    each(field, MOST_KINDS, Part::Plate, PLATE, |mut fields| {
        let (mass, unit) = denomination(&mut fields, &mut seen, "mass = \"10 kg\"");
        let written = fields.required("count", "count = 4");
        let count = written.and_then(|count| count.whole(2..=200));
        fields.finish();
        let count = count?;
        if count % 2 == 1 {
            let help = say::plan_kit::count_single_plates(count - 1, count + 1);
            written?.wrong(say::plan_kit::plate_without_pair(count), help);
            return None;
        }
        Some(PlateStack { mass: mass?, unit: unit?, count })
    })
}

fn bells(field: Field<'_>) -> Option<Vec<Bell>> {
    let mut seen = Vec::new();
    each(field, MOST_KINDS, Part::Bell, BELL, |mut fields| {
        let (mass, unit) = denomination(&mut fields, &mut seen, "mass = \"16 kg\"");
        let count = fields.required("count", "count = 3").and_then(|count| count.whole(1..=100));
        fields.finish();
        Some(Bell { mass: mass?, unit: unit?, count: count? })
    })
}

fn machines(field: Field<'_>) -> Option<Vec<Machine>> {
    let mut names = Vec::new();
    each(field, MOST_MACHINES, Part::Machine, MACHINE, |mut fields| {
        let written = fields.required("name", "name = \"leg press\"");
        let name = written.and_then(Field::name);
        let stack = fields.required("stack", STACK).and_then(|field| stack::read(field, STACK));
        fields.finish();
        let name = not_before(&mut names, written?, name?, &MACHINES)?;
        Some(Machine { name, stack: stack? })
    })
}

/// The mass plates or bells are marked with, which no entry before has.
fn denomination(
    fields: &mut Fields<'_>,
    seen: &mut Vec<(Mass, u32)>,
    example: &'static str,
) -> (Option<Mass>, Option<MassUnit>) {
    let Some(field) = fields.required("mass", example) else { return (None, None) };
    let Some(Weight { mass, unit }) = field.mass() else { return (None, None) };
    let Some((_, line)) = seen.iter().find(|(known, _)| *known == mass) else {
        seen.push((mass, field.line()));
        return (Some(mass), Some(unit));
    };
    let what = say::plan_kit::mass_listed_already(mass.text(unit), line);
    field.wrong(what, say::plan_kit::list_mass_once());
    (None, None)
}

/// What is said where two have one name.
struct Same {
    /// Says that the one on a line is called so too.
    what: fn(u32, String) -> String,
    help: fn() -> &'static str,
}

const BARS: Same = Same {
    what: |line, found| say::plan_kit::bar_named_already(line, found),
    help: say::plan_kit::name_each_bar,
};

const MACHINES: Same = Same {
    what: |line, found| say::plan_kit::machine_named_already(line, found),
    help: say::plan_kit::name_each_machine,
};

/// The name, when none before has it.
fn not_before(
    seen: &mut Vec<(String, u32)>,
    field: Field<'_>,
    name: String,
    same: &Same,
) -> Option<String> {
    if let Some((_, line)) = seen.iter().find(|(known, _)| *known == name) {
        field.wrong((same.what)(*line, field.found()), (same.help)());
        return None;
    }
    seen.push((name.clone(), field.line()));
    Some(name)
}
