//! The step rule, and what its tests share with the others.

mod able;
mod first;

use proptest::prelude::*;

use chrono::NaiveDate;

use super::*;
use crate::care::Place;
use crate::fixtures;
use crate::load::Decision;
use crate::mass::MassUnit;
use crate::plan::{Kit, Step, StepRule};

fn kit() -> Kit {
    fixtures::kit("0", &["20", "15", "10", "5", "2.5", "1.25"].map(|mass| (fixtures::kg(mass), 4)))
}

fn builds() -> Builds {
    fixtures::builds(&kit())
}

fn scheme() -> Scheme {
    Scheme { reps: vec![8, 6, 5], open: true }
}

fn rule() -> LoadRule {
    let step = |mass| vec![Step { mass, unit: MassUnit::Kg }];
    LoadRule::Step(StepRule {
        step: step(Mass::thousandths(2500, MassUnit::Kg)),
        earned_step: step(Mass::kg(5)),
        earned_by: 3,
        top: 20,
        // What is usual where a plan says nothing.
        back_off_percent: 5,
    })
}

fn time(day: u32, sets: &[(i64, u32)]) -> Time {
    let sets = sets.iter().zip(1..).map(|((kg, reps), set)| done(set, *kg, *reps, None));
    Time {
        session: RecordId(crate::id::random([day as u8; 16])),
        on: NaiveDate::from_ymd_opt(2026, 11, day).unwrap(),
        sets: sets.collect(),
    }
}

fn record(n: u8) -> RecordId {
    RecordId(crate::id::random([n; 16]))
}

fn done(set: u32, kg: i64, reps: u32, reserve: Option<u32>) -> SetDone {
    SetDone { record: record(set as u8), set, load: Some(Mass::kg(kg)), reps, reserve }
}

fn date(day: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, 11, day).unwrap()
}

fn next(history: History, rule: &LoadRule) -> Vec<(String, Reason)> {
    let loads = next_loads(rule, &scheme(), &builds(), &history);
    let text =
        |next: NextLoad| (next.load.map_or("-".into(), |load| load.to_string()), next.reason);
    loads.into_iter().map(text).collect()
}

fn after(times: Vec<Time>) -> Vec<(String, Reason)> {
    next(History { times, ..History::default() }, &rule())
}

fn loads(times: Vec<Time>) -> Vec<String> {
    after(times).into_iter().map(|(load, _)| load).collect()
}

/// Worked by hand: each set goes up by 2.5 kg, which is under a tenth of 50, 60 and 70 kg.
#[test]
fn done_as_planned_every_set_goes_up_one_step() {
    let last = time(3, &[(50, 8), (60, 6), (70, 7)]);
    assert_eq!(loads(vec![last.clone()]), ["52.5 kg", "62.5 kg", "72.5 kg"]);
    let (_, reason) = &after(vec![last])[0];
    let by = Mass::thousandths(2500, MassUnit::Kg);
    let on = NaiveDate::from_ymd_opt(2026, 11, 3).unwrap();
    assert_eq!(*reason, Reason::Step { last: Mass::kg(50), by, capped: false, on });
}

/// Eight reps where five were asked for is three past: the larger step.
#[test]
fn the_open_set_can_earn_the_larger_step() {
    assert_eq!(loads(vec![time(3, &[(50, 8), (60, 6), (70, 8)])]), ["55 kg", "65 kg", "75 kg"]);
}

/// A plan without a larger step has none to earn: however far the open set goes, it is the plan's own step.
#[test]
fn without_a_larger_step_in_the_plan_the_open_set_earns_the_usual_one() {
    let LoadRule::Step(mut own) = rule() else { unreachable!() };
    own.earned_step.clear();
    let times = vec![time(3, &[(50, 8), (60, 6), (70, 12)])];
    let found = next(History { times, ..History::default() }, &LoadRule::Step(own));
    assert_eq!(found[2].0, "72.5 kg");
    assert!(matches!(found[2].1, Reason::Step { capped: false, .. }), "{:?}", found[2].1);
}

#[test]
fn a_miss_holds_every_set_and_two_in_a_row_back_off() {
    let missed = time(10, &[(50, 8), (60, 5), (70, 5)]);
    assert_eq!(loads(vec![missed.clone()]), ["50 kg", "60 kg", "70 kg"]);
    let (_, reason) = &after(vec![missed.clone()])[2];
    assert!(matches!(reason, Reason::Missed { set: 2, reps: 5, asked: 6, .. }), "{reason:?}");
    // 95 % of 50, 60, 70 is 47.5, 57, 66.5; the plates build 47.5, 55 and 65.
    let before = time(3, &[(50, 8), (60, 6), (70, 4)]);
    assert_eq!(loads(vec![missed, before]), ["47.5 kg", "55 kg", "65 kg"]);
}

