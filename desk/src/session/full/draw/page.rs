//! Lists to choose from, everything there is to read about a row, and the page of all keys.

use holdfast_core::care::always;
use holdfast_core::session::{PieceKindView, Row};
use ratatui::style::Style;
use ratatui::text::Line;

use super::care::{heading, indented};
use super::rank;
use crate::full::lines::{columns, hanging, headed};
use crate::full::stack::Part;
use crate::full::theme::Theme;
use crate::say;
use crate::session::full::form::Picker;
use crate::session::full::model::Model;
use crate::session::sentence;

/// A list; the choice at hand is always in sight.
pub(super) fn picker(picker: &Picker, wide: u16, theme: Theme) -> Part<'static> {
    let ask = hanging(wide, theme.strong(), &picker.ask);
    let suggested = format!("    {}", say::full::suggested());
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
            items.extend(headed(wide, theme.warn(), &suggested, more));
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
    let does = match &here.key.more {
        Some(more) => format!("{} {more}", sentence(&here.key.words)),
        None => here.key.words.clone(),
    };
    lines.extend(hanging(wide, Theme::usual(), &say::full::enter_does(does)));
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
        view.warm_up.iter().for_each(|step| add(&say::full::warm_up_step(&step.text)));
        let set = view.sets.iter().find(|shown| shown.set == *set);
        set.and_then(|set| set.why.as_ref()).into_iter().for_each(|why| add(&say::full::why(why)));
        set.and_then(|set| set.others.as_ref()).into_iter().for_each(|others| add(others));
        if let Some(able) = &view.able {
            add(&able.text);
        }
    }
    for option in model.piece().map_or(&[][..], |piece| &piece.options) {
        let (name, reason) = (&option.name, &option.because_text);
        add(&match &option.suggested {
            Some(why) => say::full::option_suggested(name, reason, why),
            None => say::full::option(name, reason),
        });
    }
    for notice in &model.screen.notices {
        add(&notice.text);
    }
    lines.push(Line::default());
    for caution in always() {
        lines.extend(hanging(wide, theme.warn(), caution));
    }
    text(lines, from)
}

/// All keys and what they do.
fn keys() -> [(&'static str, &'static str); 18] {
    [
        (say::full::keys_one(), say::full::keys_one_does()),
        (say::full::keys_type(), say::full::keys_type_does()),
        ("u", say::full::keys_undo_does()),
        ("r", say::full::keys_right_does()),
        (say::full::keys_move(), say::full::keys_move_does()),
        (say::full::key_tab(), say::full::keys_piece_does()),
        ("o", say::full::keys_options_does()),
        ("k", say::full::keys_bar_does()),
        ("a", say::full::keys_extra_does()),
        ("d", say::full::keys_hurts_does()),
        ("c", say::full::keys_clear_does()),
        ("s", say::full::keys_later_does()),
        ("m", say::full::keys_minute_does()),
        ("f", say::full::keys_finish_does()),
        ("b, p, n, x", say::full::keys_clock_does()),
        ("+, w", say::full::keys_more_does()),
        ("v", say::full::keys_all_does()),
        (say::full::keys_leave(), say::full::keys_leave_does()),
    ]
}

/// All keys and cautions.
pub(super) fn help(from: u16, wide: u16, theme: Theme) -> Part<'static> {
    let keys = columns(&keys().map(|(name, does)| vec![name.to_owned(), does.to_owned()]));
    let mut lines: Vec<Line> = Vec::new();
    for line in &keys {
        lines.extend(hanging(wide, Style::new(), line));
    }
    lines.push(Line::default());
    for line in [say::full::keys_line(), say::full::keys_spare(), say::full::keys_clock_runs()] {
        lines.extend(hanging(wide, Style::new(), line));
    }
    lines.push(Line::default());
    for line in always() {
        lines.extend(hanging(wide, theme.warn(), line));
    }
    text(lines, from)
}
