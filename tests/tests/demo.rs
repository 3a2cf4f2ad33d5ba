//! The demo's numbers against numbers worked out apart from the core, and its sameness.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::process::Command;

use holdfast_tests::{program, run};
use serde_json::Value;

/// Plays the demo in `stage` below a folder, so that what it prints does not depend on the folder.
fn play(folder: &Path, seed: &str) -> String {
    let played = Command::new(program())
        .args(["demo", "--dir", "stage", "--seed", seed])
        .env_remove("HOLDFAST_LANG")
        .env("LC_ALL", "C")
        .current_dir(folder)
        .output()
        .unwrap();
    assert!(played.status.success(), "{}", String::from_utf8_lossy(&played.stderr));
    String::from_utf8(played.stdout).unwrap()
}

fn files(folder: &Path, found: &mut BTreeMap<String, Vec<u8>>, root: &Path) {
    for file in fs::read_dir(folder).unwrap() {
        let path = file.unwrap().path();
        if path.is_dir() {
            files(&path, found, root);
        } else {
            let name = path.strip_prefix(root).unwrap().to_string_lossy().into_owned();
            found.insert(name, fs::read(&path).unwrap());
        }
    }
}

fn all_files(root: &Path) -> BTreeMap<String, Vec<u8>> {
    let mut found = BTreeMap::new();
    files(root, &mut found, root);
    // Where a home lies is another place each time, and sealing draws by itself: what is sealed shows on the board.
    let drawn = ["/place", ".leaf", "/holdfast.db"];
    found.retain(|name, _| !drawn.iter().any(|end| name.ends_with(end)));
    assert!(found.len() > 20, "{}", found.len());
    found
}

#[test]
fn one_seed_plays_one_demo_and_another_seed_another() {
    let folders =
        [tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap()];
    let [first, second, other] = [0, 1, 2].map(|index: usize| folders[index].path());
    let said = play(first, "5");
    // Twice in one place: the second plays over the first.
    play(second, "9");
    assert_eq!(play(second, "5"), said);
    assert!(all_files(first) == all_files(second), "the files differ");
    assert_ne!(play(other, "6"), said);
}

#[test]
fn the_demo_does_not_play_over_anything_else() {
    let folder = tempfile::tempdir().unwrap();
    fs::create_dir(folder.path().join("stage")).unwrap();
    fs::write(folder.path().join("stage/diary.txt"), "mine").unwrap();
    let refused = Command::new(program())
        .args(["demo", "--dir", "stage"])
        .env_remove("HOLDFAST_LANG")
        .env("LC_ALL", "C")
        .current_dir(folder.path())
        .output()
        .unwrap();
    assert!(!refused.status.success());
    let said = String::from_utf8(refused.stderr).unwrap();
    assert!(said.contains("holds no earlier demo") && said.contains("--dir"), "{said}");
    assert_eq!(fs::read(folder.path().join("stage/diary.txt")).unwrap(), b"mine");
}

/// A row of an exported table, by column.
type Row = BTreeMap<String, String>;

fn table(folder: &Path, name: &str) -> Vec<Row> {
    let mut sheet = csv::Reader::from_path(folder.join(format!("{name}.csv"))).unwrap();
    sheet.deserialize().map(|row| row.unwrap()).collect()
}

struct Played {
    folder: tempfile::TempDir,
    members: BTreeMap<String, Value>,
}

impl Played {
    fn new() -> Played {
        let folder = tempfile::tempdir().unwrap();
        play(folder.path(), "1");
        let coach = folder.path().join("stage/devices/maren");
        let export = folder.path().join("export");
        let exported = run(&coach, &["export", export.to_str().unwrap()], "");
        assert!(exported.fine, "{exported:?}");
        let names = ["Ines", "Wyatt", "Saoirse", "Bram", "Yuki", "Søren"];
        let page = |name: &&str| {
            let page = run(&coach, &["member", name, "--on", "2026-11-22", "--json"], "");
            assert!(page.fine, "{page:?}");
            ((*name).to_owned(), serde_json::from_str(&page.out).unwrap())
        };
        let members = names.iter().map(page).collect();
        Played { folder, members }
    }

    fn table(&self, name: &str) -> Vec<Row> {
        table(&self.folder.path().join("export"), name)
    }
}

/// Loads in thousandths of a unit from what was lifted a week before, by the rule of the plan in
/// plain arithmetic: a step of 2.5 kg (5 lb); 5 kg (10 lb) when the open set went four past its
/// target; none after a miss; never more than a tenth; rounded down to a step of the plates, which
/// is 2.5 kg (5 lb) on this kit's bars.
fn by_hand(last: &[(i64, i64)], asked: &[i64], pounds: bool) -> Vec<i64> {
    let [small, large] = if pounds { [5_000, 10_000] } else { [2_500, 5_000] };
    let missed = last.iter().zip(asked).any(|((_, reps), asked)| reps < asked);
    let earned = last.last().unwrap().1 >= asked.last().unwrap() + 4;
    let step = if missed {
        0
    } else if earned {
        large
    } else {
        small
    };
    let next = |(load, _): &(i64, i64)| (load + step).min(load * 11 / 10) / small * small;
    last.iter().map(next).collect()
}

