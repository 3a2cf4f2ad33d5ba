//! The real program in a pseudo-terminal: keys typed, the screen read as a terminal would show it.
//!
//! Nothing here sleeps for a time and hopes: each step waits for what must come to stand on the
//! screen, and only fails after a long while.

#![cfg(unix)]

mod ends;
mod hold;
mod session;

use std::collections::HashMap;
use std::io::{Read, Write};
use std::num::NonZeroU16;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant};

use holdfast_core::journal::Role;
use holdfast_tests::{Carrier, Device, program, run};
use portable_pty::{Child, CommandBuilder, MasterPty, PtySize, native_pty_system};

/// How long something may take to come to stand on the screen: a loaded machine is slow.
const LONG: Duration = Duration::from_secs(90);

/// Two presses of one key further apart than this are two.
const APART: Duration = Duration::from_millis(800);

/// A terminal with the program in it.
struct Terminal {
    pressed: HashMap<char, Instant>,
    master: Box<dyn MasterPty + Send>,
    child: Box<dyn Child + Send + Sync>,
    keys: Box<dyn Write + Send>,
    shown: Arc<Mutex<vt100::Parser>>,
    raw: Arc<Mutex<Vec<u8>>>,
}

impl Terminal {
    /// Runs the program in a terminal of so many columns and rows.
    fn run(home: &Path, args: &[&str], columns: u16, rows: u16) -> Terminal {
        Terminal::with(home, args, columns, rows, &[])
    }

    /// The same with more in its environment.
    fn with(
        home: &Path,
        args: &[&str],
        columns: u16,
        rows: u16,
        environment: &[(&str, &str)],
    ) -> Terminal {
        let size = PtySize { rows, cols: columns, pixel_width: 0, pixel_height: 0 };
        let pair = native_pty_system().openpty(size).unwrap();
        let child = pair.slave.spawn_command(command(home, args, environment)).unwrap();
        let keys = pair.master.take_writer().unwrap();
        let mut reader = pair.master.try_clone_reader().unwrap();
        let shown = Arc::new(Mutex::new(shown_in(columns, rows)));
        let raw = Arc::new(Mutex::new(Vec::new()));
        let (parser, bytes) = (Arc::clone(&shown), Arc::clone(&raw));
        std::thread::spawn(move || {
            let mut some = [0; 4096];
            while let Ok(read @ 1..) = reader.read(&mut some) {
                bytes.lock().unwrap().extend_from_slice(&some[..read]);
                parser.lock().unwrap().process(&some[..read]);
            }
        });
        Terminal { pressed: HashMap::new(), master: pair.master, child, keys, shown, raw }
    }

    /// Types. A lone key that does something is pressed as somebody does who means it: two at once
    /// would count as one.
    fn types(&mut self, keys: &str) {
        let lone = match keys {
            "\r" | " " => Some('\r'),
            "u" | "n" | "x" | "p" | "b" | "s" | "+" => keys.chars().next(),
            _ => None,
        };
        if let Some(last) = lone.and_then(|key| self.pressed.get(&key)) {
            std::thread::sleep(APART.saturating_sub(last.elapsed()));
        }
        if let Some(key) = lone.or(keys.ends_with('\r').then_some('\r')) {
            self.pressed.insert(key, Instant::now());
        }
        self.keys.write_all(keys.as_bytes()).unwrap();
        self.keys.flush().unwrap();
    }

    /// What stands on the screen.
    fn screen(&self) -> String {
        self.shown.lock().unwrap().screen().contents()
    }

    /// Every byte the program wrote, as text.
    fn written(&self) -> String {
        String::from_utf8_lossy(&self.raw.lock().unwrap()).into_owned()
    }

    /// Waits until the screen is as wanted and a whole frame stands there, and gives it.
    fn until(&self, what: &str, wanted: impl Fn(&str) -> bool) -> String {
        let begun = Instant::now();
        loop {
            let screen = self.screen();
            if wanted(&screen) {
                std::thread::sleep(Duration::from_millis(20));
                if self.screen() == screen {
                    return screen;
                }
            }
            assert!(begun.elapsed() < LONG, "{what} did not come; the screen:\n{screen}");
            std::thread::sleep(Duration::from_millis(10));
        }
    }

    /// Waits for a text on the screen, and gives the screen.
    fn sees(&self, text: &str) -> String {
        self.until(text, |screen| screen.contains(text))
    }

    /// Types, then waits for a text.
    fn does(&mut self, keys: &str, then: &str) -> String {
        self.types(keys);
        self.sees(then)
    }

