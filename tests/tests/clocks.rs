//! Clocks through the surface, whatever happens to the phone: what is shown, asked and logged.

use holdfast_core::Millis;
use holdfast_core::clock::{Act, CueKind, Phase, Trust, WhyShort};
use holdfast_core::journal::RestAct;
use holdfast_core::load::RestBasis;
use holdfast_core::session::{Row, SessionScreen, Tap, WindowView};
use holdfast_tests::taps::{clock, clock_from, finish_unrated, held, squat, window};
use holdfast_tests::views::{hold, hold_asks, hold_clock, interval, interval_asks, interval_clock};
use holdfast_tests::{MINUTE, Phone, SMALL_PLAN, changed};

#[test]
fn a_hold_is_extended_cut_short_and_logged_with_the_reason() {
    let mut phone = Phone::new(SMALL_PLAN);
    assert!(phone.refused(clock("Calves", Act::Extend)).contains("No side is being held"));
    phone.calves(Act::Begin);
    // Ready 5 s, side one 120 s and 15 s more, switch 10 s, side two skipped after 30 s.
    phone.pass(65_000).calves(Act::Extend);
    phone.pass(75_000 + 10_000 + 30_000).calves(Act::Skip);
    let screen = phone.pass(2_000).tap(held(&[], Some("cramp in the foot")));
    let sides: Vec<_> = hold(&screen).sides.iter().map(|side| (side.held, side.short)).collect();
    assert_eq!(
        sides,
        [(Some(Millis(135_000)), None), (Some(Millis(30_000)), Some(WhyShort::Skipped))]
    );
    let texts = hold(&screen).sides.iter().map(|side| side.held_text.clone().unwrap());
    let wanted = ["2 min 15 s", "30 s (stopped early: \"cramp in the foot\")"];
    assert_eq!(texts.collect::<Vec<_>>(), wanted, "nothing is said of a whole side");
    // The clock was over, so nothing more happens to it, and a fresh start reads the same.
    assert_eq!(phone.kill().screen().pieces, screen.pieces);
    assert!(phone.refused(clock("Calves", Act::Extend)).contains("No side is being held"));
    assert!(phone.refused(clock("Corners", Act::Extend)).contains("the same length"));
    // By hand the athlete's word is all there is.
    let screen = phone.tap(held(&[50_000, 120_000], Some("the bell rang")));
    let first = hold(&screen).sides[0].clone();
    let said = Some("50 s (\"the bell rang\")");
    assert_eq!((first.short, first.held_text.as_deref()), (Some(WhyShort::Said), said));
    assert_eq!(hold(&screen).sides[1].short, None);
    let screen = phone.tap(held(&[50_000, 120_000], None));
    assert_eq!(hold(&screen).sides[0].short, None, "not said, so not known");
    assert!(phone.refused(held(&[50_000], Some("two\nlines"))).contains("line breaks"));
    assert!(phone.refused(held(&[50_000], Some("  "))).contains("characters"));
}

#[test]
fn a_side_is_extended_up_to_half_an_hour() {
    let mut phone = Phone::new(SMALL_PLAN);
    phone.calves(Act::Begin);
    phone.pass(6_000);
    // 2 min and 112 times 15 s are 30 min.
    (0..112).for_each(|_| drop(phone.calves(Act::Extend)));
    assert!(phone.refused(clock("Calves", Act::Extend)).contains("30 min at most"));
    let screen = phone.pass(5_000 + 30 * MINUTE + 10_000).tap(held(&[], None));
    let held: Vec<_> = hold(&screen).sides.iter().map(|side| side.held).collect();
    assert_eq!(held[0], Some(Millis(30 * MINUTE)));
}

