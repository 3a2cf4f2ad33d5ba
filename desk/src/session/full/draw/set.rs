//! A set at hand: its load, what is done to the bar, the sets around it, and why.

use holdfast_core::care::always;
use holdfast_core::session::{
    KeyKind, LoadView, OptionView, PieceView, Row, SetView, StrengthView,
};
use ratatui::text::Line;
use textwrap::core::display_width;

use super::{change, notes, rank};
use crate::full::digits;
use crate::full::lines::{columns, hanging, headed};
use crate::full::stack::{Part, Table};
use crate::full::theme::Theme;
use crate::say;
use crate::session::full::model::Model;
use crate::session::sentence;

pub(super) fn parts<'a>(
    model: &'a Model,
    piece: &'a PieceView,
    view: &'a StrengthView,
    wide: u16,
    theme: Theme,
) -> Vec<Part<'a>> {
    let here = &model.screen.here;
    let Some(Row::Set { set, .. }) = model.row() else { return Vec::new() };
    let Some(set) = view.sets.iter().find(|shown| shown.set == *set) else { return Vec::new() };
    let mut parts = vec![Part::text(rank::TITLE, wide, theme.strong(), &here.title)];
    // Where it hurts too much there is no load to lift: the care text stands alone, and what does not hurt.
    if here.key.kind == KeyKind::Care {
        parts.push(Part::gap());
        parts.extend(piece.options.iter().map(|option| {
            let text = say::full::option_key(&option.name, &option.because_text);
            Part::text(rank::TABLE, wide, Theme::usual(), &text)
        }));
        return parts;
    }
    let load = set.load.as_ref().filter(|_| set.done.is_none());
    if let (Some(clock), None) = (&here.clock, &set.done) {
        parts.extend(asked(set, load, wide, theme));
        parts.push(Part::gap());
        let change = load.and_then(|load| load.change.as_ref());
        parts.push(change::rest(clock, change, wide, theme));
        parts.push(Part::gap());
        // The set before, the one to come and the one after: the digits want the room.
        parts.push(Part::table(rank::TABLE, wide, 3, table(view, set.set, theme)).at_most(3));
        parts.extend(why(set, wide, theme));
        parts.extend(notes(model, wide));
        parts.extend(consider(&piece.options, wide, theme));
        return parts;
    }
    parts.push(Part::text(rank::NOTES, wide, theme.quiet(), &view.heading));
    if !view.warm_up.is_empty() && set.done.is_none() {
        let steps: Vec<&str> = view.warm_up.iter().map(|step| step.text.as_str()).collect();
        let lines =
            headed(wide, theme.strong(), say::full::warm_up(), &steps.join(say::full::comma()));
        parts.push(Part::shrinking(rank::TABLE, wide, lines));
    }
    parts.push(Part::gap());
    parts.extend(load.and_then(|load| big(set, load, wide, theme)));
    parts.extend(asked(set, load, wide, theme));
    parts.extend(load.and_then(|load| on_the_bar(load, wide, theme)));
    parts.push(Part::gap());
    let all = u16::try_from(view.sets.len()).unwrap_or(u16::MAX);
    parts.push(Part::table(rank::TABLE, wide, all, table(view, set.set, theme)));
    parts.push(Part::gap());
    parts.extend(why(set, wide, theme));
    parts.extend(notes(model, wide));
    parts.extend(consider(&piece.options, wide, theme));
    if view.bar.is_some() {
        parts.push(Part::gap());
        parts.push(Part::text(rank::CAUTION, wide, theme.quiet(), always()[2]));
    }
    parts
}

/// What the set asks for, never cut: `60 kg x 6`, with the plates of a side. Of one that is done, what
/// was done.
fn asked(set: &SetView, load: Option<&LoadView>, wide: u16, theme: Theme) -> Vec<Part<'static>> {
    let text = match &set.done {
        Some(done) => say::full::did(&done.text),
        None => set.asked_text.clone(),
    };
    let build = load.and_then(|load| load.build.as_ref()).map(|build| build.text.clone());
    let Some(build) = build else {
        return vec![Part::whole(rank::LOAD, hanging(wide, theme.here_now(), &text))];
    };
    if display_width(&text) + display_width(&build) + 3 <= usize::from(wide) {
        let mut line = Line::styled(text, theme.here_now());
        line.push_span(ratatui::text::Span::styled(format!("   {build}"), Theme::usual()));
        return vec![Part::whole(rank::LOAD, vec![line])];
    }
    vec![
        Part::whole(rank::LOAD, hanging(wide, theme.here_now(), &text)),
        Part::text(rank::CLOCK, wide, Theme::usual(), &build),
    ]
}

