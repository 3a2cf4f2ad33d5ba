//! The line-by-line session against the real core, on a clock that moves a second with each tap.

use holdfast_core::clock::Phase;
use holdfast_core::coach::Answer;
use holdfast_core::load::Decision;
use holdfast_core::session::{SessionScreen, SideView, Tap, Typed};
use holdfast_core::{Mass, Millis};
use holdfast_tests::taps::begin_day;
use holdfast_tests::train::squats;
use holdfast_tests::views::{hold, interval};
use holdfast_tests::{Crew, Device, SMALL_PLAN};

use super::{prompt, saved};
use crate::print;

/// An athlete in a session of the small plan.
struct Ana {
    crew: Crew,
}

impl Ana {
    fn new() -> Ana {
        let crew = Crew::start(SMALL_PLAN, &["Ana"]).unwrap();
        crew.athletes[0].tap(begin_day("Any evening")).unwrap();
        Ana { crew }
    }

    fn device(&self) -> &Device {
        &self.crew.athletes[0]
    }

    fn screen(&self) -> SessionScreen {
        self.device().today().unwrap()
    }

    /// What a line means now.
    fn read(&self, typed: &str) -> Result<Typed, String> {
        let now = self.device().now();
        self.device().holdfast.read_line(typed.into(), now).map_err(|error| error.to_string())
    }

    /// Types a line and gives what is said of its tap.
    fn types(&self, typed: &str) -> String {
        let Ok(Typed::Tap { tap }) = self.read(typed) else {
            panic!("{typed} is no tap: {:?}", self.read(typed))
        };
        let after = self.device().tap(tap).unwrap();
        saved(&after)
    }

    /// Puts so many things off.
    fn puts_off(&self, times: u32) {
        (0..times).for_each(|_| drop(self.types("skip")));
    }

    fn prompt(&self) -> String {
        prompt(&self.screen())
    }

    fn sides(&self) -> Vec<SideView> {
        hold(&self.screen()).sides.clone()
    }
}

#[test]
fn enter_logs_the_window_that_runs_with_what_is_to_spare() {
    let ana = Ana::new();
    ana.puts_off(1);
    ana.types("begin");
    assert!(ana.read("").unwrap_err().contains("Get ready"));
    assert!(ana.read("12").is_ok(), "what a line means is read, whether it can be done or not");
    ana.types("next");
    ana.device().pass(69_000);
    assert!(ana.prompt().contains("Corners, window 2 of 4"), "{}", ana.prompt());
    ana.types("");
    let screen = ana.screen();
    let view = interval(&screen);
    assert_eq!((view.windows[0].reps, view.windows[1].spare), (None, Some(Millis(50_000))));
    // The one that was forgotten comes back, but not by Enter alone while the other still runs.
    assert!(ana.prompt().contains("Corners, window 1 of 4"), "{}", ana.prompt());
    assert!(ana.read("").unwrap_err().contains("Window 2 is logged"));
    assert!(ana.types("window 1").contains("Corners window 1, 15 done"));
}

#[test]
fn windows_begin_at_a_station_and_sides_and_windows_can_be_skipped() {
    let ana = Ana::new();
    ana.puts_off(1);
    ana.types("begin 2");
    assert_eq!(interval(&ana.screen()).start_station, 2);
    assert!(ana.read("begin x").unwrap_err().contains("`begin 2`"));
    ana.types("next");
    let shown = ana.prompt();
    assert!(shown.contains("[Window 1 of 4, ") && shown.contains(", 60 s to go]"), "{shown}");
    ana.types("next");
    let shown = ana.prompt();
    assert!(shown.contains("[Window 2 of 4, ") && shown.contains(", 60 s to go]"), "{shown}");
}

#[test]
fn a_clock_is_not_left_behind() {
    let ana = Ana::new();
    let refused = |ana: &Ana| match ana.read("skip") {
        Ok(Typed::Tap { tap }) => ana.device().tap(tap).unwrap_err().to_string(),
        other => panic!("{other:?}"),
    };
    ana.puts_off(1);
    ana.types("begin");
    assert!(refused(&ana).contains("log or stop it first"));
    ana.types("stop");
    ana.puts_off(2);
    ana.types("");
    assert_eq!(hold(&ana.screen()).clock.as_ref().unwrap().phase, Phase::Ready);
    assert!(refused(&ana).contains("log or stop it first"));
    ana.types("stop");
    ana.types("begin");
    ana.device().pass(15_000);
    ana.types("stop");
    assert!(refused(&ana).contains("log or stop it first"), "seconds wait to be logged");
    ana.types("");
    assert!(ana.sides()[0].held.is_some());
}