#[test]
fn a_clock_that_ran_out_unseen_says_so_and_asks() {
    let mut phone = Phone::new(SMALL_PLAN);
    phone.calves(Act::Begin);
    assert_eq!(hold_asks(&phone.screen()), "");
    // Ran out after 255 s; the phone lay there four minutes more.
    phone.pass(255_000 + 4 * MINUTE);
    let screen = phone.screen();
    let asked = "Ran out 4 min ago. To log: 2 min and 2 min. Is that right?";
    assert_eq!(hold_asks(&screen), asked);
    let ended = hold_clock(&screen);
    assert_eq!((ended.phase, ended.over), (Phase::Done, Some(Millis(4 * MINUTE))));
    let screen = phone.tap(held(&[], None));
    assert_eq!(hold_asks(&screen), "Ran out 4 min ago. Logged: 2 min and 2 min.");

    phone.tap(clock("Corners", Act::Begin));
    phone.pass(10_000 + 4 * MINUTE + 2 * 60 * MINUTE);
    phone.tap(window(None, Some(15), Some(12_000)));
    let asked = "Ran out 2 h 0 min ago. 3 windows still to log, starting with 2.";
    assert_eq!(interval_asks(&phone.screen()), asked);
    // Beside the window to log it is asked as well, as long as there is one.
    let asks_beside = |window, phone: &Phone| {
        let row = Row::Window { piece: "Corners".into(), window };
        phone.choose(row).here.clock.and_then(|clock| clock.question)
    };
    assert_eq!(asks_beside(2, &phone).as_deref(), Some(asked));
    (2..5).for_each(|number| drop(phone.tap(window(Some(number), None, None))));
    assert_eq!(asks_beside(4, &phone), None);
    let finished = phone.tap(finish_unrated());
    assert_eq!((interval_asks(&finished), hold_asks(&finished)), ("", ""));
}

/// What nobody could give while the phone slept is told beside the clock that runs, until the next cue is
/// given.
#[test]
fn cues_that_went_by_unheard_are_told_until_the_next_is_given() {
    let went_by = |phone: &Phone| phone.screen().here.clock.unwrap().went_by;
    let told = |cues: &str| Some(format!("missed cues: {cues}"));
    let mut phone = Phone::new(SMALL_PLAN);
    phone.calves(Act::Begin);
    // Ready 5 s, halfway after 60 s, ten seconds before the end of two minutes.
    assert_eq!(went_by(&phone), None);
    phone.pass(70_000);
    assert_eq!(went_by(&phone), told("go; halfway"));
    phone.pass(10_000);
    assert_eq!(went_by(&phone), told("go; halfway"), "and stays");
    phone.pass(35_500);
    assert_eq!(went_by(&phone), None, "half a second late is not too late");
    // A start later nobody knows what was given: all since the last act is told, windows by name.
    phone.tap(clock("Calves", Act::Stop));
    phone.tap(held(&[], None));
    phone.tap(clock("Corners", Act::Begin));
    phone.pass(10_000 + MINUTE + 40_000).kill();
    assert_eq!(went_by(&phone), told("...; halfway; ten seconds; next, Press-up; halfway"));
}

#[test]
fn what_cannot_be_known_is_not_claimed_and_is_asked() {
    let mut phone = Phone::new(SMALL_PLAN);
    phone.calves(Act::Begin);
    phone.pass(5_000 + 20_000).calves(Act::Pause);
    phone.calves(Act::Resume);
    phone.pass(10_000).reboot(30_000);
    let trusted = phone.screen();
    assert_eq!(hold_clock(&trusted).held, [60_000, 0].map(Millis));
    let asked = hold_asks(&trusted);
    assert!(asked.contains("time was kept by its clock"), "{asked}");

    phone.set_wall(-45 * MINUTE);
    let unknown = phone.screen();
    let clock = hold_clock(&unknown);
    assert_eq!(clock.trust, Trust::Unknown);
    assert_eq!(clock.held, [20_000, 0].map(Millis));
    let asked = hold_asks(&unknown);
    assert!(asked.contains("is unknown. Counted: 20 s and 0 s."), "{asked}");
    let screen = phone.pass(5_000).tap(held(&[], None));
    let first = hold(&screen).sides[0].clone();
    assert_eq!((first.held, first.short), (Some(Millis(20_000)), Some(WhyShort::Unseen)));
    // The athlete knows better.
    let screen = phone.tap(held(&[120_000, 90_000], None));
    assert_eq!(hold(&screen).sides[1].held, Some(Millis(90_000)));
}

fn movements(screen: &SessionScreen) -> Vec<(u32, String, u32)> {
    let of = |window: &WindowView| (window.window, window.movement.clone(), window.station);
    interval(screen).windows.iter().map(of).collect()
}

