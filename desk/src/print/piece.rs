//! Pieces: sets with their loads, windows, holds.

use holdfast_core::session::{
    FlagView, HoldView, IntervalView, NoteView, OptionView, PieceKindView, PieceView,
    SessionScreen, SetView, StrengthView,
};
use owo_colors::OwoColorize;

use super::{indented, table};
use crate::say;

/// Every piece of a screen.
pub(crate) fn pieces(screen: &SessionScreen) -> String {
    screen.pieces.iter().map(piece).collect()
}

fn piece(piece: &PieceView) -> String {
    let name = piece.name.bold();
    let titled = |heading: &str| format!("\n{}\n", say::sheet::piece(&name, heading));
    let own = match &piece.kind {
        PieceKindView::Strength { view } => titled(&view.heading) + &strength(view),
        PieceKindView::Interval { view } => titled(&view.heading) + &interval(view),
        PieceKindView::Hold { view } => titled(&view.heading) + &hold(view),
        PieceKindView::Note { text } => format!("\n{name}\n  {text}\n"),
    };
    own + &written(&piece.notes) + &flags(&piece.flags) + &options(&piece.options)
}

/// Notes, each in a line.
pub(crate) fn written(notes: &[NoteView]) -> String {
    notes.iter().map(|note| format!("  {}\n", note.text)).collect()
}

fn strength(view: &StrengthView) -> String {
    let mut text = String::new();
    let warm_up: Vec<&str> = view.warm_up.iter().map(|set| set.text.as_str()).collect();
    if !warm_up.is_empty() {
        let sets = warm_up.join(say::sheet::between_sets());
        text += &format!("  {}\n", say::sheet::warm_up(sets));
    }
    let mut rows = table(&[
        say::sheet::column_set(),
        say::sheet::column_load(),
        say::sheet::column_reps(),
        say::sheet::column_plates(),
        say::sheet::column_done(),
        say::sheet::column_why(),
    ]);
    // One reason for all is said once, below.
    let why = |set: &SetView| [set.why.clone(), set.others.clone()];
    let same = view.sets.len() > 1 && view.sets.iter().all(|set| why(set) == why(&view.sets[0]));
    for set in &view.sets {
        let build = set.load.as_ref().and_then(|load| load.build.as_ref());
        let plates = build.map(|build| build.short.as_ref().unwrap_or(&build.text));
        let done = set.done.as_ref().map(|done| done.text.as_str());
        let why: Vec<String> = why(set).into_iter().flatten().filter(|_| !same).collect();
        rows.add_row([
            set.set.to_string().as_str(),
            &set.load_text,
            &set.reps_text,
            plates.map_or("", String::as_str),
            done.unwrap_or_default(),
            &why.join("\n"),
        ]);
    }
    text += &indented(&rows, 2);
    if let Some(able) = &view.able {
        let text_of = match able.max {
            Some(_) => say::sheet::not_tested(&able.text),
            None => able.text.clone(),
        };
        text += &format!("  {}\n", text_of.dimmed());
    }
    for why in view.sets.first().filter(|_| same).into_iter().flat_map(why).flatten() {
        text += &format!("  {why}\n");
    }
    for set in view.sets.iter().filter(|set| set.open) {
        let said = match &set.expected {
            Some(expected) => say::sheet::open_set_expected(set.set, &expected.text),
            None => say::sheet::open_set(set.set),
        };
        text += &format!("  {}\n", said.dimmed());
    }
    text
}

fn interval(view: &IntervalView) -> String {
    let logged = view.windows.iter().any(|window| window.reps.is_some());
    // Before the start one round says it all.
    let shown = if logged { view.windows.len() } else { view.stations.len() };
    let mut rows = table(&[]);
    for window in view.windows.iter().take(shown) {
        let done = window.done_text.as_deref().unwrap_or_default();
        rows.add_row([window.window.to_string().as_str(), &window.asked_text, done]);
    }
    indented(&rows, 2)
}

fn hold(view: &HoldView) -> String {
    let mut text = String::new();
    let held = view.sides.iter().filter_map(|side| {
        let held = side.held_text.as_ref()?;
        Some(match &side.name {
            Some(name) => say::sheet::held_side(name, held),
            None => held.clone(),
        })
    });
    let held: Vec<String> = held.collect();
    if !held.is_empty() {
        let sides = held.join(say::sheet::between_sides());
        text += &format!("  {}\n", say::sheet::held(sides));
    }
    if let Some(range) = &view.range {
        let read: Vec<&str> = range.readings.iter().map(|reading| reading.text.as_str()).collect();
        let measured = if read.is_empty() {
            say::sheet::measure(&range.name)
        } else {
            say::sheet::measured(&range.name, read.join(say::sheet::between_readings()))
        };
        text += &format!("  {measured}\n");
        for judged in &range.judged {
            text += &format!("  {judged}\n");
        }
    }
    text
}

/// Open flags with what to do.
pub(crate) fn flags(flags: &[FlagView]) -> String {
    let mut text = String::new();
    for flag in flags {
        text += &format!("  {} {}\n", say::sheet::discomfort().red().bold(), flag.text);
        for line in &flag.advice.lines {
            text += &format!("    {line}\n");
        }
    }
    text
}

pub(crate) fn options(options: &[OptionView]) -> String {
    if options.is_empty() {
        return String::new();
    }
    let each: Vec<String> = options
        .iter()
        .map(|option| {
            if option.taken {
                say::sheet::option_taken(&option.key, &option.because_text)
            } else {
                say::sheet::option(&option.key, &option.because_text)
            }
        })
        .collect();
    let each = each.join(say::sheet::between_options());
    let mut text = format!("  {}\n", say::sheet::options(each).dimmed());
    for option in options {
        if let Some(suggested) = &option.suggested {
            let consider = say::sheet::consider(&option.key);
            text += &format!("  {} {suggested}\n", consider.yellow());
        }
    }
    text
}
