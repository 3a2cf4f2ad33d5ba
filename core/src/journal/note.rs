//! Words about a session, or about something that was done in it, meant for the other of coach and athlete.

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

use crate::id::{PersonId, RecordId};
use crate::plan::Exercise;

/// The most characters of a note.
pub const MAX_NOTE: usize = 500;

/// A note: an athlete's for the coach, or the coach's for the athlete. One that nobody else may read is no entry.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Note {
    /// The athlete whose training it is about.
    pub person: PersonId,
    /// The session.
    pub session: RecordId,
    /// What was done that it is about: a set, a window, a side held; none for the session as a whole.
    #[serde(default)]
    pub about: Option<RecordId>,
    /// The piece's name; none for the session as a whole.
    #[serde(default)]
    pub piece: Option<String>,
    /// What was done there; none where it is not about one exercise.
    #[serde(default)]
    pub exercise: Option<Exercise>,
    /// The words.
    pub words: String,
    /// The date it is about, where that is not the one it was written on.
    #[serde(default)]
    pub on: Option<NaiveDate>,
}

/// Whose note it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum NoteFrom {
    /// The athlete's, for the coach.
    Athlete,
    /// The coach's, for the athlete.
    Coach,
    /// The athlete's, for nobody else.
    Private,
}
