//! Rooms with few loads: reps climb until the next one is in reach.

use super::*;

/// A step of 1 kg on plates that build 2.5: no cap, reps. At nine (30 + 9) x 60 / 62.5 - 30 = 7.4 are
/// foretold, one less than eight: in reach.
#[test]
fn a_step_smaller_than_the_plates_climbs_in_reps() {
    let mut log = Log::new(straight(2, 8));
    let step = vec![Step { mass: kg("1"), unit: MassUnit::Kg }];
    log.rule = LoadRule::Step(StepRule { step, ..steps() });
    let log = log.all_at("60", &[8, 8]);
    assert_eq!(log.says(), "60 x 9, 60 x 9");
    assert!(
        matches!(log.reason(1), Reason::MoreReps { next: Some(next), .. } if next == kg("62.5"))
    );
    let log = log.all_at("60", &[9, 9]);
    assert_eq!(log.says(), "62.5 x 8, 62.5 x 8");
    assert!(matches!(log.reason(1), Reason::NextBuild { .. }));
}

/// 16 to 20 kg is a quarter: (30 + 13) x 16 / 20 - 30 = 4.4, half of eight, after thirteen reps.
#[test]
fn bells_go_up_when_half_the_reps_are_foretold() {
    let mut log = Log::new(straight(1, 8));
    log.builds = bells(&[8, 12, 16, 20, 24, 28, 32]);
    let mut reps = 8;
    while log.says().starts_with("16 x") || reps == 8 {
        log = log.did(&[("16", reps)]);
        reps += 1;
    }
    assert_eq!((log.says().as_str(), reps), ("20 x 4", 14), "after thirteen");
    // And they climb again.
    let log = log.did(&[("20", 4)]);
    assert_eq!(log.says(), "20 x 5");
}

/// A 20 kg bar with an open set of twenty: 22.5 kg is an eighth more, past the cap. Two over, twice running, and
/// it is in reach.
#[test]
fn an_open_set_of_twenty_on_the_empty_bar_moves() {
    let mut log = Log::new(Scheme { reps: vec![20], open: true });
    log = log.did(&[("20", 20)]);
    assert!(matches!(log.reason(1), Reason::AtTop { .. }), "{:?}", log.reason(1));
    assert_eq!(log.says(), "20 x 20+");
    let log = log.did(&[("20", 22)]).did(&[("20", 23)]);
    assert_eq!(log.says(), "22.5 x 20+");
}

/// From 15 to 25 kg nothing prepares: reps stop at twenty, and the coach hears.
#[test]
fn reps_stop_at_the_top() {
    let mut log = Log::new(straight(1, 18));
    log.builds = bells(&[15, 60]);
    let log = log.did(&[("15", 18)]).did(&[("15", 19)]);
    assert_eq!(log.says(), "15 x 20");
    let log = log.did(&[("15", 20)]);
    assert_eq!(log.says(), "15 x 20");
    assert!(matches!(log.reason(1), Reason::AtTop { next: Some(next), .. } if next == kg("60")));
}

/// Assistance of 20 kg, then of 15: less is up. Four more reps, and it is one pick.
#[test]
fn assistance_falls_pick_by_pick() {
    let masses = [5, 10, 15, 20].map(Mass::kg).to_vec();
    let assistance = crate::plan::Stack { unit: MassUnit::Kg, masses };
    let mut log = Log::new(straight(1, 5));
    log.builds = Builds::assisted(&assistance);
    let log = log.did(&[("-20", 5)]);
    assert_eq!(log.says(), "-20 x 6");
    let log = log.did(&[("-20", 9)]);
    assert_eq!(log.says(), "-15 x 5");
}

#[test]
fn another_room_gives_the_nearest_lighter_load() {
    let mut log = Log::new(straight(1, 5)).did(&[("61.25", 5)]);
    let plates = [(kg("20"), 2), (kg("10"), 2)];
    log.builds = fixtures::builds(&fixtures::kit("0", &plates));
    assert_eq!(log.says(), "60 x 5");
    assert!(matches!(log.reason(1), Reason::NotInThisRoom { .. }));
    log.builds = bells(&[80]);
    assert_eq!(log.says(), "- x 5", "nothing near: the athlete's choice");
}

