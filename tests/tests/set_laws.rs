//! The fold is a function of the set of entries: order, repetition and partition do not matter.

use holdfast_core::care::Place;
use holdfast_core::coach::Answer;
use holdfast_core::exchange::CarriedFile;
use holdfast_core::journal::Role;
use holdfast_core::load::Decision;
use holdfast_core::session::Tap;
use holdfast_tests::pairing::pair;
use holdfast_tests::taps::{begin, begin_day, clear, finish, flag, kg, option, squat};
use holdfast_tests::train::{squats, three_squats};
use holdfast_tests::views::{flags, strength};
use holdfast_tests::{Carrier, Crew, DAY, Device, MINUTE, SMALL_PLAN, forged};
use proptest::prelude::*;

/// A crew that has trained, corrected, undone, flagged and been answered, in many small leaves.
fn trained() -> Crew {
    let crew = Crew::start(SMALL_PLAN, &["Ines", "Yuki"]).unwrap();
    let [ines, yuki] = [0, 1].map(|index| &crew.athletes[index]);
    for date in ["2026-11-03", "2026-11-05"] {
        squats(ines, date, &[(50, 8), (60, 6), (70, 6)]);
        yuki.go_to(date);
        yuki.tap(begin()).unwrap();
        yuki.tap(kg(40)).unwrap();
        yuki.holdfast.cut_leaves().unwrap();
        yuki.tap(squat(Some(1), None, Some(5), None)).unwrap();
        yuki.holdfast.cut_leaves().unwrap();
        yuki.tap(kg(45)).unwrap();
        yuki.tap(Tap::Undo).unwrap();
        yuki.tap(option(Some("box-squat"))).unwrap();
        yuki.tap(flag(Place::Hip, 2, &[])).unwrap();
        yuki.tap(finish(4, 20)).unwrap();
        crew.exchange_all().unwrap();
        let page = crew.coach.holdfast.member("Yuki".into(), date.parse().unwrap()).unwrap();
        let hip = page.discomfort.last().unwrap().flag;
        crew.coach.go_to(date);
        crew.coach.holdfast.clear_flag(page.person, hip, crew.coach.now()).unwrap();
        crew.exchange_all().unwrap();
    }
    crew
}

/// A device of the same crew that has only what it is given. Its own entry, its profile, is cut away from the
/// state it shows.
fn state_after(crew: &Crew, files: Vec<Vec<CarriedFile>>) -> String {
    let folder = tempfile::tempdir().unwrap();
    let device = Device::start(folder.path().join("new"), "New", Role::Athlete, 77).unwrap();
    pair(&crew.coach, &device, 77).unwrap();
    let own = device.holdfast.who().unwrap().person.to_string().replace('-', "").to_uppercase();
    for batch in files {
        device.take_in_unasked(batch).unwrap();
    }
    assert!(!device.holdfast.refold().unwrap(), "folding all again changed something");
    let state = device.holdfast.state_text().unwrap();
    let others = state.lines().filter(|line| !line.contains(&own));
    others.collect::<Vec<_>>().join("\n")
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, ..ProptestConfig::default() })]

    #[test]
    fn any_order_repetition_and_partition_gives_one_state(
        seeds in proptest::collection::vec((any::<u32>(), 1_usize..4, any::<bool>()), 40),
    ) {
        thread_local! {
            static TRAINED: (Crew, Vec<CarriedFile>, String) = {
                let crew = trained();
                let files = crew.carrier.files();
                let state = state_after(&crew, vec![files.clone()]);
                (crew, files, state)
            };
        }
        TRAINED.with(|(crew, files, wanted)| -> Result<(), TestCaseError> {
            prop_assert!(files.len() >= 12, "{} files", files.len());
            let mut shuffled: Vec<(u32, CarriedFile, bool)> = Vec::new();
            for (index, file) in files.iter().enumerate() {
                let (order, times, cut) = seeds[index % seeds.len()];
                for time in 0..times {
                    let key = order.wrapping_mul(time as u32 * 2 + 1).wrapping_add(index as u32);
                    shuffled.push((key, file.clone(), cut));
                }
            }
            shuffled.sort_by_key(|(key, _, _)| *key);
            let mut batches = vec![Vec::new()];
            for (_, file, cut) in shuffled {
                if cut {
                    batches.push(Vec::new());
                }
                batches.last_mut().unwrap().push(file);
            }
            let state = state_after(crew, batches);
            prop_assert_eq!(&state, wanted);
            Ok(())
        })?;
    }
}

/// Two copies of a carrier folder are both written to and then merged file by file, as a file
/// synchroniser or a copied stick would: nothing is lost.
#[test]
fn two_copies_of_the_carrier_merge_without_loss() {
    let crew = trained();
    let other = Carrier::new(crew.folder().join("stick"));
    crew.carrier.copy_to(&other);
    squats(&crew.athletes[0], "2026-11-06", &[(55, 8), (65, 6), (75, 5)]);
    crew.athletes[0].exchange(&crew.carrier).unwrap();
    squats(&crew.athletes[1], "2026-11-06", &[(40, 8), (45, 6), (50, 5)]);
    crew.athletes[1].exchange(&other).unwrap();
    other.copy_to(&crew.carrier);
    crew.exchange_all().unwrap();
    let date = "2026-11-06".parse().unwrap();
    for name in ["Ines", "Yuki"] {
        let page = crew.coach.holdfast.member(name.into(), date).unwrap();
        assert_eq!(page.sessions.last().unwrap().date, date, "{name}");
        assert_eq!(page.sessions.last().unwrap().sets, 3, "{name}");
    }
    let states: Vec<String> = crew
        .athletes
        .iter()
        .chain([&crew.coach])
        .map(|device| device.holdfast.state_text().unwrap())
        .collect();
    assert!(states.windows(2).all(|two| two[0] == two[1]), "every device folds to one state");
}

