//! The formulas of the core against what was published and against reference libraries.
//!
//! Published numbers stand in the checks with their source. The numbers of reference libraries are
//! made by the scripts in `tests/reference`, and `cargo task check reference` makes them again.
//!
//! How sure a published number is: P, seen in the paper or its abstract; S, seen in a text that cites
//! it; M, from memory; C, computed again with a reference library.

mod ilp;
mod measurement;
mod oil;
mod one_rep_max;
mod oracle;
mod plates;
mod ratings;
mod rest;
mod strength;
mod stretch;
mod training_load;
mod trend;

/// A file in this folder that no `mod` line names would never run.
#[test]
fn no_file_is_forgotten() {
    let listed = include_str!("main.rs");
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("published");
    for file in std::fs::read_dir(folder).unwrap() {
        let path = file.unwrap().path();
        let name = path.file_stem().unwrap().to_str().unwrap().to_owned();
        if path.extension().is_some_and(|end| end == "rs") && name != "main" {
            assert!(listed.contains(&format!("mod {name};")), "{name}.rs is in no mod line");
        }
    }
}
