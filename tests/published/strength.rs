//! The local level filter behind the strength model.
//!
//! `tests/reference/strength.py` makes the numbers of statsmodels' exact diffuse filter (C). The
//! Nile series and its parameters are those of Durbin and Koopman, Time Series Analysis by State
//! Space Methods, chapter 2 (S).

use std::collections::BTreeMap;

use holdfast_core::load::strength::{
    Coverage, Filtered, LocalLevel, Moment, Normal, Start, Step, drift, filter,
};
use holdfast_tests::oil::{OIL, OIL_LEVELS};
use holdfast_tests::oracle::{printed, reference};
use serde::Deserialize;
use serde::de::DeserializeOwned;

type Column = Vec<Option<f64>>;

#[derive(Deserialize)]
struct Case {
    days: Vec<i64>,
    values: Column,
    variances: Vec<f64>,
    per_day: f64,
    start: Option<(f64, f64)>,
    log_likelihood: f64,
    predicted_mean: Column,
    predicted_variance: Column,
    innovation: Column,
    innovation_variance: Column,
    filtered_mean: Column,
    filtered_variance: Column,
    drift: Option<(f64, f64)>,
}

/// One of the things the script printed.
fn part<T: DeserializeOwned>(name: &str) -> T {
    let all: BTreeMap<String, serde_json::Value> = reference("strength");
    serde_json::from_value(all[name].clone()).unwrap()
}

fn case(name: &str) -> Case {
    part(name)
}

impl Case {
    fn filter(&self) -> Filtered {
        let known = |(mean, variance)| Start::Known(Normal { mean, variance });
        let start = self.start.map_or(Start::Diffuse, known);
        filter(&LocalLevel { per_day: self.per_day, start }, &self.moments()).unwrap()
    }

    fn moments(&self) -> Vec<Moment> {
        let rows = self.days.iter().zip(&self.values).zip(&self.variances);
        rows.map(|((day, value), variance)| Moment {
            day: *day,
            value: *value,
            variance: *variance,
        })
        .collect()
    }
}

/// Within 1e-9 of a number, relative to its size where that is above 1e-5.
#[track_caller]
fn same(found: Option<f64>, expected: Option<f64>, what: &str, row: usize) {
    match (found, expected) {
        (None, None) => {}
        (Some(found), Some(expected)) => {
            let off = (found - expected).abs();
            assert!(off <= 1e-9 * expected.abs().max(1e-5), "{what} {row}: {found}, {expected}");
        }
        _ => panic!("{what} {row}: {found:?}, expected {expected:?}"),
    }
}

/// Everything statsmodels' filter says: a century of the Nile from an exactly diffuse and from a wide known start, and two made
/// series with irregular and repeated days, unequal errors and days with nothing seen.
#[test]
fn equals_the_reference_filter() {
    for name in ["nile_diffuse", "nile_wide_prior", "irregular_diffuse", "irregular_known"] {
        let case = case(name);
        let found = case.filter();
        same(Some(found.log_likelihood), Some(case.log_likelihood), name, 0);
        assert_eq!(found.steps.len(), case.days.len());
        for (row, step) in found.steps.iter().enumerate() {
            let checks: [(&str, Option<f64>, &Column); 6] = [
                (
                    "predicted mean",
                    step.predicted.map(|predicted| predicted.mean),
                    &case.predicted_mean,
                ),
                (
                    "predicted variance",
                    step.predicted.map(|predicted| predicted.variance),
                    &case.predicted_variance,
                ),
                ("innovation", surprise(step).map(|surprise| surprise.0), &case.innovation),
                (
                    "its variance",
                    surprise(step).map(|surprise| surprise.1),
                    &case.innovation_variance,
                ),
                ("filtered mean", step.filtered.map(|filtered| filtered.mean), &case.filtered_mean),
                (
                    "filtered variance",
                    step.filtered.map(|filtered| filtered.variance),
                    &case.filtered_variance,
                ),
            ];
            for (what, found, expected) in checks {
                same(found, expected[row], &format!("{name}, {what}"), row);
            }
        }
    }
}

/// The drift of the walk against generalised least squares with the whole covariance (C). The Nile falls by
/// 3.4 a year, with a standard error of 4.0.
#[test]
fn drift_equals_least_squares() {
    for name in ["nile_diffuse", "irregular_diffuse"] {
        let case = case(name);
        let (mean, variance) = case.drift.unwrap();
        let found = drift(case.per_day, &case.moments()).unwrap().unwrap();
        same(Some(found.mean), Some(mean), name, 0);
        assert!((found.variance / variance - 1.0).abs() < 1e-9, "{name}: {}", found.variance);
    }
}

/// The innovation, but for the first one of a diffuse start, which the reference does not give.
fn surprise(step: &Step) -> Option<(f64, f64)> {
    step.innovation
        .filter(|innovation| innovation.variance.is_finite())
        .map(|innovation| (innovation.value, innovation.variance))
}

