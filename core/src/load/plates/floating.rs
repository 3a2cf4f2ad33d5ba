//! Warm-ups: the way up by hand, what floats within its window, and the search against the slow way.

use proptest::prelude::*;

use super::slow::{cost, sides, slow};
use super::tests::{kg_rack, loads, small};
use super::{
    Proof, RampStep, WarmUpFor, WarmUpSet, ramp, ramp_with_warm_up, warm_up, warm_up_by_feel,
};
use crate::fixtures::kg;
use crate::mass::{Mass, MassUnit};
use crate::plan::{Bell, Builds, Kit, Machine, Stack, WarmUpRule};

const RACK: WarmUpFor = WarmUpFor { from_floor: false, warm: false };
const FLOOR: WarmUpFor = WarmUpFor { from_floor: true, ..RACK };
const WARM: WarmUpFor = WarmUpFor { warm: true, ..RACK };

fn sets(builds: &Builds, work: Mass, lift: WarmUpFor) -> Vec<WarmUpSet> {
    warm_up(builds, work, lift, WarmUpRule::usual(builds.unit))
}

/// A kit with two to four pairs of everything from 25 to 1.25 kg.
fn club() -> Builds {
    kg_rack(&[("25", 4), ("20", 2), ("15", 2), ("10", 2), ("5", 2), ("2.5", 2), ("1.25", 2)])
}

/// Loads and reps, as a person notes them.
fn noted(builds: &Builds, work: &str, lift: WarmUpFor) -> Vec<String> {
    let sets = sets(builds, kg(work), lift);
    let text = |set: &WarmUpSet| format!("{}x{}", set.nearest().number(builds.unit), set.reps);
    sets.iter().map(text).collect()
}

/// By hand, for 100 kg on a bar of 20: steps of 7, 6, 5, 4 and 3 parts of 80 kg, which are 22.4, 19.2, 16, 12.8
/// and 9.6 kg; so 20, 42.4, 61.6, 77.6 and 90.4 kg, and the nearest multiple of 5.
#[test]
fn the_way_up_by_hand() {
    let club = club();
    let planned: Vec<Mass> = sets(&club, kg("100"), RACK).iter().map(|set| set.planned).collect();
    assert_eq!(planned, loads(&["20", "42.4", "61.6", "77.6", "90.4"]));
    assert_eq!(noted(&club, "100", RACK), ["20x10", "40x5", "60x3", "80x2", "90x1"]);
    // One or two from an empty bar of 20 kg to 25, six or seven to 200.
    assert_eq!(noted(&club, "25", RACK), ["20x10"]);
    assert_eq!(noted(&club, "40", RACK), ["20x10", "30x5"]);
    let heavy = ["20x10", "60x6", "95x5", "125x4", "150x3", "170x2", "185x1"];
    assert_eq!(noted(&club, "200", RACK), heavy);
    // About the bar: none.
    for about in ["22.5", "20", "15", "0"] {
        assert_eq!(noted(&club, about, RACK), [""; 0], "{about}");
    }
}

#[test]
fn warm_already_or_from_the_floor_it_is_shorter() {
    let club = club();
    assert_eq!(noted(&club, "100", WARM), ["80x5", "90x3"]);
    assert_eq!(noted(&club, "25", WARM), [""; 0]);
    // Nothing from the floor with an empty bar: ten a side stand as high as any plate. 40 + 5/12 and 9/12 of 60.
    assert_eq!(noted(&club, "100", FLOOR), ["40x5", "65x3", "85x2"]);
    assert_eq!(noted(&club, "45", FLOOR), [""; 0]);
    // Without high plates the largest there are.
    let small = kg_rack(&[("5", 4), ("2.5", 2)]);
    assert_eq!(noted(&small, "50", FLOOR), ["30x5", "40x3"]);
}

#[test]
fn bells_and_first_times_have_a_warm_up_too() {
    let bell = |mass| Bell { mass: Mass::kg(mass), unit: MassUnit::Kg, count: 1 };
    let bells = Builds::bells(&[8, 12, 16, 24].map(bell), MassUnit::Kg);
    // 8, 8 + 5/12 of 16 and 8 + 9/12: 8, 14.7 and 20, as the row has them at or below.
    assert_eq!(noted(&bells, "24", RACK), ["8x10", "12x5", "16x3"]);
    // Two plans that give one bell are one set.
    let few = Builds::bells(&[8, 24].map(bell), MassUnit::Kg);
    assert_eq!(noted(&few, "24", RACK), ["8x10"]);
    assert_eq!(warm_up_by_feel(&bells, RACK), [(10, None)]);
    let club = club();
    assert_eq!(warm_up_by_feel(&club, RACK), [(10, Some(Mass::kg(20))), (5, None)]);
    assert_eq!(warm_up_by_feel(&club, FLOOR), [(5, None)]);
    assert_eq!(warm_up_by_feel(&Builds::bells(&[], MassUnit::Kg), RACK), []);
}

