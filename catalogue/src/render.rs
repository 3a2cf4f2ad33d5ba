//! A packed sentence and its arguments, put together.
//!
//! A packed text is the sentence itself with marks in it, characters that no sentence has: [`ARGUMENT`]
//! and the argument's place; [`CHOICE`], the place of the number it depends on, then for each branch its
//! form, its text and [`BRANCH_END`], and [`CHOICE_END`] after the last.

use std::fmt::{Display, Write};

use crate::Language;
use crate::language::{Plural, spoken};

pub(crate) const ARGUMENT: char = '\u{1}';
pub(crate) const CHOICE: char = '\u{2}';
pub(crate) const BRANCH_END: char = '\u{3}';
pub(crate) const CHOICE_END: char = '\u{4}';
/// Ends the digits of a branch for one number alone.
pub(crate) const EXACT_END: char = '\u{5}';

/// The form of a branch, as its first character.
pub(crate) const ONE: char = '1';
pub(crate) const OTHER: char = '*';
pub(crate) const EXACT: char = '=';

/// Places are written as characters from here on.
pub(crate) const FIRST_PLACE: u8 = b'A';

/// What stands for a variable of a sentence.
#[derive(Clone, Copy)]
pub enum Arg<'a> {
    /// A number that chooses a plural form.
    Number(i64),
    /// Anything that can be written.
    Shown(&'a dyn Display),
}

/// A whole number of any kind.
pub trait Whole: Copy {
    /// As the widest there is; larger ones are held at its end.
    fn whole(self) -> i64;
}

macro_rules! whole {
    ($($kind:ty),+) => {
        $(impl Whole for $kind {
            fn whole(self) -> i64 {
                i64::try_from(self).unwrap_or(i64::MAX)
            }
        })+
    };
}
whole!(u8, u16, u32, u64, usize, i32, i64);

