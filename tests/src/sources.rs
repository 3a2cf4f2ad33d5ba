//! The program's own Rust sources, read as text by checks about the code.

use std::fs;
use std::path::{Path, PathBuf};

/// A folder of the workspace.
pub fn folder(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..").join(name)
}

/// Every Rust file below a folder, but those that are only compiled for checks, in no order.
///
/// # Panics
/// When a file cannot be read.
pub fn sources(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    files(folder, &mut found);
    found
}

fn files(folder: &Path, found: &mut Vec<PathBuf>) {
    // A module's own file may stand beside its folder.
    let beside = fs::read_to_string(folder.with_extension("rs")).unwrap_or_default();
    let mut checks = check_modules(&beside);
    let mut all = Vec::new();
    for file in fs::read_dir(folder).unwrap() {
        let path = file.unwrap().path();
        if path.extension().is_some_and(|end| end == "rs") {
            checks.extend(check_modules(&fs::read_to_string(&path).unwrap()));
        }
        all.push(path);
    }
    for path in all {
        let name = path.file_stem().unwrap().to_str().unwrap().to_owned();
        if checks.contains(&name) {
            continue;
        }
        if path.is_dir() {
            files(&path, found);
        } else if path.extension().is_some_and(|end| end == "rs") {
            found.push(path);
        }
    }
}

/// The modules that are files of their own behind `#[cfg(test)]`.
pub fn check_modules(text: &str) -> Vec<String> {
    let lines: Vec<&str> = text.lines().collect();
    let behind = lines.windows(2).filter(|two| two[0] == "#[cfg(test)]");
    // What stands before `mod`: nothing, or who else may use it.
    let name = |two: &[&str]| {
        let (before, name) = two[1].split_once("mod ")?;
        let of_a_module = before.is_empty() || before.starts_with("pub");
        Some(name.strip_suffix(';').filter(|_| of_a_module)?.to_owned())
    };
    behind.filter_map(name).collect()
}
