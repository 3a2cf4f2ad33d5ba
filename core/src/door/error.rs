//! The errors that cross the surface: few, with fields, and one place where they are made.

use std::io::ErrorKind;

use rusqlite::ErrorCode;

use crate::error::{Error, not_found};
pub use crate::error::{Field, Thing};
use crate::mass::MassError;
use crate::plan::Problem;
use crate::say;

/// What a shell is told when something cannot be done. Nothing is ever lost by it.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[cfg_attr(feature = "ffi", derive(uniffi::Error))]
pub enum HoldfastError {
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
    /// A plan text with problems, all of them.
    #[error("{}", say::error::plan_problems(source_name, problems.len()))]
    Plan {
        /// What was read.
        source_name: String,
        /// Each problem, in the order of the text.
        problems: Vec<Problem>,
    },
    /// The disk or the database said no.
    #[error("{}", say::error::labelled(path, reason))]
    Storage {
        /// Where.
        path: String,
        /// What the system said.
        reason: String,
    },
    /// Written by a newer version. Left untouched.
    #[error("{}", say::error::too_new(found, supported))]
    TooNew {
        /// The version found.
        found: i64,
        /// The newest version that can be read.
        supported: i64,
    },
    /// A fault of ours.
    #[error("{}", say::error::unexpected(reason))]
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
                HoldfastError::Storage { path, reason: refused(&source) }
            }
            Error::Sqlite(error) => HoldfastError::Storage {
                path: say::error::the_database().into(),
                reason: failed(&error),
            },
            Error::TooLong { .. } => {
                HoldfastError::Invalid { field: Field::Text, reason: error.to_string() }
            }
            Error::Json(error) => HoldfastError::Unexpected { reason: error.to_string() },
        }
    }
}

/// What a file's error means, and what helps against it.
fn refused(error: &std::io::Error) -> String {
    match error.kind() {
        ErrorKind::StorageFull | ErrorKind::QuotaExceeded => say::error::database_full(error),
        ErrorKind::PermissionDenied | ErrorKind::ReadOnlyFilesystem => {
            say::error::database_read_only(error)
        }
        _ => error.to_string(),
    }
}

/// What SQLite's error means, and what helps against it.
fn failed(error: &rusqlite::Error) -> String {
    match error.sqlite_error_code() {
        Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked) => {
            say::error::database_busy(error)
        }
        Some(ErrorCode::ReadOnly | ErrorCode::CannotOpen | ErrorCode::PermissionDenied) => {
            say::error::database_read_only(error)
        }
        Some(ErrorCode::DiskFull) => say::error::database_full(error),
        _ => say::error::database_other(error),
    }
}

impl From<MassError> for HoldfastError {
    fn from(error: MassError) -> HoldfastError {
        HoldfastError::Invalid { field: Field::Load, reason: error.to_string() }
    }
}
