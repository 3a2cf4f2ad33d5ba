//! The piece at hand: its sets, windows or sides, what comes next and why, and care first.

use holdfast_core::care::ALWAYS;
use holdfast_core::companion::{
    HoldView, IntervalView, OptionView, PieceView, SetView, StrengthView,
};
use ratatui::Frame;
use ratatui::layout::Rect;
use ratatui::style::Style;

use crate::full::pane::{Pane, columns};
use crate::full::theme::Theme;
use crate::print;
use crate::session::full::model::Model;
use crate::session::full::{flags, name};
use crate::session::prompt;
use crate::session::step::Step;

pub(super) fn draw(frame: &mut Frame, area: Rect, model: &Model, theme: Theme) {
    let at = model.at();
    let mut pane = Pane::new(area.width);
    let piece = at.piece(&model.screen);
    care(piece, &mut pane, theme);
    notes(model, &at, &mut pane);
    pane.gap();
    match piece {
        Some(PieceView::Strength { view }) => strength(view, &at, area.height, &mut pane, theme),
        Some(PieceView::Interval { view }) => interval(view, &at, area.height, &mut pane, theme),
        Some(PieceView::Hold { view }) => hold(view, &at, model, &mut pane, theme),
        _ => finish(model, &mut pane, theme),
    }
    pane.draw(frame, area);
}

/// Open flags with what to do, before anything else.
pub(super) fn care(piece: Option<&PieceView>, pane: &mut Pane, theme: Theme) {
    for flag in flags(piece) {
        let word = if flag.advice.urgent { "EMERGENCY SIGN:" } else { "DISCOMFORT:" };
        pane.headed(theme.care(), word, &flag.text);
        for line in &flag.advice.lines {
            pane.text(Style::new(), &format!("  {line}"));
        }
    }
}

/// The coach's words right before the piece at hand; those after the last piece at the end.
pub(super) fn notes(model: &Model, at: &Step, pane: &mut Pane) {
    let pieces = &model.screen.pieces;
    let here = pieces.iter().position(|piece| at.name() == Some(name(piece)));
    let before = &pieces[..here.unwrap_or(pieces.len())];
    let own = before.iter().rev().take_while(|piece| matches!(piece, PieceView::Note { .. }));
    let own: Vec<&PieceView> = own.collect();
    for piece in own.into_iter().rev() {
        if let PieceView::Note { name, text } = piece {
            pane.text(Style::new(), &format!("{name}: {text}"));
        }
    }
}

fn strength(view: &StrengthView, at: &Step, height: u16, pane: &mut Pane, theme: Theme) {
    let bar = if view.bar.is_empty() { String::new() } else { format!(" on the {}", view.bar) };
    pane.text(theme.strong(), &format!("{}{bar}, rest {}", view.movement, view.rest_text));
    let Step::Set { set: here, .. } = at else { return };
    if !view.warm_up.is_empty() {
        pane.headed(theme.strong(), "warm-up:", &print::warm_up(view));
    }
    set_table(view, *here, rows_left(height, pane), pane, theme);
    if let Some(set) = view.sets.iter().find(|set| set.set == *here) {
        pane.gap();
        if let Some(done) = &set.done {
            let text = print::done_text(set, &view.movement);
            let style = if done.made { theme.good() } else { theme.warn() };
            pane.headed(style, &format!("set {} done:", set.set), &text);
            if !done.doubt.is_empty() {
                pane.headed(theme.warn(), "really?", &done.doubt);
            }
        } else {
            pane.text(theme.here_now(), &print::set_line(view, set));
        }
        if !set.why.is_empty() {
            pane.text(Style::new(), &format!("why: {}", set.why));
        }
        if let (None, Some(expected)) = (&set.done, &set.expected) {
            pane.text(theme.quiet(), &format!("open set: {}", expected.text));
        }
    }
    consider(&view.options, pane, theme);
    if !view.bar.is_empty() {
        pane.gap();
        pane.text(theme.quiet(), ALWAYS[2]);
    }
}

/// The sets around the one at hand, in so many rows.
pub(super) fn set_table(
    view: &StrengthView,
    here: u32,
    rows: usize,
    pane: &mut Pane,
    theme: Theme,
) {
    let to_come: Vec<Vec<String>> =
        view.sets.iter().filter(|set| set.done.is_none()).map(set_cells).collect();
    let mut to_come = columns(&to_come).into_iter();
    let done =
        |set: &SetView| format!("{:<2} did {}", set.set, print::done_text(set, &view.movement));
    let lines: Vec<String> = view
        .sets
        .iter()
        .map(|set| if set.done.is_some() { done(set) } else { to_come.next().unwrap_or_default() })
        .collect();
    let chosen = view.sets.iter().position(|set| set.set == here).unwrap_or(0);
    table(&lines, chosen, rows, pane, theme);
}

