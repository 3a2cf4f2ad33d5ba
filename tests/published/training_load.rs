//! Training load: volume, a week's monotony and strain, smoothed loads and their ratio.

use holdfast_core::Mass;
use holdfast_core::load::{
    Compared, DayLoad, RelativeSet, SessionRating, Spread, prilepin_row, relative_volume,
    rolling_ratio, session_load, smoothed, smoothed_ratio, volume_load, week, weekly_ratio,
    weight_of_span,
};
use serde::Deserialize;

use holdfast_tests::oil::{OIL, OIL_LEVELS};
use holdfast_tests::oracle::{near, printed, reference};

fn days(loads: &[Option<f64>]) -> Vec<DayLoad> {
    loads.iter().map(|load| load.map_or(DayLoad::Missing, DayLoad::Load)).collect()
}

/// P, C: two bouts of equal volume of Kraft et al., J Strength Cond Res 2014;28:2042-2046: 2 x 12 at
/// 60 % and 3 x 6 at 80 % are 1440 percent reps each; they were rated 4.3 and 5.7.
#[test]
fn two_bouts_of_equal_relative_volume() {
    let light = relative_volume(&[RelativeSet { reps: 12, percent: 60.0 }; 2]).unwrap();
    let heavy = relative_volume(&[RelativeSet { reps: 6, percent: 80.0 }; 3]).unwrap();
    assert_eq!((light.percent_reps, heavy.percent_reps), (1440.0, 1440.0));
    assert_eq!((light.mean_percent, heavy.mean_percent), (Some(60.0), Some(80.0)));
    // Weighted by reps: (10 x 50 + 5 x 80) / 15.
    let mixed = [RelativeSet { reps: 10, percent: 50.0 }, RelativeSet { reps: 5, percent: 80.0 }];
    assert_eq!(relative_volume(&mixed).unwrap().mean_percent, Some(60.0));
}

/// S: the unit example of the session-rating method: an hour rated 7 is 420 units. Volume is common
/// practice, no source: 3 x 8 x 50 kg = 1200 kg.
#[test]
fn the_unit_examples() {
    let rating = SessionRating::new(7).unwrap();
    assert_eq!(session_load(rating.number(), 60), 420);
    assert_eq!(volume_load([(8, Some(Mass::kg(50))); 3]), Mass::kg(1200));
}

/// C: closed forms for k equal days and 7 - k rest days, whatever the load: population
/// sqrt(k / (7 - k)), sample sqrt(6k / (7 (7 - k))); with seven there is none.
#[test]
fn monotony_of_k_equal_days() {
    let table = [
        (1, 0.408248, 0.377964),
        (2, 0.632456, 0.585540),
        (3, 0.866025, 0.801784),
        (4, 1.154701, 1.069045),
        (5, 1.581139, 1.463850),
        (6, 2.449490, 2.267787),
    ];
    for (k, population, sample) in table {
        for load in [1.0, 420.0, 1e6] {
            let mut days = [DayLoad::Rest; 7];
            days[..k].fill(DayLoad::Load(load));
            let found = |spread| week(&days, spread).unwrap();
            printed(found(Spread::Population).monotony.unwrap(), population, 6);
            printed(found(Spread::Sample).monotony.unwrap(), sample, 6);
            let (whole, parts) = (k as f64, 7.0 - k as f64);
            near(found(Spread::Population).monotony.unwrap(), (whole / parts).sqrt(), 1e-13);
            let strain = found(Spread::Sample).strain.unwrap();
            near(strain, whole * load * (6.0 * whole / (7.0 * parts)).sqrt(), 1e-13);
        }
    }
    for spread in [Spread::Population, Spread::Sample] {
        assert_eq!(week(&[DayLoad::Load(300.0); 7], spread).unwrap().monotony, None);
    }
}

/// C: a made-up week by both deviations, worked out by hand.
#[test]
fn a_made_up_week() {
    let days = [300.0, 0.0, 420.0, 0.0, 450.0, 0.0, 0.0].map(DayLoad::Load);
    let sample = week(&days, Spread::Sample).unwrap();
    assert_eq!((sample.load, sample.missing), (1170.0, 0));
    printed(sample.monotony.unwrap(), 0.783086, 6);
    printed(sample.strain.unwrap(), 916.2109, 4);
    let population = week(&days, Spread::Population).unwrap();
    printed(population.monotony.unwrap(), 0.845830, 6);
    printed(population.strain.unwrap(), 989.6209, 4);
}

/// P: 2 / (N + 1) of Williams et al., Br J Sports Med 2017;51:209-210: 0.25 for a week, 2/29 for four.
/// C: 21 days of 400 and 7 of 600, in closed form: 600 - 200 x 0.75^7 and 600 - 200 x (27/29)^7.
#[test]
fn three_steady_weeks_and_a_heavier_one() {
    assert_eq!(weight_of_span(7), Ok(0.25));
    printed(weight_of_span(28).unwrap(), 0.0689655, 7);
    let mut days = [DayLoad::Load(400.0); 28];
    days[21..].fill(DayLoad::Load(600.0));
    let last = |span| {
        let all = smoothed(&days, weight_of_span(span).unwrap()).unwrap();
        all.last().copied().flatten().unwrap()
    };
    printed(last(7), 573.3032226563, 10);
    printed(last(28), 478.7196729342, 10);
    printed(smoothed_ratio(&days).unwrap().unwrap(), 1.1975760661, 10);
    let ratio = |compared| rolling_ratio(&days, compared).unwrap().unwrap();
    printed(ratio(Compared::Coupled), 1.333333, 6);
    assert_eq!(ratio(Compared::Uncoupled), 1.5);
}

