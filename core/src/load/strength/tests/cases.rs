use chrono::NaiveDate;

use super::super::{
    Coverage, Evidence, LevelError, MOST_REPS, Model, StrengthError, curve, strength, strength_by,
};
use super::{day, set};
use crate::mass::Mass;

fn close(found: f64, expected: f64) {
    assert!((found - expected).abs() < 1e-9 * expected.abs(), "found {found}, expected {expected}");
}

/// The update of a normal prior by one normal observation, by hand: precisions add up.
#[test]
fn one_open_set() {
    let strength = strength(&[set(0, 1000, 8, Evidence::Open)], day(0)).unwrap().unwrap();
    let (prior, seen) = (1.0, 1.0 / (0.025 * 0.025));
    let shown = 100_f64.ln() + curve(8.0);
    let mean = (prior * 4.1 + seen * shown) / (prior + seen);
    close(strength.now().likely, mean.exp());
    // Two standard deviations in width: the level's and the curve's, as far as it is trusted.
    let height = curve(8.0) * seen / (prior + seen);
    let deviation = (1.0 / (prior + seen) + (0.2 * height).powi(2)).sqrt();
    // 1.2815515655446004 is the 90 % point of the standard normal distribution (scipy 1.17.1).
    close(strength.now().high, (mean + 1.281_551_565_544_600_4 * deviation).exp());
    close(strength.now().low, (mean - 1.281_551_565_544_600_4 * deviation).exp());
    // What was just done is what is expected again.
    assert_eq!(strength.expected_reps(Mass::kg(100)).likely, 8);
    assert!((strength.load_for(8, 0) - 100.0).abs() < 0.1);
    assert_eq!(strength.load_for(5, 3), strength.load_for(8, 0));
    assert_eq!(strength.trend(), None);
}

/// A week adds seven days' variance to the level and nothing to anything else.
#[test]
fn days_without_training_widen() {
    let sets = [set(0, 1000, 5, Evidence::Open)];
    let width = |after| {
        let now = strength(&sets, day(after)).unwrap().unwrap().now();
        ((now.high / now.low).ln() / 2.0 / Coverage::EIGHTY.deviations()).powi(2)
    };
    assert!((width(7) - width(0) - 7.0 * 0.000_015).abs() < 1e-12);
    let now = |after| strength(&sets, day(after)).unwrap().unwrap().now().likely;
    assert_eq!(now(7), now(0));
}

#[test]
fn a_rated_set_counts_less_the_further_from_failure() {
    let before = [set(0, 1000, 5, Evidence::Open)];
    let after = |reps, evidence| {
        let sets = [before[0], set(3, 1100, reps, evidence)];
        strength(&sets, day(3)).unwrap().unwrap().now().likely
    };
    // The same reps in all, so the same strength shown.
    let order = [
        after(8, Evidence::Open),
        after(8, Evidence::Reserve(0)),
        after(2, Evidence::Reserve(6)),
        after(1, Evidence::Reserve(7)),
        strength(&before, day(3)).unwrap().unwrap().now().likely,
    ];
    assert!(order.is_sorted_by(|more, less| more > less), "{order:?}");
    // Up to five to go a rating is as good as any.
    assert_eq!(after(8, Evidence::Reserve(0)), after(3, Evidence::Reserve(5)));
}

/// The set of a day nearest to failure counts, and of equals the one that shows most.
#[test]
fn one_set_of_a_day_is_read() {
    let now = |sets: &[_]| strength(sets, day(9)).unwrap().unwrap();
    let open = set(0, 1000, 8, Evidence::Open);
    let rated = set(0, 1200, 8, Evidence::Reserve(2));
    assert_eq!(now(&[open, rated]), now(&[open]));
    assert_eq!(now(&[open, set(0, 500, 30, Evidence::Open)]), now(&[open]));
    assert_eq!(now(&[rated, set(0, 1300, 8, Evidence::Reserve(5))]), now(&[rated]));
    assert_eq!(now(&[rated, set(0, 1100, 8, Evidence::Reserve(2))]), now(&[rated]));
}

/// A set after two others shows 2 % more strength rested, and as many reps for one just as late.
#[test]
fn sets_before_it_tire() {
    let open = set(0, 1000, 8, Evidence::Open);
    let plain = set(0, 1000, 5, Evidence::Plain);
    let alone = strength(&[open], day(0)).unwrap().unwrap();
    let late = strength(&[plain, plain, open], day(0)).unwrap().unwrap();
    assert!(((late.now().likely / alone.now().likely).ln() - 0.02).abs() < 1e-4);
    assert_eq!(late.expected_reps(open.load), alone.expected_reps(open.load));
    assert!((late.load_for(8, 0) / alone.load_for(8, 0) - 1.0).abs() < 1e-4);
    // Plain sets of another day, or after it, change nothing.
    let plain_after = strength(&[open, plain], day(0)).unwrap().unwrap();
    assert_eq!(plain_after, alone);
}

