//! What holds of every proposal, whatever was lifted before: tried on histories drawn by chance.

mod drawn;
mod held;
mod room;

pub use drawn::{Case, drawn};
pub use held::{LAWS, Law};

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
        let mut chance = ChaCha8Rng::seed_from_u64(seed.wrapping_add(at));
        let case = drawn(&mut chance);
        for ((name, law), (_, times)) in LAWS.iter().zip(&mut tried) {
            match law(&case, &mut chance) {
                Ok(true) => *times += 1,
                Ok(false) => {}
                Err(seen) => {
                    let which = seed.wrapping_add(at);
                    return Err(format!("{name} (history {which}): {seen}\n{case}"));
                }
            }
        }
    }
    Ok(tried)
}
