//! The languages there are, and which one is being spoken.

use std::cell::Cell;
use std::fmt;
use std::sync::atomic::{AtomicU8, Ordering};

use serde::{Deserialize, Serialize};

/// A language with a full catalogue.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Language {
    /// English.
    #[default]
    En,
    /// German.
    De,
}

/// A plural form, by its name in CLDR.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Plural {
    One,
    Other,
}

impl Language {
    /// All of them, in the order of their packed texts.
    pub const ALL: [Language; 2] = [Language::En, Language::De];

    /// The language's code (ISO 639-1): the name of its folder of messages.
    pub const fn code(self) -> &'static str {
        match self {
            Language::En => "en",
            Language::De => "de",
        }
    }

    /// The language of a tag such as `de-AT` (BCP 47) or `de_AT.UTF-8` (POSIX); none where there is no
    /// catalogue for it.
    pub fn of_tag(tag: &str) -> Option<Language> {
        let code = tag.split(['-', '_', '.', '@']).next()?.to_ascii_lowercase();
        Language::ALL.into_iter().find(|language| language.code() == code)
    }

    /// The form for a whole number, by CLDR's plural rules: both languages have `one` for 1 alone
    /// (<https://www.unicode.org/cldr/charts/48/supplemental/language_plural_rules.html>).
    pub(crate) fn plural(self, number: i64) -> Plural {
        match self {
            Language::En | Language::De if number.unsigned_abs() == 1 => Plural::One,
            Language::En | Language::De => Plural::Other,
        }
    }

    /// What stands between whole and tenths: a point or a comma.
    pub const fn decimal(self) -> char {
        match self {
            Language::En => '.',
            Language::De => ',',
        }
    }
}

impl fmt::Display for Language {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code())
    }
}

/// What the program speaks, as a place in [`Language::ALL`].
static PROGRAM: AtomicU8 = AtomicU8::new(0);

thread_local! {
    /// What this thread speaks instead.
    static HERE: Cell<Option<Language>> = const { Cell::new(None) };
}

/// The language that is spoken now.
pub fn spoken() -> Language {
    let program = || Language::ALL[usize::from(PROGRAM.load(Ordering::Relaxed))];
    HERE.get().unwrap_or_else(program)
}

/// From now on the program speaks a language.
pub fn speak(language: Language) {
    PROGRAM.store(language as u8, Ordering::Relaxed);
}

/// Does something while this thread speaks a language; afterwards, and after a panic too, it is as before.
pub fn speaking<T>(language: Language, work: impl FnOnce() -> T) -> T {
    struct Back(Option<Language>);
    impl Drop for Back {
        fn drop(&mut self) {
            HERE.set(self.0);
        }
    }
    let _back = Back(HERE.replace(Some(language)));
    work()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tags_of_both_kinds_name_a_language() {
        let read = ["de", "de-AT", "de_CH.UTF-8", "EN_us", "DE@euro"].map(Language::of_tag);
        let [en, de] = [Some(Language::En), Some(Language::De)];
        assert_eq!(read, [de, de, de, en, de]);
        assert_eq!(["", "fr", "C", "POSIX", "deu", "d"].map(Language::of_tag), [None; 6]);
    }

    #[test]
    fn a_panic_leaves_the_language_as_it_was() {
        let panicked = std::panic::catch_unwind(|| {
            speaking(Language::De, || std::panic::resume_unwind(Box::new(spoken())))
        });
        assert_eq!(panicked.unwrap_err().downcast_ref(), Some(&Language::De));
        assert_eq!(spoken(), Language::En);
    }
}
