//! What hurts.

use super::*;

fn log() -> Log {
    Log::new(climb()).did(&[("50", 8), ("60", 6), ("70", 8)])
}

#[test]
fn mild_pain_keeps_loads_where_they_are_and_lighter_is_always_allowed() {
    let flagged = log().hurts(3, false);
    assert_eq!(flagged.says(), "50 x 8, 60 x 6, 70 x 5+");
    assert!(matches!(flagged.reason(1), Reason::Flagged { severity: 3, .. }));
    let ruled = log().ruled(&["40", "50", "90"]).hurts(3, false);
    assert_eq!(ruled.says(), "40 x 8, 50 x 6, 70 x 5+", "a coach may go lighter, not heavier");
}

#[test]
fn severe_pain_takes_the_load_away_at_once() {
    let flagged = log().hurts(8, false);
    assert_eq!(flagged.says(), "- x 8, - x 6, - x 5");
    assert!(matches!(flagged.reason(1), Reason::Withdrawn { severity: 8, sign: false, .. }));
    let mut sign = log().hurts(1, false);
    (sign.history.flags[0].sign, sign.history.flags[0].own) = (true, false);
    assert_eq!(sign.says(), "- x 8, - x 6, - x 5", "an emergency sign anywhere");
    let mut other = log().hurts(8, false);
    other.history.flags[0].own = false;
    assert_eq!(
        other.says(),
        "50 x 8, 60 x 6, 70 x 5",
        "in another movement: no step up, not to the end"
    );
    other.history.flags[0].cleared = Some(150);
    assert_eq!(other.says(), "50 x 8, 60 x 6, 70 x 5+", "no step up the first time after it");
    assert!(matches!(other.reason(1), Reason::AfterPain { severity: 8, .. }));
    let other = other.did(&[("50", 8), ("60", 6), ("70", 8)]);
    assert_eq!(other.says(), "55 x 8, 65 x 6, 75 x 5+");
}

/// Whatever the load comes from, and wherever it hurts: who lifts something the first time, or for other reps, is told
/// no load above what was lifted last.
#[test]
fn who_hurts_is_told_no_first_load() {
    let first = |rule: Option<LoadRule>| {
        let mut log = Log::new(straight(1, 5));
        log.history.start = vec![kg("60")];
        log.rule = rule.unwrap_or(log.rule);
        assert_eq!(log.says(), "60 x 5");
        let mut log = log.hurts(2, false);
        assert_eq!(log.says(), "- x 5");
        log.history.flags[0].own = false;
        assert_eq!(log.says(), "- x 5", "in another movement");
    };
    first(None);
    first(Some(LoadRule::Fixed { loads: vec![kg("60")] }));
}

/// A wave of 70 and 90 %, its days for other reps: nothing is carried from one to the other.
#[test]
fn a_share_goes_no_higher_than_was_lifted_while_it_hurts() {
    let wave = |percent| LoadRule::Percent {
        percents: vec![percent],
        step: Vec::new(),
        back_off_percent: 5,
    };
    let mut log = Log::new(straight(1, 5));
    log.rule = wave(70);
    let (record, load, on) = (record(99), kg("100"), day("2026-09-01"));
    log.history.max = Some(KnownMax { record, load, placed: 0, on, tested: true });
    let hurt = Log {
        rule: log.rule.clone(),
        scheme: log.scheme.clone(),
        builds: log.builds.clone(),
        history: log.history.clone(),
    };
    assert_eq!(hurt.hurts(2, false).says(), "- x 5");
    let mut log = log.did(&[("70", 5)]);
    (log.rule, log.scheme) = (wave(90), straight(1, 2));
    assert_eq!(log.says(), "90 x 2");
    let mut log = log.hurts(2, false);
    assert_eq!(log.says(), "70 x 2");
    log.history.flags[0].cleared = Some(150);
    assert_eq!(log.says(), "70 x 2", "the first time after it too");
    log.history.flags[0].severity = 6;
    assert_eq!(log.says(), "62.5 x 2", "a tenth less after severe pain");
    assert_eq!(log.did(&[("62.5", 2)]).says(), "90 x 2");
}

