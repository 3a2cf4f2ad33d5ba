//! A correction of a set in a line: `67.5 x 5`, `right`, `none`.

use super::{Typed, listed, set, wrong};
use crate::error::Result;
use crate::mass::MassUnit;
use crate::say;
use crate::session::{Correction, Tap};

/// Reads what was really done, that it is right, or that it was not done.
pub(crate) fn read_correction(typed: &str, unit: MassUnit) -> Result<Correction> {
    let typed = typed.split_whitespace().collect::<Vec<_>>().join(" ");
    if typed.is_empty() {
        return Err(wrong(say::line::which_correction()));
    }
    if listed::is(&typed, say::line::right_typed) {
        return Ok(Correction::Right);
    }
    if listed::is(&typed, say::line::none_typed) {
        return Ok(Correction::NotDone);
    }
    match set::read(&typed, "", 1, unit)? {
        Typed::Tap { tap: Tap::LogSet { load, reps, reserve, .. } } => {
            Ok(Correction::Done { load, reps, reserve })
        }
        // A line of a set is nothing else.
        Typed::Tap { .. } | Typed::Sheet | Typed::Help | Typed::Leave => {
            Err(wrong(say::line::which_correction()))
        }
    }
}

#[cfg(test)]
mod tests {
    use catalogue::{Language, speaking};

    use super::*;
    use crate::mass::Mass;

    fn read(typed: &str) -> std::result::Result<Correction, String> {
        read_correction(typed, MassUnit::Kg).map_err(|error| error.to_string())
    }

    #[test]
    fn a_correction_is_a_few_keys_in_both_languages() {
        let load = Some(Mass::thousandths(67_500, MassUnit::Kg));
        let done = |load, reps, reserve| Ok(Correction::Done { load, reps, reserve });
        for language in Language::ALL {
            speaking(language, || {
                assert_eq!(read("67.5 x 5"), done(load, Some(5), None));
                assert_eq!(read(" 67,5  x 5, 2 left"), done(load, Some(5), Some(2)));
                assert_eq!(read("5"), done(None, Some(5), None));
                assert_eq!(read("2 übrig"), done(None, None, Some(2)));
                assert_eq!([read("right"), read("Stimmt")], [const { Ok(Correction::Right) }; 2]);
                assert_eq!(
                    [read("none"), read("nicht gemacht")],
                    [const { Ok(Correction::NotDone) }; 2]
                );
            });
        }
    }

    #[test]
    fn what_means_nothing_is_refused_with_what_can_be_typed() {
        for (typed, said) in [
            ("", "Type what you did, such as `67.5 x 5`"),
            ("67.5", "is not a whole number"),
            ("right away", "means nothing here"),
            ("67.5 x 5 easy", "\"easy\" means nothing here"),
            ("67.5555 x 5", "too many decimals"),
        ] {
            let refused = read(typed).unwrap_err();
            assert!(refused.contains(said), "{typed}: {refused}");
        }
        let german = speaking(Language::De, || read("").unwrap_err());
        assert!(german.contains("Tippe, was du gemacht hast"), "{german}");
    }
}
