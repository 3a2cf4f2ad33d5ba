//! What is read of notes for a screen: the coach's, and the athlete's own for nobody else.

use chrono::NaiveDate;
use rusqlite::Connection;

use crate::error::Result;
use crate::history::{notes_of, to_be_read};
use crate::id::{PersonId, RecordId};
use crate::journal::{Body, Held, Kind as _, Lift, Note, NoteFrom, Session, WindowDone};
use crate::plan::{Day, Exercise, Piece, PieceKind};
use crate::store::{Logged, PrivateNote, Query, date_of, private_notes};

/// The notes of a session that are not of the athlete's journal.
#[derive(Default)]
pub(crate) struct Notes {
    /// The coach, once there is a crew.
    coach: Option<PersonId>,
    /// The coach's on this session.
    pub(super) from_coach: Vec<Logged<Note>>,
    /// The coach's on earlier ones that are still to be read.
    pub(super) to_read: Vec<ToRead>,
    /// The athlete's own for nobody else.
    pub(super) private: Vec<PrivateNote>,
}

/// A note of the coach's on an earlier session.
pub(super) struct ToRead {
    /// The piece it is shown in; none for the session as a whole.
    pub(super) piece: Option<String>,
    /// The date that was trained on.
    pub(super) date: NaiveDate,
    /// What was done that it is about.
    pub(super) done: Option<Body>,
    pub(super) words: String,
}

impl ToRead {
    fn of(connection: &Connection, piece: Option<&str>, note: Logged<Note>) -> Result<ToRead> {
        let record = |record| Query { record: Some(record), ..Query::default() };
        let session = record(note.body.session).last::<Session>(connection)?;
        let about = note.body.about.map(|about| record(about).bodies(None, connection));
        Ok(ToRead {
            piece: piece.map(str::to_owned),
            date: session.map_or_else(|| date_of(&note), |session| session.body.date),
            done: about.transpose()?.and_then(|mut found| found.pop()).map(|done| done.body),
            words: note.body.words,
        })
    }
}

impl Notes {
    /// None yet, of a crew with this coach.
    pub(crate) fn of(coach: Option<PersonId>) -> Notes {
        Notes { coach, ..Notes::default() }
    }

    /// Reads those of a session, and the coach's that are still to be read on a day. `exercise` says what is done for a
    /// movement of a piece.
    pub(super) fn read(
        &self,
        connection: &Connection,
        athlete: PersonId,
        during: Option<RecordId>,
        day: Option<&Day>,
        exercise: &dyn Fn(&str, &str) -> Exercise,
    ) -> Result<Notes> {
        let mut notes = Notes::of(self.coach);
        if let Some(session) = during {
            notes.private = private_notes(connection, Some(session))?;
            let all = notes_of(connection, session)?.into_iter();
            let coachs = all.filter(|(from, _)| *from == NoteFrom::Coach);
            notes.from_coach = coachs.map(|(_, note)| note).collect();
        }
        let (Some(coach), Some(day)) = (notes.coach, day) else { return Ok(notes) };
        let people = (athlete, coach);
        let whole = to_be_read(connection, people, (Session::NAME, ""), during)?;
        for note in whole {
            notes.to_read.push(ToRead::of(connection, None, note)?);
        }
        for piece in &day.pieces {
            for (kind, done) in done_in(piece, exercise) {
                let found = to_be_read(connection, people, (kind, &done), during)?;
                for note in found {
                    notes.to_read.push(ToRead::of(connection, Some(&piece.name), note)?);
                }
            }
        }
        Ok(notes)
    }

    /// The last private one, where nothing was logged after it up to an entry.
    pub(super) fn private_after(&self, entry: Option<u64>) -> Option<&PrivateNote> {
        self.private.last().filter(|kept| entry.is_none_or(|entry| kept.after >= entry))
    }
}

/// What is done in a piece, each as the kind of record and the subject it is kept under.
fn done_in(
    piece: &Piece,
    exercise: &dyn Fn(&str, &str) -> Exercise,
) -> Vec<(&'static str, String)> {
    let named = |movement: &str| exercise(&piece.name, movement).to_string();
    match &piece.kind {
        PieceKind::Strength(strength) => vec![(Lift::NAME, named(&strength.movement))],
        PieceKind::Interval(interval) => {
            let movements = interval.movements().into_iter();
            movements.map(|movement| (WindowDone::NAME, named(movement))).collect()
        }
        PieceKind::Hold(hold) => vec![(Held::NAME, hold.stretch.clone())],
        PieceKind::Note(_) => Vec::new(),
    }
}
