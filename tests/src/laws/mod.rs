//! What holds of every proposal, whatever was lifted before: tried on histories drawn by chance.

mod able;
mod answered;
mod changed;
mod down;
mod drawn;
mod held;
mod hurts;
mod room;
mod shares;
mod up;

pub use drawn::{Case, drawn};
pub use held::{LAWS, Law, Seen};

use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;

/// How often each law was tried on something it speaks of.
pub type Tried = Vec<(&'static str, u64)>;

/// Draws so many histories and holds every law against each.
///
/// # Errors
///
/// The first law that is broken, with the seed of the history and what was seen.
pub fn hold(seed: u64, histories: u64) -> Result<Tried, String> {
    let mut tried: Tried = LAWS.iter().map(|(name, _)| (*name, 0)).collect();
    for at in 0..histories {
        let found = try_all(seed.wrapping_add(at));
        for ((_, times), found) in tried.iter_mut().zip(found) {
            *times += u64::from(found?);
        }
    }
    Ok(tried)
}

/// Holds every law against the history of one seed: true where the law speaks of it.
pub fn try_all(seed: u64) -> Vec<Result<bool, String>> {
    let mut chance = ChaCha8Rng::seed_from_u64(seed);
    let case = drawn(&mut chance);
    let seen = Seen::of(&case);
    let held = LAWS.iter().map(|(name, law)| {
        law(&seen, &mut chance).map_err(|why| format!("{name} (history {seed}): {why}\n{case}"))
    });
    held.collect()
}
