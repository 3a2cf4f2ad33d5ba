//! The full-screen session drawn: head, the day with the piece at hand or its clock, what was said,
//! the keys.

mod day;
mod detail;
mod forms;
mod live;

use holdfast_core::companion::{NoticeKind, SessionState};
use ratatui::Frame;
use ratatui::layout::{Constraint, Layout, Rect};
use ratatui::text::Line;

use super::keys::hints;
use super::model::{Mode, Model, Tone};
use crate::full::pane::{Pane, keys};
use crate::full::theme::Theme;
use crate::session::prompt;

/// The least that shows what a key would do.
const LEAST: (u16, u16) = (60, 20);

/// True when an area is too small to train by.
pub(super) fn too_small(area: Rect) -> bool {
    area.width < LEAST.0 || area.height < LEAST.1
}

/// Draws a frame.
pub(super) fn draw(frame: &mut Frame, model: &Model, theme: Theme) {
    let area = frame.area();
    if too_small(area) {
        return small(frame, model, theme);
    }
    let head = head(model, area.width, theme);
    let said = said(model, area.width, theme);
    let foot = keys(&hints(model), area.width, 2, theme.key());
    // Notices are read first, but never so many that nothing else is seen.
    let rows = [
        Constraint::Length(head.height().min(area.height / 3)),
        Constraint::Min(8),
        Constraint::Length(said.height().min(4)),
        Constraint::Length(2),
    ];
    let [top, body, below, bottom] = Layout::vertical(rows).areas(area);
    head.draw(frame, top);
    match &model.mode {
        Mode::Help(from) => forms::help(frame, body, *from, theme),
        Mode::Picking(picker) => forms::picker(frame, body, picker, theme),
        Mode::Day | Mode::Typing(_) => the_day(frame, body, model, theme),
    }
    said.draw(frame, below);
    foot.draw(frame, bottom);
}

fn the_day(frame: &mut Frame, body: Rect, model: &Model, theme: Theme) {
    if live::draw(frame, body, model, theme) {
        return;
    }
    let left = if body.width >= 100 { 32 } else { 25 };
    let [day, _, detail] =
        Layout::horizontal([Constraint::Length(left), Constraint::Length(1), Constraint::Min(20)])
            .areas(body);
    day::draw(frame, day, model, theme);
    detail::draw(frame, detail, model, theme);
}

fn small(frame: &mut Frame, model: &Model, theme: Theme) {
    let area = frame.area();
    let (wide, high) = LEAST;
    // A clock is read from the floor, also where there is no room for keys.
    let (mut head, mut foot) = (Pane::new(area.width), Pane::new(area.width));
    if let Some(face) = live::clock(model, &mut head, &mut foot, theme) {
        let rows = [Constraint::Min(1), Constraint::Length(1)];
        let [top, bottom] = Layout::vertical(rows).areas(area);
        face.draw(frame, top, theme);
        let text = format!("q leaves; other keys want {wide} x {high}");
        return frame.render_widget(Line::styled(text, theme.quiet()), bottom);
    }
    let mut pane = Pane::new(area.width);
    let text = format!(
        "This window is {} x {}: too small. {wide} x {high} or more, please. q leaves; all that is \
         logged is kept.",
        area.width, area.height
    );
    pane.text(theme.strong(), &text);
    if let Some((_, said)) = &model.said {
        pane.text(theme.warn(), said);
    }
    pane.text(theme.quiet(), &prompt(&model.screen, &model.at()));
    pane.draw(frame, area);
}

fn head(model: &Model, width: u16, theme: Theme) -> Pane {
    let screen = &model.screen;
    let mut pane = Pane::new(width);
    let end = if screen.state == SessionState::Finished { "  FINISHED" } else { "" };
    pane.text(theme.strong(), &format!("{}  {}{end}", screen.heading, screen.name));
    for notice in &screen.notices {
        match notice.kind {
            NoticeKind::Care => pane.headed(theme.care(), "CARE:", &notice.text),
            NoticeKind::Warning => pane.headed(theme.warn(), "note:", &notice.text),
            NoticeKind::Info => pane.text(theme.quiet(), &notice.text),
        }
    }
    pane.gap();
    pane
}

/// What was said last, or the line being typed.
fn said(model: &Model, width: u16, theme: Theme) -> Pane {
    let mut pane = Pane::new(width);
    if let Mode::Typing(typing) = &model.mode {
        pane.text(theme.strong(), &typing.ask);
        pane.text(theme.here_now(), &format!("> {}_", typing.text));
        pane.text(theme.quiet(), &typing.hint);
        return pane;
    }
    match &model.said {
        Some((Tone::Saved, text)) => pane.text(theme.good(), text),
        Some((Tone::NotSaved, text)) => pane.text(theme.care(), text),
        Some((Tone::Hint, text)) => pane.text(theme.warn(), text),
        None => pane.text(theme.quiet(), "What a line calls saved is on disk."),
    }
    pane
}

#[cfg(test)]
mod tests;
