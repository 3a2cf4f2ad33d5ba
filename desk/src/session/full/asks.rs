//! What keys ask before anything is saved: a line, or a list to choose from.

use holdfast_core::clock::Act;
use holdfast_core::session::{
    BarView, OptionView, PieceKindView, Question, Tap, extra_form, rating_form,
};

use super::form::{Item, Picker, Then, Typing};
use super::model::{Mode, Model, Wish};
use crate::say;

/// What the one key asks.
pub(super) fn question(model: &mut Model, question: Question) -> Wish {
    match question {
        Question::Day => days(model),
        Question::Rpe => rating(model, ""),
        Question::Load
        | Question::Reps
        | Question::Reserve
        | Question::Range
        | Question::Correction => line(model, ""),
    }
}

/// Opens the line for the row at hand, with what is typed of it already.
pub(super) fn line(model: &mut Model, typed: &str) -> Wish {
    let here = &model.screen.here;
    if here.key.asks == Some(Question::Rpe) {
        return rating(model, typed);
    }
    let Some(form) = here.form.clone() else { return model.hint(say::full::nothing_to_type()) };
    // These two are questions; the others are said better by what the line is for.
    let ask = match here.key.asks {
        Some(Question::Reps | Question::Reserve) => here.key.words.clone(),
        _ => form.ask,
    };
    open(model, Typing::new(ask, form.hint, typed, Then::Line))
}

/// Asks for the session's rating.
pub(super) fn rating(model: &mut Model, typed: &str) -> Wish {
    let form = rating_form(model.screen.afterwards);
    open(model, Typing::new(form.ask, form.hint, typed, Then::Rating))
}

/// Asks for a set or a movement that nobody planned.
pub(super) fn extra(model: &mut Model) -> Wish {
    let form = extra_form();
    open(model, Typing::new(form.ask, form.hint, "", Then::Extra))
}

/// Asks which day to train.
pub(super) fn days(model: &mut Model) -> Wish {
    let choice = |day: &String| (Item::of(day), Tap::Begin { day: Some(day.clone()) });
    let days = model.screen.days.iter().map(choice).collect();
    pick(model, Picker::taps(say::full::which_day(), days))
}

/// Asks for an option of the movement at hand.
pub(super) fn options(model: &mut Model) -> Wish {
    let at_hand = model.screen.here.movement.clone();
    let Some(piece) = model.piece() else { return Wish::Nothing };
    let here = |view: &&OptionView| at_hand.as_ref().is_none_or(|hand| view.movement == *hand);
    let views: Vec<&OptionView> = piece.options.iter().filter(here).collect();
    if views.is_empty() {
        return model.hint(say::full::no_options());
    }
    let tap = |option: Option<&OptionView>| Tap::TakeOption {
        piece: piece.name.clone(),
        movement: option.map(|view| view.movement.clone()).or_else(|| at_hand.clone()),
        option: option.map(|view| view.key.clone()),
    };
    let item = |view: &OptionView| {
        let (option, reason) = (&view.name, &view.because_text);
        let text = if view.taken {
            say::full::option_choice_taken(option, reason)
        } else {
            say::full::option_choice(option, reason)
        };
        Item { text, more: view.suggested.clone() }
    };
    let mut items: Vec<(Item, Tap)> =
        views.iter().map(|view| (item(view), tap(Some(view)))).collect();
    items.push((Item::of(say::full::no_option()), tap(None)));
    let ask = say::full::which_option(&piece.name);
    pick(model, Picker::taps(ask, items))
}

/// Asks for another bar of the room.
pub(super) fn bars(model: &mut Model) -> Wish {
    let Some(piece) = model.piece() else { return Wish::Nothing };
    let bars = match &piece.kind {
        PieceKindView::Strength { view } => view.bars.as_slice(),
        _ => &[],
    };
    let choice = |bar: &BarView| {
        let (piece, name) = (piece.name.clone(), bar.name.clone());
        let text =
            if bar.taken { say::full::bar_choice_taken(&bar.text) } else { bar.text.clone() };
        (Item::of(&text), Tap::TakeBar { piece, bar: name })
    };
    if bars.is_empty() {
        return model.hint(say::full::no_other_bar());
    }
    let items = bars.iter().map(choice).collect();
    let ask = say::full::which_bar(&piece.name);
    pick(model, Picker::taps(ask, items))
}

/// Asks where in a round to start the clock: in a full room not everybody starts at the first station.
pub(super) fn stations(model: &mut Model) -> Wish {
    let Some(piece) = model.piece() else { return Wish::Nothing };
    let PieceKindView::Interval { view } = &piece.kind else { return Wish::Nothing };
    let item = |(station, text): (u32, &String)| {
        let (piece, act) = (piece.name.clone(), Act::Begin);
        let tap = Tap::Clock { piece, act, station: Some(station) };
        (Item::of(&say::full::station(station, text)), tap)
    };
    let items = (1..).zip(&view.stations).map(item).collect();
    let ask = say::full::which_station(&piece.name);
    pick(model, Picker::taps(ask, items))
}

/// Asks where it hurts; then how bad it is, then for emergency signs.
pub(super) fn discomfort(model: &mut Model) -> Wish {
    let piece = model.piece().map(|piece| piece.name.clone());
    let picker = Picker::places(piece, model.screen.here.movement.clone());
    pick(model, picker)
}

/// Asks which flag to clear.
pub(super) fn clear_flags(model: &mut Model) -> Wish {
    let Some(piece) = model.piece() else { return Wish::Nothing };
    let items = piece.flags.iter().map(|flag| {
        let tap = Tap::ClearFlags { flags: vec![flag.flag] };
        (Item::of(&flag.text), tap)
    });
    let items = items.collect();
    pick(model, Picker::taps(say::full::which_flag(), items))
}

fn pick(model: &mut Model, picker: Picker) -> Wish {
    model.mode = Mode::Picking(picker);
    Wish::Nothing
}

fn open(model: &mut Model, typing: Typing) -> Wish {
    model.mode = Mode::Typing(typing);
    Wish::Nothing
}
