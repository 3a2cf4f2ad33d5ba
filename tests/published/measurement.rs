//! Measuring range: boxes, errors, and what counts as a change.

use holdfast_core::motion::{Change, FootLine, MDC95_OF_SEM, change, mdc95, sem, typical_error};
use holdfast_core::plan::Protocol;
use serde::Deserialize;

use holdfast_tests::oracle::{near, printed, reference};

/// P, C: J Sports Sci Med 2009;8(1):116-122, table 1: all 17 pairs of a standard error of measurement
/// and the smallest real change of the sit-and-reach tests, in whole centimetres.
#[test]
fn seventeen_pairs_of_a_table() {
    let pairs = [
        (1.2, 3),
        (1.3, 4),
        (1.4, 4),
        (2.1, 6),
        (2.2, 6),
        (2.3, 6),
        (2.4, 7),
        (2.5, 7),
        (2.6, 7),
        (2.7, 7),
        (2.8, 8),
        (3.0, 8),
        (3.2, 9),
        (3.3, 9),
        (3.4, 9),
        (4.0, 11),
        (4.2, 12),
    ];
    for (error, change) in pairs {
        assert_eq!(mdc95(error).unwrap().round(), f64::from(change), "{error}");
    }
    printed(MDC95_OF_SEM, 2.7718586, 7);
}

/// S, C: the example data of Hopkins, Sports Med 2000;30(1):1-15, as a university's course book quotes
/// them: mean change 1.2, deviation of change 4.1, typical error 2.9.
#[test]
fn hopkins_example() {
    let first = [62.0, 78.0, 81.0, 55.0, 66.0];
    let second = [67.0, 76.0, 87.0, 55.0, 63.0];
    let pairs: Vec<_> = first.into_iter().zip(second).collect();
    let found = typical_error(&pairs).unwrap();
    assert_eq!(found.pairs, 5);
    printed(found.mean_change, 1.2, 1);
    printed(found.sd_of_change, 4.1, 1);
    printed(found.typical, 2.9, 1);
    printed(found.sd_of_change, 4.08656, 5);
    printed(found.typical, 2.88964, 5);
    printed(found.percent.unwrap(), 4.19, 2);
    printed(found.mdc95, 8.0097, 4);
}

/// P: the smallest real changes that were published: sit-and-reach 4 cm (J Sports Sci Med 2009;8:
/// 116-122), fingertip to floor 4.5 cm (Ekedahl et al., Arch Phys Med Rehabil 2012;93:2210-2215),
/// lunge by one rater 1.9 cm and 4.7 degrees (Powden et al., Man Ther 2015;20:524-532).
#[test]
fn just_the_error_is_a_change_and_a_tenth_less_is_not() {
    let published = [
        (Protocol::SitAndReach, 40),
        (Protocol::FingertipToFloor, 45),
        (Protocol::KneeToWall, 19),
        (Protocol::ShinAngle, 47),
    ];
    assert_eq!(published.map(|(protocol, _)| protocol), Protocol::ALL);
    for (protocol, error) in published {
        let judged = |after| change(protocol, 100, after, protocol.mdc95_tenths());
        let [further, less] = if protocol == Protocol::FingertipToFloor {
            [100 - error, 100 + error]
        } else {
            [100 + error, 100 - error]
        };
        assert_eq!(judged(further), Change::Further { gained: error }, "{protocol:?}");
        assert_eq!(judged(less), Change::Less { lost: error }, "{protocol:?}");
        for inside in [100 + error - 1, 100 - error + 1] {
            assert!(matches!(judged(inside), Change::WithinError { .. }), "{protocol:?}");
        }
        assert_eq!(judged(100), Change::None);
    }
}

/// S: the flexometer reads 26 cm at the feet, a yardstick 15 in, Eurofit 15 cm; M: "subtract 3 cm"
/// from a flexometer's reading for a 23 cm box. 15 in is 38.1 cm by the inch of 2.54 cm.
#[test]
fn a_reading_belongs_to_its_box() {
    let school = |tenths| FootLine::Flexometer.read_on(FootLine::School, tenths);
    assert_eq!(school(300), 270);
    assert_eq!(FootLine::Yardstick.beyond_feet(15 * 254 / 10), 0);
    assert_eq!(FootLine::Eurofit.beyond_feet(200), 50);
    assert_eq!(FootLine::FeetZero.beyond_feet(-30), -30);
}

#[derive(Deserialize)]
struct Measurement {
    pairs: Vec<Pairs>,
    sems: Vec<Sem>,
    quantile: f64,
}

#[derive(Deserialize)]
struct Pairs {
    first: Vec<f64>,
    second: Vec<f64>,
    mean_change: f64,
    sd_of_change: f64,
    typical: f64,
    percent: Option<f64>,
    mdc95: f64,
}

#[derive(Deserialize)]
struct Sem {
    sd: f64,
    reliability: f64,
    sem: f64,
}

/// C: numpy; the typical error there comes from a two-way analysis of variance.
#[test]
fn errors_as_numpy_has_them() {
    let found = reference::<Measurement>("measurement");
    for case in found.pairs {
        let pairs: Vec<_> = case.first.into_iter().zip(case.second).collect();
        let found = typical_error(&pairs).unwrap();
        near(found.mean_change, case.mean_change, 1e-12);
        near(found.sd_of_change, case.sd_of_change, 1e-12);
        near(found.typical, case.typical, 1e-12);
        near(found.mdc95, case.mdc95, 1e-12);
        assert_eq!(found.percent.is_some(), case.percent.is_some());
        near(found.percent.unwrap_or_default(), case.percent.unwrap_or_default(), 1e-12);
    }
    for case in found.sems {
        near(sem(case.sd, case.reliability).unwrap(), case.sem, 1e-12);
    }
    // 1.96 is the quantile rounded.
    near(MDC95_OF_SEM, found.quantile * 2.0_f64.sqrt(), 2e-5);
}
