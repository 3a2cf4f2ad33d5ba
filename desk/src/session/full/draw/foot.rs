//! What was saved last or is being typed, the one key, and the keys beside it.

use holdfast_core::session::{KeyKind, SideKeyKind};
use ratatui::style::Modifier;
use ratatui::text::{Line, Span};
use textwrap::core::display_width;

use super::rank;
use crate::full::lines::{fill, hanging, keys};
use crate::full::stack::Part;
use crate::full::theme::Theme;
use crate::say;
use crate::session::full::form::{Choice, Picker};
use crate::session::full::letters::letter;
use crate::session::full::model::{Mode, Model, Tone};
use crate::session::sentence;

pub(super) fn parts(model: &Model, wide: u16, theme: Theme) -> Vec<Part<'static>> {
    let mut parts = match &model.mode {
        Mode::Typing(_) => typing(model, wide, theme),
        _ => said(model, wide, theme),
    };
    if matches!(model.mode, Mode::Day) {
        parts.extend(the_key(model, wide, theme));
    }
    let lines = keys(&hints(model), wide, theme.key());
    let high = (lines.len() as u16).min(2);
    parts.push(Part::drawn(rank::HINTS, [high.min(1), high, high], move |rows| {
        lines.iter().take(usize::from(rows)).cloned().collect()
    }));
    parts
}

fn typing(model: &Model, wide: u16, theme: Theme) -> Vec<Part<'static>> {
    let Mode::Typing(typing) = &model.mode else { return Vec::new() };
    let mut lines = hanging(wide, theme.strong(), &typing.ask);
    lines.extend(hanging(wide, theme.here_now(), &format!("> {}_", typing.text)));
    let mut parts = vec![Part::whole(rank::KEY, lines)];
    if let Some(wrong) = &typing.wrong {
        parts.push(Part::text(rank::CARE, wide, theme.care(), wrong));
    }
    parts.push(Part::text(rank::SAVED, wide, theme.quiet(), &typing.hint));
    parts
}

/// What was said last; where nothing was, what undo would take back, and whether that may be a slip.
fn said(model: &Model, wide: u16, theme: Theme) -> Vec<Part<'static>> {
    let screen = &model.screen;
    let text = |rank, style, said: &str| {
        if model.twice {
            return Part::text(rank, wide, style, &say::full::pressed_twice(said));
        }
        Part::text(rank, wide, style, said)
    };
    let mut parts = match (&model.said, &screen.saved_text) {
        (Some((Tone::NotSaved, said)), _) => vec![text(rank::CARE, theme.care(), said)],
        (Some((Tone::Hint, said)), _) => vec![text(rank::CLOCK, theme.warn(), said)],
        (None, Some(saved)) => vec![text(rank::SAVED, theme.good(), &say::full::saved(saved))],
        (None, None) => vec![text(rank::CAUTION, theme.quiet(), say::full::safe())],
    };
    if let (None, Some(doubt)) = (&model.said, &screen.doubt) {
        let sure = screen.here.side_keys.iter().find(|key| key.kind == SideKeyKind::Sure);
        let doubt = match sure {
            Some(sure) => say::full::really_right(sentence(doubt), &sure.words),
            None => say::full::really_undo(sentence(doubt)),
        };
        parts.push(Part::text(rank::SAVED, wide, theme.warn(), &doubt));
    }
    parts
}

/// The one key: what it says is never cut. A key that saves stands out, one that waits stands back.
fn the_key(model: &Model, wide: u16, theme: Theme) -> Vec<Part<'static>> {
    let key = &model.screen.here.key;
    let style = match key.kind {
        KeyKind::Saves => theme.here_now().add_modifier(Modifier::UNDERLINED),
        KeyKind::Moves => theme.here_now(),
        KeyKind::Waits => Theme::usual(),
        KeyKind::Care => theme.care(),
    };
    let name = format!(" {} ", say::full::key_enter());
    let indent = display_width(&name) as u16 + 2;
    let more = key.more.as_deref().unwrap_or_default();
    let words = fill(&key.words, wide.saturating_sub(indent));
    let mut lines: Vec<Line> = Vec::new();
    for (index, words) in words.into_iter().enumerate() {
        let name = if index == 0 {
            Span::styled(name.clone(), theme.key())
        } else {
            Span::raw(" ".repeat(usize::from(indent) - 2))
        };
        lines.push(Line::from(vec![name, Span::raw("  "), Span::styled(words, style)]));
    }
    let fits = |line: &&mut Line| line.width() + display_width(more) + 2 <= usize::from(wide);
    if let Some(last) = lines.last_mut().filter(fits) {
        last.push_span(Span::styled(format!("  {more}"), theme.quiet()));
        return vec![Part::whole(rank::KEY, lines)];
    }
    let more = fill(more, wide.saturating_sub(indent)).into_iter();
    let indent = " ".repeat(usize::from(indent));
    let more = more.map(|line| Line::styled(format!("{indent}{line}"), theme.quiet()));
    vec![Part::whole(rank::KEY, lines), Part::shrinking(rank::WHY, wide, more.collect())]
}

/// Keys and what they do here and now, the most wanted first.
fn hints(model: &Model) -> Vec<(String, String)> {
    let own = |pairs: &[(&str, &str)]| {
        pairs.iter().map(|(key, what)| ((*key).to_owned(), (*what).to_owned())).collect()
    };
    let moves = (say::full::key_up_down(), say::full::does_move());
    let back = (say::full::key_esc(), say::full::does_go_back());
    let take = (say::full::key_enter(), say::full::does_take_it());
    match &model.mode {
        Mode::Help(_) | Mode::Whole(_) => own(&[moves, back]),
        Mode::Typing(_) => own(&[(say::full::key_enter(), say::full::does_take_line()), back]),
        Mode::Picking(Picker { choice: Choice::Signs { .. }, .. }) => own(&[
            (say::full::key_space(), say::full::does_mark()),
            (say::full::key_enter(), say::full::does_save()),
            moves,
            (say::full::key_esc(), say::full::does_not_flag()),
        ]),
        Mode::Picking(_) => own(&[take, moves, back]),
        Mode::Day => {
            let side_keys = model.screen.here.side_keys.iter();
            let mut hints: Vec<(String, String)> = side_keys
                .filter_map(|key| Some((letter(key.kind)?.to_string(), key.words.clone())))
                .collect();
            // Where one row is all there is, it leads to the others.
            let help = hints.len().min(1);
            hints.splice(help..help, own(&[("?", say::full::does_show_keys())]));
            let late = [SideKeyKind::Later, SideKeyKind::Finish].map(letter);
            let after = hints
                .iter()
                .position(|(key, _)| late.iter().flatten().any(|late| key.starts_with(*late)));
            let ours = own(&[("q", say::full::does_leave()), ("v", say::full::does_read_all())]);
            let after = after.unwrap_or(hints.len());
            hints.splice(after..after, ours);
            hints.extend(own(&[moves, (say::full::key_tab(), say::full::does_go_on())]));
            hints
        }
    }
}