#[test]
fn a_hold_is_told_with_its_sides_and_why_they_are_short() {
    let ana = Ana::new();
    ana.puts_off(3);
    ana.types("begin");
    for (typed, ms) in [("next", 11_000), ("next", 0), ("next", 4_000)] {
        ana.types(typed);
        ana.device().pass(ms);
    }
    ana.types("stop");
    ana.device().pass(39_359_000);
    assert!(ana.prompt().contains("[Stopped, 10 h 55 min ago]"), "{}", ana.prompt());
    let said = ana.types("");
    let wanted = "Calves, held left 12 s (stopped early), right 5 s (stopped early)";
    assert!(said.contains(wanted), "{said}");
    let sheet = print::sheet(&ana.screen());
    let wanted = "held: left 12 s (stopped early), right 5 s (stopped early)";
    assert!(sheet.contains(wanted), "{sheet}");
    assert!(ana.sides().iter().all(|side| side.short.is_some()));
}

#[test]
fn a_pause_in_a_switch_says_so() {
    let ana = Ana::new();
    ana.puts_off(3);
    for typed in ["begin", "next", "next", "pause"] {
        ana.types(typed);
    }
    let shown = ana.prompt();
    assert!(shown.contains("[Paused, before the right, 9 s to go]"), "{shown}");
}

#[test]
fn two_readings_are_told_apart_and_saved_together() {
    let ana = Ana::new();
    ana.puts_off(2);
    let said = ana.types("10.5 11");
    assert!(
        said.contains(
            "Calves before the hold, left 10.5 cm and Calves before the hold, right 11.0 cm"
        ),
        "{said}"
    );
    // One of two that cannot be: neither is saved.
    let other = Ana::new();
    other.puts_off(2);
    let Ok(Typed::Tap { tap: tap @ Tap::LogRange { .. } }) = other.read("10.5 99") else {
        panic!()
    };
    assert!(other.device().tap(tap).is_err());
    assert!(hold(&other.screen()).range.as_ref().unwrap().readings.is_empty());
}

#[test]
fn the_rest_says_where_its_length_comes_from_and_what_enter_does() {
    let ana = Ana::new();
    ana.types("50x8, 3 left");
    let shown = ana.prompt();
    assert!(shown.contains("rest: 2 min of 2 min to go (from the plan)"), "{shown}");
    assert!(shown.contains("Enter: End the rest."), "{shown}");
}

/// What is typed and not understood is never ignored in silence.
#[test]
fn what_makes_no_sense_is_an_error() {
    let ana = Ana::new();
    for typed in
        ["undo twice", "quit now", "flag knee", "flag knee 11", "finish 11", "option", "60"]
    {
        let read = ana.read(typed);
        assert!(read.is_err() || typed == "60", "{typed}: {read:?}");
    }
    let why = ana.read("flag knee 4 chestpain").unwrap_err();
    assert!(
        why.contains("\"chestpain\" is not an emergency sign") && why.contains("chest pain (c)")
    );
}

/// Before the bar is loaded the athlete reads that the coach went past what is usual, and the coach's words.
#[test]
fn an_answer_past_the_cap_is_said_before_the_set() {
    let crew = Crew::start(SMALL_PLAN, &["Ana"]).unwrap();
    let (ana, coach) = (&crew.athletes[0], &crew.coach);
    squats(ana, "2026-11-03", &[(50, 8), (60, 6), (70, 5)]);
    crew.exchange_all().unwrap();
    coach.go_to("2026-11-04");
    let page = coach.holdfast.member("Ana".into(), "2026-11-04".parse().unwrap()).unwrap();
    let asked = page.proposals[0].clone();
    let answer = Answer {
        person: page.person,
        exercise: asked.exercise,
        track: asked.track,
        anyway: true,
        decision: Decision::Change,
        loads: [60, 70, 90].map(Mass::kg).to_vec(),
        words: "Deep first.".into(),
    };
    coach.holdfast.answer(answer, coach.now()).unwrap();
    crew.exchange_all().unwrap();
    ana.go_to("2026-11-05");
    let shown = prompt(&ana.tap(begin_day("Any evening")).unwrap());
    assert!(shown.contains("  coach changed; last time 50 kg: \"Deep first.\"\n"), "{shown}");
    assert!(shown.contains("also: more than a tenth over 50 kg"), "{shown}");
}
