//! The law of the core's house: a room uses rooms below it and none above. Read from the code itself.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

use holdfast_tests::sources::{check_modules, folder, sources};

/// The rooms from top to bottom, each with all that it uses: no more and no less.
const HOUSE: &[(&str, &[&str])] = &[
    // How what the door shows is written for other languages.
    ("ffi", &["door"]),
    // Opens everything to a shell, so it may look into every room that has a screen, a report or a state
    // to give; the arithmetic rooms are reached through them.
    (
        "door",
        &[
            "page", "session", "coach", "crew", "words", "device", "exchange", "history", "store",
            "journal", "plan",
        ],
    ),
    // The places beside a session, drawn from what coach, crew and exchange say; it decides nothing about them.
    ("page", &["session", "coach", "crew", "words", "device", "exchange", "journal"]),
    // The athlete's day: everything but the coach's own room and what is only told over weeks.
    (
        "session",
        &[
            "words", "device", "exchange", "history", "store", "journal", "load", "clock", "care",
            "plan",
        ],
    ),
    // The coach's view of many days: no clock runs here.
    (
        "coach",
        &["words", "device", "exchange", "history", "store", "journal", "load", "motion", "plan"],
    ),
    // Who belongs to the crew, and the recovery code: acts on the device's own keys and members.
    ("crew", &["words", "device", "exchange", "store", "journal", "plan", "trust"]),
    // Makes sentences of whatever the rooms below decide, and decides nothing.
    ("words", &["journal", "load", "motion", "clock", "care", "plan"]),
    // One home folder: its journal, its shelf, and the plans it has read, ready to work loads out.
    ("device", &["exchange", "store", "journal", "load", "plan", "trust"]),
    // Files between devices: knows entries, not what they are about.
    ("exchange", &["store", "journal", "trust"]),
    // What was done before, read for the load rules.
    ("history", &["store", "journal", "load", "care", "plan"]),
    // Entries on disk and folded; their bodies it only passes on.
    ("store", &["journal"]),
    // What entries say, in the types of the rooms that know what it means.
    ("journal", &["load", "clock", "care", "plan"]),
    // Which load comes next; a flag holds it back, so it knows places that can hurt.
    ("load", &["care", "plan"]),
    // How far somebody reaches: the plan's protocols and stretches.
    ("motion", &["plan"]),
    // Time of holds and windows as the plan asks for them.
    ("clock", &["plan"]),
    // Advice and cautions about what the plan asks for.
    ("care", &["plan"]),
    // The plan itself stands on the ground.
    ("plan", &[]),
    // Keys and whose they are: knows of no entry and no file.
    ("trust", &[]),
];

/// What every room may stand on, and what that uses of the rooms.
const GROUND: &[(&str, &[&str])] = &[
    // Holds a plan's problems, and is a closed set of words like the plan's own.
    ("error", &["plan"]),
    ("id", &[]),
    ("instant", &[]),
    ("mass", &[]),
    // Bugs that tests plant: any room may have one.
    ("planted", &[]),
    // The sentences themselves; every room may say one.
    ("say", &[]),
];

type Uses = BTreeMap<String, BTreeSet<String>>;

/// A file's code without comments and without the module of checks in it.
fn code(text: &str) -> String {
    let mut kept = String::new();
    let mut lines = text.lines();
    while let Some(line) = lines.next() {
        if line == "#[cfg(test)]" {
            let item = lines.next().unwrap_or_default();
            if item.ends_with('{') {
                // A module's own brace is the first that stands at the margin.
                lines.by_ref().find(|line| *line == "}");
            }
        } else if !line.trim_start().starts_with("//") {
            kept.push_str(line);
            kept.push('\n');
        }
    }
    kept
}

/// What follows each `crate::` in some code.
fn named(code: &str) -> BTreeSet<String> {
    let word = |rest: &str| {
        let end = rest.find(|letter: char| !letter.is_alphanumeric() && letter != '_');
        rest[..end.unwrap_or(rest.len())].to_owned()
    };
    code.split("crate::").skip(1).map(word).collect()
}

