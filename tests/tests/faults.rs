//! The real program at every file call: killed before and after it, refused by the disk, or cut short.
//! Nothing that was saved before is lost, and nothing that it says is saved. A sample runs here, and
//! every call in `cargo task check wide`.

use holdfast_tests::faults::library;
use holdfast_tests::seed_or;
use holdfast_tests::stops::{Story, bit_flips, every_call, every_read};

#[test]
fn whatever_stops_a_command_nothing_saved_is_lost() {
    let Some(library) = library() else { return };
    for story in Story::ALL {
        every_call(&library, story, 40);
    }
}

#[test]
fn a_read_that_fails_is_told_and_is_no_damage() {
    let Some(library) = library() else { return };
    every_read(&library, 60);
}

#[test]
fn no_bit_that_turns_loses_an_entry() {
    bit_flips(150, seed_or(20_261_126));
}
