//! Files of checks that would never run.

use std::fs;
use std::path::Path;

/// Holds every file of a folder of checks, and every folder that is a module, against the `mod` lines
/// of the file that names them.
///
/// # Panics
/// When one is in no `mod` line.
pub fn no_file_is_forgotten(folder: &str, root: &str, listed: &str) {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join(folder);
    let mut seen = 0;
    for file in fs::read_dir(folder).unwrap() {
        let path = file.unwrap().path();
        let name = path.file_stem().unwrap().to_str().unwrap().to_owned();
        let is_module =
            path.extension().is_some_and(|end| end == "rs") || path.join("mod.rs").exists();
        if is_module && name != root {
            assert!(listed.contains(&format!("mod {name};")), "{name} is in no mod line");
            seen += 1;
        }
    }
    assert!(seen > 0, "no file of checks in {root}'s folder");
}
