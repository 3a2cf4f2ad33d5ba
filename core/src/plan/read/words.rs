//! Words for messages: the nearest word, lists of words, numbers people can read.

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

/// `"a", "b" or "c"`, every word between two of `mark`.
pub(super) fn either(words: &[&str], mark: char) -> String {
    joined(words, mark, " or ")
}

/// `"a", "b" and "c"`, every word between two of `mark`.
pub(super) fn both(words: &[&str], mark: char) -> String {
    joined(words, mark, " and ")
}

fn joined(words: &[&str], mark: char, last: &str) -> String {
    let words: Vec<String> = words.iter().map(|word| format!("{mark}{word}{mark}")).collect();
    match words.split_last() {
        Some((end, [])) => end.clone(),
        Some((end, rest)) => format!("{}{last}{end}", rest.join(", ")),
        None => String::new(),
    }
}

/// The start of a help text: what was most likely meant, if anything was.
pub(super) fn did_you_mean(word: &str, among: &[&str], mark: char) -> String {
    match nearest(word, among) {
        Some(near) => format!("did you mean {mark}{near}{mark}? "),
        None => String::new(),
    }
}

/// A piece of the plan short enough for a message, on one line.
pub(super) fn clip(text: &str) -> String {
    const LONGEST: usize = 40;
    let plain = |c: char| if c.is_control() { '\u{fffd}' } else { c };
    let short: String = text.chars().take(LONGEST).map(plain).collect();
    let more = if text.chars().nth(LONGEST).is_some() { "…" } else { "" };
    format!("{short}{more}")
}

/// `1 load`, `2 loads`.
pub(super) fn counted(count: usize, noun: &str) -> String {
    let plural = if count == 1 { "" } else { "s" };
    format!("{count} {noun}{plural}")
}

/// A number with a comma between the thousands: `30,720`.
pub(super) fn thousands(number: usize) -> String {
    let digits = number.to_string();
    let mut text = String::new();
    for (index, digit) in digits.chars().enumerate() {
        if index > 0 && (digits.len() - index).is_multiple_of(3) {
            text.push(',');
        }
        text.push(digit);
    }
    text
}

#[cfg(test)]
mod tests {
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
        assert_eq!(either(&["a"], '`'), "`a`");
        assert_eq!(either(&["a", "b", "c"], '"'), "\"a\", \"b\" or \"c\"");
        assert_eq!(both(&["a", "b"], '`'), "`a` and `b`");
        assert_eq!(both(&[], '`'), "");
        assert_eq!(thousands(7), "7");
        assert_eq!(thousands(30_720), "30,720");
        assert_eq!(thousands(1_234_567), "1,234,567");
        assert_eq!(clip(&"x".repeat(41)), format!("{}…", "x".repeat(40)));
        assert_eq!(clip("a\nb"), "a\u{fffd}b");
    }
}
