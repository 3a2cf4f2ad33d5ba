//! What the room has to load: bars, plates, bells, machines and assistance.

use serde::{Deserialize, Serialize};

use super::is_called;
use crate::mass::{Mass, MassUnit};

/// The room's equipment. Plates are counted singly; a bar takes them in pairs.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Kit {
    /// What the room is called.
    pub name: String,
    /// Bars, in the order the coach wrote them.
    pub bars: Vec<Bar>,
    /// Plates of one denomination each.
    pub plates: Vec<PlateStack>,
    /// Bells (or any one-piece weight) of one mass each.
    pub bells: Vec<Bell>,
    /// Machines with a stack of weights, in the order the coach wrote them.
    #[serde(default)]
    pub machines: Vec<Machine>,
    /// What bands or a machine can take off a body: how much, never a sign.
    #[serde(default)]
    pub assistance: Stack,
    /// True when plates marked in kilograms and in pounds go onto one bar together.
    #[serde(default)]
    pub mixed: bool,
    /// What warm-ups keep to, where the coach says so.
    #[serde(default)]
    pub warm_up: Option<WarmUpRule>,
}

/// What the loads of a warm-up keep to where the room can, on bars marked in its unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct WarmUpRule {
    /// The unit it is written in.
    pub unit: MassUnit,
    /// No plate lighter than this.
    pub smallest_plate: Mass,
    /// A whole multiple of this.
    pub multiple: Mass,
}

impl WarmUpRule {
    /// The usual: no plate below 2.5 kg or 5 lb, and multiples of 5. Common practice, no source.
    pub fn usual(unit: MassUnit) -> WarmUpRule {
        let smallest = match unit {
            MassUnit::Kg => 2_500,
            MassUnit::Lb => 5_000,
        };
        WarmUpRule {
            unit,
            smallest_plate: Mass::thousandths(smallest, unit),
            multiple: Mass::thousandths(5_000, unit),
        }
    }

    pub(crate) fn is_round(self, load: Mass) -> bool {
        self.multiple.ten_ng > 0 && load.ten_ng % self.multiple.ten_ng == 0
    }
}

/// A kind of bar.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Bar {
    /// What the room calls it.
    pub name: String,
    /// The empty bar.
    pub mass: Mass,
    /// The unit its plates are marked in: plates of another unit go onto it only in a mixed kit.
    pub unit: MassUnit,
    /// Both collars together.
    pub collars: Mass,
    /// How many the room has.
    pub count: u32,
}

/// All plates of one denomination.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct PlateStack {
    /// One plate.
    pub mass: Mass,
    /// The unit it is marked in.
    pub unit: MassUnit,
    /// How many single plates the room has.
    pub count: u32,
}

/// All bells of one mass.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Bell {
    /// One bell.
    pub mass: Mass,
    /// The unit it is marked in.
    pub unit: MassUnit,
    /// How many the room has.
    pub count: u32,
}

/// A machine with a stack of weights.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Machine {
    /// What the room calls it.
    pub name: String,
    /// What the pin can be put at.
    pub stack: Stack,
}

/// Masses one of which is taken at a time.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Stack {
    /// The unit all of them are marked in.
    pub unit: MassUnit,
    /// The masses, lightest first, each above zero and there once.
    pub masses: Vec<Mass>,
}

impl Kit {
    /// True when a bar marked in one unit takes plates marked in the other.
    pub fn takes(&self, bar: MassUnit, plate: MassUnit) -> bool {
        self.mixed || bar == plate
    }

    /// Finds a bar by name.
    pub fn bar(&self, name: &str) -> Option<&Bar> {
        self.bars.iter().find(|bar| bar.name == name)
    }

    /// Finds a bar by a name that somebody typed.
    pub(crate) fn bar_typed(&self, typed: &str) -> Option<&Bar> {
        self.bars.iter().find(|bar| is_called(&bar.name, typed))
    }

    /// The names of all bars.
    pub(crate) fn bar_names(&self) -> Vec<String> {
        self.bars.iter().map(|bar| bar.name.clone()).collect()
    }

    /// Finds a machine by name.
    pub fn machine(&self, name: &str) -> Option<&Machine> {
        self.machines.iter().find(|machine| machine.name == name)
    }

    /// What warm-ups keep to on bars marked in `unit`: what the coach says, otherwise the usual.
    pub fn warm_up_rule(&self, unit: MassUnit) -> WarmUpRule {
        let said = self.warm_up.filter(|rule| rule.unit == unit);
        said.unwrap_or_else(|| WarmUpRule::usual(unit))
    }

    /// The first bar marked in `unit`, otherwise the first bar.
    pub fn bar_for(&self, unit: MassUnit) -> Option<&Bar> {
        self.bars.iter().find(|bar| bar.unit == unit).or(self.bars.first())
    }
}
