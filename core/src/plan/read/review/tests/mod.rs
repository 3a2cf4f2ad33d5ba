//! Every note and every error of a review, where it is said and in which words.

mod loads;
mod people;

use catalogue::{Language, speaking};
use chrono::NaiveDate;

use super::{Reviewed, review_plan};
use crate::plan::{Problem, read_plan};

/// A plan without a note. Tests spoil it in one place at a time.
const PLAN: &str = r#"[block]
name = "Cellar"
starts = 2026-11-02
weeks = 3

[kit]
bar = [{ name = "long bar", mass = "20 kg" }, { name = "short bar", mass = "15 kg" }]
plate = [{ mass = "10 kg", count = 8 }, { mass = "5 kg", count = 2 }, { mass = "1.25 kg", count = 6 }]
bell = [{ mass = "8 kg", count = 2 }, { mass = "9 kg", count = 2 }, { mass = "16 kg", count = 1 }]

[movement.squat]
name = "Squat"
pattern = "squat"
lifted = "bar"
option.box-squat = { name = "Box squat", because = "grip" }

[movement.row]
name = "Row"
pattern = "pull"
lifted = "bell"

[movement.press-up]
name = "Press-up"
pattern = "push"
lifted = "body"

[[day]]
name = "Evening"
on = ["tuesday"]

[[day.piece]]
kind = "strength"
name = "Heavy"
movement = "squat"
reps = [5, 5]
load = { rule = "step", step = "2.5 kg" }

[[day.piece]]
kind = "interval"
name = "Corners"
window = "30 s"
rounds = 3
station = [{ movement = "press-up", reps = 60 }, { movement = "squat", reps = 5, load = "20 kg" }]
"#;

const LOAD: &str = "{ rule = \"step\", step = \"2.5 kg\" }";
const TODAY: Option<NaiveDate> = NaiveDate::from_ymd_opt(2026, 10, 20);

fn spoilt(from: &str, to: &str) -> String {
    assert!(PLAN.contains(from), "{from}");
    PLAN.replacen(from, to, 1)
}

fn notes(text: &str) -> Vec<Problem> {
    review_plan(text.as_bytes(), TODAY, &[])
        .unwrap_or_else(|found| panic!("{found:#?}\n{text}"))
        .notes
}

/// What a text has at the place of a problem.
fn there<'t>(text: &'t str, of: &Problem) -> &'t str {
    let line = text.lines().nth(of.line as usize - 1).unwrap();
    &line[line.char_indices().nth(of.column as usize - 1).unwrap().0..]
}

/// The one note of a text: what stands at its place, what is said in both languages, what helps.
fn one(text: &str, at: &str, en: (&str, &str), de: (&str, &str)) {
    for (language, (what, help)) in [(Language::En, en), (Language::De, de)] {
        speaking(language, || {
            let found = notes(text);
            let [note] = found.as_slice() else { panic!("{what}: {found:#?}") };
            assert!(there(text, note).starts_with(at), "{note:?}");
            assert_eq!((note.what.as_str(), note.help.as_str()), (what, help));
        });
    }
}

/// A second strength piece, last in the day.
fn with_piece(keys: &str) -> String {
    format!("{PLAN}\n[[day.piece]]\nkind = \"strength\"\n{keys}\n")
}

#[test]
fn nothing_is_said_of_a_plain_plan() {
    assert_eq!(notes(PLAN), []);
    let Reviewed { block, .. } = review_plan(PLAN.as_bytes(), None, &[]).unwrap();
    assert_eq!(Ok(block), read_plan(PLAN.as_bytes()));
    assert_eq!(review_plan(b"x", TODAY, &[]).unwrap_err(), read_plan(b"x").unwrap_err());
}

#[test]
fn tracks() {
    let again = "name = \"Again\"\nmovement = \"squat\"\nreps = [5, 5]";
    one(
        &with_piece(again),
        "\"Again\"",
        (
            "\"Again\" and \"Heavy\" on line 33 have the same movement, sets and reps, but each its own history.",
            "Give both the same `track` to share one history, or each its own to say that they are two.",
        ),
        (
            "\"Again\" und \"Heavy\" in Zeile 33 haben dieselbe Übung, dieselben Sätze und Wiederholungen, aber \
             jedes seinen eigenen Verlauf.",
            "Gib beiden denselben `track`, damit sie einen Verlauf teilen, oder jedem einen eigenen, wenn es \
             zwei sein sollen.",
        ),
    );
    assert_eq!(notes(&with_piece(&again.replace("[5, 5]", "[5, 4]"))), []);
    assert_eq!(notes(&with_piece(&format!("{again}\ntrack = \"second\""))), []);

    let day = |keys: &str| {
        format!(
            "{PLAN}\n[[day]]\nname = \"Friday\"\non = [\"friday\"]\n[[day.piece]]\nkind = \"strength\"\n{keys}\n"
        )
    };
    let light = "name = \"Heavy\"\nmovement = \"squat\"\nreps = [12]";
    one(
        &day(light),
        "\"Heavy\"",
        (
            "\"Heavy\" has other sets and reps than on line 33, but the same history.",
            "Give each a `track` of its own, or both the same one to say that they are one.",
        ),
        (
            "\"Heavy\" hat andere Sätze und Wiederholungen als in Zeile 33, aber denselben Verlauf.",
            "Gib jedem einen eigenen `track` oder beiden denselben, wenn es einer sein soll.",
        ),
    );
    assert_eq!(notes(&day(&light.replace("[12]", "[5, 5]"))), [], "one piece on two days");
    assert_eq!(notes(&day(&format!("{light}\ntrack = \"light\""))), []);

    let named = PLAN.replace("reps = [5, 5]", "reps = [5, 5]\ntrack = \"main\"");
    let rows = "[[day.piece]]\nkind = \"strength\"\nname = \"Rows\"\nmovement = \"row\"\nreps = [9]\ntrack = \"main\"\n";
    one(
        &format!("{named}\n{rows}"),
        "\"main\"",
        (
            "The track \"main\" is another movement's on line 36. Each movement keeps its own history.",
            "Give it another name, so that nobody takes them for one.",
        ),
        (
            "Der Verlauf \"main\" gehört in Zeile 36 zu einer anderen Übung. Jede Übung hat ihren eigenen.",
            "Gib ihm einen anderen Namen, damit niemand die beiden für einen hält.",
        ),
    );
}

