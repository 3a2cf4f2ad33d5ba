//! The strength model's filter, piece by piece and as a whole.
//!
//! `tests/reference/strength.py` makes the numbers (C): scipy's normal points and integrals,
//! statsmodels' Kalman filter and generalised least squares, a package for adaptive conformal inference,
//! and the whole model written once more in Python.

use std::collections::BTreeMap;

use chrono::{Days, NaiveDate};
use holdfast_core::Mass;
use holdfast_core::load::strength::{
    Adaptive, Evidence, Moment, Observation, Pair, SIZE, Seen, SetSeen, State, Taking, above,
    deviations, drift, strength_on,
};
use holdfast_tests::oracle::{near, reference};
use serde::Deserialize;
use serde::de::DeserializeOwned;

type Numbers = [f64; SIZE];
type Matrix = [Numbers; SIZE];

/// One of the things the script printed.
fn part<T: DeserializeOwned>(name: &str) -> T {
    let all: BTreeMap<String, serde_json::Value> = reference("strength");
    serde_json::from_value(all[name].clone()).unwrap()
}

#[track_caller]
fn close(found: f64, expected: f64, within: f64) {
    assert!((found - expected).abs() <= within, "found {found}, expected {expected}");
}

fn all_close<'a>(
    found: impl IntoIterator<Item = &'a f64>,
    expected: impl IntoIterator<Item = &'a f64>,
    within: f64,
) {
    found.into_iter().zip(expected).for_each(|(found, expected)| close(*found, *expected, within));
}

/// The reach of a normal interval that leaves 1 to 100 percent outside against scipy, whose algorithm is
/// another.
#[test]
fn interval_reach_equals_the_reference() {
    let reference: Vec<f64> = part("deviations");
    assert_eq!(reference.len(), 100);
    for (percent, expected) in (1..).zip(reference) {
        close(deviations(f64::from(percent) / 100.0), expected, 1e-13);
    }
}

/// A normal above a limit against numerical integration, from eight deviations below its mean to eight
/// above. The aim is 1e-6; how near they are says that both are right.
#[test]
fn limits_equal_integrals() {
    let rows: Vec<[f64; 3]> = part("limits");
    assert_eq!((rows[0][0], rows.last().unwrap()[0]), (-8.0, 8.0));
    for [limit, mean, variance] in rows {
        let found = above(limit);
        close(found.mean, mean, 1e-9);
        near(found.variance, variance, 1e-9);
    }
    // Beyond that it stays a distribution, and a limit without end is one of thirty deviations.
    for limit in [9.0, 20.0, 30.0, 1e9, f64::INFINITY] {
        let found = above(limit);
        assert!(
            found.mean > limit.min(30.0) && (0.001..0.1).contains(&found.variance),
            "{found:?}"
        );
    }
    assert_eq!(above(f64::NEG_INFINITY), above(-30.0));
    close(above(-30.0).variance, 1.0, 1e-15);
}

#[derive(Deserialize)]
struct Step {
    mean: Numbers,
    covariance: Matrix,
    design: Numbers,
    variance: f64,
    value: f64,
    gains: Numbers,
    after_mean: Numbers,
    after_covariance: Matrix,
}

/// Partial gains against the long form that holds for any gain, `(I - K H) P (I - K H)' + K R K'`.
#[test]
fn steps_with_partial_gains_equal_the_long_form() {
    let steps: Vec<Step> = part("steps");
    assert!(steps.iter().any(|step| step.gains == [1.0, 0.05, 0.0, 0.0]));
    for step in steps {
        let mut state = State { mean: step.mean, covariance: step.covariance };
        let row = Observation {
            design: step.design,
            seen: Seen::Exactly(step.value),
            variance: step.variance,
        };
        state.take(&row, &Taking::new(step.gains, f64::INFINITY));
        all_close(&state.mean, &step.after_mean, 1e-12);
        all_close(state.covariance.iter().flatten(), step.after_covariance.iter().flatten(), 1e-12);
    }
}

