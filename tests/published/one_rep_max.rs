//! One-rep max: the equations and the reps tables.

use holdfast_core::load::{Equation, RepsTable};
use holdfast_core::{Mass, MassUnit};
use serde::Deserialize;

use holdfast_tests::oracle::{near, printed, reference};

fn kg(equation: Equation, load: i64, reps: u32) -> f64 {
    equation.estimate(Mass::kg(load), reps).unwrap().kg
}

/// C: the equations worked out by hand for 100 kg, four decimals.
#[test]
fn a_hundred_kilograms_at_eight_numbers_of_reps() {
    let reps = [1, 2, 3, 5, 8, 10, 12, 15];
    let table = [
        (Equation::Epley, [103.3333, 106.6667, 110.0, 116.6667, 126.6667, 133.3333, 140.0, 150.0]),
        (
            Equation::Brzycki,
            [100.0, 102.8571, 105.8824, 112.5, 124.1379, 133.3333, 144.0, 163.6364],
        ),
        (
            Equation::Lombardi,
            [100.0, 107.1773, 111.6123, 117.4619, 123.1144, 125.8925, 128.2089, 131.1019],
        ),
        (
            Equation::Mayhew,
            [108.8640, 111.4387, 113.9903, 119.0107, 126.2863, 130.9343, 135.3985, 141.7192],
        ),
        (Equation::OConner, [102.5, 105.0, 107.5, 112.5, 120.0, 125.0, 130.0, 137.5]),
        (
            Equation::Wathen,
            [101.3042, 105.1457, 108.9797, 116.5825, 127.6714, 134.7467, 141.4959, 150.9063],
        ),
        (
            Equation::Lander,
            [101.3903, 104.2128, 107.1969, 113.7089, 125.1092, 134.0704, 144.4143, 163.3145],
        ),
    ];
    for (equation, row) in table {
        for (reps, expected) in reps.into_iter().zip(row) {
            printed(kg(equation, 100, reps), expected, 4);
        }
    }
    printed(kg(Equation::ReynoldsBench, 100, 5), 113.7699, 4);
    printed(kg(Equation::ReynoldsLegPress, 100, 5), 123.9546, 4);
}

/// S: the constants as they were first printed, 0.0333 (Epley 1985) and 1.0278 and 0.0278 (Brzycki
/// 1993), are these equations rounded: 0.0034 % of the load a rep, and 0.06 % up to 15 reps.
#[test]
fn the_printed_constants_are_the_same_rounded() {
    for reps in 1..=15 {
        let r = f64::from(reps);
        let epley = 100.0 * (0.0333 * r + 1.0);
        let off = (kg(Equation::Epley, 100, reps) - epley).abs();
        assert!(off > 0.0 && off <= 0.0034 * r, "{reps}: {off}");
        near(kg(Equation::Brzycki, 100, reps), 100.0 / (1.0278 - 0.0278 * r), 0.0006);
    }
}

/// Algebra: 1 + r/30 and 36/(37 - r) are equal where r^2 - 7r - 30 = (r - 10)(r + 3) = 0.
#[test]
fn epley_and_brzycki_cross_at_ten() {
    for load in [1, 33, 100, 180] {
        assert_eq!(kg(Equation::Epley, load, 10), kg(Equation::Brzycki, load, 10));
        for reps in 1..10 {
            assert!(kg(Equation::Epley, load, reps) > kg(Equation::Brzycki, load, reps));
        }
        for reps in 11..37 {
            assert!(kg(Equation::Epley, load, reps) < kg(Equation::Brzycki, load, reps));
        }
    }
}

/// Algebra: of the equations that hold for a single, only Brzycki's and Lombardi's say that what
/// was lifted once can be lifted once.
#[test]
fn only_brzycki_and_lombardi_keep_a_single() {
    let keeps = |equation: &&Equation| {
        let single = equation.estimate(Mass::kg(100), 1);
        single.is_ok_and(|single| (single.kg - 100.0).abs() < 1e-9)
    };
    let keep: Vec<_> = Equation::ALL.iter().filter(keeps).collect();
    assert_eq!(keep, [&Equation::Brzycki, &Equation::Lombardi]);
}

