//! Screens on a terminal: plain words as wide as it is, colour only where it helps and never alone.

mod board;
mod member;
mod piece;
mod plates;
mod sheet;
pub(crate) mod units;
pub(crate) mod words;

use std::io::{ErrorKind, Write};

use comfy_table::{ContentArrangement, Table, presets};

use holdfast_core::Holdfast;
use holdfast_core::coach::Proposal;
use holdfast_core::load::Decision;
use holdfast_core::plan::Problem;
use holdfast_core::session::{ClockView, Key, KeyKind};
use owo_colors::OwoColorize;

use crate::fault::{Fault, Outcome};
use crate::say;

pub(crate) use board::board;
pub(crate) use member::member;
pub(crate) use piece::{flags, options, pieces, written};
pub(crate) use plates::plates;
pub(crate) use sheet::{notice_line, sheet};

/// Decides on colours once, before anything is printed. `anstream` decides well but for one case: where
/// `CI` is set it colours on a line printer too.
pub(crate) fn choose_colour() {
    if crate::full::is_line_printer() {
        anstream::ColorChoice::Never.write_global();
    }
}

/// Writes a text to standard output, with colours only where they are wanted.
pub(crate) fn out(text: &str) -> Outcome {
    let mut out = anstream::stdout().lock();
    match out.write_all(wrapped(&harmless(text)).as_bytes()).and_then(|()| out.flush()) {
        Ok(()) => Ok(()),
        Err(error) if error.kind() == ErrorKind::BrokenPipe => Err(Fault::Closed),
        Err(error) => {
            let path = say::sheet::standard_output().into();
            Err(Fault::File { path, reason: error.to_string() })
        }
    }
}

/// Keeps line ends and colours (`ESC [ digits m`) and drops every other control character: names
/// and words come from other people's files, and must not steer a terminal.
pub(crate) fn harmless(text: &str) -> String {
    let mut kept = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(at) = rest.find(|c: char| c.is_control() && c != '\n') {
        kept.push_str(&rest[..at]);
        rest = &rest[at..];
        let colour = rest.strip_prefix("\u{1b}[").and_then(|body| {
            let end = body.find(|c: char| !(c.is_ascii_digit() || c == ';'))?;
            body[end..].starts_with('m').then_some(end + 3)
        });
        let skip = rest.chars().next().map_or(0, char::len_utf8);
        kept.push_str(&rest[..colour.unwrap_or(0)]);
        rest = &rest[colour.unwrap_or(skip)..];
    }
    kept + rest
}

/// Writes any screen as JSON.
pub(crate) fn json(value: &impl serde::Serialize) -> Outcome {
    let text =
        serde_json::to_string_pretty(value).map_err(|error| Fault::Typed(error.to_string()))?;
    out(&format!("{text}\n"))
}

/// What may not be meant in a plan, each with its place and what to do.
pub(crate) fn notes(source_name: &str, notes: &[Problem]) -> String {
    let note = |note: &Problem| {
        let place = format!("{source_name}:{}:{}:", note.line, note.column);
        let (what, help) = (&note.what, &note.help);
        format!("{} {} {what}\n    {}\n", place.bold(), say::command::note(), help.dimmed())
    };
    notes.iter().map(note).collect()
}

/// The terminal's width, when standard output is one.
fn width() -> Option<u16> {
    let size = terminal_size::terminal_size_of(std::io::stdout());
    size.map(|(width, _)| width.0.clamp(40, 110))
}

/// Breaks long lines between words on a terminal; a pipe gets them as they are.
fn wrapped(text: &str) -> String {
    let Some(width) = width() else { return text.to_owned() };
    let wrap = |line: &str| {
        if textwrap::core::display_width(line) <= usize::from(width) {
            return line.to_owned();
        }
        let indent = line.len() - line.trim_start().len();
        let hanging = " ".repeat(indent + 2);
        textwrap::fill(line, textwrap::Options::new(width.into()).subsequent_indent(&hanging))
    };
    text.split('\n').map(wrap).collect::<Vec<String>>().join("\n")
}

