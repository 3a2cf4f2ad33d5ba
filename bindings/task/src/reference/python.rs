//! A Python of our own below `target`, with the packages the scripts compute with.

use std::fs;
use std::path::PathBuf;
use std::process::Command;

use crate::steps::{Done, install, is_there, root, run, target};

const OTHERWISE: &str = "install Python 3.11 or later with its venv module, then run this again";

/// The Python that has the packages.
pub(super) fn program() -> PathBuf {
    environment().join("bin/python")
}

fn environment() -> PathBuf {
    target().join("reference-venv")
}

/// Makes the environment and installs what is pinned, unless that has been done.
pub(super) fn packages() -> Done {
    let pinned = root().join("tests/reference/requirements.txt");
    let wanted =
        fs::read_to_string(&pinned).map_err(|error| format!("requirements.txt: {error}"))?;
    // Written last: an installation that was cut off is done again.
    let done = environment().join("installed.txt");
    let program = program();
    let works = is_there(&program.to_string_lossy(), "--version");
    if works && fs::read_to_string(&done).is_ok_and(|installed| installed == wanted) {
        return Ok(());
    }
    tools()?;
    let mut make = Command::new("python3");
    run(make.args(["-m", "venv", "--clear"]).arg(environment()))?;
    let mut pip = Command::new(&program);
    pip.args(["-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--requirement"]);
    run(pip.arg(&pinned)).map_err(|error| {
        format!(
            "the packages of tests/reference/requirements.txt cannot be installed; they need \
             Python 3.11 or later and a package index that can be reached: {error}"
        )
    })?;
    fs::write(&done, wanted).map_err(|error| format!("{}: {error}", done.display()))
}

/// Installs Python and what makes environments, where they are missing.
fn tools() -> Done {
    let has_venv = Command::new("python3").args(["-c", "import ensurepip, venv"]).output();
    if has_venv.is_ok_and(|output| output.status.success()) {
        return Ok(());
    }
    install(&["python3", "python3-venv"], OTHERWISE)
}
