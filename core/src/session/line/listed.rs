//! Words that are read in every language, whichever is spoken: what a message lists with commas.

use catalogue::{Language, speaking, spoken};

use crate::care::{Place, Sign};
use crate::say;
use crate::words;

/// Messages that list words, or say one.
pub(super) type Say = fn() -> &'static str;

/// A text as it is compared: lower case, umlauts spelled out, hyphens as spaces.
fn folded(text: &str) -> String {
    let mut folded = String::with_capacity(text.len());
    for letter in text.chars().flat_map(char::to_lowercase) {
        match letter {
            'ä' => folded += "ae",
            'ö' => folded += "oe",
            'ü' => folded += "ue",
            'ß' => folded += "ss",
            // Some keyboards write an umlaut as its vowel and the two dots.
            '\u{308}' => folded.push('e'),
            '-' => folded.push(' '),
            letter => folded.push(letter),
        }
    }
    folded
}

/// True for a text that a message lists in any language. A letter alone counts in the language spoken: in
/// the other it may be another thing's.
fn listed(text: &str, list: &dyn Fn() -> String) -> bool {
    let (text, spoken) = (folded(text), spoken());
    Language::ALL.into_iter().any(|language| {
        let list = speaking(language, list);
        let mut known = list.split(',').map(|known| folded(known.trim()));
        known.any(|known| known == text && (known.chars().count() > 1 || language == spoken))
    })
}

/// True for a word that a message lists, with or without the full stop of an abbreviation.
pub(super) fn is(word: &str, list: Say) -> bool {
    let list = || list().replace('.', "");
    listed(word.strip_suffix('.').unwrap_or(word), &list)
}

/// What can be named in several words: a place, a sign.
pub(super) trait Named: Copy + 'static {
    const ALL: &'static [Self];

    /// Those that are asked for: an older journal may hold more.
    const ASKED: &'static [Self];

    /// As the screens name it.
    fn name(self) -> &'static str;

    /// What names it in a line, its letter first.
    fn typed(self) -> &'static str;

    /// The word that plans and journals write.
    fn keyword(self) -> &'static str;
}

impl Named for Place {
    const ALL: &'static [Place] = Place::ALL;
    const ASKED: &'static [Place] = Place::ALL;

    fn name(self) -> &'static str {
        words::place(self)
    }

    fn typed(self) -> &'static str {
        match self {
            Place::Neck => say::line::place_neck_typed(),
            Place::Shoulder => say::line::place_shoulder_typed(),
            Place::Elbow => say::line::place_elbow_typed(),
            Place::Wrist => say::line::place_wrist_typed(),
            Place::UpperBack => say::line::place_upper_back_typed(),
            Place::LowBack => say::line::place_low_back_typed(),
            Place::Hip => say::line::place_hip_typed(),
            Place::Knee => say::line::place_knee_typed(),
            Place::Ankle => say::line::place_ankle_typed(),
            Place::Muscle => say::line::place_muscle_typed(),
            Place::Other => say::line::place_other_typed(),
        }
    }

    fn keyword(self) -> &'static str {
        self.text()
    }
}

impl Named for Sign {
    const ALL: &'static [Sign] = Sign::ALL;
    const ASKED: &'static [Sign] = &Sign::ASKED;

    fn name(self) -> &'static str {
        words::sign(self)
    }

    fn typed(self) -> &'static str {
        match self {
            Sign::SaddleNumbness => say::line::sign_saddle_numbness_typed(),
            Sign::BladderOrBowel => say::line::sign_bladder_or_bowel_typed(),
            Sign::LegWeakness => say::line::sign_leg_weakness_typed(),
            Sign::PainInBothLegs => say::line::sign_pain_in_both_legs_typed(),
            Sign::DarkUrine => say::line::sign_dark_urine_typed(),
            Sign::ChestPain => say::line::sign_chest_pain_typed(),
            Sign::Dizziness => say::line::sign_dizziness_typed(),
        }
    }

    fn keyword(self) -> &'static str {
        self.text()
    }
}

/// What is named at the start of some words, in as many of them as can be, and the words after that.
pub(super) fn named<'t, 'w, T: Named>(words: &'w [&'t str]) -> Option<(T, &'w [&'t str])> {
    let of = |text: &str| {
        T::ALL.iter().copied().find(|value| {
            let list = || format!("{},{},{}", value.typed(), value.name(), value.keyword());
            listed(text, &list)
        })
    };
    (1..=words.len()).rev().find_map(|count| {
        let (text, after) = words.split_at(count);
        Some((of(&text.join(" "))?, after))
    })
}

/// Every name, each with the letter that can stand for it.
pub(super) fn names<T: Named>() -> String {
    let with_letter = |value: &T| {
        let letter = value.typed().split(',').map(str::trim).find(|known| known.len() == 1);
        match letter {
            Some(letter) => say::line::or_letter(value.name(), letter),
            None => value.name().to_owned(),
        }
    };
    T::ASKED.iter().map(with_letter).collect::<Vec<_>>().join(say::line::between())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn place(typed: &str) -> Option<Place> {
        let words: Vec<&str> = typed.split(' ').collect();
        named(&words).filter(|(_, after)| after.is_empty()).map(|(place, _)| place)
    }

    #[test]
    fn places_are_read_in_both_languages_by_name_and_keyword() {
        for language in Language::ALL {
            speaking(language, || {
                for typed in
                    ["unterer Rücken", "UNTERER RUECKEN", "unterer Ru\u{308}cken", "low-back"]
                {
                    assert_eq!(place(typed), Some(Place::LowBack), "{language}: {typed}");
                }
                assert_eq!([place("knee"), place("Knie")], [Some(Place::Knee); 2]);
                assert_eq!([place("kn"), place("back"), place("")], [None; 3]);
            });
        }
    }

    #[test]
    fn a_letter_counts_in_its_own_language() {
        assert_eq!([place("u"), place("g")], [Some(Place::UpperBack), None]);
        let german = speaking(Language::De, || [place("u"), place("g")]);
        assert_eq!(german, [Some(Place::LowBack), Some(Place::Wrist)]);
    }

    fn all_read_as_themselves<T: Named + PartialEq + std::fmt::Debug>() {
        for (spoken, written) in [(0, 0), (0, 1), (1, 0), (1, 1)] {
            let [spoken, written] = [spoken, written].map(|at| Language::ALL[at]);
            for value in T::ALL {
                let list = speaking(written, || {
                    format!("{},{},{}", value.typed(), value.name(), value.keyword())
                });
                for typed in list.split(',').map(str::trim) {
                    let words: Vec<&str> = typed.split(' ').collect();
                    let read = speaking(spoken, || named::<T>(&words));
                    let foreign = typed.len() == 1 && spoken != written;
                    if !foreign {
                        assert_eq!(read, Some((*value, &[][..])), "{typed} in {spoken}");
                    }
                }
            }
        }
    }

    /// No word or letter is two things: whatever is listed or shown is read as what it stands for.
    #[test]
    fn whatever_is_listed_or_shown_is_read_as_itself() {
        all_read_as_themselves::<Place>();
        all_read_as_themselves::<Sign>();
    }

    #[test]
    fn each_name_stands_with_its_letter() {
        assert!(names::<Place>().contains("knee (k), ankle (a)"), "{}", names::<Place>());
        for language in Language::ALL {
            let names = speaking(language, || [names::<Place>(), names::<Sign>()].concat());
            assert_eq!(
                names.matches(" (").count(),
                Place::ALL.len() + Sign::ASKED.len(),
                "{names}"
            );
        }
    }
}
