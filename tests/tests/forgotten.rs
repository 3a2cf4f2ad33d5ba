//! A session that was finished without a set that was done.

use holdfast_core::Mass;
use holdfast_core::session::{SessionState, Tap};
use holdfast_tests::taps::{begin, finish, squat};
use holdfast_tests::views::{loads, strength};
use holdfast_tests::{Crew, SMALL_PLAN};

/// Finished too early: the set that was forgotten is written the next day, into the same session, whose end is said
/// again.
#[test]
fn a_set_forgotten_in_a_finished_session_is_added_afterwards() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    ines.go_to("2026-11-05");
    ines.tap(begin()).unwrap();
    ines.tap(squat(None, Some(50), Some(8), None)).unwrap();
    ines.tap(squat(None, Some(60), Some(6), None)).unwrap();
    ines.tap(finish(7, 45)).unwrap();
    ines.go_to("2026-11-06");
    let screen =
        ines.tap(Tap::WriteAfterwards { date: "2026-11-05".parse().unwrap(), day: None }).unwrap();
    assert_eq!((screen.state, screen.afterwards), (SessionState::Running, true));
    assert_eq!(screen.saved_text.as_deref(), Some("written afterwards: Any evening, Thu 5 Nov"));
    assert_eq!(strength(&screen).sets.iter().filter(|set| set.done.is_some()).count(), 2);
    ines.tap(squat(None, Some(70), Some(5), None)).unwrap();
    ines.tap(finish(8, 60)).unwrap();
    let page = ines.holdfast.member("Ines".into(), "2026-11-06".parse().unwrap()).unwrap();
    assert_eq!(page.sessions.len(), 1);
    assert_eq!((page.sessions[0].rpe, page.sessions[0].minutes), (Some(8), Some(60)));
    let listed = ines.holdfast.sets(None, None, 1).unwrap();
    assert_eq!(listed.sessions[0].sets.len(), 3);
    // All made: they go up from there.
    ines.go_to("2026-11-07");
    let screen = ines.tap(begin()).unwrap();
    let half = |twice: i64| Some(Mass { ten_ng: Mass::kg(twice).ten_ng / 2 });
    assert_eq!(loads(&screen), [half(105), half(125), half(145)]);
}
