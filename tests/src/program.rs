//! The real program.

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

/// The program `holdfast`, built with the profile the checks are built with.
///
/// # Panics
/// When it has not been built: the checks are run by `cargo task check`, which builds it first.
pub fn program() -> PathBuf {
    // The checks' own binary is in target/PROFILE/deps; the program is in target/PROFILE.
    let own = std::env::current_exe().unwrap_or_default();
    let folder = own.parent().and_then(Path::parent).unwrap_or(Path::new("."));
    let program = folder.join(format!("holdfast{}", std::env::consts::EXE_SUFFIX));
    assert!(
        program.exists(),
        "build it first: cargo build -p desk (looked for {})",
        program.display()
    );
    program
}

/// Runs the program on a home with some input, without colour.
///
/// # Panics
/// When it cannot be started.
#[must_use]
pub fn run(home: &Path, args: &[&str], input: &str) -> Ran {
    run_with(home, args, input, &[])
}

/// The same with more in its environment.
///
/// # Panics
/// As [`run`].
pub fn run_with(home: &Path, args: &[&str], input: &str, environment: &[(&str, &str)]) -> Ran {
    use std::io::Write;
    use std::process::Stdio;
    let mut child = Command::new(program())
        .arg("--home")
        .arg(home)
        .args(args)
        .env_remove("HOLDFAST_HOME")
        .env_remove("HOLDFAST_LANG")
        .env("LC_ALL", "C")
        .env("TZ", "UTC")
        .envs(environment.iter().copied())
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap_or_else(|error| panic!("the program cannot be started: {error}"));
    if let Some(mut stdin) = child.stdin.take() {
        // A program that ends early closes its input; what it printed tells why.
        let _ = stdin.write_all(input.as_bytes());
    }
    match child.wait_with_output() {
        Ok(output) => Ran::of(&output),
        Err(error) => panic!("the program did not end: {error}"),
    }
}

/// What a run printed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ran {
    /// Standard output.
    pub out: String,
    /// Standard error.
    pub err: String,
    /// True when it ended well.
    pub fine: bool,
}

impl Ran {
    pub(crate) fn of(output: &Output) -> Ran {
        let text = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
        Ran { out: text(&output.stdout), err: text(&output.stderr), fine: output.status.success() }
    }
}
