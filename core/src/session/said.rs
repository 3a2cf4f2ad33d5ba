//! What a tap saved, in words, and where to look whether it was a slip.

use super::screen::{Row, SavedLine};
use super::snapshot::Snapshot;
use crate::journal::{Body, Note};
use crate::plan::Exercise;
use crate::say::screen as say;
use crate::words::{self, Names};

/// What was saved last.
pub(super) struct Saved {
    /// In words.
    pub(super) text: String,
    /// The row it is about, where it is about one.
    pub(super) row: Option<Row>,
}

impl Saved {
    /// What a private note says.
    pub(super) fn privately(note: &Note) -> Saved {
        Saved { text: words::noted_privately(note), row: None }
    }

    /// What bodies say together; none where there are none.
    pub(super) fn of(snapshot: &Snapshot, bodies: &[Body]) -> Option<Saved> {
        let last = bodies.last()?;
        Some(Saved { text: said(snapshot, bodies), row: row_of(last) })
    }

    /// As a phone says it. What is not of a row says by itself what came of it, such as a session that was begun.
    pub(super) fn line(&self) -> SavedLine {
        let text = match &self.row {
            Some(_) => say::saved(&self.text),
            None => self.text.clone(),
        };
        let short = match &self.row {
            Some(Row::Set { set, .. }) => say::saved_set(set),
            Some(Row::Window { window, .. }) => say::saved_window(window),
            _ => say::saved_alone().to_owned(),
        };
        SavedLine { text, short }
    }
}

/// What bodies say together, in words.
pub(super) fn said(snapshot: &Snapshot, bodies: &[Body]) -> String {
    let name_of = |exercise: &Exercise| match &snapshot.block {
        Some(block) => block.name_of(exercise),
        None => exercise.to_string(),
    };
    words::logged(bodies, &Names { unit: snapshot.profile.unit, of: &name_of })
}

pub(super) fn row_of(body: &Body) -> Option<Row> {
    match body {
        Body::Lift(lift) => Some(Row::Set { piece: lift.piece.clone(), set: lift.set }),
        Body::WindowDone(done) => {
            Some(Row::Window { piece: done.piece.clone(), window: done.window })
        }
        Body::Held(held) => Some(Row::Hold { piece: held.piece.clone() }),
        _ => None,
    }
}
