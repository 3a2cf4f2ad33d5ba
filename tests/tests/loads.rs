//! Loads as an athlete meets them: the first time, after weeks away, the day after.

use holdfast_core::Mass;
use holdfast_core::care::Place;
use holdfast_core::load::Reason;
use holdfast_core::session::{LoadView, PlateView, SessionScreen, Tap};
use holdfast_tests::taps::{begin, finish, flag, option, set, set_of, squat};
use holdfast_tests::train::squats;
use holdfast_tests::views::{build, change, flags, loads, per_side, piece, strength};
use holdfast_tests::{Crew, SMALL_PLAN, changed, seed_or};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

fn crew() -> Crew {
    Crew::start(SMALL_PLAN, &["Ines"]).unwrap()
}

/// Brzycki by hand: 50 kg for 8 with 2 left is 10 to failure; 6 with 2 left are 8: 50 * 29 / 27 =
/// 53.7, built as 52.5. 5 with 2 left are 7: 50 * 30 / 27 = 55.6, built as 55.
#[test]
fn a_first_time_finds_its_loads_in_a_few_sets() {
    let crew = crew();
    let ines = &crew.athletes[0];
    ines.go_to("2026-11-03");
    let screen = ines.tap(begin()).unwrap();
    assert_eq!(loads(&screen), [None; 3]);
    let screen = ines.tap(squat(None, Some(50), Some(8), Some(2))).unwrap();
    let half = |kg: i64| Mass { ten_ng: Mass::kg(kg).ten_ng / 2 };
    assert_eq!(loads(&screen), [None, Some(half(105)), Some(Mass::kg(55))]);
    let second = &strength(&screen).sets[1];
    let why = "first time: 50 kg × 8 with 2 left, so this should leave 2 in reserve";
    assert_eq!(second.why.as_deref(), Some(why));
    assert_eq!(second.from.len(), 1, "the set it is read from");
    // One tap takes the load that was found.
    let screen = ines.tap(set(None, None)).unwrap();
    assert_eq!(strength(&screen).sets[1].done.as_ref().unwrap().load, Some(half(105)));
    let Reason::SayReserve { last, reps } = strength(&screen).sets[2].reason else {
        panic!("{:?}", strength(&screen).sets[2])
    };
    assert_eq!((last, reps), (half(105), 6));
}

/// A first time has no set to the end: a load is being found. The next time it has, and pressing a key does not
/// count its reps.
#[test]
fn an_open_set_is_counted_from_the_second_time_on() {
    let crew = crew();
    let ines = &crew.athletes[0];
    ines.go_to("2026-11-03");
    let screen = ines.tap(begin()).unwrap();
    assert!(strength(&screen).sets.iter().all(|set| !set.open));
    for (set, load, reps) in [(1, 50, 8), (2, 60, 6), (3, 70, 5)] {
        ines.tap(squat(Some(set), Some(load), Some(reps), None)).unwrap();
    }
    ines.tap(finish(7, 60)).unwrap();
    ines.go_to("2026-11-05");
    let screen = ines.tap(begin()).unwrap();
    assert_eq!(strength(&screen).sets[2].reps_text, "5 or more");
    let error = ines.tap(set_of("Squat", Some(3), None, None)).unwrap_err();
    assert!(error.to_string().contains("This set is open. Enter how many"), "{error}");
}

