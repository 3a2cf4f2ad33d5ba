//! Which language is spoken: the one asked for at the start, else the one that the device's person chose,
//! else the system's, else English.

use std::ffi::{OsStr, OsString};

use catalogue::Language;

use crate::fault::{Fault, Outcome};
use crate::say;

/// The variable that asks for a language, where no option does.
pub(crate) const VARIABLE: &str = "HOLDFAST_LANG";

/// Speaks the language that the arguments or the environment ask for, before anything else is read of
/// them: help and errors come in it too.
pub(crate) fn begin(
    args: impl IntoIterator<Item = OsString>,
    variable: impl Fn(&str) -> Option<OsString>,
) -> Outcome {
    catalogue::speak(of_system(&variable));
    if let Some(asked) = asked(args, &variable)? {
        catalogue::speak(asked);
    }
    Ok(())
}

/// The language asked for by `--lang`, else by the variable; none where neither names one.
fn asked(
    args: impl IntoIterator<Item = OsString>,
    variable: impl Fn(&str) -> Option<OsString>,
) -> Outcome<Option<Language>> {
    let named = option(args).or_else(|| variable(VARIABLE));
    let named = named.filter(|named| !named.is_empty());
    named.map(|named| read(&named.to_string_lossy())).transpose()
}

/// What stands after `--lang`.
fn option(args: impl IntoIterator<Item = OsString>) -> Option<OsString> {
    let mut args = args.into_iter().take_while(|arg| arg != "--");
    while let Some(arg) = args.next() {
        if arg == "--lang" {
            return args.next();
        }
        let text = arg.to_string_lossy();
        if let Some(named) = text.strip_prefix("--lang=") {
            return Some(named.into());
        }
    }
    None
}

fn read(named: &str) -> Outcome<Language> {
    Language::of_tag(named).ok_or_else(|| {
        let known = Language::ALL.map(Language::code).join(", ");
        Fault::Arguments(say::fault::unknown_language(named, known))
    })
}

/// The system's language: the first of these variables that says anything decides, as POSIX has it (IEEE
/// Std 1003.1-2024, Base Definitions, section 8.2). A language without a catalogue is English.
fn of_system(variable: impl Fn(&str) -> Option<OsString>) -> Language {
    let set = ["LC_ALL", "LC_MESSAGES", "LANG"].into_iter().filter_map(variable);
    let first = set.into_iter().find(|value| !value.is_empty());
    let tag = first.as_deref().map(OsStr::to_string_lossy);
    tag.and_then(|tag| Language::of_tag(&tag)).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    type Variables<'a> = &'a [(&'a str, &'a str)];

    fn variables(set: Variables<'_>) -> impl Fn(&str) -> Option<OsString> {
        move |name| set.iter().find(|(known, _)| *known == name).map(|(_, value)| value.into())
    }

    #[test]
    fn the_first_variable_that_says_anything_is_the_systems_language() {
        let of = |set: Variables<'_>| of_system(variables(set));
        assert_eq!(of(&[]), Language::En);
        assert_eq!(of(&[("LANG", "de_AT.UTF-8")]), Language::De);
        assert_eq!(of(&[("LANG", "de_AT.UTF-8"), ("LC_MESSAGES", "en_GB")]), Language::En);
        assert_eq!(
            of(&[("LANG", "en_GB"), ("LC_ALL", "de_DE"), ("LC_MESSAGES", "C")]),
            Language::De
        );
        assert_eq!(of(&[("LANG", "de_DE"), ("LC_ALL", "")]), Language::De);
        assert_eq!(of(&[("LANG", "de_DE"), ("LC_ALL", "C")]), Language::En);
        assert_eq!(of(&[("LANG", "fr_FR.UTF-8")]), Language::En);
    }

    #[test]
    fn an_option_goes_before_the_variable_and_neither_need_be_there() {
        let of = |args: &[&str], set: Variables<'_>| {
            let asked = asked(args.iter().map(OsString::from), variables(set));
            asked.map_err(|fault| fault.to_string())
        };
        let (en, de) = (Ok(Some(Language::En)), Ok(Some(Language::De)));
        let variable: Variables<'_> = &[(VARIABLE, "en")];
        assert_eq!(of(&["today"], &[]), Ok(None));
        assert_eq!(of(&["today"], variable), en);
        assert_eq!(of(&["today", "--lang", "de"], variable), de);
        assert_eq!(of(&["--lang=de_CH", "--help"], variable), de);
        assert_eq!(of(&["plates", "--", "--lang=de"], &[]), Ok(None));
        assert_eq!(of(&["today", "--lang"], variable), en, "that it says nothing is told later");
        assert_eq!(of(&[], &[(VARIABLE, "")]), Ok(None));
        let wrong = of(&["--lang", "fr"], variable).unwrap_err();
        assert!(wrong.contains("\"fr\"") && wrong.contains("en, de"), "{wrong}");
    }
}
