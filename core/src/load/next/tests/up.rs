//! What looks upward: step, earned step, once more; and what neither easy weeks nor light days change.

use super::*;

#[test]
fn made_as_planned_every_set_goes_up_a_step() {
    let log = Log::new(climb()).did(&[("50", 8), ("60", 6), ("70", 5)]);
    assert_eq!(log.says(), "52.5 x 8, 62.5 x 6, 72.5 x 5+");
    let (last, by, on) = (kg("50"), kg("2.5"), day("2026-09-01"));
    assert_eq!(log.reason(1), Reason::Step { last, by, capped: false, on });
    assert_eq!(log.next()[0].from.len(), 3, "all sets decide");
}

#[test]
fn an_open_set_far_past_its_target_earns_the_larger_step() {
    let log = Log::new(climb()).did(&[("50", 8), ("60", 6), ("70", 7)]);
    assert_eq!(log.says(), "55 x 8, 65 x 6, 75 x 5+");
    assert!(matches!(log.reason(3), Reason::Earned { reps: 7, asked: 5, .. }));
    // A larger step that is smaller gives no less than the usual one.
    let mut odd = log;
    let earned_step = vec![Step { mass: kg("1.25"), unit: MassUnit::Kg }];
    odd.rule = LoadRule::Step(StepRule { earned_step, ..steps() });
    assert_eq!(odd.says(), "52.5 x 8, 62.5 x 6, 72.5 x 5+");
}

/// 70 kg was missed in the last six sessions, so at 70 kg only the usual step is earned.
#[test]
fn no_larger_step_where_the_load_was_missed_lately() {
    let log = Log::new(climb()).did(&[("50", 8), ("60", 6), ("70", 4)]);
    let log = log.did(&[("50", 8), ("60", 6), ("70", 7)]);
    assert_eq!(log.says(), "55 x 8, 65 x 6, 72.5 x 5+");
}

/// A tenth over 20 kg is 22 kg: the step of 2.5 is past it, whatever the plan says.
#[test]
fn no_step_goes_past_a_tenth() {
    let mut log = Log::new(straight(2, 5)).all_at("40", &[5, 5]);
    let step = vec![Step { mass: kg("5"), unit: MassUnit::Kg }];
    log.rule = LoadRule::Step(StepRule { step, ..steps() });
    assert_eq!(log.says(), "42.5 x 5, 42.5 x 5");
    assert!(matches!(log.reason(1), Reason::Step { capped: true, .. }));
}

/// After a miss the same loads are made once before they go up, unless two reps were to spare.
#[test]
fn not_long_after_a_miss_it_is_made_once_more() {
    let log = Log::new(straight(2, 5)).all_at("60", &[5, 4]).all_at("60", &[5, 5]);
    assert_eq!(log.says(), "60 x 5, 60 x 5");
    assert!(matches!(log.reason(1), Reason::OnceMore { .. }));
    let spare = Log::new(straight(2, 5)).all_at("60", &[5, 4]).all_at("60", &[5, 7]);
    assert_eq!(spare.says(), "62.5 x 5, 62.5 x 5");
    let twice = log.all_at("60", &[5, 5]);
    assert_eq!(twice.says(), "62.5 x 5, 62.5 x 5");
}

#[test]
fn a_set_less_than_asked_earns_no_step() {
    let log = Log::new(climb()).did(&[("50", 8), ("60", 6)]);
    assert_eq!(
        log.says(),
        "50 x 8, 60 x 6, 60 x 5+",
        "a set never logged carries the one before it"
    );
    assert!(matches!(log.reason(1), Reason::Unfinished { done: 2, of: 3, .. }));
}

/// A set in doubt proposes nothing: 675 kg for 67.5 leaves what was proposed for it.
#[test]
fn a_slip_of_the_finger_proposes_nothing() {
    let log = Log::new(climb()).did(&[("50", 8), ("60", 6), ("65", 5)]);
    let mut log = log.did(&[("52.5", 8), ("62.5", 6), ("675", 5)]);
    log.history.times[1].sets[2].counts = false;
    assert_eq!(log.says(), "52.5 x 8, 62.5 x 6, 65 x 5+");
    assert!(matches!(log.reason(3), Reason::InDoubt { set: 3, .. }));
}

#[test]
fn an_easy_week_and_a_light_day_change_nothing() {
    let log = Log::new(climb()).did(&[("50", 8), ("60", 6), ("70", 5)]).wait(4);
    let usual = log.says();
    let easy = log.easily(&[("30", 8), ("36", 6)]);
    assert_eq!(easy.says(), usual);
    let mut light = easy;
    let on = light.date();
    light.history.days.push(on);
    assert_eq!(light.wait(1).says(), usual);
}

/// In an easy week 40 % are taken off what would be proposed, and a set; nothing is taken to the end.
#[test]
fn an_easy_week_is_taken_from_the_proposal_of_the_day() {
    let log = Log::new(climb()).did(&[("50", 8), ("60", 6), ("70", 5)]);
    let easy = Easy { weeks: vec![2], percent: 40, sets: 1 };
    let next = next_loads(&log.rule, &log.scheme, &log.builds, &log.history, Some(&easy)).sets;
    let loads: Vec<Mass> = next.iter().filter_map(|next| next.load).collect();
    // 52.5 and 62.5 less 40 % are 31.5 and 37.5.
    assert_eq!(loads, [kg("30"), kg("37.5")]);
    assert!(next.iter().all(|next| !next.open));
    assert_eq!(next[0].reason, Reason::Easy { of: kg("52.5") });
}

