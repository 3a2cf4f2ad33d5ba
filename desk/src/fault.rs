//! What went wrong, as a person should read it: what, where, what to do.

use std::io::ErrorKind;
use std::path::Path;
use std::process::ExitCode;

use holdfast_core::HoldfastError;
use owo_colors::OwoColorize;

use crate::print::harmless;
use crate::say;

/// Everything that ends a command early.
#[derive(Debug, thiserror::Error)]
pub(crate) enum Fault {
    /// The core said no.
    #[error(transparent)]
    Holdfast(#[from] HoldfastError),
    /// Something was not carried.
    #[error(transparent)]
    Carried(#[from] carry::Carried),
    /// A file or folder could not be read or written.
    #[error("{}", say::fault::file(path, reason))]
    File {
        /// Which.
        path: String,
        /// Why, and what to do.
        reason: String,
    },
    /// What stands after the program's name cannot be read.
    #[error("{0}")]
    Arguments(String),
    /// What was typed cannot be.
    #[error("{0}")]
    Typed(String),
    /// The reader of our output went away.
    #[error("{}", say::fault::output_closed())]
    Closed,
    /// A signal asked for the end.
    #[error("{}", say::fault::ended_by_signal(.0))]
    Signal(i32),
}

/// True where the folder that a file is in is there.
fn path_parent_exists(path: &str) -> bool {
    let folder = Path::new(path).parent().filter(|folder| !folder.as_os_str().is_empty());
    folder.is_none_or(Path::exists)
}

/// Result with the desk's own fault.
pub(crate) type Outcome<T = ()> = Result<T, Fault>;

impl Fault {
    /// A file or folder that is not as it must be.
    pub(crate) fn at(path: &Path, reason: &str) -> Fault {
        Fault::File { path: path.display().to_string(), reason: reason.into() }
    }

    /// Names the file of an I/O error.
    pub(crate) fn file(path: &Path) -> impl FnOnce(std::io::Error) -> Fault + use<> {
        let (path, there) = (path.display().to_string(), path.exists());
        let folder = path_parent_exists(&path);
        move |error: std::io::Error| {
            let reason = match error.kind() {
                ErrorKind::NotFound if !folder => say::fault::no_such_folder().to_owned(),
                ErrorKind::NotFound if !there => say::fault::no_such_file().to_owned(),
                ErrorKind::IsADirectory => say::fault::is_a_folder().to_owned(),
                ErrorKind::PermissionDenied => say::fault::not_allowed().to_owned(),
                _ => error.to_string(),
            };
            Fault::File { path, reason }
        }
    }

    /// What the program ends with: 128 and the signal where one ended it, and 2 where it was not called
    /// rightly, as shells have it.
    pub(crate) fn exit_code(&self) -> ExitCode {
        match self {
            Fault::Signal(signal) => {
                u8::try_from(128 + signal).map_or(ExitCode::FAILURE, ExitCode::from)
            }
            Fault::Arguments(_) => ExitCode::from(2),
            _ => ExitCode::FAILURE,
        }
    }

    /// Shows the fault on standard error.
    pub(crate) fn show(&self) {
        if let Fault::Holdfast(HoldfastError::Plan { source_name, problems }) = self {
            for problem in problems {
                let place = format!("{source_name}:{}:{}", problem.line, problem.column);
                let what = harmless(&problem.what);
                anstream::eprintln!("{}: {what}", place.bold());
                if !problem.help.is_empty() {
                    anstream::eprintln!("    {}", harmless(&problem.help).dimmed());
                }
            }
        }
        // Whoever sent a signal knows, and the terminal may be gone.
        if !matches!(self, Fault::Closed | Fault::Signal(_)) {
            let said = harmless(&self.to_string());
            anstream::eprintln!("{} {said}", say::fault::error().red().bold());
        }
    }
}
