//! Stories of the real program: the scene each is told in, and what is to be found in it afterwards.

use std::collections::{BTreeMap, BTreeSet};
use std::fs::{self, OpenOptions};
use std::io::{BufRead, BufReader, Seek, SeekFrom, Write};
use std::path::Path;
use std::process::{Command, Stdio};

use rusqlite::Connection;
use serde_json::Value;

use crate::pairing::pair_by_hand;
use crate::{SMALL_PLAN, changed, run};

/// What is being done when a call fails.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Story {
    /// Sets, windows and a hold are logged, one is taken back, and the session ends.
    Session,
    /// A database with a bad page is opened, and built again.
    Rebuild,
    /// A log of a session that was killed goes to a carrier, and a plan comes from it.
    Bring,
    /// A device that has just joined gets the plan.
    Join,
    /// A coach publishes a changed plan.
    Publish,
    /// Somebody starts.
    Start,
}

impl Story {
    /// Each of them.
    pub const ALL: [Story; 6] =
        [Story::Session, Story::Rebuild, Story::Bring, Story::Join, Story::Publish, Story::Start];

    pub(crate) fn input(self) -> &'static str {
        match self {
            Story::Session => {
                "50 x 8\n60 x 6\nundo\n60 x 6\n70 x 5\n15 9\n10 9\n15 9\n10 9\n10.5 11\nheld 120 95\n11 11\n7\n"
            }
            _ => "",
        }
    }
}

/// A scene: a folder with all that a story needs, to be copied for each telling.
pub(crate) struct Scene {
    pub(crate) folder: tempfile::TempDir,
    pub(crate) home: &'static str,
    args: Vec<String>,
    /// What lies in the home's journal before.
    pub(crate) before: BTreeSet<u64>,
}

impl Scene {
    pub(crate) fn set(story: Story) -> Scene {
        let folder = tempfile::tempdir().unwrap();
        let at = folder.path();
        let fine = |home: &str, args: &[&str], input: &str| {
            let ran = run(&at.join(home), args, input);
            assert!(ran.fine, "{ran:?}");
        };
        let carrier = at.join("carrier");
        let carrier = carrier.to_str().unwrap();
        let plan = at.join("plan.toml");
        fs::write(&plan, SMALL_PLAN).unwrap();
        let plan = plan.to_str().unwrap();
        fine("coach", &["start", "--as", "coach", "--name", "Maren"], "");
        fine("coach", &["publish", plan, "--carrier", carrier], "");
        let home = match story {
            Story::Publish => "coach",
            Story::Start => "new",
            _ => {
                fine("ana", &["start", "--as", "athlete", "--name", "Ana"], "");
                pair_by_hand(&at.join("coach"), &at.join("ana"));
                if story != Story::Join {
                    fine("ana", &["exchange", "--carrier", carrier], "");
                    log_until_killed(&at.join("ana"), "50 x 8\n60 x 6\n", 2);
                }
                "ana"
            }
        };
        fs::write(plan, changed(SMALL_PLAN, "weeks = 2", "weeks = 3")).unwrap();
        if story == Story::Bring {
            fine("coach", &["publish", plan, "--carrier", carrier], "");
        }
        if story == Story::Rebuild {
            spoil(&at.join(home));
            // Only the damaged database has anything.
            fs::remove_file(at.join(home).join("tail.jsonl")).unwrap();
            fs::remove_dir_all(at.join(home).join("leaves")).unwrap();
        }
        let args: Vec<&str> = match story {
            Story::Session => vec!["session", "--plain", "--day", "Any evening"],
            Story::Rebuild => vec!["verify"],
            Story::Bring | Story::Join => vec!["exchange", "--carrier", "CARRIER"],
            Story::Publish => vec!["publish", "PLAN", "--carrier", "CARRIER"],
            Story::Start => vec!["start", "--as", "athlete", "--name", "Bo"],
        };
        let args = args.into_iter().map(str::to_owned).collect();
        let before = match story {
            Story::Rebuild => (1..=4).collect(),
            Story::Start => BTreeSet::new(),
            _ => numbers(&at.join(home), &at.join("before")),
        };
        let _ = fs::remove_dir_all(at.join("before"));
        Scene { folder, home, args, before }
    }

    /// The arguments for a telling in a folder.
    pub(crate) fn args(&self, at: &Path) -> Vec<String> {
        let place = |arg: &String| match arg.as_str() {
            "CARRIER" => at.join("carrier").to_str().unwrap().to_owned(),
            "PLAN" => at.join("plan.toml").to_str().unwrap().to_owned(),
            _ => arg.clone(),
        };
        let home = at.join(self.home).to_str().unwrap().to_owned();
        ["--home".to_owned(), home].into_iter().chain(self.args.iter().map(place)).collect()
    }
}

