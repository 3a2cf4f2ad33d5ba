//! The parts of a day: what every kind has in common, and notes.

use super::field::Field;
use super::fields::Fields;
use super::given::{Given, Names};
use super::part::Part;
use super::{hold, interval, strength};
use crate::plan::{Note, Piece, PieceKind};
use crate::say;

const PIECE: &str = "[[day.piece]]";
const KINDS: [&str; 4] = ["strength", "interval", "hold", "note"];

/// The longest note, in characters.
const LONGEST_NOTE: usize = 1000;

/// Reads a piece.
pub(super) fn read(field: Field<'_>, given: &Given, names: &mut Names) -> Option<Piece> {
    let mut fields = Fields::of(field, Part::Piece, || say::plan::write_example(PIECE))?;
    let kind = fields.required("kind", "kind = \"strength\"");
    let name = fields.required("name", "name = \"Squat\"");
    let name = name.and_then(|name| names.first(name));
    let asked = match kind.and_then(|kind| kind.one_of(&KINDS)) {
        Some("strength") => strength::read(fields, given).map(PieceKind::Strength),
        Some("interval") => interval::read(fields, given).map(PieceKind::Interval),
        Some("hold") => hold::read(fields, given).map(PieceKind::Hold),
        Some(_) => note(fields).map(PieceKind::Note),
        None => {
            fields.abandon();
            None
        }
    };
    Some(Piece { name: name?, kind: asked? })
}

fn note(mut fields: Fields<'_>) -> Option<Note> {
    fields.rename(Part::Note);
    let text = fields.required("text", "text = \"Ten minutes easy on the rowing machine.\"");
    let text = text.and_then(|text| text.text(1..=LONGEST_NOTE, true));
    fields.finish();
    Some(Note { text: text? })
}
