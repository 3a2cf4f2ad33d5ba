//! A hold on its own: no plan, no home.

use std::fs;
use std::os::unix::fs::PermissionsExt;
use std::path::Path;

use holdfast_tests::run;
use holdfast_tests::terminal::{LONG, Terminal};

#[test]
fn it_runs_through_and_says_the_seconds_of_each_side() {
    let folder = tempfile::tempdir().unwrap();
    let home = folder.path().join("none");
    let args = ["hold", "3", "--sides", "2", "--ready", "1", "--switch", "1"];
    let mut terminal = Terminal::run(&home, &args, 80, 24);
    let screen = terminal.sees("HOLD");
    assert!(screen.contains("Stop if you feel sharp pain") && screen.contains("██"), "{screen}");
    assert!(screen.contains("pause") && screen.contains("stop"), "{screen}");
    assert_eq!(terminal.ends(), 0);
    terminal.is_given_back();
    terminal.sees("held: left 3 s, right 3 s");
    // Ready, go, switch, go, done: five bells, fewer where a slow machine gives two cues at once.
    assert!((1..=5).contains(&terminal.written().matches('\x07').count()));
    assert!(!home.exists(), "nothing is written");
}

#[test]
fn it_can_be_paused_skipped_and_stopped() {
    let folder = tempfile::tempdir().unwrap();
    let args = ["hold", "600", "--sides", "3", "--ready", "600", "--switch", "600", "--no-bell"];
    let mut terminal = Terminal::run(folder.path(), &args, 80, 24);
    terminal.sees("GET READY");
    terminal.does(" ", "PAUSED");
    terminal.does(" ", "GET READY");
    terminal.does("n", "side 1");
    terminal.sees("HOLD");
    terminal.does("n", "CHANGE SIDES");
    terminal.does("n", "side 2");
    terminal.types("x");
    assert_eq!(terminal.ends(), 0);
    let screen = terminal.sees("(stopped early)");
    assert!(screen.contains("(skipped)"), "{screen}");
    assert!(!terminal.written().contains('\x07'), "no bell was wanted");
}

#[test]
fn signals_give_the_terminal_back_and_say_what_was_held() {
    for (signal, code) in [("TERM", 143), ("HUP", 129)] {
        let folder = tempfile::tempdir().unwrap();
        let mut terminal = Terminal::run(folder.path(), &["hold", "600", "--ready", "0"], 80, 24);
        terminal.sees("HOLD");
        terminal.signal(signal);
        assert_eq!(terminal.ends(), code);
        terminal.is_given_back();
        terminal.sees("held: ");
    }
}

#[test]
fn a_tiny_window_still_counts() {
    let folder = tempfile::tempdir().unwrap();
    let mut terminal = Terminal::run(folder.path(), &["hold", "90", "--ready", "0"], 20, 5);
    terminal.until("digits of three rows", |screen| {
        screen.lines().filter(|line| line.contains(['█', '▀', '▄'])).count() == 3
    });
    // So low that only a line is left: the time stands in it, and what runs.
    terminal.resize(20, 1);
    terminal.until("one line with the time", |screen| {
        screen.starts_with("1:2") && screen.contains("HOLD")
    });
    terminal.resize(1, 1);
    terminal.resize(120, 40);
    terminal.sees("██");
    terminal.types("q");
    assert_eq!(terminal.ends(), 0);
}

#[test]
fn through_a_pipe_each_cue_is_a_line() {
    let folder = tempfile::tempdir().unwrap();
    let args = ["hold", "2", "--sides", "2", "--ready", "1", "--switch", "1"];
    let ran = run(folder.path(), &[&args[..], &["--contract", "1", "--relax", "1"]].concat(), "");
    assert!(ran.fine, "{ran:?}");
    let lines: Vec<&str> = ran.out.lines().collect();
    assert!(lines[0].starts_with("Stop if you feel sharp pain"), "{lines:?}");
    assert!(lines[1].starts_with("get ready"), "{lines:?}");
    let told = lines[1..].join("\n");
    assert_eq!(told.matches("push").count(), 2, "{told}");
    assert_eq!(told.matches("let go").count(), 2, "{told}");
    assert_eq!(told.matches("change sides").count(), 1, "{told}");
    assert_eq!(lines.last(), Some(&"held: left 2 s, right 2 s"));
    assert!(lines[lines.len() - 2].ends_with("done"), "{lines:?}");
    assert!(!ran.out.contains('\x1b') && !ran.out.contains('\x07'), "{:?}", ran.out);
}

#[test]
fn what_cannot_be_held_is_refused() {
    let wrong = |args: &[&str]| {
        let ran = run(Path::new("/nonexistent"), &[&["hold"], args].concat(), "");
        assert!(!ran.fine && ran.out.is_empty(), "{args:?}: {ran:?}");
        ran.err
    };
    for seconds in ["0", "-5", "1801", "99999999999", "soon", "2.5", ""] {
        let said = wrong(&[seconds]);
        assert!(said.contains("SECONDS"), "{seconds}: {said}");
    }
    assert!(wrong(&["0"]).contains("1 to 1800"));
    assert!(wrong(&[]).contains("SECONDS"));
    assert!(wrong(&["30", "--sides", "0"]).contains("--sides"));
    assert!(wrong(&["30", "--contract", "6"]).contains("--relax"));
    assert!(wrong(&["30", "--contract", "0", "--relax", "5"]).contains("--contract"));
    let said = wrong(&["30", "--contract", "60", "--relax", "5"]);
    assert!(said.contains("longer than the hold of 30 s"), "{said}");
}

/// Stand-ins for speech programs: what they are told is written down.
#[test]
fn cues_are_spoken_where_a_speech_program_is_there() {
    for speaker in ["spd-say", "espeak-ng"] {
        let folder = tempfile::tempdir().unwrap();
        let (bin, heard) = (folder.path().join("bin"), folder.path().join("heard"));
        fs::create_dir(&bin).unwrap();
        let script = format!("#!/bin/sh\necho \"$@\" >> '{}'\n", heard.display());
        fs::write(bin.join(speaker), script).unwrap();
        fs::set_permissions(bin.join(speaker), fs::Permissions::from_mode(0o755)).unwrap();
        let path = bin.display().to_string();
        let hold = |more: &[&str]| {
            let args = [&["hold", "2", "--ready", "0"], more].concat();
            let environment = [("PATH", path.as_str())];
            let mut terminal = Terminal::with(folder.path(), &args, 80, 24, &environment);
            assert_eq!(terminal.ends(), 0);
            terminal.sees("held: 2 s");
        };
        hold(&["--no-speech"]);
        assert!(!heard.exists(), "{speaker} spoke although it was off");
        hold(&[]);
        // Run without waiting, so the last word may come after the end.
        let begun = std::time::Instant::now();
        let told = || fs::read_to_string(&heard).unwrap_or_default();
        // A cue gives way to the next, so on a slow machine not each is heard.
        let heard = || told().contains("-- go") || told().contains("-- done");
        while !heard() && begun.elapsed() < LONG {
            std::thread::sleep(std::time::Duration::from_millis(10));
        }
        assert!(heard(), "{speaker}: {}", told());
    }
}