/// Eight reps at 20 kg say nothing of the set at 12: its own sixteen foretell (30 + 16) x 12 / 16 - 30 = 4.5.
#[test]
fn reps_at_another_load_hold_no_set_back() {
    let mut log = Log::new(straight(2, 8));
    log.builds = bells(&[8, 12, 16, 20, 24]);
    let log = log.did(&[("20", 8), ("12", 16)]);
    assert_eq!(log.says(), "20 x 9, 16 x 4");
}

/// Ten reps at 12 kg foretell none at 16, but 16 was made not long ago: half of the eight.
#[test]
fn what_was_made_before_is_asked_for_half_the_reps_at_least() {
    let mut log = Log::new(straight(1, 8));
    log.builds = bells(&[8, 12, 16, 20]);
    let log = log.did(&[("16", 8)]).did(&[("12", 10)]);
    assert_eq!(log.says(), "16 x 4");
    let made = |log: &Log| made_lately(&log.scheme, &log.builds, &log.history, 1);
    assert_eq!(made(&log), Some(kg("16")));
    // Half a year later it was not lately; what was tried and not made never was.
    let log = log.wait(182).did(&[("12", 8)]).did(&[("20", 3)]);
    assert_eq!(made(&log), Some(kg("12")));
    assert_eq!(made(&Log::new(straight(1, 8))), None);
}

/// On two bars in turn, one of 20 kg and one of 16, no load can be built twice. Every session is made: no set goes
/// down, and over two sessions each goes up. 60 and 2.5 are 62.5, on the short bar 61; 61 and 2.5 are 63.5, 62.5.
#[test]
fn two_bars_in_turn_pull_no_load_down() {
    let short = |log: Log| Log { builds: on_bar(16, &PLATES), ..log };
    let mut log = Log::new(straight(2, 8)).all_at("60", &[8, 8]);
    let mut seen = vec![Mass::kg(60)];
    for session in 1..=12 {
        log = if session % 2 == 1 { short(log) } else { Log { builds: builds(), ..log } };
        let next: Vec<(Mass, u32)> =
            log.next().iter().map(|next| (next.load.unwrap(), next.reps)).collect();
        seen.push(next[0].0);
        let sets: Vec<(String, u32)> =
            next.iter().map(|(load, reps)| (load.number(MassUnit::Kg), *reps)).collect();
        let sets: Vec<(&str, u32)> =
            sets.iter().map(|(load, reps)| (load.as_str(), *reps)).collect();
        log = log.did(&sets);
    }
    assert_eq!(seen[..3], ["60", "61", "62.5"].map(kg));
    assert!(seen.is_sorted() && seen.windows(3).all(|three| three[2] > three[0]), "{seen:?}");
    // A room that builds nothing up to the step takes what is below.
    let log = Log { builds: bells(&[8, 24, 55]), ..log };
    assert!(matches!(log.reason(1), Reason::NotInThisRoom { .. }), "{:?}", log.reason(1));
    assert_eq!(log.says(), "55 x 8, 55 x 8");
}

/// A plan says 40 kg, but 16 was lifted: a tenth over it is 17.6. A bar that begins at 20 builds nothing so light, and
/// its lightest is no load to start from.
#[test]
fn a_load_of_the_plan_is_capped_on_a_bar_that_begins_above_the_cap_too() {
    let mut log = Log::new(straight(1, 8));
    log.rule = LoadRule::Fixed { loads: vec![kg("40")] };
    log.builds = on_bar(16, &["10", "5"]);
    let log = log.did(&[("16", 8)]);
    assert_eq!(log.says(), "16 x 8");
    let log = Log { builds: on_bar(20, &["10", "5"]), ..log };
    assert_eq!(log.says(), "- x 8");
    assert!(matches!(log.reason(1), Reason::FixedCapped { last, .. } if last == kg("16")));
}
