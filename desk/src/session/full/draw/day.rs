//! The day's pieces in order, with how far each is: a list, or where there is little room one line.

use holdfast_core::session::PieceView;
use ratatui::text::{Line, Span};
use textwrap::core::display_width;

use super::rank;
use crate::full::lines::{columns, hanging, shortened};
use crate::full::stack::Part;
use crate::full::theme::Theme;
use crate::say;
use crate::session::full::model::Model;

/// The pieces below each other.
pub(super) fn list(model: &Model, wide: u16, theme: Theme) -> Vec<Line<'static>> {
    let pieces = &model.screen.pieces;
    let name = model.row().and_then(|row| row.piece());
    let here = |piece: &PieceView| Some(piece.name.as_str()) == name;
    let progress = pieces.iter().filter_map(|piece| piece.progress.as_ref());
    let progress = progress.map(|text| display_width(text)).max().unwrap_or(0);
    let cells: Vec<Vec<String>> = pieces
        .iter()
        .map(|piece| {
            let mark = if here(piece) { ">" } else { " " };
            let room = usize::from(wide).saturating_sub(4 + progress + hurts(piece).len());
            let name = shortened(&piece.name, room as u16) + hurts(piece);
            vec![format!("{mark} {name}"), piece.progress.clone().unwrap_or_default()]
        })
        .collect();
    let style = |here| if here { theme.here_now() } else { Theme::usual() };
    let mut lines: Vec<Line> = columns(&cells)
        .into_iter()
        .zip(pieces)
        .map(|(line, piece)| Line::styled(line, style(here(piece))))
        .collect();
    let mark = if name.is_none() { ">" } else { " " };
    let finish = format!("{mark} {}", say::full::finish());
    lines.push(Line::styled(finish, style(name.is_none())));
    if pieces.iter().any(|piece| !piece.flags.is_empty()) {
        lines.push(Line::default());
        lines.extend(hanging(wide, theme.care(), say::full::discomfort_in_day()));
    }
    lines
}

fn hurts(piece: &PieceView) -> &'static str {
    if piece.flags.is_empty() { "" } else { " !" }
}

/// The pieces beside each other, from the one at hand on, then those before it, as many as there is room
/// for.
pub(super) fn strip(model: &Model, wide: u16, theme: Theme) -> Part<'static> {
    let name = model.row().and_then(|row| row.piece());
    let mut cells: Vec<String> = model.screen.pieces.iter().map(cell).collect();
    cells.push(say::full::finish().into());
    let pieces = &model.screen.pieces;
    let here = pieces.iter().position(|piece| Some(piece.name.as_str()) == name);
    let here = here.unwrap_or(cells.len() - 1);
    let columns =
        |cells: &[String]| cells.iter().map(|cell| display_width(cell) + 2).sum::<usize>();
    let (mut from, mut to) = (here, here + 1);
    // A sign at each end that more are left out.
    let room = usize::from(wide).saturating_sub(5);
    while to < cells.len() && columns(&cells[from..=to]) <= room {
        to += 1;
    }
    while from > 0 && columns(&cells[from - 1..to]) <= room {
        from -= 1;
    }
    let mut spans = vec![Span::styled(if from > 0 { ".. " } else { "" }, theme.quiet())];
    for (index, cell) in cells.iter().enumerate().take(to).skip(from) {
        let (mark, style) =
            if index == here { (">", theme.here_now()) } else { ("", theme.quiet()) };
        let cell = shortened(&format!("{mark}{cell}"), wide.saturating_sub(6));
        spans.push(Span::styled(cell, style));
        spans.push(Span::raw("  "));
    }
    spans.push(Span::styled(if to < cells.len() { ".." } else { "" }, theme.quiet()));
    Part::whole(rank::STRIP, vec![Line::from(spans)])
}

fn cell(piece: &PieceView) -> String {
    let progress = piece.progress.as_ref().map_or(String::new(), |progress| format!(" {progress}"));
    format!("{}{}{progress}", piece.name, hurts(piece))
}
