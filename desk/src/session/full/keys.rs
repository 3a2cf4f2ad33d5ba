//! From a key to a wish.

use holdfast_core::session::{KeyKind, Row, Tap};
use ratatui::crossterm::event::{KeyCode, KeyEvent, KeyModifiers};

use super::form::{Choice, Hurt, Picker, Then, Typing, signs};
use super::model::{Mode, Model, Wish};
use super::{asks, letters};
use crate::say;

/// What a key asks for.
pub(super) fn key(model: &mut Model, key: KeyEvent) -> Wish {
    let control = key.modifiers.contains(KeyModifiers::CONTROL);
    model.key_came();
    if control && key.code == KeyCode::Char('c') {
        return Wish::Leave;
    }
    // Other keys with Control are no keys of ours, but for those of a typed line.
    if control && !matches!(model.mode, Mode::Typing(_)) {
        return Wish::Nothing;
    }
    // Nobody should log what cannot be seen.
    if model.blind {
        return match key.code {
            KeyCode::Char('q') => Wish::Leave,
            _ => model.hint(say::full::ignored_too_small()),
        };
    }
    match std::mem::replace(&mut model.mode, Mode::Day) {
        Mode::Day => day(model, key.code),
        Mode::Help(from) => {
            model.mode = scrolled(key.code, from).map_or(Mode::Day, Mode::Help);
            Wish::Nothing
        }
        Mode::Whole(from) => {
            model.mode = scrolled(key.code, from).map_or(Mode::Day, Mode::Whole);
            Wish::Nothing
        }
        Mode::Typing(typing) => typed(model, key.code, control, typing),
        Mode::Picking(picker) => picked(model, key.code, picker),
    }
}

fn day(model: &mut Model, code: KeyCode) -> Wish {
    match code {
        KeyCode::Enter | KeyCode::Char(' ') => the_key(model),
        KeyCode::Up => row_by(model, -1),
        KeyCode::Down => row_by(model, 1),
        KeyCode::Tab => piece_by(model, 1),
        KeyCode::BackTab => piece_by(model, -1),
        KeyCode::Esc => Wish::Choose(None),
        KeyCode::Char('q') => Wish::Leave,
        KeyCode::Char('?') => {
            model.mode = Mode::Help(0);
            Wish::Nothing
        }
        KeyCode::Char('v') => {
            model.mode = Mode::Whole(0);
            Wish::Nothing
        }
        KeyCode::Char('k') => asks::bars(model),
        KeyCode::Char('e') => asks::line(model, ""),
        KeyCode::Char(digit @ '0'..='9') => asks::line(model, &digit.to_string()),
        KeyCode::Char(letter) => letters::pressed(model, letter),
        _ => Wish::Nothing,
    }
}

/// What the one key asks for.
fn the_key(model: &mut Model) -> Wish {
    let key = model.screen.here.key.clone();
    match (key.tap, key.asks) {
        (Some(tap), _) => Wish::Tap(tap),
        (None, Some(question)) => asks::question(model, question),
        // It moves on and does nothing: there is nowhere to go but out.
        (None, None) if key.kind == KeyKind::Moves => Wish::Leave,
        (None, None) => model.hint(key.more.unwrap_or(key.words)),
    }
}

/// The row so many further on the screen.
fn row_by(model: &Model, by: isize) -> Wish {
    let rows = &model.screen.rows;
    let here = rows.iter().position(|row| Some(row) == model.row()).unwrap_or(0);
    let there = here.saturating_add_signed(by).min(rows.len().saturating_sub(1));
    rows.get(there).map_or(Wish::Nothing, |row| Wish::Choose(Some(row.clone())))
}

/// Where the next piece stands, or the one before; after the last comes the end of the session.
fn piece_by(model: &Model, by: isize) -> Wish {
    let stands = model.screen.pieces.iter().filter_map(|piece| piece.stands_at.clone());
    let places: Vec<Row> = stands.chain([Row::Finish]).collect();
    let name = model.row().map(Row::piece);
    let here = places.iter().position(|row| Some(row.piece()) == name).unwrap_or(0);
    let there = here.saturating_add_signed(by).min(places.len() - 1);
    let row = places.get(there).filter(|row| model.screen.rows.contains(row));
    row.map_or(Wish::Nothing, |row| Wish::Choose(Some(row.clone())))
}

