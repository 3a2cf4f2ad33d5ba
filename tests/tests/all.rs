//! All cross-cutting checks in one binary: one link, and nothing forgotten.

mod carrier;
mod clock_zones;
mod clocks;
mod clocks_set;
mod command;
mod corrections;
mod damage;
mod demo;
mod formats;
mod kills;
mod loads;
mod plates;
mod screens;
mod set_laws;
mod strength;
mod terminal;
mod whole_loop;

/// A file in this folder that no `mod` line names would never run.
#[test]
fn no_file_is_forgotten() {
    let listed = include_str!("all.rs");
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests");
    for file in std::fs::read_dir(folder).unwrap() {
        let path = file.unwrap().path();
        let name = path.file_stem().unwrap().to_str().unwrap().to_owned();
        if path.extension().is_some_and(|end| end == "rs") && name != "all" {
            assert!(listed.contains(&format!("mod {name};")), "{name}.rs is in no mod line");
        }
    }
}
