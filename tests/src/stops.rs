//! Stories of the real program, each told again and again with one file call of it failing.

use std::collections::BTreeSet;
use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

use crate::faults::{Fault, How, copy_all, run_under};
use crate::power::{Deed, Disk, Keeps, read_trace};
use crate::run;
pub use crate::stories::Story;
use crate::stories::{
    Scene, acknowledged, brought, halves, journal, log_until_killed, numbers, numbers_in,
};

/// Holds a journal in which a tap was cut in two against the check for halves: what a program would leave that commits
/// its parts apart.
///
/// # Panics
/// When a whole one has halves, or a cut one has none.
pub fn a_tap_cut_in_two_is_seen() {
    let scene = Scene::set(Story::Session);
    let (root, home) = (scene.folder.path(), scene.folder.path().join(scene.home));
    let args = scene.args(root);
    let args: Vec<&str> = args.iter().skip(2).map(String::as_str).collect();
    let ran = run(&home, &args, Story::Session.input());
    assert!(ran.fine, "{ran:?}");
    let whole = journal(&home, &root.join("export"));
    assert_eq!(halves(&whole), Vec::<String>::new());
    let side = whole.iter().rposition(|entry| entry["k"] == "hold").unwrap();
    let mut cut = whole;
    cut.remove(side);
    assert_eq!(halves(&cut).len(), 1, "{cut:?}");
}

/// Tells a story once undisturbed, then with one call of it failing: at most so many calls, spread over
/// all of them, each in every way.
///
/// # Panics
/// When anything saved before, or said to be saved, is not there afterwards; when the home does not open;
/// and when the story cannot be told to its end after that.
pub fn every_call(library: &Path, story: Story, most: u64) {
    let scene = Scene::set(story);
    let told = |fault: Fault<'_>, name: &str| -> (PathBuf, crate::Ran, u64) {
        let at = scene.folder.path().with_extension(name);
        let _ = fs::remove_dir_all(&at);
        copy_all(scene.folder.path(), &at);
        let args = scene.args(&at);
        let args: Vec<&str> = args.iter().map(String::as_str).collect();
        let (ran, calls) = run_under(library, &at, &args, story.input(), fault);
        (at, ran, calls)
    };
    let none = Fault { at: 0, how: How::Before, kinds: None };
    let (at, ran, calls) = told(none, "whole");
    assert!(ran.fine, "{story:?}: {ran:?}");
    let _ = fs::remove_dir_all(&at);
    let step = calls.div_ceil(most).max(1);
    let mut points = 0;
    for how in How::ALL {
        for number in (1..=calls).step_by(step as usize) {
            let fault = Fault { at: number, how, kinds: None };
            let (at, ran, _) = told(fault, "told");
            let home = at.join(scene.home);
            let place = || format!("{story:?}, call {number} of {calls}, {how:?}: {ran:?}");
            let again = scene.args(&at);
            let again: Vec<&str> = again.iter().map(String::as_str).collect();
            let input = if story == Story::Session { "quit\n" } else { "" };
            let after = run(&home, &again[2..], input);
            // Somebody who has started stays so.
            let fine = after.fine || (story == Story::Start && after.err.contains("already"));
            assert!(fine, "{}\nafterwards: {after:?}", place());
            let entries = journal(&home, &at.join("export"));
            let there = numbers_in(&entries);
            let wanted: BTreeSet<u64> =
                scene.before.union(&acknowledged(&ran.out)).copied().collect();
            let lost: Vec<&u64> = wanted.difference(&there).collect();
            assert!(lost.is_empty(), "lost {lost:?}: {}", place());
            assert_eq!(halves(&entries), Vec::<String>::new(), "{}", place());
            if story == Story::Bring || story == Story::Publish {
                let brought = brought(&home, &at.join("carrier"));
                assert!(there.is_subset(&brought), "{there:?} of {brought:?}: {}", place());
            }
            if story == Story::Join {
                let shown = run(&home, &["today", "--json"], "");
                assert!(shown.out.contains("Small block"), "no plan: {}", place());
                // What a member logs reaches the carrier: one who never joined would bring nothing.
                let brought = fs::read_dir(at.join("carrier")).unwrap();
                assert!(brought.count() >= 2, "not in the crew: {}", place());
            }
            let _ = fs::remove_dir_all(&at);
            points += 1;
        }
    }
    println!("{story:?}: {calls} calls, {points} of them failed, nothing lost");
}

