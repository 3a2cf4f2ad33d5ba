//! How large the library is, and what a call costs: all in one run, so that figures compare.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::bindings::{self, library_folder, library_name};
use crate::kotlin::{self, maven};
use crate::steps::{Done, cargo_command, copy, run, step, target};
use crate::swift::{self, swift};

const ROUNDS: usize = 3;
const CALLS: [(&str, f64, &str); 3] =
    [("empty", 1.0, "ns"), ("set", 1e3, "us"), ("screen", 1e3, "us")];

/// Measures everything and prints it as the tables of `docs/bindings.md`.
#[allow(clippy::print_stdout, reason = "the figures are what it is for")]
pub(crate) fn all() -> Done {
    step("tools", || kotlin::tools().and_then(|()| swift::tools()))?;
    let surface = bindings::generate()?;
    let mut sizes = String::new();
    step("library for phones", || {
        let named = library("named", "none", &surface)?;
        let stripped = library("mobile", "symbols", &surface)?;
        sizes = sized(&named, &stripped)?;
        Ok(())
    })?;
    let mobile = library_folder("mobile");
    let mut taken: BTreeMap<&str, Vec<[f64; 3]>> = BTreeMap::new();
    for round in 1..=ROUNDS {
        step(&format!("calls, round {round} of {ROUNDS}"), || {
            for (language, mut command) in peers(&mobile) {
                taken.entry(language).or_default().push(calls(&mut command)?);
            }
            Ok(())
        })?;
    }
    let mut frames = String::new();
    step("frames", || {
        frames = drawn(&mobile)?;
        Ok(())
    })?;
    println!("{sizes}\n{}\n{frames}", table(&taken));
    Ok(())
}

