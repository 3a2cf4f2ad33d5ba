//! The real program at every file call: killed before and after it, refused by the disk, or cut short.
//! Nothing that was saved before is lost, and nothing that it says is saved. A sample runs here, and
//! every call in `cargo task check wide`.

use holdfast_tests::faults::library;
use holdfast_tests::power::Deed;
use holdfast_tests::seed_or;
use holdfast_tests::stops::{Story, bit_flips, every_call, every_read, power_cuts, three_at_once};

#[test]
fn whatever_stops_a_command_nothing_saved_is_lost() {
    let library = library();
    for story in Story::ALL {
        every_call(&library, story, 40);
    }
}

#[test]
fn a_read_that_fails_is_told_and_is_no_damage() {
    let library = library();
    every_read(&library, 60);
}

#[test]
fn no_bit_that_turns_loses_an_entry() {
    bit_flips(150, seed_or(20_261_126));
}

#[test]
fn the_power_may_go_at_any_moment() {
    let library = library();
    for story in Story::ALL {
        let lost = power_cuts(&library, story, 40, seed_or(20_261_126), |_| false);
        assert!(lost.is_ok(), "{lost:?}");
    }
}

/// The model finds what it is there to find: a program that leaves out a flush loses what it said was
/// saved.
#[test]
fn a_flush_that_is_left_out_is_found() {
    let library = library();
    let flush_of = |deed: &Deed, end: &str| matches!(deed, Deed::Flush(path) if path.to_string_lossy().ends_with(end));
    let planted: [(Story, &str); 3] = [
        // The database's log, so a set is said to be saved while it is only on its way.
        (Story::Session, "holdfast.db-wal"),
        // The identity, renamed before it is on disk.
        (Story::Start, ".tmp"),
        // The folder: a name that is not there yet.
        (Story::Start, "new"),
    ];
    for (story, end) in planted {
        let found = power_cuts(&library, story, 400, 1, |deed| flush_of(deed, end));
        assert!(found.is_err(), "{story:?} without flushing {end} lost nothing");
    }
}

/// Three programs at once, at everything there is to do: they wait for each other, each does its work, and
/// nothing is lost or done twice.
#[test]
fn three_at_once_wait_for_each_other() {
    for story in Story::ALL {
        three_at_once(story);
    }
}
