//! The strength model on athletes whose true strength is known. `cargo task check wide` tries more.

use holdfast_tests::fresh_seed;
use holdfast_tests::lifters::{BEHAVIOURS, broken, crew, score};

/// Drawn when all constants stood, and never used to choose one.
const FRESH_SEED: u64 = 20_271_127;

/// So many athletes of each behaviour leave a few points to chance.
const ATHLETES: usize = 100;
const SLACK: f64 = 6.0;

#[test]
fn four_of_five_within_the_band_and_nearer_than_every_equation() {
    holds(FRESH_SEED);
}

/// Other athletes at every run; `HOLDFAST_SEED` draws the same again.
#[test]
fn the_same_for_random_athletes() {
    holds(fresh_seed());
}

fn holds(seed: u64) {
    let broken: Vec<String> = BEHAVIOURS
        .iter()
        .flat_map(|behaviour| broken(*behaviour, &score(&crew(*behaviour, seed, ATHLETES)), SLACK))
        .collect();
    assert!(broken.is_empty(), "seed {seed}: {broken:#?}");
}
