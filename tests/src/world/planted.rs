//! How many stories it takes until a planted bug is caught.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::Mutex;
use std::sync::atomic::{AtomicU64, Ordering};
use std::thread;

use holdfast_core::{Planted, plant};

use super::play;

/// A bug that a story caught.
pub struct Caught {
    /// The first seed, counted from 1, whose story does not come out right: so many stories it takes.
    pub seed: u64,
    /// What did not hold.
    pub why: String,
}

/// Plays the stories of seeds from 1 on with a bug planted, on every core, until one does not come out right; none where
/// all of `most` do.
pub fn seeds_until_caught(bug: Planted, most: u64) -> Option<Caught> {
    plant(Some(bug));
    let (next, lowest) = (AtomicU64::new(1), AtomicU64::new(u64::MAX));
    let caught: Mutex<Option<Caught>> = Mutex::new(None);
    let tell = || {
        loop {
            let seed = next.fetch_add(1, Ordering::Relaxed);
            // A lower one may still be played elsewhere.
            if seed > most || seed > lowest.load(Ordering::Relaxed) {
                return;
            }
            let played = catch_unwind(AssertUnwindSafe(|| play(seed)));
            let why = match played {
                Ok(Ok(_)) => continue,
                Ok(Err(why)) => why,
                Err(_) => "it panics".to_owned(),
            };
            lowest.fetch_min(seed, Ordering::Relaxed);
            let mut first = caught.lock().unwrap();
            if first.as_ref().is_none_or(|first| seed < first.seed) {
                *first = Some(Caught { seed, why });
            }
        }
    };
    let threads = thread::available_parallelism().map_or(2, usize::from);
    thread::scope(|scope| (0..threads).for_each(|_| drop(scope.spawn(tell))));
    plant(None);
    caught.into_inner().unwrap()
}
