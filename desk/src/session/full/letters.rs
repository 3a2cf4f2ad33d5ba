//! The letters of the keys beside the one key: which of them do something is the core's to say.

use holdfast_core::clock::Act;
use holdfast_core::session::{SideKey, SideKeyKind, Tap};

use super::asks;
use super::model::{Model, Wish};

/// A letter, what it is for, and what it says where that is not to be done.
const LETTERS: [(char, SideKeyKind, &str); 16] = [
    ('d', SideKeyKind::Hurts, "Choose the piece that hurts first, with Up and Down."),
    ('u', SideKeyKind::Undo, "Nothing to take back."),
    ('e', SideKeyKind::Other, "Nothing to type here."),
    ('o', SideKeyKind::Option, "No options here."),
    ('c', SideKeyKind::Clear, "No flag is open on this piece."),
    ('s', SideKeyKind::Later, "Nothing here to put off."),
    ('m', SideKeyKind::Minute, "No rest is running."),
    ('p', SideKeyKind::Pause, "No clock is running here."),
    ('p', SideKeyKind::Resume, "No clock is running here."),
    ('+', SideKeyKind::Extend, "No side is being held."),
    ('=', SideKeyKind::Extend, "No side is being held."),
    ('n', SideKeyKind::Next, "No clock is running here."),
    ('x', SideKeyKind::Stop, "No clock is running here."),
    ('b', SideKeyKind::Begin, "No clock to start here."),
    ('w', SideKeyKind::Station, "No other station to start at."),
    ('f', SideKeyKind::Finish, "No session is running."),
];

/// The letter of a key beside the one key.
pub(super) fn letter(kind: SideKeyKind) -> Option<char> {
    LETTERS.iter().find(|(_, of, _)| *of == kind).map(|(letter, ..)| *letter)
}

/// What a letter asks for here.
pub(super) fn pressed(model: &mut Model, pressed: char) -> Wish {
    let meant: Vec<SideKeyKind> = LETTERS
        .iter()
        .filter(|(letter, ..)| *letter == pressed)
        .map(|(_, kind, _)| *kind)
        .collect();
    let Some((_, _, absent)) = LETTERS.iter().find(|(letter, ..)| *letter == pressed) else {
        return model.hint("? shows all keys.");
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
    model.hint(*absent)
}

fn beside(model: &mut Model, key: SideKey) -> Wish {
    if let Some(tap) = key.tap {
        return Wish::Tap(tap);
    }
    match key.kind {
        SideKeyKind::Hurts => asks::discomfort(model),
        SideKeyKind::Option => asks::options(model),
        SideKeyKind::Clear => asks::clear_flags(model),
        SideKeyKind::Station => asks::stations(model),
        SideKeyKind::Finish => asks::rating(model, ""),
        SideKeyKind::Other => asks::line(model, ""),
        // These have taps.
        SideKeyKind::Undo
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
