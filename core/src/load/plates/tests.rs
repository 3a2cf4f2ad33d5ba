//! The ramp against the slow way, and cases with the sum beside them.

use proptest::prelude::*;

use super::ramp::ramp_within;
use super::slow::{cost, sides, slow};
use super::{MOST_LOADS, Proof, RampError, ramp, ramp_from};
use crate::fixtures::{self, kg};
use crate::mass::{Mass, MassUnit};
use crate::plan::{Builds, Kit};

/// A bar of 20 kg and plates with so many pairs.
pub(super) fn builds(plates: &[(Mass, u32)], mixed: bool) -> Builds {
    let plates: Vec<(Mass, u32)> = plates.iter().map(|(mass, pairs)| (*mass, pairs * 2)).collect();
    fixtures::builds(&Kit { mixed, ..fixtures::kit("0", &plates) })
}

pub(super) fn kg_rack(plates: &[(&str, u32)]) -> Builds {
    let plates: Vec<(Mass, u32)> = plates.iter().map(|(mass, n)| (kg(mass), *n)).collect();
    builds(&plates, false)
}

pub(super) fn loads(texts: &[&str]) -> Vec<Mass> {
    texts.iter().map(|text| kg(text)).collect()
}

/// A kit of few plates, kilograms and pounds, what is on its bar, and a ramp of loads it builds.
pub(super) fn small() -> impl Strategy<Value = (Builds, Vec<Mass>, Vec<Mass>)> {
    let kilograms = ["25", "20", "15", "10", "5", "2.5", "2", "1.5", "1.25", "1", "0.5"];
    let mut masses: Vec<Mass> = kilograms.iter().map(|text| kg(text)).collect();
    masses.extend([Mass::lb(45), Mass::lb(10), Mass::lb(5)]);
    let plates = prop::sample::subsequence(masses, 1..=6).prop_flat_map(|masses| {
        prop::collection::vec(1..=3_u32, masses.len())
            .prop_map(move |pairs| masses.iter().copied().zip(pairs).collect::<Vec<_>>())
    });
    let picks = prop::collection::vec(any::<prop::sample::Index>(), 2..=8);
    (plates, picks, any::<bool>()).prop_map(|(plates, picks, empty)| {
        let builds = builds(&plates, true);
        let all: Vec<Mass> = builds.loads().collect();
        let mut loads: Vec<Mass> = picks.iter().map(|pick| *pick.get(&all)).collect();
        let on = loads.pop().and_then(|load| builds.exactly(load)).filter(|_| !empty);
        (builds, on.map_or(Vec::new(), |build| build.per_side), loads)
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(600))]

    /// Plates and mass moved, and plates on the bar, against every ramp there is; heaviest inside.
    #[test]
    fn the_ramp_is_the_best_of_all((builds, on, loads) in small()) {
        let best = slow(&builds, &on, &[], &loads);
        prop_assume!(best.is_some(), "too many ramps to try all");
        let ramp = ramp_from(&builds, &on, &loads).unwrap();
        prop_assert_eq!(ramp.proof, Proof::Least);
        let found = sides(&ramp.steps);
        let cost = cost(&builds, &on, &[], &found);
        prop_assert_eq!(Some(cost), best, "{:?}", found);
        prop_assert_eq!(ramp.handled, cost.handled);
        for (side, load) in found.iter().zip(&loads) {
            prop_assert!(side.is_sorted_by(|inner, outer| inner >= outer), "{:?}", side);
            prop_assert_eq!(builds.empty + side.iter().copied().sum::<Mass>() * 2, *load);
        }
    }

    /// A search that is cut short claims nothing that is not so.
    #[test]
    fn a_search_cut_short_says_so((builds, on, loads) in small(), most in 0..60_usize) {
        let best = slow(&builds, &on, &[], &loads);
        prop_assume!(best.is_some(), "too many ramps to try all");
        let best = best.unwrap().handled;
        let ramp = ramp_within(&builds, &on, &[], &loads, most).unwrap();
        match ramp.proof {
            Proof::Least => prop_assert_eq!(ramp.handled, best),
            Proof::NotLess { than } => prop_assert!(than <= best && best <= ramp.handled),
        }
        let built: Vec<Mass> = ramp.steps.iter().map(|step| step.build.mass).collect();
        prop_assert_eq!(built, loads);
    }
}