/// Of chin-ups with 20 kg: body mass alone, then 10 kg. With 30 kg of help: all the help there is, then halfway.
#[test]
fn what_hangs_on_a_body_has_a_short_warm_up() {
    let added =
        Builds::added(&crate::fixtures::kit("0", &[(kg("5"), 4), (kg("2.5"), 2)]), MassUnit::Kg);
    assert_eq!(noted(&added, "20", RACK), ["0x5", "10x3"]);
    assert_eq!(noted(&added, "20", WARM), ["10x5"]);
    // What lies between is no other load.
    assert_eq!(noted(&added, "2.5", RACK), ["0x5"]);
    let masses = [10, 20, 35, 50].map(Mass::kg).to_vec();
    let assisted = Builds::assisted(&Stack { unit: MassUnit::Kg, masses });
    let lifted = |kilograms| {
        let sets = sets(&assisted, Mass::kg(kilograms), RACK);
        sets.iter().map(|set| (set.nearest(), set.reps)).collect::<Vec<_>>()
    };
    assert_eq!(lifted(-10), [(Mass::kg(-50), 5), (Mass::kg(-35), 3)]);
    // The work is the easiest there is: nothing leads to it.
    for (builds, easiest) in [(&added, Mass::ZERO), (&assisted, Mass::kg(-50))] {
        assert_eq!(sets(builds, easiest, RACK), []);
        assert_eq!(warm_up_by_feel(builds, RACK), [(5, None)]);
    }
}

/// What a warm-up set may weigh, by hand. In pounds: 225 lb on 45, five sets of which the second is planned at
/// 45 + 7/25 of 180 = 95.4 lb; 11.25 either way, multiples of 5, no plate under 5 lb.
#[test]
fn a_set_floats_within_its_window() {
    let club = club();
    let near = |work: &str, at: usize| {
        let sets = sets(&club, kg(work), RACK);
        sets[at].loads().iter().map(|load| load.number(MassUnit::Kg)).collect::<Vec<_>>()
    };
    assert_eq!(near("100", 0), ["20"]);
    // Planned at 42.4, 5 either way.
    assert_eq!(near("100", 1), ["40", "45"]);
    // At 90.4, from 85.4 to halfway to 100, which is 95.2; and at 92.9 of 200 kg, 10 either way.
    assert_eq!(near("100", 4), ["90", "95"]);
    assert_eq!(near("200", 2), ["85", "90", "95", "100"]);
    // Of 230 kg at 195 and 215, 11.5 either way: halfway is the lower one's.
    assert_eq!(near("230", 5), ["185", "190", "195", "200", "205"]);
    assert_eq!(near("230", 6), ["210", "215", "220"]);
    // Only tens: 55, 57.5, 60 and so on cannot be built, and 40 and 60 can.
    let tens = kg_rack(&[("10", 4)]);
    assert_eq!(noted(&tens, "100", RACK), ["20x10", "40x5", "60x3", "80x2"]);
    // Nothing within 5 %: the planned load rounded down. 36.7 and 50 kg are planned for 60.
    let holes = kg_rack(&[("6", 1), ("20", 1)]);
    assert_eq!(noted(&holes, "60", RACK), ["20x10", "32x5"]);
    // No multiple of 5: any build without small plates, and where there is none any build. 60 kg is planned at
    // 36.7 and 50, and 3 kg are 5 %.
    let odd = kg_rack(&[("9", 2), ("7", 1), ("1", 1), ("0.5", 2)]);
    assert_eq!(noted(&odd, "60", RACK), ["20x10", "38x5", "52x3"]);
    let set = &sets(&odd, kg("60"), RACK)[2];
    assert_eq!(set.loads(), loads(&["52"]));
    let tiny = kg_rack(&[("9", 1), ("1.5", 10)]);
    assert_eq!(sets(&tiny, kg("60"), RACK)[2].loads(), loads(&["47", "50", "53"]));
    let plates = [45, 35, 25, 10, 5].map(|mass| (Mass::lb(mass), 2));
    let fine = [(Mass::thousandths(2_500, MassUnit::Lb), 1)];
    let plates: Vec<(Mass, u32)> = plates.into_iter().chain(fine).collect();
    let stacks = plates.iter().map(|(mass, pairs)| (*mass, pairs * 2)).collect::<Vec<_>>();
    let mut kit = crate::fixtures::kit("0", &stacks);
    (kit.bars[0].mass, kit.bars[0].unit) = (Mass::lb(45), MassUnit::Lb);
    let pounds = crate::fixtures::builds(&kit);
    let sets = sets(&pounds, Mass::lb(225), RACK);
    assert_eq!(sets[1].planned, Mass::thousandths(95_400, MassUnit::Lb));
    assert_eq!(sets[1].loads(), [85, 95, 105].map(Mass::lb));
}

