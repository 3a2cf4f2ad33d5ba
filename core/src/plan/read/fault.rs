//! What a place that is not TOML is called, and how the rest of the text is saved from it.

use std::ops::Range;

use toml::de::Error;

use super::lines::Lines;
use super::words::clip;
use crate::say::{plan, plan_syntax as say};

/// A broken place.
pub(super) struct Fault {
    /// Where it is, in bytes.
    pub(super) at: usize,
    /// What is wrong.
    pub(super) what: String,
    /// What to write instead.
    pub(super) help: String,
    /// What to do to read on.
    pub(super) remedy: Remedy,
    /// Up to here the text means what it says: behind a broken header nobody knows which section
    /// a line belongs to.
    pub(super) certain: usize,
}

/// What to do with a broken place.
pub(super) enum Remedy {
    /// Put a comma in the place of this blank, a single byte.
    Comma(Range<usize>),
    /// Leave these lines out.
    Blank(Range<usize>),
}

/// Where an error starts, in bytes.
pub(super) fn start(error: &Error) -> usize {
    error.span().map_or(0, |span| span.start)
}

impl Fault {
    /// Finds out about the first `error` of `all`.
    pub(super) fn find(text: &str, lines: &Lines<'_>, error: &Error, all: &[Error]) -> Fault {
        let end = text.trim_end().len();
        let at = start(error).min(end);
        let line = lines.around(at);
        let here = all.iter().filter(|error| lines.around(start(error).min(end)) == line);
        let here: Vec<&str> = here.map(Error::message).collect();
        if here.iter().any(|message| message.contains("multi-line"))
            && let Some(open) = open_text(text, lines, at)
        {
            return open;
        }
        if let Some(open) = open_bracket(text, lines, at, &here) {
            return open;
        }
        // The blank is one byte, and the only place for a comma that moves no other byte.
        let blank = text.as_bytes().get(at.wrapping_sub(1)).filter(|b| b.is_ascii_whitespace());
        if error.message().starts_with("missing comma") && blank.is_some() {
            return Fault {
                at,
                what: say::comma_missing().to_owned(),
                help: say::put_comma().to_owned(),
                remedy: Remedy::Comma(at - 1..at),
                certain: text.len(),
            };
        }
        let duplicate = error.message() == "duplicate key";
        let (what, help) = told(text, error);
        let (lost, certain) = if is_header(part(text, &line)) {
            let end = next_header(text, lines, line.end);
            (line.start..end, if duplicate { text.len() } else { line.start })
        } else {
            (line, text.len())
        };
        Fault { at, what, help, remedy: Remedy::Blank(lost), certain }
    }

    /// Something that starts at byte `at` and has no end, which `what` says; it makes `lost` unreadable.
    fn open(at: usize, what: &str, close: &str, lost: Range<usize>, certain: usize) -> Fault {
        Fault {
            at,
            what: what.to_owned(),
            help: say::close_with(close),
            remedy: Remedy::Blank(lost),
            certain,
        }
    }
}

/// Text over several lines that has no end before byte `at`. Whatever follows may be part of it.
fn open_text(text: &str, lines: &Lines<'_>, at: usize) -> Option<Fault> {
    let before = text.get(..at)?;
    let (open, close) = ["\"\"\"", "'''"]
        .into_iter()
        .filter_map(|quotes| Some((before.rfind(quotes)?, quotes)))
        .max()?;
    let from = lines.around(open).start;
    Some(Fault::open(open, say::text_not_closed(), close, from..text.len(), from))
}

/// A list or a table that is still open where the next key or section starts, at byte `at`, or at
/// the end of the text; `messages` are about the line of `at`.
fn open_bracket(text: &str, lines: &Lines<'_>, at: usize, messages: &[&str]) -> Option<Fault> {
    let about = |word: &str| {
        messages.iter().any(|message| message.contains(word) && !message.contains("array table"))
    };
    let (in_list, in_table) = (about("array"), about("inline table"));
    let line = lines.around(at);
    let next = part(text, &line);
    let indent = next.len() - next.trim_start().len();
    let at_end = at >= text.trim_end().len();
    let at_header = is_header(next) && at <= line.start + indent + 1;
    // A table may go on in the next line, where a key is no sign that it should have ended.
    let at_key = in_list && assigned(next).is_some_and(|equals| at <= line.start + equals);
    if !(in_list || in_table) || !(at_end || at_header || at_key) {
        return None;
    }
    let end = if at_end { text.len() } else { line.start };
    let before = lines.each().rev().skip_while(|line| line.start >= end);
    let more = |line: &str, open: char, close: char| {
        line.matches(open).count() > line.matches(close).count()
    };
    let mut opening = before.into_iter().filter_map(|line| {
        let written = part(text, &line);
        assigned(written)?;
        let close = match (more(written, '{', '}'), more(written, '[', ']')) {
            (true, _) => "}",
            (false, true) => "]",
            (false, false) => return None,
        };
        Some((line.start, line.start + written.len() - written.trim_start().len(), close))
    });
    let (from, at, close) = opening.next()?;
    let what = if close == "}" { say::table_not_closed() } else { say::list_not_closed() };
    Some(Fault::open(at, what, close, from..end, text.len()))
}

