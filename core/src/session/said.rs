//! What a tap saved, in words, and where to look whether it was a slip.

use super::screen::Row;
use super::snapshot::Snapshot;
use crate::journal::{Body, Note};
use crate::plan::Exercise;
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
