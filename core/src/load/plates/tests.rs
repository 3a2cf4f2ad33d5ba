//! The ramp against the slow way, and cases with the sum beside them.

use proptest::prelude::*;

use super::slow::{sides, slow, stays};
use super::{Proof, RampError, ramp};
use crate::load::Rack;
use crate::mass::{Mass, MassUnit};
use crate::plan::{Bar, Kit, PlateStack};

fn kg(text: &str) -> Mass {
    Mass::parse(text, Some(MassUnit::Kg)).unwrap()
}

/// A bar of 20 kg and plates with so many pairs.
fn rack(plates: &[(Mass, u32)], mixed: bool) -> Rack {
    let stack = |(mass, pairs): &(Mass, u32)| PlateStack {
        mass: *mass,
        unit: if mass.is_exact_in(MassUnit::Kg) { MassUnit::Kg } else { MassUnit::Lb },
        count: pairs * 2,
    };
    let bar = Bar {
        name: "long bar".into(),
        mass: Mass::kg(20),
        unit: MassUnit::Kg,
        collars: Mass::ZERO,
        count: 1,
    };
    let kit = Kit { plates: plates.iter().map(stack).collect(), mixed, ..Kit::default() };
    Rack::bar(&kit, &bar)
}

fn kg_rack(plates: &[(&str, u32)]) -> Rack {
    let plates: Vec<(Mass, u32)> = plates.iter().map(|(mass, n)| (kg(mass), *n)).collect();
    rack(&plates, false)
}

fn loads(texts: &[&str]) -> Vec<Mass> {
    texts.iter().map(|text| kg(text)).collect()
}

/// A kit of few plates, kilograms and pounds, and a ramp of loads it builds.
fn small() -> impl Strategy<Value = (Rack, Vec<Mass>)> {
    let kilograms = ["25", "20", "15", "10", "5", "2.5", "2", "1.5", "1.25", "1", "0.5"];
    let mut masses: Vec<Mass> = kilograms.iter().map(|text| kg(text)).collect();
    masses.extend([Mass::lb(45), Mass::lb(10), Mass::lb(5)]);
    let plates = prop::sample::subsequence(masses, 1..=5).prop_flat_map(|masses| {
        prop::collection::vec(1..=2_u32, masses.len())
            .prop_map(move |pairs| masses.iter().copied().zip(pairs).collect::<Vec<_>>())
    });
    let picks = prop::collection::vec(any::<prop::sample::Index>(), 1..=6);
    (plates, picks).prop_map(|(plates, picks)| {
        let rack = rack(&plates, true);
        let all: Vec<Mass> = rack.loads().collect();
        let loads = picks.iter().map(|pick| *pick.get(&all)).collect();
        (rack, loads)
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    /// Handling, plates on the bar and the choice among equals, against every ramp there is.
    #[test]
    fn the_ramp_is_the_best_of_all((rack, loads) in small()) {
        let Some(slow) = slow(&rack, &loads) else { return Ok(()) };
        let ramp = ramp(&rack, &loads).unwrap();
        prop_assert_eq!(ramp.proof, Proof::Least);
        prop_assert_eq!(ramp.handled, slow.handled);
        let found = sides(&ramp.steps);
        let plates: usize = found.iter().map(Vec::len).sum();
        prop_assert_eq!(plates as u32, slow.plates);
        prop_assert!(slow.all.contains(&found), "{:?} not among {:?}", found, slow.all);
        let best = slow.all.iter().map(|builds| stays(builds)).max().unwrap();
        prop_assert_eq!(stays(&found), best);
    }
}
