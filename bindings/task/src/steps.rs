//! The steps of a check, one after the other, each with its time.

use std::env;
use std::path::PathBuf;
use std::process::Command;
use std::time::Instant;

use crate::licences;

/// What failed, and how to see it again.
pub(crate) type Done = Result<(), String>;

/// The repository's root.
pub(crate) fn root() -> PathBuf {
    PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/../.."))
}

/// Where cargo builds.
pub(crate) fn target() -> PathBuf {
    env::var_os("CARGO_TARGET_DIR").map_or_else(|| root().join("target"), PathBuf::from)
}

/// Every check of the Rust code.
pub(crate) fn rust() -> Done {
    step("formatting", || cargo(&["fmt", "--all", "--check"], &[]))?;
    step("licences", licences::check)?;
    step("lints", || {
        cargo(&["clippy", "--workspace", "--all-targets", "--locked", "--", "-D", "warnings"], &[])
    })?;
    step("documentation", || {
        let flags = [("RUSTDOCFLAGS", "-D warnings")];
        cargo(&["doc", "--workspace", "--no-deps", "--document-private-items", "--locked"], &flags)
    })?;
    // The command-line checks run the real program.
    step("program", || cargo(&["build", "--package", "desk", "--locked"], &[]))?;
    step("tests", || cargo(&["test", "--workspace", "--locked"], &[]))
}

fn step(name: &str, run: impl FnOnce() -> Done) -> Done {
    eprintln!("== {name}");
    let start = Instant::now();
    run()?;
    eprintln!("== {name}: passed in {} s", start.elapsed().as_secs());
    Ok(())
}

/// Runs cargo in the repository's root.
pub(crate) fn cargo(args: &[&str], vars: &[(&str, &str)]) -> Done {
    let cargo = env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let status = Command::new(cargo)
        .args(args)
        .envs(vars.iter().copied())
        .current_dir(root())
        .status()
        .map_err(|error| format!("cargo cannot be started: {error}"))?;
    if status.success() { Ok(()) } else { Err(format!("cargo {}", args.join(" "))) }
}
