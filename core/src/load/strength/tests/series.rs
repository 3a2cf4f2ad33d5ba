use proptest::collection::vec;
use proptest::num::f64::ANY;
use proptest::prelude::*;

use super::super::{LevelError, LocalLevel, Moment, Normal, Start, drift, filter};

const SEEN: Moment = Moment { day: 0, value: Some(1.0), variance: 1.0 };

#[test]
fn what_is_no_series_is_an_error() {
    let plain = LocalLevel { per_day: 1.0, start: Start::Diffuse };
    let error = |seen: &[Moment]| filter(&plain, seen).unwrap_err();
    for value in [f64::NAN, f64::INFINITY, 1e101] {
        let value = Some(value);
        assert_eq!(error(&[SEEN, Moment { value, ..SEEN }]), LevelError::Value { index: 1 });
    }
    for variance in [f64::NAN, f64::INFINITY, 0.0, -1.0] {
        assert_eq!(error(&[Moment { variance, ..SEEN }]), LevelError::Variance { index: 0 });
    }
    let order = [SEEN, Moment { day: -1, ..SEEN }];
    assert_eq!(error(&order), LevelError::Order { index: 1 });
    let known = |mean, variance| Start::Known(Normal { mean, variance });
    for (model, name) in [
        (LocalLevel { per_day: -1.0, ..plain }, "per_day"),
        (LocalLevel { per_day: f64::NAN, ..plain }, "per_day"),
        (LocalLevel { start: known(f64::NAN, 1.0), ..plain }, "start"),
        (LocalLevel { start: known(0.0, -1.0), ..plain }, "start"),
    ] {
        assert_eq!(filter(&model, &[]), Err(LevelError::Parameter { name }));
    }
    assert_eq!(filter(&plain, &[]).unwrap().log_likelihood, 0.0);
    assert_eq!(drift(1.0, &[]), Ok(None));
    assert_eq!(drift(1.0, &[SEEN, SEEN]), Ok(None));
    assert_eq!(drift(-1.0, &[]), Err(LevelError::Parameter { name: "per_day" }));
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_series_is_numbers_or_an_error(
        per_day in ANY,
        start in prop::option::of((ANY, ANY)),
        rows in vec((any::<i64>(), prop::option::of(ANY), ANY), 0..20),
        tame in any::<bool>(),
    ) {
        let tamed = |found: f64| if tame { found.abs().clamp(1e-100, 1e100) } else { found };
        let mut rows = rows;
        if tame {
            rows.sort_by_key(|row| row.0);
        }
        let known = |(mean, variance)| Start::Known(Normal { mean: tamed(mean), variance: tamed(variance) });
        let start = start.map_or(Start::Diffuse, known);
        let seen: Vec<_> = rows
            .iter()
            .map(|row| Moment { day: row.0, value: row.1.map(tamed), variance: tamed(row.2) })
            .collect();
        let Ok(filtered) = filter(&LocalLevel { per_day: tamed(per_day), start }, &seen) else {
            return Ok(());
        };
        prop_assert!(!filtered.log_likelihood.is_nan());
        for step in &filtered.steps {
            for level in [step.predicted, step.filtered].into_iter().flatten() {
                prop_assert!(level.mean.is_finite() && level.variance.is_finite(), "{level:?}");
            }
            prop_assert!((0.0..=1.0).contains(&step.gain));
        }
        let _ = drift(tamed(per_day), &seen);
    }

    /// Precisions add up: without days between them, any order gives the same level.
    #[test]
    fn updates_of_one_day_commute(values in vec((-5.0..5.0, 0.01..4.0), 1..10)) {
        let model = LocalLevel { per_day: 0.1, start: Start::Diffuse };
        let seen: Vec<_> = values
            .iter()
            .map(|(value, variance)| Moment { day: 3, value: Some(*value), variance: *variance })
            .collect();
        let level = filter(&model, &seen).unwrap().steps.last().unwrap().filtered.unwrap();
        let precision: f64 = values.iter().map(|found| 1.0 / found.1).sum();
        let mean = values.iter().map(|found| found.0 / found.1).sum::<f64>() / precision;
        prop_assert!((level.mean - mean).abs() < 1e-9);
        prop_assert!((level.variance * precision - 1.0).abs() < 1e-9);
    }
}
