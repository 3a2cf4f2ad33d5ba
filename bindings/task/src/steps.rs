//! Steps, one after the other, each with its time.

use std::env;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::OnceLock;
use std::time::Instant;

/// What failed, and how to see it again.
pub(crate) type Done = Result<(), String>;

/// The repository's root: that of the checkout cargo runs in, which a copied program cannot know.
pub(crate) fn root() -> PathBuf {
    let here = env::var_os("CARGO_MANIFEST_DIR");
    let here = here.map_or_else(|| PathBuf::from(env!("CARGO_MANIFEST_DIR")), PathBuf::from);
    real(here.ancestors().nth(2).unwrap_or(&here))
}

/// Where cargo builds, as cargo itself says: a variable or a file of its own may have moved it.
pub(crate) fn target() -> PathBuf {
    static TARGET: OnceLock<PathBuf> = OnceLock::new();
    let target = || {
        let mut cargo = cargo_command();
        cargo.args(["metadata", "--no-deps", "--format-version", "1", "--locked"]);
        let said: serde_json::Value = serde_json::from_slice(&cargo.output().ok()?.stdout).ok()?;
        Some(PathBuf::from(said["target_directory"].as_str()?))
    };
    // Where cargo says nothing, the next step that runs it says why.
    let target = TARGET.get_or_init(|| target().unwrap_or_else(|| root().join("target")));
    let _ = fs::create_dir_all(target);
    real(target)
}

/// A folder by its own name, not by that of a link to it: Swift's root knows no link outside it.
fn real(folder: &Path) -> PathBuf {
    let real = if cfg!(unix) { fs::canonicalize(folder).ok() } else { None };
    real.unwrap_or_else(|| folder.to_path_buf())
}

/// Does one step, and says how long it took.
pub(crate) fn step(name: &str, run: impl FnOnce() -> Done) -> Done {
    eprintln!("== {name}");
    let start = Instant::now();
    run()?;
    eprintln!("== {name}: passed in {} s", start.elapsed().as_secs());
    Ok(())
}

/// Cargo, to be run in the repository's root.
pub(crate) fn cargo_command() -> Command {
    let mut cargo = Command::new(env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    cargo.current_dir(root());
    cargo
}

/// Runs cargo in the repository's root.
pub(crate) fn cargo(args: &[&str]) -> Done {
    run(cargo_command().args(args))
}

/// Runs a program to its end; a bad end is an error that says what ran.
pub(crate) fn run(command: &mut Command) -> Done {
    let name = command.get_program().to_string_lossy().into_owned();
    let status = command.status().map_err(|error| format!("{name} cannot be started: {error}"))?;
    if status.success() {
        return Ok(());
    }
    let args: Vec<_> = command.get_args().map(|arg| arg.to_string_lossy()).collect();
    Err(format!("{name} {} ({status})", args.join(" ")))
}

/// True when a program answers.
pub(crate) fn is_there(program: &str, arg: &str) -> bool {
    Command::new(program).arg(arg).output().is_ok_and(|output| output.status.success())
}

/// Installs Debian's packages, or says in one sentence why not.
pub(crate) fn install(packages: &[&str], otherwise: &str) -> Done {
    let list = packages.join(" ");
    if !is_there("apt-get", "--version") {
        return Err(format!("{list} cannot be installed here (no apt-get): {otherwise}"));
    }
    if !is_root() {
        return Err(format!("{list} can only be installed by root: {otherwise}"));
    }
    eprintln!("   installing {list}");
    let mut update = Command::new("apt-get");
    run(update.args(["update", "-qq"]))?;
    let mut install = Command::new("apt-get");
    install.env("DEBIAN_FRONTEND", "noninteractive");
    run(install.args(["install", "-y", "-qq", "--no-install-recommends"]).args(packages))
}

/// True for root.
pub(crate) fn is_root() -> bool {
    let output = Command::new("id").arg("-u").output();
    output.is_ok_and(|output| output.stdout.trim_ascii() == b"0")
}

/// Copies a file, making its folder.
pub(crate) fn copy(from: &Path, to: &Path) -> Done {
    let folder = to.parent().unwrap_or(to);
    fs::create_dir_all(folder)
        .and_then(|()| fs::copy(from, to).map(drop))
        .map_err(|error| format!("{} to {}: {error}", from.display(), to.display()))
}