/// Lets every read of a sound home fail, one after the other: that is the disk's error, to be told, and
/// no damage: the database stays where it is, with all that is in it.
///
/// # Panics
/// When a database is set aside, or anything is gone afterwards.
pub fn every_read(library: &Path, most: u64) {
    let scene = Scene::set(Story::Bring);
    let at = scene.folder.path();
    let home = at.join(scene.home);
    let args = ["--home", home.to_str().unwrap(), "verify"];
    let read = |number| {
        let fault = Fault { at: number, how: How::Eio, kinds: Some("read") };
        run_under(library, at, &args, "", fault)
    };
    let (whole, calls) = read(0);
    assert!(whole.fine, "{whole:?}");
    let (mut told, mut points) = (0, 0);
    for number in (1..=calls).step_by(calls.div_ceil(most).max(1) as usize) {
        let (ran, _) = read(number);
        let names = fs::read_dir(&home).unwrap().map(|file| file.unwrap().file_name());
        let aside = names.filter(|name| name.to_string_lossy().contains(".damaged"));
        assert_eq!(aside.count(), 0, "read {number} of {calls}: {ran:?}");
        told += u32::from(!ran.fine && ran.err.starts_with("Error: "));
        points += 1;
    }
    assert_eq!(numbers(&home, &at.join("export")), scene.before);
    println!("{calls} reads, {points} of them failed: {told} told, no database set aside");
}

/// Turns bits, one at a time, in every file of a home that was not closed: whatever it hits, every entry
/// is there afterwards.
///
/// # Panics
/// When an entry is gone, or the home does not open.
pub fn bit_flips(count: u64, seed: u64) {
    let scene = Scene::set(Story::Session);
    let home = scene.folder.path().join(scene.home);
    // Something that no leaf holds yet, and that the database has in its log alone.
    log_until_killed(&home, "70 x 5\n15 9\n", 2);
    assert!(fs::metadata(home.join("holdfast.db-wal")).unwrap().len() > 0);
    let whole = scene.folder.path().join("whole");
    copy_all(&home, &whole);
    let all = numbers(&whole, &scene.folder.path().join("export"));
    let mut chance = ChaCha8Rng::seed_from_u64(seed);
    let at = scene.folder.path().with_extension("flipped");
    let mut repaired = 0;
    for flip in 0..count {
        let _ = fs::remove_dir_all(&at);
        copy_all(&home, &at);
        let mut files = Vec::new();
        files_below(&at, &mut files);
        files.retain(|(_, size)| *size > 0);
        files.sort();
        // Each file as often as any other, however small.
        let (path, size) = &files[chance.random_range(0..files.len())];
        let bit = chance.random_range(0..size * 8);
        let mut bytes = fs::read(path).unwrap();
        bytes[(bit / 8) as usize] ^= 1 << (bit % 8);
        fs::write(path, bytes).unwrap();
        let place = || format!("flip {flip} of seed {seed}: bit {bit} of {}", path.display());
        // A command that looks at nothing more than it needs, and then all there is.
        for args in [&["today"][..], &["verify"]] {
            let ran = run(&at, args, "");
            assert!(ran.fine || args != ["verify"], "{}: {ran:?}", place());
            repaired += u32::from(ran.err.contains("Repaired") || ran.out.contains("restored"));
        }
        let there = numbers(&at, &at.join("export"));
        let lost: Vec<&u64> = all.difference(&there).collect();
        assert!(lost.is_empty(), "lost {lost:?}: {}", place());
    }
    let _ = fs::remove_dir_all(&at);
    println!(
        "{count} bits turned, seed {seed}: {repaired} times something was put right, nothing lost"
    );
}

fn files_below(folder: &Path, found: &mut Vec<(PathBuf, u64)>) {
    for file in fs::read_dir(folder).unwrap() {
        let file = file.unwrap();
        let about = file.metadata().unwrap();
        if about.is_dir() {
            files_below(&file.path(), found);
        } else {
            found.push((file.path(), about.len()));
        }
    }
}

