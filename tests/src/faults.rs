//! The real program on a disk that fails: every file call can fail, fall short, or be the last one.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use crate::{Ran, program};

/// What happens to the n-th call.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum How {
    /// The process is killed before it.
    Before,
    /// It is done, and then the process is killed.
    After,
    /// It fails: the disk says it cannot.
    Eio,
    /// It fails: the disk is full.
    Full,
    /// Half of a write is done, and then the disk is full.
    Short,
}

impl How {
    /// Each of them.
    pub const ALL: [How; 5] = [How::Before, How::After, How::Eio, How::Full, How::Short];

    fn name(self) -> &'static str {
        match self {
            How::Before => "before",
            How::After => "after",
            How::Eio => "eio",
            How::Full => "enospc",
            How::Short => "short",
        }
    }
}

/// A fault: which call, of which kinds, and how.
#[derive(Clone, Copy, Debug)]
pub struct Fault<'a> {
    /// The call, counted from 1; 0 for none.
    pub at: u64,
    /// How it fails.
    pub how: How,
    /// The kinds that count, with commas; none for all that change something.
    pub kinds: Option<&'a str>,
}

/// The library that stands before the C library's file calls, on Linux.
///
/// # Panics
/// When it has not been built.
pub fn library() -> PathBuf {
    let library = program().with_file_name("libholdfast_faults.so");
    assert!(library.exists(), "build it first: cargo build -p holdfast-faults");
    library
}

/// Runs the program under a fault on the files below `root`. Says how many calls were counted.
///
/// # Panics
/// When it cannot be started.
pub fn run_under(
    library: &Path,
    root: &Path,
    args: &[&str],
    input: &str,
    fault: Fault<'_>,
) -> (Ran, u64) {
    use std::io::Write;
    let counted = root.with_extension("counted");
    let _ = fs::remove_file(&counted);
    let mut command = Command::new(program());
    command
        .args(args)
        .env_remove("HOLDFAST_HOME")
        .env_remove("HOLDFAST_LANG")
        .env("LC_ALL", "C")
        .env("TZ", "UTC")
        .env("LD_PRELOAD", library)
        .env("FAULTS_ROOT", root)
        .env("FAULTS_COUNT", &counted)
        .env("FAULTS_AT", fault.at.to_string())
        .env("FAULTS_HOW", fault.how.name())
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped());
    if let Some(kinds) = fault.kinds {
        command.env("FAULTS_KINDS", kinds);
    }
    let mut child = command.spawn().unwrap_or_else(|error| panic!("it cannot be started: {error}"));
    if let Some(mut stdin) = child.stdin.take() {
        // A program that ends early closes its input.
        let _ = stdin.write_all(input.as_bytes());
    }
    let output = child.wait_with_output().unwrap();
    let calls = fs::read_to_string(&counted).map_or(0, |lines| lines.lines().count() as u64);
    (Ran::of(&output), calls)
}

/// Copies a folder with all that is in it but the note where it lies: to the program it is the same home.
///
/// # Panics
/// When a file cannot be copied.
pub fn copy_all(from: &Path, to: &Path) {
    fs::create_dir_all(to).unwrap();
    for file in fs::read_dir(from).unwrap() {
        let file = file.unwrap();
        let there = to.join(file.file_name());
        if file.file_type().unwrap().is_dir() {
            copy_all(&file.path(), &there);
        } else if file.file_name() != "place" {
            fs::copy(file.path(), there).unwrap();
        }
    }
}
