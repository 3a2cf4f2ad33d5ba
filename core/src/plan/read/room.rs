//! What the room can build, so that a load nobody can make is found when it is written.

use std::borrow::Cow;
use std::cmp::Reverse;
use std::collections::BTreeMap;

use super::field::Field;
use super::quantity::Weight;
use super::words::{Mark, clip, either, thousands, with_guess};
use crate::mass::{Mass, MassUnit};
use crate::plan::{Bar, Builds, Kit, Lifted, LoadKind, MAX_PLATES_A_SIDE};
use crate::say;

/// More different sums than this on one side of a bar take too long to work out. The usual plates
/// of a unit make fewer than 1,000.
const MOST_SUMS: usize = 10_000;
const A_BELL: &str = "bell = [{ mass = \"16 kg\", count = 2 }]";
const A_BAR: &str = "bar = [{ name = \"long bar\", mass = \"20 kg\" }]";
const A_MACHINE: &str = "machine = [{ name = \"leg press\", stack = [\"10 kg\", \"20 kg\"] }]";
const ASSISTANCE: &str = "assistance = [\"10 kg\", \"20 kg\"]";
const UNITS: [MassUnit; 2] = [MassUnit::Kg, MassUnit::Lb];

/// The kit and the loads it makes.
pub(super) struct Room {
    /// The kit.
    pub(super) kit: Kit,
    /// What plates add to a bar, for each unit.
    sides: Vec<Builds>,
    known: Known,
}

/// What of a kit could be read: nothing is said about the rest.
#[derive(Clone, Copy)]
pub(super) struct Known {
    /// Bars and plates.
    pub(super) bars: bool,
    pub(super) bells: bool,
    pub(super) machines: bool,
    pub(super) assistance: bool,
}

/// What a movement is done with.
#[derive(Clone, Debug)]
pub(super) struct Carrier {
    /// What carries its load.
    pub(super) lifted: Lifted,
    /// The name of its bar, where the plan names one.
    pub(super) bar: Option<String>,
    /// The name of its machine, where the plan names one.
    pub(super) machine: Option<String>,
}

impl Room {
    /// A room with no kit.
    pub(super) fn empty() -> Room {
        let known = Known { bars: true, bells: true, machines: true, assistance: true };
        Room::with(Kit::default(), known)
    }

    /// A room whose kit could not be read.
    pub(super) fn unknown() -> Room {
        let known = Known { bars: false, bells: false, machines: false, assistance: false };
        Room::with(Kit::default(), known)
    }

    /// A room with a kit. `plate` is where the plates are written; it gets a problem when they
    /// make too many different loads.
    pub(super) fn new(kit: Kit, plate: Option<Field<'_>>, mut known: Known) -> Room {
        let few = UNITS.iter().all(|unit| few_sums(&kit, *unit));
        if let (false, Some(plate)) = (few, plate) {
            let most = thousands(MOST_SUMS);
            let help = match kit.mixed {
                true => say::plan_kit::leave_odd_plates_out_or_unmix(),
                false => say::plan_kit::leave_odd_plates_out(),
            };
            plate.wrong(say::plan_kit::too_many_loads(most), help);
        }
        known.bars &= few;
        Room::with(kit, known)
    }

    fn with(kit: Kit, known: Known) -> Room {
        // Bars differ only by what they weigh empty, so one weightless bar a unit does for all.
        let weightless = |unit| Bar {
            name: String::new(),
            mass: Mass::ZERO,
            unit,
            collars: Mass::ZERO,
            count: 1,
        };
        let units = if known.bars { &UNITS[..] } else { &[] };
        let sides = units.iter().map(|unit| Builds::bar(&kit, &weightless(*unit))).collect();
        Room { kit, sides, known }
    }

    /// Reports at `field`, the kit itself, when it has no bar.
    pub(super) fn check_has_bar(&self, field: Field<'_>) -> bool {
        let lacks = self.known.bars && self.kit.bars.is_empty();
        if lacks {
            field.absent(say::plan_kit::no_bar(), say::plan::add_example(A_BAR));
        }
        !lacks
    }