/// P: 70 % of the maximum allowed 16 reps of the squat, give or take 4 (25 men, Zourdos et al., J
/// Strength Cond Res 2021;35(2S):S158-165). Kravitz's equation, fitted at 70 % on other men, is held
/// to that: at 14 and 16 reps the loads at which it says "this is 70 %" are ones men squat.
#[test]
fn kravitz_says_seventy_percent_at_the_reps_another_study_counted() {
    for (reps, load) in [(14, 140), (16, 110)] {
        let found = Equation::KravitzSquat.estimate(Mass::kg(load), reps).unwrap();
        let percent = 100.0 * load as f64 / found.kg;
        assert!((65.0..75.0).contains(&percent) && !found.off_fit, "{reps}: {percent}");
    }
}

#[derive(Deserialize)]
struct Estimates {
    estimates: Vec<Row>,
}

#[derive(Deserialize)]
struct Row {
    equation: String,
    load_tenths: i64,
    reps: u32,
    kg: Option<f64>,
}

/// C: decimal arithmetic of 50 digits; refused just where the equation says less than was lifted.
#[test]
fn every_equation_in_decimal_arithmetic() {
    let rows = reference::<Estimates>("one_rep_max").estimates;
    for equation in Equation::ALL {
        assert!(rows.iter().any(|row| row.equation == equation.text()), "{equation:?}");
    }
    for row in rows {
        let equation = Equation::from_text(&row.equation).unwrap();
        let load = Mass::thousandths(row.load_tenths * 100, MassUnit::Kg);
        match (equation.estimate(load, row.reps), row.kg) {
            (Ok(found), Some(expected)) => near(found.kg, expected, 1e-13),
            (found, expected) => {
                assert!(
                    found.is_err() && expected.is_none(),
                    "{equation:?} {found:?} {expected:?}"
                );
            }
        }
    }
}

/// S: cells of the one-page load chart, a maximum of 110 and of 250.
#[test]
fn the_load_charts_grid() {
    let chart = |one, reps| RepsTable::LoadChart.load(Mass::kg(one), reps).unwrap();
    let tenths = |tenths: i64| Mass::thousandths(tenths * 100, MassUnit::Kg);
    let small =
        [(2, 1045), (3, 1023), (5, 957), (6, 935), (7, 913), (9, 847), (10, 825), (12, 770)];
    for (reps, expected) in small {
        assert_eq!(chart(110, reps), tenths(expected), "{reps} reps of 110");
    }
    let large = [2375, 2325, 2250, 2175, 2125, 2075, 2000, 1925, 1875, 1750];
    for (reps, expected) in (2..=10).chain([12]).zip(large) {
        assert_eq!(chart(250, reps), tenths(expected), "{reps} reps of 250");
    }
}

/// S: the textbook's whole grid, its cell for 12 reps M. The two sources differ there.
#[test]
fn the_two_tables_agree_to_ten_and_differ_at_twelve() {
    let printed = [100, 95, 93, 90, 87, 85, 83, 80, 77, 75];
    for (reps, percent) in (1..).zip(printed) {
        assert_eq!(RepsTable::Textbook.percent(reps), Some(percent));
        assert_eq!(RepsTable::LoadChart.percent(reps), Some(percent));
    }
    assert_eq!(
        [11, 12, 15].map(|found| RepsTable::Textbook.percent(found)),
        [Some(70), Some(67), Some(65)]
    );
    assert_eq!(
        [11, 12, 15].map(|found| RepsTable::LoadChart.percent(found)),
        [None, Some(70), None]
    );
}

/// S: a worked example in a textbook's style: 285 lb for 6 is 335 lb for one, and 15 reps of that
/// are 217.75 lb, which are taken as 215.
#[test]
fn six_of_285_pounds_are_one_of_335() {
    let one = RepsTable::Textbook.one_rep_max_kg(Mass::lb(285), 6).unwrap();
    printed(one / 0.453_592_37, 335.0, 0);
    let fifteen = RepsTable::Textbook.load(Mass::lb(335), 15).unwrap();
    assert_eq!(fifteen, Mass::thousandths(217_750, MassUnit::Lb));
}
