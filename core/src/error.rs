//! What can go wrong inside. The surface turns it into a few public variants in one place.

use crate::plan::Problem;

/// Result with the core's own error.
pub(crate) type Result<T> = std::result::Result<T, Error>;

/// Everything that can go wrong in the core.
#[derive(Debug, thiserror::Error)]
pub(crate) enum Error {
    /// SQLite said no.
    #[error("the database: {0}")]
    Sqlite(#[from] rusqlite::Error),
    /// A file could not be read or written.
    #[error("{path}: {source}")]
    File {
        /// The file or folder.
        path: String,
        /// What the system said.
        source: std::io::Error,
    },
    /// JSON that should have been ours was not.
    #[error("a record could not be written or read: {0}")]
    Json(#[from] serde_json::Error),
    /// The database was written by a newer version.
    #[error("the database has version {found}; this version reads up to {supported}")]
    TooNew {
        /// The version found.
        found: i64,
        /// The newest this version reads.
        supported: i64,
    },
    /// A line over the journal's limit.
    #[error("{found} bytes in one entry; at most {limit} fit")]
    TooLong {
        /// The size found.
        found: usize,
        /// The limit.
        limit: usize,
    },
    /// Something asked for is not there.
    #[error("{what}: {reason}")]
    NotFound {
        /// What was asked for.
        what: String,
        /// Why it is not there, and what to do.
        reason: String,
    },
    /// Something given cannot be.
    #[error("{field}: {reason}")]
    Invalid {
        /// Which part of what was given.
        field: String,
        /// Why it cannot be, and what can.
        reason: String,
    },
    /// A plan with problems.
    #[error("the plan has {} problem(s)", problems.len())]
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
    pub(crate) fn invalid(field: &str, reason: impl Into<String>) -> Error {
        Error::Invalid { field: field.to_owned(), reason: reason.into() }
    }

    /// Something asked for is not there.
    pub(crate) fn not_found(what: impl Into<String>, reason: impl Into<String>) -> Error {
        Error::NotFound { what: what.into(), reason: reason.into() }
    }
}