#[derive(Deserialize)]
struct Kalman {
    designs: Vec<Numbers>,
    values: Vec<f64>,
    variances: Vec<f64>,
    days: Vec<f64>,
    walk: Numbers,
    start: Matrix,
    means: Vec<Numbers>,
    covariances: Vec<Matrix>,
    foretold: Vec<f64>,
    forecast_variances: Vec<f64>,
}

/// With all gains 1 and no limit it is an ordinary Kalman filter: against that of statsmodels, with a
/// design and errors that vary and days of unequal length.
#[test]
fn full_gains_equal_the_reference_filter() {
    let case: Kalman = part("kalman");
    let mut state = State { mean: [0.0; SIZE], covariance: case.start };
    let how = Taking::new([1.0; SIZE], f64::INFINITY);
    for (row, value) in case.values.iter().enumerate() {
        if row > 0 {
            for (at, walk) in case.walk.iter().enumerate() {
                state.covariance[at][at] += walk * case.days[row];
            }
        }
        let observation = Observation {
            design: case.designs[row],
            seen: Seen::Exactly(*value),
            variance: case.variances[row],
        };
        let surprise = state.take(&observation, &how);
        close(surprise.foretold, case.foretold[row], 1e-9);
        close(surprise.variance, case.forecast_variances[row], 1e-9);
        all_close(&state.mean, &case.means[row], 1e-9);
        all_close(state.covariance.iter().flatten(), case.covariances[row].iter().flatten(), 1e-9);
    }
}

#[derive(Deserialize)]
struct Ratio {
    over: f64,
    under: f64,
    over_variance: f64,
    shared: f64,
    under_variance: f64,
    ends: Option<(f64, f64)>,
}

/// Fieller's ends against a root finder on what defines them.
#[test]
fn the_ends_of_a_ratio_equal_those_a_root_finder_finds() {
    for case in part::<Vec<Ratio>>("fieller") {
        let Ratio { over, under, over_variance, shared, under_variance, ends } = case;
        let pair = Pair { over, under, over_variance, shared, under_variance };
        match (pair.ratio(deviations(0.2)), ends) {
            (None, None) => {}
            (Some(found), Some(ends)) => {
                close(found.0, ends.0, 1e-9 * ends.0.abs().max(1.0));
                close(found.1, ends.1, 1e-9 * ends.1.abs().max(1.0));
            }
            (found, ends) => panic!("{found:?}, expected {ends:?}"),
        }
    }
}

#[derive(Deserialize)]
struct Shares {
    outside: Vec<bool>,
    shares: Vec<f64>,
}

/// The share outside against the package's plain method, while it stays inside the limits we set.
#[test]
fn the_share_outside_equals_the_packages() {
    let case: Shares = part("adaptive");
    let mut adaptive = Adaptive::default();
    for (outside, share) in case.outside.into_iter().zip(case.shares) {
        adaptive.saw(outside);
        close(adaptive.outside(), share, 1e-12);
    }
}

#[derive(Deserialize)]
struct Line {
    days: Vec<i64>,
    values: Vec<f64>,
    variances: Vec<f64>,
    walk: f64,
    per_day: f64,
    variance: f64,
}

/// The drift of a walk against generalised least squares with the whole covariance. The Nile falls by 3.4 a
/// year, with a standard error of 4.0.
#[test]
fn drift_equals_least_squares() {
    for (name, line) in part::<BTreeMap<String, Line>>("drifts") {
        let rows = line.days.iter().zip(&line.values).zip(&line.variances);
        let moment = |((day, value), variance): ((&i64, &f64), &f64)| Moment {
            day: *day,
            values: [*value, 2.0 * value + 1.0],
            variance: *variance,
        };
        let found = drift(line.walk, &rows.map(moment).collect::<Vec<_>>()).unwrap();
        near(found.per_day[0], line.per_day, 1e-9);
        near(found.per_day[1], 2.0 * line.per_day, 1e-9);
        near(found.variance, line.variance, 1e-9);
        if name == "nile" {
            close(found.per_day[0], -3.4, 0.05);
            close(found.variance.sqrt(), 4.0, 0.2);
        }
    }
    let moment = |day| Moment { day, values: [1.0], variance: 1.0 };
    assert_eq!(drift::<1>(1.0, &[]), None);
    assert_eq!(drift(1.0, &[moment(3), moment(3)]), None);
}