/// The three programs that measure the same calls.
fn peers(library: &Path) -> [(&'static str, Command); 3] {
    let mut core = cargo_command();
    core.args(["bench", "--quiet", "--locked", "--package", "holdfast-tests", "--bench", "calls"]);
    core.args(["--profile", "mobile"]);
    let mut kotlin = maven(library);
    kotlin.args(["--projects", "kit", "--also-make", "test", "-Dtest=Calls"]);
    kotlin.args(["-Dsurefire.useFile=false", "-Dsurefire.failIfNoSpecifiedTests=false"]);
    let mut swift = swift("run", library);
    swift.args(["--quiet", "-c", "release", "Calls"]);
    [("core", core), ("Kotlin", kotlin), ("Swift", swift)]
}

/// What touches cost up to the drawn screen: every line that begins with `frames:`.
fn drawn(library: &Path) -> Result<String, String> {
    let mut maven = maven(library);
    maven.args(["--projects", "ui", "--also-make", "test", "-Dtest=Frames"]);
    maven.args(["-Dsurefire.useFile=false", "-Dsurefire.failIfNoSpecifiedTests=false"]);
    let output = maven.output().map_err(|error| error.to_string())?;
    let said = String::from_utf8_lossy(&output.stdout);
    let lines: Vec<&str> = said.lines().filter_map(|line| line.split("frames: ").nth(1)).collect();
    if lines.is_empty() {
        return Err(format!("{maven:?} measured nothing:\n{said}"));
    }
    Ok(lines.join("\n"))
}

/// Reads `calls: empty 1 ns, set 2 ns, screen 3 ns` out of what a program says.
fn calls(command: &mut Command) -> Result<[f64; 3], String> {
    let output = command.output().map_err(|error| error.to_string())?;
    let said = String::from_utf8_lossy(&output.stdout);
    let line = said.lines().find_map(|line| line.split("calls: ").nth(1));
    let figures: Vec<f64> = line
        .into_iter()
        .flat_map(|line| line.split_whitespace().filter_map(|word| word.parse().ok()))
        .collect();
    figures.try_into().map_err(|_| {
        let why = String::from_utf8_lossy(&output.stderr);
        format!("{command:?} measured nothing:\n{said}{why}")
    })
}

fn table(taken: &BTreeMap<&str, Vec<[f64; 3]>>) -> String {
    let middle = |language: &str, call: usize| {
        let mut figures: Vec<f64> = taken[language].iter().map(|found| found[call]).collect();
        figures.sort_by(f64::total_cmp);
        figures[figures.len() / 2]
    };
    let mut text = String::from("| | core | Kotlin | Swift |\n|---|---|---|---|\n");
    for (call, (name, scale, unit)) in CALLS.iter().enumerate() {
        let core = middle("core", call);
        let cell = |language: &str| {
            let figure = middle(language, call);
            format!("{:.0} {unit} ({:.2} x)", figure / scale, figure / core)
        };
        text += &format!(
            "| {name} | {:.0} {unit} | {} | {} |\n",
            core / scale,
            cell("Kotlin"),
            cell("Swift")
        );
    }
    text
}

/// The library as phones carry it, or the same with its symbols left in.
fn library(kind: &str, strip: &str, surface: &str) -> Result<PathBuf, String> {
    let mut build = cargo_command();
    build.args(["build", "--package", "holdfast-ffi", "--profile", "mobile", "--locked"]);
    run(build.env("CARGO_PROFILE_MOBILE_STRIP", strip).env(bindings::SURFACE, surface))?;
    let kept = library_folder(kind).join(library_name());
    copy(&target().join("mobile").join(library_name()), &kept)?;
    Ok(kept)
}

/// The sizes, and what takes the room, by the symbols' names.
fn sized(named: &Path, stripped: &Path) -> Result<String, String> {
    let bytes = |path: &Path| {
        fs::metadata(path).map(|metadata| metadata.len()).map_err(|error| error.to_string())
    };
    let output = Command::new("nm").args(["-S", "-C", "--defined-only"]).arg(named).output();
    let output = output.map_err(|error| format!("nm (binutils) cannot be started: {error}"))?;
    let mut rooms: BTreeMap<&str, u64> = BTreeMap::new();
    for line in String::from_utf8_lossy(&output.stdout).lines() {
        let mut words = line.splitn(4, ' ');
        let (_, size, kind, name) = (words.next(), words.next(), words.next(), words.next());
        let size = size.and_then(|size| u64::from_str_radix(size, 16).ok());
        if let (Some(size), Some(kind), Some(name)) = (size, kind, name)
            && !kind.eq_ignore_ascii_case("b")
        {
            *rooms.entry(room(name)).or_default() += size;
        }
    }
    let mut rooms: Vec<_> = rooms.into_iter().collect();
    rooms.sort_by_key(|(_, size)| std::cmp::Reverse(*size));
    let whole = bytes(stripped)?;
    let mut text = format!("stripped: {:.2} MB\n\n| what | kB |\n|---|---|\n", whole as f64 / 1e6);
    let mut rest = whole;
    for (name, size) in rooms {
        rest = rest.saturating_sub(size);
        text += &format!("| {name} | {} |\n", size / 1000);
    }
    text +=
        &format!("| tables without names: unwinding, relocations, strings | {} |\n", rest / 1000);
    Ok(text)
}

/// Whose a symbol is. Generic code counts for whoever's name it bears first.
fn room(name: &str) -> &'static str {
    let first = name.trim_start_matches(['<', '&', '*']);
    let of = |prefix: &str| first.starts_with(prefix);
    if !name.contains("::") {
        return if name.contains("uniffi") || name.contains("UNIFFI") {
            "UniFFI's scaffolding"
        } else if name.starts_with("anon.") || name.starts_with(".L") || name.starts_with("switch.")
        {
            "constants of Rust code"
        } else {
            "SQLite and the C runtime"
        };
    }
    if name.contains("uniffi") {
        "UniFFI's scaffolding"
    } else if name.contains("holdfast_core") {
        "Holdfast's core"
    } else if ["core::", "alloc::", "std::", "hashbrown"].iter().any(|found| of(found)) {
        "Rust's standard library"
    } else {
        "other crates: toml, serde, chrono, rusqlite, sha2 ..."
    }
}
