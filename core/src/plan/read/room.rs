//! What the room can build, so that a load nobody can make is found when it is written.

use std::cmp::Reverse;
use std::collections::BTreeMap;

use super::field::Field;
use super::quantity::Weight;
use super::words::thousands;
use crate::mass::{Mass, MassUnit};
use crate::plan::{Bar, Builds, Kit, Lifted, MAX_PLATES_A_SIDE};
use crate::say;

/// More different sums than this on one side of a bar take too long to work out. The usual plates
/// of a unit make fewer than 1,000.
const MOST_SUMS: usize = 10_000;
const A_BELL: &str = "bell = [{ mass = \"16 kg\", count = 2 }]";
const A_BAR: &str = "bar = [{ name = \"long bar\", mass = \"20 kg\" }]";
const UNITS: [MassUnit; 2] = [MassUnit::Kg, MassUnit::Lb];

/// The kit and the loads it makes.
pub(super) struct Room {
    /// The kit.
    pub(super) kit: Kit,
    /// What plates add to a bar, for each unit.
    sides: Vec<Builds>,
    bells: Builds,
    /// False when bars or plates could not be read: then nothing is said about them.
    bars_known: bool,
    /// False when bells could not be read: then nothing is said about them.
    bells_known: bool,
}

impl Room {
    /// A room with no kit.
    pub(super) fn empty() -> Room {
        Room::with(Kit::default(), true, true)
    }

    /// A room whose kit could not be read.
    pub(super) fn unknown() -> Room {
        Room::with(Kit::default(), false, false)
    }

    /// A room with a kit. `plate` is where the plates are written; it gets a problem when they
    /// make too many different loads.
    pub(super) fn new(
        kit: Kit,
        plate: Option<Field<'_>>,
        bars_known: bool,
        bells_known: bool,
    ) -> Room {
        let few = UNITS.iter().all(|unit| few_sums(&kit, *unit));
        if let (false, Some(plate)) = (few, plate) {
            let most = thousands(MOST_SUMS);
            let help = match kit.mixed {
                true => say::plan_kit::leave_odd_plates_out_or_unmix(),
                false => say::plan_kit::leave_odd_plates_out(),
            };
            plate.wrong(say::plan_kit::too_many_loads(most), help);
        }
        Room::with(kit, bars_known && few, bells_known)
    }

    fn with(kit: Kit, bars_known: bool, bells_known: bool) -> Room {
        // Bars differ only by what they weigh empty, so one weightless bar a unit does for all.
        let weightless = |unit| Bar {
            name: String::new(),
            mass: Mass::ZERO,
            unit,
            collars: Mass::ZERO,
            count: 1,
        };
        let known = if bars_known { &UNITS[..] } else { &[] };
        let sides = known.iter().map(|unit| Builds::bar(&kit, &weightless(*unit))).collect();
        let bells = Builds::bells(&kit.bells, MassUnit::default());
        Room { kit, sides, bells, bars_known, bells_known }
    }

    /// Reports at `field`, the kit itself, when it has no bar.
    pub(super) fn check_has_bar(&self, field: Field<'_>) -> bool {
        let lacks = self.bars_known && self.kit.bars.is_empty();
        if lacks {
            field.absent(say::plan_kit::no_bar(), say::plan::add_example(A_BAR));
        }
        !lacks
    }

    /// Reports at `field` when the kit has nothing to load for `lifted`.
    pub(super) fn check_has(&self, field: Field<'_>, lifted: Lifted) -> bool {
        let (what, example) = match lifted {
            Lifted::Bar if self.bars_known && self.kit.bars.is_empty() => {
                (say::plan_kit::no_bar_for_load(), A_BAR)
            }
            Lifted::Bell if self.bells_known && self.kit.bells.is_empty() => {
                (say::plan_kit::no_bell_for_load(), A_BELL)
            }
            _ => return true,
        };
        field.absent(what, say::plan_kit::add_to_kit(example));
        false
    }

    /// Reports at `field` when nothing in the kit makes exactly `load`.
    pub(super) fn check_load(&self, field: Field<'_>, load: Weight, lifted: Lifted) {
        let choices = match lifted {
            Lifted::Bar if self.bars_known => self.bars(),
            Lifted::Bell if self.bells_known => vec![(Mass::ZERO, &self.bells)],
            _ => return,
        };
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
            // No bars or no bells at all, which `check_has` reports.
            (None, None) => return,
        };
        let asked = load.mass.text(load.unit);
        let what = match lifted {
            Lifted::Bell => say::plan_kit::no_bell_weighs(asked),
            _ => say::plan_kit::no_bar_builds(asked),
        };
        field.absent(what, help);
    }

    /// Every bar: what it weighs empty and what plates add to it.
    fn bars(&self) -> Vec<(Mass, &Builds)> {
        let loaded = |bar: &Bar| {
            let sides = self.sides.iter().find(|builds| builds.unit == bar.unit)?;
            Some((bar.mass + bar.collars, sides))
        };
        self.kit.bars.iter().filter_map(loaded).collect()
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
