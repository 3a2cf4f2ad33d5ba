use chrono::NaiveDate;

use super::super::{
    Evidence, MOST_REPS, SetSeen, Strength, StrengthError, curve, deviations, strength, strength_on,
};
use super::{day, set};
use crate::mass::Mass;

fn now(sets: &[SetSeen], on: u64) -> Strength {
    strength(sets, day(on)).unwrap().unwrap()
}

fn close(found: f64, expected: f64) {
    assert!((found - expected).abs() < 1e-9 * expected.abs(), "found {found}, expected {expected}");
}

/// The update of a normal by one observation, by hand. At the reference load the slope has no part in it.
#[test]
fn one_counted_set() {
    let strength = now(&[set(0, 1000, 8, Evidence::Counted)], 0);
    let (prior, hidden, own) = (0.15 * 0.15, 0.025 * 0.025, 0.022 * 0.022);
    let start = curve(5.0) + 0.05;
    let surprise = curve(8.0) - (start - 0.01);
    let gain = prior / (prior + hidden + own);
    let level = start + gain * surprise;
    let max = strength.max().unwrap();
    close(max.likely, 100.0 * level.exp());
    // Fieller's ends are where the distance to 0 is so many of its standard deviations.
    let variance = prior * (1.0 - gain);
    let reach = 1.281_551_565_544_600_4_f64;
    for end in [max.low, max.high] {
        let ratio = (end / 100.0).ln();
        let deviation = (variance + ratio * ratio * 0.09).sqrt();
        close((level - ratio).abs(), reach * deviation);
    }
    close(deviations(0.2), reach);
    // What was just done is what is expected again.
    assert_eq!(strength.expected_reps(Mass::kg(100), 0).likely, 8);
    assert_eq!(strength.load_for(5, 3), strength.load_for(8, 0));
    assert_eq!((strength.trend(), strength.ended().of), (None, 0));
}

/// Whatever was made as planned, nothing is said before a set says more.
#[test]
fn nothing_is_said_until_somebody_is_informed() {
    let none = |sets: &[_]| assert_eq!(strength(sets, day(99)), Ok(None));
    none(&[]);
    none(&[set(100, 1000, 5, Evidence::Counted)]);
    none(&[set(0, 1000, 0, Evidence::AsPlanned)]);
    none(&[set(0, 1000, 5, Evidence::Reserve(11))]);
    let mut planned: Vec<_> =
        (0..40).map(|at| set(2 * at, 1000 + 10 * at as i64, 5, Evidence::AsPlanned)).collect();
    none(&planned);
    planned[20].open = true;
    none(&planned);
    for evidence in [Evidence::Counted, Evidence::Reserve(2), Evidence::Short] {
        let sets: Vec<_> = planned.iter().copied().chain([set(90, 1300, 4, evidence)]).collect();
        assert!(strength(&sets, day(99)).unwrap().is_some(), "{evidence:?}");
        let on = strength_on(&sets, &[day(89), day(90)]).unwrap();
        assert!(on[0].is_none() && on[1].is_some(), "{evidence:?}");
    }
}

/// A set made as planned says "at least": it raises who was thought weaker, and tells little otherwise.
#[test]
fn made_as_planned_is_a_lower_limit() {
    let known: Vec<_> = (0..6).map(|at| set(3 * at, 1000, 8, Evidence::Counted)).collect();
    let level = |tenths, reps| {
        let sets: Vec<_> =
            known.iter().copied().chain([set(18, tenths, reps, Evidence::AsPlanned)]).collect();
        now(&sets, 18).estimate().unwrap().likely
    };
    let before = now(&known, 18).estimate().unwrap().likely;
    assert!((level(800, 5) / before - 1.0).abs() < 1e-4, "{} {before}", level(800, 5));
    assert!(level(1150, 8) > 1.02 * before);
    assert!(level(1150, 8) > level(1150, 5), "more reps are a higher limit");
}

/// The one set of a day that is read does not depend on how any of them ended.
#[test]
fn one_set_of_a_day_is_read() {
    let read = |sets: &[SetSeen]| {
        let before = set(0, 1000, 8, Evidence::Counted);
        now(&[&[before], sets].concat(), 7).estimate()
    };
    let (open, plain) = (set(7, 1000, 8, Evidence::Counted), set(7, 1000, 5, Evidence::AsPlanned));
    let rated = |tenths, left| set(7, tenths, 5, Evidence::Reserve(left));
    let short = set(7, 1000, 2, Evidence::Short);
    // The open one, in whatever company, as long as it stands in its place.
    for other in [plain, rated(1200, 2), short] {
        assert_eq!(read(&[other, open]), read(&[plain, open]));
        assert_eq!(read(&[open, other]), read(&[open]));
    }
    // An open one that was not counted too.
    let pressed = SetSeen { open: true, ..plain };
    assert_eq!(read(&[short, pressed]), read(&[rated(1200, 0), pressed]));
    // Then a last set that fell short, but not one before it.
    assert_eq!(read(&[rated(1000, 2), short]), read(&[plain, short]));
    assert_eq!(read(&[short, plain]), read(&[rated(1000, 11), plain]));
    // Then the last rated one, be it the heavier or the lighter.
    assert_eq!(read(&[rated(1300, 0), rated(1000, 2), plain]), read(&[plain, rated(1000, 2)]));
    assert_ne!(read(&[rated(1000, 2), plain]), read(&[plain, plain]));
}

