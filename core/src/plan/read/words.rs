//! Words for messages: the nearest word, lists of words, numbers people can read.

use catalogue::spoken;

use crate::say;

/// The word of `among` that somebody who wrote `word` most likely meant.
pub(super) fn nearest<'w>(word: &str, among: &[&'w str]) -> Option<&'w str> {
    let word: Vec<char> = word.to_lowercase().chars().collect();
    if word.len() < 2 || word.len() > 64 {
        return None;
    }
    let scored = among.iter().filter_map(|candidate| {
        let letters: Vec<char> = candidate.chars().collect();
        // A start such as `tue` is better than any slip.
        let shortened = word.len() >= 3 && letters.starts_with(&word);
        let slips = if shortened { 0 } else { distance(&word, &letters) };
        let allowed = (word.len().max(letters.len()) / 3).max(1);
        (slips <= allowed && slips < letters.len()).then_some((slips, *candidate))
    });
    scored.min_by_key(|(slips, _)| *slips).map(|(_, candidate)| candidate)
}

/// How many slips lead from one word to the other: a letter too many, one too few, a wrong one or
/// two neighbours swapped (optimal string alignment).
fn distance(from: &[char], to: &[char]) -> usize {
    let mut before: Vec<usize> = Vec::new();
    let mut above: Vec<usize> = (0..=to.len()).collect();
    for (i, letter) in from.iter().enumerate() {
        let mut row = vec![i + 1];
        for (j, wanted) in to.iter().enumerate() {
            let replaced = above[j] + usize::from(letter != wanted);
            let mut least = replaced.min(above[j + 1] + 1).min(row[j] + 1);
            if i > 0 && j > 0 && from[i - 1] == *wanted && to[j - 1] == *letter {
                least = least.min(before[j - 1] + 1);
            }
            row.push(least);
        }
        before = std::mem::replace(&mut above, row);
    }
    above.last().copied().unwrap_or_default()
}

/// What a word of the plan stands between in a message.
#[derive(Clone, Copy)]
pub(super) enum Mark {
    /// A key: `` `name` ``.
    Key,
    /// A value: `"squat"`, as the plan writes it.
    Word,
}

impl Mark {
    fn around(self, word: &str) -> String {
        match self {
            Mark::Key => format!("`{word}`"),
            Mark::Word => format!("\"{word}\""),
        }
    }
}

/// `"a", "b" or "c"`.
pub(super) fn either(words: &[&str], mark: Mark) -> String {
    joined(words, mark, say::plan::or_last)
}

/// `"a", "b" and "c"`.
pub(super) fn both(words: &[&str], mark: Mark) -> String {
    joined(words, mark, say::plan::and_last)
}

/// `"a", "b", "c"`.
pub(super) fn commas(words: &[&str], mark: Mark) -> String {
    joined(words, mark, say::plan::comma)
}

fn joined(words: &[&str], mark: Mark, end: impl FnOnce(String, String) -> String) -> String {
    let mut words: Vec<String> = words.iter().map(|word| mark.around(word)).collect();
    let last = words.pop().unwrap_or_default();
    match words.into_iter().reduce(say::plan::comma) {
        Some(before) => end(before, last),
        None => last,
    }
}

/// Names as they are, in a list with its last word: `Ana, Ben and Ines`.
pub(super) fn names(names: &[String]) -> String {
    match names.split_last() {
        Some((last, before)) if !before.is_empty() => say::plan::and_last(in_a_row(before), last),
        _ => in_a_row(names),
    }
}

/// The same without: `Ana, Ben`.
pub(super) fn in_a_row(names: &[String]) -> String {
    names.iter().cloned().reduce(say::plan::comma).unwrap_or_default()
}

/// A help text, with what was most likely meant before it, if anything was.
pub(super) fn with_guess(word: &str, among: &[&str], mark: Mark, help: String) -> String {
    let guess = match (nearest(word, among), mark) {
        (None, _) => return help,
        (Some(near), Mark::Key) => say::plan::did_you_mean_key(near),
        (Some(near), Mark::Word) => say::plan::did_you_mean_word(near),
    };
    say::plan::both_sentences(guess, help)
}

/// A piece of the plan short enough for a message, on one line.
pub(super) fn clip(text: &str) -> String {
    const LONGEST: usize = 40;
    let plain = |c: char| if c.is_control() { '\u{fffd}' } else { c };
    let short: String = text.chars().take(LONGEST).map(plain).collect();
    let more = if text.chars().nth(LONGEST).is_some() { "…" } else { "" };
    format!("{short}{more}")
}

/// A number with a comma between the thousands, a point in languages whose decimals have the comma:
/// `30,720`.
pub(super) fn thousands(number: usize) -> String {
    let between = if spoken().decimal() == ',' { '.' } else { ',' };
    let digits = number.to_string();
    let mut text = String::new();
    for (index, digit) in digits.chars().enumerate() {
        if index > 0 && (digits.len() - index).is_multiple_of(3) {
            text.push(between);
        }
        text.push(digit);
    }
    text
}

#[cfg(test)]
mod tests {
    use catalogue::{Language, speaking};

    use super::*;

    #[test]
    fn a_slip_finds_its_word_and_a_stranger_finds_none() {
        let keys = ["kind", "name", "window", "rounds", "station", "margin", "reps", "rest"];
        assert_eq!(nearest("round", &keys), Some("rounds"));
        assert_eq!(nearest("Widnow", &keys), Some("window"));
        assert_eq!(nearest("stat", &keys), Some("station"));
        assert_eq!(nearest("load", &keys), None);
        assert_eq!(nearest("res", &keys), Some("rest"));
        assert_eq!(nearest("x", &["y"]), None);
        assert_eq!(nearest("tue", &["tuesday"]), Some("tuesday"));
    }

    #[test]
    fn lists_and_numbers_read_well() {
        assert_eq!(either(&["a"], Mark::Key), "`a`");
        assert_eq!(either(&["a", "b", "c"], Mark::Word), "\"a\", \"b\" or \"c\"");
        assert_eq!(both(&["a", "b"], Mark::Key), "`a` and `b`");
        assert_eq!(both(&[], Mark::Key), "");
        assert_eq!(commas(&["a", "b", "c"], Mark::Word), "\"a\", \"b\", \"c\"");
        let people = ["Ana", "Ben", "Ines"].map(str::to_owned);
        assert_eq!(names(&people), "Ana, Ben and Ines");
        assert_eq!(
            (names(&people[..1]), in_a_row(&people[..2])),
            ("Ana".into(), "Ana, Ben".into())
        );
        assert_eq!(thousands(7), "7");
        assert_eq!(thousands(30_720), "30,720");
        assert_eq!(thousands(1_234_567), "1,234,567");
        assert_eq!(clip(&"x".repeat(41)), format!("{}…", "x".repeat(40)));
        assert_eq!(clip("a\nb"), "a\u{fffd}b");
        speaking(Language::De, || {
            assert_eq!(either(&["a", "b", "c"], Mark::Word), "\"a\", \"b\" oder \"c\"");
            assert_eq!(thousands(30_720), "30.720");
        });
    }
}
