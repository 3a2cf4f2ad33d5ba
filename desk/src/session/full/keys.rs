//! From a key to a wish.

use holdfast_core::clock::Act;
use holdfast_core::companion::{OptionView, PieceView, SessionState, Tap};
use ratatui::crossterm::event::{KeyCode, KeyEvent, KeyModifiers};

use super::form::{Choice, Hurt, Item, Picker, Then, Typing, clear, signs};
use super::go::{clock_act, edit, go};
use super::model::{Mode, Model, Wish};
use super::rows::{rows, same_place};
use crate::print;
use crate::session::line::{self, Line};
use crate::session::step::Step;

/// Said when somebody who was telling a discomfort goes back.
const NO_FLAG: &str = "no discomfort is flagged: d begins again";

/// What a key asks for.
pub(super) fn key(model: &mut Model, key: KeyEvent) -> Wish {
    let control = key.modifiers.contains(KeyModifiers::CONTROL);
    model.sent = None;
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
            _ => model.hint("that key was not taken: the window is too small"),
        };
    }
    match std::mem::replace(&mut model.mode, Mode::Day) {
        Mode::Day => day(model, key.code),
        Mode::Help(from) => help(model, key.code, from),
        Mode::Typing(typing) => typed(model, key.code, control, typing),
        Mode::Picking(picker) => picked(model, key.code, picker),
    }
}

fn day(model: &mut Model, code: KeyCode) -> Wish {
    let at = model.at();
    match code {
        KeyCode::Enter | KeyCode::Char(' ') => go(model, &at),
        KeyCode::Up => choose(model, &at, -1),
        KeyCode::Down => choose(model, &at, 1),
        KeyCode::Esc => {
            model.chosen = None;
            Wish::Nothing
        }
        KeyCode::Char('q') => Wish::Leave,
        KeyCode::Char('?') => {
            model.mode = Mode::Help(0);
            Wish::Nothing
        }
        KeyCode::Char('u') => Wish::Taps(vec![Tap::Undo]),
        KeyCode::Char('e') => edit(model, &at, ""),
        KeyCode::Char(digit @ '0'..='9') => edit(model, &at, &digit.to_string()),
        KeyCode::Char('o') => options(model, &at),
        KeyCode::Char('d') => discomfort(model, &at),
        KeyCode::Char('c') => clear_flags(model, &at),
        KeyCode::Char('s') => skip(model, &at),
        KeyCode::Char('w') => stations(model, &at),
        KeyCode::Char('f') => finish(model),
        KeyCode::Char(letter) => clock_act(model, &at, letter),
        _ => Wish::Nothing,
    }
}

fn choose(model: &mut Model, at: &Step, by: isize) -> Wish {
    let rows = rows(&model.screen);
    let here = rows.iter().position(|row| same_place(row, at)).unwrap_or(0);
    let there = here.saturating_add_signed(by).min(rows.len() - 1);
    model.chosen = rows.get(there).cloned();
    Wish::Nothing
}

fn skip(model: &mut Model, at: &Step) -> Wish {
    let Some(name) = at.name() else { return model.hint("nothing is left to pass over") };
    // Only the reading is passed over, not the hold it belongs to.
    let what = if matches!(at, Step::Measure { .. }) { "the reading" } else { name };
    let text = format!("{what}: later. Up and Down go back to it");
    model.skipped.add(at);
    model.chosen = None;
    model.hint(text)
}

/// Asks for the session's rating.
pub(super) fn finish(model: &mut Model) -> Wish {
    model.mode = Mode::Typing(Typing {
        ask: "How hard was the whole session, 0 to 10?".into(),
        hint: "0 is rest, 10 the hardest there is; empty ends without a rating. Esc: not yet"
            .into(),
        text: String::new(),
        then: Then::Rating,
    });
    Wish::Nothing
}

