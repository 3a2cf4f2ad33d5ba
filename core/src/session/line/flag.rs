//! Discomfort in a line: `flag knee 4`, `flag low back 6 with a weak leg`.

use super::{Typed, listed, movement_at_hand, tap, wrong};
use crate::care::{Place, Sign};
use crate::error::{Error, Result};
use crate::say;
use crate::session::screen::{PieceKindView, PieceView, Row, SessionScreen, SessionState};
use crate::session::tap::Tap;

/// Reads where, how bad, and the signs and the movement after that.
pub(super) fn read(rest: &[&str], screen: &SessionScreen) -> Result<Typed> {
    let words: Vec<&str> = rest.iter().flat_map(|word| word.split(',')).collect();
    let words: Vec<&str> = words.into_iter().filter(|word| !word.is_empty()).collect();
    let (place, after) = place(&words)?;
    let [severity, more @ ..] = after else { return Err(wrong(say::line::how_bad())) };
    let severity = how_bad(severity).ok_or_else(|| wrong(say::line::not_how_bad(severity)))?;
    if !matches!(screen.state, SessionState::Running | SessionState::Finished) {
        let (signs, _) = signs(more, &[])?;
        return tap(Tap::FlagBetween { movement: None, place, severity, signs, on: None });
    }
    // Pain may come when nothing is left to do: it is flagged on the last piece.
    let named = screen.here.row.as_ref().and_then(Row::piece);
    let mut pieces = screen.pieces.iter().rev();
    let piece = match named {
        Some(name) => pieces.find(|piece| piece.name == name),
        None => pieces.find(|piece| !matches!(piece.kind, PieceKindView::Note { .. })),
    };
    let piece = piece.ok_or_else(|| wrong(say::line::nothing_to_flag()))?;
    let (signs, movement) = signs(more, &movements(piece))?;
    let movement = movement.map(str::to_owned).or_else(|| movement_at_hand(screen));
    tap(Tap::Flag { piece: piece.name.clone(), movement, place, severity, signs })
}

/// Where it hurts, and the words after that.
fn place<'t, 'w>(words: &'w [&'t str]) -> Result<(Place, &'w [&'t str])> {
    let places = listed::names::<Place>;
    if words.is_empty() {
        return Err(wrong(say::line::which_place(places())));
    }
    listed::named(words).ok_or_else(|| {
        let number =
            words.iter().position(|word| word.starts_with(|letter: char| letter.is_numeric()));
        // A number in its place is what is wrong; otherwise what stands before the number.
        let end = number.unwrap_or(words.len()).max(1);
        wrong(say::line::not_a_place(words[..end].join(" "), places()))
    })
}

/// `4`, or `4/10` as screens say it.
fn how_bad(word: &str) -> Option<u32> {
    let number = word.strip_suffix("/10").unwrap_or(word);
    number.parse().ok().filter(|severity| (1..=10).contains(severity))
}

/// The emergency signs of some words, and the movement that they name.
fn signs<'t>(mut words: &[&'t str], movements: &[&str]) -> Result<(Vec<Sign>, Option<&'t str>)> {
    let (mut signs, mut movement) = (Vec::new(), None);
    while let [word, after @ ..] = words {
        if movements.contains(word) {
            if movement.is_some_and(|other| other != *word) {
                return Err(wrong(say::line::two_movements(word)));
            }
            (movement, words) = (Some(*word), after);
        } else if let Some((sign, after)) = listed::named::<Sign>(words) {
            if !signs.contains(&sign) {
                signs.push(sign);
            }
            words = after;
        } else if listed::is(word, say::line::and_typed) && !after.is_empty() {
            words = after;
        } else {
            return Err(neither(words, movements));
        }
    }
    Ok((signs, movement))
}

/// The movements of a piece with several, one of which a flag may name.
fn movements(piece: &PieceView) -> Vec<&str> {
    let PieceKindView::Interval { view } = &piece.kind else { return Vec::new() };
    let mut movements: Vec<&str> = Vec::new();
    for window in &view.windows {
        let movement = window.exercise.movement.as_str();
        if !movements.contains(&movement) {
            movements.push(movement);
        }
    }
    movements
}

fn neither(words: &[&str], movements: &[&str]) -> Error {
    let (typed, signs) = (words.join(" "), listed::names::<Sign>());
    wrong(match movements {
        [] => say::line::not_a_sign(typed, signs),
        movements => {
            say::line::not_a_sign_or_movement(typed, signs, movements.join(say::line::between()))
        }
    })
}

#[cfg(test)]
mod tests {
    use catalogue::{Language, speaking};
    use proptest::prelude::*;

    use super::*;

    const MOVEMENTS: [&str; 2] = ["bell-swing", "press-up"];

