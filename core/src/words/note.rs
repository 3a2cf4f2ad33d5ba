//! Notes in words, to the athlete and to the coach.

use crate::journal::{Body, Note, NoteFrom};
use crate::say::note as say;

/// Which set, window or side something done is: `set 2`. None where that says nothing.
pub(crate) fn place_of(done: &Body) -> Option<String> {
    match done {
        Body::Lift(lift) => Some(say::set(lift.set)),
        Body::WindowDone(done) => Some(say::window(done.window)),
        _ => None,
    }
}

/// A note as the athlete reads it, in a session: `For your coach, set 2: the grip slipped`.
pub(crate) fn own_note(from: NoteFrom, place: Option<String>, words: &str) -> String {
    match (from, place) {
        (NoteFrom::Athlete, None) => say::for_coach(words),
        (NoteFrom::Athlete, Some(place)) => say::for_coach_on(place, words),
        (NoteFrom::Coach, None) => say::from_coach(words),
        (NoteFrom::Coach, Some(place)) => say::from_coach_on(place, words),
        (NoteFrom::Private, None) => say::private(words),
        (NoteFrom::Private, Some(place)) => say::private_on(place, words),
    }
}

/// A private note that was written, or taken back.
pub(crate) fn noted_privately(note: &Note) -> String {
    match &note.piece {
        Some(piece) => say::noted_privately_on(piece, &note.words),
        None => say::noted_privately(&note.words),
    }
}

/// A coach's note on an earlier time: `From your coach about Tue 3 Nov, set 2: keep the elbows in`.
pub(crate) fn coachs_note_on(day: String, place: Option<String>, words: &str) -> String {
    match place {
        Some(place) => say::from_coach_about(day, place, words),
        None => say::from_coach_of(day, words),
    }
}

/// A note as the coach reads it: `Ana, Squat set 2: the grip slipped`.
pub(crate) fn coachs_view(
    from: NoteFrom,
    athlete: &str,
    about: Option<String>,
    words: &str,
) -> String {
    match (from, about) {
        (NoteFrom::Coach, None) => say::your_own(words),
        (NoteFrom::Coach, Some(about)) => say::your_own_on(about, words),
        (_, None) => say::from_athlete(athlete, words),
        (_, Some(about)) => say::from_athlete_on(athlete, about, words),
    }
}