    /// Reads the name of a bar that the kit has, for a movement with `lifted`.
    pub(super) fn bar(&self, field: Field<'_>, lifted: Option<Lifted>) -> Option<String> {
        let name = field.name()?;
        if lifted.is_some_and(|lifted| lifted != Lifted::Bar) {
            field.wrong(say::plan_kit::bar_without_bar(), say::plan_kit::leave_bar_out());
            return None;
        }
        let names: Vec<&str> = self.kit.bars.iter().map(|bar| bar.name.as_str()).collect();
        let known = !self.known.bars || names.contains(&name.as_str());
        if !known {
            self.unnamed(field, &name, &names, say::plan_kit::no_such_bar, A_BAR);
        }
        known.then_some(name)
    }

    /// Reads the name of a machine that the kit has, for a movement with `lifted`.
    pub(super) fn machine(&self, field: Field<'_>, lifted: Option<Lifted>) -> Option<String> {
        let name = field.name()?;
        if lifted.is_some_and(|lifted| lifted != Lifted::Machine) {
            field.wrong(
                say::plan_kit::machine_without_machine(),
                say::plan_kit::leave_machine_out(),
            );
            return None;
        }
        let machines = &self.kit.machines;
        let names: Vec<&str> = machines.iter().map(|machine| machine.name.as_str()).collect();
        let known = !self.known.machines || names.contains(&name.as_str());
        if !known {
            self.unnamed(field, &name, &names, say::plan_kit::no_such_machine, A_MACHINE);
        }
        known.then_some(name)
    }

    fn unnamed(
        &self,
        field: Field<'_>,
        name: &str,
        names: &[&str],
        what: fn(String) -> String,
        example: &str,
    ) {
        let help = match names {
            [] => say::plan_kit::add_to_kit_alone(example),
            names => {
                let list = say::plan::write_word(either(names, Mark::Word));
                with_guess(name, names, Mark::Word, list)
            }
        };
        field.absent(what(clip(name)), help);
    }

    /// Reports at `field` when the kit has nothing to load for `lifted`.
    pub(super) fn check_has(&self, field: Field<'_>, lifted: Lifted) -> bool {
        let (kit, known) = (&self.kit, self.known);
        let pairs = || kit.bells.iter().any(|bell| bell.count >= 2);
        let (has, known, what, example) = match lifted {
            Lifted::Body => return true,
            Lifted::Bar => {
                (!kit.bars.is_empty(), known.bars, say::plan_kit::no_bar_for_load(), A_BAR)
            }
            Lifted::Bell => {
                (!kit.bells.is_empty(), known.bells, say::plan_kit::no_bell_for_load(), A_BELL)
            }
            Lifted::Pair => (pairs(), known.bells, say::plan_kit::no_pair_for_load(), A_BELL),
            Lifted::Added => (
                !kit.plates.is_empty() || !kit.bells.is_empty(),
                known.bars && known.bells,
                say::plan_kit::nothing_to_hang(),
                A_BELL,
            ),
            Lifted::Assisted => (
                !kit.assistance.masses.is_empty(),
                known.assistance,
                say::plan_kit::no_assistance_for_load(),
                ASSISTANCE,
            ),
            Lifted::Machine => (
                !kit.machines.is_empty(),
                known.machines,
                say::plan_kit::no_machine_for_load(),
                A_MACHINE,
            ),
        };
        if has || !known {
            return true;
        }
        field.absent(what, say::plan_kit::add_to_kit(example));
        false
    }

