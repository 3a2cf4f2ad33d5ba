//! A set in a line: `60 x 7, 2 left`.

use super::{Typed, tap, wrong};
use crate::error::Result;
use crate::mass::{Mass, MassError, MassUnit};
use crate::session::Tap;

/// Reads load, reps and reps left, each of which may be left out.
pub(super) fn read(typed: &str, piece: &str, set: u32, unit: MassUnit) -> Result<Typed> {
    let lower = typed.to_lowercase().replace(['×', '*'], "x");
    let usage =
        || wrong(format!("\"{typed}\"; reps, or load x reps: `7`, `60 x 7`, `60 x 7, 2 left`"));
    let (done, reserve) = match left(&lower) {
        Some((done, left)) => (done, Some(left.parse().map_err(|_| usage())?)),
        None => (lower.trim(), None),
    };
    let (load, reps) = match done.split_once('x') {
        Some((load, reps)) => (Some(load.trim()), reps.trim()),
        None => (None, done.trim()),
    };
    let load = match load.map(|load| Mass::parse(load, Some(unit))).transpose() {
        Ok(load) => load,
        Err(MassError::Form) => return Err(usage()),
        Err(error) => return Err(wrong(format!("\"{typed}\"; {error}"))),
    };
    let reps = match reps {
        "" if load.is_none() && reserve.is_none() => return Err(usage()),
        "" => None,
        reps => Some(reps.parse().map_err(|_| usage())?),
    };
    tap(Tap::LogSet { piece: piece.to_owned(), set: Some(set), load, reps, reserve })
}

/// What stands before the reps left, and their number: `..., 2 left`, or `... r2` for short.
fn left(typed: &str) -> Option<(&str, &str)> {
    let typed = typed.trim();
    if let Some(before) = typed.strip_suffix("left") {
        let before = before.trim_end();
        let at = before.rfind(|letter: char| !letter.is_ascii_digit()).map_or(0, |at| at + 1);
        let done = before[..at].trim_end().trim_end_matches(',').trim_end();
        return Some((done, &before[at..]));
    }
    let (done, left) = typed.rsplit_once('r')?;
    Some((done.trim_end(), left.trim()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn set(typed: &str) -> Option<(Option<String>, Option<u32>, Option<u32>)> {
        match read(typed, "Squat", 2, MassUnit::Kg) {
            Ok(Typed::Tap { tap: Tap::LogSet { load, reps, reserve, .. } }) => {
                Some((load.map(|load| load.to_string()), reps, reserve))
            }
            _ => None,
        }
    }

    #[test]
    fn a_set_is_a_few_keys() {
        let kg = |load: &str| Some(load.to_owned());
        for (typed, wanted) in [
            ("7", (None, Some(7), None)),
            ("62.5x7", (kg("62.5 kg"), Some(7), None)),
            ("62,5 x 7", (kg("62.5 kg"), Some(7), None)),
            ("60 × 7, 2 left", (kg("60 kg"), Some(7), Some(2))),
            ("60x7 2 left", (kg("60 kg"), Some(7), Some(2))),
            ("7, 0 left", (None, Some(7), Some(0))),
            ("3 left", (None, None, Some(3))),
            ("135 lb x 7 r2", (kg("135 lb"), Some(7), Some(2))),
            ("7 r 2", (None, Some(7), Some(2))),
        ] {
            assert_eq!(set(typed), Some(wanted), "{typed}");
        }
    }

    /// Nothing typed is ignored in silence: what is not understood is an error.
    #[test]
    fn what_makes_no_sense_says_what_would() {
        for typed in [
            "x",
            "sixty",
            "-5",
            "60 x -7",
            "60 kg",
            "7 r",
            "7 rr2",
            "left",
            "7, left",
            "7 8",
            "60 x 7 easy",
            "60 x 7, 2 left over",
        ] {
            assert_eq!(set(typed), None, "{typed}");
        }
    }
}
