//! Where a device lives, and opening it.

use std::path::{Path, PathBuf};

use directories::ProjectDirs;
use holdfast_core::Holdfast;
use owo_colors::OwoColorize;

use crate::fault::{Fault, Outcome};
use crate::now::now;

/// The device's folder: as asked for, otherwise the system's data folder.
pub(crate) fn folder(asked: Option<PathBuf>) -> Outcome<PathBuf> {
    // An empty HOLDFAST_HOME says nothing.
    if let Some(asked) = asked.filter(|asked| !asked.as_os_str().is_empty()) {
        return Ok(asked);
    }
    let dirs = ProjectDirs::from("", "", "holdfast");
    let dirs = dirs.ok_or_else(|| {
        Fault::Typed("this system names no data folder: say one with --home DIR".into())
    })?;
    Ok(dirs.data_dir().to_path_buf())
}

/// The folder as the core takes it.
pub(crate) fn text(folder: &Path) -> Outcome<String> {
    folder.to_str().map(str::to_owned).ok_or_else(|| Fault::File {
        path: folder.display().to_string(),
        reason: "the folder's name is not UTF-8; choose another with --home".into(),
    })
}

/// Opens the device, and says what had to be put right.
pub(crate) fn open(folder: &Path) -> Outcome<Holdfast> {
    let holdfast = Holdfast::open(text(folder)?, now())?;
    let opening = holdfast.who()?.opening;
    if let Some(opening) = opening {
        anstream::eprintln!("{} {opening}", "put right:".yellow().bold());
    }
    Ok(holdfast)
}
