//! The first time, weeks away, and loads the plan gives.

use proptest::prelude::*;

use super::{builds, date, done, kit, next, record, rule, scheme, time};
use crate::care::Place;
use crate::load::next::*;
use crate::mass::MassUnit;
use crate::plan::{Bar, Kit, PlateStack};

fn found(so_far: Vec<SetDone>) -> Vec<(String, Reason)> {
    next(History { so_far, ..History::default() }, &rule())
}

/// Brzycki's equation by hand: 40 kg for 5 with 3 left is 8 to failure, a 1RM of 40 * 36 / 29; 6 reps
/// with 2 left are 8 as well: 40 kg. 5 with 2 left are 7: 40 * 30 / 29 = 41.4, and the plates build 40.
#[test]
fn a_first_time_is_found_from_the_reps_that_were_left() {
    let loads = found(vec![done(1, 40, 5, Some(3))]);
    assert_eq!(loads[0], ("-".into(), Reason::FirstTime));
    assert_eq!(loads[1].0, "40 kg");
    assert_eq!(loads[2].0, "40 kg");
    // With one more left it is 9: 40 * 30 / 28 = 42.86, built as 42.5.
    let loads = found(vec![done(1, 40, 5, Some(4))]);
    assert_eq!(loads[2].0, "42.5 kg");
    let (last, reps, reserve) = (Mass::kg(40), 5, 4);
    assert_eq!(loads[2].1, Reason::Found { last, reps, reserve, leave: 2, capped: false });
    // The latest set decides.
    let loads = found(vec![done(1, 40, 8, Some(5)), done(2, 50, 6, Some(2))]);
    assert_eq!(loads[2].0, "50 kg", "50 * 30 / 29 = 51.7");
}

#[test]
fn without_the_reps_left_no_load_is_invented() {
    let loads = found(vec![done(1, 40, 8, None)]);
    let (last, reps) = (Mass::kg(40), 8);
    assert_eq!(loads[1], ("-".into(), Reason::SayReserve { last, reps }));
    // Whoever fell short had none left: 6 to failure, 8 wanted: 40 * 29 / 31 = 37.4.
    assert_eq!(found(vec![done(1, 40, 6, None)])[1].0, "35 kg");
}

/// An option, or another scheme, is another history: nothing of this one is carried there.
#[test]
fn a_flag_keeps_a_first_time_without_a_load() {
    let flag =
        OpenFlag { record: record(9), own: true, place: Place::Knee, severity: 4, on: date(3) };
    let so_far = vec![done(1, 40, 8, Some(4))];
    let history = History { so_far, flag: Some(flag), ..History::default() };
    let loads = next_loads(&rule(), &scheme(), &builds(), &history);
    assert!(loads.iter().all(|next| next.load.is_none()));
    assert_eq!(loads[1].from, [record(9)]);
}

/// By hand: 10 % off after three weeks, 15 after four; a third at most.
#[test]
fn after_weeks_away_loads_come_back_lighter() {
    let back = |days: i64| {
        let last = time(3, &[(50, 8), (60, 6), (70, 9)]);
        let today = last.on + chrono::TimeDelta::days(days);
        let last_lifted = Some(last.on);
        let times = vec![last];
        let history = History { date: Some(today), times, last_lifted, ..History::default() };
        next(history, &rule()).remove(1)
    };
    assert_eq!(back(20).0, "65 kg", "not three weeks yet: the earned step");
    let (load, reason) = back(21);
    assert_eq!(load, "52.5 kg", "54 kg, built");
    let (last, on) = (Mass::kg(60), date(3));
    assert_eq!(reason, Reason::EasedIn { last, weeks: 3, percent: 10, on });
    assert_eq!(back(28).0, "50 kg", "51 kg, built");
    assert_eq!(back(365).0, "40 kg", "42 kg, built");
}

#[test]
fn another_scheme_of_the_movement_is_not_being_away() {
    let last = time(3, &[(50, 8), (60, 6), (70, 6)]);
    let (today, last_lifted) = (date(30), Some(date(24)));
    let times = vec![last];
    let history = History { date: Some(today), times, last_lifted, ..History::default() };
    assert_eq!(next(history, &rule())[0].0, "52.5 kg");
}

