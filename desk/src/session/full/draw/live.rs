//! A clock that was begun and is not logged yet, or a rest, over the whole width.

use holdfast_core::clock::{HoldPhase, IntervalPhase};
use holdfast_core::companion::{HoldView, IntervalView, PieceView, StrengthView};
use ratatui::Frame;
use ratatui::layout::{Constraint, Layout, Rect};
use ratatui::style::Style;

use super::detail::{care, consider, notes, set_table};
use crate::full::clock::Face;
use crate::full::digits;
use crate::full::pane::Pane;
use crate::full::theme::Theme;
use crate::print;
use crate::session::full::model::Model;
use crate::session::full::rows::hold_done;
use crate::session::step::Step;

/// The clock of the piece at hand, with what stands above and below it.
pub(super) fn clock(model: &Model, head: &mut Pane, foot: &mut Pane, theme: Theme) -> Option<Face> {
    let at = model.at();
    match (&at, at.piece(&model.screen)) {
        (Step::Set { set, .. }, Some(PieceView::Strength { view })) => {
            rest(model, view, *set, head, theme)
        }
        (Step::Hold { .. }, Some(PieceView::Hold { view })) => hold(model, view, head, foot, theme),
        (Step::Window { .. }, Some(PieceView::Interval { view })) => {
            interval(model, view, head, foot, theme)
        }
        _ => None,
    }
}

/// Draws the clock of the piece at hand. Says whether there is one to draw.
pub(super) fn draw(frame: &mut Frame, area: Rect, model: &Model, theme: Theme) -> bool {
    let (mut head, mut foot) = (Pane::new(area.width), Pane::new(area.width));
    care(model.at().piece(&model.screen), &mut head, theme);
    let Some(face) = clock(model, &mut head, &mut foot, theme) else { return false };
    let most = area.height.saturating_sub(Face::LEAST);
    let foot_high = foot.height().min(most / 2);
    let rows = [
        Constraint::Length(head.height().min(most - foot_high)),
        Constraint::Min(Face::LEAST),
        Constraint::Length(foot_high),
    ];
    let [top, middle, bottom] = Layout::vertical(rows).areas(area);
    head.draw(frame, top);
    face.draw(frame, middle, theme);
    foot.draw(frame, bottom);
    true
}

/// A rest, with the set it leads to.
fn rest(
    model: &Model,
    view: &StrengthView,
    set: u32,
    head: &mut Pane,
    theme: Theme,
) -> Option<Face> {
    let rest = model.screen.rest.as_ref()?;
    let shown = view.sets.iter().find(|it| it.set == set).filter(|it| it.done.is_none())?;
    let bar = if view.bar.is_empty() { String::new() } else { format!(" on the {}", view.bar) };
    let of = view.sets.len();
    head.text(theme.strong(), &format!("{}{bar}, set {set} of {of}", view.movement));
    // The set before, the one to come and the one after it: the digits want the room.
    set_table(view, set, 3, head, theme);
    let change = shown.load.as_ref().map_or("", |load| load.change.as_str());
    if !change.is_empty() {
        head.text(theme.strong(), &format!("each side: {change}"));
    }
    head.text(Style::new(), &format!("why: {}", shown.why));
    notes(model, &model.at(), head);
    consider(&view.options, head, theme);
    Some(Face::of_rest(rest))
}

fn hold(
    model: &Model,
    view: &HoldView,
    head: &mut Pane,
    foot: &mut Pane,
    theme: Theme,
) -> Option<Face> {
    let clock = view.clock.as_ref().filter(|_| !hold_done(view))?;
    if clock.phase == HoldPhase::NotBegun {
        return None;
    }
    head.text(theme.strong(), &format!("{}: {}", view.name, view.stretch));
    let pushes = view.technique == holdfast_core::plan::Technique::ContractRelax;
    let mut face = Face::of_hold(clock, pushes);
    let held = clock.held_ms.iter().zip(1..).filter(|(ms, _)| **ms > 0);
    let held: Vec<String> =
        held.map(|(ms, side)| format!("side {side} {}", digits::left(ms / 1000 * 1000))).collect();
    if !held.is_empty() {
        foot.text(Style::new(), &format!("held: {}", held.join(", ")));
    }
    if matches!(clock.phase, HoldPhase::Done { .. }) {
        face.about.clear();
        face.next = view.ask.clone();
    } else if !view.ask.is_empty() {
        foot.text(theme.warn(), &view.ask);
    }
    if !matches!(clock.phase, HoldPhase::Done { .. }) {
        went_by(model, &view.name, foot, theme);
    }
    Some(face)
}

/// The cues that nobody gave, in a quiet line.
fn went_by(model: &Model, piece: &str, foot: &mut Pane, theme: Theme) {
    if let Some(line) = model.went_by.line(piece) {
        foot.text(theme.quiet(), &line);
    }
}

fn interval(
    model: &Model,
    view: &IntervalView,
    head: &mut Pane,
    foot: &mut Pane,
    theme: Theme,
) -> Option<Face> {
    let clock = view.clock.as_ref()?;
    let over = matches!(clock.phase, IntervalPhase::NotBegun | IntervalPhase::Done { .. });
    if over {
        return None;
    }
    head.text(theme.strong(), &format!("{}: aim for {} to spare", view.name, view.margin_text));
    let shown = |window: u32| view.windows.iter().find(|it| it.window == window);
    let asked = |window: u32| shown(window).map_or(String::new(), print::asked_text);
    let face = Face::of_interval(clock, view.window_ms, view.windows.len(), asked);
    let now = match clock.phase {
        IntervalPhase::Window { window, .. } | IntervalPhase::Paused { window, .. } => window,
        _ => 0,
    };
    let done = |window: u32| shown(window).map(print::window_done).filter(|done| !done.is_empty());
    if !view.ask.is_empty() {
        foot.text(theme.warn(), &view.ask);
    }
    if let Some(fewer) = shown(now).and_then(|window| window.fewer.as_ref()) {
        foot.headed(theme.warn(), "fewer:", &fewer.words);
    }
    if let Some(done) = done(now) {
        foot.text(theme.good(), &format!("this window: {done}"));
    }
    if let Some(before) = now.checked_sub(1).filter(|before| *before > 0) {
        match done(before) {
            Some(done) => foot.text(Style::new(), &format!("window {before}: {done}")),
            None => foot.text(theme.warn(), &format!("window {before}: not logged")),
        }
    }
    if now > 0 && now < view.windows.len() as u32 {
        foot.text(Style::new(), &format!("then: {}", asked(now + 1)));
    }
    went_by(model, &view.name, foot, theme);
    Some(face)
}