/// The first line shown of a text after a key; none when it is closed. Other keys do nothing there.
fn scrolled(code: KeyCode, from: u16) -> Option<u16> {
    match code {
        KeyCode::Down => Some(from.saturating_add(1)),
        KeyCode::PageDown => Some(from.saturating_add(10)),
        KeyCode::Up => Some(from.saturating_sub(1)),
        KeyCode::PageUp => Some(from.saturating_sub(10)),
        KeyCode::Esc | KeyCode::Enter | KeyCode::Char(' ' | 'q' | '?' | 'v') => None,
        _ => Some(from),
    }
}

fn typed(model: &mut Model, code: KeyCode, control: bool, mut typing: Typing) -> Wish {
    match code {
        KeyCode::Esc if matches!(typing.then, Then::Severity(_)) => {
            return model.hint(say::full::not_flagged());
        }
        KeyCode::Esc => return Wish::Nothing,
        KeyCode::Enter => return entered(model, typing),
        KeyCode::Backspace => drop(typing.text.pop()),
        KeyCode::Char('u') if control => typing.text.clear(),
        KeyCode::Char(letter) if !control => typing.add(letter),
        _ => {}
    }
    model.mode = Mode::Typing(typing);
    Wish::Nothing
}

fn entered(model: &mut Model, mut typing: Typing) -> Wish {
    let text = typing.text.trim().to_owned();
    match &typing.then {
        Then::Line => {
            model.sent = Some(typing);
            Wish::Line(text)
        }
        Then::Rating => {
            model.sent = Some(typing);
            Wish::Line(format!("finish {text}"))
        }
        Then::Extra => {
            model.sent = Some(typing);
            Wish::Line(format!("extra {text}"))
        }
        Then::Severity(hurt) => {
            if let Ok(severity @ 1..=10) = text.parse::<u32>() {
                let hurt = Hurt { severity, ..hurt.clone() };
                model.mode = Mode::Picking(Picker::signs(hurt));
            } else {
                typing.wrong = Some(say::full::how_bad_wrong().into());
                model.mode = Mode::Typing(typing);
            }
            Wish::Nothing
        }
    }
}

fn picked(model: &mut Model, code: KeyCode, mut picker: Picker) -> Wish {
    match code {
        KeyCode::Esc | KeyCode::Char('q') => {
            let hurts = matches!(picker.choice, Choice::Signs { .. } | Choice::Place { .. });
            return if hurts { model.hint(say::full::not_flagged()) } else { Wish::Nothing };
        }
        KeyCode::Up => picker.go(-1),
        KeyCode::Down => picker.go(1),
        KeyCode::Char(' ') if matches!(picker.choice, Choice::Signs { .. }) => picker.mark(),
        KeyCode::Enter | KeyCode::Char(' ') => return took(model, picker),
        _ => {}
    }
    model.mode = Mode::Picking(picker);
    Wish::Nothing
}

fn took(model: &mut Model, picker: Picker) -> Wish {
    match picker.choice {
        Choice::Tap(mut taps) if picker.at < taps.len() => {
            Wish::Chosen(taps.swap_remove(picker.at))
        }
        Choice::Place { piece, movement, places } => {
            let Some(place) = places.get(picker.at).copied() else { return Wish::Nothing };
            model.mode =
                Mode::Typing(Typing::severity(Hurt { piece, movement, place, severity: 0 }));
            Wish::Nothing
        }
        Choice::Signs { hurt, marked } => {
            let Hurt { piece, movement, place, severity } = hurt;
            let signs = signs(&marked);
            Wish::Chosen(match piece {
                Some(piece) => Tap::Flag { piece, movement, place, severity, signs },
                None => Tap::FlagBetween { movement: None, place, severity, signs, on: None },
            })
        }
        Choice::Tap(_) => Wish::Nothing,
    }
}
