//! The day's pieces in order, with how far each is.

use holdfast_core::companion::PieceView;
use ratatui::Frame;
use ratatui::layout::Rect;
use ratatui::text::Line;

use crate::full::pane::{Pane, columns};
use crate::full::theme::Theme;
use crate::session::full::model::Model;
use crate::session::full::rows::hold_done;
use crate::session::full::{flags, name};

pub(super) fn draw(frame: &mut Frame, area: Rect, model: &Model, theme: Theme) {
    let mut pane = Pane::new(area.width);
    let at = model.at();
    let pieces = &model.screen.pieces;
    let here: Vec<bool> = pieces.iter().map(|piece| at.name() == Some(name(piece))).collect();
    let cells: Vec<Vec<String>> = pieces
        .iter()
        .zip(&here)
        .map(|(piece, here)| {
            let mark = if *here { ">" } else { " " };
            let hurts = if flags(Some(piece)).is_empty() { "" } else { " !" };
            let room = usize::from(area.width).saturating_sub(11);
            let name = shortened(name(piece), room);
            vec![format!("{mark} {name}{hurts}"), progress(piece, model)]
        })
        .collect();
    for (line, here) in columns(&cells).into_iter().zip(here) {
        let style = if here { theme.here_now() } else { ratatui::style::Style::new() };
        pane.line(Line::styled(line, style));
    }
    let finish = if at.name().is_none() { "> finish" } else { "  finish" };
    pane.line(Line::raw(finish));
    if pieces.iter().any(|piece| !flags(Some(piece)).is_empty()) {
        pane.gap();
        pane.text(theme.care(), "! discomfort is flagged");
    }
    pane.draw(frame, area);
}

/// A name in as many columns as there are, with a mark where it is cut.
fn shortened(name: &str, room: usize) -> String {
    if textwrap::core::display_width(name) <= room {
        return name.to_owned();
    }
    let mut kept = String::new();
    for letter in name.chars() {
        if textwrap::core::display_width(&kept) + 2 > room {
            break;
        }
        kept.push(letter);
    }
    kept + "~"
}

fn progress(piece: &PieceView, model: &Model) -> String {
    let of = |done: usize, all: usize| {
        if done == all { "done".into() } else { format!("{done} of {all}") }
    };
    let text = match piece {
        PieceView::Strength { view } => {
            of(view.sets.iter().filter(|set| set.done.is_some()).count(), view.sets.len())
        }
        PieceView::Interval { view } => {
            of(view.windows.iter().filter(|it| it.reps.is_some()).count(), view.windows.len())
        }
        PieceView::Hold { view } if hold_done(view) => "done".into(),
        PieceView::Hold { .. } => String::new(),
        PieceView::Note { .. } => String::new(),
    };
    let later = model.skipped.has(name(piece), "work") && text != "done";
    if later { "later".into() } else { text }
}