fn options(model: &mut Model, at: &Step) -> Wish {
    let (piece, views, at_hand): (&str, &[OptionView], _) = match (at, at.piece(&model.screen)) {
        (Step::Set { .. }, Some(PieceView::Strength { view })) => (&view.name, &view.options, None),
        (Step::Window { movement, .. }, Some(PieceView::Interval { view })) => {
            (&view.name, &view.options, Some(movement))
        }
        _ => return model.hint("there are no options here"),
    };
    // In an interval piece they are about the movement of the window at hand.
    let here = |view: &&OptionView| at_hand.is_none_or(|movement| view.movement == *movement);
    let views: Vec<&OptionView> = views.iter().filter(here).collect();
    if views.is_empty() {
        return model.hint("the plan has no options for this movement");
    }
    let tap = |option: Option<&OptionView>| Tap::TakeOption {
        piece: piece.to_owned(),
        movement: option.map(|view| view.movement.clone()).or_else(|| at_hand.cloned()),
        option: option.map(|view| view.key.clone()),
    };
    let item = |view: &OptionView| {
        let taken = if view.taken { ", taken" } else { "" };
        Item {
            text: format!("{}: for {}{taken}", view.name, view.because_text),
            more: view.suggested.clone(),
        }
    };
    let mut items: Vec<(Item, Tap)> =
        views.iter().map(|view| (item(view), tap(Some(view)))).collect();
    items.push((Item::of("the movement itself"), tap(None)));
    model.mode = Mode::Picking(Picker::taps(format!("Options for {piece}"), items));
    Wish::Nothing
}

/// Where in a round to start the clock: in a full room not everybody starts at the first station.
fn stations(model: &mut Model, at: &Step) -> Wish {
    let Some(PieceView::Interval { view }) = at.piece(&model.screen) else {
        return model.hint("there are no stations here");
    };
    let item = |station: u32| {
        let window = view.windows.iter().find(|it| it.station == station)?;
        let text = format!("station {station}: {}", print::asked_text(window));
        let (piece, act) = (view.name.clone(), Act::Begin);
        Some((Item::of(&text), Tap::Clock { piece, act, station: Some(station) }))
    };
    let items = (1..=view.stations).filter_map(item).collect();
    let ask = format!("Start the clock of {} at which station?", view.name);
    model.mode = Mode::Picking(Picker::taps(ask, items));
    Wish::Nothing
}

fn discomfort(model: &mut Model, at: &Step) -> Wish {
    let Some(piece) = at.name() else {
        return model.hint("choose the piece that hurts first, with Up and Down");
    };
    let movement = match at {
        Step::Window { movement, .. } => Some(movement.clone()),
        _ => None,
    };
    model.mode = Mode::Picking(Picker::places(piece.to_owned(), movement));
    Wish::Nothing
}

fn clear_flags(model: &mut Model, at: &Step) -> Wish {
    let flags = super::flags(at.piece(&model.screen));
    let items: Vec<(Item, Tap)> =
        flags.iter().map(|flag| (Item::of(&flag.text), clear(flag.flag))).collect();
    if items.is_empty() {
        return model.hint("no flag is open on this piece");
    }
    model.mode = Mode::Picking(Picker::taps("Clear which flag? Loads may go up again then", items));
    Wish::Nothing
}

fn help(model: &mut Model, code: KeyCode, from: u16) -> Wish {
    model.mode = match code {
        KeyCode::Down | KeyCode::Char(' ') => Mode::Help(from.saturating_add(1)),
        KeyCode::Up => Mode::Help(from.saturating_sub(1)),
        _ => Mode::Day,
    };
    Wish::Nothing
}

