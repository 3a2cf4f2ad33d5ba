//! All cross-cutting checks in one binary: one link, and nothing forgotten.
#![expect(clippy::panic, clippy::unwrap_used, reason = "a check that stops is a check that failed")]

mod answers;
mod arguments;
mod asked_language;
mod bars;
mod between;
mod boot;
mod brought_back;
mod carried;
mod carrier;
mod carriers;
mod claims;
mod clock_zones;
mod clocks;
mod clocks_set;
mod command;
mod corrections;
mod damage;
mod demo;
mod earlier;
mod extras;
mod extras_count;
#[cfg(target_os = "linux")]
mod faults;
mod forgotten;
mod formats;
mod gone;
mod healed;
mod house;
mod kills;
mod kinds;
mod language;
mod leaving;
mod left_alone;
mod left_open;
mod left_out;
mod listing;
mod load_laws;
mod loads;
mod lost;
mod notes;
mod old_lines;
mod one_key;
mod one_rep_max;
mod options;
mod pages;
mod pairing;
mod papers;
mod people;
mod plates;
mod put_back;
mod questions;
mod screens;
mod season;
mod second_place;
mod secrets;
mod sessions;
mod set_commands;
mod set_laws;
mod slip_answers;
mod slips;
mod strangers;
mod stray;
mod strength;
mod terminal;
mod trust_page;
mod undo;
mod unplanned;
mod warm_ups;
mod whole_loop;
mod worlds;

/// A file in this folder that no `mod` line names would never run.
#[test]
fn no_file_is_forgotten() {
    holdfast_tests::no_file_is_forgotten("tests", "all", include_str!("all.rs"));
}
