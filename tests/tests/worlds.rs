//! Stories of a whole crew with everything against it.

use holdfast_tests::seed_or;
use holdfast_tests::world::{play_all, stories_or};

/// Told here, in about a minute; `cargo task check wide` tells many more.
const STORIES: u64 = 800;

#[test]
fn whatever_happens_everybody_honest_has_the_same_in_the_end() {
    let stories = stories_or(STORIES);
    let played = play_all(seed_or(1), stories);
    // A few may be peaceful.
    assert!(stories < STORIES || (played.injected > 0 && played.stolen > 0), "{played:?}");
}