/// 70 kg, planned at 20, 36.7, 50.6 and 61.7 kg. The nearest are 35, 50 and 60: 5 + 2.5, 15, 20 and 25 a side,
/// which share nothing: 10 plates. With 40, 50 and 60 the ten stays: 10, 10 + 5, 10 + 10, 10 + 10 + 5.
#[test]
fn a_warm_up_moves_where_that_saves_a_plate() {
    let builds = kg_rack(&[("25", 1), ("20", 1), ("15", 1), ("10", 2), ("5", 1), ("2.5", 1)]);
    let sets = sets(&builds, kg("70"), RACK);
    let nearest: Vec<Mass> = sets.iter().map(WarmUpSet::nearest).collect();
    assert_eq!(nearest, loads(&["20", "35", "50", "60"]));
    let found = ramp_with_warm_up(&builds, &sets, &loads(&["70"])).unwrap();
    let built: Vec<Mass> = found.steps.iter().map(|step| step.build.mass).collect();
    assert_eq!(found.proof, Proof::Least);
    let kept = ramp(&builds, &[nearest, loads(&["70"])].concat()).unwrap();
    assert!(found.handled < kept.handled, "{built:?} {} {}", found.handled, kept.handled);
    assert_eq!(found.alone, kept.alone);
    assert_eq!(built.last(), Some(&kg("70")), "a work set never moves");
}

/// Work loads of a small kit, lifts of both kinds, and another size of plate and multiple.
fn case() -> impl Strategy<Value = (Builds, Vec<Mass>, Vec<WarmUpSet>)> {
    let rule = (0..4_usize, prop::sample::select(vec![1_000_i64, 2_500, 5_000, 10_000]));
    (small(), rule, any::<bool>(), any::<bool>()).prop_map(
        |((builds, _, loads), (smallest, multiple), from_floor, warm)| {
            let smallest = ["0.5", "1.25", "2.5", "10"][smallest];
            let rule = WarmUpRule {
                unit: MassUnit::Kg,
                smallest_plate: kg(smallest),
                multiple: Mass::thousandths(multiple, MassUnit::Kg),
            };
            let sets = warm_up(&builds, loads[0], WarmUpFor { from_floor, warm }, rule);
            (builds, loads, sets)
        },
    )
}

