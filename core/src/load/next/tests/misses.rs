//! What was missed.

use super::*;

#[test]
fn a_miss_keeps_every_load() {
    let log = Log::new(climb()).did(&[("50", 8), ("60", 6), ("70", 4)]);
    assert_eq!(log.says(), "50 x 8, 60 x 6, 70 x 5+");
    assert!(matches!(log.reason(1), Reason::Missed { set: 3, reps: 4, asked: 5, .. }));
}

/// 5 % under 70 kg is 66.5: the nearest build is 67.5. The sets that were made stay.
#[test]
fn in_a_climb_only_the_set_that_failed_twice_falls() {
    let missed: &[(&str, u32)] = &[("50", 8), ("60", 6), ("70", 4)];
    let log = Log::new(climb()).did(missed).did(missed);
    assert_eq!(log.says(), "50 x 8, 60 x 6, 67.5 x 5+");
    assert!(matches!(log.reason(3), Reason::BackOff { sessions: 2, .. }));
}

/// 5 % under 60 kg is 57.
#[test]
fn straight_sets_fall_together() {
    let log = Log::new(straight(3, 5)).all_at("60", &[5, 5, 4]).all_at("60", &[5, 5, 4]);
    assert_eq!(log.says(), "57.5 x 5, 57.5 x 5, 57.5 x 5");
}

/// Short by two of five counts as two misses: nobody grinds through it twice.
#[test]
fn a_miss_by_far_counts_as_two() {
    let log = Log::new(straight(3, 5)).all_at("60", &[5, 5, 3]);
    assert_eq!(log.says(), "57.5 x 5, 57.5 x 5, 57.5 x 5");
    assert!(matches!(log.reason(1), Reason::BackOff { sessions: 1, .. }));
    let most = Log::new(straight(3, 12)).all_at("60", &[12, 11, 11]);
    assert_eq!(most.says(), "57.5 x 12, 57.5 x 12, 57.5 x 12", "more than half of the sets");
    // A quarter of twelve are three.
    let near = Log::new(straight(3, 12)).all_at("60", &[12, 12, 10]);
    assert_eq!(near.says(), "60 x 12, 60 x 12, 60 x 12");
}

#[test]
fn three_sessions_with_a_miss_take_all_sets_back() {
    let log = Log::new(climb()).did(&[("50", 8), ("60", 6), ("70", 4)]);
    let log = log.did(&[("50", 8), ("60", 5), ("70", 5)]);
    assert_eq!(log.says(), "50 x 8, 60 x 6, 70 x 5+", "no set twice");
    let log = log.did(&[("50", 7), ("60", 6), ("70", 5)]);
    // 5 % under 50 is 47.5, under 60 is 57, under 70 is 66.5.
    assert_eq!(log.says(), "47.5 x 8, 57.5 x 6, 67.5 x 5+");
    assert!(matches!(log.reason(2), Reason::BackOff { sessions: 3, .. }));
}

/// Whoever lifts more than was proposed and misses carries what was proposed.
#[test]
fn nobody_is_sent_up_by_missing() {
    let log = Log::new(straight(1, 5)).did(&[("60", 5)]).did(&[("80", 4)]);
    assert_eq!(log.says(), "62.5 x 5");
}

#[test]
fn the_lightest_load_missed_twice_asks_two_reps_fewer_and_climbs_back() {
    let log = Log::new(straight(2, 8)).all_at("20", &[8, 7]).all_at("20", &[8, 7]);
    assert_eq!(log.says(), "20 x 6, 20 x 6");
    let log = log.all_at("20", &[6, 6]);
    assert_eq!(log.says(), "20 x 6, 20 x 6", "once more, as after every miss");
    let log = log.all_at("20", &[6, 6]);
    assert_eq!(log.says(), "20 x 7, 20 x 7");
}