/// What each room and each piece of the ground uses of the others.
fn found() -> Uses {
    let core = folder("core/src");
    let mut uses = Uses::new();
    for path in sources(&core) {
        let inside = path.strip_prefix(&core).unwrap().with_extension("");
        let room = inside.iter().next().unwrap().to_str().unwrap().to_owned();
        if room == "lib" {
            continue;
        }
        let mut others = named(&code(&fs::read_to_string(&path).unwrap()));
        others.remove(&room);
        uses.entry(room).or_default().extend(others);
    }
    uses
}

fn table(of: &[(&str, &[&str])]) -> Uses {
    let owned = |names: &[&str]| names.iter().map(|name| (*name).to_owned()).collect();
    of.iter().map(|(room, uses)| ((*room).to_owned(), owned(uses))).collect()
}

#[test]
fn each_room_uses_what_the_table_says_and_nothing_else() {
    let ground: BTreeSet<String> = table(GROUND).into_keys().collect();
    let mut found = found();
    for uses in found.values_mut() {
        uses.retain(|used| !ground.contains(used));
    }
    let mut wanted = table(HOUSE);
    wanted.extend(table(GROUND));
    assert_eq!(found, wanted);
}

#[test]
fn rooms_use_only_rooms_below_them_and_the_two_users_rooms_not_each_other() {
    let rooms: Vec<&str> = HOUSE.iter().map(|(room, _)| *room).collect();
    for (floor, (room, uses)) in HOUSE.iter().enumerate() {
        for used in *uses {
            assert!(rooms[floor + 1..].contains(used), "{room} uses {used}, which is not below");
            let users = ["session", "coach", "crew"];
            assert!(!(users.contains(room) && users.contains(used)));
        }
    }
}

/// The drawing as it stands in the book: a line a room, from top to bottom.
fn drawing() -> String {
    let line = |(room, uses): &(&str, &[&str])| format!("{room} -> {}", uses.join(", "));
    let lines: Vec<String> = HOUSE.iter().map(line).collect();
    lines.iter().map(|line| format!("{}\n", line.trim_end())).collect()
}

#[test]
fn the_book_draws_the_house_as_it_is() {
    let book = Path::new(env!("CARGO_MANIFEST_DIR")).join("../docs/architecture.md");
    let book = fs::read_to_string(book).unwrap();
    let drawn = book.split("```house\n").nth(1).and_then(|rest| rest.split("```").next());
    assert_eq!(drawn, Some(drawing().as_str()));
}

/// Planted bugs are there for one check alone: no crate that anybody uses asks for them, and the core has them only when
/// it is asked.
#[test]
fn nothing_that_is_used_has_planted_bugs() {
    let mut asked = Vec::new();
    for at in ["core", "carry", "catalogue", "desk", "bindings/ffi", "bindings/task", "tests", ""] {
        let crate_is = folder(at).join("Cargo.toml");
        let text = fs::read_to_string(crate_is).unwrap();
        let lines = text.lines().filter(|line| !line.starts_with('#'));
        let naming = lines
            .filter(|line| line.split(['"', ' ', '/', '=', ',']).any(|word| word == "planted"));
        asked.extend(naming.map(|line| format!("{at}: {line}")));
    }
    let known = [
        "core: planted = []",
        "tests: planted = [\"holdfast-core/planted\"]",
        "tests: name = \"planted\"",
        "tests: path = \"planted/main.rs\"",
        "tests: required-features = [\"planted\"]",
    ];
    assert_eq!(asked, known);
}

/// What the law is read with sees what it should.
#[test]
fn code_is_read_without_comments_and_checks() {
    let text = "//! crate::above\nuse crate::plan::Day;\n#[cfg(test)]\nmod tests;\nfn a() -> crate::load::Able {}\n\
                #[cfg(test)]\nmod more {\n    use crate::door;\n}\nuse crate::{care, clock};\n";
    let seen: Vec<String> = named(&code(text)).into_iter().collect();
    // A list in braces has no name of its own, and so fits no table.
    assert_eq!(seen, ["", "load", "plan"]);
    assert_eq!(check_modules(text), ["tests"]);
}
