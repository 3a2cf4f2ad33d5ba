//! Trends: Theil-Sen slopes and the Mann-Kendall test.

use holdfast_core::motion::{mann_kendall, over_days, theil_sen};
use serde::Deserialize;

use holdfast_tests::oracle::{near, printed, reference};

fn by_number(values: &[f64]) -> Vec<(f64, f64)> {
    (1..).zip(values).map(|(number, value)| (f64::from(number), *value)).collect()
}

/// P, C: the example of Sen, J Am Stat Assoc 1968;63:1379-1389, as scipy's own tests hold it: slope 4,
/// 93 % bounds 26/7 and 35/8, intercept 4 by medians and 6 jointly.
#[test]
fn sens_own_example() {
    let times = [1.0, 2.0, 3.0, 4.0, 10.0, 12.0, 18.0];
    let values = [9.0, 15.0, 19.0, 20.0, 45.0, 55.0, 78.0];
    let readings: Vec<_> = times.into_iter().zip(values).collect();
    let found = theil_sen(&readings, 0.93).unwrap();
    assert_eq!((found.slope, found.intercept, found.joint_intercept), (4.0, 4.0, 6.0));
    let (low, high) = found.between.unwrap();
    near(low, 26.0 / 7.0, 1e-15);
    near(high, 35.0 / 8.0, 1e-15);
}

/// P: an example after Hollander and Wolfe, Nonparametric Statistical Methods, in the documentation of
/// the R package statpsych, with many shared times: 0.5, 95 % bounds 0.3243243 and 0.75.
#[test]
fn an_example_with_shared_times() {
    let values = [21, 4, 9, 12, 35, 18, 10, 22, 24, 1, 6, 8, 13, 16, 19].map(f64::from);
    let times = [67, 28, 30, 28, 52, 40, 25, 37, 44, 10, 14, 20, 28, 40, 51].map(f64::from);
    let readings: Vec<_> = times.into_iter().zip(values).collect();
    let found = theil_sen(&readings, 0.95).unwrap();
    assert_eq!(found.slope, 0.5);
    let (low, high) = found.between.unwrap();
    printed(low, 0.3243243, 7);
    printed(high, 0.75, 2);
}

/// P: three readings of scipy's tests: slope 0.5, intercept 0.5 by medians and 0 jointly.
#[test]
fn three_readings() {
    let readings = [(0.0, 0.0), (1.0, 1.0), (2.0, 1.0)];
    let found = theil_sen(&readings, 0.95).unwrap();
    assert_eq!((found.slope, found.intercept, found.joint_intercept), (0.5, 0.5, 0.0));
}

/// P, C: a by-hand note of the College of the Holy Cross: 72 pairs rise and 18 fall, variance 332.67,
/// Z 2.9058, one-sided p 0.0018. C: the rest.
#[test]
fn a_test_worked_by_hand() {
    let values =
        [12.9, 14.8, 13.2, 15.7, 13.8, 15.6, 12.9, 11.0, 17.3, 15.9, 19.0, 18.3, 20.1, 21.7];
    let found = mann_kendall(&values).unwrap();
    assert_eq!(found.score, 72 - 18);
    printed(found.variance, 332.6667, 4);
    near(found.variance, (14.0 * 13.0 * 33.0 - 18.0) / 18.0, 1e-15);
    printed(found.z, 2.9058, 4);
    printed(found.p / 2.0, 0.0018, 4);
    printed(found.p, 0.0036627, 7);
    let line = theil_sen(&by_number(&values), 0.95).unwrap();
    printed(line.slope, 0.566667, 6);
    let (low, high) = line.between.unwrap();
    printed(low, 0.325, 6);
    printed(high, 0.866667, 6);
    // Counted from zero, as in the reference: one slope more than counted from 1.
    printed(line.intercept + line.slope, 11.966667, 6);
}