fn check_step(set: &WarmUpSet, step: &RampStep) -> Result<(), TestCaseError> {
    prop_assert!(set.loads().contains(&step.build.mass));
    prop_assert!(step.build.per_side.iter().all(|plate| *plate >= set.smallest_plate()));
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(600))]

    /// Plates moved, distance from the plan, mass moved and plates on the bar, against every ramp there is.
    #[test]
    fn a_floating_ramp_is_the_best_of_all((builds, loads, sets) in case()) {
        let best = slow(&builds, &[], &sets, &loads);
        prop_assume!(best.is_some(), "too many ramps to try all");
        let ramp = ramp_with_warm_up(&builds, &sets, &loads).unwrap();
        prop_assert_eq!(ramp.proof, Proof::Least);
        let found = sides(&ramp.steps);
        let cost = cost(&builds, &[], &sets, &found);
        prop_assert_eq!(Some(cost), best, "{:?}", found);
        prop_assert_eq!(ramp.handled, cost.handled);
        prop_assert!(ramp.handled <= ramp.alone);
        for (set, step) in sets.iter().zip(&ramp.steps) {
            check_step(set, step)?;
        }
        let fixed: Vec<Mass> = ramp.steps[sets.len()..].iter().map(|step| step.build.mass).collect();
        prop_assert_eq!(fixed, loads);
    }

    /// Whatever is chosen: loads rise and stay below the work load, reps fall, and every load is a build.
    #[test]
    fn a_warm_up_rises_and_stays_below((builds, loads, sets) in case()) {
        prop_assert!(sets.len() <= 7);
        for set in &sets {
            prop_assert!(!set.loads().is_empty() && set.reps > 0);
            prop_assert!(set.loads().is_sorted_by(|one, other| one < other));
            let built = |load: &Mass| builds.exactly(*load).is_some() && *load < loads[0];
            prop_assert!(set.loads().iter().all(built));
        }
        for pair in sets.windows(2) {
            prop_assert!(pair[0].loads().last() < pair[1].loads().first());
            prop_assert!(pair[0].reps > pair[1].reps);
        }
    }

    /// The same of all that is no bar.
    #[test]
    fn a_warm_up_of_anything_else_stays_below(
        masses in prop::collection::btree_set(1..200_i64, 1..12),
        count in 1..4_u32,
        at in any::<prop::sample::Index>(),
        warm in any::<bool>(),
    ) {
        let masses: Vec<Mass> = masses.into_iter().map(Mass::kg).collect();
        let bell = |mass: &Mass| Bell { mass: *mass, unit: MassUnit::Kg, count };
        let bells: Vec<Bell> = masses.iter().map(bell).collect();
        let stack = Stack { unit: MassUnit::Kg, masses };
        let kit = Kit { bells: bells.clone(), ..Kit::default() };
        let machine = Machine { name: "leg press".into(), stack: stack.clone() };
        let all = [
            Builds::bells(&bells, MassUnit::Kg),
            Builds::pairs(&bells, MassUnit::Kg),
            Builds::added(&kit, MassUnit::Kg),
            Builds::assisted(&stack),
            Builds::machine(&machine),
        ];
        for builds in all.iter().filter(|builds| builds.loads().next().is_some()) {
            let loads: Vec<Mass> = builds.loads().collect();
            let work = loads[at.index(loads.len())];
            let sets = sets(builds, work, WarmUpFor { from_floor: false, warm });
            let lifted: Vec<Mass> = sets.iter().map(WarmUpSet::nearest).collect();
            prop_assert!(lifted.is_sorted_by(|one, other| one < other), "{lifted:?}");
            prop_assert!(lifted.iter().all(|load| loads.contains(load) && *load < work));
            prop_assert!(sets.is_sorted_by(|one, other| one.reps > other.reps));
        }
    }

    /// What a set may weigh, against every load of the room tried.
    #[test]
    fn windows_hold_what_they_may((builds, loads, sets) in case(), at in any::<prop::sample::Index>()) {
        prop_assume!(!sets.is_empty());
        let at = at.index(sets.len());
        let (set, work) = (&sets[at], loads[0]);
        prop_assume!(builds.exactly(set.planned).is_none());
        let reach = work.percent(5);
        let near = |load: &Mass| *load >= set.planned - reach && *load <= set.planned + reach;
        let below = builds.at_or_below(set.planned).map(|build| build.mass);
        if set.loads().iter().any(|load| !near(load)) {
            prop_assert_eq!(set.loads().first().copied(), below);
        }
        // Nothing in the window: the heaviest at or below the plan, wherever that lies.
        if set.loads().len() == 1 && set.loads().first().copied() == below {
            return Ok(());
        }
        let all: Vec<Mass> = builds.loads().filter(near).collect();
        prop_assert!(set.loads().iter().all(|load| all.contains(load)));
        // None is nearer to another set's plan.
        for other in sets.iter().filter(|other| other.planned != set.planned) {
            for load in set.loads() {
                prop_assert!(set.away(*load) <= other.away(*load));
            }
        }
        for load in set.loads() {
            prop_assert!(set.away(*load) <= (work - *load).ten_ng.unsigned_abs());
        }
    }
}

/// The oracle of the check above can fail: the nearest loads cost more than those that float.
#[test]
fn the_slow_way_knows_a_ramp_that_does_not_float() {
    let builds = kg_rack(&[("25", 1), ("20", 1), ("15", 1), ("10", 2), ("5", 1), ("2.5", 1)]);
    let sets = sets(&builds, kg("70"), RACK);
    let best = slow(&builds, &[], &sets, &loads(&["70"])).unwrap();
    let nearest: Vec<Mass> = sets.iter().map(WarmUpSet::nearest).collect();
    let kept = ramp(&builds, &[nearest, loads(&["70"])].concat()).unwrap();
    let kept = cost(&builds, &[], &sets, &sides(&kept.steps));
    assert!(best < kept && best.handled < kept.handled, "{best:?} {kept:?}");
}
