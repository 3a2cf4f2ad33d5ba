//! Each bug that the core has with the feature `planted` is caught by the simulation of a crew: what it finds nothing in
//! would otherwise prove nothing. `cargo task planted` runs it. It prints how many stories each takes.
#![expect(clippy::panic, clippy::print_stdout, reason = "a check says what it found")]

use std::time::Instant;

use holdfast_core::Planted;
use holdfast_tests::world::{play, seeds_until_caught};

/// Stories that a bug may take at most.
const MOST: u64 = 2_000;

/// Stories without a bug that come out right.
const SOUND: u64 = 20;

/// One after the other, in this one test: a bug is planted for the whole process. `HOLDFAST_PLANTED=ab` names some alone.
#[test]
fn every_planted_bug_is_caught() {
    (1..=SOUND).for_each(|seed| _ = play(seed).unwrap_or_else(|why| panic!("{why}")));
    let only = std::env::var("HOLDFAST_PLANTED").ok();
    let asked = |bug: &&Planted| only.as_ref().is_none_or(|only| only.contains(bug.letter()));
    // What a bug does may be a panic, which is told below.
    std::panic::set_hook(Box::new(|_| {}));
    let mut missed = Vec::new();
    for bug in Planted::ALL.iter().filter(asked) {
        let began = Instant::now();
        let (letter, what) = (bug.letter(), bug.what());
        match seeds_until_caught(*bug, MOST) {
            Some(caught) => {
                let why = caught.why.lines().next().unwrap_or_default();
                let took = began.elapsed().as_secs_f64();
                println!("{letter}) {:>5} {what} ({took:.1} s): {why}", caught.seed);
            }
            None => {
                println!("{letter}) missed in {MOST} stories: {what}");
                missed.push(letter);
            }
        }
    }
    drop(std::panic::take_hook());
    assert!(missed.is_empty(), "{missed:?}");
}
