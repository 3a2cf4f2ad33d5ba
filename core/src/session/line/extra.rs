//! What nobody planned, in a line: `extra 60 x 8` is a set more, `extra face pull 20 x 12` another movement.

use super::{Typed, set, tap, wrong};
use crate::error::Result;
use crate::say;
use crate::session::screen::{PieceKindView, PieceView, Row, SessionScreen};
use crate::session::tap::Tap;

/// Reads a movement, where one is named, and what was done. A name ends where the numbers begin.
pub(super) fn read(rest: &[&str], screen: &SessionScreen) -> Result<Typed> {
    let at = rest.iter().position(|word| is_number(word)).unwrap_or(rest.len());
    let (name, done) = rest.split_at(at);
    if rest.is_empty() {
        return Err(wrong(say::line::which_extra()));
    }
    let (mut load, mut reps, mut reserve) = (None, None, None);
    if !done.is_empty()
        && let Typed::Tap { tap: Tap::LogSet { load: lifted, reps: made, reserve: left, .. } } =
            set::read(&done.join(" "), "", 1, screen.unit)?
    {
        (load, reps, reserve) = (lifted, made, left);
    }
    if !name.is_empty() {
        return tap(Tap::LogExtra { movement: name.join(" "), set: None, load, reps, reserve });
    }
    let (piece, sets) = done_before(screen).ok_or_else(|| wrong(say::line::no_extra_yet()))?;
    tap(Tap::LogSet { piece: piece.name.clone(), set: Some(sets + 1), load, reps, reserve })
}

/// `60`, `-20`; a word that ends in a number is none.
fn is_number(word: &str) -> bool {
    let digits = word.trim_start_matches(['-', '\u{2212}']);
    digits.starts_with(|letter: char| letter.is_ascii_digit())
}

/// The piece of sets that is at hand, or the nearest before it, all of whose sets are done; and how many it has.
fn done_before(screen: &SessionScreen) -> Option<(&PieceView, u32)> {
    let here = screen.here.row.as_ref().and_then(Row::piece);
    let here = screen.pieces.iter().position(|piece| Some(piece.name.as_str()) == here);
    let up_to = here.map_or(screen.pieces.len(), |at| at + 1);
    screen.pieces[..up_to].iter().rev().find_map(|piece| match &piece.kind {
        PieceKindView::Strength { view } if view.next_set.is_none() => {
            Some((piece, view.sets.iter().map(|set| set.set).max()?))
        }
        _ => None,
    })
}