#[test]
fn members_start_at_different_stations_and_go_round() {
    let mut phone = Phone::new(SMALL_PLAN);
    let view = interval(&phone.screen()).clone();
    assert_eq!(view.stations, ["15 × Bell swing, 16 kg", "10 × Press-up"]);
    assert_eq!((view.start_station, view.total), (1, Millis(4 * MINUTE)));
    assert!(phone.refused(clock_from("Corners", Act::Begin, Some(3))).contains("has 2 stations"));
    assert!(phone.refused(clock_from("Corners", Act::Begin, Some(0))).contains("no station 0"));
    assert!(phone.refused(clock_from("Calves", Act::Begin, Some(1))).contains("has no stations"));
    let screen = phone.tap(clock_from("Corners", Act::Begin, Some(2)));
    assert!(
        phone
            .refused(clock_from("Corners", Act::Pause, Some(2)))
            .contains("when you start the clock")
    );
    let [bell, press] = ["Bell swing", "Press-up"].map(str::to_owned);
    let round = [(1, press.clone(), 2), (2, bell.clone(), 1), (3, press, 2), (4, bell, 1)];
    assert_eq!(movements(&screen), round);
    let state = interval_clock(&screen);
    assert_eq!(state.ends_in, Some(Millis(10_000 + 4 * MINUTE)));
    let spoken: Vec<_> = state.cues.iter().map(|cue| cue.words.as_str()).collect();
    assert_eq!(spoken[..3], ["get ready", "go, Press-up", "halfway"]);
    assert!(spoken.contains(&"next, Bell swing"));
    // Killed and opened, started again: still at station two.
    phone.pass(10_000 + MINUTE + 1_000).kill();
    assert_eq!(movements(&phone.screen()), round);
    phone.reboot(4_000);
    let screen = phone.screen();
    let state = interval_clock(&screen);
    assert_eq!((state.phase, state.turn, state.left), (Phase::Window, 2, Some(Millis(55_000))));
    // What is logged is the station's.
    let screen = phone.tap(window(None, Some(10), Some(12_000)));
    assert_eq!((interval(&screen).windows[0].asked, interval(&screen).next_window), (10, Some(2)));
    // Begun again without saying where: where it was. At another the rest of the windows would be those of
    // the other movement, so what is logged is taken back first.
    phone.tap(clock("Corners", Act::Stop));
    assert_eq!(movements(&phone.tap(clock("Corners", Act::Begin))), round);
    phone.tap(clock("Corners", Act::Stop));
    let refused = phone.refused(clock_from("Corners", Act::Begin, Some(1)));
    assert!(refused.contains("Windows are logged from station 2 on"), "{refused}");
    assert_eq!(movements(&phone.tap(clock_from("Corners", Act::Begin, Some(2)))), round);
    let screen = phone.tap(window(Some(1), Some(9), None));
    let first = &interval(&screen).windows[0];
    assert_eq!((first.movement.as_str(), first.asked, first.reps), ("Press-up", 10, Some(9)));
}

#[test]
fn a_rushed_window_says_how_many_fewer_reps_leave_time() {
    let mut phone = Phone::new(SMALL_PLAN);
    // 56 s for 14 swings, 4 s each: 50 s hold 12. Press-ups with time to spare.
    phone.tap(window(None, Some(14), Some(4_000)));
    let screen = phone.tap(window(None, Some(10), Some(20_000)));
    let windows = &interval(&screen).windows;
    let rushed = windows[0].fewer.clone().unwrap();
    assert_eq!((rushed.pace, rushed.reps, rushed.fewer), (Millis(4_000), 12, 2));
    assert_eq!(rushed.words, "At this pace, 12 reps instead of 14 leave 10 s to change over.");
    assert_eq!(windows[1].fewer, None);
    // The next window there asks for 15.
    let next = windows[2].fewer.clone().unwrap();
    assert_eq!((next.reps, next.fewer, windows[2].reps), (12, 3, None));
    assert_eq!(windows[3].fewer, None, "another station, another pace");
}

