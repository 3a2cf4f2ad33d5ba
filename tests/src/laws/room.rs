//! Rooms by chance: rich ones, poor ones, ones with holes, and what is no bar.

use holdfast_core::plan::{Bar, Bell, Builds, Kit, PlateStack, Stack};
use holdfast_core::{Mass, MassUnit};
use rand::{Rng, RngExt};

/// What can be loaded in a room, and the same of every bar where it has several.
pub(super) fn drawn(chance: &mut impl Rng) -> (Builds, Vec<Builds>) {
    let kg = [25_000, 20_000, 15_000, 10_000, 5_000, 2_500, 1_250];
    let one = match chance.random_range(0..12) {
        0..4 => bar(chance, MassUnit::Kg, &kg),
        4 => bar(chance, MassUnit::Lb, &[45_000, 35_000, 25_000, 10_000, 5_000, 2_500]),
        5 => bar(chance, MassUnit::Kg, &[20_000, 10_000, 5_000]),
        6 | 7 => {
            let bars = bars(chance, &kg);
            return (bars[0].clone(), bars);
        }
        _ => bells_or_picks(chance),
    };
    (one, Vec::new())
}

fn bells_or_picks(chance: &mut impl Rng) -> Builds {
    match chance.random_range(0..4) {
        0 => Builds::bells(&bells(chance), MassUnit::Kg),
        1 => Builds::pairs(&bells(chance), MassUnit::Kg),
        2 => {
            let kit = Kit { bells: bells(chance), ..Kit::default() };
            Builds::added(&kit, MassUnit::Kg)
        }
        _ => {
            let masses = [5, 10, 15, 20, 30];
            let masses = masses.into_iter().filter(|mass| *mass == 20 || chance.random_bool(0.8));
            Builds::assisted(&Stack { unit: MassUnit::Kg, masses: masses.map(Mass::kg).collect() })
        }
    }
}

fn bar(chance: &mut impl Rng, unit: MassUnit, plates: &[i64]) -> Builds {
    let mut kit = plates_by_chance(chance, unit, plates);
    let empty = match unit {
        MassUnit::Kg => [10, 15, 20][chance.random_range(0..3)],
        MassUnit::Lb => 45,
    };
    kit.bars.push(bar_of(empty, unit));
    Builds::bar(&kit, &kit.bars[0])
}

/// Three bars for the same plates, whose loads do not meet.
fn bars(chance: &mut impl Rng, plates: &[i64]) -> Vec<Builds> {
    let mut kit = plates_by_chance(chance, MassUnit::Kg, plates);
    kit.bars = [20, 16, 15].map(|empty| bar_of(empty, MassUnit::Kg)).into();
    kit.bars.iter().map(|bar| Builds::bar(&kit, bar)).collect()
}

fn bar_of(empty: i64, unit: MassUnit) -> Bar {
    let mass = Mass::thousandths(empty * 1000, unit);
    Bar { name: format!("of {empty}"), mass, unit, collars: Mass::ZERO, count: 1 }
}

fn plates_by_chance(chance: &mut impl Rng, unit: MassUnit, plates: &[i64]) -> Kit {
    let rich = chance.random_bool(0.6);
    let mut kit = Kit::default();
    for (at, mass) in plates.iter().enumerate() {
        if rich || at == 0 || chance.random_bool(0.6) {
            let (mass, count) = (Mass::thousandths(*mass, unit), 2 * chance.random_range(1..=3));
            kit.plates.push(PlateStack { mass, unit, count });
        }
    }
    kit
}

fn bells(chance: &mut impl Rng) -> Vec<Bell> {
    let all = [4, 6, 8, 10, 12, 14, 16, 20, 24, 28, 32, 40];
    let keep = [0.4, 0.7, 1.0][chance.random_range(0..3)];
    let mut bells = Vec::new();
    for mass in all {
        if mass == 16 || chance.random_bool(keep) {
            bells.push(Bell { mass: Mass::kg(mass), unit: MassUnit::Kg, count: 2 });
        }
    }
    bells
}
