//! Fuzzers: inputs drawn by libFuzzer, guided by what of the code each one reaches, on stable Rust.
//!
//! They stand in `fuzz/` as `cargo fuzz` has them, in a workspace of their own. What a nightly toolchain adds there are sanitizers;
//! counting what is reached is a pass that every toolchain has.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::Instant;

use crate::steps::{Done, cargo_command, install, is_there, root, run, step, target};

/// Has the compiler count what is reached and show libFuzzer what is compared, as `cargo fuzz` does.
const FLAGS: &str = "-Dwarnings --cfg fuzzing -Cpasses=sancov-module \
                     -Cllvm-args=-sanitizer-coverage-level=4 \
                     -Cllvm-args=-sanitizer-coverage-inline-8bit-counters \
                     -Cllvm-args=-sanitizer-coverage-pc-table \
                     -Cllvm-args=-sanitizer-coverage-trace-compares";

/// New inputs for each target in a check.
const FRESH: u64 = 2_000;
/// The most bytes of all kept inputs.
const MOST_KEPT: u64 = 1024 * 1024;

/// What a long run asks for.
#[derive(Debug, clap::Args)]
pub(crate) struct Asked {
    /// The target; all when left out
    target: Option<String>,
    /// New inputs for each target
    #[arg(long, default_value_t = 1_000_000)]
    inputs: u64,
    /// Ends a target after so many seconds, however many inputs that were
    #[arg(long)]
    seconds: Option<u64>,
    /// Afterwards keeps in fuzz/corpus the least inputs that reach all that was reached
    #[arg(long)]
    keep: bool,
    /// Runs one file again, such as one in fuzz/artifacts, and nothing else
    #[arg(long, requires = "target", conflicts_with_all = ["inputs", "seconds", "keep"])]
    file: Option<PathBuf>,
}

/// Runs what is kept of each target, and some new inputs.
pub(crate) fn check() -> Done {
    let targets = built()?;
    step("fuzzers", || {
        kept_is_small(&targets)?;
        targets.iter().try_for_each(|target| short(target))
    })
}

/// Runs targets for long.
pub(crate) fn long(asked: &Asked) -> Done {
    let all = built()?;
    let wanted = |target: &&String| asked.target.as_ref().is_none_or(|name| name == *target);
    let targets: Vec<&String> = all.iter().filter(wanted).collect();
    if targets.is_empty() {
        return Err(format!("no such target; there are {}", all.join(", ")));
    }
    for target in targets {
        if let Some(file) = &asked.file {
            return run(fuzzer(target).arg(file));
        }
        step(target, || {
            let found = made(found(target))?;
            let mut fuzzer = fuzzer(target);
            fuzzer.arg(&found).arg(kept(target)).arg("-print_final_stats=1");
            fuzzer.arg(format!("-runs={}", inputs_kept(target)?.0 + asked.inputs));
            fuzzer.args(asked.seconds.map(|seconds| format!("-max_total_time={seconds}")));
            run(&mut fuzzer)?;
            if asked.keep { keep(target, &found) } else { Ok(()) }
        })?;
    }
    Ok(())
}

/// Builds all targets, and says which there are.
fn built() -> Result<Vec<String>, String> {
    step("C++ compiler", compiler)?;
    let host = host()?;
    step("fuzzers built", || {
        let mut cargo = cargo_command();
        cargo.args(["build", "--release", "--locked", "--manifest-path", "fuzz/Cargo.toml"]);
        // With a target named, what runs while it is built is left as it is.
        cargo.args(["--target", &host, "--target-dir"]).arg(folder());
        run(cargo.env("RUSTFLAGS", FLAGS))
    })?;
    targets()
}

/// LibFuzzer is C++.
fn compiler() -> Done {
    let named = std::env::var("CXX").unwrap_or_else(|_| "c++".into());
    if is_there(&named, "--version") {
        return Ok(());
    }
    install(&["g++"], "install a C++ compiler, then run this again")
}

/// The system that cargo builds for, as its compiler calls it.
fn host() -> Result<String, String> {
    let mut rustc = Command::new("rustc");
    let said = rustc.arg("-vV").current_dir(root()).output();
    let said = said.map_err(|error| format!("rustc cannot be started: {error}"))?;
    let said = String::from_utf8_lossy(&said.stdout).into_owned();
    let host = said.lines().find_map(|line| line.strip_prefix("host: "));
    host.map(str::to_owned).ok_or_else(|| "rustc does not say which system this is".into())
}

/// Names of targets, as `fuzz/Cargo.toml` has them.
fn targets() -> Result<Vec<String>, String> {
    let path = root().join("fuzz/Cargo.toml");
    let text = fs::read_to_string(&path).map_err(|error| format!("fuzz/Cargo.toml: {error}"))?;
    let table: toml::Table = text.parse().map_err(|error| format!("fuzz/Cargo.toml: {error}"))?;
    let bins = table.get("bin").and_then(|bins| bins.as_array()).into_iter().flatten();
    let names: Vec<String> =
        bins.filter_map(|bin| Some(bin.get("name")?.as_str()?.to_owned())).collect();
    if names.is_empty() { Err("fuzz/Cargo.toml names no target".into()) } else { Ok(names) }
}

