//! The formulas of the core against what was published and against reference libraries.
//!
//! Published numbers stand in the checks with their source. The numbers of reference libraries are
//! made by the scripts in `tests/reference`, and `cargo task check reference` makes them again.
//!
//! How sure a published number is: P, seen in the paper or its abstract; S, seen in a text that cites
//! it; M, from memory; C, computed again with a reference library.
#![expect(clippy::panic, clippy::unwrap_used, reason = "a check that stops is a check that failed")]

mod measurement;
mod one_rep_max;
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
    holdfast_tests::no_file_is_forgotten("published", "main", include_str!("main.rs"));
}
