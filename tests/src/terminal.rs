//! The real program in a pseudo-terminal: keys typed, the screen read as a terminal would show it.
//!
//! Nothing here sleeps for a time and hopes: each step waits for what must come to stand on the
//! screen, and only fails after a long while.

use std::io::{Read, Write};
use std::num::NonZeroU16;
use std::path::Path;
use std::process::{Command, Stdio};
use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant};

use portable_pty::{Child, CommandBuilder, MasterPty, PtySize, native_pty_system};

use crate::program;

/// How long something may take to come to stand on the screen: a loaded machine is slow.
pub const LONG: Duration = Duration::from_secs(90);

/// Two presses further apart than this are two.
const APART: Duration = Duration::from_millis(800);

/// A terminal with the program in it.
pub struct Terminal {
    pressed: Option<Instant>,
    master: Box<dyn MasterPty + Send>,
    child: Box<dyn Child + Send + Sync>,
    keys: Box<dyn Write + Send>,
    shown: Arc<Mutex<vt100::Parser>>,
    raw: Arc<Mutex<Vec<u8>>>,
}

impl Terminal {
    /// Runs the program in a terminal of so many columns and rows.
    ///
    /// # Panics
    /// When there is no terminal to be had.
    pub fn run(home: &Path, args: &[&str], columns: u16, rows: u16) -> Terminal {
        Terminal::with(home, args, columns, rows, &[])
    }

    /// The same with more in its environment.
    ///
    /// # Panics
    /// When there is no terminal to be had.
    pub fn with(
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
        Terminal { pressed: None, master: pair.master, child, keys, shown, raw }
    }

    /// Types. A lone key that does something is pressed as somebody does who means it: what comes at
    /// once after such a key would count as the same press.
    ///
    /// # Panics
    /// When the program takes no keys any more.
    pub fn types(&mut self, keys: &str) {
        let lone = matches!(keys, "\r" | " " | "u" | "n" | "x" | "p" | "b" | "s" | "m" | "+");
        if let Some(last) = self.pressed.filter(|_| lone) {
            std::thread::sleep(APART.saturating_sub(last.elapsed()));
        }
        if lone || keys.ends_with('\r') {
            self.pressed = Some(Instant::now());
        }
        self.keys.write_all(keys.as_bytes()).unwrap();
        self.keys.flush().unwrap();
    }

    /// What stands on the screen.
    ///
    /// # Panics
    /// When a reader of the screen panicked.
    pub fn screen(&self) -> String {
        self.shown.lock().unwrap().screen().contents()
    }

    /// How many cells stand in another colour than the terminal's own.
    ///
    /// # Panics
    /// When a reader of the screen panicked.
    pub fn coloured_cells(&self) -> usize {
        let shown = self.shown.lock().unwrap();
        let screen = shown.screen();
        let (rows, columns) = screen.size();
        let (rows, columns) = (rows.get(), columns.get());
        let cells = (0..rows).flat_map(|row| (0..columns).map(move |column| (row, column)));
        let coloured = |(row, column): &(u16, u16)| {
            let cell = screen.cell(*row, *column).unwrap();
            [cell.fgcolor(), cell.bgcolor()].iter().any(|found| *found != vt100::Color::Default)
        };
        cells.filter(coloured).count()
    }

    /// Every byte the program wrote, as text.
    ///
    /// # Panics
    /// When a reader of the screen panicked.
    pub fn written(&self) -> String {
        String::from_utf8_lossy(&self.raw.lock().unwrap()).into_owned()
    }

    /// Waits until the screen is as wanted and a whole frame stands there, and gives it.
    ///
    /// # Panics
    /// When it does not come.
    pub fn until(&self, what: &str, wanted: impl Fn(&str) -> bool) -> String {
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
    ///
    /// # Panics
    /// When it does not come.
    pub fn sees(&self, text: &str) -> String {
        self.until(text, |screen| screen.contains(text))
    }

    /// Types, then waits for a text.
    ///
    /// # Panics
    /// When it does not come.
    pub fn does(&mut self, keys: &str, then: &str) -> String {
        self.types(keys);
        self.sees(then)
    }

    /// Makes the window so many columns and rows.
    ///
    /// # Panics
    /// When the terminal is gone.
    pub fn resize(&self, columns: u16, rows: u16) {
        self.shown.lock().unwrap().screen_mut().set_size(cells(rows), cells(columns));
        let size = PtySize { rows, cols: columns, pixel_width: 0, pixel_height: 0 };
        self.master.resize(size).unwrap();
    }

    /// Sends a signal by its name.
    ///
    /// # Panics
    /// When the program is gone.
    pub fn signal(&self, name: &str) {
        let id = self.child.process_id().unwrap().to_string();
        let sent = Command::new("kill").args(["-s", name, &id]).stderr(Stdio::null()).status();
        assert!(sent.unwrap().success());
    }

    /// Waits for the end, and gives the exit code.
    ///
    /// # Panics
    /// When it goes on.
    pub fn ends(&mut self) -> u32 {
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
    ///
    /// # Panics
    /// When it is not.
    pub fn is_given_back(&self) {
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
///
/// # Panics
/// When one of them is none.
pub fn shown_in(columns: u16, rows: u16) -> vt100::Parser {
    vt100::Parser::new(cells(rows), cells(columns), 0)
}

/// The program with its arguments, in an environment that is the same everywhere.
pub fn command(home: &Path, args: &[&str], environment: &[(&str, &str)]) -> CommandBuilder {
    let mut command = CommandBuilder::new(program());
    command.arg("--home");
    command.arg(home);
    command.args(args);
    // Wherever the checks run: a home, a language or colours that its own environment asks for are not to
    // count.
    for name in ["HOLDFAST_HOME", "HOLDFAST_LANG", "NO_COLOR", "CLICOLOR", "CLICOLOR_FORCE", "CI"] {
        command.env_remove(name);
    }
    command.env("LC_ALL", "C");
    command.env("TERM", "xterm-256color");
    command.env("TZ", "UTC");
    // No speech program of this machine's own is to talk while it is checked.
    command.env("PATH", "/nonexistent");
    for (name, value) in environment {
        command.env(name, value);
    }
    command
}

/// True when a session's screen shows more than a second of side 1 held; which second is seen depends on
/// the machine.
pub fn a_second_held(screen: &str) -> bool {
    screen.contains("held: left") && !screen.contains("held: left 0:00")
}
