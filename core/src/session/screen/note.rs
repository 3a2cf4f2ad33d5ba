//! A note on screen.

use serde::Serialize;

use super::Row;
use crate::journal::NoteFrom;

/// A note on what is on screen, or the coach's on an earlier time.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct NoteView {
    /// Whose it is, and so who can read it.
    pub from: NoteFrom,
    /// The row of this session that it is about; none where it is about a piece or session as a whole, or an earlier
    /// one.
    pub row: Option<Row>,
    /// The words alone.
    pub words: String,
    /// All of it in one line: `For your coach, set 2: the grip slipped`.
    pub text: String,
}