fn typed(model: &mut Model, code: KeyCode, control: bool, mut typing: Typing) -> Wish {
    match code {
        KeyCode::Esc if matches!(typing.then, Then::Severity(_)) => return model.hint(NO_FLAG),
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
    let read = match &typing.then {
        Then::Line => return entered_line(model, typing, &text),
        Then::Rating => match text.parse::<u32>() {
            _ if text.is_empty() => {
                Ok(Wish::Taps(vec![Tap::Finish { effort: None, minutes: None }]))
            }
            Ok(effort @ 0..=10) => {
                Ok(Wish::Taps(vec![Tap::Finish { effort: Some(effort), minutes: None }]))
            }
            _ => Err("a rating from 0 to 10"),
        },
        Then::Severity(hurt) => match text.parse::<u32>() {
            Ok(severity @ 1..=10) => {
                let hurt = Hurt { severity, ..hurt.clone() };
                model.mode = Mode::Picking(Picker::signs(hurt));
                Ok(Wish::Nothing)
            }
            _ => Err("a number from 1 to 10"),
        },
    };
    read.unwrap_or_else(|wrong| {
        typing.hint = format!("not understood: {wrong}");
        model.mode = Mode::Typing(typing);
        Wish::Nothing
    })
}

fn entered_line(model: &mut Model, mut typing: Typing, text: &str) -> Wish {
    let at = model.at();
    // A hold's seconds are enough: the word for them is for a line without a screen around it.
    let seconds = matches!(at, Step::Hold { .. }) && text.starts_with(|c: char| c.is_ascii_digit());
    let text = if seconds { format!("held {text}") } else { text.to_owned() };
    match line::parse(&text, &at, model.screen.unit) {
        Ok(Line::Taps(taps)) => {
            model.sent = Some(typing);
            Wish::Taps(taps)
        }
        Ok(Line::Quit) => Wish::Leave,
        Ok(Line::Skip) => skip(model, &at),
        Ok(Line::Clear) => clear_flags(model, &at),
        Ok(Line::Sheet | Line::Help) => {
            model.mode = Mode::Help(0);
            Wish::Nothing
        }
        Err(wrong) => {
            typing.hint = format!("not understood: {wrong}");
            model.mode = Mode::Typing(typing);
            Wish::Nothing
        }
    }
}

fn picked(model: &mut Model, code: KeyCode, mut picker: Picker) -> Wish {
    match code {
        KeyCode::Esc | KeyCode::Char('q') => {
            let hurts = matches!(picker.choice, Choice::Signs { .. } | Choice::Place { .. });
            return if hurts { model.hint(NO_FLAG) } else { Wish::Nothing };
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
            Wish::Taps(vec![taps.swap_remove(picker.at)])
        }
        Choice::Place { piece, movement, places } => {
            let Some(place) = places.get(picker.at).copied() else { return Wish::Nothing };
            let hurt = Hurt { piece, movement, place, severity: 0 };
            model.mode = Mode::Typing(Typing {
                ask: format!("How bad is it, {}, 1 to 10?", place.text().replace('-', " ")),
                hint: "it stops this movement's progression. Esc: no flag".into(),
                text: String::new(),
                then: Then::Severity(hurt),
            });
            Wish::Nothing
        }
        Choice::Signs { hurt, marked } => {
            let Hurt { piece, movement, place, severity } = hurt;
            let signs = signs(&marked);
            Wish::Taps(vec![Tap::Flag { piece, movement, place, severity, signs }])
        }
        Choice::Tap(_) => Wish::Nothing,
    }
}

/// Keys and what they do here and now.
pub(super) fn hints(model: &Model) -> Vec<(String, String)> {
    let own = |pairs: &[(&str, &str)]| {
        pairs.iter().map(|(key, what)| ((*key).to_owned(), (*what).to_owned())).collect()
    };
    match &model.mode {
        Mode::Help(_) => own(&[("Up Down", "move"), ("Esc", "back")]),
        Mode::Typing(_) => own(&[("Enter", "take it"), ("Esc", "back")]),
        Mode::Picking(Picker { choice: Choice::Signs { .. }, .. }) => {
            own(&[("Space", "mark"), ("Enter", "save"), ("Up Down", "move"), ("Esc", "no flag")])
        }
        Mode::Picking(_) => own(&[("Enter", "take it"), ("Up Down", "move"), ("Esc", "back")]),
        Mode::Day if model.screen.state == SessionState::Finished => own(&[
            ("Enter", "leave"),
            ("u", "open again"),
            ("f", "rate anew"),
            ("e", "correct"),
            ("Up Down", "move"),
            ("?", "all keys"),
        ]),
        Mode::Day => super::go::hints(model),
    }
}
