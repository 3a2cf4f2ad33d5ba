//! Notes of coach and athlete, read: what a coach has not answered yet, a member's page, a list of sets.

use chrono::{Days, NaiveDate};
use rusqlite::Connection;
use serde::Serialize;

use crate::error::Result;
use crate::history::notes_of;
use crate::id::{PersonId, RecordId};
use crate::journal::{Note, NoteFrom, Profile, Role, Session};
use crate::say;
use crate::store::{Logged, Query, date_of, private_notes};
use crate::words;

/// A note stays on the board for so many days, unless the coach answers it.
const ON_BOARD_DAYS: u64 = 14;

/// A note on a member's page.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct NoteLine {
    /// The date that was trained on.
    pub date: NaiveDate,
    /// Whose it is.
    pub from: NoteFrom,
    /// All of it but the date, as whoever uses the device reads it.
    pub text: String,
}

/// A note as whoever uses the device reads it.
pub(super) fn text_of(
    connection: &Connection,
    reader: &Profile,
    athlete: &str,
    from: NoteFrom,
    note: &Note,
) -> Result<String> {
    Ok(text(reader, athlete, from, about(connection, note)?, note))
}

fn text(
    reader: &Profile,
    athlete: &str,
    from: NoteFrom,
    about: Option<String>,
    note: &Note,
) -> String {
    match reader.role {
        Role::Athlete => words::own_note(from, about, &note.words),
        Role::Coach => words::coachs_view(from, athlete, about, &note.words),
    }
}

/// What a note is about, in words: `Squat set 2`, or a piece alone; none for a session.
fn about(connection: &Connection, note: &Note) -> Result<Option<String>> {
    let Some(piece) = &note.piece else { return Ok(None) };
    let query = Query { record: note.about, ..Query::default() };
    let done = if note.about.is_some() { query.bodies(None, connection)? } else { Vec::new() };
    let place = done.last().and_then(|done| words::place_of(&done.body));
    Ok(Some(match place {
        Some(place) => say::note::place_in(piece, place),
        None => piece.clone(),
    }))
}

/// An athlete's notes that the coach has not answered with one on the same session, the latest first.
pub(super) fn unanswered(
    connection: &Connection,
    person: PersonId,
    today: NaiveDate,
) -> Result<Vec<String>> {
    let since = today.checked_sub_days(Days::new(ON_BOARD_DAYS)).unwrap_or(today);
    let own = Query { person: Some(person), ..Query::default() }.read::<Note>(connection)?;
    let mut found = Vec::new();
    for note in own.into_iter().rev().filter(|note| (since..=today).contains(&date_of(note))) {
        let answers = notes_of(connection, note.body.session)?;
        let answer = |(from, other): &(NoteFrom, Logged<Note>)| {
            *from == NoteFrom::Coach && other.placed > note.placed
        };
        if answers.iter().any(answer) {
            continue;
        }
        let (day, said) = (words::day(date_of(&note)), &note.body.words);
        let text = match about(connection, &note.body)? {
            Some(about) => say::note::to_coach_on(about, day, said),
            None => say::note::to_coach(day, said),
        };
        found.push(text);
    }
    Ok(found)
}

/// Every note on a member's training, the earliest first, with the private ones where it is the athlete's own device.
pub(super) fn note_lines(
    connection: &Connection,
    (person, profile): (PersonId, &Profile),
    own: bool,
) -> Result<Vec<NoteLine>> {
    let mut lines = Vec::new();
    let reader = Profile { role: if own { Role::Athlete } else { Role::Coach }, ..profile.clone() };
    let sessions =
        Query { person: Some(person), ..Query::default() }.read::<Session>(connection)?;
    for session in sessions {
        for (from, note) in all_of(connection, session.record, own)? {
            let text = text_of(connection, &reader, &profile.name, from, &note)?;
            lines.push(NoteLine { date: session.body.date, from, text });
        }
    }
    lines.sort_by_key(|line| line.date);
    Ok(lines)
}

/// The notes of a session, each in a line: with the record they are on where that is listed, and otherwise with what they
/// are about.
pub(super) fn notes_on(
    connection: &Connection,
    session: RecordId,
    (reader, athlete, own): (&Profile, &str, bool),
    is_listed: impl Fn(RecordId) -> bool,
) -> Result<Vec<(Option<RecordId>, String)>> {
    let text = |(from, note): (NoteFrom, Note)| {
        let beside = note.about.is_some_and(&is_listed);
        let about = if beside { None } else { about(connection, &note)? };
        Ok((note.about.filter(|_| beside), text(reader, athlete, from, about, &note)))
    };
    all_of(connection, session, own)?.into_iter().map(text).collect()
}

/// The notes of a session; with the private ones where they are one's own.
fn all_of(connection: &Connection, session: RecordId, own: bool) -> Result<Vec<(NoteFrom, Note)>> {
    let notes = notes_of(connection, session)?.into_iter();
    let mut notes: Vec<_> = notes.map(|(from, note)| (from, note.body)).collect();
    if own {
        let private = private_notes(connection, Some(session))?.into_iter();
        notes.extend(private.map(|kept| (NoteFrom::Private, kept.note)));
    }
    Ok(notes)
}
