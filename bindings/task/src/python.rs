//! Pythons of our own below `target`, each with the packages that its file of requirements pins.

use std::fs;
use std::path::PathBuf;
use std::process::Command;

use crate::steps::{Done, install, is_there, root, run};

const OTHERWISE: &str = "install Python 3.11 or later with its venv module, then run this again";

/// A Python with packages of its own.
pub(crate) struct Environment {
    /// Its folder.
    pub(crate) folder: PathBuf,
    /// The file that pins its packages, from the repository's root.
    pub(crate) requirements: &'static str,
}

impl Environment {
    /// The Python that has the packages.
    pub(crate) fn program(&self) -> PathBuf {
        self.folder.join("bin/python")
    }

    /// Makes the environment and installs what is pinned, unless that has been done.
    pub(crate) fn packages(&self) -> Done {
        let (pinned, named) = (root().join(self.requirements), self.requirements);
        let wanted = fs::read_to_string(&pinned).map_err(|error| format!("{named}: {error}"))?;
        // Written last: an installation that was cut off is done again.
        let done = self.folder.join("installed.txt");
        let program = self.program();
        let works = is_there(&program.to_string_lossy(), "--version");
        if works && fs::read_to_string(&done).is_ok_and(|installed| installed == wanted) {
            return Ok(());
        }
        tools()?;
        let mut make = Command::new("python3");
        run(make.args(["-m", "venv", "--clear"]).arg(&self.folder))?;
        let mut pip = Command::new(&program);
        pip.args(["-m", "pip", "install", "--quiet", "--disable-pip-version-check"]);
        run(pip.arg("--requirement").arg(&pinned)).map_err(|error| {
            format!(
                "the packages of {named} cannot be installed; they need Python 3.11 or later and a \
                 package index that can be reached: {error}"
            )
        })?;
        fs::write(&done, wanted).map_err(|error| format!("{}: {error}", done.display()))
    }
}

/// Installs Python and what makes environments, where they are missing.
fn tools() -> Done {
    let has_venv = Command::new("python3").args(["-c", "import ensurepip, venv"]).output();
    if has_venv.is_ok_and(|output| output.status.success()) {
        return Ok(());
    }
    install(&["python3", "python3-venv"], OTHERWISE)
}
