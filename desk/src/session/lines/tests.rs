//! The line-by-line session against the real core, on a clock that moves a second with each tap.

use holdfast_core::companion::SideView;
use holdfast_tests::{Crew, Device, SMALL_PLAN};

use super::*;

/// An athlete in a session of the small plan.
struct Ana {
    crew: Crew,
    skipped: Skipped,
}

impl Ana {
    fn new() -> Ana {
        let crew = Crew::start(SMALL_PLAN, &["Ana"]).unwrap();
        crew.athletes[0].tap(Tap::Begin { day: Some("Any evening".into()) }).unwrap();
        Ana { crew, skipped: Skipped::default() }
    }

    fn device(&self) -> &Device {
        &self.crew.athletes[0]
    }

    fn screen(&self) -> SessionScreen {
        self.device().today().unwrap()
    }

    fn at(&self) -> Step {
        follow(&self.screen(), &self.skipped)
    }

    /// Passes over so many things.
    fn skips(&mut self, times: u32) {
        for _ in 0..times {
            self.skipped.add(&self.at());
        }
    }

    /// Types a line and gives what is said of its last tap.
    fn types(&self, typed: &str) -> String {
        let Ok(Line::Taps(taps)) = line::parse(typed, &self.at(), self.screen().unit) else {
            panic!("{typed} is no tap")
        };
        let told = taps.into_iter().map(|tap| {
            let after = self.device().tap(tap.clone()).unwrap();
            said(&tap, &after)
        });
        told.last().unwrap()
    }

    /// Why the piece at hand cannot be passed over.
    fn stays(&self) -> Option<&'static str> {
        step::stays(&self.screen(), &self.at())
    }

    fn prompt(&self) -> String {
        let (screen, at) = (self.screen(), self.at());
        asked(&screen, &at) + &prompt(&screen, &at)
    }

    fn sides(&self) -> Vec<SideView> {
        let PieceView::Hold { view } = &self.screen().pieces[2] else { panic!("no hold") };
        view.sides.clone()
    }
}

#[test]
fn enter_logs_the_window_that_runs_with_what_is_to_spare() {
    let mut ana = Ana::new();
    ana.skips(1);
    ana.types("begin");
    assert!(step::not_yet(&ana.screen(), &ana.at()).unwrap().contains("get ready"));
    ana.types("next");
    ana.device().pass(69_000);
    assert!(ana.prompt().contains("Corners, window 2 of 4"), "{}", ana.prompt());
    assert_eq!(step::not_yet(&ana.screen(), &ana.at()), None);
    ana.types("");
    let PieceView::Interval { view } = &ana.screen().pieces[1] else { panic!("no windows") };
    assert_eq!((view.windows[0].reps, view.windows[1].spare_ms), (None, Some(50_000)));
    // The one that was forgotten comes back, but not by Enter alone while the other still runs.
    assert!(ana.prompt().contains("Corners, window 1 of 4"), "{}", ana.prompt());
    let wait = step::not_yet(&ana.screen(), &ana.at()).unwrap();
    assert!(wait.starts_with("window 2 is logged; the next one comes. `window 1`"), "{wait}");
    assert_eq!(ana.types("window 1"), "Corners window 1");
}

#[test]
fn windows_begin_at_a_station_and_sides_and_windows_can_be_skipped() {
    let mut ana = Ana::new();
    ana.skips(1);
    ana.types("begin 2");
    let PieceView::Interval { view } = &ana.screen().pieces[1] else { panic!("no windows") };
    assert_eq!(view.start_station, 2);
    assert!(
        line::parse("begin x", &ana.at(), ana.screen().unit).unwrap_err().contains("`begin N`")
    );
    ana.types("next");
    assert!(ana.prompt().contains("[window 1, 60 s left]"), "{}", ana.prompt());
    ana.types("next");
    assert!(ana.prompt().contains("[window 2, 60 s left]"), "{}", ana.prompt());
}

#[test]
fn a_clock_is_not_left_behind_by_skip() {
    let mut ana = Ana::new();
    ana.skips(1);
    assert_eq!(ana.stays(), None, "windows without a clock");
    ana.types("begin");
    assert!(ana.stays().unwrap().contains("`stop` ends it"));
    ana.types("stop");
    assert_eq!(ana.stays(), None, "a clock that is over holds nobody");
    ana.skips(2);
    assert_eq!(ana.stays(), None, "a hold not begun");
    ana.types("");
    assert!(ana.stays().unwrap().contains("`stop` ends it"));
    ana.types("stop");
    assert_eq!(ana.stays(), None, "nothing was held");
    ana.types("begin");
    ana.device().pass(15_000);
    ana.types("stop");
    assert!(ana.stays().unwrap().contains("Enter logs what was held"));
    ana.types("");
    assert_eq!(ana.stays(), None, "it is logged");
}

#[test]
fn a_hold_is_told_with_its_sides_and_why_they_are_short() {
    let mut ana = Ana::new();
    ana.skips(3);
    ana.types("begin");
    for (typed, ms) in [("next", 11_000), ("next", 0), ("next", 4_000)] {
        ana.types(typed);
        ana.device().pass(ms);
    }
    ana.types("stop");
    ana.device().pass(39_359_000);
    assert!(ana.prompt().contains("[ended 10 h 55 min ago]"), "{}", ana.prompt());
    let said = ana.types("");
    assert_eq!(said, "Calves, held side 1 12 s (skipped), side 2 5 s (stopped early)");
    let sheet = print::sheet(&ana.screen());
    let wanted = "held side 1: 12 s (skipped), side 2: 5 s (stopped early)";
    assert!(sheet.contains(wanted), "{sheet}");
    assert!(ana.sides().iter().all(|side| !side.short_text.is_empty()));
}

#[test]
fn a_pause_in_a_switch_says_so() {
    let mut ana = Ana::new();
    ana.skips(3);
    for typed in ["begin", "next", "next", "pause"] {
        ana.types(typed);
    }
    let shown = ana.prompt();
    assert!(shown.contains("[paused, change to side 2, 9 s left]"), "{shown}");
    let PieceView::Hold { view } = &ana.screen().pieces[2] else { panic!("no hold") };
    let face = crate::full::clock::Face::of_hold(view.clock.as_ref().unwrap(), false);
    assert_eq!(
        (face.now.as_str(), face.about.as_str()),
        ("PAUSED", "in the switch to side 2 of 2")
    );
}

#[test]
fn two_readings_are_told_apart() {
    let mut ana = Ana::new();
    ana.skips(2);
    assert_eq!(ana.types("10.5 11"), "Calves, before side 2 11.0");
}

#[test]
fn the_rest_says_where_its_length_comes_from() {
    let ana = Ana::new();
    ana.types("50x8");
    let shown = ana.prompt();
    assert!(shown.contains("rest: 2 min of 2 min left, as the plan says"), "{shown}");
}
