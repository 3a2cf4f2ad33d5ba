//! A session on a full screen.

use std::time::Duration;

use holdfast_tests::athlete::Athlete;
use holdfast_tests::terminal::{Terminal, a_second_held};
use holdfast_tests::{EVERY_DAY, SMALL_PLAN, changed, run};

const ENTER: &str = "\r";
const UP: &str = "\x1b[A";
const ESC: &str = "\x1b";

#[test]
fn a_whole_session_is_logged_edited_and_undone() {
    let ana = Athlete::with_plan(SMALL_PLAN);
    let mut terminal = ana.session(80, 24);
    let screen = terminal.sees("set 1 of 3");
    // The day in order, the load to say, what to do about the bar, the keys.
    let order = ["Squat", "Corners", "Calves", "After", "finish"].map(|name| screen.find(name));
    assert!(order.iter().all(Option::is_some) && order.is_sorted(), "{screen}");
    assert!(screen.contains("Choose the load") && screen.contains("Enter"), "{screen}");
    assert!(screen.contains("Heavy sets need safety bars"), "{screen}");
    // Nothing lifted yet: the one key asks, and a digit begins the line at once.
    terminal.does(ENTER, "Log Back squat, set 1");
    terminal.does(ESC, "all keys");
    terminal.does("5", "> 5_");
    terminal.does("0 x 8, 3 left", "> 50 x 8, 3 left_");
    terminal.does(ENTER, "Saved: Squat set 1, 50 kg × 8, 3 left");
    // The rest runs by itself, with the next set and its reason beside it.
    let screen = terminal.sees("REST");
    assert!(screen.contains("set 2 of 3") && screen.contains("why: "), "{screen}");
    assert!(screen.contains("██"), "{screen}");
    // A press ends the rest; as planned then, with the load found from the first set. It asks how many
    // reps were left, and a number is the answer.
    terminal.does(ENTER, "Saved: rest ended");
    terminal.does(ENTER, "How many reps in reserve?");
    terminal.does("2", "> 2_");
    terminal.does(ENTER, "Saved: Squat set 2, ");
    // An odd load is saved and asked about; undone; logged again.
    terminal.sees("set 3 of 3");
    terminal.does("61 x 5", "> 61 x 5_");
    terminal.does(ENTER, "Really?");
    terminal.does("u", "Undone: Squat set 3");
    terminal.does("60x5", "> 60x5_");
    terminal.does(ENTER, "Squat set 3, 60 kg × 5");
    // The windows come next; up goes back to a set, and what is done is corrected there.
    terminal.sees("4 windows of 1 min");
    terminal.does(UP, "did 60 kg × 5");
    terminal.does(ENTER, "Correct Back squat, set 3");
    terminal.does("60 x 6, 1 left", "> 60 x 6, 1 left_");
    terminal.does(ENTER, "Squat set 3, 60 kg × 6");
    // A line that makes no sense says what would, and keeps what was typed.
    terminal.does("e", "Log Corners, window 1");
    terminal.does("x", "> x_");
    terminal.does(ENTER, "Not understood:");
    terminal.does("\x7f12 8", "> 12 8_");
    terminal.does(ENTER, "Corners window 1");
    let screen = terminal.sees("12 done, 8 s to spare");
    assert!(screen.contains("(rushed)"), "{screen}");
    terminal.does("s", "Corners: later");
    // The reading before, the hold by hand, the reading after.
    terminal.sees("knee to wall");
    terminal.does(ENTER, "Log Calves, knee to wall before the hold");
    terminal.does("10.5 11\r", "Saved: Calves before the hold, left 10.5 cm");
    terminal.sees("Start the clock");
    terminal.does("e", "Log Calves by hand");
    terminal.does("120 95", "> 120 95_");
    terminal.does(ENTER, "held left 2 min, right 1 min 35 s");
    terminal.does(ENTER, "Log Calves, knee to wall after the hold");
    terminal.does("11 11.5\r", "Finish with a rating");
    terminal.sees("Sweep the floor.");
    terminal.does(ENTER, "0 to 10?");
    terminal.does("11\r", "a rating from 0 to 10");
    terminal.does("\x7f\x7f7", "> 7_");
    terminal.does(ENTER, "FINISHED");
    terminal.types(ENTER);
    assert_eq!(terminal.ends(), 0);
    terminal.is_given_back();
    terminal.sees("Session finished and saved. The next exchange carries it to your coach.");
    let today = ana.today();
    assert_eq!(today["state"], "finished");
    let sets = ana.sets();
    assert_eq!(sets[0], ("50 kg".into(), 8));
    assert_eq!(sets[1].1, 6);
    assert_eq!(sets[2], ("60 kg".into(), 6));
    assert_eq!(today["pieces"][0]["kind"]["view"]["sets"][2]["done"]["reserve"], 1);
    assert_eq!(today["pieces"][1]["kind"]["view"]["windows"][0]["reps"], 12);
    assert_eq!(today["pieces"][2]["kind"]["view"]["sides"][1]["held"], 95_000);
    assert_eq!(
        today["pieces"][2]["kind"]["view"]["range"]["readings"].as_array().unwrap().len(),
        4
    );
}