/// P (the data), C (the rows): six subjects of a study of exercise therapy (Littell et al., SAS System
/// for Mixed Models 1996, data set 3.2(a)), strength on seven days.
#[test]
fn six_strength_series_of_a_study() {
    let rows = [
        ([83, 83, 85, 85, 86, 87, 87], 0.75, (0.5, 1.0), 18, 41.3333, 2.6442),
        ([80, 81, 82, 82, 82, 84, 86], 1.0, (0.333, 1.333), 18, 40.6667, 2.6658),
        ([82, 83, 84, 85, 84, 85, 86], 0.6, (0.333, 1.0), 17, 42.3333, 2.4591),
        ([86, 87, 87, 87, 87, 87, 86], 0.0, (-0.2, 0.2), 0, 26.6667, 0.0),
        ([80, 79, 79, 78, 78, 79, 78], -0.25, (-0.5, 0.0), -11, 37.0, -1.6440),
        ([83, 84, 82, 81, 83, 83, 82], -0.1667, (-1.0, 0.5), -5, 39.6667, -0.6351),
    ];
    for (values, slope, (low, high), score, variance, z) in rows {
        let values = values.map(f64::from);
        let line = theil_sen(&by_number(&values), 0.95).unwrap();
        printed(line.slope, slope, 4);
        let between = line.between.unwrap();
        printed(between.0, low, 3);
        printed(between.1, high, 3);
        let test = mann_kendall(&values).unwrap();
        assert_eq!(test.score, score);
        printed(test.variance, variance, 4);
        printed(test.z, z, 4);
    }
}

/// Days of a diary with gaps are the same as their numbers.
#[test]
fn days_are_counted_from_the_first() {
    let day = |day| chrono::NaiveDate::from_ymd_opt(2026, 11, day).unwrap();
    let readings = [(day(2), 1.0), (day(5), 2.5), (day(30), 15.0)];
    let over = over_days(&readings).unwrap();
    assert_eq!(over, [(0.0, 1.0), (3.0, 2.5), (28.0, 15.0)]);
    assert_eq!(theil_sen(&over, 0.5).unwrap().slope, 0.5);
    for wrong in [[readings[0], readings[0]], [readings[1], readings[0]]] {
        let refused = over_days(&wrong).unwrap_err().to_string();
        assert_eq!(refused, "reading 2 is not of a later day than the one before");
    }
    assert_eq!(over_days(&[]), Ok(vec![]));
}

#[derive(Deserialize)]
struct Trends {
    theil_sen: Vec<Slope>,
    mann_kendall: Vec<Test>,
}

#[derive(Deserialize)]
struct Slope {
    times: Vec<f64>,
    values: Vec<f64>,
    confidence: f64,
    slope: f64,
    low: Option<f64>,
    high: Option<f64>,
    intercept: f64,
    joint_intercept: f64,
}

#[derive(Deserialize)]
struct Test {
    values: Vec<f64>,
    score: i64,
    variance: f64,
    z: f64,
    p: f64,
}

/// C: scipy. Where the readings are too few for the confidence, scipy's bounds stop at the steepest
/// slope (or are no numbers) and ours are none.
#[test]
fn slopes_as_scipy_has_them() {
    let mut without = 0;
    let close = |found: f64, expected: f64| (found - expected).abs() <= 1e-10;
    for case in reference::<Trends>("trend").theil_sen {
        let readings: Vec<_> = case.times.into_iter().zip(case.values).collect();
        let found = theil_sen(&readings, case.confidence).unwrap();
        assert!(close(found.slope, case.slope), "{found:?}");
        assert!(close(found.intercept, case.intercept), "{found:?}");
        assert!(close(found.joint_intercept, case.joint_intercept), "{found:?}");
        let expected = case.low.zip(case.high);
        match (found.between, expected) {
            (Some((low, high)), Some(expected)) => {
                assert!(close(low, expected.0) && close(high, expected.1), "{found:?}");
            }
            (None, None) => without += 1,
            (None, Some((low, high))) => {
                let pairs =
                    readings.iter().flat_map(|one| readings.iter().map(move |two| (one, two)));
                let slopes = pairs.filter(|(one, two)| one.0 < two.0);
                let slopes: Vec<f64> =
                    slopes.map(|(one, two)| (two.1 - one.1) / (two.0 - one.0)).collect();
                let least = slopes.iter().copied().fold(f64::INFINITY, f64::min);
                let most = slopes.iter().copied().fold(f64::NEG_INFINITY, f64::max);
                assert!(close(low, least) || close(high, most), "{found:?}");
                assert!(readings.len() <= 6, "{} readings without bounds", readings.len());
                without += 1;
            }
            (found, expected) => panic!("{found:?} {expected:?}"),
        }
    }
    assert!(without > 0, "no case is too small for its confidence");
}

/// C: pymannkendall, its p from scipy's tail.
#[test]
fn tests_as_pymannkendall_has_them() {
    for case in reference::<Trends>("trend").mann_kendall {
        let found = mann_kendall(&case.values).unwrap();
        assert_eq!(found.score, case.score);
        near(found.variance, case.variance, 1e-12);
        near(found.z, case.z, 1e-12);
        near(found.p, case.p, 1e-12);
    }
}