/// The sentences of one crate in every language.
pub struct Packed {
    /// Each language's texts, one after the other, in the order of [`Language::ALL`].
    pub texts: [&'static str; Language::ALL.len()],
    /// Where each begins, and where the last one ends.
    pub starts: [&'static [u32]; Language::ALL.len()],
}

impl Packed {
    /// A sentence without variables, in the language spoken now.
    pub fn plain(&self, number: usize) -> &'static str {
        let language = spoken() as usize;
        let starts = self.starts[language];
        &self.texts[language][starts[number] as usize..starts[number + 1] as usize]
    }

    /// A sentence with its variables filled in, in the language spoken now.
    pub fn say(&self, number: usize, args: &[Arg<'_>]) -> String {
        let text = self.plain(number);
        let mut said = String::with_capacity(text.len() + 8 * args.len());
        fill(&mut said, text, args);
        said
    }
}

fn fill(said: &mut String, text: &str, args: &[Arg<'_>]) {
    let mut rest = text;
    while let Some(mark) = rest.find([ARGUMENT, CHOICE]) {
        said.push_str(&rest[..mark]);
        let (choice, place) = (rest[mark..].starts_with(CHOICE), rest.as_bytes()[mark + 1]);
        rest = &rest[mark + 2..];
        let arg = args.get(usize::from(place - FIRST_PLACE));
        if choice {
            let number = if let Some(Arg::Number(number)) = arg { *number } else { 0 };
            let (branch, after) = chosen(rest, number);
            fill(said, branch, args);
            rest = after;
        } else if let Some(arg) = arg {
            show(said, *arg);
        }
    }
    said.push_str(rest);
}

fn show(said: &mut String, arg: Arg<'_>) {
    // Writing into a string cannot fail.
    let _ = match arg {
        Arg::Number(number) => write!(said, "{number}"),
        Arg::Shown(shown) => {
            let from = said.len();
            let written = write!(said, "{shown}");
            isolate(said, from);
            written
        }
    };
}

/// What somebody wrote from right to left stays in one piece, and turns nothing around it: it is put
/// between FIRST STRONG ISOLATE and POP DIRECTIONAL ISOLATE (Unicode Standard Annex #9, section 2.4).
fn isolate(said: &mut String, from: usize) {
    if !said[from..].is_ascii() && said[from..].chars().any(turns) {
        said.insert(from, '\u{2068}');
        said.push('\u{2069}');
    }
}

/// True for characters that are written from right to left: the blocks that hold them (Unicode 16,
/// `DerivedBidiClass.txt`: the ranges that default to R and AL).
fn turns(letter: char) -> bool {
    matches!(letter, '\u{590}'..='\u{8ff}' | '\u{fb1d}'..='\u{fdff}' | '\u{fe70}'..='\u{feff}'
        | '\u{10800}'..='\u{10fff}' | '\u{1e800}'..='\u{1efff}')
}

/// The branch for a number, and what stands after the choice.
fn chosen(text: &str, number: i64) -> (&str, &str) {
    let form = match spoken().plural(number) {
        Plural::One => ONE,
        Plural::Other => OTHER,
    };
    let (mut rest, mut exact, mut by_form, mut other) = (text, None, None, "");
    while !rest.starts_with(CHOICE_END) && !rest.is_empty() {
        let end = branch_end(rest);
        let mut branch = rest[..end].chars();
        let key = branch.next().unwrap_or(OTHER);
        let branch = branch.as_str();
        if key == EXACT {
            let (digits, branch) = branch.split_once(EXACT_END).unwrap_or_default();
            exact = exact.or((digits.parse() == Ok(number)).then_some(branch));
        } else if key == form {
            by_form = Some(branch);
        }
        if key == OTHER {
            other = branch;
        }
        rest = &rest[end + BRANCH_END.len_utf8()..];
    }
    (exact.or(by_form).unwrap_or(other), rest.strip_prefix(CHOICE_END).unwrap_or(rest))
}

/// Where the first branch ends: a choice may stand in it.
fn branch_end(text: &str) -> usize {
    let mut depth = 0;
    for (at, byte) in text.bytes().enumerate() {
        match char::from(byte) {
            CHOICE => depth += 1,
            CHOICE_END => depth -= 1,
            BRANCH_END if depth == 0 => return at,
            _ => {}
        }
    }
    text.len()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::speaking;

    const SETS: &str = "\u{1}A: \u{2}B=0\u{5}no sets\u{3}1one set\u{3}*\u{1}B sets\u{3}\u{4}.";
    const SATZ: &str = "\u{2}B1ein Satz\u{3}*\u{1}B Sätze\u{3}\u{4} von \u{1}A";

    fn said(name: &str, number: i64) -> String {
        let texts =
            Language::ALL.map(|language| if language == Language::De { SATZ } else { SETS });
        let starts = texts.map(|text| -> &[u32] { Vec::from([0, text.len() as u32]).leak() });
        Packed { texts, starts }.say(0, &[Arg::Shown(&name), Arg::Number(number)])
    }

    #[test]
    fn each_number_has_its_form() {
        assert_eq!(
            [0, 1, 2, 21].map(|n| said("Ines", n)),
            ["Ines: no sets.", "Ines: one set.", "Ines: 2 sets.", "Ines: 21 sets."]
        );
        let german = speaking(Language::De, || [0, 1, 2].map(|n| said("Ines", n)));
        assert_eq!(german, ["0 Sätze von Ines", "ein Satz von Ines", "2 Sätze von Ines"]);
    }

    #[test]
    fn a_choice_may_stand_in_a_branch() {
        let mut out = String::new();
        let text = "\u{2}A1a\u{2}B1b\u{3}*c\u{3}\u{4}d\u{3}*e\u{3}\u{4}f";
        fill(&mut out, text, &[Arg::Number(1), Arg::Number(2)]);
        assert_eq!(out, "acdf");
    }

    #[test]
    fn a_name_from_right_to_left_turns_nothing_around_it() {
        assert_eq!(said("נועה", 2), "\u{2068}נועה\u{2069}: 2 sets.");
        assert_eq!(said("Zoë", 2), "Zoë: 2 sets.");
    }
}
