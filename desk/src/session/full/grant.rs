//! What keys ask for, done by the core.

use holdfast_core::session::Typed;
use holdfast_core::{Holdfast, Instant};

use super::model::{Mode, Model, Wish};
use crate::say;

/// Does what is wished for. True when that is to leave.
pub(super) fn grant(holdfast: &Holdfast, model: &mut Model, wish: Wish, at: &Instant) -> bool {
    match wish {
        Wish::Nothing => {}
        Wish::Leave => return true,
        Wish::Choose(row) => model.refresh(holdfast.choose(row, at.clone())),
        Wish::Tap(tap) => {
            let answers = Some(model.screen.revision);
            model.after(holdfast.tap(tap, answers, at.clone()));
        }
        Wish::Chosen(tap) => model.after(holdfast.tap(tap, None, at.clone())),
        Wish::Line(text) => match holdfast.read_line(text, at.clone()) {
            Ok(Typed::Tap { tap }) => model.after(holdfast.tap(tap, None, at.clone())),
            Ok(Typed::Sheet) => model.mode = Mode::Whole(0),
            Ok(Typed::Help) => model.mode = Mode::Help(0),
            Ok(Typed::Leave) => return true,
            Err(error) => model.refused(say::full::not_understood, &error),
        },
    }
    false
}