/// 10 % under 50, 60 and 70 are 45, 54 and 63. An easy week does not use it up; the first usual session does.
#[test]
fn the_first_session_after_severe_pain_is_lighter() {
    let cleared = log().hurts(8, true);
    assert_eq!(cleared.says(), "45 x 8, 52.5 x 6, 62.5 x 5");
    assert!(matches!(cleared.reason(1), Reason::AfterPain { severity: 8, .. }));
    let easy = cleared.easily(&[("30", 8)]);
    assert_eq!(easy.says(), "45 x 8, 52.5 x 6, 62.5 x 5");
    let back = easy.did(&[("45", 8), ("52.5", 6), ("62.5", 5)]);
    assert_eq!(back.says(), "47.5 x 8, 57.5 x 6, 67.5 x 5+");
    let mild = log().hurts(2, true);
    assert_eq!(mild.says(), "50 x 8, 60 x 6, 70 x 5+", "after mild pain it is the same again");
}

/// A tenth under 107.5 kg is 96.75, built as 95. 5 % of it are 5.4: 100.4, built as 102.5, then 107.9, which is
/// past it. From there it is the usual step.
#[test]
fn what_severe_pain_took_comes_back_by_halves() {
    let log = Log::new(straight(2, 5)).all_at("107.5", &[5, 5]).hurts(6, true);
    assert_eq!(log.says(), "95 x 5, 95 x 5");
    let first = log.all_at("95", &[5, 5]);
    assert_eq!(first.says(), "102.5 x 5, 102.5 x 5");
    let (last, by, best, on) = (kg("95"), kg("7.5"), kg("107.5"), day("2026-09-04"));
    assert_eq!(first.reason(1), Reason::WayBack { last, by, best, on });
    let second = first.all_at("102.5", &[5, 5]);
    assert_eq!(second.says(), "107.5 x 5, 107.5 x 5");
    let third = second.all_at("107.5", &[5, 5]);
    assert_eq!(third.says(), "110 x 5, 110 x 5");
}

/// Whoever misses on the way back goes on by the usual steps.
#[test]
fn a_miss_ends_the_way_back_after_pain() {
    let log = Log::new(straight(2, 5)).all_at("100", &[5, 5]).hurts(6, true);
    let missed = log.all_at("90", &[5, 4]);
    assert_eq!(missed.says(), "90 x 5, 90 x 5");
    let made = missed.all_at("90", &[5, 5]).all_at("90", &[5, 5]);
    assert_eq!(made.says(), "92.5 x 5, 92.5 x 5");
}

/// A session before with a miss takes its 5 % of the 100 kg first: the way back leads to 95.
#[test]
fn what_a_miss_took_too_does_not_come_back_with_it() {
    let log = Log::new(straight(2, 5)).all_at("100", &[5, 4]).hurts(6, true);
    assert_eq!(log.says(), "90 x 5, 90 x 5");
    let back = log.all_at("90", &[5, 5]);
    assert_eq!(back.says(), "95 x 5, 95 x 5");
    assert!(matches!(back.reason(1), Reason::WayBack { best, .. } if best == kg("95")));
}

/// Of picks one was taken, and the next session made gives it back.
#[test]
fn a_pick_that_pain_took_comes_back() {
    let masses = [5, 10, 15, 20, 25].map(Mass::kg).to_vec();
    let assistance = crate::plan::Stack { unit: MassUnit::Kg, masses };
    let mut log = Log::new(straight(1, 5));
    log.builds = Builds::assisted(&assistance);
    let log = log.did(&[("-20", 5)]).hurts(4, true);
    assert_eq!(log.says(), "-25 x 5");
    assert_eq!(log.did(&[("-25", 5)]).says(), "-20 x 5");
}

/// A set that was never logged carries the load of the set before it, and pain takes from that one too.
#[test]
fn what_pain_took_comes_back_in_a_set_that_was_never_logged() {
    let log = Log::new(straight(2, 5)).did(&[("100", 5)]).hurts(6, true);
    assert_eq!(log.says(), "90 x 5, 90 x 5");
    assert_eq!(log.all_at("90", &[5, 5]).says(), "95 x 5, 95 x 5");
}

