//! A set in a line: `40 x 8, 2 left`; with a minus what is taken off a body: `-20 x 8`.

use super::token::{Part, Token, after_commas, after_reps, is_unit, text_of, tokens};
use super::{Typed, listed, tap, whole, wrong};
use crate::error::Result;
use crate::mass::{Mass, MassError, MassUnit};
use crate::say;
use crate::session::Tap;

/// Reads load, reps and reps left, each of which may be left out.
pub(super) fn read(typed: &str, piece: &str, set: u32, unit: MassUnit) -> Result<Typed> {
    let whole_line = typed;
    let less = typed.trim_start().strip_prefix(['-', '\u{2212}']);
    let typed = less.unwrap_or(typed);
    let parts = tokens(typed);
    let (load, rest) = match parts.as_slice() {
        [(Part::Number(number), _), (Part::Times, _), rest @ ..] => {
            (Some(mass(number, "", unit)?), rest)
        }
        [(Part::Number(number), _), (Part::Word(symbol), _), (Part::Times, _), rest @ ..]
            if is_unit(symbol) =>
        {
            (Some(mass(number, symbol, unit)?), rest)
        }
        rest => (None, rest),
    };
    let load = match (less, load) {
        // Only a load has a sign.
        (Some(_), None) => return Err(wrong(say::line::set_means_nothing(whole_line.trim()))),
        (Some(_), Some(load)) => Some(Mass::ZERO - load),
        (None, load) => load,
    };
    let Some(Done { reps, left, rest }) = done(load.is_some(), rest) else {
        return Err(wrong(say::line::set_two_ways(typed)));
    };
    if let Some(text) = text_of(typed, rest) {
        return Err(wrong(say::line::set_means_nothing(text)));
    }
    if load.is_none() && reps.is_none() && left.is_none() {
        return Err(wrong(say::line::which_set()));
    }
    let [reps, reserve] = [reps, left].map(|number| number.map(whole).transpose());
    let (piece, set) = (piece.to_owned(), Some(set));
    tap(Tap::LogSet { piece, set, load, reps: reps?, reserve: reserve? })
}

fn mass(number: &str, symbol: &str, unit: MassUnit) -> Result<Mass> {
    let symbol = symbol.trim_end_matches('.');
    Mass::parse(&format!("{number} {symbol}"), Some(unit)).map_err(|error| {
        wrong(match error {
            MassError::TooFine => say::line::load_too_fine(number),
            MassError::TooLarge => say::line::load_too_heavy(number),
            MassError::Form | MassError::NoUnit { .. } => say::line::set_means_nothing(number),
        })
    })
}

/// What was done of a set, and what follows.
struct Done<'p, 't> {
    reps: Option<&'t str>,
    left: Option<&'t str>,
    rest: &'p [Token<'t>],
}

/// Reads reps and reps left. None where two can be meant: `60 x 8 left` may have lost its reps or its reps
/// left, and `1,5 left` may be one number or two. After a load `8,2 left` can only be two.
fn done<'p, 't>(loaded: bool, parts: &'p [Token<'t>]) -> Option<Done<'p, 't>> {
    match parts {
        [(Part::Number(number), _), (Part::Word(word), _), rest @ ..] if is_left(word) => {
            match (loaded, number.split_once(',')) {
                (false, None) => Some(Done { reps: None, left: Some(number), rest }),
                (true, Some((reps, left))) => {
                    Some(Done { reps: Some(reps), left: Some(left), rest })
                }
                _ => None,
            }
        }
        [(Part::Number(reps), _), rest @ ..] => {
            let (left, rest) = reserve(after_reps(rest));
            Some(Done { reps: Some(reps), left, rest })
        }
        rest => {
            let (left, rest) = reserve(rest);
            Some(Done { reps: None, left, rest })
        }
    }
}