#[test]
fn every_proposed_load_is_the_one_worked_out_by_hand() {
    let played = Played::new();
    let sets = played.table("sets");
    let mut checked = 0;
    for name in ["Ines", "Wyatt", "Saoirse"] {
        for (piece, asked) in [("Squat", &[8, 6, 5, 5][..]), ("Row", &[8, 8, 8])] {
            let mine: Vec<&Row> =
                sets.iter().filter(|row| row["member"] == name && row["piece"] == piece).collect();
            let mut dates: Vec<&String> = mine.iter().map(|row| &row["date"]).collect();
            dates.dedup();
            assert_eq!(dates.len(), 3, "{name} {piece}");
            let pounds = name == "Wyatt";
            let lifted = |date: &String| -> Vec<(i64, i64)> {
                let of_day = mine.iter().filter(|row| row["date"] == *date);
                let parse = |row: &&&Row| {
                    let load = row["load"].trim_end_matches(" kg").trim_end_matches(" lb");
                    let (whole, part) = load.split_once('.').unwrap_or((load, "0"));
                    let thousandths: i64 = format!("{part:0<3}").parse().unwrap();
                    (
                        whole.parse::<i64>().unwrap() * 1000 + thousandths,
                        row["reps"].parse().unwrap(),
                    )
                };
                of_day.map(|row| parse(&row)).collect()
            };
            for week in 1..3 {
                // The coach halved one step: that answer is checked by its words below.
                let next: Vec<i64> = lifted(dates[week]).iter().map(|(load, _)| *load).collect();
                let wanted = by_hand(&lifted(dates[week - 1]), asked, pounds);
                let ruled = name == "Ines" && piece == "Squat" && week == 2;
                if !ruled {
                    assert_eq!(next, wanted, "{name} {piece} week {}", week + 1);
                    checked += 1;
                }
            }
        }
    }
    assert_eq!(checked, 11);
}

#[test]
fn the_coach_halved_the_step_of_the_fastest_and_it_reached_her() {
    let played = Played::new();
    let journal = fs::read_to_string(played.folder.path().join("export/journal.jsonl")).unwrap();
    let rulings: Vec<Value> = journal
        .lines()
        .map(|line| serde_json::from_str::<Value>(line).unwrap())
        .filter(|entry| entry["k"] == "ruling")
        .collect();
    assert_eq!(rulings.len(), 1, "on the second Sunday, when there is progress to look at");
    let loads = rulings[0]["body"]["loads"].as_array().unwrap();
    let last = loads.last().unwrap().as_i64().unwrap();
    let ines = &played.members["Ines"]["lifts"].as_array().unwrap().clone();
    let squat = ines.iter().find(|lift| lift["exercise"] == "back-squat").unwrap();
    let heaviest: Vec<i64> = squat["points"]
        .as_array()
        .unwrap()
        .iter()
        .map(|squat| squat["heaviest"].as_i64().unwrap())
        .collect();
    // 60 kg, a step of 2.5 kg as no first set is an open one, then half of the next 5 kg earned, in units
    // of 10 ng.
    let kg = 100_000_000_000;
    assert_eq!(heaviest, [60 * kg, 62 * kg + kg / 2, 65 * kg]);
    assert_eq!(last, heaviest[2]);
}

/// Session load is RPE times minutes (Foster et al. 2001); volume load is reps times load. Both
/// summed here from the exported tables alone.
#[test]
fn session_and_volume_loads_are_the_sums_of_the_exported_rows() {
    let played = Played::new();
    let (sets, finishes) = (played.table("sets"), played.table("finishes"));
    for (name, page) in &played.members {
        for session in page["sessions"].as_array().unwrap() {
            let date = session["date"].as_str().unwrap();
            let of_day = |row: &&Row| row["member"] == *name && row["date"] == date;
            let volume: i64 = sets
                .iter()
                .filter(of_day)
                .map(|row| {
                    row["reps"].parse::<i64>().unwrap() * row["load_10ng"].parse::<i64>().unwrap()
                })
                .sum();
            assert_eq!(session["volume"], volume, "{name} {date}");
            let finish = finishes.iter().find(of_day).unwrap();
            let number = |column: &str| finish[column].parse::<u64>().unwrap();
            assert_eq!(session["load"], number("rpe_0_10") * number("minutes"), "{name} {date}");
        }
    }
}

#[test]
fn the_members_stories_are_on_the_board() {
    let played = Played::new();
    let first = |name: &str| {
        let attention = played.members[name]["attention"].as_array().unwrap();
        let first = &attention[0];
        (first["kind"].as_str().unwrap().to_owned(), first["text"].as_str().unwrap().to_owned())
    };
    assert_eq!(first("Bram"), ("pain".into(), "knee 5/10 in Back squat on Tue 10 Nov".into()));
    assert_eq!(first("Yuki").0, "stall");
    // Six evenings were planned, two trained.
    assert_eq!(
        first("Søren"),
        ("away".into(), "Last trained Fri 6 Nov; 4 planned days missed since".into())
    );
    assert_eq!(first("Saoirse").0, "options");
    assert_eq!(first("Ines").0, "progress");
    assert_eq!(first("Wyatt").0, "progress");
    assert!(first("Wyatt").1.contains("lb"), "{}", first("Wyatt").1);
    // Bram holds the second side 80 of 120 s: 200 s a stretch.
    let regions = played.members["Bram"]["regions"].as_array().unwrap();
    assert!(
        regions.iter().any(|found| found["region"] == "calves" && found["seconds"] == 200),
        "{regions:?}"
    );
}