#[test]
fn an_answer_replaces_what_is_proposed_until_it_is_trained() {
    let log = Log::new(climb()).did(&[("50", 8), ("60", 6), ("70", 5)]).ruled(&["50", "70", "90"]);
    assert_eq!(log.says(), "50 x 8, 70 x 6, 90 x 5+");
    let next = &log.next()[2];
    let over = Reason::OverTheCap { last: kg("70"), most: kg("77") };
    assert_eq!(next.others, [over], "what it goes past is said");
    // Four weeks later it raises nothing any more, but stays the most.
    let mut later = Log { ..log };
    for at in [7, 14, 21, 27] {
        later.history.days.push(day("2026-09-04") + Days::new(at));
    }
    later = later.wait(28);
    assert_eq!(later.says(), "50 x 8, 62.5 x 6, 72.5 x 5+");
    // Trained, it is not remembered: what was lifted counts like anything else.
    let used = later.did(&[("50", 8), ("62.5", 6), ("72.5", 5)]);
    assert_eq!(used.says(), "52.5 x 8, 65 x 6, 75 x 5+");
}

/// Fixed loads are as written; an easy week at 60 in between does not cancel the 100.
#[test]
fn the_coachs_own_loads_stand() {
    let mut log = Log::new(straight(2, 5));
    log.rule = LoadRule::Fixed { loads: vec![kg("100")] };
    let log = log.all_at("100", &[5, 5]).all_at("60", &[5, 5]);
    assert_eq!(log.says(), "100 x 5, 100 x 5");
    // A load nobody has come near is no more than a tenth over the heaviest.
    let mut far = log;
    far.rule = LoadRule::Fixed { loads: vec![kg("140")] };
    assert_eq!(far.says(), "110 x 5, 110 x 5");
    assert!(matches!(far.reason(1), Reason::FixedCapped { .. }));
}

/// 62.5 kg was proposed and 67.5 lifted, or typed: a tenth over 62.5 is 68.75, and nothing heavier is within it.
/// Made as proposed, it goes on.
#[test]
fn more_than_was_proposed_is_made_once_more_before_it_goes_up() {
    let log = Log::new(straight(2, 5)).all_at("60", &[5, 5]).all_at("67.5", &[5, 5]);
    assert_eq!(log.says(), "67.5 x 5, 67.5 x 5");
    assert!(matches!(log.reason(1), Reason::OnceMore { .. }));
    assert_eq!(log.next()[0].most, Some(kg("68.75")));
    assert_eq!(log.all_at("67.5", &[5, 5]).says(), "70 x 5, 70 x 5");
    let little = Log::new(straight(2, 5)).all_at("60", &[5, 5]).all_at("65", &[5, 5]);
    assert_eq!(little.says(), "67.5 x 5, 67.5 x 5");
}

/// Plates hang in steps of 1.25 kg: a step of 2.5 kg is taken at once, one of 5 kg no further. Of help in steps of 5 kg a step of 2.5 builds nothing: reps climb.
#[test]
fn what_hangs_on_a_body_goes_up_by_the_step_and_no_further_than_allowed() {
    let mut log = Log::new(straight(3, 6));
    let plates = [("1.25", 2), ("2.5", 2), ("5", 2)].map(|(mass, count)| (kg(mass), count));
    log.builds = Builds::added(&fixtures::kit("0", &plates), MassUnit::Kg);
    let log = log.did(&[("10", 6), ("10", 6), ("10", 6)]);
    assert_eq!(log.says(), "12.5 x 6, 12.5 x 6, 12.5 x 6");
    let step = vec![Step { mass: Mass::kg(5), unit: MassUnit::Kg }];
    let rule = LoadRule::Step(StepRule { step, ..steps() });
    assert_eq!(Log { rule, ..log }.says(), "12.5 x 6, 12.5 x 6, 12.5 x 6");
    let mut log = Log::new(straight(1, 6));
    let masses = [10, 15, 20, 25].map(Mass::kg).to_vec();
    log.builds = Builds::assisted(&crate::plan::Stack { unit: MassUnit::Kg, masses });
    let log = log.did(&[("-20", 6)]);
    assert_eq!(log.says(), "-20 x 7");
    let mut log = log;
    let step = vec![Step { mass: Mass::kg(5), unit: MassUnit::Kg }];
    log.rule = LoadRule::Step(StepRule { step, ..steps() });
    assert_eq!(log.did(&[("-20", 7)]).says(), "-15 x 6");
}

/// Dips with the bells and plates of a room: 7.5, 8, 8.75, 10 kg. The plan's 2.5 kg go up at once; where the room has
/// nothing so near it is the next pick, and a larger step is no more than 2.5 kg.
#[test]
fn added_load_takes_the_plans_step() {
    let hung = |masses: &[&str], step: &str| {
        let masses = masses.iter().map(|mass| kg(mass)).collect();
        let mut log = Log::new(straight(2, 6));
        log.builds = Builds::assisted(&crate::plan::Stack { unit: MassUnit::Kg, masses });
        let step = vec![Step { mass: kg(step), unit: MassUnit::Kg }];
        log.rule = LoadRule::Step(StepRule { step, earned_step: Vec::new(), ..steps() });
        log.all_at("-10", &[6, 6]).says()
    };
    let fine = ["10", "8.75", "8", "7.5", "5", "2.5"];
    assert_eq!(hung(&fine, "2.5"), "-7.5 x 6, -7.5 x 6");
    assert_eq!(hung(&fine, "7.5"), "-7.5 x 6, -7.5 x 6");
    assert_eq!(hung(&fine, "1.25"), "-8.75 x 6, -8.75 x 6");
    assert_eq!(hung(&["10", "5"], "5"), "-5 x 6, -5 x 6");
}
