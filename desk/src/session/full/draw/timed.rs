//! Windows and holds at hand, with their clocks.

use holdfast_core::care::always;
use holdfast_core::clock::Phase;
use holdfast_core::session::{ClockView, HoldView, IntervalView, PieceView, Row, WindowView};

use super::set::consider;
use super::{notes, rank};
use crate::full::clock::Face;
use crate::full::digits;
use crate::full::lines::{columns, hanging, headed};
use crate::full::stack::{Part, Table};
use crate::full::theme::Theme;
use crate::say;
use crate::session::full::model::Model;
use crate::session::sentence;

/// A window at hand.
pub(super) fn windows<'a>(
    model: &'a Model,
    piece: &'a PieceView,
    view: &'a IntervalView,
    wide: u16,
    theme: Theme,
) -> Vec<Part<'a>> {
    let here = &model.screen.here;
    let Some(Row::Window { window, .. }) = model.row() else { return Vec::new() };
    let Some(window) = view.windows.iter().find(|shown| shown.window == *window) else {
        return Vec::new();
    };
    let mut parts = vec![
        Part::text(rank::TITLE, wide, theme.strong(), &here.title),
        Part::whole(rank::LOAD, hanging(wide, theme.here_now(), &window.asked_text)),
        Part::text(rank::NOTES, wide, theme.quiet(), &view.heading),
        Part::gap(),
    ];
    let clock = here.clock.as_ref();
    if let Some(clock) = clock {
        // What the window at hand asks for stands above already.
        let about = clock.about.clone().filter(|about| *about != window.asked_text);
        parts.push(face(&ClockView { about, ..clock.clone() }, wide, theme));
        parts.push(Part::gap());
    }
    let table = table(view, window, clock, theme);
    parts.push(match clock {
        Some(_) => Part::table(rank::TABLE, wide, 3, table).at_most(3),
        None => {
            let all = u16::try_from(view.windows.len()).unwrap_or(u16::MAX);
            Part::table(rank::TABLE, wide, all, table)
        }
    });
    // Of a clock that is over, too.
    if let Some(question) = view.clock.as_ref().and_then(|clock| clock.question.as_ref()) {
        parts.push(Part::text(rank::WHY, wide, theme.warn(), question));
    }
    if let Some(doubt) = &window.doubt {
        parts.push(Part::text(rank::WHY, wide, theme.warn(), &say::full::really(sentence(doubt))));
    }
    if let Some(fewer) = &window.fewer {
        parts.push(Part::shrinking(
            rank::WHY,
            wide,
            headed(wide, theme.warn(), say::full::fewer(), &fewer.words),
        ));
    }
    parts.extend(went_by(model, wide, theme));
    parts.extend(notes(model, wide));
    parts.extend(consider(&piece.options, wide, theme));
    parts
}

/// The windows; those that the clock has left behind without reps say so.
fn table(view: &IntervalView, here: &WindowView, clock: Option<&ClockView>, theme: Theme) -> Table {
    let behind = |window: u32| clock.is_some_and(|clock| window < clock.turn);
    // What was done stands first: a line that is cut loses its end.
    let cells = view.windows.iter().map(|window| {
        let text = match &window.done_text {
            Some(done) => say::full::window_done(done, &window.movement),
            None if behind(window.window) => say::full::not_logged(&window.asked_text),
            None => window.asked_text.clone(),
        };
        vec![window.window.to_string(), text]
    });
    let cells: Vec<Vec<String>> = cells.collect();
    let chosen = view.windows.iter().position(|window| window.window == here.window).unwrap_or(0);
    let styles = [theme.here_now(), Theme::usual(), theme.quiet()];
    Table { lines: columns(&cells), chosen, styles }
}

/// A hold at hand, or a measure before or after it.
pub(super) fn hold<'a>(
    model: &'a Model,
    view: &'a HoldView,
    wide: u16,
    theme: Theme,
) -> Vec<Part<'a>> {
    let here = &model.screen.here;
    let mut parts = vec![Part::text(rank::TITLE, wide, theme.strong(), &here.title)];
    if let Some(clock) = &here.clock {
        let over = clock.phase == Phase::Done;
        // How long ago it ended is part of what is asked about it.
        let about = clock.about.clone().filter(|_| !over);
        parts.push(face(&ClockView { about, ..clock.clone() }, wide, theme));
        parts.push(Part::gap());
        if let Some(held) = held(view, clock) {
            parts.push(Part::text(rank::TABLE, wide, Theme::usual(), &held));
        }
        if let Some(question) = &clock.question {
            parts.push(Part::text(rank::TITLE, wide, theme.warn(), question));
        }
        parts.extend(went_by(model, wide, theme));
        parts.extend(notes(model, wide));
        parts.push(Part::text(rank::CAUTION, wide, theme.quiet(), always()[1]));
        return parts;
    }
    if matches!(model.row(), Some(Row::Measure { .. })) {
        parts.push(Part::whole(rank::LOAD, hanging(wide, theme.here_now(), &here.line)));
    } else {
        parts.push(Part::whole(rank::LOAD, hanging(wide, theme.here_now(), &view.heading)));
    }
    parts.push(Part::gap());
    for reading in view.range.iter().flat_map(|range| &range.readings) {
        parts.push(Part::text(rank::TABLE, wide, Theme::usual(), &reading.text));
    }
    for side in &view.sides {
        let Some(held) = &side.held_text else { continue };
        let text = match &side.name {
            Some(name) => say::full::held_on_side(name, held),
            None => say::full::held(held),
        };
        parts.push(Part::text(rank::TABLE, wide, theme.good(), &text));
    }
    for judged in view.range.iter().flat_map(|range| &range.judged) {
        parts.push(Part::text(rank::WHY, wide, Theme::usual(), judged));
    }
    if let Some(doubt) = &view.doubt {
        parts.push(Part::text(rank::WHY, wide, theme.warn(), &say::full::really(sentence(doubt))));
    }
    parts.extend(notes(model, wide));
    parts.push(Part::gap());
    parts.push(Part::text(rank::CAUTION, wide, theme.quiet(), always()[1]));
    parts
}

/// The seconds that were held so far: `held: left 0:32`.
fn held(view: &HoldView, clock: &ClockView) -> Option<String> {
    let sides = clock.held.iter().zip(&view.sides).filter(|(held, _)| held.0 > 0);
    let each = sides.map(|(held, side)| {
        let time = digits::left(held.0 / 1000 * 1000);
        match &side.name {
            Some(name) => say::full::held_side(name, time),
            None => time,
        }
    });
    let each: Vec<String> = each.collect();
    (!each.is_empty()).then(|| say::full::held_so_far(each.join(say::full::comma())))
}

fn face(clock: &ClockView, wide: u16, theme: Theme) -> Part<'static> {
    let face = Face::of(clock);
    Part::drawn(rank::CLOCK, [1, 7, u16::MAX], move |rows| face.lines(wide, rows, rows, theme))
}

/// The cues that nobody gave, in a quiet line.
fn went_by(model: &Model, wide: u16, theme: Theme) -> Option<Part<'static>> {
    let line = model.screen.here.clock.as_ref()?.went_by.as_ref()?;
    Some(Part::text(rank::NOTES, wide, theme.quiet(), line))
}
