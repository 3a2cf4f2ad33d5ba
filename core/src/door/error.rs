//! The errors that cross the surface: few, with fields, and one place where they are made.

use rusqlite::ErrorCode;

use crate::error::{Error, named};
pub use crate::error::{Field, Thing};
use crate::mass::MassError;
use crate::plan::Problem;

/// What a shell is told when something cannot be done. Nothing is ever lost by it.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[cfg_attr(feature = "ffi", derive(uniffi::Error))]
pub enum HoldfastError {
    /// Something asked for is not there.
    #[error("{}", named(*what, name, reason))]
    NotFound {
        /// What was asked for.
        what: Thing,
        /// Its name, as it was asked for.
        name: Option<String>,
        /// Why it is not there, and what to do.
        reason: String,
    },
    /// Something given cannot be.
    #[error("{}: {reason}", field.text())]
    Invalid {
        /// Which part of what was given.
        field: Field,
        /// Why it cannot be, and what can.
        reason: String,
    },
    /// A plan text with problems, all of them.
    #[error("{source_name} has {} to fix", crate::words::count(problems.len() as u64, "problem"))]
    Plan {
        /// What was read.
        source_name: String,
        /// Each problem, in the order of the text.
        problems: Vec<Problem>,
    },
    /// The disk or the database said no.
    #[error("{path}: {reason}")]
    Storage {
        /// Where.
        path: String,
        /// What the system said.
        reason: String,
    },
    /// Written by a newer version. Left untouched.
    #[error(
        "this data was written by a newer Holdfast (version {found}; this one reads up to \
         {supported}). Nothing was changed: update Holdfast and open it again"
    )]
    TooNew {
        /// The version found.
        found: i64,
        /// The newest version that can be read.
        supported: i64,
    },
    /// A fault of ours.
    #[error("something that should not happen: {reason}. What was logged is safe")]
    Unexpected {
        /// What happened.
        reason: String,
    },
}

impl From<Error> for HoldfastError {
    fn from(error: Error) -> HoldfastError {
        match error {
            Error::NotFound { what, name, reason } => {
                HoldfastError::NotFound { what, name, reason }
            }
            Error::Invalid { field, reason } => HoldfastError::Invalid { field, reason },
            Error::Plan { source_name, problems } => HoldfastError::Plan { source_name, problems },
            Error::TooNew { found, supported } => HoldfastError::TooNew { found, supported },
            Error::File { path, source } => {
                HoldfastError::Storage { path, reason: source.to_string() }
            }
            Error::Sqlite(error) => HoldfastError::Storage {
                path: "the database".into(),
                reason: format!("{error}. Nothing new was saved: {}", what_to_do(&error)),
            },
            Error::TooLong { .. } => {
                HoldfastError::Invalid { field: Field::Text, reason: error.to_string() }
            }
            Error::Json(error) => HoldfastError::Unexpected { reason: error.to_string() },
        }
    }
}

/// What helps against an error of SQLite's.
fn what_to_do(error: &rusqlite::Error) -> &'static str {
    match error.sqlite_error_code() {
        Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked) => {
            "another Holdfast has it open for writing; close that one and try again"
        }
        Some(ErrorCode::ReadOnly | ErrorCode::CannotOpen | ErrorCode::PermissionDenied) => {
            "its folder or file may not be written; change the permissions"
        }
        Some(ErrorCode::DiskFull) => "free some space and try again",
        _ => "try again; if it stays, keep the folder as it is and ask for help",
    }
}

impl From<MassError> for HoldfastError {
    fn from(error: MassError) -> HoldfastError {
        HoldfastError::Invalid { field: Field::Load, reason: error.to_string() }
    }
}
