//! Plates: what the federations publish, exact pounds, and the handling of ramps against two general
//! solvers.

use holdfast_core::load::{
    Colour, Federation, Proof, Ramp, WarmUpFor, WarmUpSet, ramp, ramp_with_warm_up, warm_up,
};
use holdfast_core::plan::{Builds, PlateStack, WarmUpRule};
use holdfast_core::{Mass, MassUnit};
use holdfast_tests::ilp::Instance;
use holdfast_tests::kits::{builds, builds_of, loads, sides, windows};
use holdfast_tests::oracle::reference;
use proptest::prelude::*;
use serde::Deserialize;

/// The ramp of sides in grams.
fn ramp_of(plates: &[(i64, u32)], sides: &[i64]) -> Ramp {
    ramp(&builds(plates), &loads(sides)).unwrap()
}

/// How far the loads of a warm-up are from the planned ones, in kilograms.
fn kilograms_away(sets: &[WarmUpSet], ramp: &Ramp) -> f64 {
    let steps = sets.iter().zip(&ramp.steps);
    let away = steps.map(|(set, step)| (step.build.mass - set.planned).ten_ng.abs());
    away.sum::<i64>() as f64 / MassUnit::Kg.ten_ng() as f64
}

/// Counts handling anew from the builds alone, and that each weighs what was asked.
fn check(ramp: &Ramp, plates: &[(i64, u32)], sides: &[i64]) {
    let mut on: Vec<Mass> = Vec::new();
    let mut handled = 0;
    for (step, side) in ramp.steps.iter().zip(sides) {
        for plate in &step.off {
            assert_eq!(on.pop(), Some(*plate), "only the outermost can come off");
        }
        on.extend(&step.on);
        handled += step.off.len() + step.on.len();
        assert_eq!(on, step.build.per_side);
        assert!(on.is_sorted_by(|inner, outer| inner >= outer), "heaviest inside");
        assert_eq!(on.iter().copied().sum::<Mass>(), Mass::thousandths(*side, MassUnit::Kg));
        for (mass, pairs) in plates {
            let mass = Mass::thousandths(*mass, MassUnit::Kg);
            assert!(on.iter().filter(|plate| **plate == mass).count() <= *pairs as usize);
        }
    }
    // In the end all of it comes off.
    handled += on.len();
    assert_eq!((ramp.steps.len(), ramp.handled as usize), (sides.len(), handled));
}

#[derive(Deserialize)]
struct Oracle {
    cases: Vec<Case>,
    floating: Vec<Floating>,
}

#[derive(Deserialize)]
struct Case {
    plates: Vec<(i64, u32)>,
    sides: Vec<i64>,
    handled: u32,
}

#[derive(Deserialize)]
struct Floating {
    plates: Vec<(i64, u32)>,
    work: i64,
    /// What a side may weigh in each warm-up set.
    may_be: Vec<Vec<i64>>,
    handled: u32,
    away_mg: i64,
}

/// Warm-ups worked out by the same script from the rule in words, and solved by HiGHS: what each set may weigh,
/// plates moved, and how far the loads are from the planned ones.
#[test]
fn a_floating_warm_up_is_what_highs_finds() {
    let oracle: Oracle = reference("plates");
    assert!(oracle.floating.len() >= 8);
    let most = oracle.floating.iter().map(|case| case.may_be.len()).max();
    assert_eq!(most, Some(7));
    for Floating { plates, work, may_be, handled, away_mg } in oracle.floating {
        let work = Mass::thousandths(work, MassUnit::Kg);
        let builds = builds(&plates);
        let sets = warm_up(&builds, work, WarmUpFor::default(), WarmUpRule::usual(MassUnit::Kg));
        let windows: Vec<Vec<i64>> = windows(&sets)
            .iter()
            .map(|window| window.sides.iter().map(|(side, _)| *side).collect())
            .collect();
        assert_eq!(windows, may_be, "{plates:?} {work}");
        let found = ramp_with_warm_up(&builds, &sets, &[work]).unwrap();
        assert_eq!((found.handled, found.proof), (handled, Proof::Least), "{plates:?} {work}");
        let away = kilograms_away(&sets, &found) * 1e6;
        assert!((away - away_mg as f64).abs() < 1.0, "{plates:?} {work}: {away} {away_mg}");
    }
}