/// The oracle of the check above can fail: a ramp that is one plate worse is not the best.
#[test]
fn the_slow_way_knows_a_worse_ramp() {
    let builds = kg_rack(&[("20", 1), ("10", 2), ("5", 1)]);
    let best = slow(&builds, &[], &[], &loads(&["40", "60"])).unwrap();
    // 10 on, 10 more on, both off; or 10 on and off, 20 on and off. Less is moved the first way.
    assert_eq!((best.handled, best.mass, best.plates), (4, kg("40"), 3));
    let ten = kg("10");
    assert_eq!(cost(&builds, &[], &[], &[vec![ten], vec![ten, ten]]), best);
    assert!(cost(&builds, &[], &[], &[vec![ten], vec![kg("20")]]) > best);
    assert!(cost(&builds, &[], &[], &[vec![kg("5"), kg("5")], vec![ten, ten]]) > best);
}

/// By hand: 22.5 a side is 20 + 2.5. For 42.5 a side the 2.5 comes off, 20 goes on, and the 2.5 again
/// outside: nobody loads a light plate inside a heavy one. Five plates, and three come off in the end.
#[test]
fn heavy_plates_lie_inside_light_ones() {
    let builds = kg_rack(&[("20", 2), ("2.5", 1)]);
    let found = ramp(&builds, &loads(&["65", "105"])).unwrap();
    let (twenty, light) = (kg("20"), kg("2.5"));
    assert_eq!(sides(&found.steps), [vec![twenty, light], vec![twenty, twenty, light]]);
    assert_eq!((found.handled, found.proof), (8, Proof::Least));
    let step = &found.steps[1];
    assert_eq!((step.off.as_slice(), step.on.as_slice()), (&[light][..], &[twenty, light][..]));
}

/// 20 + 10 and not 10 + 10 + 5 + 5, although the tens could stay: all of it comes off in the end.
#[test]
fn what_goes_on_comes_off_again() {
    let builds = kg_rack(&[("20", 2), ("10", 2), ("5", 2)]);
    let found = ramp(&builds, &loads(&["40", "80"])).unwrap();
    assert_eq!(sides(&found.steps), [vec![kg("10")], vec![kg("20"), kg("10")]]);
}

/// From what is on the bar: 10 + 5 a side for 50 kg is there already, and 20 + 10 + 5 is not.
#[test]
fn a_ramp_starts_from_what_is_on_the_bar() {
    let builds = kg_rack(&[("20", 2), ("15", 1), ("10", 2), ("5", 2)]);
    let on = [kg("10"), kg("5")];
    let found = ramp_from(&builds, &on, &loads(&["50", "70"])).unwrap();
    assert!(found.steps[0].off.is_empty() && found.steps[0].on.is_empty());
    assert_eq!(sides(&found.steps)[1], [kg("10"), kg("10"), kg("5")]);
    // Alone 15 a side is one plate; and nothing asked for is everything off.
    assert_eq!(ramp(&builds, &loads(&["50"])).unwrap().steps[0].build.per_side, [kg("15")]);
    assert_eq!(ramp_from(&builds, &on, &[]).unwrap().handled, 2);
}