/// A clock in a few words: `Let go, left, 18 s to go`.
pub(crate) fn clock(clock: &ClockView) -> String {
    // Rounded up, so that nobody is sent off early.
    let to_go = clock.left.map(|left| (left.0 + 999) / 1000);
    match (&clock.about, to_go) {
        (None, None) => say::sheet::clock(&clock.now),
        (Some(about), None) => say::sheet::clock_about(&clock.now, about),
        (None, Some(seconds)) => say::sheet::clock_to_go(&clock.now, seconds),
        (Some(about), Some(seconds)) => say::sheet::clock_about_to_go(&clock.now, about, seconds),
    }
}

/// What the one key does, for the line before the prompt: `Enter: Done: 60 kg x 6. Saves set 2.`
pub(crate) fn key(key: &Key) -> String {
    let does = sentence(&key.words);
    let does = if key.kind == KeyKind::Waits { does } else { say::sheet::enter(does) };
    match &key.more {
        Some(more) => format!("{does} {more}"),
        None => does,
    }
}

/// Words closed with a full stop, unless they close themselves.
fn sentence(words: &str) -> String {
    let closed = words.ends_with(['.', '?', '!']);
    format!("{words}{}", if closed { "" } else { "." })
}

/// A table without lines, as wide as the terminal or 100 columns.
pub(crate) fn table(header: &[&str]) -> Table {
    let mut table = Table::new();
    table.load_style(presets::NOTHING).set_content_arrangement(ContentArrangement::Dynamic);
    // Colour is left to the stream, which knows about pipes and NO_COLOR.
    table.force_no_tty();
    // Room for the indent that every table here is given.
    table.set_width(width().unwrap_or(100) - 4);
    if !header.is_empty() {
        table.set_header(header.to_vec());
    }
    table
}

/// The table's lines, each indented and without trailing blanks.
pub(crate) fn indented(table: &Table, by: usize) -> String {
    let indent = " ".repeat(by);
    table.lines().map(|line| format!("{indent}{}\n", line.trim_end())).collect()
}

/// A proposal in two lines, what and why; a third where something holds the answer.
fn proposal(proposal: &Proposal, indent: usize) -> String {
    let indent = " ".repeat(indent);
    let (movement, last, next) = (&proposal.called, &proposal.last_text, &proposal.next_text);
    let what = match proposal.ruled {
        None => say::board::proposal(movement, last, next),
        Some(Decision::Accept) => say::board::proposal_accepted(movement, last, next),
        Some(Decision::Change) => say::board::proposal_changed(movement, last, next),
        Some(Decision::Refuse) => say::board::proposal_refused(movement, last, next),
    };
    let mut text = format!("{indent}{what}\n{indent}  {}\n", proposal.why.dimmed());
    if let Some(held) = &proposal.held {
        text += &format!("{indent}  {}\n", held.yellow());
    }
    text
}

/// Where goes what was just logged: out with the next exchange, or nowhere, from a device that no longer counts.
pub(crate) fn where_it_goes(holdfast: &Holdfast) -> Outcome<&'static str> {
    let people = holdfast.crew()?.people;
    let this = people.iter().flat_map(|person| &person.devices).find(|device| device.is_this);
    Ok(match this.is_none_or(|device| device.standing) {
        true => say::command::next_exchange(),
        false => say::command::stays_on_device(),
    })
}

#[cfg(test)]
mod tests {
    use super::harmless;

    #[test]
    fn only_line_ends_and_colours_pass() {
        let red = "\u{1b}[1;31mPAIN\u{1b}[0m\n";
        assert_eq!(harmless(red), red);
        assert_eq!(harmless("Ana\u{1b}[2J\u{1b}]0;x\u{7}\rBea\u{9b}5n"), "Ana[2J]0;xBea5n");
        assert_eq!(harmless("\u{1b}["), "[");
        assert_eq!(harmless("Zoë 🚣"), "Zoë 🚣");
    }
}