/// Logs in a session, and kills it once so many sets were said to be saved.
pub(crate) fn log_until_killed(home: &Path, lines: &str, saved: usize) {
    let mut command = Command::new(crate::program());
    command.arg("--home").arg(home).args(["session", "--plain", "--day", "Any evening"]);
    command.env("LC_ALL", "C").env_remove("HOLDFAST_LANG").stdin(Stdio::piped());
    let mut child = command.stdout(Stdio::piped()).spawn().unwrap();
    // Kept open: the end of the input would end the session first.
    let mut input = child.stdin.take().unwrap();
    input.write_all(lines.as_bytes()).unwrap();
    let said = BufReader::new(child.stdout.take().unwrap()).lines();
    let said = said.map(Result::unwrap).filter(|line| !acknowledged(line).is_empty()).take(saved);
    assert_eq!(said.count(), saved);
    child.kill().unwrap();
    child.wait().unwrap();
}

/// Makes the home's database damaged: a page of an index is overwritten, after an end that was not tidy.
fn spoil(home: &Path) {
    let path = home.join("holdfast.db");
    let settled = Connection::open(&path).unwrap();
    settled.execute_batch("PRAGMA wal_checkpoint(TRUNCATE)").unwrap();
    let root = "SELECT rootpage FROM sqlite_master WHERE name = 'record_by_subject'";
    let page: u64 = settled.query_row(root, [], |row| row.get::<_, i64>(0)).unwrap() as u64;
    settled.close().unwrap();
    let mut file = OpenOptions::new().write(true).open(path).unwrap();
    file.seek(SeekFrom::Start((page - 1) * 4096)).unwrap();
    file.write_all(&[0x5a; 4096]).unwrap();
}

/// The entries of a home's own journal, as an undisturbed export has them.
pub(crate) fn journal(home: &Path, export: &Path) -> Vec<Value> {
    let _ = fs::remove_dir_all(export);
    let exported = run(home, &["export", export.to_str().unwrap()], "");
    assert!(exported.fine, "{exported:?}");
    let own: Value = serde_json::from_slice(&fs::read(home.join("device.json")).unwrap()).unwrap();
    let lines = fs::read_to_string(export.join("journal.jsonl")).unwrap();
    let coach = own["profile"]["role"] == "coach";
    let entries = lines.lines().map(|line| serde_json::from_str(line).unwrap());
    let of_coach = |entry: &Value| entry["k"] == "plan" || entry["body"]["role"] == "coach";
    entries.filter(|entry| of_coach(entry) == coach).collect()
}

pub(crate) fn numbers_in(entries: &[Value]) -> BTreeSet<u64> {
    entries.iter().filter_map(|entry| entry["n"].as_u64()).collect()
}

/// The numbers of the entries in a home's own journal.
pub(crate) fn numbers(home: &Path, export: &Path) -> BTreeSet<u64> {
    numbers_in(&journal(home, export))
}

/// Taps of which a part alone is there: both sides of a stretch are logged with one tap, and so are both
/// readings beside it.
pub(crate) fn halves(entries: &[Value]) -> Vec<String> {
    let mut sides: BTreeMap<String, u32> = BTreeMap::new();
    for entry in entries.iter().filter(|entry| entry["k"] == "hold" || entry["k"] == "range") {
        // Entries of one tap follow its first by one each, and taps by 128.
        let tap = entry["hlc"]["count"].as_u64().unwrap() / 128;
        *sides.entry(format!("{} {} {tap}", entry["k"], entry["hlc"]["ms"])).or_default() += 1;
    }
    sides.into_iter().filter(|(_, sides)| *sides != 2).map(|(tap, _)| tap).collect()
}

/// The numbers of a device's entries that lie in a carrier.
pub(crate) fn brought(home: &Path, carrier: &Path) -> BTreeSet<u64> {
    let own: Value = serde_json::from_slice(&fs::read(home.join("device.json")).unwrap()).unwrap();
    let mut numbers = BTreeSet::new();
    for file in fs::read_dir(carrier).unwrap() {
        let text = fs::read_to_string(file.unwrap().path()).unwrap_or_default();
        let lines: Vec<Value> =
            text.lines().filter_map(|line| serde_json::from_str(line).ok()).collect();
        if lines.first().is_some_and(|header| header["device"] == own["device"]) {
            numbers.extend(numbers_in(&lines));
        }
    }
    numbers
}

/// The numbers that a run said were saved.
pub(crate) fn acknowledged(out: &str) -> BTreeSet<u64> {
    let number = |line: &str| -> Option<u64> {
        line.split("saved ").nth(1)?.split(':').next()?.trim().parse().ok()
    };
    out.lines().filter_map(number).collect()
}