    /// Makes the window so many columns and rows.
    fn resize(&self, columns: u16, rows: u16) {
        self.shown.lock().unwrap().screen_mut().set_size(cells(rows), cells(columns));
        let size = PtySize { rows, cols: columns, pixel_width: 0, pixel_height: 0 };
        self.master.resize(size).unwrap();
    }

    /// Sends a signal by its name.
    fn signal(&self, name: &str) {
        let id = self.child.process_id().unwrap().to_string();
        let sent = Command::new("kill").args(["-s", name, &id]).stderr(Stdio::null()).status();
        assert!(sent.unwrap().success());
    }

    /// Waits for the end, and gives the exit code.
    fn ends(&mut self) -> u32 {
        let begun = Instant::now();
        loop {
            if let Some(status) = self.child.try_wait().unwrap() {
                return status.exit_code();
            }
            assert!(begun.elapsed() < LONG, "it did not end; the screen:\n{}", self.screen());
            std::thread::sleep(Duration::from_millis(10));
        }
    }

    /// Checks that the terminal is as it was: the screen of before, a cursor, lines and echo.
    fn is_given_back(&self) {
        self.until("the screen of before", |_| {
            let shown = self.shown.lock().unwrap();
            !shown.screen().alternate_screen() && !shown.screen().hide_cursor()
        });
        let size = PtySize::default();
        let fresh = native_pty_system().openpty(size).unwrap();
        let flags = |master: &dyn MasterPty| {
            let modes = master.get_termios().unwrap();
            (modes.local_flags, modes.input_flags, modes.output_flags)
        };
        assert_eq!(flags(&*self.master), flags(&*fresh.master), "modes of the terminal");
    }
}

impl Drop for Terminal {
    fn drop(&mut self) {
        // A check that failed leaves nothing running.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

fn cells(count: u16) -> NonZeroU16 {
    NonZeroU16::new(count).unwrap()
}

/// An empty screen of so many columns and rows.
fn shown_in(columns: u16, rows: u16) -> vt100::Parser {
    vt100::Parser::new(cells(rows), cells(columns), 0)
}

fn command(home: &Path, args: &[&str], environment: &[(&str, &str)]) -> CommandBuilder {
    let mut command = CommandBuilder::new(program());
    command.arg("--home");
    command.arg(home);
    command.args(args);
    // Wherever the checks run: a home or colours that its own environment asks for are not to count.
    for name in ["HOLDFAST_HOME", "NO_COLOR", "CLICOLOR", "CLICOLOR_FORCE", "CI"] {
        command.env_remove(name);
    }
    command.env("TERM", "xterm-256color");
    command.env("TZ", "UTC");
    // No speech program of this machine's own is to talk while it is checked.
    command.env("PATH", "/nonexistent");
    for (name, value) in environment {
        command.env(name, value);
    }
    command
}

/// An athlete with a plan, in a folder that goes with it.
struct Athlete {
    folder: tempfile::TempDir,
}

impl Athlete {
    fn with_plan(plan: &str) -> Athlete {
        let folder = tempfile::tempdir().unwrap();
        let carrier = Carrier::new(folder.path().join("carrier"));
        let coach = Device::start(folder.path().join("coach"), "Maren", Role::Coach, 9).unwrap();
        coach.companion.publish("plan".into(), plan.as_bytes().to_vec(), coach.now()).unwrap();
        coach.exchange(&carrier).unwrap();
        let ana = Device::start(folder.path().join("ana"), "Ana", Role::Athlete, 1).unwrap();
        ana.exchange(&carrier).unwrap();
        ana.companion.close().unwrap();
        Athlete { folder }
    }

    fn home(&self) -> PathBuf {
        self.folder.path().join("ana")
    }

    /// The session's day, full-screen.
    fn session(&self, columns: u16, rows: u16) -> Terminal {
        Terminal::run(&self.home(), &["session", "--day", "Any evening"], columns, rows)
    }

    /// The same day as JSON, from another process.
    fn today(&self) -> serde_json::Value {
        let ran = run(&self.home(), &["today", "--json"], "");
        assert!(ran.fine, "{ran:?}");
        serde_json::from_str(&ran.out).unwrap()
    }

    /// What is logged of the first piece's sets: load in words and reps.
    fn sets(&self) -> Vec<(String, u64)> {
        let today = self.today();
        let sets = today["pieces"][0]["view"]["sets"].as_array().unwrap().clone();
        let done = sets.into_iter().map(|set| set["done"].clone()).filter(|done| !done.is_null());
        done.map(|done| {
            let load = done["load_text"].as_str().unwrap().to_owned();
            (load, done["reps"].as_u64().unwrap())
        })
        .collect()
    }
}
