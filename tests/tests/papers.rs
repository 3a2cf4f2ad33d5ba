//! What the documents say about formats, held against the program; and that their links lead somewhere.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

use holdfast_core::care::{Place, Sign};
use holdfast_core::clock::{Act, WhyShort};
use holdfast_core::journal::{Body, Entry, Part, RestAct, Role, Until};
use holdfast_core::load::Decision;
use holdfast_core::plan::{Because, MeasuredWhen, Protocol, Technique, read_plan};
use holdfast_tests::Writer;
use serde_json::{Map, Value};

use crate::old_lines::{LATER, LINES, writer};

type Words = BTreeSet<String>;

/// Keys by the heading they stand below; true for one that must be written.
type Tables = BTreeMap<String, BTreeMap<String, Row>>;

/// A row of a table: a key and what is said about it.
struct Row {
    required: bool,
    /// What is said of its value.
    value: String,
}

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

fn page(name: &str) -> String {
    fs::read_to_string(root().join(name)).unwrap_or_else(|error| panic!("{name}: {error}"))
}

/// What stands between two of a mark, each time.
fn between(text: &str, mark: char) -> Vec<String> {
    text.split(mark).skip(1).step_by(2).map(str::to_owned).collect()
}

/// Words in quotes and backticks: those that a value may be.
fn words_of(value: &str) -> Words {
    let word = |code: String| Some(code.strip_prefix('"')?.strip_suffix('"')?.to_owned());
    between(value, '`').into_iter().filter_map(word).collect()
}

/// The tables of a document whose rows begin with a key, each below its heading.
fn tables(document: &str) -> Tables {
    let mut tables = Tables::new();
    let mut heading = String::new();
    for line in document.lines() {
        if let Some(text) = line.strip_prefix('#') {
            text.trim_start_matches('#').trim().clone_into(&mut heading);
            tables.entry(heading.clone()).or_default();
        } else if let Some(row) = line.strip_prefix("| `") {
            let cells: Vec<&str> = row.split(" | ").collect();
            let required = cells.last().is_some_and(|cell| *cell == "required |");
            for key in between(&format!("`{}", cells[0]), '`') {
                let row = Row { required, value: cells[1].to_owned() };
                assert!(tables.get_mut(&heading).unwrap().insert(key, row).is_none(), "{line}");
            }
        }
    }
    tables
}

fn keys(table: &BTreeMap<String, Row>) -> Words {
    table.keys().cloned().collect()
}

fn required(table: &BTreeMap<String, Row>) -> Words {
    table.iter().filter(|(_, row)| row.required).map(|(key, _)| key.clone()).collect()
}

