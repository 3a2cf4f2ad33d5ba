//! However it ends: what was acknowledged is kept, and the terminal is given back.

use std::io::{Read, Write};
use std::time::{Duration, Instant};

use holdfast_tests::SMALL_PLAN;
use holdfast_tests::athlete::Athlete;
use holdfast_tests::terminal::{LONG, a_second_held, command, shown_in};
use portable_pty::{PtySize, native_pty_system};

#[test]
fn hang_up_terminate_and_interrupt_keep_all_and_give_the_terminal_back() {
    for (signal, code) in [("HUP", 129), ("TERM", 143), ("INT", 130)] {
        let ana = Athlete::with_plan(SMALL_PLAN);
        let mut terminal = ana.session(80, 24);
        terminal.sees("set 1 of 3");
        terminal.does("50x8\r", "Squat set 1, 50 kg × 8");
        terminal.signal(signal);
        assert_eq!(terminal.ends(), code, "SIG{signal}");
        terminal.is_given_back();
        assert_eq!(ana.sets(), [("50 kg".to_owned(), 8)], "SIG{signal}");
    }
}

/// The window is closed: the other end of the terminal goes away while the program draws. A terminal of
/// the checks cannot be closed so, as what reads it holds it open.
#[test]
fn a_closed_terminal_ends_the_program_and_keeps_all() {
    let ana = Athlete::with_plan(SMALL_PLAN);
    let size = PtySize { rows: 24, cols: 80, pixel_width: 0, pixel_height: 0 };
    let pair = native_pty_system().openpty(size).unwrap();
    let args = ["session", "--day", "Any evening"];
    let mut child = pair.slave.spawn_command(command(ana.home(), &args, &[])).unwrap();
    drop(pair.slave);
    let mut reader = pair.master.try_clone_reader().unwrap();
    let mut keys = pair.master.take_writer().unwrap();
    let mut shown = shown_in(80, 24);
    let mut sees = |text: &str| {
        let mut some = [0; 4096];
        while !shown.screen().contents().contains(text) {
            let read = reader.read(&mut some).unwrap();
            assert!(read > 0, "it ended before {text} was shown");
            shown.process(&some[..read]);
        }
    };
    sees("set 1 of 3");
    keys.write_all(b"50x8\r").unwrap();
    keys.flush().unwrap();
    sees("Squat set 1, 50 kg × 8");
    drop((reader, keys, pair.master));
    let begun = Instant::now();
    while child.try_wait().unwrap().is_none() {
        if begun.elapsed() > LONG {
            let _ = child.kill();
            panic!("it goes on without a terminal");
        }
        std::thread::sleep(Duration::from_millis(10));
    }
    assert_eq!(ana.sets(), [("50 kg".to_owned(), 8)]);
}

/// Killed again and again in the midst of a session: what a line called saved is there, and the
/// session goes on where it was.
#[test]
fn killed_in_mid_session_it_goes_on_with_all_that_was_acknowledged() {
    let ana = Athlete::with_plan(SMALL_PLAN);
    for (set, typed, then) in [
        (1, "50x8\r", "Squat set 1, 50 kg × 8"),
        (2, "55x6\r", "Squat set 2, 55 kg × 6"),
        (3, "60x5\r", "Squat set 3, 60 kg × 5"),
    ] {
        let mut terminal = ana.session(80, 24);
        terminal.sees(&format!("set {set} of 3"));
        terminal.does(typed, &format!("Saved: {then}"));
        terminal.signal("KILL");
        assert_ne!(terminal.ends(), 0);
        assert_eq!(ana.sets().len(), set);
    }
    let loads: Vec<String> = ana.sets().into_iter().map(|(load, _)| load).collect();
    assert_eq!(loads, ["50 kg", "55 kg", "60 kg"]);
    // A hold's clock runs on while nobody looks: killed, and right again.
    let mut terminal = ana.session(80, 24);
    terminal.sees("4 windows");
    terminal.does("s", "Corners: later");
    terminal.does("s", "reading before the hold: later");
    terminal.does("\r", "GET READY");
    terminal.does("n", "HOLD");
    terminal.until("a second held", a_second_held);
    terminal.signal("KILL");
    terminal.ends();
    let held = || {
        let today = ana.today();
        today["pieces"][2]["kind"]["view"]["clock"]["held"][0].as_i64().unwrap()
    };
    let first = held();
    let (begun, before) = (Instant::now(), first);
    assert!(before >= 1_000, "{before}");
    // What runs comes first, though the windows before it were only put off.
    let mut terminal = ana.session(80, 24);
    terminal.sees("HOLD");
    terminal.does("p", "PAUSED");
    let (after, passed) = (held(), begun.elapsed().as_millis() as i64);
    // Not a second lost while it was dead, and none made up.
    assert!(after > before && after <= before + passed + 1_000, "{before}, {after}, {passed}");
}
