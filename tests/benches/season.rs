//! A season played out: forty lifters, 24 weeks, by the load rules and by the plain rule. `cargo task season`
//! runs it: seconds.
#![expect(clippy::print_stdout, reason = "its figures are what it is for")]

use std::time::Instant;

use holdfast_tests::season::{broken, seasons, table};
use holdfast_tests::seed_or;

/// As many seasons as the figures are found on.
const SEASONS: u64 = 20;

fn main() {
    let seed = seed_or(2026);
    let begun = Instant::now();
    let season = seasons(seed, SEASONS);
    let took = begun.elapsed().as_secs_f64() / SEASONS as f64;
    println!("{}{}", table(&season), broken(&season));
    println!("{took:.2} s a season");
}