#[test]
fn nothing_is_invented_the_first_time() {
    assert_eq!(after(vec![]), vec![("-".to_owned(), Reason::FirstTime); 3]);
}

#[test]
fn an_unfinished_time_holds_and_a_skipped_set_carries_on_from_before() {
    let before = time(3, &[(50, 8), (60, 6), (70, 6)]);
    let cut_short = time(10, &[(55, 8), (65, 6)]);
    assert_eq!(loads(vec![cut_short, before]), ["55 kg", "65 kg", "70 kg"]);
}

/// A tenth of 20 kg is 2 kg, but the smallest step of these plates is 2.5 kg.
#[test]
fn a_step_past_the_cap_is_refused_and_says_what_is_next() {
    let (load, reason) = after(vec![time(3, &[(20, 8), (60, 6), (70, 5)])]).remove(0);
    assert_eq!(load, "20 kg");
    let above = Some(Mass::thousandths(22_500, MassUnit::Kg));
    assert!(
        matches!(reason, Reason::NoLegalStep { above: found, allowed, .. }
        if found == above && allowed == Mass::kg(22)),
        "{reason:?}"
    );
}

#[test]
fn a_flag_stops_progression_and_a_coach_decides_otherwise() {
    let times = vec![time(3, &[(50, 8), (60, 6), (70, 9)])];
    let flag = OpenFlag {
        record: record(90),
        own: true,
        place: Place::Knee,
        severity: 4,
        on: times[0].on,
    };
    let ruled = Ruled {
        record: record(91),
        decision: Decision::Change,
        loads: vec![Some(Mass::kg(52)); 3],
        words: "x".into(),
    };
    let mut history = History { times, ruling: Some(ruled), ..History::default() };
    let first = |history: &History| next_loads(&rule(), &scheme(), &builds(), history).remove(0);
    assert_eq!(first(&history).load, Some(Mass::kg(52)));
    history.flag = Some(flag);
    assert_eq!(first(&history).load, Some(Mass::kg(50)));
    assert!(matches!(first(&history).reason, Reason::Flagged { severity: 4, .. }));
    // Lighter than last time is always allowed, and the coach's words are shown.
    let ruled = |kg| Ruled {
        record: record(91),
        decision: Decision::Change,
        loads: vec![Some(Mass::kg(kg)); 3],
        words: "light".into(),
    };
    history.ruling = Some(ruled(40));
    assert_eq!(first(&history).load, Some(Mass::kg(40)));
    assert!(matches!(first(&history).reason, Reason::Coach { .. }));
    // Past the cap never, even when a file says so: a tenth over 50 kg is 55 kg.
    history.flag = None;
    history.ruling = Some(ruled(90));
    assert_eq!(first(&history).load, Some(Mass::kg(55)));
}

/// Ninety-five percent of the empty bar cannot be built: the empty bar it is.
#[test]
fn nothing_lighter_than_the_empty_bar_is_proposed() {
    let missed = |day| time(day, &[(20, 3), (60, 6), (70, 5)]);
    assert_eq!(loads(vec![missed(10), missed(3)]), ["20 kg", "55 kg", "65 kg"]);
}

proptest! {
    /// Whatever was lifted: never past the cap, never up after a miss or a flag, and always built.
    #[test]
    fn loads_stay_inside_their_bounds(
        done in proptest::collection::vec((20_i64..200, 0_u32..15), 1..=3),
        flagged: bool,
    ) {
        let last = time(3, &done);
        let flag = flagged.then_some(OpenFlag { record: record(90), own: true, place: Place::Hip, severity: 1, on: last.on });
        let missed = last.any_missed(&scheme());
        let history = History { times: vec![last.clone()], flag, ..History::default() };
        for next in next_loads(&rule(), &scheme(), &builds(), &history) {
            let before = last.set(next.set).and_then(|set| set.load);
            prop_assert_eq!(next.load.is_some(), before.is_some());
            if let (Some(load), Some(before)) = (next.load, before) {
                prop_assert!(load <= before.percent(CAP_PERCENT));
                prop_assert!(load <= before || !(flagged || missed || done.len() < 3));
                prop_assert!(builds().exactly(load).is_some() || load == before);
            }
        }
    }

    /// More good reps never lead to a lighter next load.
    #[test]
    fn more_reps_never_lower_a_load(kg in 20_i64..180, reps in 0_u32..20, more in 1_u32..5) {
        let load = |reps| after(vec![time(3, &[(kg, 8), (kg, 6), (kg, reps)])])[0].0.clone();
        let parse = |text: String| Mass::parse(&text, None).unwrap();
        prop_assert!(parse(load(reps)) <= parse(load(reps + more)));
    }
}
