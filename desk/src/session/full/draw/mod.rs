//! The full-screen session drawn. Everything on it has a rank: where there is little room, the care text
//! and the notes give way first, and never the load or what the key says.

mod care;
mod change;
mod day;
mod foot;
mod page;
mod set;
mod timed;

use holdfast_core::session::{NoticeKind, PieceKindView, SessionState};
use ratatui::Frame;
use ratatui::layout::Rect;
use ratatui::text::Line;
use ratatui::widgets::{Clear, Paragraph};

use super::model::{Mode, Model};
use crate::full::clock::Face;
use crate::full::lines::{beside, hanging, headed, shortened};
use crate::full::stack::{Part, Stack};
use crate::full::theme::Theme;
use crate::say;

/// What gives way to what: the lower number stays longer.
mod rank {
    pub(super) const KEY: u8 = 0;
    pub(super) const LOAD: u8 = 1;
    pub(super) const CARE: u8 = 2;
    pub(super) const CLOCK: u8 = 3;
    pub(super) const TITLE: u8 = 4;
    pub(super) const TABLE: u8 = 5;
    pub(super) const SAVED: u8 = 6;
    pub(super) const HINTS: u8 = 7;
    pub(super) const HEAD: u8 = 8;
    pub(super) const WHY: u8 = 9;
    pub(super) const MORE_CARE: u8 = 10;
    pub(super) const NOTES: u8 = 11;
    pub(super) const STRIP: u8 = 12;
    pub(super) const CAUTION: u8 = 13;
}

/// The least that shows the load and what the key does.
pub(super) const LEAST: (u16, u16) = (40, 14);

/// From so many columns on the day's list stands beside the piece at hand.
const BESIDE: u16 = 72;

/// True when an area is too small to train by.
pub(super) fn too_small(area: Rect) -> bool {
    area.width < LEAST.0 || area.height < LEAST.1
}

/// Draws a frame.
pub(super) fn draw(frame: &mut Frame, model: &Model, theme: Theme) {
    let area = frame.area();
    let lines = if too_small(area) { small(model, area, theme) } else { whole(model, area, theme) };
    frame.render_widget(Clear, area);
    frame.render_widget(Paragraph::new(lines), area);
}

fn whole(model: &Model, area: Rect, theme: Theme) -> Vec<Line<'static>> {
    let wide = area.width;
    let mut stack = Stack::default();
    stack.extend(head(model, wide, theme));
    match &model.mode {
        Mode::Help(from) => stack.push(page::help(*from, wide, theme)),
        Mode::Whole(from) => stack.push(page::everything(model, *from, wide, theme)),
        Mode::Picking(picker) => stack.push(page::picker(picker, wide, theme)),
        Mode::Day | Mode::Typing(_) => {
            stack.extend(care::parts(model, wide, theme));
            stack.extend(body(model, wide, theme));
        }
    }
    stack.push(Part::spring());
    stack.extend(foot::parts(model, wide, theme));
    stack.lines(area.height)
}

/// The piece at hand, over the whole width while a clock counts; otherwise beside the day's list, where
/// there is room for both.
fn body(model: &Model, wide: u16, theme: Theme) -> Vec<Part<'_>> {
    let clock = model.screen.here.clock.is_some();
    if clock || wide < BESIDE {
        let mut parts = vec![day::strip(model, wide, theme), Part::gap()];
        parts.extend(at_hand(model, wide, theme));
        return parts;
    }
    let left = if wide >= 100 { 32 } else { 25 };
    let list = day::list(model, left, theme);
    let mut stack = Stack::default();
    stack.extend(at_hand(model, wide - left - 1, theme));
    let (high, inner) = (list.len() as u16, stack.into_part(rank::TABLE));
    vec![inner.over(high, move |lines| beside(list.clone(), left + 1, lines))]
}

/// The row at hand with all that belongs to it.
fn at_hand(model: &Model, wide: u16, theme: Theme) -> Vec<Part<'_>> {
    match model.piece().map(|piece| (&piece.kind, piece)) {
        Some((PieceKindView::Strength { view }, piece)) => {
            set::parts(model, piece, view, wide, theme)
        }
        Some((PieceKindView::Interval { view }, piece)) => {
            timed::windows(model, piece, view, wide, theme)
        }
        Some((PieceKindView::Hold { view }, _)) => timed::hold(model, view, wide, theme),
        _ => ends(model, wide, theme),
    }
}

/// A session's end, or none begun.
fn ends(model: &Model, wide: u16, theme: Theme) -> Vec<Part<'_>> {
    let here = &model.screen.here;
    let mut parts = vec![Part::text(rank::TITLE, wide, theme.strong(), &here.title)];
    if here.line != here.title {
        parts.push(Part::text(rank::WHY, wide, theme.here_now(), &here.line));
    }
    parts.extend(notes(model, wide));
    parts
}

/// The coach's words before the piece at hand, and the notes on it.
fn notes(model: &Model, wide: u16) -> Vec<Part<'static>> {
    let note = |note: &String| Part::text(rank::NOTES, wide, Theme::usual(), note);
    let (screen, piece) = (&model.screen, model.piece());
    let written = piece.map_or(&screen.notes, |piece| &piece.notes);
    screen.here.notes.iter().chain(written.iter().map(|note| &note.text)).map(note).collect()
}

fn head(model: &Model, wide: u16, theme: Theme) -> Vec<Part<'static>> {
    let screen = &model.screen;
    let heading = match screen.state {
        SessionState::Finished => say::full::finished(&screen.heading),
        _ => screen.heading.clone(),
    };
    let heading = format!("{heading}  {}", screen.name);
    let heading = Line::styled(shortened(&heading, wide), theme.strong());
    let mut parts = vec![Part::whole(rank::HEAD, vec![heading])];
    for notice in &screen.notices {
        parts.push(match notice.kind {
            NoticeKind::Care => {
                Part::whole(rank::CARE, headed(wide, theme.care(), say::full::care(), &notice.text))
            }
            NoticeKind::Warning => {
                let lines = headed(wide, theme.warn(), say::full::note(), &notice.text);
                Part::shrinking(rank::HEAD, wide, lines)
            }
            NoticeKind::Info => Part::text(rank::CAUTION, wide, theme.quiet(), &notice.text),
        });
    }
    parts.push(Part::gap());
    parts
}

/// Where keys would not be safe to press: the clock, which is read from the floor, or what to do about
/// the size.
fn small(model: &Model, area: Rect, theme: Theme) -> Vec<Line<'static>> {
    let (wide, high) = LEAST;
    let rows = area.height.saturating_sub(1);
    if let Some(clock) = &model.screen.here.clock {
        let mut stack = Stack::default();
        let face = Face::of(clock);
        let draw = move |rows| face.lines(area.width, rows, rows, theme);
        stack.push(Part::drawn(0, [1, u16::MAX, u16::MAX], draw));
        stack.push(Part::spring());
        let mut lines = stack.lines(rows.max(1));
        let text = say::full::too_small_with_clock(wide, high);
        lines.push(Line::styled(text, theme.quiet()));
        return lines;
    }
    let text = say::full::too_small(area.width, area.height, wide, high);
    let mut lines = hanging(area.width, theme.strong(), &text);
    if let Some((_, said)) = &model.said {
        lines.extend(hanging(area.width, theme.warn(), said));
    }
    lines.extend(hanging(area.width, theme.quiet(), &model.screen.here.line));
    lines
}

#[cfg(test)]
mod law;
#[cfg(test)]
mod tests;