#[test]
fn one_load_is_the_build_it_has_alone_and_the_same_load_again_is_left_alone() {
    let plates = [("25", 2), ("20", 2), ("15", 2), ("10", 2), ("5", 2), ("2.5", 2), ("1.25", 2)];
    let builds = kg_rack(&plates);
    for load in builds.loads().filter(|load| *load <= Mass::kg(200)) {
        let found = ramp(&builds, &[load, load, load]).unwrap();
        let alone = builds.exactly(load).unwrap();
        assert_eq!(found.handled as usize, alone.per_side.len() * 2);
        assert!(found.steps.iter().all(|step| step.build == alone), "{load}: {found:?}");
    }
    assert_eq!(ramp(&builds, &[]).unwrap().steps, []);
}

#[test]
fn what_cannot_be_built_names_the_nearest() {
    let builds = kg_rack(&[("10", 1), ("2.5", 1)]);
    let wrong = ramp(&builds, &loads(&["40", "41"])).unwrap_err();
    let nearest = |load: &str| builds.exactly(kg(load));
    let (below, above) = (nearest("40"), nearest("45"));
    assert_eq!(wrong, RampError::Unbuildable { index: 1, load: kg("41"), below, above });
    let wrong = ramp(&builds, &[Mass::kg(10)]).unwrap_err();
    let above = nearest("20");
    assert_eq!(wrong, RampError::Unbuildable { index: 0, load: kg("10"), below: None, above });
    for load in
        [Mass::ZERO, Mass::ZERO - Mass::kg(5), Mass { ten_ng: i64::MAX }, Mass { ten_ng: i64::MIN }]
    {
        assert!(ramp(&builds, &[load]).is_err(), "{load:?}");
    }
    let many = vec![Mass::kg(40); MOST_LOADS + 1];
    assert_eq!(ramp(&builds, &many).unwrap_err(), RampError::TooMany { found: MOST_LOADS + 1 });
    assert_eq!(ramp(&builds, &many[1..]).unwrap().handled, 2);
}

/// 20 kg and twice 45 + 20.41165665 kg: pounds by the exact pound of NIST SP 811, appendix B.
#[test]
fn a_mixed_kit_builds_between_the_grids() {
    let plates = [(Mass::kg(20), 1), (Mass::lb(45), 1)];
    let load = Mass { ten_ng: 10_082_331_330_000 };
    assert_eq!(load, Mass::kg(60) + Mass::lb(90));
    let found = ramp(&builds(&plates, true), &[Mass::kg(60), load]).unwrap();
    assert_eq!(sides(&found.steps)[1], [Mass::lb(45), Mass::kg(20)]);
    assert!(ramp(&builds(&plates, false), &[load]).is_err());
}

#[test]
fn bells_have_nothing_to_handle() {
    let bell = |mass| crate::plan::Bell { mass: Mass::kg(mass), unit: MassUnit::Kg, count: 1 };
    let builds = Builds::bells(&[bell(16), bell(24)], MassUnit::Kg);
    let found = ramp(&builds, &[Mass::kg(16), Mass::kg(24)]).unwrap();
    assert_eq!((found.handled, found.proof), (0, Proof::Least));
    assert!(ramp(&builds, &[Mass::kg(20)]).is_err());
}

/// The richest kit the plan reader takes and the longest ramp: ends, and says what it proved.
#[test]
fn a_rich_kit_is_cut_and_says_so() {
    let plates: Vec<(Mass, u32)> =
        (1..=40).map(|at| (Mass::thousandths(at * 1250, MassUnit::Kg), 100)).collect();
    let builds = builds(&plates, false);
    let all: Vec<Mass> = builds.loads().collect();
    let jump = |at: usize| all[at * 7919 % all.len()];
    let long: Vec<Mass> = (0..MOST_LOADS).map(jump).collect();
    let found = ramp(&builds, &long).unwrap();
    let Proof::NotLess { than } = found.proof else { panic!("proved: {}", found.handled) };
    assert!(than <= found.handled);
    for (step, load) in found.steps.iter().zip(&long) {
        assert_eq!(builds.exactly(*load).as_ref(), Some(&step.build));
    }
    // A few loads of the same kit are no trouble.
    assert_eq!(ramp(&builds, &long[..4]).unwrap().proof, Proof::Least);
}
