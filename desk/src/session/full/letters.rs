//! The letters of the keys beside the one key: which of them do something is the core's to say.

use holdfast_core::clock::Act;
use holdfast_core::session::{SideKey, SideKeyKind, Tap};

use super::asks;
use super::model::{Model, Wish};
use crate::say;

/// A letter, and what it is for. They are the same in every language: a hand knows them.
const LETTERS: [(char, SideKeyKind); 18] = [
    ('d', SideKeyKind::Hurts),
    ('u', SideKeyKind::Undo),
    ('r', SideKeyKind::Sure),
    ('e', SideKeyKind::Other),
    ('o', SideKeyKind::Option),
    ('a', SideKeyKind::Extra),
    ('c', SideKeyKind::Clear),
    ('s', SideKeyKind::Later),
    ('m', SideKeyKind::Minute),
    ('p', SideKeyKind::Pause),
    ('p', SideKeyKind::Resume),
    ('+', SideKeyKind::Extend),
    ('=', SideKeyKind::Extend),
    ('n', SideKeyKind::Next),
    ('x', SideKeyKind::Stop),
    ('b', SideKeyKind::Begin),
    ('w', SideKeyKind::Station),
    ('f', SideKeyKind::Finish),
];

/// What is said where that is not to be done.
fn absent(kind: SideKeyKind) -> &'static str {
    match kind {
        SideKeyKind::Hurts => say::full::choose_what_hurts(),
        SideKeyKind::Undo => say::full::nothing_to_undo(),
        SideKeyKind::Sure => say::full::nothing_to_confirm(),
        SideKeyKind::Other => say::full::nothing_to_type(),
        SideKeyKind::Option => say::full::no_options_here(),
        SideKeyKind::Extra => say::full::nothing_extra_here(),
        SideKeyKind::Clear => say::full::no_flag_open(),
        SideKeyKind::Later => say::full::nothing_for_later(),
        SideKeyKind::Minute => say::full::no_rest(),
        SideKeyKind::Pause | SideKeyKind::Resume | SideKeyKind::Next | SideKeyKind::Stop => {
            say::full::no_clock()
        }
        SideKeyKind::Extend => say::full::no_side(),
        SideKeyKind::Begin => say::full::no_clock_to_start(),
        SideKeyKind::Station => say::full::no_other_station(),
        SideKeyKind::Finish => say::full::no_session(),
    }
}

/// The letter of a key beside the one key.
pub(super) fn letter(kind: SideKeyKind) -> Option<char> {
    LETTERS.iter().find(|(_, of)| *of == kind).map(|(letter, _)| *letter)
}

/// What a letter asks for here.
pub(super) fn pressed(model: &mut Model, pressed: char) -> Wish {
    let meant: Vec<SideKeyKind> =
        LETTERS.iter().filter(|(letter, _)| *letter == pressed).map(|(_, kind)| *kind).collect();
    let Some(first) = meant.first().copied() else {
        return model.hint(say::full::see_all_keys());
    };
    let here = &model.screen.here;
    if let Some(key) = here.side_keys.iter().find(|key| meant.contains(&key.kind)) {
        let key = key.clone();
        return beside(model, key);
    }
    // What the one key does, its letter does too.
    if let Some(tap) =
        here.key.tap.clone().filter(|tap| kind(tap).is_some_and(|kind| meant.contains(&kind)))
    {
        return Wish::Tap(tap);
    }
    // Why a piece cannot be put off, the core says.
    if meant.contains(&SideKeyKind::Later) && model.piece().is_some() {
        return Wish::Line("later".into());
    }
    model.hint(absent(first))
}

fn beside(model: &mut Model, key: SideKey) -> Wish {
    if let Some(tap) = key.tap {
        return Wish::Tap(tap);
    }
    match key.kind {
        SideKeyKind::Hurts => asks::discomfort(model),
        SideKeyKind::Option => asks::options(model),
        SideKeyKind::Extra => asks::extra(model),
        SideKeyKind::Clear => asks::clear_flags(model),
        SideKeyKind::Station => asks::stations(model),
        SideKeyKind::Finish => asks::rating(model, ""),
        SideKeyKind::Other => asks::line(model, ""),
        // These have taps.
        SideKeyKind::Undo
        | SideKeyKind::Sure
        | SideKeyKind::Later
        | SideKeyKind::Minute
        | SideKeyKind::Pause
        | SideKeyKind::Resume
        | SideKeyKind::Extend
        | SideKeyKind::Next
        | SideKeyKind::Stop
        | SideKeyKind::Begin => Wish::Nothing,
    }
}

/// The key beside the one key that a clock's tap belongs to.
fn kind(tap: &Tap) -> Option<SideKeyKind> {
    let Tap::Clock { act, .. } = tap else { return None };
    Some(match act {
        Act::Begin => SideKeyKind::Begin,
        Act::Pause => SideKeyKind::Pause,
        Act::Resume => SideKeyKind::Resume,
        Act::Extend => SideKeyKind::Extend,
        Act::Skip => SideKeyKind::Next,
        Act::Stop => SideKeyKind::Stop,
    })
}