#[test]
fn options_and_discomfort_come_with_their_reasons() {
    let ana = Athlete::with_plan(SMALL_PLAN);
    let mut terminal = ana.session(80, 24);
    terminal.sees("set 1 of 3");
    let screen = terminal.does("o", "Options for Squat");
    assert!(screen.contains("Squat to a box: low back"), "{screen}");
    assert!(screen.contains("the movement itself"), "{screen}");
    terminal.does(ENTER, "Saved: Squat, took Squat to a box (low back)");
    terminal.sees("taken: Squat to a box");
    // Discomfort: the place, how bad, and a sign that calls for help at once.
    terminal.does("d", "Squat: where does it hurt?");
    terminal.does("\x1b[B\x1b[B\x1b[B\x1b[B\x1b[B", "> low back");
    terminal.does(ENTER, "low back: how bad");
    terminal.does("4\r", "[ ] dark urine after training or days later");
    terminal.does("\x1b[B\x1b[B", "> [ ] numbness between the legs");
    terminal.does(" ", "> [x] numbness between the legs");
    let screen = terminal.does(ENTER, "EMERGENCY SIGN:");
    assert!(screen.contains("low back 4/10"), "{screen}");
    // It stands above everything, and beside the piece, until it is cleared.
    assert!(screen.contains("WARNING:") && screen.contains("Stop now and get emergency care"));
    assert!(screen.contains("Squat !"), "{screen}");
    terminal.does("c", "Clear which flag?");
    terminal.does(ENTER, "flag cleared");
    terminal.until("no flag", |screen| !screen.contains("EMERGENCY"));
    terminal.types("q");
    assert_eq!(terminal.ends(), 0);
    terminal.sees("Session left open. Your log is saved");
}

#[test]
fn the_clocks_run_pause_and_are_logged() {
    let ana = Athlete::with_plan(SMALL_PLAN);
    let mut terminal = ana.session(80, 24);
    terminal.sees("set 1 of 3");
    terminal.does("s", "Squat: later");
    // At another station than the first.
    terminal.does("w", "at which station?");
    terminal.does("\x1b[B", "> station 2: 10 × Press-up");
    let screen = terminal.does(ENTER, "GET READY");
    assert!(screen.contains("first: 10 × Press-up") && screen.contains("next: go"), "{screen}");
    // A press that bounces counts once: the clock is paused, and does not go on.
    terminal.types("pp");
    let screen = terminal.sees("counted once");
    assert!(screen.contains("PAUSED"), "{screen}");
    terminal.does("p", "GET READY");
    // Too early says so and logs nothing.
    terminal.does(ENTER, "The first window is next.");
    terminal.does("n", "WINDOW 1 OF 4");
    terminal.does("p", "PAUSED IN WINDOW 1");
    terminal.does(ENTER, "WINDOW 1 OF 4");
    let screen = terminal.does(ENTER, "Saved: Corners window 1, 10 done");
    // What was to spare was read off the clock.
    assert!(screen.contains("to spare"), "{screen}");
    // A second press cannot log a window that has not come.
    terminal.does(ENTER, "Window 1 is logged.");
    terminal.does("x", "Corners, clock stopped");
    terminal.does("s", "Corners: later");
    terminal.does("s", "reading before the hold: later");
    let screen = terminal.does(ENTER, "GET READY");
    assert!(screen.contains("left"), "{screen}");
    terminal.does("n", "HOLD");
    terminal.does("+", "Calves, 15 s more");
    assert_eq!(ana.today()["pieces"][2]["kind"]["view"]["clock"]["length"][0], 135_000);
    // Time of the hold is seen to pass before it is paused.
    terminal.until("a second held", a_second_held);
    terminal.does(ENTER, "PAUSED");
    terminal.does(ENTER, "HOLD");
    terminal.does("x", "STOPPED");
    terminal.does(ENTER, "Calves, held");
    terminal.types("\x03");
    assert_eq!(terminal.ends(), 0);
    terminal.is_given_back();
    let today = ana.today();
    assert_eq!(today["pieces"][1]["kind"]["view"]["windows"][0]["reps"], 10);
    let held = today["pieces"][2]["kind"]["view"]["sides"][0]["held"].as_i64().unwrap();
    assert!((1_000..120_000).contains(&held), "{held}");
}

