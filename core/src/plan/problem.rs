//! What is wrong with a plan, and where.

use serde::Serialize;

/// One thing wrong with a plan text.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct Problem {
    /// The line, counted from 1.
    pub line: u32,
    /// The column in characters, counted from 1.
    pub column: u32,
    /// What is wrong.
    pub what: String,
    /// What to write instead.
    pub help: String,
}