    /// Where, how bad, signs and movement; or what was wrong.
    fn flag(typed: &str) -> std::result::Result<(Place, Vec<Sign>, Option<String>), String> {
        let words: Vec<&str> = typed.split([' ', ',']).filter(|word| !word.is_empty()).collect();
        let read = place(&words).and_then(|(place, after)| {
            let [severity, more @ ..] = after else { return Err(wrong(say::line::how_bad())) };
            how_bad(severity).ok_or_else(|| wrong(say::line::not_how_bad(severity)))?;
            let (signs, movement) = signs(more, &MOVEMENTS)?;
            Ok((place, signs, movement.map(str::to_owned)))
        });
        read.map_err(|error| match error {
            Error::Invalid { reason, .. } => reason,
            other => panic!("{typed}: {other:?}"),
        })
    }

    #[test]
    fn discomfort_is_told_in_plain_words_of_both_languages() {
        let (weak, chest) = (Sign::LegWeakness, Sign::ChestPain);
        for (typed, place, signs, movement) in [
            ("knee 4", Place::Knee, vec![], None),
            ("Knie 4/10", Place::Knee, vec![], None),
            ("low back 6, with a weak leg", Place::LowBack, vec![weak], None),
            ("unterer Rücken 6 schwaches Bein", Place::LowBack, vec![weak], None),
            ("low-back 6 leg-weakness chest-pain", Place::LowBack, vec![weak, chest], None),
            ("Hüfte 6 Brustschmerz und Schwäche im Bein", Place::Hip, vec![chest, weak], None),
            ("hip 6 chest pain and chest-pain", Place::Hip, vec![chest], None),
            ("wrist 2 press-up", Place::Wrist, vec![], Some("press-up")),
            (
                "wrist 2 press-up, press-up dark urine",
                Place::Wrist,
                vec![Sign::DarkUrine],
                Some("press-up"),
            ),
        ] {
            for language in Language::ALL {
                let wanted = (place, signs.clone(), movement.map(str::to_owned));
                assert_eq!(speaking(language, || flag(typed)), Ok(wanted), "{typed} in {language}");
            }
        }
    }

    #[test]
    fn what_makes_no_sense_is_shown() {
        for (typed, shown) in [
            ("left knee 4", "left knee"),
            ("4 knee", "4"),
            ("knee joint 4", "joint"),
            ("knee 11", "11"),
            ("knee 0", "0"),
            ("knee 4,5", "5"),
            ("knee 4 chestpain", "chestpain"),
            ("knee 4 chest pain maybe", "maybe"),
            ("knee 4 no chest pain", "no chest pain"),
            ("knee 4 and", "and"),
            ("wrist 2 press-up bell-swing", "bell-swing"),
        ] {
            let refused = flag(typed).unwrap_err();
            assert!(refused.starts_with(&format!("\"{shown}\" ")), "{typed}: {refused}");
            let refused = speaking(Language::De, || flag(typed)).unwrap_err();
            assert!(refused.starts_with(&format!("„{shown}“ ")), "{typed}: {refused}");
        }
        assert!(flag("").unwrap_err().contains("knee (k)"));
        assert!(flag("knee").unwrap_err().starts_with("Type how bad"));
    }

    proptest! {
        /// Whatever words are put together, each of them is a place, a number, a sign, a movement or
        /// stands between two; otherwise the line is refused with a sentence.
        #[test]
        fn a_flag_means_all_that_it_says_or_is_refused(
            words in proptest::collection::vec(
                "knee|Knie|low|back|4|11|chest|pain|Brustschmerz|dark-urine|and|und|no|c|k|press-up|bell-swing|x",
                0..7,
            ),
            german in any::<bool>(),
        ) {
            let typed = words.join(" ");
            let language = if german { Language::De } else { Language::En };
            match speaking(language, || flag(&typed)) {
                Ok((place, signs, movement)) => {
                    let has = |word: &str| words.iter().any(|other| other == word);
                    let knee = has("knee") || has("Knie") || has("k");
                    prop_assert_eq!(place == Place::Knee, knee, "{}", typed);
                    prop_assert_eq!(place == Place::LowBack, has("low"), "{}", typed);
                    let chest = has("chest") || has("Brustschmerz") || has("c");
                    prop_assert_eq!(signs.contains(&Sign::ChestPain), chest, "{}", typed);
                    prop_assert_eq!(signs.contains(&Sign::DarkUrine), has("dark-urine"), "{}", typed);
                    prop_assert_eq!(movement.is_some(), has("press-up") || has("bell-swing"), "{}", typed);
                    prop_assert!(has("4") && !["11", "no", "x"].map(has).contains(&true), "{}", typed);
                }
                Err(refused) => prop_assert!(refused.ends_with('.'), "{}: {}", typed, refused),
            }
        }
    }
}