/// P, C: the example in pandas' documentation of exponential weights, com = 0.5, that is 2/3: 0, 1,
/// 2, nothing, 4. Without a gap counted it would end in 3.185185, with the gap as a rest day in 3.03.
#[test]
fn a_gap_is_a_gap() {
    let days = days(&[Some(0.0), Some(1.0), Some(2.0), None, Some(4.0)]);
    let found = smoothed(&days, 2.0 / 3.0).unwrap();
    let expected = [0.0, 0.666667, 1.555556, 1.555556, 3.650794];
    for (found, expected) in found.iter().zip(expected) {
        printed(found.unwrap(), expected, 6);
    }
    let documented = reference::<Loads>("training_load").documented;
    for (found, expected) in found.iter().zip(documented) {
        printed(found.unwrap(), expected.unwrap(), 12);
    }
}

/// C: span 7 on three days of 100, a rest day, 200, 300 and 50.
#[test]
fn a_rest_day_pulls_down() {
    let mut days = [100.0, 100.0, 100.0, 0.0, 200.0, 300.0, 50.0].map(DayLoad::Load);
    days[3] = DayLoad::Rest;
    let found = smoothed(&days, 0.25).unwrap();
    let expected = [100.0, 100.0, 100.0, 75.0, 106.25, 154.6875, 128.515625];
    assert_eq!(found, expected.map(Some));
}

/// P: the oil series; its last level is 484.80 at a weight of 0.2 and 501.84 at 0.6. C: the levels
/// between.
#[test]
fn a_textbooks_exponential_smoothing() {
    let oil = OIL.map(DayLoad::Load);
    for (found, expected) in smoothed(&oil, 0.2).unwrap().iter().zip(OIL_LEVELS) {
        printed(found.unwrap(), expected, 4);
    }
    assert_eq!(weight_of_span(9), Ok(0.2));
    printed(smoothed(&oil, 0.6).unwrap()[11].unwrap(), 501.8375, 4);
}

/// P: a ratio beside a mean that holds the latest week is never above 4 (Lolli et al., Br J Sports Med
/// 2019;53:921-922, from A / [(A + W1 + W2 + W3) / 4]).
#[test]
fn a_week_after_three_empty_ones_is_four() {
    assert_eq!(weekly_ratio(900.0, [0.0; 3], Compared::Coupled), Ok(Some(4.0)));
    assert_eq!(weekly_ratio(600.0, [400.0; 3], Compared::Coupled), Ok(Some(2400.0 / 1800.0)));
}

#[derive(Deserialize)]
struct Loads {
    documented: Vec<Option<f64>>,
    smoothed: Vec<Smoothed>,
    weeks: Vec<WeekRow>,
    ratios: Vec<Ratio>,
}

#[derive(Deserialize)]
struct Smoothed {
    loads: Vec<Option<f64>>,
    span: u32,
    smoothed: Vec<Option<f64>>,
}

#[derive(Deserialize)]
struct WeekRow {
    loads: Vec<Option<f64>>,
    load: f64,
    monotony_population: f64,
    monotony_sample: f64,
}

#[derive(Deserialize)]
struct Ratio {
    loads: Vec<Option<f64>>,
    coupled: f64,
    uncoupled: f64,
    smoothed: f64,
}

/// C: pandas, made-up days with none, a fifth and half of them missing.
#[test]
fn smoothing_as_pandas_does() {
    for case in reference::<Loads>("training_load").smoothed {
        let found = smoothed(&days(&case.loads), weight_of_span(case.span).unwrap()).unwrap();
        assert_eq!(found.len(), case.smoothed.len());
        for (found, expected) in found.into_iter().zip(case.smoothed) {
            assert_eq!(found.is_some(), expected.is_some());
            if let (Some(found), Some(expected)) = (found, expected) {
                assert!((found - expected).abs() <= 1e-9, "{found} {expected}");
            }
        }
    }
}

/// C: pandas, twenty made-up weeks and ten made-up months.
#[test]
fn weeks_and_ratios_as_pandas_has_them() {
    let loads = reference::<Loads>("training_load");
    for case in loads.weeks {
        let days: [DayLoad; 7] = days(&case.loads).try_into().unwrap();
        let kinds = [
            (Spread::Population, case.monotony_population),
            (Spread::Sample, case.monotony_sample),
        ];
        for (spread, expected) in kinds {
            let found = week(&days, spread).unwrap();
            assert_eq!(found.load, case.load);
            near(found.monotony.unwrap(), expected, 1e-12);
            near(found.strain.unwrap(), expected * case.load, 1e-12);
        }
    }
    for case in loads.ratios {
        let days: [DayLoad; 28] = days(&case.loads).try_into().unwrap();
        let ratio = |compared| rolling_ratio(&days, compared).unwrap().unwrap();
        near(ratio(Compared::Coupled), case.coupled, 1e-12);
        near(ratio(Compared::Uncoupled), case.uncoupled, 1e-12);
        near(smoothed_ratio(&days).unwrap().unwrap(), case.smoothed, 1e-12);
    }
}

/// S: Prilepin's table, five copies that agree on the reps; the edges as one of them has them.
#[test]
fn prilepins_rows() {
    let rows = [
        (60, (3, 6), 24, (18, 30)),
        (72, (3, 6), 18, (12, 24)),
        (80, (2, 4), 15, (10, 20)),
        (95, (1, 2), 7, (4, 10)),
    ];
    for (percent, reps, best, total) in rows {
        let row = prilepin_row(percent).unwrap();
        assert_eq!((row.reps, row.best_total, row.total), (reps, best, total), "{percent} %");
    }
}
