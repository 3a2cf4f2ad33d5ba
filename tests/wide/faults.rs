//! Every file call.

use holdfast_tests::faults::library;
use holdfast_tests::fresh_seed;
use holdfast_tests::stops::{Story, bit_flips, every_call, every_read, power_cuts};

/// Each story of the real program is told once for every file call in it and every way it can fail:
/// killed before, killed after, refused by the disk, full, cut short. Nothing that was saved, or said to
/// be, is lost, and the story can be told to its end afterwards. About ten minutes.
#[test]
fn whatever_stops_a_command_at_any_call_nothing_saved_is_lost() {
    let library = library();
    for story in Story::ALL {
        every_call(&library, story, u64::MAX);
    }
}

/// Every read of a sound home fails, one after the other: each is told or does not matter, and no database
/// is set aside. Seconds.
#[test]
fn a_read_that_fails_anywhere_is_no_damage() {
    let library = library();
    every_read(&library, u64::MAX);
}

/// Ten thousand bits turned, one at a time, in every file of a home: no entry is lost. About seven minutes.
#[test]
fn no_bit_of_ten_thousand_loses_an_entry() {
    bit_flips(10_000, fresh_seed());
}

/// The power goes at every moment of every story, with nothing, everything and some of what was not
/// flushed. About three minutes.
#[test]
fn the_power_may_go_at_every_moment() {
    let library = library();
    let seed = fresh_seed();
    for story in Story::ALL {
        let lost = power_cuts(&library, story, usize::MAX, seed, |deeds| deeds);
        assert!(lost.is_ok(), "{lost:?}");
    }
}
