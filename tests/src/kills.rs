//! The real program, killed at random moments while it logs. SIGKILL stands for a killed app: what a
//! power cut does to the disk is another matter.

use std::collections::BTreeSet;
use std::fs;
use std::io::{BufRead, BufReader, Write};
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Duration;

use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

use crate::athlete::Athlete;
use crate::{SMALL_PLAN, program, run};

/// Kills the program so many times, and holds every entry that it said was saved against its journal.
///
/// # Panics
/// When an acknowledged entry is lost, when the numbering has a hole, and when too few kills hit a
/// session that logged to say anything.
pub fn everything_acknowledged_survives(kills: u32, seed: u64) {
    let ana = Athlete::with_plan(SMALL_PLAN);
    let mut chance = ChaCha8Rng::seed_from_u64(seed);
    let mut acknowledged: BTreeSet<u64> = BTreeSet::new();
    let mut killed_while_logging = 0;
    for kill in 0..kills {
        let before = acknowledged.len();
        session_until_killed(ana.home(), chance.random_range(1_000..60_000), &mut acknowledged);
        killed_while_logging += u32::from(acknowledged.len() > before);
        if kill % 20 == 19 || kill + 1 == kills {
            let there = journal(ana.home(), &ana.folder().join(format!("export-{kill}")));
            let lost: Vec<&u64> = acknowledged.difference(&there).collect();
            assert!(lost.is_empty(), "lost after kill {kill}, seed {seed}: {lost:?}");
            // Numbers run on without a hole.
            let highest = there.last().copied().unwrap_or(0);
            assert_eq!(there.len() as u64, highest, "a hole in the journal, seed {seed}");
        }
    }
    println!(
        "{} entries acknowledged in {kills} sessions, {killed_while_logging} killed while logging",
        acknowledged.len()
    );
    assert!(
        killed_while_logging * 4 > kills,
        "only {killed_while_logging} kills hit a session that logged"
    );
}

/// Logs and corrects sets through the program's own prompt until it is killed after some
/// microseconds of logging. Collects the numbers it said were saved.
fn session_until_killed(home: &Path, micros: u64, acknowledged: &mut BTreeSet<u64>) {
    let mut child = Command::new(program())
        .arg("--home")
        .arg(home)
        .args(["session", "--day", "Any evening"])
        .env_remove("HOLDFAST_LANG")
        .env("LC_ALL", "C")
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    let mut stdin = child.stdin.take().unwrap();
    let typing = std::thread::spawn(move || {
        // Sets, an undo, windows, holds, and the session's end with its leaf; then the next kill's
        // session begins afresh.
        let lines = "50 x 8\n60 x 6\nundo\n60 x 6\n70 x 5\n15 9\n10 9\n15 9\n10 9\n10.5 11\nheld 120 95\n11 11\n7\n";
        let _ = stdin.write_all(lines.as_bytes());
        // Kept open: the end of the input would end the program before the kill.
        stdin
    });
    let mut out = BufReader::new(child.stdout.take().unwrap());
    let mut line = String::new();
    let mut killer = None;
    while out.read_line(&mut line).unwrap_or(0) > 0 {
        // The prompt's mark may stand before the first answer.
        let number = line.split("saved ").nth(1).and_then(|rest| rest.split(':').next());
        acknowledged.extend(number.and_then(|number| number.trim().parse::<u64>().ok()));
        if killer.is_none() && line.contains("`quit` leaves the session open") {
            let id = child.id();
            killer = Some(std::thread::spawn(move || {
                std::thread::sleep(Duration::from_micros(micros));
                // It may have ended by itself by now.
                let _ = Command::new("kill")
                    .args(["-9", &id.to_string()])
                    .stderr(Stdio::null())
                    .status();
            }));
        }
        line.clear();
    }
    let _ = child.kill();
    let _ = child.wait();
    if let Some(killer) = killer {
        let _ = killer.join();
    }
    drop(typing.join());
}

/// The numbers in the device's own journal.
fn journal(home: &Path, export: &Path) -> BTreeSet<u64> {
    let device: serde_json::Value =
        serde_json::from_slice(&fs::read(home.join("device.json")).unwrap()).unwrap();
    assert!(device["device"].is_string());
    let exported = run(home, &["export", export.to_str().unwrap()], "");
    assert!(exported.fine, "{exported:?}");
    assert!(!exported.err.contains("damaged"), "a kill damaged the database: {}", exported.err);
    let lines = fs::read_to_string(export.join("journal.jsonl")).unwrap();
    let numbers = lines.lines().filter_map(|line| {
        let entry: serde_json::Value = serde_json::from_str(line).ok()?;
        // The coach's three entries are here too; an athlete's are all but those.
        let of_coach =
            entry["k"] == "plan" || entry["k"] == "admit" || entry["body"]["role"] == "coach";
        (!of_coach).then(|| entry["n"].as_u64())?
    });
    numbers.collect()
}
