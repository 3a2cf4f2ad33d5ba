//! Doses of stretching, and long holds before lifting.

use chrono::NaiveDate;
use holdfast_core::care::{LONG_HOLD_MS, long_holds_before_strength};
use holdfast_core::motion::{Dose, Short, Stretched, WeekOfStretch, weeks_of_stretch};
use holdfast_core::plan::read_plan;

/// A week with so many seconds on each day from Monday on.
fn week(seconds: &[i64]) -> WeekOfStretch {
    let on = |day| NaiveDate::from_ymd_opt(2026, 11, day).unwrap();
    let done: Vec<Stretched<'_>> = (2..)
        .zip(seconds)
        .map(|(day, s)| Stretched { on: on(day), region: "calf", side: 1, held_ms: s * 1000 })
        .collect();
    weeks_of_stretch(&done).unwrap().remove(0)
}

/// P: at least 5 minutes a week on at least 5 days (Thomas et al., Int J Sports Med 2018;39:243-254;
/// that it is for one muscle: M).
#[test]
fn five_minutes_on_five_days() {
    let short = |seconds: &[i64]| Dose::FiveMinutesFiveDays.short(&week(seconds).days);
    assert_eq!(short(&[60; 5]), None);
    assert_eq!(short(&[300, 1, 1, 1, 1]), None);
    assert_eq!(short(&[59, 60, 60, 60, 60]), Some(Short { days: 0, ms: 1000 }));
    assert_eq!(short(&[150, 150]), Some(Short { days: 3, ms: 0 }));
    assert_eq!(short(&[100, 0, 0, 0, 0, 0, 20]), Some(Short { days: 3, ms: 180_000 }));
    let nothing = Dose::FiveMinutesFiveDays.short(&[]);
    assert_eq!(nothing, Some(Short { days: 5, ms: 300_000 }));
}

/// P: 60 seconds in all for each exercise on at least 2 days a week (Garber et al. 2011, abstract).
#[test]
fn a_minute_on_two_days() {
    let short = |seconds: &[i64]| Dose::MinuteTwoDays.short(&week(seconds).days);
    assert_eq!(short(&[60, 60]), None);
    assert_eq!(short(&[10, 60, 20, 60, 5]), None);
    // A long day does not stand for two.
    assert_eq!(short(&[600]), Some(Short { days: 1, ms: 60_000 }));
    assert_eq!(short(&[59, 30, 20]), Some(Short { days: 2, ms: 31_000 }));
    assert_eq!(Dose::MinuteTwoDays.short(&[]), Some(Short { days: 2, ms: 120_000 }));
}

/// S: no more was gained beyond 10 minutes a week (Ingram et al., Sports Med 2024).
#[test]
fn the_plateau_is_ten_minutes_a_week() {
    assert!(!week(&[300, 299]).at_plateau());
    assert!(week(&[300, 300]).at_plateau());
}

/// P: static stretching of 60 seconds and more cost 4.6 %, less cost 1.1 % (Behm et al., Appl Physiol
/// Nutr Metab 2016;41:1-11). In the demo's plan, as a coach writes it, holds come last: no caution;
/// with the day turned round there is one.
#[test]
fn long_holds_after_lifting_are_no_concern_and_before_it_are() {
    assert_eq!(LONG_HOLD_MS, 60_000);
    let block = read_plan(holdfast_tests::DEMO_PLAN.as_bytes()).unwrap();
    for day in &block.days {
        assert_eq!(long_holds_before_strength(day), []);
    }
    let mut turned = block.days.clone();
    turned.iter_mut().for_each(|day| day.pieces.reverse());
    let found: Vec<_> = turned.iter().flat_map(long_holds_before_strength).collect();
    assert!(!found.is_empty());
    assert!(found.iter().all(|found| found.held_ms >= 60_000));
}