#[test]
fn a_window_too_small_says_so_and_a_larger_one_is_used() {
    let ana = Athlete::with_plan(SMALL_PLAN);
    let mut terminal = ana.session(39, 10);
    let screen = terminal.sees("too small");
    assert!(screen.contains("39 × 10") && screen.contains("q leaves"), "{screen}");
    // A key that cannot be seen does nothing: the line it would open does not come after all.
    terminal.does("5", "Key ignored");
    terminal.resize(80, 24);
    let screen = terminal.sees("Choose the load");
    assert!(!screen.contains("set 1, 5") && !screen.contains("> 5"), "{screen}");
    // Larger uses room: the same line is not broken any more.
    terminal.does("50x8\r", "REST");
    let high = |screen: &str| screen.lines().filter(|line| line.contains("██")).count();
    let small = high(&terminal.sees("██"));
    terminal.resize(160, 50);
    terminal.until("bigger digits", |screen| high(screen) > small);
    terminal.resize(12, 3);
    // The rest is all there is room for.
    terminal.until("the rest in a line", |screen| screen.lines().next().is_some_and(is_rest));
    terminal.types("q");
    assert_eq!(terminal.ends(), 0);
    assert_eq!(ana.sets(), [("50 kg".to_owned(), 8)]);
}

/// `0:31 REST ...`
fn is_rest(line: &str) -> bool {
    line.split_once(':').is_some_and(|(minutes, rest)| {
        minutes.bytes().all(|byte| byte.is_ascii_digit())
            && rest.get(2..).is_some_and(|rest| rest.starts_with(" REST"))
    })
}

#[test]
fn without_colour_the_words_say_it_all() {
    let run = |environment: &[(&str, &str)]| {
        let ana = Athlete::with_plan(SMALL_PLAN);
        let args = ["session", "--day", "Any evening"];
        let mut terminal = Terminal::with(ana.home(), &args, 80, 24, environment);
        terminal.sees("set 1 of 3");
        terminal.does("d", "where does it hurt");
        terminal.does("\r", "how bad");
        terminal.does("5\r", "numbness between the legs");
        terminal.does("\r", "DISCOMFORT:");
        let screen = terminal.screen();
        (screen, terminal.coloured_cells())
    };
    let (with, coloured) = run(&[]);
    let (without, plain) = run(&[("NO_COLOR", "1")]);
    assert!(coloured > 0 && plain == 0, "{coloured} and {plain} coloured cells");
    // The same words at the same places.
    assert_eq!(with, without);
}

#[test]
fn plain_dumb_and_a_day_off_are_answered() {
    let ana = Athlete::with_plan(SMALL_PLAN);
    let args = ["session", "--plain", "--day", "Any evening"];
    let mut terminal = Terminal::run(ana.home(), &args, 80, 24);
    terminal.sees("Enter does what the line above it says.");
    terminal.does("50 x 8\r", "Squat set 1, 50 kg × 8");
    terminal.does("quit\r", "Session left open");
    assert_eq!(terminal.ends(), 0);
    assert!(!terminal.written().contains("\x1b[?1049h"), "no other screen");
    // `CI` asks for colours wherever something is built; a terminal that has none is not to get them.
    let dumb = [("TERM", "dumb"), ("CI", "true")];
    let mut terminal = Terminal::with(ana.home(), &["session"], 80, 24, &dumb);
    terminal.does("quit\r", "Session left open");
    assert_eq!(terminal.ends(), 0);
    assert!(!terminal.written().contains('\x1b'), "a dumb terminal gets plain lines");
    // No day on sundays to saturdays: the days can be chosen.
    assert!(SMALL_PLAN.contains(EVERY_DAY));
    let later = changed(SMALL_PLAN, "starts = 2026-11-02", "starts = 2199-12-30");
    let ana = Athlete::with_plan(&later);
    let mut terminal = Terminal::run(ana.home(), &["session"], 80, 24);
    terminal.sees("Train which day?");
    terminal.does(ENTER, "set 1 of 3");
    terminal.types("q");
    assert_eq!(terminal.ends(), 0);
}

/// Line by line the clock runs on while a line is awaited: what is typed goes to the window that runs
/// when it comes.
#[test]
fn a_line_goes_to_the_window_that_runs_when_it_is_typed() {
    let ana = Athlete::with_plan(&changed(SMALL_PLAN, "window = \"1 min\"", "window = \"12 s\""));
    let args = ["session", "--plain", "--day", "Any evening"];
    let mut terminal = Terminal::run(ana.home(), &args, 80, 24);
    terminal.sees("set 1 of 3");
    terminal.does("skip\r", "Corners, window 1 of 4");
    terminal.does("begin 2\r", "[Get ready, ");
    terminal.does("skip\r", "has started: log or stop it first");
    terminal.does("\r", "The first window is next.");
    terminal.does("next\r", "[Window 1 of 4, ");
    // A second session is told who has the home, which takes a while, and the clock goes on: nothing
    // new stands on this screen.
    let ran = run(ana.home(), &["session", "--plain"], "quit\n");
    assert!(!ran.fine && ran.err.contains("has this folder open"), "{ran:?}");
    std::thread::sleep(Duration::from_secs(8));
    terminal.does("\r", "Corners window 2");
    terminal.does("quit\r", "Session left open");
    assert_eq!(terminal.ends(), 0);
    let windows = &ana.today()["pieces"][1]["kind"]["view"]["windows"];
    assert!(windows[0]["reps"].is_null() && windows[1]["spare"].is_i64(), "{windows}");
    assert_eq!(windows[1]["station"], 1, "begun at the second of two");
}