/// Tells a story once, and cuts the power everywhere in it: at most so many moments, each with nothing,
/// everything and some of what was not flushed. `planted` makes of what was done what a program with a fault
/// would have done. Gives what was lost first, or how many states were held.
///
/// # Panics
/// When the story cannot be told.
pub fn power_cuts(
    library: &Path,
    story: Story,
    most: usize,
    seed: u64,
    planted: impl Fn(Vec<Deed>) -> Vec<Deed>,
) -> Result<u64, String> {
    let scene = Scene::set(story);
    let root = scene.folder.path();
    let trace = root.with_extension("trace");
    let _ = fs::remove_file(&trace);
    let mut disk = Disk::with(root);
    let args = scene.args(root);
    let mut command = Command::new(crate::program());
    command.args(&args).env("LC_ALL", "C").env("TZ", "UTC").env_remove("HOLDFAST_LANG");
    command.env("LD_PRELOAD", library).env("FAULTS_ROOT", root).env("FAULTS_TRACE", &trace);
    let mut child = command.stdin(Stdio::piped()).stdout(Stdio::piped()).spawn().unwrap();
    child.stdin.take().unwrap().write_all(story.input().as_bytes()).unwrap();
    let ran = child.wait_with_output().unwrap();
    assert!(ran.status.success(), "{story:?}: {ran:?}");
    let deeds = planted(read_trace(&trace));
    fs::remove_file(&trace).unwrap();
    // A mapped file that a full disk cannot back ends the program.
    let mapped = |deed: &&Deed| matches!(deed, Deed::Create(path) if path.to_string_lossy().ends_with("-shm"));
    assert!(!deeds.iter().any(|deed| mapped(&deed)), "{story:?}: a file is mapped");
    let mut chance = ChaCha8Rng::seed_from_u64(seed);
    let every = deeds.len().div_ceil(most).max(1);
    let mut said = String::new();
    let mut states = 0;
    let left = root.with_extension("left");
    for (index, deed) in deeds.iter().enumerate() {
        disk.does(deed);
        if let Deed::Said(text) = deed {
            said.push_str(text);
        }
        if index % every != 0 && index + 1 != deeds.len() {
            continue;
        }
        for keeps in [Keeps::Nothing, Keeps::Everything, Keeps::Some] {
            let _ = fs::remove_dir_all(&left);
            disk.left(root, &left, keeps, &mut chance);
            states += 1;
            let wanted: BTreeSet<u64> = scene.before.union(&acknowledged(&said)).copied().collect();
            let home = left.join(scene.home);
            let place =
                format!("{story:?}, deed {index} of {}, {keeps:?}, seed {seed}", deeds.len());
            let started = story != Story::Start || said.contains("is set up for");
            if !started {
                continue;
            }
            let ran = run(&home, &["verify"], "");
            if !ran.fine {
                return Err(format!("{place}: {ran:?}"));
            }
            let entries = journal(&home, &left.join("export"));
            let there = numbers_in(&entries);
            let lost: Vec<&u64> = wanted.difference(&there).collect();
            let halves = halves(&entries);
            if !lost.is_empty() || !halves.is_empty() {
                return Err(format!("{place}: lost {lost:?}, halves {halves:?}"));
            }
        }
    }
    let _ = fs::remove_dir_all(&left);
    println!("{story:?}: {} deeds, {states} power cuts, seed {seed}: nothing lost", deeds.len());
    Ok(states)
}

/// Tells a story with three programs at the same moment.
///
/// # Panics
/// When one of them fails, or an entry that was there, or that one said was saved, is gone.
pub fn three_at_once(story: Story) {
    let scene = Scene::set(story);
    let root = scene.folder.path();
    let args = scene.args(root);
    let args: Vec<&str> = args.iter().map(String::as_str).collect();
    let home = root.join(scene.home);
    // One session at a time ends; the others begin another.
    let input = if story == Story::Session { "50 x 8\nquit\n" } else { "" };
    let told: Vec<crate::Ran> = std::thread::scope(|scope| {
        let one = || scope.spawn(|| run(&home, &args[2..], input));
        let all = [one(), one(), one()];
        all.map(|one| one.join().unwrap()).into()
    });
    let mut wanted = scene.before.clone();
    for ran in &told {
        let fine = ran.fine || (story == Story::Start && ran.err.contains("already"));
        assert!(fine, "{story:?}: {told:?}");
        let saved = acknowledged(&ran.out);
        assert!(wanted.is_disjoint(&saved) || saved.is_subset(&scene.before), "{story:?}: twice");
        wanted.extend(saved);
    }
    if story == Story::Start {
        assert_eq!(told.iter().filter(|ran| ran.fine).count(), 1, "{told:?}");
    }
    let there = numbers(&home, &root.join("export"));
    assert!(wanted.is_subset(&there), "{story:?}: {wanted:?} in {there:?}");
    println!("{story:?}: three at once, nothing lost");
}