/// The load as big as there is room for, where it is to be lifted now.
fn big(set: &SetView, load: &LoadView, wide: u16, theme: Theme) -> Option<Part<'static>> {
    // Behind the load in the athlete's unit stands the exact one.
    let mass = load.text.split(" (").next().unwrap_or_default().to_owned();
    let text = if set.open { mass } else { say::full::load_by_reps(mass, set.asked) };
    digits::fit(&text, wide, digits::height(1))?;
    let draw = move |rows| match digits::fit(&text, wide, rows) {
        Some(scale) => {
            let rows = digits::rows(&text, scale).into_iter();
            rows.map(|row| Line::styled(row, theme.strong())).collect()
        }
        None => Vec::new(),
    };
    Some(Part::drawn(rank::HEAD, [0, digits::height(1), digits::height(2)], draw))
}

/// `Each side: put on 5 kg`.
fn on_the_bar(load: &LoadView, wide: u16, theme: Theme) -> Option<Part<'static>> {
    let change = load.change.as_ref()?;
    let ready = change.off.is_empty() && change.on.is_empty();
    let text =
        if ready { say::full::bar_ready().to_owned() } else { say::full::each_side(&change.text) };
    Some(Part::text(rank::CLOCK, wide, theme.strong(), &text))
}

fn why(set: &SetView, wide: u16, theme: Theme) -> Vec<Part<'static>> {
    let mut parts = Vec::new();
    if let Some(doubt) = set.done.as_ref().and_then(|done| done.doubt.as_ref()) {
        parts.push(Part::text(rank::WHY, wide, theme.warn(), &say::full::really(sentence(doubt))));
    }
    if let Some(why) = &set.why {
        parts.push(Part::text(rank::WHY, wide, Theme::usual(), &say::full::why(why)));
    }
    if let Some(others) = &set.others {
        parts.push(Part::text(rank::WHY, wide, Theme::usual(), others));
    }
    if let (None, Some(expected)) = (&set.done, &set.expected) {
        let text = say::full::open_set(&expected.text);
        parts.push(Part::text(rank::NOTES, wide, theme.quiet(), &text));
    }
    parts
}

/// The sets, those to come in columns.
fn table(view: &StrengthView, here: u32, theme: Theme) -> Table {
    let to_come: Vec<Vec<String>> =
        view.sets.iter().filter(|set| set.done.is_none()).map(cells).collect();
    let mut to_come = columns(&to_come).into_iter();
    let line = |set: &SetView| match &set.done {
        Some(done) => format!("{:<2} {}", set.set, say::full::did(&done.text)),
        None => to_come.next().unwrap_or_default(),
    };
    let lines: Vec<String> = view.sets.iter().map(line).collect();
    let chosen = view.sets.iter().position(|set| set.set == here).unwrap_or(0);
    Table { lines, chosen, styles: [theme.here_now(), Theme::usual(), theme.quiet()] }
}

/// What a set that is to come asks for, in columns.
fn cells(set: &SetView) -> Vec<String> {
    let build = set.load.as_ref().and_then(|load| load.build.as_ref());
    // The unit stands with the load, and all of it with the set at hand.
    let build = build.map(|build| build.short.as_ref().unwrap_or(&build.text).clone());
    let build = build.unwrap_or_default();
    vec![set.set.to_string(), set.load_text.clone(), say::full::by_reps(&set.reps_text), build]
}

/// Options that are taken, and those that are suggested today, with the reason.
pub(super) fn consider(options: &[OptionView], wide: u16, theme: Theme) -> Vec<Part<'static>> {
    let taken = options.iter().filter(|option| option.taken).map(|option| {
        let text = say::full::option_taken(&option.name, &option.because_text);
        Part::text(rank::NOTES, wide, Theme::usual(), &text)
    });
    let suggested = options.iter().filter_map(|option| {
        let text = say::full::consider_option(&option.name, option.suggested.as_ref()?);
        let lines = headed(wide, theme.warn(), say::full::consider(), &text);
        Some(Part::shrinking(rank::NOTES, wide, lines))
    });
    taken.chain(suggested).collect()
}
