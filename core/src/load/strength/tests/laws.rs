use chrono::NaiveDate;
use proptest::collection::vec;
use proptest::prelude::*;

use super::super::{Evidence, SetSeen, Strength, strength, strength_on};
use super::{day, set};
use crate::mass::Mass;

fn evidence() -> impl Strategy<Value = Evidence> {
    prop_oneof![
        3 => Just(Evidence::Counted),
        2 => (0_u32..=10).prop_map(Evidence::Reserve),
        1 => Just(Evidence::Short),
        3 => Just(Evidence::AsPlanned),
    ]
}

/// Sets with at least one counted one, with loads as far from each other as a log's may be.
fn history() -> impl Strategy<Value = Vec<SetSeen>> {
    let one = (0_u64..200, 500_i64..2_000, 1_u32..=26, evidence())
        .prop_map(|(days, tenths, reps, evidence)| set(days, tenths, reps, evidence));
    let open = (0_u64..200, 500_i64..2_000, 1_u32..=26)
        .prop_map(|(days, tenths, reps)| set(days, tenths, reps, Evidence::Counted));
    (open, vec(one, 0..30)).prop_map(|(open, mut sets)| {
        sets.insert(sets.len() / 2, open);
        sets
    })
}

/// A log of one load.
fn steady() -> impl Strategy<Value = Vec<SetSeen>> {
    let one = (1_u32..=26, 1_u64..=20, evidence());
    vec(one, 1..30).prop_map(|rows| {
        let mut on = 0;
        let rows = rows.into_iter().chain([(5, 3, Evidence::Counted)]);
        let row = |(reps, gap, evidence): (u32, u64, Evidence)| {
            on += gap;
            set(on, 1_000, reps, evidence)
        };
        rows.map(row).collect()
    })
}

fn today(sets: &[SetSeen]) -> Strength {
    strength(sets, day(640)).unwrap().unwrap()
}

/// Anything a type can hold.
fn anything() -> impl Strategy<Value = SetSeen> {
    let on = (i32::MIN..=i32::MAX)
        .prop_map(|days| NaiveDate::from_num_days_from_ce_opt(days).unwrap_or(NaiveDate::MIN));
    let load = prop_oneof![any::<i64>(), 1_i64..500_000_000_000_000];
    let reps = || prop_oneof![any::<u32>(), 0_u32..40];
    let evidence = prop_oneof![evidence(), any::<u32>().prop_map(Evidence::Reserve)];
    (on, load, reps(), reps(), any::<bool>(), evidence).prop_map(
        |(on, ten_ng, reps, target, open, evidence)| SetSeen {
            on,
            load: Mass { ten_ng },
            reps,
            target,
            open,
            evidence,
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// More reps in the set read last, whatever it is, never lower what is foretold at its load, in a log of one
    /// load. (With loads apart they can: what a set far from the others says is the slope's part, which is
    /// hardly taken. How seldom, `tests/src/lifters` measures.)
    #[test]
    fn more_in_the_last_set_never_lowers(sets in steady(), more in 1_u32..=10) {
        let (mut sets, last) = (sets.clone(), sets[sets.len() - 1]);
        let foretold = |sets: &[SetSeen]| today(sets).foretell(last.load, 0).0;
        let before = foretold(&sets);
        sets.last_mut().unwrap().reps += more;
        let after = foretold(&sets);
        prop_assert!(after >= before - 1e-12, "{before} became {after}");
    }

    #[test]
    fn a_wider_share_inside_holds_a_narrower_one(sets in history(), tenths in 1_i64..6_000) {
        let strength = today(&sets);
        let load = set(0, tenths, 1, Evidence::Counted).load;
        let band = |outside| Strength { outside, ..strength }.expected_reps(load, 0);
        let bands = [0.01, 0.1, 0.2, 0.4, 0.6].map(band);
        for (outer, inner) in bands.iter().zip(&bands[1..]) {
            prop_assert!(outer.low <= inner.low && inner.low <= inner.likely);
            prop_assert!(inner.likely <= inner.high && inner.high <= outer.high);
            prop_assert_eq!(inner.likely, outer.likely);
        }
    }

    #[test]
    fn intervals_hold_what_is_likely(sets in history(), reps in 1_u32..=30) {
        let strength = today(&sets);
        for found in [strength.estimate(), strength.load_for(reps, 2)].into_iter().flatten() {
            prop_assert!(0.0 < found.low && found.low <= found.likely && found.likely <= found.high);
        }
        let likely = |reps| strength.load_for(reps, 0).map(|load| load.likely);
        prop_assert!(likely(reps + 1) <= likely(reps));
    }

    #[test]
    fn a_heavier_load_is_never_likely_to_go_up_more_often(
        sets in history(),
        light in 1_i64..6_000,
        more in 1_i64..200,
    ) {
        let strength = today(&sets);
        prop_assume!(strength.state().mean[1] > 0.0);
        let likely = |tenths| {
            strength.expected_reps(set(0, tenths, 1, Evidence::Counted).load, 0).likely
        };
        prop_assert!(likely(light + more) <= likely(light));
    }

    /// Days in any order: the sets of each day are kept in theirs.
    #[test]
    fn the_order_of_days_does_not_matter(sets in history()) {
        let mut backwards = sets.clone();
        backwards.sort_by_key(|backward| std::cmp::Reverse(backward.on));
        prop_assert_eq!(today(&backwards), today(&sets));
    }

    /// What is known on a day is what would be known if it were the last one.
    #[test]
    fn days_to_come_change_nothing(sets in history(), mut days in vec(0_u64..230, 1..6)) {
        days.sort_unstable();
        let dates: Vec<NaiveDate> = days.into_iter().map(day).collect();
        for (date, known) in dates.iter().zip(strength_on(&sets, &dates).unwrap()) {
            prop_assert_eq!(strength(&sets, *date).unwrap(), known);
        }
    }

    #[test]
    fn never_panics_and_never_says_what_is_no_number(
        sets in vec(anything(), 0..20),
        today in anything(),
        reps in any::<u32>(),
        reserve in any::<u32>(),
    ) {
        let readable: Vec<_> =
            sets.iter().copied().filter(|set| strength(&[*set], set.on).is_ok()).collect();
        for sets in [&sets, &readable] {
            let Ok(Some(strength)) = strength(sets, today.on) else { continue };
            strength.expected_reps(today.load, reps);
            for load in [strength.estimate(), strength.load_for(reps, reserve), strength.max()] {
                let Some(load) = load else { continue };
                prop_assert!(load.low >= 0.0 && !load.likely.is_nan() && !load.high.is_nan());
            }
            if let Some(trend) = strength.trend() {
                prop_assert!(trend.per_week.low.is_finite() && trend.per_week.high.is_finite());
            }
        }
    }
}
