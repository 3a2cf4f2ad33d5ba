//! Lifters whose true strength is known, and how near the core and the published equations come to it.
//!
//! Measures: root mean square of the log of said over true one-rep max (0.05 is about 5 %), mean
//! absolute error of the reps on open sets held back, and how many of these end within their band.

mod body;
mod chance;
mod equations;
mod score;

pub(crate) use body::Body;
pub use body::{Lifter, Session, World, lifters};
pub(crate) use chance::Chance;
pub use equations::{EQUATIONS, Equation};
pub use score::{Errors, Score, Share, WAYS, score};

use holdfast_core::load::strength::Model;

/// As many lifters as the figures are found on.
pub const LIFTERS: usize = 2_000;

/// Holds the model to what it promises, on lifters drawn from a seed: a smaller error than every
/// published equation used the plain way, and four of five within the band, in each range of reps too.
///
/// # Panics
/// When it is broken.
pub fn holds(seed: u64) {
    let score = score(&Model::USUAL, &lifters(seed, LIFTERS, World::USUAL));
    println!("{}", score.line(&format!("seed {seed}")));
    let broken = score.broken();
    assert!(broken.is_empty(), "seed {seed}: {broken:#?}\n{}", score.table());
}
