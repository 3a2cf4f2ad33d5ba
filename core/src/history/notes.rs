//! Notes of athlete and coach: those of a session, and the coach's that are still to be read.

use std::collections::BTreeSet;

use rusqlite::Connection;

use crate::error::{Error, Field, Result};
use crate::id::{PersonId, RecordId};
use crate::journal::{MAX_NOTE, Note, NoteFrom};
use crate::say;
use crate::store::{Logged, Query, is_coach};

/// A note is shown in so many sessions that were begun after it: one may be over before it arrives.
const SHOWN_IN: usize = 2;
/// So many of the coach's latest notes on an exercise are looked at.
const LATEST: u32 = 8;
/// So many of the latest records tell how often something was trained since.
const LATEST_DONE: u32 = 60;

/// The notes of a session, by whoever they are, in the order they were written.
pub(crate) fn notes_of(
    connection: &Connection,
    session: RecordId,
) -> Result<Vec<(NoteFrom, Logged<Note>)>> {
    let query = Query { session: Some(session), ..Query::default() };
    let notes = query.read::<Note>(connection)?.into_iter();
    Ok(notes.map(|note| (from(&note), note)).collect())
}

/// Whose it is: of two people only, one of whom it is about.
fn from(note: &Logged<Note>) -> NoteFrom {
    if note.person == note.body.person { NoteFrom::Athlete } else { NoteFrom::Coach }
}

/// The coach's notes on earlier times of an exercise, done as records of a kind, or with an empty name on whole sessions:
/// those after which it was begun at most once, but for the session at hand.
pub(crate) fn to_be_read(
    connection: &Connection,
    (athlete, coach): (PersonId, PersonId),
    (kind, exercise): (&str, &str),
    during: Option<RecordId>,
) -> Result<Vec<Logged<Note>>> {
    let of = |person, latest| Query {
        person: Some(person),
        subject: Some(exercise),
        latest: Some(latest),
        ..Query::default()
    };
    let mut notes = of(coach, LATEST).read::<Note>(connection)?;
    notes.retain(|note| note.body.person == athlete && Some(note.body.session) != during);
    if notes.is_empty() || !is_coach(connection, coach)? {
        return Ok(Vec::new());
    }
    let done = of(athlete, LATEST_DONE).bodies(Some(kind), connection)?;
    notes.retain(|note| {
        let since = done.iter().filter(|one| one.placed > note.placed);
        // A session is its own.
        let sessions = since.map(|one| one.body.keys().session.unwrap_or(one.record));
        let others = sessions.filter(|session| Some(*session) != during);
        others.collect::<BTreeSet<RecordId>>().len() < SHOWN_IN
    });
    notes.reverse();
    Ok(notes)
}

/// The words of a note as they are kept: in one line, with something to read in it.
///
/// # Errors
/// Where nothing is said, or too much.
pub(crate) fn note_words(typed: &str) -> Result<String> {
    let plain = |letter: char| if letter.is_control() { ' ' } else { letter };
    let words: String = typed.chars().map(plain).collect();
    let words = words.split_whitespace().collect::<Vec<&str>>().join(" ");
    let wrong = |reason| Err(Error::invalid(Field::Words, reason));
    match words.chars().count() {
        0 => wrong(say::note::without_words().to_owned()),
        count if count > MAX_NOTE => wrong(say::note::too_long(MAX_NOTE, count)),
        _ => Ok(words),
    }
}