    /// Reports at `field` when nothing in the kit makes exactly `load`.
    pub(super) fn check_load(&self, field: Field<'_>, load: Weight, carrier: &Carrier) {
        let Some(choices) = self.choices(carrier) else { return };
        if choices.iter().any(|(empty, builds)| builds.exactly(load.mass - *empty).is_some()) {
            return;
        }
        // Nearby loads in the coach's own unit are the ones to choose from, where there are any.
        let alike = choices.iter().any(|(_, builds)| builds.unit == load.unit);
        let near = || choices.iter().filter(|(_, builds)| !alike || builds.unit == load.unit);
        let below = near().filter_map(|(empty, builds)| {
            Some(builds.at_or_below(load.mass - *empty)?.mass + *empty)
        });
        let above = near()
            .filter_map(|(empty, builds)| Some(builds.above(load.mass - *empty)?.mass + *empty));
        let help = match (below.max(), above.min()) {
            (Some(below), Some(above)) => {
                say::plan_kit::nearest_loads(below.exact_text(), above.exact_text())
            }
            (Some(below), None) => say::plan_kit::heaviest_load(below.exact_text()),
            (None, Some(above)) => say::plan_kit::lightest_load(above.exact_text()),
            // Nothing to load at all, which `check_has` reports.
            (None, None) => return,
        };
        let asked = load.mass.text(load.unit);
        let what = match (carrier.lifted, &carrier.bar) {
            (Lifted::Bell, _) => say::plan_kit::no_bell_weighs(asked),
            (Lifted::Pair, _) => say::plan_kit::no_pair_weighs(asked),
            (Lifted::Added, _) => say::plan_kit::cannot_hang(asked),
            (Lifted::Assisted, _) => say::plan_kit::no_such_assistance(asked),
            (Lifted::Machine, _) => say::plan_kit::no_such_pin(asked),
            (Lifted::Bar | Lifted::Body, Some(bar)) => say::plan_kit::bar_cant_be(clip(bar), asked),
            (Lifted::Bar | Lifted::Body, None) => say::plan_kit::no_bar_builds(asked),
        };
        field.absent(what, help);
    }

    /// What may make a load: what it weighs empty and what is added to that. None where that could not be
    /// read.
    fn choices(&self, carrier: &Carrier) -> Option<Vec<(Mass, Cow<'_, Builds>)>> {
        use Cow::{Borrowed, Owned};
        let (kit, known) = (&self.kit, self.known);
        let one = |builds: Builds| vec![(Mass::ZERO, Owned(builds))];
        match carrier.lifted {
            Lifted::Bar => known.bars.then(|| {
                let meant = |bar: &&Bar| carrier.bar.as_ref().is_none_or(|name| *name == bar.name);
                let loaded = |bar: &Bar| {
                    let sides = self.sides.iter().find(|builds| builds.unit == bar.unit)?;
                    Some((bar.mass + bar.collars, Borrowed(sides)))
                };
                kit.bars.iter().filter(meant).filter_map(loaded).collect()
            }),
            Lifted::Bell => {
                known.bells.then(|| one(Builds::bells(&kit.bells, MassUnit::default())))
            }
            Lifted::Pair => {
                known.bells.then(|| one(Builds::pairs(&kit.bells, MassUnit::default())))
            }
            Lifted::Added => (known.bars && known.bells)
                .then(|| UNITS.iter().flat_map(|unit| one(Builds::added(kit, *unit))).collect()),
            Lifted::Assisted => known.assistance.then(|| one(Builds::assisted(&kit.assistance))),
            Lifted::Machine => known.machines.then(|| {
                let named = carrier.machine.as_ref().and_then(|name| kit.machine(name));
                let machine = named.or(kit.machines.first());
                let none = || Builds::none(LoadKind::Stack, MassUnit::default());
                one(machine.map_or_else(none, Builds::machine))
            }),
            Lifted::Body => None,
        }
    }
}

/// True when the plates for a bar of a unit make few enough sums for [`Builds::bar`] to list them all: a
/// handful of odd masses makes millions.
fn few_sums(kit: &Kit, unit: MassUnit) -> bool {
    let mut fewest: BTreeMap<Mass, usize> = BTreeMap::from([(Mass::ZERO, 0)]);
    let mut stacks: Vec<_> =
        kit.plates.iter().filter(|stack| kit.takes(unit, stack.unit)).collect();
    stacks.sort_by_key(|stack| Reverse(stack.mass));
    for stack in stacks {
        for (sum, used) in fewest.clone() {
            let room = MAX_PLATES_A_SIDE.saturating_sub(used).min(stack.count as usize / 2);
            for more in 1..=room {
                let plates = fewest.entry(sum + stack.mass * more as i64).or_insert(usize::MAX);
                *plates = (*plates).min(used + more);
            }
            if fewest.len() > MOST_SUMS {
                return false;
            }
        }
    }
    true
}