#[test]
fn rest_begins_by_itself_has_one_cue_and_survives_everything() {
    let mut phone = Phone::new(SMALL_PLAN);
    assert_eq!(phone.screen().rest, None);
    let two = Millis(2 * MINUTE);
    let rest = phone.tap(squat(None, Some(60), Some(8), None)).rest.unwrap();
    assert_eq!((rest.set, rest.rested, rest.left), (1, Some(Millis(0)), Some(two)));
    assert_eq!((rest.basis, rest.suggested_text.as_str()), (RestBasis::Plan, "from the plan"));
    let cue = rest.cue.unwrap();
    assert_eq!((cue.due_in, cue.kind, cue.turn), (two, CueKind::RestOver, 2));
    assert_eq!(cue.words, "rest is over");
    assert_eq!(cue.due_boot_ms, phone.now().boot_ms + 2 * MINUTE);
    phone.pass(50_500).kill();
    assert_eq!(
        (phone.rest().left, phone.rest().words.as_str()),
        (Some(Millis(69_500)), "1 min 10 s of 2 min to go (from the plan)")
    );
    // A wall clock set back does nothing within a boot; a correction does not start it again.
    phone.set_wall(-9 * MINUTE).kill();
    assert_eq!(phone.rest().left, Some(Millis(69_500)));
    let rest = phone.tap(squat(Some(1), Some(60), Some(7), Some(1))).rest.unwrap();
    assert_eq!((rest.left, rest.trust), (Some(Millis(69_500)), Trust::Boot));
    phone.set_wall(9 * MINUTE);
    // Due at the very moment, and nothing after.
    phone.pass(69_500);
    assert_eq!(phone.rest().cue.unwrap().due_in, Millis(0));
    phone.pass(1);
    let over = phone.rest();
    assert_eq!((over.cue, over.left, over.over), (None, Some(Millis(0)), Some(Millis(1))));
    phone.reboot(60_000);
    let rest = phone.rest();
    assert_eq!((rest.rested, rest.trust), (Some(Millis(3 * MINUTE + 1)), Trust::Wall));
    assert!(
        rest.words
            .starts_with("3 min rested, 2 min suggested (from the plan). The device restarted"),
        "{}",
        rest.words
    );
    // Started again and set back: nothing is claimed.
    phone.set_wall(-60 * MINUTE);
    let rest = phone.rest();
    assert_eq!((rest.rested, rest.left, rest.cue, rest.trust), (None, None, None, Trust::Unknown));
    assert!(rest.words.contains("is unknown") && rest.words.contains("2 min suggested"));
    // A set logged now is the last one, though the wall clock puts it before the first.
    let rest = phone.tap(squat(None, Some(60), Some(6), None)).rest.unwrap();
    assert_eq!((rest.set, rest.rested, rest.trust), (2, Some(Millis(0)), Trust::Boot));
    phone.pass(10_000);
    assert_eq!((phone.rest().set, phone.rest().rested), (2, Some(Millis(10_000))));
}

#[test]
fn rest_ends_when_the_athlete_goes_on() {
    let mut phone = Phone::new(SMALL_PLAN);
    phone.tap(squat(None, Some(60), Some(8), None));
    phone.pass(20_000).calves(Act::Begin);
    assert_eq!(phone.screen().rest, None);
    // The begin taken back, the rest runs on as if nothing had been.
    phone.pass(1_000).tap(Tap::Undo);
    assert_eq!(phone.rest().rested, Some(Millis(21_000)));
    phone.pass(1_000).tap(squat(None, Some(60), Some(6), None));
    assert_eq!(phone.rest().set, 2);
    phone.pass(2_000).tap(Tap::Undo);
    assert_eq!(
        (phone.rest().set, phone.rest().rested),
        (1, Some(Millis(24_000))),
        "the first set's again"
    );
    phone.pass(1_000).tap(held(&[60_000, 60_000], None));
    assert_eq!(phone.screen().rest, None);
    // After the last set of the day there is nothing to rest for.
    phone.pass(1_000).tap(squat(None, Some(60), Some(6), None));
    assert_eq!(phone.rest().set, 2);
    phone.pass(1_000).tap(squat(None, Some(60), Some(5), None));
    assert_eq!(phone.screen().rest, None);
    phone.pass(1_000).tap(Tap::Undo);
    assert!(phone.screen().rest.is_some());
    // Nobody rests half an hour past the end.
    phone.pass(32 * MINUTE);
    assert_eq!(phone.screen().rest, None);
    phone.tap(squat(Some(3), Some(60), Some(5), None));
    phone.pass(1_000).tap(Tap::Undo);
    phone.tap(finish_unrated());
    assert_eq!(phone.screen().rest, None);
}