/// 15 kg was lifted, and the bar of today weighs 16: within the tenth, but above it.
#[test]
fn where_the_bar_begins_above_it_nobody_who_hurts_is_told_a_load() {
    let mut log = Log::new(straight(1, 5));
    log.builds = on_bar(15, &PLATES);
    let log = log.did(&[("15", 5)]).hurts(2, false);
    assert_eq!(log.says(), "15 x 5");
    let log = Log { builds: on_bar(16, &PLATES), ..log };
    assert_eq!(log.says(), "- x 5");
    assert!(matches!(log.reason(1), Reason::Flagged { .. }));
    let ruled = log.ruled(&["20"]);
    assert_eq!(ruled.says(), "- x 5", "whatever the coach answered");
}

/// The plan starts at 60 kg, the coach said 70 a month ago, and only an easy week was trained: 70 raises nothing any
/// more, and pain does not bring it back.
#[test]
fn pain_brings_no_old_answer_back() {
    let mut log = Log::new(straight(1, 5));
    log.history.start = vec![kg("60")];
    let log = log.easily(&[("40", 5)]).ruled(&["70"]);
    assert_eq!(log.says(), "70 x 5");
    let log = log.wait(30);
    assert_eq!(log.says(), "60 x 5");
    let log = log.hurts(2, false);
    assert_eq!(log.says(), "- x 5");
    assert!(matches!(log.reason(1), Reason::Flagged { last: None, .. }));
}

/// 100 kg on a bar of 20, nine tenths of them on one of 16 are 88.5, and back on the first one 5 % more, rounded up,
/// are 95: loads stand 2.5 kg apart, so the bar took no tenth.
#[test]
fn on_bars_in_turn_what_pain_took_comes_back() {
    let log = Log::new(straight(2, 5)).all_at("100", &[5, 5]).hurts(6, true);
    let log = Log { builds: on_bar(16, &PLATES), ..log };
    assert_eq!(log.says(), "88.5 x 5, 88.5 x 5");
    let log = Log { builds: builds(), ..log.all_at("88.5", &[5, 5]) };
    assert_eq!(log.says(), "95 x 5, 95 x 5");
}

/// From 75 kg on a bar of 15 to 70 on one of 20, since loads stand 10 kg apart. Pain that is told of afterwards, as of
/// that day, took nothing: on the first bar it is 65, as without it.
#[test]
fn what_a_bar_took_is_not_given_back_as_if_pain_had() {
    let coarse = ["20", "10", "5"];
    let mut log = Log::new(straight(1, 8));
    log.builds = on_bar(15, &coarse);
    let mut log = log.did(&[("75", 8)]);
    log.builds = on_bar(20, &coarse);
    assert_eq!(log.says(), "70 x 8");
    let mut log = log.did(&[("70", 8)]);
    log.builds = on_bar(15, &coarse);
    assert_eq!(log.says(), "65 x 8");
    let mut log = log.hurts(6, true);
    log.history.flags[0].cleared = Some(150);
    assert_eq!(log.says(), "65 x 8");
}

/// Dark urine concerns every lift, whatever brought it on: once it is cleared each comes back at nine tenths, with no
/// set to the end, and from there as after any severe pain.
#[test]
fn after_an_emergency_sign_every_lift_comes_back_lighter() {
    let log = Log::new(climb()).did(&[("50", 8), ("60", 6), ("70", 5)]).hurts(7, true);
    let mut log = log;
    let flag = log.history.flags.last_mut().unwrap();
    (flag.own, flag.sign) = (false, true);
    assert_eq!(log.says(), "45 x 8, 52.5 x 6, 62.5 x 5");
    assert!(matches!(log.reason(3), Reason::AfterPain { .. }));
    let log = log.did(&[("45", 8), ("52.5", 6), ("62.5", 5)]);
    assert_eq!(log.says(), "47.5 x 8, 57.5 x 6, 67.5 x 5+");
}

/// Nine reps were asked for; with an open flag it is the plan's eight again, and the flag is named for it.
#[test]
fn who_is_asked_fewer_reps_hears_why() {
    let mut log = Log::new(straight(1, 8));
    log.builds = bells(&[16, 24]);
    let log = log.did(&[("16", 8)]);
    assert_eq!(log.says(), "16 x 9");
    let log = log.did(&[("16", 9)]).hurts(2, false);
    assert_eq!(log.says(), "16 x 8");
    assert!(matches!(log.reason(1), Reason::Flagged { .. }), "{:?}", log.reason(1));
}
