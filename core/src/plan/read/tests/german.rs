//! The same problems in German: order of words, plurals, decimal commas.

use catalogue::{Language, speaking};

use super::{PLAN, bad, spoilt};
use crate::plan::read::MAX_PLAN_BYTES;

/// What is wrong and what helps, of a plan with one problem.
fn german(text: &str) -> (String, String) {
    speaking(Language::De, || {
        let problems = bad(text);
        let [problem] = problems.as_slice() else { panic!("{problems:#?}") };
        (problem.what.clone(), problem.help.clone())
    })
}

fn check(cases: &[(&str, &str, &str, &str)]) {
    for (from, to, what, help) in cases {
        let said = german(&spoilt(from, to));
        assert_eq!((said.0.as_str(), said.1.as_str()), (*what, *help), "{to}");
    }
}

#[test]
fn values_and_keys() {
    check(&[
        (
            "weeks = 3",
            "weeks = 0",
            "`weeks` kann nicht 0 sein.",
            "Schreib eine ganze Zahl von 1 bis 26.",
        ),
        (
            "weeks = 3",
            "wekes = 3",
            "Ein Block hat kein Feld `wekes`.",
            "Meinst du `weeks`? Möglich sind `name`, `starts`, `weeks` und `easy`.",
        ),
        (
            "[\"tuesday\"]",
            "[\"tue\"]",
            "`on` kann \"tue\" nicht enthalten.",
            "Meinst du \"tuesday\"? Schreib \"monday\", \"tuesday\", \"wednesday\", \"thursday\", \"friday\", \
             \"saturday\" oder \"sunday\".",
        ),
        (
            "2026-11-02",
            "2026-11-04",
            "`starts` muss ein Montag sein; 2026-11-04 ist ein Mittwoch.",
            "Der Montag davor ist 2026-11-02, der Montag danach 2026-11-09.",
        ),
        (
            "\"squat\"\nreps",
            "\"row\"\nreps",
            "Dieser Plan hat keine Übung \"row\".",
            "Der Plan hat \"squat\", \"swing\" und \"press-up\".",
        ),
        (
            "\"20 kg\"",
            "\"20\"",
            "`mass` kann nicht \"20\" sein.",
            "Schreib die Einheit dazu: \"20 kg\" oder \"20 lb\".",
        ),
        (
            "rounds = 3",
            "rounds",
            "Hier fehlt ein `=`.",
            "Schreib `feld = wert` oder einen Abschnitt wie \
         `[kit]`. Feldnamen haben keine Leerzeichen.",
        ),
    ]);
    let size = german(&"#".repeat(MAX_PLAN_BYTES + 1)).0;
    assert_eq!(size, "Der Plan hat 30.721 Bytes; höchstens 30.720 sind möglich.");
}

#[test]
fn numbers_in_a_sentence() {
    let load = |loads: &str| {
        let fixed = format!("rule = \"fixed\", loads = {loads}");
        german(&spoilt("rule = \"step\", step = \"2.5 kg\"", &fixed))
    };
    let (what, help) = load("\"47.5 kg\"");
    assert_eq!(what, "Keine Stange lässt sich auf 47,5 kg beladen.");
    assert_eq!(help, "Am nächsten kommen mit dieser Ausstattung 45 kg und 60 kg.");
    assert_eq!(load("[\"40 kg\"]").0, "`loads` hat 1 Eintrag für 2 Sätze.");
    let three = "[\"40 kg\", \"40 kg\", \"40 kg\"]";
    assert_eq!(load(three).0, "`loads` hat 3 Einträge für 2 Sätze.");
    let long = spoilt("\"1 min\"\nrounds = 3", "\"4 min\"\nrounds = 60");
    let one = "60 Runden mit 1 Station zu je 4 min dauern 4 h.";
    let help = "Ein Teil dauert höchstens 3 h. Schreib weniger Runden.".to_owned();
    assert_eq!(german(&long), (one.to_owned(), help));
    let station = "{ movement = \"swing\", reps = 10, load = \"16 kg\" }";
    let two = long.replace(station, &format!("{station}, {station}"));
    assert_eq!(german(&two).0, "60 Runden mit 2 Stationen zu je 4 min dauern 8 h.");
    for (letters, help) in [(61, "Kürze es um 1 Zeichen."), (63, "Kürze es um 3 Zeichen.")] {
        assert_eq!(german(&spoilt("Cellar", &"x".repeat(letters))).1, help);
    }
    let keys: String =
        (0..13).map(|key| format!("[stretch.s{key}]\nname = \"A\"\nregion = \"b\"\n")).collect();
    let many = PLAN.replace("[stretch.calf]", &format!("{keys}[stretch.z]"));
    assert!(german(&many).1.ends_with("\"s11\" und 2 weitere."), "{:?}", german(&many));
}
