//! What can go wrong inside. The surface turns it into a few public variants in one place.

mod names;
mod shown;

use crate::plan::{Problem, keyword};
use crate::say;

pub(crate) use names::not_found;
#[cfg(feature = "ffi")]
pub(crate) use names::{not_a_date, not_an_identity};
pub(crate) use shown::{shown, shown_to};

/// Result with the core's own error.
pub(crate) type Result<T> = std::result::Result<T, Error>;

keyword! {
    /// Which part of what was given cannot be.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    Field {
        Bar = "bar",
        Chance = "chance",
        Clock = "clock",
        Crew = "crew",
        Date = "date",
        Day = "day",
        DeviceClock = "device clock",
        Exchange = "exchange",
        Flag = "flag",
        Home = "home",
        Identity = "identity",
        Keystore = "keystore",
        Load = "load",
        Loads = "loads",
        Measure = "measure",
        Minutes = "minutes",
        Movement = "movement",
        Name = "name",
        Pairing = "pairing",
        Piece = "piece",
        Range = "range",
        Recovery = "recovery code",
        Rest = "rest",
        Reps = "reps",
        Reserve = "reps in reserve",
        Role = "role",
        Rpe = "session RPE",
        Said = "what was said",
        Seconds = "seconds",
        Session = "session",
        Set = "set",
        Severity = "severity",
        Side = "side",
        Spare = "to spare",
        Station = "station",
        Text = "text",
        Undo = "undo",
        Window = "window",
        Words = "words",
    }
}

keyword! {
    /// What was asked for and is not there.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    Thing {
        Bar = "bar",
        Day = "day",
        Device = "device",
        Flag = "flag",
        Member = "member",
        Option = "option",
        Piece = "piece",
        Plan = "plan",
        Proposal = "proposal",
    }
}

/// Everything that can go wrong in the core.
#[derive(Debug, thiserror::Error)]
pub(crate) enum Error {
    /// SQLite said no.
    #[error("{}", say::error::labelled(say::error::the_database(), .0))]
    Sqlite(#[from] rusqlite::Error),
    /// A file could not be read or written.
    #[error("{}", say::error::labelled(path, source))]
    File {
        /// The file or folder.
        path: String,
        /// What the system said.
        source: std::io::Error,
    },
    /// JSON that should have been ours was not.
    #[error("{}", say::error::entry_unusable(.0))]
    Json(#[from] serde_json::Error),
    /// The database was written by a newer version.
    #[error("{}", say::error::too_new(found, supported))]
    TooNew {
        /// The version found.
        found: i64,
        /// The newest this version reads.
        supported: i64,
    },
    /// A line over the journal's limit.
    #[error("{}", say::error::too_long(found, limit))]
    TooLong {
        /// The size found.
        found: usize,
        /// The limit.
        limit: usize,
    },
    /// Something asked for is not there.
    #[error("{}", not_found(*what, name.as_deref(), reason))]
    NotFound {
        /// What was asked for.
        what: Thing,
        /// Its name, as it was asked for.
        name: Option<String>,
        /// Why it is not there, and what to do.
        reason: String,
    },
    /// Something given cannot be.
    #[error("{reason}")]
    Invalid {
        /// Which part of what was given.
        field: Field,
        /// Why it cannot be, and what can.
        reason: String,
    },
    /// A plan with problems.
    #[error("{}", say::error::plan_problems(source_name, problems.len()))]
    Plan {
        /// What was read.
        source_name: String,
        /// Each problem, in the order of the text.
        problems: Vec<Problem>,
    },
}

impl Error {
    /// Names the file of an I/O error.
    pub(crate) fn file(path: &std::path::Path) -> impl FnOnce(std::io::Error) -> Error + use<> {
        let path = path.display().to_string();
        move |source| Error::File { path, source }
    }

    /// Something given cannot be.
    pub(crate) fn invalid(field: Field, reason: impl Into<String>) -> Error {
        Error::Invalid { field, reason: reason.into() }
    }

    /// Something asked for is not there.
    pub(crate) fn missing(what: Thing, reason: impl Into<String>) -> Error {
        Error::NotFound { what, name: None, reason: reason.into() }
    }

    /// Something asked for by its name is not there.
    pub(crate) fn not_found(what: Thing, name: &str, reason: impl Into<String>) -> Error {
        Error::NotFound { what, name: Some(name.to_owned()), reason: reason.into() }
    }
}
