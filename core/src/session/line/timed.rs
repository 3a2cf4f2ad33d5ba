//! Windows and readings in a line: `12 8`, `10.5 11`.

use super::hold::is_second;
use super::token::{Part, after_commas, after_reps, text_of, tokens};
use super::{Typed, tap, whole, wrong};
use crate::error::Result;
use crate::instant::Millis;
use crate::plan::MeasuredWhen;
use crate::say;
use crate::session::tap::{SideReading, Tap};

/// A window: reps, or reps and seconds to spare; nothing is as planned.
pub(super) fn window(typed: &str, piece: &str, window: u32) -> Result<Typed> {
    let parts = tokens(typed);
    let (reps, spare, rest) = match parts.as_slice() {
        [(Part::Number(reps), _), rest @ ..] => {
            let rest = after_reps(rest);
            match after_commas(rest) {
                [(Part::Number(spare), _), (Part::Word(unit), _), rest @ ..] if is_second(unit) => {
                    (Some(*reps), Some(*spare), rest)
                }
                [(Part::Number(spare), _), rest @ ..] => (Some(*reps), Some(*spare), rest),
                _ => (Some(*reps), None, rest),
            }
        }
        rest => (None, None, rest),
    };
    if let Some(text) = text_of(typed, rest) {
        return Err(wrong(say::line::window_means_nothing(text)));
    }
    let number = |number: &str| {
        // Two numbers with a comma alone between them can be one.
        if number.contains(['.', ',']) {
            return Err(wrong(say::line::window_means_nothing(number)));
        }
        whole(number)
    };
    let [reps, spare] = [reps, spare].map(|found| found.map(number).transpose());
    let spare = spare?.map(|seconds| Millis(i64::from(seconds) * 1000));
    tap(Tap::LogWindow { piece: piece.to_owned(), window: Some(window), reps: reps?, spare })
}

/// The readings of a measure, one a side.
pub(super) fn measure(
    words: &[&str],
    piece: &str,
    when: MeasuredWhen,
    sides: usize,
) -> Result<Typed> {
    let one = |word: &&str| {
        let number = word.strip_suffix(',').unwrap_or(word);
        tenths(number).ok_or_else(|| {
            wrong(match sides {
                2 => say::line::not_a_reading_of_two(word),
                _ => say::line::not_a_reading_of_one(word),
            })
        })
    };
    let read = words.iter().map(one).collect::<Result<Vec<i64>>>()?;
    if read.len() != sides {
        return Err(wrong(match sides {
            2 => say::line::two_readings(),
            _ => say::line::one_reading(),
        }));
    }
    let side = |index: u32| (sides == 2).then_some(index);
    let readings = (1..).zip(read);
    let readings =
        readings.map(|(index, tenths)| SideReading { side: side(index), tenths }).collect();
    tap(Tap::LogRange { piece: piece.to_owned(), when, readings })
}

/// `10.5` as 105 tenths.
pub(in crate::session) fn tenths(word: &str) -> Option<i64> {
    let (sign, word) = word.strip_prefix('-').map_or((1, word), |word| (-1, word));
    let word = word.replace(',', ".");
    let (whole, tenth) = word.split_once('.').unwrap_or((&word, "0"));
    let digits = |text: &str| text.bytes().all(|byte| byte.is_ascii_digit());
    if whole.is_empty() || whole.len() > 4 || tenth.len() != 1 || !digits(whole) || !digits(tenth) {
        return None;
    }
    Some(sign * (whole.parse::<i64>().ok()? * 10 + tenth.parse::<i64>().ok()?))
}

#[cfg(test)]
mod tests {
    use catalogue::{Language, speaking};
    use proptest::prelude::*;

    use super::*;
    use crate::error::Error;

    fn reason(error: Error) -> String {
        match error {
            Error::Invalid { reason, .. } => reason,
            other => panic!("{other:?}"),
        }
    }

    fn window_of(typed: &str) -> std::result::Result<(Option<u32>, Option<i64>), String> {
        match window(typed, "Corners", 1).map_err(reason)? {
            Typed::Tap { tap: Tap::LogWindow { reps, spare, .. } } => {
                Ok((reps, spare.map(|spare| spare.0 / 1000)))
            }
            other => panic!("{other:?}"),
        }
    }

    fn read(typed: &str, sides: usize) -> std::result::Result<Vec<i64>, String> {
        let words: Vec<&str> = typed.split_whitespace().collect();
        let when = MeasuredWhen::Before;
        match measure(&words, "Calves", when, sides).map_err(reason)? {
            Typed::Tap { tap: Tap::LogRange { readings, .. } } => {
                Ok(readings.into_iter().map(|reading| reading.tenths).collect())
            }
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn windows_are_reps_and_seconds() {
        for typed in ["12 8", "12, 8", "12 8 s", "12 reps, 8s", "12 Wdh., 8 Sekunden"] {
            assert_eq!(window_of(typed), Ok((Some(12), Some(8))), "{typed}");
        }
        assert_eq!([window_of("12"), window_of("")], [Ok((Some(12), None)), Ok((None, None))]);
        for (typed, shown) in
            [("12,8", "12,8"), ("12 8 9", "9"), ("twelve", "twelve"), ("12 x", "x")]
        {
            let refused = window_of(typed).unwrap_err();
            assert!(
                refused.starts_with(&format!("\"{shown}\" means nothing")),
                "{typed}: {refused}"
            );
        }
    }

    #[test]
    fn readings_have_one_decimal_with_a_point_or_a_comma() {
        for typed in ["10.5 11", "10,5 11", "10,5, 11"] {
            assert_eq!(read(typed, 2), Ok(vec![105, 110]), "{typed}");
        }
        assert_eq!(read("-3,5", 1), Ok(vec![-35]));
        for (typed, sides, starts) in [
            ("10,5", 2, "Type two readings"),
            ("10 11", 1, "Type one reading"),
            ("10.55", 1, "\"10.55\" is not a reading"),
            ("10.5 cm", 2, "\"cm\" is not a reading"),
            ("10.5 eleven", 2, "\"eleven\" is not a reading"),
        ] {
            let refused = read(typed, sides).unwrap_err();
            assert!(refused.starts_with(starts), "{typed}: {refused}");
        }
        let german = speaking(Language::De, || read("elf", 1)).unwrap_err();
        assert!(
            german.starts_with("„elf“ ist kein Messwert") && german.contains("`10,5`"),
            "{german}"
        );
    }

    proptest! {
        /// Every number is taken as it stands and every word means something, or the line is refused.
        #[test]
        fn all_of_a_line_is_taken_or_it_is_refused(
            words in proptest::collection::vec("[1-9]{1,3}|[1-9]s|s|reps|cramp|[1-9][.,][1-9]|,|-", 0..5),
            sides in 1..3_usize,
            german in any::<bool>(),
        ) {
            let typed = words.join(" ");
            let language = if german { Language::De } else { Language::En };
            let numbers = words.iter().filter(|word| word.starts_with(|first: char| first.is_numeric()));
            if let Ok((reps, spare)) = speaking(language, || window_of(&typed)) {
                let taken = usize::from(reps.is_some()) + usize::from(spare.is_some());
                prop_assert_eq!(taken, numbers.count(), "{}", typed);
                prop_assert!(!words.iter().any(|word| word == "cramp" || word == "-"), "{}", typed);
            }
            if let Ok(tenths) = speaking(language, || read(&typed, sides)) {
                prop_assert_eq!(tenths.len(), words.len(), "{}", typed);
            }
        }
    }
}
