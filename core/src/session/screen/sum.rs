//! What a piece came to, on screen.

use serde::Serialize;

use super::Row;

/// What a piece came to, or what is next.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct SumView {
    /// The piece's name, or the word for next.
    pub title: String,
    /// What was done, in a few words: `4 of 4 sets`, `2 min each side`.
    pub done: String,
    /// More about it, a line each: `open set: 70 kg × 7, 5 asked`.
    pub more: Vec<String>,
    /// True where all that was planned of it is logged.
    pub all: bool,
    /// The row to be at in it, to log more or to correct; none where there is none.
    pub row: Option<Row>,
}
