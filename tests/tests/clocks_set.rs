//! A session whose phone's wall clock is set: nothing of it is hidden, and nothing is counted wrong.

use holdfast_core::Millis;
use holdfast_core::clock::{Act, Phase, WhyShort};
use holdfast_core::session::{SessionScreen, SessionState, Tap};
use holdfast_tests::taps::{begin, clock, held, rate, squat, window};
use holdfast_tests::views::{hold, hold_asks, hold_clock, interval_clock};
use holdfast_tests::{DAY, HOUR, MINUTE, Phone, SMALL_PLAN, at};

fn left_ms(screen: &SessionScreen) -> i64 {
    let clock = hold_clock(screen);
    assert_eq!((clock.phase, clock.paused), (Phase::Hold, false));
    clock.left.unwrap().0
}

/// The minutes of the session, read from what is exported.
fn minutes(phone: &Phone) -> u64 {
    let line = phone.journal().into_iter().rfind(|line| line.contains("\"minutes\":")).unwrap();
    let minutes = line.split("\"minutes\":").nth(1).unwrap();
    minutes.split(|letter: char| !letter.is_ascii_digit()).next().unwrap().parse().unwrap()
}

/// Within a boot the boot clock decides which session is open, whatever date the wall clock says.
#[test]
fn the_open_session_stays_in_sight_within_a_boot() {
    for set in [-2 * HOUR, -20 * HOUR, -DAY, 3 * DAY, 30 * DAY, -40 * 365 * DAY] {
        let mut phone = Phone::new(SMALL_PLAN);
        phone.calves(Act::Begin);
        phone.pass(25_000).set_wall(set).kill();
        let screen = phone.screen();
        assert_eq!(screen.state, SessionState::Running, "{set}");
        assert_eq!(left_ms(&screen), 100_000, "{set}");
        assert!(phone.refused(begin()).contains("is still open"), "{set}");
        // And with the clock right again.
        phone.set_wall(-set).pass(1_000).kill();
        assert_eq!(left_ms(&phone.screen()), 99_000, "{set}");
    }
    // Half a day on, whoever left it open went home.
    let mut phone = Phone::new(SMALL_PLAN);
    phone.pass(12 * HOUR - 1_000).set_wall(-30 * DAY);
    assert_eq!(phone.screen().state, SessionState::Running);
    phone.pass(1_000);
    assert_ne!(phone.screen().state, SessionState::Running);
}

/// After a reboot the wall clock is all there is; one that ran backwards was set, and the session that was
/// open is shown with its question.
#[test]
fn a_wall_clock_that_ran_backwards_over_a_reboot_hides_nothing() {
    for back in [HOUR, 20 * HOUR, 40 * 365 * DAY] {
        let mut phone = Phone::new(SMALL_PLAN);
        phone.calves(Act::Begin);
        phone.pass(25_000).reboot(-back);
        let screen = phone.screen();
        assert_eq!(screen.state, SessionState::Running, "{back}");
        assert!(hold_asks(&screen).contains("is unknown"), "{}", hold_asks(&screen));
        // What is logged from then on keeps it open by the new boot's clock.
        phone.tap(squat(None, Some(60), Some(8), Some(2)));
        phone.pass(HOUR).set_wall(5 * DAY);
        assert_eq!(phone.screen().state, SessionState::Running, "{back}");
    }
    let mut phone = Phone::new(SMALL_PLAN);
    phone.reboot(20 * HOUR);
    assert_ne!(phone.screen().state, SessionState::Running, "they went home");
}

#[test]
fn a_hold_logged_under_a_wrong_wall_clock_hides_no_later_rest() {
    let mut phone = Phone::new(SMALL_PLAN);
    phone.set_wall(HOUR / 2).tap(held(&[20_000, 20_000], None));
    phone.tap(window(None, Some(10), Some(5_000)));
    phone.set_wall(-HOUR / 2).pass(60_000).tap(squat(None, Some(60), Some(8), Some(2)));
    phone.pass(5_000);
    assert_eq!(phone.rest().rested, Some(Millis(5_000)));
    // What is done after the set still ends its rest.
    phone.set_wall(-HOUR).pass(1_000).tap(window(None, Some(10), Some(5_000)));
    assert!(phone.screen().rest.is_none());
}

#[test]
fn the_sessions_minutes_are_those_that_passed() {
    for set in [3 * HOUR, -HOUR / 3] {
        let mut phone = Phone::new(SMALL_PLAN);
        phone.pass(25 * MINUTE).set_wall(set).tap(rate(7));
        assert_eq!(minutes(&phone), 25, "{set}");
    }
    // Set back over a reboot: as long as was seen.
    let mut phone = Phone::new(SMALL_PLAN);
    phone.pass(12 * MINUTE).tap(squat(None, Some(60), Some(8), Some(2)));
    phone.reboot(-5 * HOUR).pass(60_000).tap(rate(7));
    assert_eq!(minutes(&phone), 12);
}

