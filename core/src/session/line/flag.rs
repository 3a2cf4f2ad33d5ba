//! Discomfort in a line: `flag knee 4`, `flag low-back 6 leg-weakness`.

use super::{Typed, movement_at_hand, tap, wrong};
use crate::care::{Place, Sign};
use crate::error::{Error, Result};
use crate::session::screen::{PieceKindView, PieceView, Row, SessionScreen};
use crate::session::tap::Tap;

/// Reads where, how bad, and the signs and the movement after that.
pub(super) fn read(rest: &[&str], screen: &SessionScreen) -> Result<Typed> {
    let usage = || {
        let places = Place::words().join(", ");
        wrong(format!("`flag PLACE N`, N from 1 to 10, with one of {places}"))
    };
    let [place, severity, more @ ..] = rest else { return Err(usage()) };
    let place = Place::from_text(place).ok_or_else(usage)?;
    let severity =
        severity.parse().ok().filter(|severity| (1..=10).contains(severity)).ok_or_else(usage)?;
    // Pain may come when nothing is left to do: it is flagged on the last piece.
    let named = screen.here.row.as_ref().and_then(Row::piece);
    let mut pieces = screen.pieces.iter().rev();
    let piece = match named {
        Some(name) => pieces.find(|piece| piece.name == name),
        None => pieces.find(|piece| !matches!(piece.kind, PieceKindView::Note { .. })),
    };
    let piece = piece.ok_or_else(|| wrong("no piece is there to flag"))?;
    let (mut signs, mut movement) = (Vec::new(), movement_at_hand(screen));
    let movements = movements(piece);
    for word in more {
        match Sign::from_text(word) {
            Some(sign) => signs.push(sign),
            None if movements.contains(word) => movement = Some((*word).to_owned()),
            None => return Err(neither(word, &movements)),
        }
    }
    tap(Tap::Flag { piece: piece.name.clone(), movement, place, severity, signs })
}

/// The movements of a piece with several, one of which a flag may name.
fn movements(piece: &PieceView) -> Vec<&str> {
    let PieceKindView::Interval { view } = &piece.kind else { return Vec::new() };
    let mut movements: Vec<&str> = Vec::new();
    for window in &view.windows {
        let movement = window.exercise.movement.as_str();
        if !movements.contains(&movement) {
            movements.push(movement);
        }
    }
    movements
}

fn neither(word: &str, movements: &[&str]) -> Error {
    let signs = Sign::words().join(", ");
    let or = match movements {
        [] => String::new(),
        movements => format!(", or a movement: {}", movements.join(", ")),
    };
    wrong(format!("\"{word}\" is no emergency sign; write one of {signs}{or}"))
}
