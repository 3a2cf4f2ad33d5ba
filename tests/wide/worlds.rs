//! Many stories of a whole crew with everything against it. `HOLDFAST_SEED=5001 HOLDFAST_STORIES=100000` goes on where five
//! thousand stopped. A quarter of an hour here.

use holdfast_tests::seed_or;
use holdfast_tests::world::{play_all, stories_or};

/// Told where no other number is given.
const STORIES: u64 = 5_000;

#[test]
fn whatever_happens_everybody_honest_has_the_same_in_the_end() {
    let stories = stories_or(STORIES);
    let played = play_all(seed_or(1), stories);
    // A few may be peaceful.
    assert!(stories < STORIES || (played.injected > 0 && played.stolen > 0), "{played:?}");
}