/// A row of the crew as the script prints it: what was logged, and what was foretold of it.
#[derive(Deserialize)]
struct Row(
    u32,
    u64,
    f64,
    u32,
    u32,
    u32,
    u32,
    u32,
    u32,
    Option<f64>,
    Option<f64>,
    Option<f64>,
    Option<f64>,
    Option<f64>,
    Option<u32>,
    Option<u32>,
    Option<f64>,
);

impl Row {
    fn on(&self) -> NaiveDate {
        NaiveDate::from_ymd_opt(2026, 1, 5).unwrap().checked_add_days(Days::new(self.1)).unwrap()
    }

    fn load(&self) -> Mass {
        Mass { ten_ng: (self.2 * 1e11).round() as i64 }
    }

    /// The day's sets: as many made as planned as came before the one that is read, and that.
    fn sets(&self) -> impl Iterator<Item = SetSeen> {
        let evidence = match self.0 {
            1 => Evidence::Counted,
            2 => Evidence::Reserve(self.4),
            3 => Evidence::AsPlanned,
            4 => Evidence::Short,
            other => panic!("kind {other}"),
        };
        let open = evidence == Evidence::Counted || self.8 == 1;
        let (on, load, reps, target) = (self.on(), self.load(), self.3, self.5);
        let read = SetSeen { on, load, reps, target, open, evidence };
        let other = SetSeen { reps: target, open: false, evidence: Evidence::AsPlanned, ..read };
        (0..self.6).map(move |_| other).chain([read])
    }
}

#[derive(Deserialize)]
struct Crew {
    series: BTreeMap<String, Vec<Vec<Row>>>,
}

/// Every forecast, interval and band of the model in Python, for athletes of each behaviour: the core says
/// the same from the same sets.
#[test]
fn every_row_and_band_equals_the_model_written_once_more() {
    let (mut told, mut silent, mut unbounded) = (0, 0, 0);
    for (behaviour, athletes) in part::<Crew>("crew").series {
        for rows in athletes {
            for (at, row) in rows.iter().enumerate() {
                let sets: Vec<SetSeen> = rows[..at].iter().flat_map(Row::sets).collect();
                let found = strength_on(&sets, &[row.on()]).unwrap().pop().flatten();
                let (Some(strength), Some(mean)) = (found, row.9) else {
                    assert!(found.is_none() && row.9.is_none(), "{behaviour}, row {at}");
                    silent += 1;
                    continue;
                };
                told += 1;
                let (height, variance) = strength.foretell(row.load(), row.7);
                close(height, mean, 1e-9);
                close(variance.sqrt(), row.10.unwrap(), 1e-9);
                match (strength.estimate(), row.12) {
                    (None, None) => unbounded += 1,
                    (max, _) => {
                        let max = max.unwrap();
                        for (end, expected) in
                            [(max.likely, row.11), (max.low, row.12), (max.high, row.13)]
                        {
                            close(end.ln(), expected.unwrap(), 1e-9);
                        }
                    }
                }
                close(strength.outside(), row.16.unwrap(), 1e-9);
                let band = strength.expected_reps(row.load(), row.7);
                assert_eq!((band.low, band.high), (row.14.unwrap(), row.15.unwrap()));
            }
        }
    }
    assert!(told > 700 && silent > 20, "{told} {silent} {unbounded}");
}