/// A sound plan in parts, each inside one before it.
const PLAN: [(&str, &str); 19] = [
    (
        "top",
        "block = <block>\nkit = <kit>\nmovement.squat = <movement>\nstretch.calf = <stretch>\nday = [<day>]",
    ),
    ("block", r#"{ name = "A", starts = 2026-11-02, weeks = 1, easy = <easy> }"#),
    ("easy", "{ weeks = [1], sets = -1 }"),
    (
        "kit",
        "{ bar = [<bar>], plate = [<plate>], bell = [<bell>], machine = [<machine>], warm-up = <warm-up> }",
    ),
    ("warm-up", r#"{ smallest = "5 kg" }"#),
    ("bar", r#"{ name = "long bar", mass = "20 kg" }"#),
    ("plate", r#"{ mass = "5 kg", count = 2 }"#),
    ("bell", r#"{ mass = "8 kg", count = 1 }"#),
    ("machine", r#"{ name = "leg press", stack = <stack> }"#),
    ("stack", r#"{ from = "5 kg", to = "10 kg", step = "5 kg" }"#),
    ("movement", r#"{ name = "Squat", pattern = "squat", lifted = "bar", option.box = <option> }"#),
    ("option", r#"{ name = "Box", because = "grip" }"#),
    ("stretch", r#"{ name = "Calf", region = "calves" }"#),
    ("day", r#"{ name = "D", on = ["monday"], piece = [<strength>, <interval>, <hold>] }"#),
    (
        "strength",
        r#"{ kind = "strength", name = "S", movement = "squat", reps = [5], load = <load> }"#,
    ),
    ("load", r#"{ rule = "free" }"#),
    (
        "interval",
        r#"{ kind = "interval", name = "I", window = "1 min", rounds = 1, station = [<station>] }"#,
    ),
    ("station", r#"{ movement = "squat", reps = 5 }"#),
    ("hold", r#"{ kind = "hold", name = "H", stretch = "calf", hold = "1 min" }"#),
];

/// The plan with one part written otherwise.
fn plan(part: &str, instead: &str) -> String {
    let mut text = "<top>".to_owned();
    for (name, good) in PLAN {
        text = text.replace(&format!("<{name}>"), if name == part { instead } else { good });
    }
    text
}

/// A key and a word that no plan has, and that is near none.
const ODD: &str = "zzzzzz";

/// Parts of a plan: the part, its headings in the document and what says which kind it is. Keys that all
/// kinds have stand under the first heading.
const SECTIONS: [(&str, &[&str], &str); 23] = [
    ("block", &["`[block]`"], ""),
    ("easy", &["`easy`"], ""),
    ("kit", &["`[kit]`"], ""),
    ("warm-up", &["`warm-up`"], ""),
    ("bar", &["`bar`"], ""),
    ("plate", &["`plate`"], ""),
    ("bell", &["`bell`"], ""),
    ("machine", &["`machine`"], ""),
    ("stack", &["`stack`"], ""),
    ("movement", &["`[movement.KEY]`"], ""),
    ("option", &["`option.KEY`"], ""),
    ("stretch", &["`[stretch.KEY]`"], ""),
    ("day", &["`[[day]]`"], ""),
    ("strength", &["`[[day.piece]]`", r#"`kind = "strength"`"#], r#"kind = "strength", "#),
    ("strength", &["`[[day.piece]]`", r#"`kind = "interval"`"#], r#"kind = "interval", "#),
    ("strength", &["`[[day.piece]]`", r#"`kind = "hold"`"#], r#"kind = "hold", "#),
    ("strength", &["`[[day.piece]]`", r#"`kind = "note"`"#], r#"kind = "note", "#),
    ("station", &["`station`"], ""),
    ("load", &["`load`", r#"`rule = "step"`"#], r#"rule = "step", "#),
    ("load", &["`load`", r#"`rule = "percent"`"#], r#"rule = "percent", "#),
    ("load", &["`load`", r#"`rule = "reserve"`"#], r#"rule = "reserve", "#),
    ("load", &["`load`", r#"`rule = "fixed"`"#], r#"rule = "fixed", "#),
    ("load", &["`load`", r#"`rule = "free"`"#], r#"rule = "free", "#),
];

/// What the reader says of a text: the keys it names where it meets an odd one, and those it misses.
fn asked(text: &str) -> (Words, Words) {
    let (mut known, mut missing) = (Words::new(), Words::new());
    for problem in read_plan(text.as_bytes()).unwrap_err() {
        if problem.what.contains(ODD) {
            known.extend(between(&problem.help, '`'));
        } else {
            // The last that is named: before it stands what lacks it.
            missing.extend(between(&problem.what, '`').into_iter().last());
        }
    }
    (known, missing)
}

#[test]
fn the_document_names_the_keys_of_a_plan_that_its_reader_knows() {
    assert_eq!(read_plan(plan("", "").as_bytes()).map(|block| block.days.len()), Ok(1));
    let tables = tables(&page("docs/plan.md"));
    let top = &tables["The top of the file"];
    assert_eq!(asked(&format!("{ODD} = 1")), (keys(top), required(top)));
    let mut seen: BTreeSet<&str> = BTreeSet::from(["The top of the file"]);
    for (part, headings, given) in SECTIONS {
        let (mut all, mut needed) = (Words::new(), Words::new());
        for heading in headings {
            all.extend(keys(&tables[*heading]));
            needed.extend(required(&tables[*heading]));
            seen.insert(heading);
        }
        needed.retain(|key| !given.starts_with(&format!("{key} =")));
        let found = asked(&plan(part, &format!("{{ {given}{ODD} = 1 }}")));
        assert_eq!(found, (all, needed), "{headings:?}");
    }
    for (heading, table) in &tables {
        assert!(
            table.is_empty() || seen.contains(heading.as_str()),
            "{heading} is never asked for"
        );
    }
}

#[test]
fn the_document_names_the_words_that_a_plan_may_use() {
    let tables = tables(&page("docs/plan.md"));
    for (part, heading, key, instead) in [
        ("movement", "`[movement.KEY]`", "pattern", r#"{ pattern = "zzzzzz" }"#),
        ("movement", "`[movement.KEY]`", "lifted", r#"{ lifted = "zzzzzz" }"#),
        ("option", "`option.KEY`", "because", r#"{ because = "zzzzzz" }"#),
        ("day", "`[[day]]`", "on", r#"{ on = ["zzzzzz"] }"#),
        ("hold", "`[[day.piece]]`", "kind", r#"{ kind = "zzzzzz" }"#),
        ("hold", r#"`kind = "hold"`"#, "technique", r#"{ kind = "hold", technique = "zzzzzz" }"#),
        ("hold", r#"`kind = "hold"`"#, "measure", r#"{ kind = "hold", measure = "zzzzzz" }"#),
        ("load", "`load`", "rule", r#"{ rule = "zzzzzz" }"#),
    ] {
        let problems = read_plan(plan(part, instead).as_bytes()).unwrap_err();
        let odd = problems.iter().find(|problem| problem.what.contains(ODD)).unwrap();
        let known: Words = between(&odd.help, '"').into_iter().collect();
        assert_eq!(words_of(&tables[heading][key].value), known, "{heading} {key}");
    }
}

/// The body of a frozen line, and its kind.
fn body_of(line: &str) -> (String, Map<String, Value>) {
    let line: Value = serde_json::from_str(line).unwrap();
    (line["k"].as_str().unwrap().to_owned(), line["body"].as_object().unwrap().clone())
}

/// Each field that a frozen line of a kind has; required when the kind cannot be read without it.
#[test]
fn the_document_names_every_kind_of_entry_and_every_field_of_it() {
    let document = page("docs/entries.md");
    let tables = tables(&document);
    let kinds = document.lines().filter_map(|line| line.strip_prefix("### "));
    let kinds: Vec<String> = kinds.map(|kind| kind.trim_matches('`').to_owned()).collect();
    assert_eq!(kinds, Body::KINDS);
    let mut fields: BTreeMap<String, Words> = BTreeMap::new();
    for line in LINES.into_iter().chain(LATER) {
        let (kind, body) = body_of(line);
        let fields = fields.entry(kind.clone()).or_default();
        fields.extend(body.keys().cloned());
        for (field, row) in &tables[&format!("`{kind}`")] {
            let mut without = body.clone();
            without.remove(field);
            let read = Body::decode(&kind, &Value::from(without).to_string());
            assert_eq!(read.is_none(), row.required, "`{field}` of `{kind}`");
        }
    }
    for (kind, fields) in fields {
        assert_eq!(keys(&tables[&format!("`{kind}`")]), fields, "`{kind}`");
    }
}

#[test]
fn the_document_names_the_words_that_an_entry_may_use() {
    let tables = tables(&page("docs/entries.md"));
    for (kind, field, words) in [
        ("profile", "role", Role::words()),
        ("profile", "unit", vec!["kg", "lb"]),
        ("option", "because", Because::words()),
        ("clock", "mark", Act::words()),
        ("hold", "technique", Technique::words()),
        ("hold", "short", WhyShort::words()),
        ("range", "protocol", Protocol::words()),
        ("range", "when", MeasuredWhen::words()),
        ("flag", "place", Place::words()),
        ("flag", "signs", Sign::words()),
        ("ruling", "decision", Decision::words()),
        ("rest", "act", RestAct::words()),
        ("put-off", "part", Part::words()),
        ("put-off", "until", Until::words()),
    ] {
        let words: Words = words.into_iter().map(str::to_owned).collect();
        assert_eq!(
            words_of(&tables[&format!("`{kind}`")][field].value),
            words,
            "{field} of {kind}"
        );
    }
}

#[test]
fn the_document_shows_a_line_as_it_is() {
    let document = page("docs/entries.md");
    let tables = tables(&document);
    let shown: Vec<&str> =
        document.split("```json\n").skip(1).filter_map(|rest| rest.split("\n```").next()).collect();
    let [line] = shown[..] else { panic!("{shown:?}") };
    assert!(LINES.contains(&line));
    for (field, row) in &tables["The line"] {
        let mut without: Map<String, Value> = serde_json::from_str(line).unwrap();
        assert!(without.remove(field).is_some() || field == "par", "{field}");
        let read = Entry::read(writer(), &Value::from(without).to_string());
        assert_eq!(read.is_err(), row.required, "{field}");
    }
}

#[test]
fn the_document_names_every_field_of_a_header() {
    let ana = Writer::of(1);
    let line = LINES[1].replace("\"n\":2", "\"n\":1");
    let leaf = ana.writes((ana.crew(), ana.person()), None, &[line]);
    let fields: Map<String, Value> = serde_json::from_str(&leaf.header_line).unwrap();
    let tables = tables(&page("docs/leaf.md"));
    assert_eq!(keys(&tables["The header"]), fields.keys().cloned().collect());
}

/// The documents in a folder, by their paths from the root.
fn documents(folder: &str) -> Vec<String> {
    let files = fs::read_dir(root().join(folder)).unwrap();
    let names = files.map(|file| file.unwrap().file_name().into_string().unwrap());
    let mut names: Vec<String> = names.filter(|name| name.ends_with(".md")).collect();
    names.sort();
    names.into_iter().map(|name| format!("{folder}{name}")).collect()
}

#[test]
fn every_link_between_documents_leads_to_a_file() {
    for name in ["", "docs/", "docs/decisions/"].into_iter().flat_map(documents) {
        let text = page(&name);
        for link in text.split("](").skip(1).filter_map(|rest| rest.split(')').next()) {
            let path = link.split('#').next().unwrap_or_default();
            let outside = link.starts_with("https://");
            let there = root().join(&name).parent().unwrap().join(path).exists();
            assert!(outside || there, "{name} links to {link}");
        }
    }
}

/// Each decision has its number, its four parts and its line in the list.
#[test]
fn decisions_are_numbered_and_listed() {
    let list = page("docs/decisions/README.md");
    let mut names = documents("docs/decisions/");
    names.retain(|name| !name.ends_with("README.md"));
    for (index, name) in names.iter().enumerate() {
        let (text, number) = (page(name), format!("{:04}", index + 1));
        let file = name.rsplit('/').next().unwrap();
        let title = text.lines().next().and_then(|line| line.strip_prefix("# "));
        let title = title.unwrap_or_else(|| panic!("{name} has no title"));
        assert!(file.starts_with(&format!("{number}-")), "{name} should be {number}");
        assert!(list.contains(&format!("- [{title}]({file})")), "{name} is not in the list");
        let parts: Vec<&str> = text.lines().filter_map(|line| line.strip_prefix("## ")).collect();
        assert_eq!(parts, ["Context", "Decision", "Rejected", "Consequences"], "{name}");
    }
}
