//! Where a device lives, and opening it.

use std::path::{Path, PathBuf};

use directories::ProjectDirs;
use holdfast_core::{Holdfast, HoldfastError, Thing};
use owo_colors::OwoColorize;

use crate::fault::{Fault, Outcome};
use crate::now::now;
use crate::print::harmless;
use crate::say;

/// The device's folder: as asked for, otherwise the system's data folder.
pub(crate) fn folder(asked: Option<PathBuf>) -> Outcome<PathBuf> {
    // An empty HOLDFAST_HOME says nothing.
    if let Some(asked) = asked.filter(|asked| !asked.as_os_str().is_empty()) {
        return Ok(asked);
    }
    let dirs = ProjectDirs::from("", "", "holdfast");
    let dirs = dirs.ok_or_else(|| Fault::Typed(say::fault::no_data_folder().into()))?;
    Ok(dirs.data_dir().to_path_buf())
}

/// The folder as the core takes it.
pub(crate) fn text(folder: &Path) -> Outcome<String> {
    let text = folder.to_str().map(str::to_owned);
    text.ok_or_else(|| Fault::at(folder, say::fault::home_not_utf8()))
}

/// Opens the device, speaks as its person chose unless a language was asked for, and says what had to be put right. Gives what it said.
pub(crate) fn open(folder: &Path, language_asked: bool) -> Outcome<(Holdfast, Option<String>)> {
    opened(folder, language_asked).map_err(|fault| match fault {
        Fault::Holdfast(HoldfastError::NotFound { what: Thing::Device, .. }) => {
            Fault::Typed(say::fault::not_set_up(folder.display()))
        }
        other => other,
    })
}

fn opened(folder: &Path, language_asked: bool) -> Outcome<(Holdfast, Option<String>)> {
    let holdfast = Holdfast::open(text(folder)?, now(), None)?;
    let who = holdfast.who()?;
    if let Some(language) = who.language.filter(|_| !language_asked) {
        catalogue::speak(language);
    }
    // Said in the language that is spoken by now.
    let told = if who.opening.is_some() { tell_repaired(&holdfast, None)? } else { None };
    Ok((holdfast, told))
}

/// Opens the device for what needs none and knows more with it, where somebody has started one. Where it cannot be
/// opened, that is said and no error.
pub(crate) fn open_if_there(
    asked: Option<PathBuf>,
    language_asked: bool,
) -> Option<(Holdfast, Option<String>)> {
    let folder = folder(asked).ok().filter(|folder| folder.exists())?;
    match opened(&folder, language_asked) {
        Ok(opened) => Some(opened),
        Err(Fault::Holdfast(HoldfastError::NotFound { what: Thing::Device, .. })) => None,
        Err(fault) => {
            anstream::eprintln!("{}", say::fault::checked_alone(harmless(&fault.to_string())));
            None
        }
    }
}

/// Says what had to be put right, unless that was told already. Gives what is told by now.
pub(crate) fn tell_repaired(holdfast: &Holdfast, told: Option<String>) -> Outcome<Option<String>> {
    let opening = holdfast.who()?.opening;
    if let Some(opening) = opening.as_ref().filter(|opening| told.as_ref() != Some(opening)) {
        anstream::eprintln!("{} {opening}", say::fault::repaired().yellow().bold());
    }
    Ok(opening)
}
