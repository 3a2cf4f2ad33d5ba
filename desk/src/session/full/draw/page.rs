//! Lists to choose from, everything there is to read about a row, and the page of all keys.

use holdfast_core::care::ALWAYS;
use holdfast_core::session::{PieceKindView, Row};
use ratatui::style::Style;
use ratatui::text::Line;

use super::care::{heading, indented};
use super::rank;
use crate::full::lines::{hanging, headed};
use crate::full::stack::Part;
use crate::full::theme::Theme;
use crate::session::full::form::Picker;
use crate::session::full::model::Model;

/// A list; the choice at hand is always in sight.
pub(super) fn picker(picker: &Picker, wide: u16, theme: Theme) -> Part<'static> {
    let ask = hanging(wide, theme.strong(), &picker.ask);
    let mut items: Vec<Line> = Vec::new();
    let (mut first, mut last) = (0, 0);
    for (index, item) in picker.items.iter().enumerate() {
        let here = index == picker.at;
        if here {
            first = items.len();
        }
        let style = if here { theme.here_now() } else { Style::new() };
        items.extend(hanging(wide, style, &picker.line(index)));
        if let Some(more) = &item.more {
            items.extend(headed(wide, theme.warn(), "    suggested:", more));
        }
        if here {
            last = items.len();
        }
    }
    let high = (ask.len() + 1 + items.len()) as u16;
    Part::drawn(rank::LOAD, [high.min(6), high, high], move |rows| {
        let gap = usize::from(rows) > ask.len() + items.len();
        let room = usize::from(rows).saturating_sub(ask.len() + usize::from(gap));
        let from = last.saturating_sub(room).min(first);
        let mut lines = ask.clone();
        lines.extend(gap.then(Line::default));
        lines.extend(items.iter().skip(from).take(room).cloned());
        lines.truncate(usize::from(rows));
        lines
    })
}

/// A text from a line on, as far as there is room.
fn text(lines: Vec<Line<'static>>, from: u16) -> Part<'static> {
    let high = lines.len() as u16;
    Part::drawn(rank::LOAD, [high.min(3), high, high], move |rows| {
        let last = lines.len().saturating_sub(usize::from(rows));
        lines.iter().skip(usize::from(from).min(last)).take(usize::from(rows)).cloned().collect()
    })
}

/// Everything about the row at hand, with nothing left out.
pub(super) fn everything(model: &Model, from: u16, wide: u16, theme: Theme) -> Part<'static> {
    let here = &model.screen.here;
    let mut lines = hanging(wide, theme.strong(), &here.line);
    let key = [Some(here.key.words.as_str()), here.key.more.as_deref()];
    let key: Vec<&str> = key.into_iter().flatten().collect();
    lines.extend(hanging(wide, Theme::usual(), &format!("Enter: {}", key.join(". "))));
    for flag in model.piece().map_or(&[][..], |piece| &piece.flags) {
        lines.extend(heading(flag, wide, theme));
        lines.extend(flag.advice.lines.iter().flat_map(|line| indented(wide, line)));
    }
    let mut add = |text: &str| lines.extend(hanging(wide, Theme::usual(), text));
    here.notes.iter().for_each(|note| add(note));
    let kind = model.piece().map(|piece| &piece.kind);
    if let (Some(PieceKindView::Strength { view }), Some(Row::Set { set, .. })) =
        (kind, model.row())
    {
        view.warm_up.iter().for_each(|step| add(&format!("warm-up: {}", step.text)));
        let set = view.sets.iter().find(|shown| shown.set == *set);
        set.and_then(|set| set.why.as_ref())
            .into_iter()
            .for_each(|why| add(&format!("why: {why}")));
        if let Some(able) = &view.able {
            add(&able.text);
        }
    }
    for option in model.piece().map_or(&[][..], |piece| &piece.options) {
        let suggested = option.suggested.as_ref().map_or(String::new(), |why| format!(": {why}"));
        add(&format!("option: {}, for {}{suggested}", option.name, option.because_text));
    }
    for notice in &model.screen.notices {
        add(&notice.text);
    }
    lines.push(Line::default());
    for caution in ALWAYS {
        lines.extend(hanging(wide, theme.warn(), caution));
    }
    text(lines, from)
}

const KEYS: [&str; 20] = [
    "Enter, Space  the one key: what it says beside it",
    "e or a digit  type it in one line: `60 x 7, 2 left` a set, `12 8` a window, `10.5 11` readings",
    "u             take back what was saved last, and further each time",
    "Up, Down      another row: what is done is corrected there. Esc goes back to what is next",
    "Tab           the next piece; Shift-Tab the one before",
    "o             options of this movement, with their reasons",
    "d             it hurts: where, how bad, and emergency signs",
    "c             clear a flag of this piece",
    "s             put the rest of this piece off; at a reading only the reading",
    "m             a minute more rest",
    "f             finish the session, with its rating",
    "b, p, n, x    the clock: begin, pause or go on, skip to the next, stop",
    "+, w          15 s more for the side held; start the windows at another station",
    "v             everything about this row: care, notes, reasons, cautions",
    "q, Ctrl-C     leave the session open; your log is saved",
    "",
    "The line takes more: `option KEY`, `flag knee 4`, `skip`, `finish 7`, `held 120 95`.",
    "A window's seconds to spare are read off the running clock when it is logged.",
    "The clock goes on when this program is left, and is right when it comes back.",
    "",
];

/// All keys and cautions.
pub(super) fn help(from: u16, wide: u16, theme: Theme) -> Part<'static> {
    let mut lines = Vec::new();
    for line in KEYS {
        if line.is_empty() {
            lines.push(Line::default());
        } else {
            lines.extend(hanging(wide, Style::new(), line));
        }
    }
    for line in ALWAYS {
        lines.extend(hanging(wide, theme.warn(), line));
    }
    text(lines, from)
}
