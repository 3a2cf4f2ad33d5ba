//! Notes of a session: what a tap writes down, and what is on screen.

use super::log::SessionLog;
use super::noted::ToRead;
use super::screen::{NoteView, Row};
use super::sheet::Sheet;
use super::snapshot::Snapshot;
use super::taps::Taps;
use crate::error::Result;
use crate::history::note_words;
use crate::id::RecordId;
use crate::journal::{Body, Note, NoteFrom};
use crate::plan::{Exercise, PieceKind};
use crate::words;

/// What a note is about.
#[derive(Default)]
struct About {
    record: Option<RecordId>,
    piece: Option<String>,
    exercise: Option<Exercise>,
}

impl Taps<'_> {
    /// The note that a tap writes: about a row, or without one about what was logged last.
    pub(super) fn note(&self, row: Option<&Row>, typed: &str) -> Result<Note> {
        let about = match row {
            Some(Row::Finish) => About::default(),
            Some(row) => self.about(row)?,
            None => self.last_done(),
        };
        Ok(Note {
            person: self.log.session.person,
            session: self.log.id(),
            about: about.record,
            piece: about.piece,
            exercise: about.exercise,
            words: note_words(typed)?,
            on: self.log.on(),
        })
    }

    fn about(&self, row: &Row) -> Result<About> {
        let name = row.piece().unwrap_or_default();
        // A movement that nobody planned has a piece of its own.
        let unplanned = self.log.unplanned_pieces().into_iter().any(|(piece, _)| piece == name);
        if !unplanned {
            self.piece(name)?;
        }
        let record = match row {
            Row::Set { piece, set } => self.log.lift(piece, *set).map(|lift| lift.record),
            Row::Window { piece, window } => {
                self.log.window(piece, *window).map(|done| done.record)
            }
            Row::Hold { piece } => {
                self.log.holds.iter().find(|held| held.body.piece == *piece).map(|held| held.record)
            }
            Row::Measure { .. } | Row::Finish => None,
        };
        let done = record.and_then(|record| self.log.all.iter().find(|one| one.record == record));
        let exercise = done.and_then(|done| exercise_of(&done.body)).or_else(|| self.planned(name));
        Ok(About { record, piece: Some(name.to_owned()), exercise })
    }

    /// What is asked for in a piece that has one movement.
    fn planned(&self, piece: &str) -> Option<Exercise> {
        match &self.sheet.day.piece(piece)?.kind {
            PieceKind::Strength(strength) => {
                Some(self.sheet.snapshot.exercise(piece, &strength.movement))
            }
            PieceKind::Hold(hold) => Some(Exercise::of(&hold.stretch)),
            PieceKind::Interval(_) | PieceKind::Note(_) => None,
        }
    }

    fn last_done(&self) -> About {
        let mut done = self.log.all.iter().filter(|one| exercise_of(&one.body).is_some());
        let last = done.next_back();
        last.map_or_else(About::default, |last| About {
            record: Some(last.record),
            piece: last.body.piece().map(str::to_owned),
            exercise: exercise_of(&last.body),
        })
    }
}

/// The exercise of a set, a window or a side held.
pub(crate) fn exercise_of(body: &Body) -> Option<Exercise> {
    match body {
        Body::Lift(lift) => Some(lift.exercise.clone()),
        Body::WindowDone(done) => Some(done.exercise.clone()),
        Body::Held(held) => Some(Exercise::of(&held.stretch)),
        _ => None,
    }
}

impl Sheet<'_> {
    /// The notes on a piece: the coach's on earlier times first, then those of this session.
    pub(super) fn notes(&self, piece: &str) -> Vec<NoteView> {
        let earlier =
            self.snapshot.notes.to_read.iter().filter(|note| note.piece.as_deref() == Some(piece));
        let earlier = earlier.map(of_earlier);
        earlier.chain(of_session(self.snapshot, Some(piece))).collect()
    }
}

/// The notes on the session as a whole.
pub(super) fn on_the_whole(snapshot: &Snapshot) -> Vec<NoteView> {
    let earlier = snapshot.notes.to_read.iter().filter(|note| note.piece.is_none());
    earlier.map(of_earlier).chain(of_session(snapshot, None)).collect()
}

fn of_session(snapshot: &Snapshot, piece: Option<&str>) -> Vec<NoteView> {
    let Some(log) = &snapshot.log else { return Vec::new() };
    let own = log.notes.iter().map(|note| (NoteFrom::Athlete, note.placed, &note.body));
    let coach =
        snapshot.notes.from_coach.iter().map(|note| (NoteFrom::Coach, note.placed, &note.body));
    let mut notes: Vec<(NoteFrom, i64, &Note)> = own.chain(coach).collect();
    notes.sort_by_key(|(_, placed, _)| *placed);
    let private = snapshot.notes.private.iter().map(|kept| (NoteFrom::Private, 0, &kept.note));
    let of_it =
        notes.into_iter().chain(private).filter(|(_, _, note)| note.piece.as_deref() == piece);
    of_it.map(|(from, _, note)| view(log, from, note)).collect()
}

fn view(log: &SessionLog, from: NoteFrom, note: &Note) -> NoteView {
    let done = log.all.iter().find(|one| Some(one.record) == note.about).map(|one| &one.body);
    let text = words::own_note(from, done.and_then(words::place_of), &note.words);
    NoteView { from, row: done.and_then(super::said::row_of), words: note.words.clone(), text }
}

fn of_earlier(note: &ToRead) -> NoteView {
    let place = note.done.as_ref().and_then(words::place_of);
    let text = words::coachs_note_on(words::day(note.date), place, &note.words);
    NoteView { from: NoteFrom::Coach, row: None, words: note.words.clone(), text }
}