/// The Nile year by year: observation, prediction and its variance, innovation and its variance,
/// gain, filtered level and its variance (C; parameters S; the last variance is in the book, M).
#[test]
fn nile_table() {
    #[rustfmt::skip]
    let table = [
        (1872, 1160.0, 1120.0000, 16568.1000,   40.0000, 31667.1000, 0.523196, 1140.9278, 7899.7364),
        (1873,  963.0, 1140.9278,  9368.8364, -177.9278, 24467.8364, 0.382904, 1072.7985, 5781.4699),
        (1874, 1210.0, 1072.7985,  7250.5699,  137.2015, 22349.5699, 0.324417, 1117.3090, 4898.3652),
        (1875, 1160.0, 1117.3090,  6367.4652,   42.6910, 21466.4652, 0.296624, 1129.9721, 4478.7233),
        (1880, 1140.0, 1171.3012,  5536.9219,  -31.3012, 20635.9219, 0.268315, 1162.9026, 4051.2842),
        (1913,  456.0,  856.3270,  5501.2579, -400.3270, 20600.2579, 0.267048,  749.4204, 4032.1579),
        (1970,  740.0,  819.6373,  5501.2579,  -79.6373, 20600.2579, 0.267048,  798.3703, 4032.1579),
    ];
    let case = case("nile_diffuse");
    assert_eq!(case.values.iter().flatten().sum::<f64>(), 91_935.0);
    let found = case.filter();
    printed(found.log_likelihood, -633.464564, 6);
    for (year, y, a, p, v, f, k, at, pt) in table {
        let step = &found.steps[year - 1871];
        assert_eq!((step.day, case.values[year - 1871]), (year as i64, Some(y)));
        let (predicted, innovation) = (step.predicted.unwrap(), step.innovation.unwrap());
        printed(predicted.mean, a, 4);
        printed(predicted.variance, p, 4);
        printed(innovation.value, v, 4);
        printed(innovation.variance, f, 4);
        printed(step.gain, k, 6);
        printed(step.filtered.unwrap().mean, at, 4);
        printed(step.filtered.unwrap().variance, pt, 4);
    }
    // The next three years: the level stays, its error grows by a year's variance each (C).
    let last = found.steps.last().unwrap().filtered.unwrap();
    for (ahead, error) in [(1.0, 143.5279), (2.0, 148.5576), (3.0, 153.4225)] {
        printed((last.variance + ahead * 1469.1 + 15099.0).sqrt(), error, 4);
    }
}

/// The book's own approximate start: mean 0, variance 10^7 (C).
#[test]
fn nile_from_the_books_wide_start() {
    let found = case("nile_wide_prior").filter();
    for (step, mean) in found.steps.iter().zip([1118.3115, 1140.1084, 1072.3160]) {
        printed(step.filtered.unwrap().mean, mean, 4);
    }
}

/// Durbin and Koopman, table 2.1: the concentrated diffuse log-likelihood of the Nile by q, the ratio
/// of the variances (M, each one computed again to the two decimals: C).
#[test]
fn nile_likelihood_by_ratio() {
    let case = case("nile_diffuse");
    let n = case.days.len() as f64;
    let level = |noise: f64, q: f64| {
        let moments: Vec<_> =
            case.moments().into_iter().map(|moment| Moment { variance: noise, ..moment }).collect();
        filter(&LocalLevel { per_day: q * noise, start: Start::Diffuse }, &moments).unwrap()
    };
    let table = [
        (1.0, -495.68),
        (0.0360, -492.53),
        (0.0745, -492.10),
        (0.0974, -492.07),
        (0.0973, -492.07),
    ];
    for (q, book) in table {
        // The noise that is likeliest for a ratio: the mean squared standardised innovation.
        let steps = level(1.0, q).steps;
        let squares = steps.iter().filter_map(surprise).map(|(v, f)| v * v / f);
        let noise = squares.sum::<f64>() / (n - 1.0);
        let constants = n / 2.0 * std::f64::consts::TAU.ln() + (n - 1.0) / 2.0;
        // The book cuts where it might round: -495.6851 stands there as -495.68.
        let found = level(noise, q).log_likelihood + constants;
        assert!((found - book).abs() < 0.0055, "q {q}: {found}, book {book}");
        if q == 0.0973 {
            printed(noise, 15099.0, 0);
        }
    }
}

/// In its steady state the filter is exponential smoothing with a weight of its gain: the oil series with
/// 0.2 from the first observation.
#[test]
fn steady_state_is_exponential_smoothing() {
    // A gain K for ever: prediction variance K/(1-K), and K^2/(1-K) added a day.
    let weight = 0.2_f64;
    let start = Normal { mean: OIL[0], variance: weight / (1.0 - weight) };
    let model =
        LocalLevel { per_day: weight * weight / (1.0 - weight), start: Start::Known(start) };
    let moment = |(day, y): (i64, f64)| Moment { day, value: Some(y), variance: 1.0 };
    let found = filter(&model, &(1996..).zip(OIL).map(moment).collect::<Vec<_>>()).unwrap();
    for (step, level) in found.steps.iter().zip(OIL_LEVELS) {
        printed(step.filtered.unwrap().mean, level, 4);
        assert!((step.gain - weight).abs() < 1e-12);
    }
    // And the Nile's own: x = (q + sqrt(q^2 + 4q))/2, gain x/(1 + x) (C).
    let q: f64 = 1469.1 / 15099.0;
    let x = (q + (q * q + 4.0 * q).sqrt()) / 2.0;
    printed(x / (1.0 + x), 0.2670480126, 10);
    let last = *case("nile_diffuse").filter().steps.last().unwrap();
    assert!((last.gain - x / (1.0 + x)).abs() < 1e-12);
}

/// The reach of a normal interval for 1 to 99 percent against scipy, whose algorithm is another.
#[test]
fn interval_reach_equals_the_reference() {
    let reference: Vec<f64> = part("deviations");
    assert_eq!(reference.len(), 99);
    for (percent, expected) in (1..).zip(reference) {
        let found = Coverage::percent(percent).unwrap().deviations();
        assert!((found - expected).abs() < 1e-13, "{percent} %: {found}, {expected}");
    }
    assert_eq!((Coverage::percent(0), Coverage::percent(100)), (None, None));
}
