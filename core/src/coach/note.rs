//! A note written for a session of any day, or taken back.

use chrono::NaiveDate;
use rusqlite::Connection;

use super::notes::{NoteLine, text_of};
use super::sets::{SetNamed, find_set, sessions_of, whose};
use crate::device::Device;
use crate::error::{Error, Field, Result};
use crate::history::note_words;
use crate::id::{PersonId, RecordId};
use crate::instant::Instant;
use crate::journal::{Lift, Note, NoteFrom, Profile, Role, Session};
use crate::say;
use crate::store::{Draft, Logged, PrivateNote, Query, private_notes};
use crate::words;

/// A note to write, or to take back.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct NoteGiven {
    /// The member it is about; none for whoever uses the device.
    pub member: Option<String>,
    /// The date that was trained on; the latest session when left out.
    pub on: Option<NaiveDate>,
    /// The piece's name, or that of the movement, and the set; none for the session as a whole.
    pub set: Option<SetOfPiece>,
    /// Which session of the date, counted from 1; needed where there are several.
    pub session: Option<u32>,
    /// The words; none takes the latest of one's own there back.
    pub words: Option<String>,
    /// True for the athlete alone: it never leaves the device.
    pub private: bool,
}

/// A set of a piece.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct SetOfPiece {
    /// The piece's name, or that of the movement.
    pub piece: String,
    /// The set, counted from 1.
    pub set: u32,
}

/// Writes a note, or takes one's own latest back.
///
/// # Errors
/// Where no session or set is meant, nothing is said or too much; a private one of a coach.
pub(crate) fn give_note(device: &mut Device, given: NoteGiven, at: &Instant) -> Result<NoteLine> {
    let (person, profile) = whose(device, given.member.as_deref())?;
    let own = device.profile()?;
    if given.private && own.role == Role::Coach {
        return Err(Error::invalid(Field::Words, say::note::coach_not_private()));
    }
    let session = session_meant(device, &given, (person, &profile))?;
    let lift = match &given.set {
        None => None,
        Some(SetOfPiece { piece, set }) => {
            let named = SetNamed {
                member: given.member.clone(),
                on: session.body.date,
                piece: piece.clone(),
                set: *set,
                session: given.session,
            };
            let lift = Some(find_set(device, &named)?.lift);
            Query { record: lift, ..Query::default() }.last::<Lift>(device.reader())?
        }
    };
    let (session, date) = (lift.as_ref().map_or(session.record, |lift| lift.body.session), session);
    let about = lift.as_ref().map(|lift| lift.record);
    let Some(typed) = &given.words else {
        let note = take_back(device, (session, about), given.private, at)?;
        return line(device.reader(), &own, &profile, (date.body.date, given.private, note));
    };
    let note = Note {
        person,
        session,
        about,
        piece: lift.as_ref().map(|lift| lift.body.piece.clone()),
        exercise: lift.as_ref().map(|lift| lift.body.exercise.clone()),
        words: note_words(typed)?,
        on: date.on,
    };
    if given.private {
        device.add_private(note.clone(), at)?;
    } else {
        device.append(at, vec![Draft::new(note.clone())])?;
        device.cut_after_saving();
    }
    line(device.reader(), &own, &profile, (date.body.date, given.private, note))
}

fn line(
    connection: &Connection,
    reader: &Profile,
    athlete: &Profile,
    (date, private, note): (NaiveDate, bool, Note),
) -> Result<NoteLine> {
    let from = match reader.role {
        Role::Coach => NoteFrom::Coach,
        Role::Athlete if private => NoteFrom::Private,
        Role::Athlete => NoteFrom::Athlete,
    };
    let text = text_of(connection, reader, &athlete.name, from, &note)?;
    Ok(NoteLine { date, from, text })
}

fn session_meant(
    device: &Device,
    given: &NoteGiven,
    (person, profile): (PersonId, &Profile),
) -> Result<Logged<Session>> {
    let mut sessions = sessions_of(device, person)?;
    if let Some(on) = given.on {
        sessions.retain(|session| session.body.date == on);
    }
    let wrong = |reason| Err(Error::invalid(Field::Session, reason));
    match (sessions.len(), given.on, given.session) {
        (0, Some(on), _) => wrong(say::note::no_session_on(&profile.name, words::day(on))),
        (0, None, _) => wrong(say::note::no_session(&profile.name)),
        (count, Some(on), None) if count > 1 => {
            let numbers: Vec<String> = (1..=count).map(|number| number.to_string()).collect();
            wrong(say::coach::which_session(words::day(on), words::list(&numbers)))
        }
        (count, Some(on), Some(number)) => {
            let at = (number as usize).checked_sub(1).filter(|at| *at < count);
            match at {
                Some(at) => Ok(sessions.swap_remove(at)),
                None => wrong(say::coach::no_such_session(count, words::day(on), number)),
            }
        }
        (count, ..) => Ok(sessions.swap_remove(count - 1)),
    }
}

/// Takes one's own latest note on a session, or a set, back.
fn take_back(
    device: &mut Device,
    (session, about): (RecordId, Option<RecordId>),
    private: bool,
    at: &Instant,
) -> Result<Note> {
    let none = || Error::invalid(Field::Words, say::note::nothing_to_take_back());
    if private {
        let mut kept = private_notes(device.reader(), Some(session))?;
        kept.retain(|kept| kept.note.about == about);
        let PrivateNote { number, note, .. } = kept.pop().ok_or_else(none)?;
        device.drop_private(number)?;
        return Ok(note);
    }
    let query = Query { person: Some(device.person()), session: Some(session), ..Query::default() };
    let mut notes = query.read::<Note>(device.reader())?;
    notes.retain(|note| note.body.about == about);
    let last = notes.pop().ok_or_else(none)?;
    device.append(at, vec![Draft::take_back(last.record)])?;
    device.cut_after_saving();
    Ok(last.body)
}
