//! The numbers of reference libraries that checks hold the core against, made again.
//!
//! Every `tests/reference/<topic>.py` prints JSON, and what it printed is kept beside it. A number
//! that no longer comes out of its script is a number nobody can check.

mod agree;

use std::collections::BTreeSet;
use std::fs;
use std::path::PathBuf;
use std::process::Command;

use serde_json::Value;

use crate::python::Environment;
use crate::steps::{Done, root, step, target};

/// Runs every script and holds what it prints against what is kept.
pub(crate) fn check() -> Done {
    let topics = topics()?;
    step("Python", || python().packages())?;
    topics.iter().try_for_each(|topic| {
        step(&format!("reference {topic}"), || {
            let (kept, made) = (kept(topic)?, made(topic)?);
            let differences = agree::differences(&kept, &made);
            if differences.is_empty() {
                return Ok(());
            }
            let again = python().program();
            Err(format!(
                "tests/reference/{topic}.json is not what its script prints:\n  {}\n\
                 if the script is right: cd tests/reference && {} -B {topic}.py > {topic}.json",
                differences.join("\n  "),
                again.display()
            ))
        })
    })
}

fn python() -> Environment {
    let folder = target().join("reference-venv");
    Environment { folder, requirements: "tests/reference/requirements.txt" }
}

fn folder() -> PathBuf {
    root().join("tests/reference")
}

/// The names of all scripts, each of which must have its JSON, and the other way round.
fn topics() -> Result<BTreeSet<String>, String> {
    let files = fs::read_dir(folder()).map_err(|error| format!("tests/reference: {error}"))?;
    let (mut scripts, mut kept) = (BTreeSet::new(), BTreeSet::new());
    for file in files {
        let path = file.map_err(|error| format!("tests/reference: {error}"))?.path();
        let stem = path.file_stem().unwrap_or_default().to_string_lossy().into_owned();
        match path.extension().and_then(|end| end.to_str()) {
            Some("py") => scripts.insert(stem),
            Some("json") => kept.insert(stem),
            _ => continue,
        };
    }
    paired(scripts, &kept)
}

fn paired(scripts: BTreeSet<String>, kept: &BTreeSet<String>) -> Result<BTreeSet<String>, String> {
    if scripts.is_empty() {
        return Err("tests/reference has no script".into());
    }
    if let Some(topic) = scripts.difference(kept).next() {
        return Err(format!("tests/reference/{topic}.py has no {topic}.json beside it"));
    }
    if let Some(topic) = kept.difference(&scripts).next() {
        return Err(format!("tests/reference/{topic}.json has no {topic}.py beside it"));
    }
    Ok(scripts)
}

fn kept(topic: &str) -> Result<Value, String> {
    let name = format!("tests/reference/{topic}.json");
    let text = fs::read(folder().join(format!("{topic}.json")))
        .map_err(|error| format!("{name}: {error}"))?;
    serde_json::from_slice(&text).map_err(|error| format!("{name}: {error}"))
}

fn made(topic: &str) -> Result<Value, String> {
    let name = format!("tests/reference/{topic}.py");
    // -B: no compiled files beside the scripts.
    let mut script = Command::new(python().program());
    script.current_dir(folder()).arg("-B").arg(format!("{topic}.py"));
    let output = script.output().map_err(|error| format!("{name} cannot be run: {error}"))?;
    if !output.status.success() {
        let said = String::from_utf8_lossy(&output.stderr).into_owned();
        return Err(format!("{name} ({}):\n{said}", output.status));
    }
    serde_json::from_slice(&output.stdout)
        .map_err(|error| format!("{name} prints no JSON: {error}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn names(names: &[&str]) -> BTreeSet<String> {
        names.iter().map(|name| (*name).to_owned()).collect()
    }

    #[test]
    fn a_script_and_its_json_come_in_pairs() {
        let both = names(&["one", "two"]);
        assert_eq!(paired(both.clone(), &both), Ok(both.clone()));
        let said = paired(both.clone(), &names(&["one"])).unwrap_err();
        assert_eq!(said, "tests/reference/two.py has no two.json beside it");
        let said = paired(names(&["two"]), &both).unwrap_err();
        assert_eq!(said, "tests/reference/one.json has no one.py beside it");
        assert!(paired(names(&[]), &names(&[])).is_err());
    }
}
