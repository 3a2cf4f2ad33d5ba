//! For build scripts: Fluent files into packed texts and a function for each message.
//!
//! In the source a line break within a message is a space: a long sentence may go over several lines.

mod check;
mod generate;
mod message;

use std::fs;
use std::path::Path;

use crate::Language;
use message::{Catalogue, read};

/// All that a build script does: `messages` beside it, into the folder that cargo gives it.
///
/// # Panics
/// With everything that is wrong in the files: it is how a build script fails.
#[allow(
    clippy::panic,
    clippy::print_stdout,
    reason = "how a build script fails, and talks to cargo"
)]
pub fn script() {
    println!("cargo::rerun-if-changed=messages");
    let into = std::env::var_os("OUT_DIR").unwrap_or_default();
    if let Err(problems) = build(Path::new("messages"), Path::new(&into)) {
        panic!("\n{problems}\n");
    }
}

/// Reads `<folder>/<language>/*.ftl`, checks them against each other, and writes `say.rs` and the packed
/// texts into a folder. A file is a module, a message a function.
///
/// # Errors
/// Everything that is wrong in any of the files, a line each.
pub fn build(folder: &Path, into: &Path) -> Result<(), String> {
    let mut all: Vec<Catalogue> = Vec::new();
    for language in Language::ALL {
        all.push(catalogue(&folder.join(language.code()))?);
    }
    check::check(&all)?;
    let generated = generate::generate(&all);
    let write = |name: &str, text: &str| {
        let path = into.join(name);
        fs::write(&path, text).map_err(|error| format!("{}: {error}", path.display()))
    };
    for (language, text) in Language::ALL.iter().zip(&generated.texts) {
        write(&format!("{language}.txt"), text)?;
    }
    write("say.rs", &generated.code)
}

/// One language: its files in the order of their names.
fn catalogue(folder: &Path) -> Result<Catalogue, String> {
    let shown = |path: &Path, error: std::io::Error| format!("{}: {error}", path.display());
    let listed = fs::read_dir(folder).map_err(|error| shown(folder, error))?;
    let mut paths: Vec<_> = listed.filter_map(|entry| Some(entry.ok()?.path())).collect();
    paths.retain(|path| path.extension().is_some_and(|extension| extension == "ftl"));
    paths.sort();
    let mut found = Catalogue::default();
    let mut problems = Vec::new();
    for path in paths {
        let text = fs::read_to_string(&path).map_err(|error| shown(&path, error))?;
        let module = path.file_stem().unwrap_or_default().to_string_lossy().into_owned();
        match read(&module, &text) {
            Ok(messages) => found.messages.extend(messages),
            Err(wrong) => {
                problems
                    .extend(wrong.into_iter().map(|wrong| format!("{}: {wrong}", path.display())));
            }
        }
    }
    if problems.is_empty() { Ok(found) } else { Err(problems.join("\n")) }
}

#[cfg(test)]
mod tests {
    use super::*;

    const EN: &str = "# Where: the foot.\nsets = { $sets ->\n    [one] 1 set\n   *[other] { $sets } sets\n }\n\
                      who = { $name } and\n    the rest\n";
    const DE: &str = "sets = { $sets ->\n    [one] 1 Satz\n   *[other] { $sets } Sätze\n }\n\
                      who = { $name } und der Rest\n";

    /// Builds two small catalogues; gives the code, or what is wrong.
    fn built(en: &str, de: &str) -> Result<String, String> {
        let home = tempfile::tempdir().unwrap();
        for (language, text) in [("en", en), ("de", de)] {
            fs::create_dir(home.path().join(language)).unwrap();
            fs::write(home.path().join(language).join("few.ftl"), text).unwrap();
        }
        build(home.path(), home.path())?;
        Ok(fs::read_to_string(home.path().join("say.rs")).unwrap())
    }

    #[test]
    fn a_message_becomes_a_function_of_its_variables() {
        let code = built(EN, DE).unwrap();
        assert!(code.contains("pub(crate) mod few {"), "{code}");
        assert!(code.contains("pub(crate) fn sets(sets: impl Whole) -> String"), "{code}");
        assert!(code.contains("pub(crate) fn who(name: impl Display) -> String"), "{code}");
        assert!(code.contains("/// `{name} and the rest`"), "{code}");
        assert!(code.contains("/// Where: the foot."), "{code}");
    }

    /// What would be said wrongly, or not at all, in one language stops the build and is named.
    #[test]
    fn what_is_not_alike_in_all_languages_is_an_error() {
        let wrong = [
            (EN.to_owned(), DE.replace("who =", "whom ="), "en/few: who: is not in de/few"),
            (EN.to_owned(), DE.replace("who =", "whom ="), "de/few: whom: is not in en/few"),
            (EN.to_owned(), DE.replace("{ $name }", "Ines"), "who: has the variables [\"name\"]"),
            (
                EN.to_owned(),
                DE.replace("    [one] 1 Satz\n", ""),
                "de/few: sets: $sets needs the form One",
            ),
            (EN.replace("[one]", "[few]"), DE.to_owned(), "a choice has [one]"),
            (EN.replace("*[other]", "*[one]"), DE.to_owned(), "a choice has [one]"),
            (EN.replace("{ $name }", "{ NUMBER($name) }"), DE.to_owned(), "who: not used here"),
            (EN.replace("{ $name }", "{ -name }"), DE.to_owned(), "who: not used here"),
            (format!("{EN}who = again\n"), DE.to_owned(), "who stands twice"),
            (format!("{EN}who\n"), DE.to_owned(), "few.ftl: line 8"),
            (format!("{EN}-term = x\n"), DE.to_owned(), "terms are not used"),
            (format!("{EN}a =\n    .b = c\n"), DE.to_owned(), "a: attributes are not used"),
            (EN.replace("and", "\u{1}"), DE.to_owned(), "a control character"),
            (EN.replace("} sets", "sets"), DE.to_owned(), "few.ftl: line"),
        ];
        for (en, de, what) in wrong {
            let said = built(&en, &de).unwrap_err();
            assert!(said.contains(what), "{what}\n{said}");
        }
    }

    /// What was packed is what is said: the number's form, the variables' places.
    #[test]
    fn packed_texts_hold_the_marks_they_are_read_with() {
        let home = tempfile::tempdir().unwrap();
        for (language, text) in [("en", EN), ("de", DE)] {
            fs::create_dir(home.path().join(language)).unwrap();
            fs::write(home.path().join(language).join("few.ftl"), text).unwrap();
        }
        build(home.path(), home.path()).unwrap();
        let text = |language: &str| -> &'static str {
            fs::read_to_string(home.path().join(format!("{language}.txt"))).unwrap().leak()
        };
        let (en, de) = (text("en"), text("de"));
        let end = |text: &str| text.find("\u{4}").unwrap() + 1;
        let packed = crate::Packed {
            texts: [en, de],
            starts: [
                vec![0, end(en) as u32, en.len() as u32].leak(),
                vec![0, end(de) as u32, de.len() as u32].leak(),
            ],
        };
        let said = |number: i64| packed.say(0, &[crate::Arg::Number(number)]);
        assert_eq!([said(1), said(3)], ["1 set", "3 sets"]);
        let german = crate::speaking(Language::De, || [said(1), said(3)]);
        assert_eq!(german, ["1 Satz", "3 Sätze"]);
        assert_eq!(packed.say(1, &[crate::Arg::Shown(&"Zoë")]), "Zoë and the rest");
    }
}