/// Ten percent off 50, 60 and 70 kg is 45, 54 and 63; the plates build 45, 52.5 and 62.5.
#[test]
fn after_weeks_away_the_loads_are_lighter() {
    let plan = changed(SMALL_PLAN, "weeks = 2", "weeks = 8");
    let crew = Crew::start(&plan, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-03", &[(50, 8), (60, 6), (70, 9)]);
    ines.go_to("2026-11-23");
    let kg = |text: &str| Some(Mass::parse(text, None).unwrap());
    assert_eq!(loads(&ines.today().unwrap())[2], kg("70 kg"), "20 days: no step");
    let why = strength(&ines.today().unwrap()).sets[2].why.clone();
    assert_eq!(why.as_deref(), Some("no step up after 2 weeks away: 70 kg on Tue 3 Nov"));
    ines.go_to("2026-11-24");
    let screen = ines.today().unwrap();
    assert_eq!(loads(&screen), ["45 kg", "52.5 kg", "62.5 kg"].map(kg));
    let why = strength(&screen).sets[0].why.as_deref();
    assert_eq!(why, Some("10 % lighter after 3 weeks away: 50 kg on Tue 3 Nov"));
    // The coach sees the same proposal for that date.
    crew.exchange_all().unwrap();
    let board = crew.coach.holdfast.board("2026-11-24".parse().unwrap()).unwrap();
    assert_eq!(board.rows[0].proposals[0].next_text, "45 / 52.5 / 62.5 kg");
}

#[test]
fn hard_work_the_day_before_suggests_the_option_that_spares_it() {
    let crew = crew();
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-03", &[(50, 8), (60, 6), (70, 6)]);
    let suggested = |date: &str| {
        ines.go_to(date);
        let screen = ines.today().unwrap();
        let options = piece(&screen, "Squat").options.iter();
        options
            .map(|option| (option.key.clone(), option.suggested.clone(), option.from.len()))
            .collect::<Vec<_>>()
    };
    let said = "hard squat work the day before (3 sets): this spares it";
    let wanted = [("box-squat", None, 0), ("step-up", Some(said), 3)];
    let wanted = wanted.map(|(key, said, from)| (key.to_owned(), said.map(str::to_owned), from));
    assert_eq!(suggested("2026-11-04"), wanted);
    assert!(suggested("2026-11-05").iter().all(|(_, said, _)| said.is_none()), "a day between");
    // Two easy sets of a session that was rated easy are no reason.
    ines.go_to("2026-11-06");
    ines.tap(begin()).unwrap();
    ines.tap(squat(None, Some(40), Some(8), None)).unwrap();
    ines.tap(squat(None, Some(40), Some(6), None)).unwrap();
    ines.tap(finish(3, 20)).unwrap();
    assert!(suggested("2026-11-07").iter().all(|(_, said, _)| said.is_none()));
}

/// By hand: 45 kg, the end of the warm-up, is 12.5 a side, and the sets are 17.5, 22.5 and 27.5. With
/// two pairs of fives and no larger step of 5: a five on; a five off and a ten on, or a second five
/// on; and the other of the two. Four plates in all.
#[test]
fn the_bar_is_built_up_set_by_set_after_a_warm_up() {
    let crew = crew();
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-03", &[(50, 8), (60, 6), (70, 8)]);
    ines.go_to("2026-11-05");
    let before = ines.tap(begin()).unwrap();
    let warm_up: Vec<(LoadView, u32)> =
        strength(&before).warm_up.iter().map(|set| (set.load.clone().unwrap(), set.reps)).collect();
    assert_eq!(build(&warm_up[0].0).text, "empty bar");
    assert_eq!(build(&warm_up[0].0).short, None);
    assert!(warm_up.iter().is_sorted_by(|a, b| a.0.mass < b.0.mass && a.1 > b.1));
    assert!(warm_up.iter().all(|(load, _)| load.mass < Mass::kg(55)));
    let builds = |screen: &SessionScreen| {
        let loads = strength(screen).sets.iter().map(|set| set.load.clone().unwrap());
        loads.map(|load| (per_side(&load), change(&load).map(str::to_owned))).collect::<Vec<_>>()
    };
    let [first, second, third] = &builds(&before)[..] else { panic!() };
    for (side, kg) in [(first, 55), (second, 65), (third, 75)] {
        let plates: Mass = side.0.iter().copied().sum();
        assert_eq!(Mass::kg(20) + plates * 2, Mass::kg(kg));
    }
    let warm = per_side(&warm_up.last().unwrap().0);
    let moved = |from: &[Mass], to: &[Mass]| {
        let same = from.iter().zip(to).take_while(|(a, b)| a == b).count();
        from.len() + to.len() - 2 * same
    };
    let sides = [&warm, &first.0, &second.0, &third.0];
    let moves = sides.windows(2).map(|pair| moved(pair[0], pair[1]));
    assert_eq!(moves.sum::<usize>(), 10);
    assert_eq!(first.1.as_deref(), Some("take off 2.5 kg, put on 5 + 2.5 kg"));
    assert!(sides.iter().all(|side| side.is_sorted_by(|inner, outer| inner >= outer)));
    // What is on the bar does not change under the athlete's hands.
    let after = ines.tap(squat(None, Some(55), Some(8), None)).unwrap();
    assert!(strength(&after).warm_up.is_empty());
    let plates = |screen| builds(screen).into_iter().map(|(side, _)| side).collect::<Vec<_>>();
    assert_eq!(plates(&after), plates(&before));
}

/// What is on the bar is what was named with the last set: also after a load chosen by hand, and when pain
/// changes the loads. It is said for the set that comes next, and for no other.
#[test]
fn what_is_on_the_bar_is_said_after_any_set() {
    let crew = crew();
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-03", &[(50, 8), (60, 6), (70, 8)]);
    ines.go_to("2026-11-05");
    ines.tap(begin()).unwrap();
    let changes = |screen: &SessionScreen| {
        let loads = strength(screen).sets.iter().map(|set| set.load.clone().unwrap());
        loads.map(|load| change(&load).map(str::to_owned)).collect::<Vec<_>>()
    };
    // What is on the bar is known for the set that comes next, and for no other.
    let named =
        |screen: &SessionScreen| changes(screen).iter().map(Option::is_some).collect::<Vec<bool>>();
    assert_eq!(named(&ines.today().unwrap()), [true, false, false]);
    let screen = ines.tap(squat(None, Some(55), Some(8), None)).unwrap();
    assert_eq!(named(&screen), [false, true, false]);
    let screen = ines.tap(squat(None, Some(70), Some(6), None)).unwrap();
    // 55 kg was 10 + 5 + 2.5 a side; for 70 kg the light ones come off, and 10 + 5 go on.
    let put_on = changes(&screen)[2].clone();
    assert_eq!(put_on.as_deref(), Some("put on 2.5 kg"), "70 kg where 65 was proposed");
    assert_eq!(ines.open_again().unwrap().today(ines.now()).unwrap().pieces, screen.pieces);
    let screen = ines.tap(Tap::Undo).unwrap();
    assert_eq!(named(&screen), [false, true, false]);
    let screen = ines.tap(flag(Place::Knee, 3, &[])).unwrap();
    // The same loads as last time now: 60 kg after 55.
    let second = strength(&screen).sets[1].load.clone().unwrap();
    assert_eq!(second.mass, Mass::kg(60));
    assert_eq!(change(&second), Some("take off 2.5 + 5 kg, put on 10 kg"));
}

/// Whatever is lifted, and whatever hurts: what comes off and goes on leads from a bar with the load that was
/// lifted last to the load that is named next, heaviest inside.
#[test]
fn what_is_put_on_and_taken_off_leads_from_the_last_load_to_the_next() {
    let plan = changed(SMALL_PLAN, "reps = [8, 6, 5]", "reps = [8, 6, 5, 5, 5]");
    let long = "{ name = \"long bar\", mass = \"20 kg\" },";
    let plan =
        changed(&plan, long, &format!("{long} {{ name = \"short bar\", mass = \"15 kg\" }},"));
    let mut chance = ChaCha8Rng::seed_from_u64(seed_or(13));
    let (mut named, mut changed_bar) = (0, 0);
    for _ in 0..30 {
        let crew = Crew::start(&plan, &["Ines"]).unwrap();
        let ines = &crew.athletes[0];
        squats(ines, "2026-11-03", &[(50, 8), (60, 6), (70, 8), (70, 5), (70, 6)]);
        ines.go_to("2026-11-05");
        let mut screen = ines.tap(begin()).unwrap();
        for set in 0..4 {
            let by_hand = chance.random_bool(0.5).then(|| chance.random_range(8..60));
            let lifted = by_hand.map(|steps| Mass { ten_ng: Mass::kg(5).ten_ng / 2 * steps });
            let planned = strength(&screen).sets[set].load.as_ref().map(|load| load.mass);
            let tap = Tap::LogSet {
                piece: "Squat".into(),
                set: None,
                load: lifted,
                reps: Some(5),
                reserve: None,
            };
            screen = ines.tap(tap).unwrap();
            if chance.random_bool(0.2) {
                screen = ines.tap(flag(Place::Knee, 2, &[])).unwrap();
            }
            let mut empty = false;
            if chance.random_bool(0.2) {
                let bars = &strength(&screen).bars;
                let other = bars.iter().find(|bar| !bar.taken && bar.name != "pound bar").unwrap();
                let (piece, bar) = ("Squat".into(), other.name.clone());
                screen = ines.tap(Tap::TakeBar { piece, bar }).unwrap();
                (empty, changed_bar) = (true, changed_bar + 1);
            }
            let short = strength(&screen).bar.as_deref() == Some("short bar");
            let bar_alone = Mass::kg(if short { 15 } else { 20 });
            let load = strength(&screen).sets[set + 1].load.clone().unwrap();
            assert_eq!(bar_alone + per_side(&load).into_iter().sum::<Mass>() * 2, load.mass);
            let Some(change) = &load.change else {
                // A load below the empty bar has no plates to follow.
                assert!(lifted.is_some_and(|lifted| lifted < Mass::kg(20)), "{lifted:?}");
                continue;
            };
            named += 1;
            let of =
                |plates: &[PlateView]| plates.iter().map(|plate| plate.mass).collect::<Vec<_>>();
            let mut bar = per_side(&load);
            assert!(bar.is_sorted_by(|inner, outer| inner >= outer), "{bar:?}");
            let on = of(&change.on);
            assert_eq!(bar.split_off(bar.len() - on.len()), on);
            bar.extend(of(&change.off).iter().rev());
            assert!(bar.is_sorted_by(|inner, outer| inner >= outer), "{bar:?}");
            if empty {
                assert!(bar.is_empty(), "nothing lies on a bar that was just taken: {bar:?}");
            } else {
                let before = bar_alone + bar.iter().copied().sum::<Mass>() * 2;
                assert_eq!(Some(before), lifted.or(planned));
            }
        }
    }
    assert!(named > 60 && changed_bar > 10, "{named} {changed_bar}");
}

/// Pain in an option is shown at the movement too, and holds its loads where they are.
#[test]
fn a_flag_on_an_option_holds_the_movement_as_well() {
    let crew = crew();
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-03", &[(50, 8), (60, 6), (70, 6)]);
    ines.go_to("2026-11-04");
    ines.tap(begin()).unwrap();
    ines.tap(option(Some("box-squat"))).unwrap();
    let screen = ines.tap(flag(Place::Knee, 8, &[])).unwrap();
    let first = &strength(&screen).sets[0];
    assert!(matches!(first.reason, Reason::Withdrawn { .. }), "{first:?}");
    assert_eq!((first.load.as_ref(), first.load_text.as_str()), (None, "no load"));
    let screen = ines.tap(option(None)).unwrap();
    let [flag] = flags(&screen) else { panic!("the flag is in sight") };
    assert!(flag.text.starts_with("Squat to a box: knee 8/10"), "{}", flag.text);
    let advice = flag.advice.lines.join(" ");
    assert!(advice.contains("go no higher") && !advice.contains("this movement"), "{advice}");
    assert_eq!(loads(&screen), [50, 60, 70].map(|kg| Some(Mass::kg(kg))), "no step up");
}

/// Five reps of 60 kg say more than an open set of five with 40 kg: no estimate below what was done.
#[test]
fn an_estimate_below_what_was_just_lifted_is_not_shown() {
    let crew = crew();
    let ines = &crew.athletes[0];
    // A first time has no set to the end; the second one has.
    squats(ines, "2026-11-03", &[(60, 8), (60, 6), (40, 5)]);
    squats(ines, "2026-11-05", &[(60, 8), (60, 6), (40, 5)]);
    ines.go_to("2026-11-06");
    let able = strength(&ines.today().unwrap()).able.clone().unwrap();
    assert_eq!(able.max, None);
    assert_eq!(able.text, "count a set of three to six reps to see your max");
    // Without that set the same day has one.
    let crew = Crew::start(SMALL_PLAN, &["Yuki"]).unwrap();
    let yuki = &crew.athletes[0];
    squats(yuki, "2026-11-03", &[(60, 8), (60, 6), (60, 5)]);
    squats(yuki, "2026-11-05", &[(60, 8), (60, 6), (60, 9)]);
    yuki.go_to("2026-11-06");
    let able = strength(&yuki.today().unwrap()).able.clone().unwrap();
    let high = able.max.as_ref().unwrap().high;
    assert!(high > Mass::kg(72), "60 kg for 8 is a fifth less than once: {able:?}");
}