#[test]
fn loads_of_the_plan_heed_the_cap_and_a_flag() {
    let fixed = |kg: i64| LoadRule::Fixed { loads: vec![Mass::kg(kg)] };
    let history = History { times: vec![time(3, &[(50, 8), (60, 6)])], ..History::default() };
    let as_planned = Reason::Fixed { planned: Mass::kg(55), capped: None, nearest: false };
    assert_eq!(next(history.clone(), &fixed(55))[0], ("55 kg".into(), as_planned));
    // What the room cannot build is not shown as if it could.
    let nearest = Reason::Fixed { planned: Mass::kg(54), capped: None, nearest: true };
    assert_eq!(next(history.clone(), &fixed(54))[0], ("52.5 kg".into(), nearest));
    // A tenth above 50 is 55.
    let (load, reason) = next(history.clone(), &fixed(70)).remove(0);
    assert_eq!(load, "55 kg");
    let (planned, capped) = (Mass::kg(70), Some(Mass::kg(50)));
    assert_eq!(reason, Reason::Fixed { planned, capped, nearest: false });
    // Nothing was lifted in set 3: the plan's word counts.
    assert_eq!(next(history.clone(), &fixed(70))[2].0, "70 kg");
    let flag =
        OpenFlag { record: record(9), own: true, place: Place::Knee, severity: 4, on: date(3) };
    let history = History { flag: Some(flag), ..history };
    assert_eq!(next(history.clone(), &fixed(54))[0].0, "50 kg");
    assert_eq!(next(history, &fixed(40))[0].0, "40 kg", "lighter is always allowed");
}

/// 60 kg are 132.28 lb (the pound of 1959, 0.45359237 kg): 130 lb on a 45 lb bar with pairs of 2.5 lb.
/// 20 kg are less than the bar alone, 45 lb or 20.4 kg: the empty bar, a fiftieth more. 18 kg are not
/// near it: shown as planned.
#[test]
fn a_plan_in_kilograms_is_built_on_a_bar_of_pounds() {
    let pounds = |mass| Mass::thousandths(mass, MassUnit::Lb);
    let plate = |mass| PlateStack { mass: pounds(mass), unit: MassUnit::Lb, count: 4 };
    let (name, unit, count) = ("pound bar".to_owned(), MassUnit::Lb, 1);
    let bar = Bar { name, mass: pounds(45_000), unit, collars: Mass::ZERO, count };
    let plates = [25_000, 10_000, 5_000, 2_500].map(plate).into();
    let kit = Kit { bars: vec![bar], plates, ..Kit::default() };
    let builds = Builds::bar(&kit, &kit.bars[0]);
    for (planned, built, nearest) in
        [(60, "130 lb", true), (20, "45 lb", true), (18, "18 kg", false)]
    {
        let planned = Mass::kg(planned);
        let rule = LoadRule::Fixed { loads: vec![planned] };
        let next = next_loads(&rule, &scheme(), &builds, &History::default()).remove(0);
        assert_eq!(next.load.unwrap().to_string(), built);
        assert_eq!(next.reason, Reason::Fixed { planned, capped: None, nearest });
    }
}

#[test]
fn a_load_names_the_records_it_was_read_from() {
    let from = |times: Vec<Time>| {
        let history = History { times, ..History::default() };
        next_loads(&rule(), &scheme(), &builds(), &history).remove(0).from
    };
    let sets = [record(1), record(2), record(3)];
    assert_eq!(from(vec![time(3, &[(50, 8), (60, 6), (70, 5)])]), sets);
    assert_eq!(from(vec![time(3, &[(50, 8), (60, 4), (70, 5)])]), [record(1), record(2)]);
}

/// The same masses marked in pounds: a kit of 20 kg and 2.5 kg plates, declared twice.
fn marked(unit: MassUnit) -> Builds {
    let Kit { bars, plates, .. } = kit();
    let bars: Vec<Bar> = bars.into_iter().map(|bar| Bar { unit, ..bar }).collect();
    let plates = plates.into_iter().map(|stack| PlateStack { unit, ..stack }).collect();
    let kit = Kit { bars, plates, ..Kit::default() };
    Builds::bar(&kit, &kit.bars[0])
}

proptest! {
    /// A step written in one unit only is the same mass on a bar marked in either.
    #[test]
    fn kits_that_hold_the_same_masses_give_the_same_loads(
        sets in proptest::collection::vec((20_i64..200, 0_u32..15), 1..=3),
    ) {
        let history = History { times: vec![time(3, &sets)], ..History::default() };
        let loads = |unit| next_loads(&rule(), &scheme(), &marked(unit), &history);
        prop_assert_eq!(loads(MassUnit::Kg), loads(MassUnit::Lb));
    }

    /// More reps, or more left, never lead to a lighter next set; and never more than a fourth up.
    #[test]
    fn a_found_load_is_monotone_and_bounded(
        kg in 20_i64..200, reps in 0_u32..15, reserve in 0_u32..8, more in 0_u32..4,
    ) {
        let load = |reps, reserve| {
            let so_far = vec![done(1, kg, reps, Some(reserve))];
            let history = History { so_far, ..History::default() };
            next_loads(&rule(), &scheme(), &builds(), &history)[1].load.unwrap()
        };
        let this = load(reps, reserve);
        prop_assert!(this <= load(reps + more, reserve));
        prop_assert!(this <= load(reps, reserve + more));
        prop_assert!(this <= Mass::kg(kg).percent(125));
    }
}
