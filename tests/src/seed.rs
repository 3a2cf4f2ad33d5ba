//! The seed of a check that draws by chance, printed so that the same can be drawn again.

use std::hash::{BuildHasher, RandomState};

/// `HOLDFAST_SEED` when that is given, and this one otherwise.
pub fn seed_or(usual: u64) -> u64 {
    let given = std::env::var("HOLDFAST_SEED").ok();
    let seed = given.map_or(usual, |text| text.parse().expect("HOLDFAST_SEED is a whole number"));
    println!("HOLDFAST_SEED={seed}");
    seed
}

/// `HOLDFAST_SEED` when that is given, and another one at every run otherwise.
pub fn fresh_seed() -> u64 {
    // Half as long: somebody may have to type it.
    seed_or(RandomState::new().hash_one(0) >> 32)
}
