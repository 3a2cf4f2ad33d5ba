//! Bars and plates in grams, as solvers and published tables have them.

use holdfast_core::load::WarmUpSet;
use holdfast_core::plan::{Bar, Builds, Kit, PlateStack};
use holdfast_core::{Mass, MassUnit};

use crate::ilp::Window;

/// The bar that ramps in grams are built on: 20 kg without collars.
pub const BAR: Mass = Mass::kg(20);

/// That bar with plates in grams and their pairs.
pub fn builds(plates: &[(i64, u32)]) -> Builds {
    let plates = plates.iter().map(|(mass, pairs)| PlateStack {
        mass: Mass::thousandths(*mass, MassUnit::Kg),
        unit: MassUnit::Kg,
        count: pairs * 2,
    });
    builds_of(BAR, Mass::ZERO, MassUnit::Kg, plates.collect())
}

/// Any bar with any plates.
pub fn builds_of(mass: Mass, collars: Mass, unit: MassUnit, plates: Vec<PlateStack>) -> Builds {
    let bar = Bar { name: "bar".into(), mass, unit, collars, count: 1 };
    Builds::bar(&Kit { plates, ..Kit::default() }, &bar)
}

/// The loads of [`BAR`] with so many grams a side.
pub fn loads(sides: &[i64]) -> Vec<Mass> {
    sides.iter().map(|side| BAR + Mass::thousandths(side * 2, MassUnit::Kg)).collect()
}

/// The grams a side of every load that [`BAR`] can be built to.
pub fn sides(plates: &[(i64, u32)]) -> Vec<i64> {
    let gram = MassUnit::Kg.ten_ng() / 1000;
    builds(plates).loads().map(|load| (load - BAR).ten_ng / 2 / gram).collect()
}

/// What the warm-up sets of a ramp on [`BAR`] may be.
pub fn windows(warm_up: &[WarmUpSet]) -> Vec<Window> {
    let (gram, kilogram) = (MassUnit::Kg.ten_ng() / 1000, MassUnit::Kg.ten_ng() as f64);
    let window = |set: &WarmUpSet| {
        let sides = set.loads().iter().map(|load| {
            let away = (*load - set.planned).ten_ng.unsigned_abs() as f64 / kilogram;
            ((*load - BAR).ten_ng / 2 / gram, away)
        });
        Window { sides: sides.collect(), smallest: set.smallest_plate().ten_ng / gram }
    };
    warm_up.iter().map(window).collect()
}
