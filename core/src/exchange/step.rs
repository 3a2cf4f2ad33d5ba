//! What passes between the core and a shell in an exchange.

use super::{CarriedFile, ExchangeReport, FailedFile, ListedFile};

/// What a shell does next in an exchange.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum ExchangeStep {
    /// List the carrier's files.
    ListFiles,
    /// Fetch these. One that is gone meanwhile is simply not brought.
    Get {
        /// Their names.
        names: Vec<String>,
    },
    /// Write each under its name, unless that name is there with as many bytes.
    Put {
        /// The files.
        files: Vec<CarriedFile>,
    },
    /// Nothing more.
    Done {
        /// What the exchange did.
        report: ExchangeReport,
    },
}

/// What a shell has done in an exchange.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum ExchangeDid {
    /// Nothing yet: this begins an exchange.
    Begin,
    /// The carrier's files are listed.
    Listed {
        /// The files.
        files: Vec<ListedFile>,
    },
    /// Files are fetched.
    Got {
        /// Those that could be read.
        files: Vec<CarriedFile>,
        /// Those that could not.
        unread: Vec<FailedFile>,
    },
    /// Files are written.
    Put {
        /// How many were not there before.
        written: u32,
        /// Those that could not be written: they keep nobody from bringing the others.
        unwritten: Vec<FailedFile>,
    },
}