/// A member who never meets the coach is carried by another member.
#[test]
fn logs_travel_through_others() {
    let crew = Crew::start(SMALL_PLAN, &["Ines", "Yuki"]).unwrap();
    squats(&crew.athletes[0], "2026-11-03", &[(50, 8), (60, 6), (70, 6)]);
    let cellar = Carrier::new(crew.folder().join("cellar"));
    crew.athletes[0].exchange(&cellar).unwrap();
    crew.athletes[1].exchange(&cellar).unwrap();
    crew.athletes[1].exchange(&crew.carrier).unwrap();
    crew.coach.exchange(&crew.carrier).unwrap();
    let page = crew.coach.holdfast.member("Ines".into(), "2026-11-03".parse().unwrap()).unwrap();
    assert_eq!(page.sessions.len(), 1);
}

/// A third device's leaf can neither clear somebody's flag nor rule on their loads.
#[test]
fn nobody_but_the_athlete_and_a_coach_clears_or_rules() {
    let crew = Crew::start(SMALL_PLAN, &["Ines", "Yuki"]).unwrap();
    let [ines, yuki] = [0, 1].map(|index| &crew.athletes[index]);
    three_squats(ines, "2026-11-03");
    let screen = ines.tap(flag(Place::Hip, 6, &[])).unwrap();
    let flag = flags(&screen)[0].flag;
    ines.tap(finish(4, 20)).unwrap();
    crew.exchange_all().unwrap();
    // Yuki's own surface refuses, so her leaf is written as a hostile app would: by hand.
    let refused = yuki.tap_now(clear(flag)).unwrap_err();
    assert!(refused.to_string().contains("already cleared, or was never raised"), "{refused}");
    let who = yuki.holdfast.who().unwrap();
    let first = crew.carrier.leaves_of(yuki).remove(0);
    let text = String::from_utf8(first.content).unwrap();
    let header = text
        .lines()
        .next()
        .unwrap()
        .replace("\"sequence\":1", "\"sequence\":2")
        .replace("\"first\":1,\"last\":1", "\"first\":2,\"last\":2");
    let entry = format!(
        "{{\"v\":1,\"n\":2,\"hlc\":{{\"ms\":1794000000000,\"count\":0}},\
         \"t\":\"2026-11-03T20:00:00.000+00:00\",\"k\":\"clear\",\
         \"id\":\"01a1a291-0000-7000-8000-000000000001\",\"body\":{{\"flag\":\"{flag}\"}}}}"
    );
    let file = forged(who.device, 2, format!("{header}\n{entry}\n").into_bytes());
    let report = ines.take_in(&[file]).unwrap();
    assert_eq!(report.leaves, 1, "{report:?}");
    let screen = ines.today().unwrap();
    assert_eq!(flags(&screen).len(), 1, "still open");
}

/// A session, and an answer to it, under a clock a year ahead: what comes after them under the right clock
/// is later all the same.
#[test]
fn a_clock_a_year_ahead_is_no_reason_to_stay_in_front() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let (ines, coach) = (&crew.athletes[0], &crew.coach);
    let year = 365 * DAY;
    ines.set_wall(year);
    ines.tap(begin_day("Any evening")).unwrap();
    for (set, load, reps) in [(1, 50, 8), (2, 60, 6), (3, 70, 6)] {
        ines.tap(squat(Some(set), Some(load), Some(reps), None)).unwrap();
    }
    ines.tap(finish(7, 60)).unwrap();
    ines.set_wall(-year);
    squats(ines, "2026-11-05", &[(40, 8), (50, 6), (60, 6)]);
    ines.go_to("2026-11-07");
    ines.tap(begin()).unwrap();
    let why = strength(&ines.today().unwrap()).sets[2].why.clone().unwrap();
    assert!(why.contains("60 kg on Thu 5 Nov"), "{why}");
    ines.tap(finish(5, 1)).unwrap();
    crew.exchange_all().unwrap();
    // The coach answers under a clock of next year, sees it, sets the clock and answers again.
    let (person, at) = (ines.holdfast.who().unwrap().person, coach.now());
    let answer = |words: &str, decision| {
        let page = coach.holdfast.member(person.to_string(), at.date()).unwrap();
        let open = &page.proposals[0];
        let answer = Answer {
            person,
            exercise: open.exercise.clone(),
            track: open.track.clone(),
            anyway: false,
            decision,
            loads: Vec::new(),
            words: words.into(),
        };
        coach.holdfast.answer(answer, coach.now()).unwrap();
    };
    coach.set_wall(year);
    answer("too early", Decision::Refuse);
    coach.set_wall(-year);
    coach.pass(MINUTE);
    answer("the last word", Decision::Accept);
    crew.exchange_all().unwrap();
    ines.pass(DAY);
    let shown = serde_json::to_string(&ines.today().unwrap()).unwrap();
    assert!(shown.contains("the last word") && !shown.contains("too early"), "{shown}");
}
