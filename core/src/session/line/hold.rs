//! A hold in a line: `held 120 60 cramp`.

use super::{Typed, listed, tap, whole, wrong};
use crate::error::Result;
use crate::instant::Millis;
use crate::say;
use crate::session::tap::Tap;

/// A hold: seconds a side, then in words why one is short.
pub(super) fn read(words: &[&str], piece: &str, sides: usize) -> Result<Typed> {
    let (mut held, mut rest) = (Vec::new(), words);
    while let Some((seconds, after)) = seconds(rest)? {
        held.push(Millis(i64::from(seconds) * 1000));
        rest = after;
    }
    if let Some(first) = rest.first().filter(|word| !is_said(word)) {
        return Err(wrong(say::line::not_why(first)));
    }
    if held.len() != sides {
        return Err(wrong(match sides {
            1 => say::line::seconds_of_one(),
            _ => say::line::seconds_of_sides(),
        }));
    }
    let said = (!rest.is_empty()).then(|| rest.join(" "));
    tap(Tap::LogHold { piece: piece.to_owned(), held, said })
}

/// True for a word that can begin a reason: a mistyped number is none, nor is a unit that is left over.
fn is_said(word: &str) -> bool {
    let text = word.trim_start_matches(['-', '+', '.', ',']);
    text.starts_with(|letter: char| !letter.is_numeric()) && !is_unit(word)
}

/// A time at the start of some words, and what follows it: `120`, `120 s`, `2 min`, `1 min 30 s`.
fn seconds<'t, 'w>(words: &'w [&'t str]) -> Result<Option<(u32, &'w [&'t str])>> {
    let Some(Amount { number, unit, ends, after }) = amount(words) else { return Ok(None) };
    let count = whole(number)?;
    if !unit.is_some_and(is_minute) {
        return Ok(Some((count, after)));
    }
    let (more, after) = match amount(after).filter(|_| !ends) {
        Some(Amount { number, unit: Some(unit), after, .. })
            if is_second(unit) && whole(number)? < 60 =>
        {
            (whole(number)?, after)
        }
        _ => (0, after),
    };
    let count = count.checked_mul(60).and_then(|seconds| seconds.checked_add(more));
    let count = count.ok_or_else(|| wrong(say::line::too_large(number)))?;
    Ok(Some((count, after)))
}

/// Digits with their unit, which may be the next word.
struct Amount<'t, 'w> {
    number: &'t str,
    unit: Option<&'t str>,
    /// True where a comma ends it.
    ends: bool,
    /// What follows.
    after: &'w [&'t str],
}

fn amount<'t, 'w>(words: &'w [&'t str]) -> Option<Amount<'t, 'w>> {
    let comma = |word: &'t str| word.strip_suffix(',').map_or((word, false), |word| (word, true));
    let (first, after) = words.split_first()?;
    let (word, ends) = comma(first);
    let end = word.find(|letter: char| !letter.is_ascii_digit()).unwrap_or(word.len());
    let (number, unit) = word.split_at(end);
    if number.is_empty() {
        return None;
    }
    if !unit.is_empty() {
        return is_unit(unit).then_some(Amount { number, unit: Some(unit), ends, after });
    }
    // A comma between a number and a unit would part them.
    if let ([next, rest @ ..], false) = (after, ends)
        && let (unit, ends) = comma(next)
        && is_unit(unit)
    {
        return Some(Amount { number, unit: Some(unit), ends, after: rest });
    }
    Some(Amount { number, unit: None, ends, after })
}

fn is_unit(word: &str) -> bool {
    is_second(word) || is_minute(word)
}

pub(super) fn is_second(word: &str) -> bool {
    listed::is(word, say::line::seconds_typed)
}

fn is_minute(word: &str) -> bool {
    listed::is(word, say::line::minutes_typed)
}

#[cfg(test)]
mod tests {
    use catalogue::{Language, speaking};
    use proptest::prelude::*;

    use super::*;
    use crate::error::Error;

    /// The seconds of a line and why they are short; or what was wrong.
    fn hold_of(
        typed: &str,
        sides: usize,
    ) -> std::result::Result<(Vec<i64>, Option<String>), String> {
        let words: Vec<&str> = typed.split_whitespace().collect();
        match read(&words, "Calves", sides) {
            Ok(Typed::Tap { tap: Tap::LogHold { held, said, .. } }) => {
                Ok((held.into_iter().map(|held| held.0 / 1000).collect(), said))
            }
            Err(Error::Invalid { reason, .. }) => Err(reason),
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn holds_are_seconds_and_a_reason() {
        let why = |why: &str| Some(why.to_owned());
        for (typed, said) in [
            ("120 95", None),
            ("120, 95", None),
            ("120s 95s", None),
            ("2 min 1 min 35 s", None),
            ("2min, 95 seconds", None),
            ("2 Minuten 95 Sek.", None),
            ("120 95 cramp in the calf", why("cramp in the calf")),
            ("120 95 s cramp", why("cramp")),
            ("120 95 (Krampf)", why("(Krampf)")),
        ] {
            assert_eq!(hold_of(typed, 2), Ok((vec![120, 95], said)), "{typed}");
        }
        assert_eq!(hold_of("60 steps too far", 1), Ok((vec![60], why("steps too far"))));
        for (typed, sides, starts) in [
            ("120", 2, "Type whole seconds for each side"),
            ("cramp", 2, "Type whole seconds for each side"),
            ("1 min 35 s", 2, "Type whole seconds for each side"),
            ("120 95 60", 2, "Type whole seconds for each side"),
            ("60 30", 1, "Type whole seconds: "),
            ("120 9o", 2, "\"9o\" says neither"),
            ("120 -5", 2, "\"-5\" says neither"),
            ("120,95", 2, "\"120,95\" says neither"),
            ("60 1.5", 1, "\"1.5\" says neither"),
            ("99999999999", 1, "\"99999999999\" is too large"),
            ("4294967295 min", 1, "\"4294967295\" is too large"),
        ] {
            let refused = hold_of(typed, sides).unwrap_err();
            assert!(refused.starts_with(starts), "{typed}: {refused}");
        }
    }

    proptest! {
        /// Every number is seconds of a side and every word after them the reason, or the line is refused.
        #[test]
        fn seconds_are_all_taken_or_refused(
            words in proptest::collection::vec("[1-9]{1,3}|[1-9]s|s|Sek\\.|min|cramp|Krampf|[1-9][.,][1-9]|,|-", 0..6),
            sides in 1..3_usize,
            german in any::<bool>(),
        ) {
            let typed = words.join(" ");
            let language = if german { Language::De } else { Language::En };
            if let Ok((held, said)) = speaking(language, || hold_of(&typed, sides)) {
                prop_assert_eq!(held.len(), sides, "{}", typed);
                let reason = words.iter().position(|word| word == "cramp" || word == "Krampf");
                let (before, after) = words.split_at(reason.unwrap_or(words.len()));
                prop_assert_eq!(said, reason.map(|_| after.join(" ")), "{}", typed);
                let digits = |word: &String| word.trim_end_matches('s').parse::<i64>().ok();
                if !before.contains(&"min".to_owned()) {
                    let numbers: Vec<i64> = before.iter().filter_map(digits).collect();
                    prop_assert_eq!(held, numbers, "{}", typed);
                }
                prop_assert!(!before.iter().any(|word| word.contains(['.', ',', '-']) && word != "Sek."), "{}", typed);
            }
        }
    }
}