/// A rest is ended or made a minute longer; what comes next is no rest any more, and all of that outlives a
/// start.
#[test]
fn a_rest_is_ended_or_made_longer() {
    let mut phone = Phone::new(SMALL_PLAN);
    let act = |act| Tap::Rest { act };
    assert!(phone.refused(act(RestAct::End)).contains("No rest is running"));
    phone.tap(squat(None, Some(60), Some(8), None));
    for more in 1..=3 {
        let rest = phone.pass(1_000).tap(act(RestAct::Minute)).rest.unwrap();
        assert_eq!(rest.left, Some(Millis((2 + more) * MINUTE - more * 1_000)));
        assert_eq!(phone.kill().rest(), rest);
    }
    let ended = phone.pass(1_000).tap(act(RestAct::End));
    assert_eq!((ended.rest, ended.cues), (None, vec![]));
    assert_eq!(phone.kill().screen().rest, None);
    // Taken back it runs on; the next set's rest is its own.
    let rest = phone.pass(1_000).tap(Tap::Undo).rest.unwrap();
    assert_eq!(rest.left, Some(Millis(5 * MINUTE - 5_000)));
    let rest = phone.pass(1_000).tap(squat(None, Some(60), Some(6), None)).rest.unwrap();
    assert_eq!((rest.set, rest.left), (2, Some(Millis(2 * MINUTE))));
}

/// What cannot have been done yet is not logged.
#[test]
fn a_window_the_clock_has_not_reached_is_refused() {
    let mut phone = Phone::new(SMALL_PLAN);
    phone.tap(clock("Corners", Act::Begin));
    let to_come = |phone: &mut Phone, first: u32| {
        for number in first..=4 {
            let refused = phone.refused(window(Some(number), Some(5), Some(5_000)));
            let wanted = format!("Window {number} has not begun yet. Wait for it");
            assert!(refused.starts_with(&wanted), "{refused}");
        }
    };
    to_come(&mut phone, 1);
    assert_eq!(interval_clock(&phone.tap(clock("Corners", Act::Pause))).now, "Paused");
    to_come(&mut phone, 1);
    phone.tap(clock("Corners", Act::Resume));
    for running in 1..=4 {
        phone.pass(if running == 1 { 10_000 } else { MINUTE });
        to_come(&mut phone, running + 1);
        let paused = phone.tap(clock("Corners", Act::Pause));
        assert_eq!(interval_clock(&paused).now, format!("Paused in window {running}"));
        to_come(&mut phone, running + 1);
        phone.tap(clock("Corners", Act::Resume));
        phone.tap(window(Some(running), None, None));
    }
    // Without a clock the athlete's word is all there is.
    Phone::new(SMALL_PLAN).tap(window(Some(4), Some(5), None));
}

/// American College of Sports Medicine, abstracts of 2009 and 2002: 3 to 5 min for 1 to 6RM.
#[test]
fn where_the_plan_says_no_rest_the_published_range_does() {
    let mut phone = Phone::new(&changed(SMALL_PLAN, "  rest = \"2 min\"\n", ""));
    let mut suggested = |reps, reserve| {
        let rest =
            phone.pass(1_000).tap(squat(Some(1), Some(60), Some(reps), reserve)).rest.unwrap();
        (rest.suggested.0 / MINUTE, rest.most.0 / MINUTE, rest.basis)
    };
    let heavy = (3, 5, RestBasis::Published);
    let usual = (2, 2, RestBasis::Usual);
    // Reps done and reps left together are the repetition maximum.
    assert_eq!(suggested(6, Some(0)), heavy);
    assert_eq!(suggested(1, None), heavy);
    assert_eq!(suggested(4, Some(2)), heavy);
    assert_eq!(suggested(4, Some(3)), usual);
    assert_eq!(suggested(7, None), usual);
}

#[test]
fn plans_say_how_long_to_get_ready_and_to_switch() {
    let timed = changed(
        SMALL_PLAN,
        "  hold = \"2 min\"\n",
        "  hold = \"2 min\"\n  ready = \"0 s\"\n  switch = \"25 s\"\n",
    );
    let mut phone = Phone::new(&timed);
    let view = hold(&phone.screen()).clone();
    assert_eq!((view.ready, view.switch), (Millis(0), Millis(25_000)));
    phone.calves(Act::Begin);
    phone.pass(120_000 + 24_000);
    let screen = phone.screen();
    let state = hold_clock(&screen);
    assert_eq!((state.phase, state.turn, state.left), (Phase::Switch, 2, Some(Millis(1_000))));
    assert_eq!(state.about.as_deref(), Some("to the right"));
}