#[test]
fn names() {
    one(
        &with_piece("name = \"heavy \u{a0} \"\nmovement = \"row\"\nreps = [5]"),
        "\"heavy",
        (
            "\"heavy\" and \"Heavy\" on line 33 are two names.",
            "Write both the same way, or make them easy to tell apart.",
        ),
        (
            "\"heavy\" und \"Heavy\" in Zeile 33 sind zwei Namen.",
            "Schreib beide gleich oder so, dass man sie leicht unterscheidet.",
        ),
    );
    one(
        &spoilt("\"Cellar\"", "\"Cel\u{200b}lar\""),
        "\"Cel",
        ("\"Cel\u{200b}lar\" has a character that nobody sees (U+200B).", "Type the name again."),
        (
            "\"Cel\u{200b}lar\" enthält ein unsichtbares Zeichen (U+200B).",
            "Tipp den Namen noch einmal.",
        ),
    );
    let said = |text: &str| notes(text).into_iter().map(|note| note.what).collect::<Vec<String>>();
    let alike = said(&spoilt("\"short bar\"", "\"Long  \u{ad}bar\""));
    assert_eq!(alike.len(), 2, "{alike:?}");
    assert!(alike[0].ends_with("are two names.") && alike[1].ends_with("(U+00AD)."), "{alike:?}");
    assert_eq!(
        said(&spoilt("\"Box squat\"", "\"SQUAT\"")),
        ["\"SQUAT\" and \"Squat\" on line 12 are two names."]
    );
    assert_eq!(
        said(&spoilt("\"Box squat\"", "\"Squat\"")),
        [] as [&str; 0],
        "not told apart is no slip"
    );
    // An astronaut is two characters and a joiner; a joiner between plain letters is a slip.
    assert_eq!(
        said(&spoilt("\"Cellar\"", "\"\u{1f469}\u{200d}\u{1f680} \u{2764}\u{fe0f}\"")),
        [] as [&str; 0]
    );
    assert_eq!(said(&spoilt("\"Cellar\"", "\"a\u{200d}b\"")).len(), 1);
}

#[test]
fn times() {
    let starts = |date: &str| spoilt("2026-11-02", date);
    one(
        &starts("2062-11-06"),
        "2062",
        ("This block starts in 2062, more than a year from now.", "Check the year of `starts`."),
        ("Dieser Block beginnt 2062, in mehr als einem Jahr.", "Prüfe das Jahr bei `starts`."),
    );
    one(
        &starts("2016-10-31"),
        "2016",
        ("This block started in 2016, more than a year ago.", "Check the year of `starts`."),
        ("Dieser Block begann 2016, vor mehr als einem Jahr.", "Prüfe das Jahr bei `starts`."),
    );
    assert_eq!(notes(&starts("2027-10-18")), []);
    assert_eq!(review_plan(starts("2062-11-06").as_bytes(), None, &[]).unwrap().notes, []);
    one(
        &spoilt("reps = 60", "reps = 61"),
        "61",
        ("61 reps do not fit into 30 s.", "At half a second a rep there is time for 60."),
        (
            "61 Wiederholungen passen nicht in 30 s.",
            "Mit einer halben Sekunde je Wiederholung reicht die Zeit für 60.",
        ),
    );
}

/// Notes are all named, however many; none is ever outside the text.
#[test]
fn every_note_is_named() {
    let piece = "[[day.piece]]\nkind = \"strength\"\nname = \"N\"\nmovement = \"row\"\nreps = [5]\n\
                 load = { rule = \"step\", step = \"0.5 kg\" }\n";
    let pieces: String = (0..60)
        .map(|n| format!("{}track = \"t{n}\"\n", piece.replace("\"N\"", &format!("\"N{n}\""))))
        .collect();
    let text = format!("{PLAN}\n{pieces}");
    let found = notes(&text);
    assert_eq!(found.len(), 120, "a step and a gap each");
    assert!(found.is_sorted());
}
