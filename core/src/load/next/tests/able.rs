//! Loads from what somebody can lift now, and the bounds they stay in.

use super::{builds, date, next, record, scheme, time};
use crate::care::Place;
use crate::load::next::*;
use crate::load::strength::{Evidence, SetSeen, Strength, strength};
use crate::mass::MassUnit;

/// The strength that an open set of 5 with 100 kg on 3 November says.
fn known() -> Strength {
    let (on, load) = (date(3), Mass::kg(100));
    let evidence = Evidence::Counted;
    let set = SetSeen { on, load, reps: 5, target: 5, open: true, evidence };
    strength(&[set], date(5)).unwrap().unwrap()
}

fn able() -> Option<Able> {
    Some(Able { strength: known(), from: vec![record(50)] })
}

fn percent(percent: u32) -> LoadRule {
    LoadRule::Percent { percents: vec![percent] }
}

fn reserve(reserve: u32) -> LoadRule {
    LoadRule::Reserve { reserve }
}

fn kg(text: &str) -> f64 {
    Mass::parse(text, None).unwrap().for_drawing(MassUnit::Kg)
}

/// The builds builds every 2.5 kg from 20 kg.
fn built(load: f64) -> f64 {
    (load / 2.5 + 1e-9).floor() * 2.5
}

#[test]
fn a_percentage_is_of_what_can_be_lifted_once_rounded_down_to_the_plates() {
    let history = History { able: able(), date: Some(date(5)), ..History::default() };
    // Never done in this scheme: from the lower end.
    let low = known().estimate().unwrap().low;
    let (load, reason) = next(history.clone(), &percent(70)).remove(0);
    assert_eq!(kg(&load), built(low * 0.7));
    assert!(matches!(reason, Reason::Percent { percent: 70, capped: None, weeks: 0, .. }));
    // Done before: the same, as long as the cap allows.
    let times = vec![time(3, &[(75, 8), (75, 6), (75, 6)])];
    let history = History { times, ..history };
    assert_eq!(kg(&next(history, &percent(70))[0].0), built(low * 0.7));
}

#[test]
fn reps_in_reserve_get_lighter_loads_for_more_reps_or_more_left() {
    let times = vec![time(3, &[(90, 8), (90, 6), (90, 6)])];
    let history = History { able: able(), times, date: Some(date(5)), ..History::default() };
    let loads = |leave| next(history.clone(), &reserve(leave));
    let [two, four] = [loads(2), loads(4)];
    assert_eq!(kg(&two[0].0), built(known().load_for(8, 2).unwrap().low));
    assert!(kg(&two[0].0) < kg(&two[1].0), "8 reps against 6");
    assert!(kg(&four[0].0) < kg(&two[0].0));
    let Reason::Reserve { reps: 8, leave: 2, .. } = two[0].1 else { panic!("{:?}", two[0]) };
}

#[test]
fn strength_never_takes_a_load_past_the_cap_or_a_flag() {
    let times = vec![time(3, &[(60, 8), (60, 6), (60, 6)])];
    let mut history = History { able: able(), times, date: Some(date(5)), ..History::default() };
    let (load, reason) = next(history.clone(), &percent(70)).remove(0);
    assert_eq!(load, "65 kg", "a tenth above 60 is 66");
    assert!(matches!(reason, Reason::Percent { capped: Some(last), .. } if last == Mass::kg(60)));
    let (place, severity, on) = (Place::Knee, 4, date(4));
    history.flag = Some(OpenFlag { record: record(9), own: true, place, severity, on });
    assert_eq!(next(history.clone(), &percent(70))[0].0, "60 kg");
    history.times.clear();
    assert_eq!(next(history, &percent(70))[0].0, "-", "flagged and never done: no load");
}

#[test]
fn weeks_away_take_off_from_a_load_of_strength_too() {
    let times = vec![time(3, &[(80, 8), (80, 6), (80, 6)])];
    let (last_lifted, today) = (Some(date(3)), Some(date(24)));
    let history = History { able: able(), times, last_lifted, date: today, ..History::default() };
    let (load, reason) = next(history, &percent(70)).remove(0);
    let full = (known().estimate().unwrap().low * 0.7 * 10.0).floor() / 10.0;
    assert_eq!(kg(&load), built(full * 0.9));
    assert!(matches!(reason, Reason::Percent { weeks: 3, .. }));
}

#[test]
fn without_a_set_that_says_how_near_the_end_it_was_the_load_stays_and_asks() {
    let times = vec![time(3, &[(60, 8), (60, 6), (60, 6)])];
    let history = History { times, ..History::default() };
    let (load, reason) = next(history, &reserve(2)).remove(0);
    let last = Mass::kg(60);
    assert_eq!((load.as_str(), reason), ("60 kg", Reason::SayReserve { last, reps: 8 }));
    assert_eq!(next(History::default(), &reserve(2))[0].1, Reason::FirstTime);
}

/// Another scheme of the same movement says what can be lifted: no hunting for a load then.
#[test]
fn the_step_rule_starts_a_new_scheme_from_known_strength() {
    let history = History { able: able(), date: Some(date(5)), ..History::default() };
    let loads = next_loads(&super::tests::rule(), &scheme(), &builds(), &history);
    let wanted = known().load_for(8, 2).unwrap().low;
    assert_eq!(kg(&loads[0].load.unwrap().to_string()), built(wanted));
    assert_eq!(loads[0].from, [record(50)]);
}
