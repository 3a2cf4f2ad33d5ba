//! The real program at every file call: killed before and after it, refused by the disk, or cut short.
//! Nothing that was saved before is lost, and nothing that it says is saved. A sample runs here, and
//! every call in `cargo task check wide`.

use holdfast_tests::faults::library;
use holdfast_tests::power::Deed;
use holdfast_tests::seed_or;
use holdfast_tests::stops::{
    Story, a_tap_cut_in_two_is_seen, bit_flips, every_call, every_read, power_cuts, three_at_once,
};

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
        let lost = power_cuts(&library, story, 40, seed_or(20_261_126), |deeds| deeds);
        assert!(lost.is_ok(), "{lost:?}");
    }
}

/// The model finds what it is there to find: a program that leaves out a flush, or changes a name before
/// what it names is on disk, or says "saved" too early, loses something.
#[test]
fn planted_faults_are_found() {
    let library = library();
    let flushes = |deed: &Deed, end: &str| matches!(deed, Deed::Flush(path) if path.to_string_lossy().ends_with(end));
    let without = |end: &'static str| {
        move |deeds: Vec<Deed>| deeds.into_iter().filter(|deed| !flushes(deed, end)).collect()
    };
    let said_early = |deeds: Vec<Deed>| {
        let mut early: Vec<Deed> = Vec::new();
        for deed in deeds {
            let before_flush = early.iter().rposition(|deed| flushes(deed, "holdfast.db-wal"));
            match (&deed, before_flush) {
                (Deed::Said(_), Some(place)) => early.insert(place, deed),
                _ => early.push(deed),
            }
        }
        early
    };
    type Plant<'a> = &'a dyn Fn(Vec<Deed>) -> Vec<Deed>;
    let planted: [(&str, Story, Plant<'_>); 5] = [
        ("a set is said to be saved while it is on its way", Story::Session, &without("-wal")),
        ("a set is said to be saved before it is", Story::Session, &said_early),
        ("the identity has its name before it is on disk", Story::Start, &without(".tmp")),
        ("the home's folder is never flushed", Story::Start, &without("new")),
        ("a database takes its place before it is on disk", Story::Rebuild, &without(".db.new")),
    ];
    for (fault, story, plant) in planted {
        let found = power_cuts(&library, story, 400, 1, plant);
        assert!(found.is_err(), "not found: {fault}");
    }
    a_tap_cut_in_two_is_seen();
}

/// Three programs at once, at everything there is to do: they wait for each other, each does its work, and
/// nothing is lost or done twice.
#[test]
fn three_at_once_wait_for_each_other() {
    for story in Story::ALL {
        three_at_once(story);
    }
}
