use catalogue::{Language, speaking};

use super::*;

/// A command and all below it.
fn all(command: &Command) -> Vec<&Command> {
    let below = command.get_subcommands().flat_map(all);
    std::iter::once(command).chain(below).collect()
}

#[test]
fn every_command_argument_and_value_has_its_words_in_every_language() {
    for language in Language::ALL {
        speaking(language, || {
            let mut command = Args::command();
            command.build();
            let mut seen = 0;
            for command in all(&command) {
                let name = command.get_name();
                assert!(about(name).is_some_and(|text| !text.is_empty()), "{language}: {name}");
                for arg in command.get_arguments() {
                    let id = arg.get_id().as_str();
                    let text = argument(name, id);
                    assert!(text.is_some_and(|text| !text.is_empty()), "{language}: {name} {id}");
                    for name in arg.get_value_names().unwrap_or_default() {
                        let takes = arg.get_action().takes_values();
                        assert!(!takes || value(name).is_some(), "{language}: {id} {name}");
                    }
                    seen += 1;
                }
            }
            assert!(seen > 60, "{seen}");
        });
    }
}

/// The help of a command, as it is printed.
fn help(language: Language, name: &str, long: bool) -> String {
    speaking(language, || {
        let mut command = command();
        let found = if name == "holdfast" {
            &mut command
        } else {
            command.find_subcommand_mut(name).unwrap()
        };
        let shown = if long { found.render_long_help() } else { found.render_help() };
        shown.to_string()
    })
}

#[test]
fn help_comes_in_the_language_that_is_spoken_with_nothing_of_the_other() {
    for name in ["holdfast", "plates", "hold", "answer", "start", "help"] {
        for long in [true, false] {
            let (en, de) = (help(Language::En, name, long), help(Language::De, name, long));
            assert!(en.contains("Usage:") && en.contains("Print help"), "{en}");
            assert!(de.contains("Aufruf:"), "{de}");
            for word in ["Usage", "Print", "Commands", "Options:", "default", "possible", "OPTIONS"]
            {
                assert!(!de.contains(word), "{word} in\n{de}");
            }
        }
    }
    let start = help(Language::De, "start", true);
    assert!(start.contains("--as <ROLLE>"), "{start}");
    assert!(start.contains("[eines von: kg, lb] [ohne Angabe: kg]"), "{start}");
    assert!(start.contains("[Variable: HOLDFAST_HOME]"), "{start}");
}

#[test]
fn more_is_said_where_more_is_asked_for() {
    for (language, text) in
        [(Language::En, "Nothing is rounded"), (Language::De, "nichts gerundet")]
    {
        let read =
            |long| help(language, "plates", long).split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(read(true).contains(text) && !read(false).contains(text), "{}", read(true));
    }
}

/// Arguments stand as they are typed.
#[test]
fn arguments_stand_in_their_order_before_the_options() {
    let answer = help(Language::En, "answer", false);
    let places = ["Arguments:", "<NAME>  ", "<MOVEMENT>  ", "<DECISION>  ", "Options:", "--load"];
    let places = places.map(|text| answer.find(text));
    assert!(places.iter().all(Option::is_some) && places.is_sorted(), "{answer}");
}

/// What is said of arguments that cannot be read.
fn wrong(language: Language, typed: &[&str]) -> String {
    speaking(language, || {
        let typed = [&["holdfast"], typed].concat();
        let mut command = command();
        let error = read(&mut command, typed.into_iter().map(OsString::from)).unwrap_err();
        unread::sentence(&command, &error).unwrap_or_else(|| panic!("{error:?}"))
    })
}

#[test]
fn what_cannot_be_read_is_told_in_the_language_that_is_spoken() {
    let cases: [(&[&str], &str, &str); 12] = [
        (&["todya"], "Did you mean \"today\"?", "Meinst du „today“?"),
        (&["xyz"], "no command \"xyz\"", "Den Befehl „xyz“ gibt es nicht."),
        (&["board", "--jsn"], "Did you mean \"--json\"?", "Meinst du „--json“?"),
        (&["board", "--xyz"], "no argument \"--xyz\"", "Das Argument „--xyz“ gibt es nicht."),
        (&["plates", "-6kg", "--kit", "x"], "put -- before it: -- -6", "gehört --: -- -6"),
        (&["hold"], "Missing: <SECONDS>.", "Es fehlt: <SEKUNDEN>."),
        (&["board", "--json", "--json"], "--json can be given only once", "--json darf nur einmal"),
        (
            &["recovery", "--moved", "--copied"],
            "--moved cannot be given together with --copied",
            "--moved lässt sich nicht zusammen mit --copied",
        ),
        (&["today", "--day"], "--day <NAME> needs a value", "--day <NAME> braucht einen Wert"),
        (
            &["start", "--name", "X", "--as", "referee"],
            "\"referee\" does not fit --as <ROLE>. Choose one of these: coach, athlete.",
            "„referee“ passt nicht zu --as <ROLLE>. Wähle eines von diesen: coach, athlete.",
        ),
        (
            &["hold", "0"],
            "\"0\" does not fit <SECONDS>: Seconds to hold each side, 1 to 1800",
            "„0“ passt nicht zu <SEKUNDEN>: Sekunden je Seite, 1 bis 1800",
        ),
        (&["today", "--on", "soon"], "\"soon\" does not fit --on <DATE>", "--on <DATUM>"),
    ];
    for (typed, en, de) in cases {
        for (language, wanted) in [(Language::En, en), (Language::De, de)] {
            let said = wrong(language, typed);
            assert!(said.contains(wanted), "{typed:?}: {said}");
        }
    }
}