/// What is wrong and what to do about it. The parser's own words are for programmers, and English.
fn told(text: &str, error: &Error) -> (String, String) {
    let message = error.message();
    let place = error.span().and_then(|span| text.get(span)).unwrap_or_default().trim();
    if message.contains("must be quoted") || message.starts_with("invalid boolean") {
        // The parser guesses what a bare word was meant to be, which only confuses.
        let what = match place {
            "" => say::value_missing().to_owned(),
            word => say::bare_word(clip(word)),
        };
        return (what, say::quote_text().to_owned());
    }
    if message == "duplicate key" && !place.is_empty() {
        return (say::second_time(clip(place)), say::take_one_out().to_owned());
    }
    let (what, help) = plainly(message);
    (what.to_owned(), help.to_owned())
}

/// The same where it is enough to know what the parser says.
fn plainly(message: &str) -> (&'static str, &'static str) {
    let has = |word: &str| message.contains(word);
    if message == "duplicate key" {
        (say::line_unreadable(), say::take_one_out())
    } else if has("with a dotted key") {
        (say::dotted_twice(), say::take_one_out())
    } else if message.starts_with("invalid basic string, expected `\"`") {
        (say::quote_missing(), say::quote_on_one_line())
    } else if has("string") {
        (say::line_unreadable(), say::quote_on_one_line())
    } else if has("escaped") || has("unicode") {
        (say::backslash_unreadable(), say::write_backslash())
    } else if message.starts_with("unclosed") || has("opening") {
        (say::brackets_differ(), say::close_brackets())
    } else if has("extra comma") {
        (say::comma_too_many(), say::take_it_out())
    } else if has("extra `=`") {
        (say::equals_too_many(), say::take_it_out())
    } else if has("key with no value") || has("missing assignment") {
        (say::equals_missing(), say::write_key_and_value())
    } else if has("unexpected key or value") {
        (say::more_than_one(), say::one_each_line())
    } else if has("key") {
        (say::key_unreadable(), say::write_key_and_value())
    } else if has("newline") {
        (say::line_unreadable(), say::one_each_line())
    } else if has("invalid date") || has("invalid time") {
        (say::no_such_date(), plan::write_date())
    } else if ["digits", "radix", "leading zero", "sign"].into_iter().any(has) {
        (say::number_unreadable(), say::write_digits())
    } else {
        (say::line_unreadable(), say::write_like())
    }
}

fn part<'t>(text: &'t str, range: &Range<usize>) -> &'t str {
    text.get(range.clone()).unwrap_or_default()
}

/// True for `[kit]`, and for an attempt at it without the first bracket.
fn is_header(line: &str) -> bool {
    let line = line.split('#').next().unwrap_or_default().trim();
    let lacks_first = line.starts_with(|c: char| c.is_ascii_lowercase()) && line.ends_with(']');
    line.starts_with('[') || (lacks_first && !line.contains(['[', '=', '{', '"']))
}

fn next_header(text: &str, lines: &Lines<'_>, from: usize) -> usize {
    let mut below = lines.each().skip_while(|line| line.start < from);
    below.find(|line| is_header(part(text, line))).map_or(text.len(), |line| line.start)
}

/// Where the `=` is in a line that starts with a plain key.
fn assigned(line: &str) -> Option<usize> {
    let (key, _) = line.split_once('=')?;
    let plain = |c: char| c.is_ascii_alphanumeric() || "-_. \t\"'".contains(c);
    (!key.trim().is_empty() && key.chars().all(plain)).then_some(key.len())
}
