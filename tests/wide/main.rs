//! Checks that take minutes, in release: the same questions as in `tests`, asked more often or of more.
//! `cargo task check wide` runs them, and plain `cargo test` does not.
//!
//! Each prints its seed and says in its documentation what it proves and how long that takes here, on
//! two shared cores.

#[cfg(target_os = "linux")]
mod faults;
mod kills;
mod laws;
mod loads;
mod strength;
mod worlds;

#[test]
fn no_file_is_forgotten() {
    holdfast_tests::no_file_is_forgotten("wide", "main", include_str!("main.rs"));
}
