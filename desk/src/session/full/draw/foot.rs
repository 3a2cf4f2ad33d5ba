//! What was saved last or is being typed, the one key, and the keys beside it.

use holdfast_core::session::{KeyKind, SideKeyKind};
use ratatui::style::Modifier;
use ratatui::text::{Line, Span};

use super::rank;
use crate::full::lines::{fill, hanging, keys};
use crate::full::stack::Part;
use crate::full::theme::Theme;
use crate::session::full::form::{Choice, Picker};
use crate::session::full::letters::letter;
use crate::session::full::model::{Mode, Model, Tone};

/// Said before anything is saved.
const SAFE: &str = "Once it says saved, it is safely stored.";

/// Said of a key that was not done a second time.
const TWICE: &str = "(pressed twice: taken once)";

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
    let twice = if model.twice { format!(" {TWICE}") } else { String::new() };
    let text = |rank, style, text: &str| Part::text(rank, wide, style, &format!("{text}{twice}"));
    let mut parts = match (&model.said, &screen.saved_text) {
        (Some((Tone::NotSaved, said)), _) => vec![text(rank::CARE, theme.care(), said)],
        (Some((Tone::Hint, said)), _) => vec![text(rank::CLOCK, theme.warn(), said)],
        (None, Some(saved)) => vec![text(rank::SAVED, theme.good(), &format!("Saved: {saved}"))],
        (None, None) => vec![text(rank::CAUTION, theme.quiet(), SAFE)],
    };
    if let (None, Some(doubt)) = (&model.said, &screen.doubt) {
        let doubt = format!("Really? {doubt}. Press u if it was a slip.");
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
    const NAME: &str = " Enter ";
    const INDENT: u16 = 9;
    let more = key.more.as_deref().unwrap_or_default();
    let words = fill(&key.words, wide.saturating_sub(INDENT));
    let mut lines: Vec<Line> = Vec::new();
    for (index, words) in words.into_iter().enumerate() {
        let name = if index == 0 {
            Span::styled(NAME, theme.key())
        } else {
            Span::raw(" ".repeat(NAME.len()))
        };
        lines.push(Line::from(vec![name, Span::raw("  "), Span::styled(words, style)]));
    }
    let last = lines.last_mut();
    if let Some(last) = last.filter(|line| line.width() + more.len() + 2 <= usize::from(wide)) {
        last.push_span(Span::styled(format!("  {more}"), theme.quiet()));
        return vec![Part::whole(rank::KEY, lines)];
    }
    let more = fill(more, wide.saturating_sub(INDENT)).into_iter();
    let indent = " ".repeat(usize::from(INDENT));
    let more = more.map(|line| Line::styled(format!("{indent}{line}"), theme.quiet()));
    vec![Part::whole(rank::KEY, lines), Part::shrinking(rank::WHY, wide, more.collect())]
}

/// Keys and what they do here and now, the most wanted first.
fn hints(model: &Model) -> Vec<(String, String)> {
    let own = |pairs: &[(&str, &str)]| {
        pairs.iter().map(|(key, what)| ((*key).to_owned(), (*what).to_owned())).collect()
    };
    match &model.mode {
        Mode::Help(_) | Mode::Whole(_) => own(&[("Up Down", "move"), ("Esc", "back")]),
        Mode::Typing(_) => own(&[("Enter", "take it"), ("Esc", "back")]),
        Mode::Picking(Picker { choice: Choice::Signs { .. }, .. }) => {
            own(&[("Space", "mark"), ("Enter", "save"), ("Up Down", "move"), ("Esc", "no flag")])
        }
        Mode::Picking(_) => own(&[("Enter", "take it"), ("Up Down", "move"), ("Esc", "back")]),
        Mode::Day => {
            let side_keys = model.screen.here.side_keys.iter();
            let mut hints: Vec<(String, String)> = side_keys
                .filter_map(|key| Some((letter(key.kind)?.to_string(), key.words.clone())))
                .collect();
            // Where one row is all there is, it leads to the others.
            let help = hints.len().min(1);
            hints.splice(help..help, own(&[("?", "all keys")]));
            let late = [SideKeyKind::Later, SideKeyKind::Finish].map(letter);
            let after = hints
                .iter()
                .position(|(key, _)| late.iter().flatten().any(|late| key.starts_with(*late)));
            let ours = own(&[("q", "leave"), ("v", "read all")]);
            let after = after.unwrap_or(hints.len());
            hints.splice(after..after, ours);
            hints.extend(own(&[("Up Down", "move"), ("Tab", "next piece")]));
            hints
        }
    }
}
