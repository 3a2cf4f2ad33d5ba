use chrono::NaiveDate;
use proptest::collection::vec;
use proptest::prelude::*;

use super::super::{Coverage, Evidence, SetSeen, Strength, strength};
use super::{day, set};
use crate::mass::Mass;

fn evidence() -> impl Strategy<Value = Evidence> {
    prop_oneof![
        3 => Just(Evidence::Open),
        2 => (0_u32..=10).prop_map(Evidence::Reserve),
        1 => Just(Evidence::Plain),
    ]
}

/// Sets with at least one open one, all readable.
fn history() -> impl Strategy<Value = Vec<SetSeen>> {
    let one = (0_u64..200, 1_i64..4_000, 1_u32..=26, evidence())
        .prop_map(|(days, tenths, reps, evidence)| set(days, tenths, reps, evidence));
    let open = (0_u64..200, 1_i64..4_000, 1_u32..=26)
        .prop_map(|(days, tenths, reps)| set(days, tenths, reps, Evidence::Open));
    (open, vec(one, 0..30)).prop_map(|(open, mut sets)| {
        sets.insert(sets.len() / 2, open);
        sets
    })
}

fn today(sets: &[SetSeen]) -> Strength {
    strength(sets, day(230)).unwrap().unwrap()
}

/// Anything a type can hold.
fn anything() -> impl Strategy<Value = SetSeen> {
    let on = (i32::MIN..=i32::MAX)
        .prop_map(|days| NaiveDate::from_num_days_from_ce_opt(days).unwrap_or(NaiveDate::MIN));
    let load = prop_oneof![any::<i64>(), 1_i64..500_000_000_000_000];
    let reps = prop_oneof![any::<u32>(), 0_u32..40];
    let evidence = prop_oneof![evidence(), any::<u32>().prop_map(Evidence::Reserve)];
    (on, load, reps, evidence).prop_map(|(on, ten_ng, reps, evidence)| SetSeen {
        on,
        load: Mass { ten_ng },
        reps,
        evidence,
    })
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn more_in_an_open_set_never_lowers(
        sets in history(),
        which in any::<prop::sample::Index>(),
        reps in 0_u32..=10,
        tenths in 0_i64..=500,
    ) {
        let open: Vec<_> =
            (0..sets.len()).filter(|found| sets[*found].evidence == Evidence::Open).collect();
        let mut more = sets.clone();
        let at = open[which.index(open.len())];
        more[at].reps += reps;
        more[at].load = more[at].load + set(0, tenths, 1, Evidence::Open).load;
        let (before, after) = (today(&sets).now().likely, today(&more).now().likely);
        prop_assert!(after >= before * (1.0 - 1e-12), "{before} became {after}");
        if reps > 0 || tenths > 0 {
            // And of the only set read on its day, it raises.
            let on = more[at].on;
            if sets.iter().filter(|set| set.on == on && set.evidence == Evidence::Open).count() == 1 {
                prop_assert!(after > before, "{before} stayed {after}");
            }
        }
    }

    #[test]
    fn a_band_of_more_coverage_holds_that_of_less(
        sets in history(),
        tenths in 1_i64..6_000,
        less in 1_u32..=99,
        more in 1_u32..=99,
    ) {
        let coverage = |found| Coverage::percent(found).unwrap();
        let (less, more) = (coverage(less.min(more)), coverage(less.max(more)));
        let strength = today(&sets);
        let load = set(0, tenths, 1, Evidence::Open).load;
        let (inner, outer) =
            (strength.expected_reps_within(load, less), strength.expected_reps_within(load, more));
        prop_assert!(outer.low <= inner.low && inner.low <= inner.likely);
        prop_assert!(inner.likely <= inner.high && inner.high <= outer.high);
        prop_assert_eq!(inner.likely, outer.likely);
        let (inner, outer) = (strength.now_within(less), strength.now_within(more));
        prop_assert!(outer.low <= inner.low && inner.low <= inner.likely);
        prop_assert!(inner.likely <= inner.high && inner.high <= outer.high);
        if let (Some(inner), Some(outer)) = (strength.trend_within(less), strength.trend_within(more)) {
            prop_assert!(outer.per_week.low <= inner.per_week.low);
            prop_assert!(outer.per_week.high >= inner.per_week.high);
        }
    }

    #[test]
    fn a_heavier_load_never_more_reps(
        sets in history(),
        percent in 1_u32..=99,
        light in 1_i64..6_000,
        more in 1_i64..200,
    ) {
        let strength = today(&sets);
        let band = |tenths| {
            let load = set(0, tenths, 1, Evidence::Open).load;
            strength.expected_reps_within(load, Coverage::percent(percent).unwrap())
        };
        let (light, heavy) = (band(light), band(light + more));
        prop_assert!(heavy.low <= light.low);
        prop_assert!(heavy.likely <= light.likely);
        prop_assert!(heavy.high <= light.high);
    }

    /// Days in any order: the sets of each day are kept in theirs.
    #[test]
    fn the_order_of_days_does_not_matter(sets in history()) {
        let mut backwards = sets.clone();
        backwards.sort_by_key(|backward| std::cmp::Reverse(backward.on));
        prop_assert_eq!(today(&backwards), today(&sets));
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
            let now = strength.now_within(Coverage::percent(99).unwrap());
            prop_assert!(now.low > 0.0 && now.likely.is_finite() && now.high.is_finite());
            strength.expected_reps(today.load);
            prop_assert!(strength.load_for(reps, reserve) > 0.0);
            if let Some(trend) = strength.trend() {
                prop_assert!(trend.per_week.low.is_finite() && trend.per_week.high.is_finite());
            }
        }
    }
}