/// Reps left, and what follows: `, 2 left`, or `r2` for short.
fn reserve<'p, 't>(parts: &'p [Token<'t>]) -> (Option<&'t str>, &'p [Token<'t>]) {
    match after_commas(parts) {
        [(Part::Number(left), _), (Part::Word(word), _), rest @ ..] if is_left(word) => {
            (Some(left), rest)
        }
        [(Part::Word(word), _), (Part::Number(left), _), rest @ ..]
            if word.eq_ignore_ascii_case("r") =>
        {
            (Some(left), rest)
        }
        _ => (None, parts),
    }
}

fn is_left(word: &str) -> bool {
    listed::is(word, say::line::left_typed)
}

#[cfg(test)]
mod tests {
    use catalogue::{Language, speaking};
    use proptest::prelude::*;

    use super::*;

    type Read = (Option<String>, Option<u32>, Option<u32>);

    fn read_kg(typed: &str) -> std::result::Result<Read, String> {
        match read(typed, "Squat", 2, MassUnit::Kg) {
            Ok(Typed::Tap { tap: Tap::LogSet { load, reps, reserve, .. } }) => {
                Ok((load.map(|load| load.every_digit()), reps, reserve))
            }
            Ok(other) => panic!("{typed}: {other:?}"),
            Err(crate::error::Error::Invalid { reason, .. }) => Err(reason),
            Err(other) => panic!("{typed}: {other:?}"),
        }
    }

    #[test]
    fn a_set_is_a_few_keys() {
        let kg = |load: &str| Some(load.to_owned());
        for (typed, wanted) in [
            ("7", (None, Some(7), None)),
            ("8 reps", (None, Some(8), None)),
            ("8 Wdh., 2 übrig", (None, Some(8), Some(2))),
            ("62.5x7", (kg("62.5 kg"), Some(7), None)),
            ("62,5 x 7", (kg("62.5 kg"), Some(7), None)),
            ("60kgX7", (kg("60 kg"), Some(7), None)),
            ("60 x", (kg("60 kg"), None, None)),
            ("60 × 7, 2 left", (kg("60 kg"), Some(7), Some(2))),
            ("60x7 2 left", (kg("60 kg"), Some(7), Some(2))),
            ("40,5 x 8, 2 left", (kg("40.5 kg"), Some(8), Some(2))),
            ("40.5 * 8, 2 übrig", (kg("40.5 kg"), Some(8), Some(2))),
            ("40 x 8,2 left", (kg("40 kg"), Some(8), Some(2))),
            ("40 kg x 8, 2 uebrig", (kg("40 kg"), Some(8), Some(2))),
            ("40 KG X 8, 2 U\u{308}BRIG", (kg("40 kg"), Some(8), Some(2))),
            ("7, 0 left", (None, Some(7), Some(0))),
            ("3 left", (None, None, Some(3))),
            ("60 x, 2 left", (kg("60 kg"), None, Some(2))),
            ("100 lb x 7 r2", (kg("45.359237 kg"), Some(7), Some(2))),
            ("7 r 2", (None, Some(7), Some(2))),
            ("r2", (None, None, Some(2))),
            ("-20 x 8", (kg("-20 kg"), Some(8), None)),
            (" \u{2212}7,5kg x 8, 2 left", (kg("-7.5 kg"), Some(8), Some(2))),
        ] {
            for language in Language::ALL {
                let read = speaking(language, || read_kg(typed));
                assert_eq!(read, Ok(wanted.clone()), "{typed} in {language}");
            }
        }
    }

    /// Nothing typed is ignored in silence: what is not understood is an error that shows it.
    #[test]
    fn what_makes_no_sense_is_shown() {
        for (typed, shown) in [
            ("x", "x"),
            ("sixty", "sixty"),
            ("-5", "-5"),
            ("-8, 2 left", "-8, 2 left"),
            ("--20 x 8", "--20 x 8"),
            ("20 x 8 -", "-"),
            ("60 x -7", "-7"),
            ("60 kg", "kg"),
            ("7 r", "r"),
            ("7 rr2", "rr2"),
            ("left", "left"),
            ("7, left", "left"),
            ("7,", ","),
            ("7 8", "8"),
            ("60 x 7 easy", "easy"),
            ("60 x 7, 2 left over", "over"),
            ("2 reps left", "left"),
            ("7.5", "7.5"),
            ("40,5 x 8,5", "8,5"),
            ("40 x 8, 2,5 left", "2,5"),
            ("7.2 left", "7.2"),
            ("1,5 übrig", "1,5 übrig"),
            ("60 x 8 left", "60 x 8 left"),
            ("1.2.3 x 5", "1.2.3"),
            ("0.0001 x 5", "0.0001"),
            ("2001 x 5", "2001"),
            ("60 x 99999999999", "99999999999"),
        ] {
            let quoted =
                [(Language::En, format!("\"{shown}\" ")), (Language::De, format!("„{shown}“ "))];
            for (language, quoted) in quoted {
                let refused = speaking(language, || read_kg(typed)).unwrap_err();
                assert!(refused.starts_with(&quoted), "{typed} in {language}: {refused}");
            }
        }
    }

    /// Every whole number that stands in a text, and the digits of every other.
    fn numbers(text: &str) -> Vec<String> {
        let digits = text.split(|letter: char| !letter.is_ascii_digit());
        digits.filter(|digits| !digits.is_empty()).map(str::to_owned).collect()
    }

    proptest! {
        /// However it is written, it says what it says.
        #[test]
        fn a_set_says_the_same_in_every_way_to_write_it(
            (whole, half) in (1..500_u32, any::<bool>()),
            reps in proptest::option::of(0..1000_u32),
            left in proptest::option::of(0..11_u32),
            decimal in "[.,]",
            unit in "( ?(kg|KG|Kg\\.))?",
            times in " ?[xX×*] ?",
            word in " ?(left|übrig|uebrig|Left|ÜBRIG)",
            german in any::<bool>(),
        ) {
            let half = if half { format!("{decimal}5") } else { String::new() };
            let mut typed = format!("{whole}{half}{unit}{times}");
            typed += &reps.map_or(String::new(), |reps| reps.to_string());
            typed += &left.map_or(String::new(), |left| format!(", {left}{word}"));
            let language = if german { Language::De } else { Language::En };
            let read = speaking(language, || read_kg(&typed));
            let load = format!("{whole}{} kg", if half.is_empty() { "" } else { ".5" });
            prop_assert_eq!(read, Ok((Some(load), reps, left)), "{}", typed);
        }

        /// What is put together of things that lines have: every number that stands in it is logged, in
        /// its order, or the line is refused with a sentence.
        #[test]
        fn a_line_means_all_that_it_says_or_is_refused(
            parts in proptest::collection::vec(
                "[1-9]{1,2}|[1-9][.,]5|x|×|kg|lb|, |,| |left|übrig|r|reps|Wdh\\.|easy|-|;|/",
                1..10,
            ),
            german in any::<bool>(),
        ) {
            let typed = parts.concat();
            let language = if german { Language::De } else { Language::En };
            match speaking(language, || read(&typed, "Squat", 2, MassUnit::Kg)) {
                Ok(Typed::Tap { tap: Tap::LogSet { load, reps, reserve, .. } }) => {
                    let unit = if typed.contains("lb") { MassUnit::Lb } else { MassUnit::Kg };
                    let mut logged = load.map_or(Vec::new(), |load| numbers(&load.number(unit)));
                    logged.extend([reps, reserve].into_iter().flatten().map(|number| number.to_string()));
                    prop_assert_eq!(numbers(&typed), logged, "{}", typed);
                    let minus = load.is_some_and(|load| load < Mass::ZERO);
                    prop_assert_eq!(typed.matches('-').count(), usize::from(minus), "{}", typed);
                    for meaningless in ["easy", ";", "/"] {
                        prop_assert!(!typed.contains(meaningless), "{}", typed);
                    }
                    let words = typed.replace("reps", "").replace("übrig", "left");
                    let left = words.contains("left") || words.contains('r');
                    prop_assert_eq!(reserve.is_some(), left, "{}", typed);
                }
                Ok(other) => prop_assert!(false, "{}: {:?}", typed, other),
                Err(error) => {
                    let said = error.to_string();
                    prop_assert!(said.ends_with('.'), "{}: {}", typed, said);
                }
            }
        }

        /// Whatever is typed, nothing panics.
        #[test]
        fn anything_can_be_typed(typed in ".{0,40}") {
            let _ = read(&typed, "Squat", 2, MassUnit::Lb);
        }
    }
}