#[test]
fn nothing_to_go_by() {
    let none = |sets: &[_]| assert_eq!(strength(sets, day(5)), Ok(None));
    none(&[]);
    none(&[set(6, 1000, 5, Evidence::Open)]);
    none(&[set(0, 1000, 5, Evidence::Plain)]);
    none(&[set(0, 1000, 0, Evidence::Open)]);
    none(&[set(0, 1000, 0, Evidence::Reserve(3))]);
    none(&[set(0, 1000, MOST_REPS + 1, Evidence::Open)]);
    none(&[set(0, 1000, MOST_REPS - 1, Evidence::Reserve(2))]);
    none(&[set(0, 1000, 5, Evidence::Reserve(11))]);
}

#[test]
fn what_cannot_be_is_an_error() {
    let on = day(0);
    for load in [Mass::ZERO, Mass::kg(-1), Mass::kg(5_001), Mass { ten_ng: i64::MAX }] {
        let bad = super::SetSeen { on, load, reps: 5, evidence: Evidence::Open };
        assert_eq!(strength(&[bad], on), Err(StrengthError::Load { on, load }));
    }
    let error = Err(StrengthError::Reps { on, reps: 1_001 });
    assert_eq!(strength(&[set(0, 1000, 1_001, Evidence::Plain)], on), error);
    let sets = [set(0, 1000, 5, Evidence::Open)];
    for model in [
        Model { per_day: f64::NAN, ..Model::USUAL },
        Model { open_error: 0.0, ..Model::USUAL },
        Model { tires: f64::INFINITY, ..Model::USUAL },
        Model { curve_spread: f64::NAN, ..Model::USUAL },
        Model { usual_days: 0.0, ..Model::USUAL },
        Model { usual_days: f64::INFINITY, ..Model::USUAL },
    ] {
        let found = strength_by(&model, &[sets[0], sets[0]], on);
        assert!(matches!(found, Err(StrengthError::Constants(_))), "{found:?}");
    }
    let name = "per_day";
    let model = Model { per_day: -1.0, ..Model::USUAL };
    let error = StrengthError::Constants(LevelError::Parameter { name });
    assert_eq!(strength_by(&model, &sets, on), Err(error));
}

/// One percent more each week for eight weeks, without noise.
#[test]
fn a_trend_is_seen() {
    let week = |week: u64| {
        let tenths = 1000.0 * 1.01_f64.powf(week as f64);
        set(7 * week, tenths.round() as i64, 5, Evidence::Open)
    };
    let sets: Vec<_> = (0..9).map(week).collect();
    let trend = strength(&sets, day(60)).unwrap().unwrap().trend().unwrap();
    assert_eq!((trend.from, trend.to), (day(14), day(56)));
    assert!((trend.per_week.likely - 0.01).abs() < 0.000_1, "{trend:?}");
    assert!(trend.per_week.low > 0.0 && trend.per_week.high > trend.per_week.likely, "{trend:?}");
    let steady: Vec<_> = (0..9).map(|week| set(7 * week, 1000, 5, Evidence::Open)).collect();
    let trend = strength(&steady, day(60)).unwrap().unwrap().trend().unwrap();
    assert!(trend.per_week.likely.abs() < 1e-4, "{trend:?}");
    // Two weeks are needed.
    assert_eq!(strength(&sets[..2], day(60)).unwrap().unwrap().trend(), None);
    assert!(strength(&sets[..3], day(60)).unwrap().unwrap().trend().is_some());
}

/// Two athletes with the same mean, one steady, one up and down by 10 %. One absurd load widens no more
/// than a surprise of three standard deviations.
#[test]
fn bands_are_the_athletes_own() {
    let width = |loads: [i64; 2]| {
        let one = |found: u64| set(3 * found, loads[(found % 2) as usize], 5, Evidence::Open);
        let sets: Vec<_> = (0..20).map(one).collect();
        let band = strength(&sets, day(60)).unwrap().unwrap().expected_reps(Mass::kg(100));
        band.high - band.low
    };
    assert!(width([1000, 1000]) < width([950, 1050]));
    let level = |absurd| {
        let mut sets: Vec<_> =
            (0..20).map(|found| set(3 * found, 1000, 5, Evidence::Open)).collect();
        sets[19].load = Mass::kg(absurd);
        let now = strength(&sets, day(60)).unwrap().unwrap().now();
        now.high / now.low
    };
    assert!((level(1_000) - level(2_000)).abs() < 1e-12);
}

/// The further from the reps that were trained with, the wider what is said.
#[test]
fn far_loads_are_foretold_less_well() {
    let sets: Vec<_> = (0..20).map(|found| set(3 * found, 1000, 5, Evidence::Open)).collect();
    let strength = strength(&sets, day(60)).unwrap().unwrap();
    let width = |reps| {
        let load = strength.load_for(reps, 0);
        let band = strength.expected_reps(Mass { ten_ng: (load * 1e11) as i64 });
        band.high - band.low
    };
    assert!(width(5) < width(10) && width(10) < width(20), "{:?}", [5, 10, 20].map(width));
}

#[test]
fn loads_beyond_all_reason() {
    let sets = [set(0, 1000, 8, Evidence::Open)];
    let strength = strength(&sets, NaiveDate::MAX).unwrap().unwrap();
    let reps = |load| {
        let reps = strength.expected_reps(load);
        (reps.low, reps.likely, reps.high)
    };
    assert_eq!(reps(Mass::ZERO), (36, 36, 36));
    assert_eq!(reps(Mass { ten_ng: 1 }).1, 36);
    assert_eq!(reps(Mass::kg(5_000)).1, 0);
}
