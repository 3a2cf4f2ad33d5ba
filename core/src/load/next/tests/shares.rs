//! Percent and reserve: the training max is what carries over.

use super::*;
use crate::load::strength::{Evidence, SetSeen, strength};

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
    assert!(matches!(log.reason(1), Reason::Percent { basis: MaxBasis::MissedLighter, .. }));
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

/// 5 reps that should leave 2.
fn reserve() -> Log {
    let mut log = percent(&[80]);
    log.scheme = straight(2, 5);
    let step = vec![Step { mass: kg("5"), unit: MassUnit::Kg }];
    log.rule = LoadRule::Reserve { reserve: 2, step, back_off_percent: 5 };
    log
}

/// A session as proposed, with so many reps left in its last set; none where only the key was pressed.
fn left(mut log: Log, reserve: Option<u32>) -> Log {
    let loads: Vec<String> =
        log.next().iter().map(|next| next.load.unwrap().number(MassUnit::Kg)).collect();
    log = log.did(&loads.iter().map(|load| (load.as_str(), 5)).collect::<Vec<_>>());
    log.history.times.last_mut().unwrap().sets.last_mut().unwrap().reserve = reserve;
    log
}

/// Two reps should be left. One is no reason to go up, none twice running is one to go down, and only what was there,
/// or is not said, goes up.
#[test]
fn a_reserve_goes_up_only_where_it_was_there() {
    let max = |log: &Log| log.loads().max.unwrap().number(MassUnit::Kg);
    for (reserve, expected) in
        [(None, "105"), (Some(2), "105"), (Some(4), "105"), (Some(1), "100"), (Some(0), "100")]
    {
        assert_eq!(max(&left(self::reserve(), reserve)), expected, "{reserve:?}");
    }
    let basis = |log: &Log| match log.reason(1) {
        Reason::Reserve { basis, .. } => basis,
        other => panic!("{other:?}"),
    };
    let twice = left(left(reserve(), Some(0)), Some(0));
    assert_eq!((max(&twice).as_str(), basis(&twice)), ("95", MaxBasis::ShortTwice));
    assert_eq!(max(&left(twice, Some(0))), "90.25");
    let once = left(left(reserve(), Some(1)), Some(1));
    assert_eq!((max(&once).as_str(), basis(&once)), ("100", MaxBasis::Short));
    assert_eq!(max(&left(once, Some(2))), "105");
    // A miss and none left are two in a row.
    let missed = left(reserve().did(&[("72.5", 5), ("72.5", 4)]), Some(0));
    assert_eq!(basis(&missed), MaxBasis::BackOff);
    // What the plan gives as a percent asks for none left.
    assert_eq!(max(&left(Log { scheme: straight(1, 5), ..percent(&[80]) }, Some(0))), "102.5");
}

/// Found by feel: 40 kg for 5 with 4 left, then 45 kg for 3 with 2 left, just as asked. The first share of the estimate
/// takes nothing of either away.
#[test]
fn the_first_share_is_no_lighter_than_what_was_made() {
    let mut log = reserve();
    (log.history.max, log.scheme) = (None, Scheme { reps: vec![5, 3], open: false });
    let mut log = log.did(&[("40", 5), ("45", 3)]);
    let time = log.history.times.last_mut().unwrap();
    time.max = None;
    (time.sets[0].reserve, time.sets[1].reserve) = (Some(4), Some(2));
    let seen = |done: &SetDone| SetSeen {
        on: time.on,
        load: done.load.unwrap(),
        reps: done.reps,
        target: done.reps,
        open: false,
        evidence: Evidence::Reserve(done.reserve.unwrap()),
    };
    let seen: Vec<SetSeen> = time.sets.iter().map(seen).collect();
    let strength = strength(&seen, log.date()).unwrap().unwrap();
    log.history.able = Some(Able { strength, made: Mass::ZERO, from: Vec::new() });
    assert_eq!(log.says(), "42.5 x 5, 45 x 3");
}

/// 100 kg last time. A test of 105 stands; one of 200 goes up by a tenth, also before anything was a share. The coach may
/// say 200.
#[test]
fn a_typed_max_goes_up_by_a_tenth_at_most() {
    let typed = |mut log: Log, mass, tested| {
        let on = log.date();
        log.history.max =
            Some(KnownMax { record: record(98), load: kg(mass), placed: 900, on, tested });
        let basis = match log.reason(1) {
            Reason::Percent { basis, .. } => basis,
            other => panic!("{other:?}"),
        };
        (
            log.loads().max.unwrap().number(MassUnit::Kg),
            matches!(basis, MaxBasis::TestedCapped { .. }),
        )
    };
    let log = || percent(&[80]).did(&[("80", 3)]);
    assert_eq!(typed(log(), "105", true), ("105".into(), false));
    assert_eq!(typed(log(), "200", true), ("110".into(), true));
    assert_eq!(typed(log(), "200", false), ("200".into(), false));
    // Found by feel, 80 kg are 80 % of 100.
    let by_feel = || {
        let mut log = log();
        log.history.times[0].max = None;
        log
    };
    assert_eq!(typed(by_feel(), "200", true), ("110".into(), true));
}