/// Ramps solved by HiGHS 1.x through scipy 1.17.1 (`tests/reference/plates.py`).
#[test]
fn handling_is_what_highs_finds() {
    let oracle: Oracle = reference("plates");
    assert!(oracle.cases.len() >= 8);
    for Case { plates, sides, handled } in oracle.cases {
        let found = ramp_of(&plates, &sides);
        assert_eq!((found.handled, found.proof), (handled, Proof::Least), "{plates:?} {sides:?}");
        check(&found, &plates, &sides);
    }
}

/// Kits of three or four denominations and ramps of up to three loads they build: with more the solver may take
/// minutes.
fn instance() -> impl Strategy<Value = (Vec<(i64, u32)>, Vec<i64>)> {
    let masses = vec![25_000, 20_000, 15_000, 10_000, 5_000, 2_500, 1_250];
    let plates = prop::sample::subsequence(masses, 3..=4).prop_flat_map(|masses| {
        let pairs = prop::collection::vec(1..=2_u32, masses.len());
        pairs.prop_map(move |pairs| masses.iter().copied().zip(pairs).collect::<Vec<_>>())
    });
    let picks = prop::collection::vec(any::<prop::sample::Index>(), 2..=3);
    (plates, picks).prop_map(|(plates, picks)| {
        let all = sides(&plates);
        let picked = picks.iter().map(|pick| *pick.get(&all)).collect();
        (plates, picked)
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    /// Against the integer program, solved here by `microlp` 0.6.
    #[test]
    fn handling_is_what_an_integer_program_finds((plates, sides) in instance()) {
        let found = ramp_of(&plates, &sides);
        check(&found, &plates, &sides);
        let solved = Instance { plates, warm_up: Vec::new(), sides }.solve();
        prop_assert_eq!(Ok(found.handled), solved.map(|(handled, _)| handled));
        prop_assert_eq!(found.proof, Proof::Least);
    }

    /// The same with a warm-up that floats: plates moved, and how far its loads are from the planned ones.
    #[test]
    fn a_floating_warm_up_is_what_an_integer_program_finds((plates, sides) in instance()) {
        let (builds, load) = (builds(&plates), loads(&sides)[0]);
        // Few sets: with more the solver may take minutes.
        prop_assume!(load < Mass::kg(100));
        let sets = warm_up(&builds, load, WarmUpFor::default(), WarmUpRule::usual(MassUnit::Kg));
        let found = ramp_with_warm_up(&builds, &sets, &[load]).unwrap();
        let sides = vec![sides[0]];
        let (handled, away) = Instance { plates, warm_up: windows(&sets), sides }.solve().unwrap();
        prop_assert_eq!((found.handled, found.proof), (handled, Proof::Least));
        prop_assert!((kilograms_away(&sets, &found) - away).abs() < 1e-6, "{}", away);
    }
}

/// A federation's kit with two of each disc, on its men's or only bar.
fn federation(federation: Federation) -> Builds {
    let stack = |mass: Mass| PlateStack { mass, unit: MassUnit::Kg, count: 2 };
    let discs = federation.discs().iter().map(|disc| stack(disc.mass)).collect();
    builds_of(federation.bars()[0].mass, federation.collars(), MassUnit::Kg, discs)
}

/// IWF Technical and Competition Rules and Regulations, section 3.3 (seen in member federations'
/// copies): a bar of 20 kg, collars of 2.5 kg each that always count, discs from 0.5 to 25 kg.
#[test]
fn competition_bars_add_up() {
    let iwf = federation(Federation::Iwf);
    let build = iwf.exactly(Mass::kg(115)).unwrap();
    assert_eq!(build.per_side, [Mass::kg(25), Mass::kg(20)]);
    assert_eq!(iwf.lightest().unwrap().mass, Mass::kg(25));
    // The smallest step is twice the smallest disc.
    let loads: Vec<Mass> = iwf.loads().collect();
    assert_eq!(loads.windows(2).map(|pair| pair[1] - pair[0]).min(), Some(Mass::kg(1)));
    // IPF Technical Rules Book (older edition, translated): bar and collars are 25 kg, the smallest
    // disc 1.25 kg.
    let ipf = federation(Federation::Ipf);
    assert_eq!(ipf.lightest().unwrap().mass, Mass::kg(25));
    assert_eq!(ipf.above(Mass::kg(25)).unwrap().mass, Mass::thousandths(27_500, MassUnit::Kg));
}

/// Disc colours by the same section and the Olympic broadcaster's page on equipment; IPF: any colour
/// up to 10 kg by its rules, the heavier ones from memory.
#[test]
fn discs_have_the_colours_of_the_rules() {
    let iwf = |mass| Federation::Iwf.colour(Mass::thousandths(mass, MassUnit::Kg));
    let colours = [
        (25_000, Colour::Red),
        (20_000, Colour::Blue),
        (15_000, Colour::Yellow),
        (10_000, Colour::Green),
        (5_000, Colour::White),
        (2_500, Colour::Red),
        (2_000, Colour::Blue),
        (1_500, Colour::Yellow),
        (1_000, Colour::Green),
        (500, Colour::White),
    ];
    assert_eq!(Federation::Iwf.discs().len(), colours.len());
    for (mass, colour) in colours {
        assert_eq!(iwf(mass), Some(colour), "{mass} g");
    }
    assert_eq!(iwf(1_250), None);
    for mass in [10_000, 5_000, 2_500, 1_250] {
        assert_eq!(Federation::Ipf.colour(Mass::thousandths(mass, MassUnit::Kg)), None);
    }
    // No rule colours pounds.
    for mass in [45, 35, 25, 10, 5] {
        assert_eq!(Federation::Iwf.colour(Mass::lb(mass)), None);
    }
}

/// IPF: within 0.25 % or 10 g (same edition). IWF: +0.1 %/-0.05 % above 5 kg, +10 g/-0 g up to it,
/// from memory.
#[test]
fn parts_may_be_off_by_a_little() {
    let gram = |grams| Mass::thousandths(grams, MassUnit::Kg);
    let half_gram = Mass { ten_ng: gram(1).ten_ng / 2 };
    let ipf = |mass| Federation::Ipf.tolerance(mass);
    assert_eq!((ipf(Mass::kg(20)).under, ipf(Mass::kg(20)).over), (gram(50), gram(50)));
    assert_eq!(ipf(gram(1_250)).over, gram(10));
    let iwf = |mass| Federation::Iwf.tolerance(mass);
    assert_eq!((iwf(Mass::kg(25)).under, iwf(Mass::kg(25)).over), (gram(12) + half_gram, gram(25)));
    assert_eq!((iwf(Mass::kg(5)).under, iwf(Mass::kg(5)).over), (Mass::ZERO, gram(10)));
}

/// "Two plates" in pounds is 225 lb, by the exact pound (international agreement of 1959; NIST SP
/// 811, appendix B) 102.05828325 kg. Bar and plates of 45 lb: common practice, no source.
#[test]
fn two_plates_of_forty_five_pounds() {
    let plates = vec![PlateStack { mass: Mass::lb(45), unit: MassUnit::Lb, count: 4 }];
    let builds = builds_of(Mass::lb(45), Mass::ZERO, MassUnit::Lb, plates);
    let build = builds.exactly(Mass::lb(225)).unwrap();
    assert_eq!(build.per_side, [Mass::lb(45), Mass::lb(45)]);
    assert_eq!(build.mass.every_digit(), "102.05828325 kg");
    assert_eq!(builds.exactly(Mass::kg(100)), None);
}
