//! A session that nobody finished.

use holdfast_core::load::Reason;
use holdfast_core::session::SessionState;
use holdfast_tests::taps::{begin, squat};
use holdfast_tests::train::squats;
use holdfast_tests::views::{reps, strength};
use holdfast_tests::{Crew, SMALL_PLAN, changed};

/// Ten weeks later it goes on by nobody's hand: today is proposed, with the weeks away in it.
#[test]
fn a_session_left_open_for_weeks_is_not_gone_on_with() {
    let plan = changed(SMALL_PLAN, "weeks = 2", "weeks = 16");
    let crew = Crew::start(&plan, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-03", &[(50, 8), (60, 6), (70, 6)]);
    ines.go_to("2026-11-05");
    ines.tap(begin()).unwrap();
    ines.tap(squat(None, Some(50), Some(8), None)).unwrap();
    ines.go_to("2027-01-14");
    let screen = ines.today().unwrap();
    assert_eq!((screen.state, screen.date.to_string()), (SessionState::Ready, "2027-01-14".into()));
    let screen = ines.tap(begin()).unwrap();
    assert_eq!(reps(&screen), [None; 3]);
    assert!(matches!(strength(&screen).sets[0].reason, Reason::EasedIn { weeks: 10, .. }));
}
