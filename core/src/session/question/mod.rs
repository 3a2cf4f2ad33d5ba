//! A question as a screen: what can be touched, what each touch leads to, and the key that takes the answer.
//!
//! A phone keeps no answers of its own: it draws what it is given and hands back what a touch leads to.

mod extra;
mod fields;
mod flags;
mod hurts;
mod keys;
mod load;
mod logged;
mod note;
mod option;
mod range;
mod set;
mod timed;
mod whole;

use super::screen::{PieceKindView, Row, SessionScreen};
use super::snapshot::Snapshot;
use super::{Kept, screen};
use crate::device::Device;
use crate::error::{Error, Field, Result};
use crate::instant::Instant;
use crate::journal::Range;
use crate::say;
use crate::store::{Logged, Query, date_of};

pub use fields::{
    Answers, Ask, Choice, ChoiceShape, QuestionField, QuestionScreen, QuestionSign, TypedNumber,
};

/// What a question is worked out from.
struct Of<'a> {
    screen: &'a SessionScreen,
    snapshot: &'a Snapshot,
    /// The readings of earlier days, the latest last; none where nothing is measured.
    read: Vec<Range>,
}

/// So many of the latest readings are looked through for one to begin with: some months of two stretches.
const LATEST: u32 = 100;

/// The readings of days before this one, where a measure is asked for.
fn earlier(device: &Device, screen: &SessionScreen, ask: &Ask) -> Result<Vec<Range>> {
    if !matches!(ask, Ask::Row { row: Row::Measure { .. }, .. }) {
        return Ok(Vec::new());
    }
    let person = Some(device.person());
    let query = Query { person, latest: Some(LATEST), ..Query::default() };
    let mut read = query.read::<Range>(device.reader())?;
    // The latest come first.
    read.reverse();
    let before = |reading: &Logged<Range>| date_of(reading) < screen.date;
    Ok(read.into_iter().filter(before).map(|reading| reading.body).collect())
}

/// A question with what is answered of it so far.
pub(crate) fn question(
    device: &mut Device,
    kept: &mut Kept,
    ask: &Ask,
    answers: Option<Answers>,
    at: &Instant,
) -> Result<QuestionScreen> {
    // Of whatever day: no session has to run for it.
    if let Ask::Logged { lift } = ask {
        return logged::logged(device, *lift, answers.unwrap_or_default());
    }
    let screen = screen(device, kept, at)?;
    let read = earlier(device, &screen, ask)?;
    let snapshot = kept.snapshot.take();
    let drawn = snapshot.as_ref().and_then(|snapshot| {
        Of { screen: &screen, snapshot, read }.ask(ask, answers.unwrap_or_default())
    });
    kept.snapshot = snapshot;
    drawn.ok_or_else(|| Error::invalid(Field::Session, say::question::not_here()))
}

impl Of<'_> {
    /// None where nothing of the kind can be asked now.
    fn ask(&self, ask: &Ask, answers: Answers) -> Option<QuestionScreen> {
        match ask {
            Ask::Row { row: Row::Set { piece, set }, whole } => {
                self.set(piece, *set, *whole, answers)
            }
            Ask::Row { row: Row::Window { piece, window }, .. } => {
                self.window(piece, *window, answers)
            }
            Ask::Row { row: Row::Hold { piece }, .. } => self.hold(piece, answers),
            Ask::Row { row: Row::Measure { piece, when }, .. } => self.range(piece, *when, answers),
            Ask::Row { row: Row::Finish, .. } => self.finish(answers),
            Ask::Option { piece } => self.option(piece, answers),
            Ask::Hurts { row } => self.hurts(row.as_ref(), answers),
            Ask::Clear { piece } => self.clear(piece, answers),
            Ask::Note { row } => Some(self.note(row.as_ref(), answers)),
            Ask::Extra => self.extra(answers),
            Ask::Logged { .. } => None,
            Ask::Day => self.day(answers),
            Ask::Station { piece } => self.station(piece, answers),
            Ask::Bar { piece } => self.bar(piece, answers),
        }
    }

    fn kind(&self, piece: &str) -> Option<&PieceKindView> {
        self.screen.pieces.iter().find(|view| view.name == piece).map(|view| &view.kind)
    }
}