#[test]
fn a_side_that_was_not_held_is_logged_as_that() {
    let mut phone = Phone::new(SMALL_PLAN);
    phone.pass(HOUR);
    let sides = |screen: &SessionScreen| -> Vec<_> {
        let sides = &hold(screen).sides;
        sides.iter().map(|side| (side.held, side.held_text.clone().unwrap())).collect()
    };
    let screen = phone.tap(held(&[120_000, 0], Some("cramp")));
    let side = |held_ms, text: &str| (Some(Millis(held_ms)), text.to_owned());
    let (whole, none) = (side(120_000, "2 min"), side(0, "0 s (\"cramp\")"));
    assert_eq!(sides(&screen), [whole.clone(), none.clone()]);
    // A correction to nothing is one.
    let both = phone.tap(held(&[120_000, 120_000], None));
    assert_eq!(sides(&both), [whole.clone(), whole.clone()]);
    assert_eq!(sides(&phone.tap(held(&[120_000, 0], Some("cramp")))), [whole.clone(), none]);
    let skipped = side(0, "0 s (skipped)");
    assert_eq!(sides(&phone.tap(held(&[120_000, 0], None))), [whole, skipped]);
    // What was said of whole sides is kept too.
    let said = phone.tap(held(&[130_000, 120_000], Some("easy today")));
    assert_eq!(sides(&said)[0].1, "2 min 10 s (\"easy today\")");
    // By the clock: stopped in the first side, so the second was not held.
    let mut phone = Phone::new(SMALL_PLAN);
    phone.calves(Act::Begin);
    phone.pass(35_000).calves(Act::Stop);
    let screen = phone.tap(held(&[], None));
    let shorts: Vec<_> = hold(&screen).sides.iter().map(|side| (side.held, side.short)).collect();
    let stopped = Some(WhyShort::Stopped);
    assert_eq!(shorts, [(Some(Millis(30_000)), stopped), (Some(Millis(0)), stopped)]);
}

#[test]
fn seconds_by_hand_stop_the_clock_and_more_than_passed_is_asked_about() {
    let mut phone = Phone::new(SMALL_PLAN);
    phone.calves(Act::Begin);
    let screen = phone.pass(35_000).tap(held(&[20_000, 3_000], Some("cramp")));
    assert!(hold_clock(&screen).cues.is_empty(), "nothing rings any more");
    assert_eq!(hold(&screen).doubt, None);
    // One tap, so one step back: the clock runs again.
    let screen = phone.tap(Tap::Undo);
    assert_eq!(left_ms(&screen), 90_000);
    let screen = phone.pass(1_000).tap(held(&[120_000, 120_000], None));
    let doubt = "4 min held in all, only 36 s into the session";
    assert_eq!(hold(&screen).doubt.as_deref(), Some(doubt));
}

#[test]
fn finishing_logs_what_the_clocks_counted() {
    let mut phone = Phone::new(SMALL_PLAN);
    phone.calves(Act::Begin);
    phone.pass(35_000);
    phone.tap(clock("Corners", Act::Begin));
    let screen = phone.pass(1_000).tap(rate(7));
    assert_eq!(screen.state, SessionState::Finished);
    let held: Vec<_> = hold(&screen).sides.iter().map(|side| side.held).collect();
    assert_eq!(held, [Some(Millis(31_000)), Some(Millis(0))]);
    assert!(hold_clock(&screen).cues.is_empty(), "nothing counts on");
    assert!(interval_clock(&screen).cues.is_empty());
    // All of that is one step back. Rating it anew logs nothing twice.
    let again = phone.pass(1_000).tap(rate(6));
    assert_eq!(hold(&again).sides, hold(&screen).sides);
    phone.pass(1).tap(Tap::Undo);
    let screen = phone.pass(1).tap(Tap::Undo);
    assert_eq!(screen.state, SessionState::Running);
    assert_eq!(hold(&screen).sides[0].held, None);
}

/// Begun before midnight and finished after it, or finished under a wall clock set to another date: the end
/// stays in sight, and one step takes it back.
#[test]
fn a_session_finished_on_another_date_can_be_taken_back() {
    for set in [0, -2 * DAY, 3 * DAY, -40 * 365 * DAY] {
        let mut phone = Phone::begun(SMALL_PLAN, at("2026-11-03", 23));
        phone.pass(HOUR).set_wall(set).tap(squat(None, Some(60), Some(8), Some(2)));
        let screen = phone.pass(60_000).tap(rate(7));
        assert_eq!(screen.state, SessionState::Finished, "{set}");
        phone.pass(50 * MINUTE).kill();
        assert_eq!(phone.screen().state, SessionState::Finished, "{set}");
        assert_eq!(phone.tap(Tap::Undo).state, SessionState::Running, "{set}");
        phone.pass(1_000).tap(rate(7));
        // An hour on the new day has come.
        phone.pass(HOUR);
        assert_ne!(phone.screen().state, SessionState::Finished, "{set}");
    }
}
