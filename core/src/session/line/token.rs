//! What a line of numbers is made of. A comma or a point between two digits is of the number, any other
//! comma stands between two things: `40,5 x 8, 2 left` has one of each.

use super::listed;
use crate::say;

/// A part of a line, with where it begins.
pub(super) type Token<'t> = (Part<'t>, usize);

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Part<'t> {
    /// Digits, with commas and points between them.
    Number(&'t str),
    /// Letters, with the full stop of an abbreviation.
    Word(&'t str),
    /// `x`, however it is written.
    Times,
    Comma,
    /// What no line has.
    Other,
}

/// The parts of a line.
pub(super) fn tokens(typed: &str) -> Vec<Token<'_>> {
    let mut found = Vec::new();
    let mut at = 0;
    while let Some(first) = typed[at..].chars().next() {
        let rest = &typed[at..];
        let (part, length) = match first {
            _ if first.is_whitespace() => {
                at += first.len_utf8();
                continue;
            }
            '0'..='9' => {
                let length = number(rest);
                (Part::Number(&rest[..length]), length)
            }
            ',' => (Part::Comma, 1),
            '×' | '*' => (Part::Times, first.len_utf8()),
            _ if first.is_alphabetic() => word(rest),
            _ => (Part::Other, rest.find(char::is_whitespace).unwrap_or(rest.len())),
        };
        found.push((part, at));
        at += length;
    }
    found
}

/// The length of a number.
fn number(text: &str) -> usize {
    let bytes = text.as_bytes();
    let digit = |at: usize| bytes.get(at).is_some_and(u8::is_ascii_digit);
    let point = |at: usize| matches!(bytes.get(at), Some(b'.' | b',')) && digit(at + 1);
    (0..).find(|at| !digit(*at) && !point(*at)).unwrap_or(0)
}

/// A word and its length. Nobody types a space in `60kgx7`.
fn word(text: &str) -> (Part<'_>, usize) {
    let of_it = |letter: char| letter.is_alphabetic() || letter == '\u{308}';
    let end = text.find(|letter: char| !of_it(letter)).unwrap_or(text.len());
    if text[..end].eq_ignore_ascii_case("x") {
        return (Part::Times, end);
    }
    match text[..end].strip_suffix(['x', 'X']) {
        Some(unit) if is_unit(unit) => (Part::Word(unit), unit.len()),
        _ => {
            let end = if text[end..].starts_with('.') { end + 1 } else { end };
            (Part::Word(&text[..end]), end)
        }
    }
}

/// True for a unit of mass.
pub(super) fn is_unit(word: &str) -> bool {
    let word = word.strip_suffix('.').unwrap_or(word);
    ["kg", "lb", "lbs"].iter().any(|unit| word.eq_ignore_ascii_case(unit))
}

/// What follows the word for reps, where it stands there.
pub(super) fn after_reps<'p, 't>(parts: &'p [Token<'t>]) -> &'p [Token<'t>] {
    match parts {
        [(Part::Word(word), _), after @ ..] if listed::is(word, say::line::reps_typed) => after,
        parts => parts,
    }
}

/// What follows commas.
pub(super) fn after_commas<'p, 't>(parts: &'p [Token<'t>]) -> &'p [Token<'t>] {
    let commas = parts.iter().take_while(|(part, _)| *part == Part::Comma).count();
    &parts[commas..]
}

/// The text from some parts on, as it was typed; none where there are none.
pub(super) fn text_of<'t>(typed: &'t str, parts: &[Token<'_>]) -> Option<&'t str> {
    let (_, from) = parts.first()?;
    let text = typed[*from..].trim();
    let words = text.trim_start_matches([',', ' ']);
    // A comma that nothing follows is what means nothing.
    Some(if words.is_empty() { text } else { words })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_comma_between_digits_is_the_numbers_own() {
        use Part::{Comma, Number, Other, Times, Word};
        let parts =
            |typed| -> Vec<Part<'_>> { tokens(typed).into_iter().map(|(part, _)| part).collect() };
        assert_eq!(
            parts("40,5 x 8, 2 left"),
            [Number("40,5"), Times, Number("8"), Comma, Number("2"), Word("left")]
        );
        assert_eq!(
            parts("60kgx7r2"),
            [Number("60"), Word("kg"), Times, Number("7"), Word("r"), Number("2")]
        );
        assert_eq!(
            parts("8 Wdh. ×*X -5,"),
            [Number("8"), Word("Wdh."), Times, Times, Times, Other]
        );
        assert_eq!(parts("1.2.3, "), [Number("1.2.3"), Comma]);
    }
}