/// A set after two others shows 2 % more strength rested, and as many reps for one just as late.
#[test]
fn sets_before_it_tire() {
    let (open, plain) = (set(0, 1000, 8, Evidence::Counted), set(0, 1000, 5, Evidence::AsPlanned));
    let (alone, late) = (now(&[open], 0), now(&[plain, plain, open], 0));
    let level = |strength: &Strength| strength.state().mean[0];
    let gain = 0.0225 / (0.0225 + 0.025 * 0.025 + 0.022 * 0.022);
    close(level(&late) - level(&alone), 0.02 * gain);
    assert_eq!(late.expected_reps(open.load, 2), alone.expected_reps(open.load, 0));
    assert!(late.foretell(open.load, 2).0 < late.foretell(open.load, 0).0);
    // No more than five of them.
    assert_eq!(late.foretell(open.load, 5), late.foretell(open.load, 50));
    // Sets of another day, or after it, change nothing.
    assert_eq!(now(&[open, plain], 0), alone);
}

#[test]
fn a_rated_set_counts_less_the_further_from_its_end() {
    let before = [set(0, 1000, 5, Evidence::Counted)];
    let after = |reps, evidence| now(&[before[0], set(3, 1100, reps, evidence)], 3).state().mean[0];
    // The same reps in all, so the same strength shown.
    let order = [
        after(8, Evidence::Short),
        after(8, Evidence::Reserve(0)),
        after(2, Evidence::Reserve(6)),
        after(1, Evidence::Reserve(7)),
        now(&before, 3).state().mean[0],
    ];
    assert!(order.is_sorted_by(|more, less| more > less), "{order:?}");
    // Up to five left a rating is as good as any.
    assert_eq!(after(8, Evidence::Reserve(0)), after(3, Evidence::Reserve(5)));
}

#[test]
fn what_cannot_be_is_an_error() {
    let on = day(0);
    let good = set(0, 1000, 5, Evidence::Counted);
    for load in [Mass::ZERO, Mass::kg(-1), Mass::kg(5_001), Mass { ten_ng: i64::MAX }] {
        let error = Err(StrengthError::Load { on, load });
        assert_eq!(strength(&[SetSeen { load, ..good }], on), error);
    }
    let error = Err(StrengthError::Reps { on, reps: 1_001 });
    assert_eq!(strength(&[set(0, 1000, 1_001, Evidence::AsPlanned)], on), error);
}

/// Two weeks keep it; then it falls by 0.6 % a week, by a tenth at most, and is less and less sure.
#[test]
fn weeks_off_take_strength() {
    let sets = [set(0, 1000, 5, Evidence::Counted)];
    let likely = |after| now(&sets, after).estimate().unwrap().likely.ln();
    close(likely(14), likely(0));
    close(likely(28), likely(0) - 0.012);
    close(likely(400), likely(0) - 0.1);
}

/// One percent more each week for eight weeks, without noise.
#[test]
fn a_trend_is_seen() {
    let week = |week: u64| {
        let tenths = 1000.0 * 1.01_f64.powf(week as f64);
        set(7 * week, tenths.round() as i64, 5, Evidence::Counted)
    };
    let sets: Vec<_> = (0..9).map(week).collect();
    let trend = now(&sets, 60).trend().unwrap();
    assert_eq!((trend.from, trend.to), (day(21), day(56)));
    assert!((trend.per_week.likely - 0.01).abs() < 0.001, "{trend:?}");
    assert!(trend.per_week.low > 0.0 && trend.per_week.high > trend.per_week.likely, "{trend:?}");
    let steady: Vec<_> = (0..9).map(|week| set(7 * week, 1000, 5, Evidence::Counted)).collect();
    let trend = now(&steady, 60).trend().unwrap();
    assert!(trend.per_week.likely.abs() < 1e-3, "{trend:?}");
    // Two weeks are needed, of the last six.
    assert_eq!(now(&sets[..2], 60).trend(), None);
    assert!(now(&sets[..3], 14).trend().is_some());
    assert_eq!(now(&sets, 99).trend(), None);
}

