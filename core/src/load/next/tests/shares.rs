//! Percent and reserve: the training max is what carries over.

use super::*;

fn percent(percents: &[u32]) -> Log {
    let mut log = Log::new(straight(percents.len(), 3));
    let step = vec![Step { mass: kg("2.5"), unit: MassUnit::Kg }];
    log.rule = LoadRule::Percent { percents: percents.to_vec(), step, back_off_percent: 5 };
    let (record, load, on) = (record(99), kg("100"), day("2026-09-01"));
    log.history.max = Some(KnownMax { record, load, placed: 0, on, tested: true });
    log
}

#[test]
fn a_tested_max_gives_the_loads_and_goes_up_by_the_step() {
    let log = percent(&[70, 80]);
    assert_eq!(log.says(), "70 x 3, 80 x 3");
    assert!(matches!(log.reason(1), Reason::Percent { basis: MaxBasis::Tested { .. }, .. }));
    let log = log.did(&[("70", 3), ("80", 3)]);
    // 70 and 80 % of 102.5 are 71.75 and 82.
    assert_eq!(log.says(), "70 x 3, 80 x 3");
    assert_eq!(log.loads().max, Some(kg("102.5")));
    assert!(matches!(log.reason(1), Reason::Percent { basis: MaxBasis::Up, .. }));
}

/// A miss holds it, the second one running lowers it by a twentieth; it never asks for a first time again.
#[test]
fn misses_hold_the_max_and_then_lower_it() {
    let log = percent(&[80]).did(&[("80", 2)]);
    assert_eq!((log.says().as_str(), log.loads().max), ("80 x 3", Some(kg("100"))));
    let log = log.did(&[("80", 2)]);
    assert_eq!((log.says().as_str(), log.loads().max), ("75 x 3", Some(kg("95"))));
    assert!(matches!(log.reason(1), Reason::Percent { basis: MaxBasis::BackOff, .. }));
}

/// In a wave the rise of the day's load is no jump.
#[test]
fn a_wave_is_no_jump() {
    let mut log = percent(&[70]).did(&[("70", 3)]);
    log.rule = LoadRule::Percent { percents: vec![90], step: Vec::new(), back_off_percent: 5 };
    assert_eq!(log.says(), "90 x 3");
}

/// In a wave nothing is carried to the reps of the day; an answer stands all the same.
#[test]
fn an_answer_stands_in_a_wave_too() {
    let mut log = percent(&[70]).did(&[("70", 3)]).ruled(&["75"]);
    log.rule = LoadRule::Percent { percents: vec![90], step: Vec::new(), back_off_percent: 5 };
    log.scheme = straight(1, 2);
    assert_eq!(log.says(), "75 x 2");
    assert!(matches!(log.reason(1), Reason::Coach { last: None, .. }));
}

/// 10 % off 100 kg after three weeks: 80 % of 90 is 72.
#[test]
fn weeks_away_lower_the_max() {
    let log = percent(&[80]).did(&[("80", 3)]).wait(18);
    assert_eq!(log.loads().max, Some(kg("90")));
    assert_eq!(log.says(), "70 x 3");
}

#[test]
fn what_the_coach_sets_replaces_it() {
    let mut log = percent(&[80]).did(&[("80", 3)]);
    let on = log.date();
    log.history.max =
        Some(KnownMax { record: record(98), load: kg("90"), placed: 900, on, tested: false });
    assert_eq!(log.says(), "70 x 3");
    assert!(matches!(log.reason(1), Reason::Percent { basis: MaxBasis::Coach { .. }, .. }));
}

/// 3 reps with 2 left are 5 to failure: the curve's share of 100 kg.
#[test]
fn a_reserve_is_a_share_too() {
    let mut log = percent(&[80]);
    log.rule = LoadRule::Reserve { reserve: 2, step: Vec::new(), back_off_percent: 5 };
    let share = (-crate::load::strength::curve(5.0)).exp() * 100.0;
    let built = (share / 2.5).floor() * 2.5;
    assert_eq!(log.says(), format!("{built} x 3"));
}

/// Sets that say only "at least so many" tell nothing of strength: the same load, and the question.
#[test]
fn without_a_max_it_stays_and_asks() {
    let mut log = percent(&[80]);
    log.history.max = None;
    let log = log.did(&[("60", 3)]);
    assert_eq!(log.says(), "60 x 3");
    assert_eq!(log.reason(1), Reason::SayReserve { last: kg("60"), reps: 3 });
}

/// Missed at 75 kg where 80 were proposed: the max falls by as much, and nobody is sent up.
#[test]
fn a_lighter_load_missed_lowers_the_max_with_it() {
    let log = percent(&[80]).did(&[("75", 2)]);
    assert_eq!((log.says().as_str(), log.loads().max), ("75 x 3", Some(kg("93.75"))));
    assert!(matches!(log.reason(1), Reason::Percent { basis: MaxBasis::Missed, .. }));
}

/// Not long after a miss the max goes up once the same loads are made twice running, like a load.
#[test]
fn made_twice_running_the_max_goes_up() {
    let log = percent(&[80]).did(&[("80", 2)]).did(&[("80", 3)]);
    assert_eq!(log.loads().max, Some(kg("100")));
    let log = log.did(&[("80", 3)]);
    assert_eq!(log.loads().max, Some(kg("102.5")));
}

/// After severe pain 80 % of 100 kg are 72, a tenth less than 80: built as 70. Missed there, the max falls by as
/// much as that was under the 80.
#[test]
fn a_load_that_pain_made_lighter_and_missed_lowers_the_max() {
    let log = percent(&[80]).did(&[("80", 3)]).hurts(6, true);
    assert_eq!(log.says(), "70 x 3");
    // 102.5 by then: 80 % of it are 82, built as 80, and 70 are seven eighths of that.
    let log = log.did(&[("70", 2)]);
    let share = Mass { ten_ng: kg("102.5").ten_ng * 7 / 8 };
    assert_eq!((log.says().as_str(), log.loads().max), ("70 x 3", Some(share)));
}