/// Where they are built, apart from everything else: they are compiled otherwise.
fn folder() -> PathBuf {
    target().join("fuzz")
}

/// Inputs that are kept in the repository.
fn kept(target: &str) -> PathBuf {
    root().join("fuzz/corpus").join(target)
}

/// Inputs that a run on this machine found.
fn found(target: &str) -> PathBuf {
    folder().join("corpus").join(target)
}

/// A target's program with what holds for every run: ten seconds and 1 GiB an input, and a file for each that fails.
fn fuzzer(name: &str) -> Command {
    let at = folder().join(host().unwrap_or_default()).join("release").join(name);
    let failed = root().join("fuzz/artifacts").join(name);
    // Where it cannot be made, libFuzzer says so.
    let _ = fs::create_dir_all(&failed);
    let mut fuzzer = Command::new(at);
    fuzzer.current_dir(root()).args(["-timeout=10", "-rss_limit_mb=1024"]);
    fuzzer.arg(format!("-artifact_prefix={}/", failed.display()));
    let words = root().join("fuzz/dictionaries").join(format!("{name}.dict"));
    if words.exists() {
        fuzzer.arg(format!("-dict={}", words.display()));
    }
    fuzzer
}

/// How many inputs are kept, and their bytes.
fn inputs_kept(target: &str) -> Result<(u64, u64), String> {
    let folder = kept(target);
    let wrong = |error: std::io::Error| format!("{}: {error}", folder.display());
    let (mut inputs, mut bytes) = (0, 0);
    for file in fs::read_dir(&folder).map_err(wrong)? {
        bytes += file.and_then(|file| file.metadata()).map_err(wrong)?.len();
        inputs += 1;
    }
    if inputs == 0 { Err(format!("nothing is kept of {target}")) } else { Ok((inputs, bytes)) }
}

fn kept_is_small(targets: &[String]) -> Done {
    let sizes: Result<Vec<_>, _> = targets.iter().map(|target| inputs_kept(target)).collect();
    let bytes: u64 = sizes?.iter().map(|(_, bytes)| bytes).sum();
    if bytes <= MOST_KEPT {
        return Ok(());
    }
    Err(format!("fuzz/corpus has {bytes} bytes, and {MOST_KEPT} are enough: keep fewer"))
}

/// What is kept and some new inputs; what it prints is shown only where a law is broken.
fn short(target: &str) -> Done {
    let start = Instant::now();
    let found = made(folder().join("fresh").join(target))?;
    let runs = inputs_kept(target)?.0 + FRESH;
    let mut fuzzer = fuzzer(target);
    fuzzer.arg(&found).arg(kept(target)).arg(format!("-runs={runs}"));
    let output = fuzzer.output().map_err(|error| format!("{target} cannot be run: {error}"))?;
    // The new ones are of no use to the next check, which draws others.
    let _ = fs::remove_dir_all(&found);
    let said = String::from_utf8_lossy(&output.stderr);
    let done = said.lines().rev().find_map(|line| line.strip_prefix("Done ")?.split(' ').next());
    match done.and_then(|done| done.parse::<u64>().ok()) {
        Some(done) if output.status.success() && done >= runs => {
            eprintln!("   {target}: {done} inputs in {:.1} s", start.elapsed().as_secs_f64());
            Ok(())
        }
        _ => Err(format!(
            "{said}\n{target} ({}). The input is in fuzz/artifacts/{target}; see it again with \
             `cargo task fuzz {target} --file FILE`",
            output.status
        )),
    }
}

/// Replaces what is kept by the least inputs that reach what it reaches together with what was found.
fn keep(target: &str, found: &Path) -> Done {
    let least = folder().join("least").join(target);
    let _ = fs::remove_dir_all(&least);
    let least = made(least)?;
    run(fuzzer(target).arg("-merge=1").arg(&least).arg(kept(target)).arg(found))?;
    let (old, wrong) = (kept(target), |error: std::io::Error| format!("{target}: {error}"));
    fs::remove_dir_all(&old).map_err(wrong)?;
    let old = made(old)?;
    for file in fs::read_dir(&least).map_err(wrong)? {
        let file = file.map_err(wrong)?;
        fs::copy(file.path(), old.join(file.file_name())).map_err(wrong)?;
    }
    Ok(())
}

/// A folder, made where it is missing.
fn made(folder: PathBuf) -> Result<PathBuf, String> {
    fs::create_dir_all(&folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    Ok(folder)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A target that nobody runs checks nothing: each file is one, and each has something kept.
    #[test]
    fn every_target_is_named_and_has_something_kept() {
        let named = targets().unwrap();
        let files = fs::read_dir(root().join("fuzz/fuzz_targets")).unwrap();
        let mut files: Vec<PathBuf> = files.map(|file| file.unwrap().path()).collect();
        files.sort();
        let files = files.iter().map(|file| file.file_stem().unwrap().to_str().unwrap().to_owned());
        let mut sorted = named.clone();
        sorted.sort();
        assert_eq!(sorted, files.collect::<Vec<_>>());
        kept_is_small(&named).unwrap();
    }
}