/// Loads that rise as planned are the plan's doing.
#[test]
fn no_trend_where_only_planned_steps_moved() {
    let at = |day: u64| 1000 + 5 * day as i64;
    let mut sets = vec![set(0, at(0), 6, Evidence::Counted)];
    sets.extend((1..20).map(|step| set(3 * step, at(3 * step), 5, Evidence::AsPlanned)));
    assert_eq!(now(&sets, 57).trend(), None);
    sets.extend([20, 25].map(|step| set(3 * step, at(3 * step), 6, Evidence::Counted)));
    assert!(now(&sets, 75).trend().is_some());
}

/// Two athletes with the same mean, one steady, one up and down by 10 %. One absurd load widens no more
/// than a surprise of three standard deviations.
#[test]
fn bands_are_the_athletes_own() {
    let spread = |loads: [i64; 2]| {
        let one = |found: u64| set(3 * found, loads[(found % 2) as usize], 5, Evidence::Counted);
        let sets: Vec<_> = (0..20).map(one).collect();
        now(&sets, 60).foretell(Mass::kg(100), 0).1
    };
    assert!(2.0 * spread([1000, 1000]) < spread([950, 1050]));
    let after = |kg| {
        let mut sets: Vec<_> =
            (0..20).map(|found| set(3 * found, 1000, 5, Evidence::Counted)).collect();
        sets[18].load = Mass::kg(kg);
        now(&sets, 60)
    };
    let (usual, absurd) = (after(100), after(220));
    let moved = (absurd.estimate().unwrap().likely / usual.estimate().unwrap().likely).ln();
    assert!((0.0..0.08).contains(&moved), "{moved}");
    assert!(absurd.foretell(Mass::kg(100), 0).1 < 3.0 * usual.foretell(Mass::kg(100), 0).1);
}

/// Bands get wider after sets outside them, and only counted open sets say that.
#[test]
fn a_band_that_did_not_hold_is_followed_by_wider_ones() {
    let sets: Vec<_> = (0..12).map(|at| set(3 * at, 1000, 5, Evidence::Counted)).collect();
    let steady = now(&sets, 40);
    assert!((steady.outside() - (0.2 + 11.0 * 0.05 * 0.2)).abs() < 1e-12);
    assert_eq!((steady.ended().inside, steady.ended().of), (10, 10));
    let with = |extra| now(&[sets.clone(), vec![extra]].concat(), 40);
    let missed = with(set(36, 1000, 15, Evidence::Counted));
    assert!((missed.outside() - steady.outside() - 0.05 * (0.2 - 1.0)).abs() < 1e-12);
    assert_eq!((missed.ended().inside, missed.ended().of), (9, 10));
    for evidence in [Evidence::AsPlanned, Evidence::Reserve(0), Evidence::Short] {
        let other = with(set(36, 1000, 15, evidence));
        assert_eq!((other.outside(), other.ended()), (steady.outside(), steady.ended()));
    }
    let pressed = with(SetSeen { open: true, ..set(36, 1000, 15, Evidence::AsPlanned) });
    assert_eq!((pressed.outside(), pressed.ended()), (steady.outside(), steady.ended()));
}

/// The further from the reps that were trained with, the wider what is said; a one-rep max from many reps
/// is too wide to be shown, and sets of few reps show it.
#[test]
fn far_loads_are_foretold_less_well() {
    let counted = |reps| -> Vec<_> {
        (0..20).map(|found| set(3 * found, 1000, reps, Evidence::Counted)).collect()
    };
    let strength = now(&counted(5), 60);
    let spread = |reps| {
        let load = strength.load_for(reps, 0).unwrap();
        (load.high / load.low).ln()
    };
    assert!(spread(5) < spread(10) && spread(10) < spread(20), "{:?}", [5, 10, 20].map(spread));
    assert!(strength.max().is_some());
    let many = now(&counted(20), 60);
    assert!(many.max().is_none() && many.estimate().is_some());
    // Nothing has ends where the slope may as well be 0, as after a century.
    let late = strength_on(&counted(5), &[day(40_000)]).unwrap().pop().flatten().unwrap();
    assert_eq!((late.max(), late.estimate(), late.load_for(5, 0)), (None, None, None));
}

#[test]
fn loads_beyond_all_reason() {
    let sets = [set(0, 1000, 8, Evidence::Counted)];
    let strength = strength(&sets, NaiveDate::MAX).unwrap().unwrap();
    let reps = |load| strength.expected_reps(load, 0);
    assert_eq!((reps(Mass::ZERO).low, reps(Mass::ZERO).high), (36, 36));
    assert_eq!(reps(Mass { ten_ng: 1 }).likely, 36);
    assert_eq!(reps(Mass::kg(5_000)).likely, 0);
    assert_eq!(reps(Mass::kg(5_000)).low, 0);
    assert_eq!(MOST_REPS, 36);
}
