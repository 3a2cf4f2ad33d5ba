//! Weeks away.

use super::*;

fn at_100(days: u64) -> Log {
    Log::new(straight(1, 5)).did(&[("100", 5)]).wait(days - 3)
}

/// Nothing, then no step, then 10 % and 2.5 for each further week, at most 30: 90, 87.5, 70.
#[test]
fn the_longer_the_lighter() {
    for (days, load) in
        [(13, "102.5"), (14, "100"), (20, "100"), (21, "90"), (28, "87.5"), (91, "70"), (400, "70")]
    {
        assert_eq!(at_100(days).says(), format!("{load} x 5"), "{days} days");
    }
    assert!(matches!(at_100(14).reason(1), Reason::HeldBack { weeks: 2, .. }));
    assert!(matches!(at_100(21).reason(1), Reason::EasedIn { weeks: 3, .. }));
}

/// 13 weeks away with a flag: no heavier than without.
#[test]
fn pain_never_ends_it() {
    assert_eq!(at_100(91).hurts(3, false).says(), "70 x 5");
    assert_eq!(at_100(91).hurts(9, true).says(), "70 x 5");
    // Two misses and an open flag: no heavier than the misses alone.
    let missed = || Log::new(straight(1, 5)).did(&[("100", 4)]).did(&[("100", 4)]);
    assert_eq!(missed().says(), "95 x 5");
    assert_eq!(missed().hurts(3, false).says(), "95 x 5");
}

/// A light day on the way back is a day logged, and restores no load.
#[test]
fn a_light_day_does_not_end_weeks_away() {
    let mut log = at_100(30);
    let on = log.date();
    log.history.days.push(on);
    assert_eq!(log.wait(2).says(), "87.5 x 5");
}

/// From 100 kg, after five weeks at 85: twice two to spare are two steps at once, to 95 at most of a tenth.
#[test]
fn the_way_back_is_faster() {
    let log = at_100(35).did(&[("85", 7)]);
    assert_eq!(log.says(), "90 x 5");
    let best = kg("100");
    assert!(matches!(log.reason(1), Reason::WayBack { best: found, .. } if found == best));
    let log = log.did(&[("90", 7)]);
    assert_eq!(log.says(), "95 x 5");
    let log = log.did(&[("95", 7)]);
    assert_eq!(log.says(), "97.5 x 5", "within a twentieth of the best it is an ordinary step");
}

/// A quarter down to the next bell is more than twice 10 %: the same bell for fewer reps, and no set to the end.
#[test]
fn where_the_room_has_nothing_near_reps_fall() {
    let mut log = Log::new(Scheme { reps: vec![8, 8], open: true });
    log.builds = bells(&[8, 12, 16, 24]);
    let log = log.all_at("16", &[8, 8]).wait(18);
    assert_eq!(log.says(), "16 x 6, 16 x 6", "8 x 10 / 40 are two fewer");
}

/// Under 125 kg there are 115 and then 70: 115 is not a tenth less, so it is for fewer reps too. Whoever lifted
/// 130 gets no less than whoever lifted 125.
#[test]
fn what_the_room_has_is_taken_before_the_same_load() {
    let log = |load: &str| {
        let mut log = Log::new(straight(1, 8));
        log.builds = bells(&[70, 115, 120, 125, 130]);
        log.did(&[(load, 8)]).wait(18).says()
    };
    assert_eq!([log("125"), log("130")], ["115 x 6", "115 x 8"]);
}

/// Picks: of what is hung on a body a share means nothing.
#[test]
fn picks_fall_one_by_one() {
    let kit = crate::plan::Kit {
        bells: [4, 8, 12, 16]
            .map(|mass| Bell { mass: Mass::kg(mass), unit: MassUnit::Kg, count: 1 })
            .to_vec(),
        ..crate::plan::Kit::default()
    };
    let log = |days: u64| {
        let mut log = Log::new(straight(1, 5));
        log.builds = Builds::added(&kit, MassUnit::Kg);
        log.did(&[("12", 5)]).wait(days - 3)
    };
    assert_eq!(
        ["8", "4", "0"].map(|load| format!("{load} x 5")),
        [21, 35, 49].map(|days| log(days).says())
    );
}
