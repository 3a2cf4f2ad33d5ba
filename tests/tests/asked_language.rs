//! The language the program speaks: asked for, or the system's.

use std::process::Command;

use holdfast_tests::program;

/// What the program prints with these arguments and variables, and whether it ended well.
fn says(args: &[&str], variables: &[(&str, &str)]) -> (String, bool) {
    let mut command = Command::new(program());
    for name in ["HOLDFAST_HOME", "HOLDFAST_LANG", "LC_ALL", "LC_MESSAGES", "LANG"] {
        command.env_remove(name);
    }
    let ran = command.args(args).envs(variables.iter().copied()).output().unwrap();
    let text = [ran.stdout, ran.stderr].concat();
    (String::from_utf8(text).unwrap(), ran.status.success())
}

const HOLD: [&str; 5] = ["hold", "1", "--ready", "0", "--no-speech"];

#[test]
fn it_is_the_systems_unless_another_is_asked_for() {
    let held = |more: &[&str], variables: &[(&str, &str)]| {
        let (said, fine) = says(&[&HOLD[..], more].concat(), variables);
        assert!(fine, "{said}");
        said.lines().last().unwrap_or_default().to_owned()
    };
    let german = ("LANG", "de_DE.UTF-8");
    assert_eq!(held(&[], &[]), "held: 1 s");
    assert_eq!(held(&[], &[german]), "gehalten: 1 s");
    assert_eq!(held(&[], &[german, ("LC_ALL", "C")]), "held: 1 s");
    assert_eq!(held(&[], &[("HOLDFAST_LANG", "de")]), "gehalten: 1 s");
    assert_eq!(held(&[], &[german, ("HOLDFAST_LANG", "en")]), "held: 1 s");
    assert_eq!(held(&["--lang", "de"], &[("HOLDFAST_LANG", "en")]), "gehalten: 1 s");
}

#[test]
fn help_and_errors_come_in_it_too() {
    let (said, fine) = says(&["--lang", "de", "--help"], &[]);
    assert!(fine && said.contains("Aufruf: holdfast") && said.contains("Befehle:"), "{said}");
    assert!(!said.contains("Print") && said.contains("Einen Plan prüfen"), "{said}");
    let (said, fine) = says(&["hold", "--help"], &[("LC_MESSAGES", "de")]);
    assert!(fine && said.contains("<SEKUNDEN>") && said.contains("Seiten, 1 bis 64"), "{said}");
    let wrong = ["hold", "30", "--contract", "60", "--relax", "5", "--lang=de"];
    let (said, fine) = says(&wrong, &[]);
    assert!(!fine && said.contains("Fehler: --contract 60 ist länger"), "{said}");
}

#[test]
fn an_unknown_language_names_those_there_are() {
    for (args, variables) in
        [(&["today", "--lang", "fr"][..], &[][..]), (&["today"], &[("HOLDFAST_LANG", "fr")])]
    {
        let (said, fine) = says(args, variables);
        assert!(!fine && said.contains("There is no language \"fr\""), "{said}");
        assert!(said.contains("en, de"), "{said}");
    }
    // The system may speak any: then English is spoken.
    let (said, fine) = says(&["--help"], &[("LANG", "fr_FR.UTF-8")]);
    assert!(fine && said.contains("Usage: holdfast"), "{said}");
}

/// Somebody's own choice goes before the system's language, and what is asked for before both.
#[test]
fn a_choice_is_kept_and_spoken() {
    let home = tempfile::tempdir().unwrap();
    let folder = home.path().to_str().unwrap();
    let ana = |args: &[&str]| {
        let (said, fine) = says(&[&["--home", folder][..], args].concat(), &[("LANG", "C")]);
        assert!(fine, "{said}");
        said
    };
    ana(&["start", "--as", "athlete", "--name", "Ana"]);
    assert!(ana(&["today"]).contains("No plan"));
    let said = ana(&["language", "de"]);
    assert_eq!(said, "Holdfast spricht ab jetzt Deutsch mit dir.\n");
    assert!(ana(&["today"]).contains("Noch kein Plan"), "{}", ana(&["today"]));
    assert!(ana(&["today", "--lang", "en"]).contains("No plan"));
    ana(&["language", "system"]);
    assert!(ana(&["today"]).contains("No plan"));
}