/// Rows for a table that leave room for what comes after it.
fn rows_left(height: u16, pane: &Pane) -> usize {
    usize::from(height.saturating_sub(pane.height()).saturating_sub(7)).max(3)
}

/// What a set that is to come asks for, in columns.
fn set_cells(set: &SetView) -> Vec<String> {
    let open = if set.open { "+" } else { "" };
    let build = set.load.as_ref().map_or(String::new(), |load| load.build.clone());
    vec![set.set.to_string(), print::load_text(set), format!("x {}{open}", set.asked), build]
}

/// Rows that show no more than what is around the one at hand.
const FEW: usize = 3;

/// Lines with the chosen one marked, as many around it as there is room for.
fn table(lines: &[String], chosen: usize, room: usize, pane: &mut Pane, theme: Theme) {
    let from = chosen.saturating_sub(room / 2).min(lines.len().saturating_sub(room));
    for (index, line) in lines.iter().enumerate().skip(from).take(room) {
        let here = index == chosen;
        let (mark, style) = if here { (">", theme.here_now()) } else { (" ", Style::new()) };
        pane.text(style, &format!("{mark} {line}"));
    }
    // In a few rows it is plain that there are more.
    if lines.len() > room && room > FEW {
        pane.text(theme.quiet(), "  (more: Up and Down)");
    }
}

/// Options that are suggested today, with the reason.
pub(super) fn consider(options: &[OptionView], pane: &mut Pane, theme: Theme) {
    for option in options.iter().filter(|option| option.taken) {
        pane.text(Style::new(), &format!("taken: {}, for {}", option.name, option.because_text));
    }
    for option in options.iter().filter(|option| !option.suggested.is_empty()) {
        let text = format!("{}: {} (o)", option.name, option.suggested);
        pane.headed(theme.warn(), "consider", &text);
    }
}

fn interval(view: &IntervalView, at: &Step, height: u16, pane: &mut Pane, theme: Theme) {
    let text = format!(
        "{}: {} windows of {}, {} rounds, aim for {} to spare",
        view.name,
        view.windows.len(),
        view.window_text,
        view.rounds,
        view.margin_text
    );
    pane.text(theme.strong(), &text);
    let here = |window: u32| matches!(at, Step::Window { window: at, .. } if *at == window);
    let cells: Vec<Vec<String>> = view
        .windows
        .iter()
        .map(|it| vec![it.window.to_string(), print::asked_text(it), print::window_done(it)])
        .collect();
    let chosen = view.windows.iter().position(|it| here(it.window)).unwrap_or(0);
    table(&columns(&cells), chosen, rows_left(height, pane), pane, theme);
    if !view.ask.is_empty() {
        pane.gap();
        pane.text(theme.warn(), &view.ask);
    }
    if let Some(fewer) = view.windows.get(chosen).and_then(|window| window.fewer.as_ref()) {
        pane.headed(theme.warn(), "fewer:", &fewer.words);
    }
    consider(&view.options, pane, theme);
}

fn hold(view: &HoldView, at: &Step, model: &Model, pane: &mut Pane, theme: Theme) {
    let how = view.technique.text().replace('-', " and ");
    let sides = if view.sides.len() == 1 { "one side" } else { "each side" };
    let text = format!("{}: {}, {} {sides}, {how}", view.name, view.stretch, view.hold_text);
    pane.text(theme.strong(), &text);
    pane.gap();
    let readings = view.range.iter().flat_map(|range| &range.readings);
    for reading in readings {
        let side = reading.side.map_or(String::new(), |side| format!(", side {side}"));
        pane.text(Style::new(), &format!("{}{side}: {}", reading.when.text(), reading.text));
    }
    for side in view.sides.iter().filter(|side| side.held_ms.is_some()) {
        let short = print::short(side);
        pane.text(theme.good(), &format!("held, side {}: {}{short}", side.side, side.held_text));
    }
    for judged in view.range.iter().flat_map(|range| &range.judged) {
        pane.text(Style::new(), judged);
    }
    pane.gap();
    match at {
        Step::Measure { .. } => pane.text(theme.here_now(), &prompt(&model.screen, at)),
        _ if view.clock.is_none() => {
            let switch = if view.sides.len() > 1 { "; the switch has its own time" } else { "" };
            pane.text(theme.here_now(), "Enter starts the clock, with time to get ready");
            pane.text(theme.quiet(), &format!("p pauses, n skips, x stops{switch}"));
        }
        _ => {}
    }
    pane.gap();
    pane.text(theme.quiet(), ALWAYS[1]);
}

fn finish(model: &Model, pane: &mut Pane, theme: Theme) {
    use holdfast_core::companion::SessionState;
    if model.screen.state == SessionState::Finished {
        pane.text(theme.strong(), "Finished. The next exchange carries it to your coach.");
    } else {
        pane.text(theme.strong(), "All that is planned is logged or passed over.");
        pane.text(theme.here_now(), "Enter: how hard was the whole session?");
    }
}
