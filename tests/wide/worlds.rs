//! Many stories of a whole crew with everything against it, two hours at a time until a million were played. It goes on
//! where it stopped: a file in the build folder says where. `HOLDFAST_SECONDS=600` takes ten minutes,
//! `HOLDFAST_STORIES=5000` so many stories at most.

use holdfast_tests::world::go_on;

#[test]
fn whatever_happens_everybody_honest_has_the_same_in_the_end() {
    let played = go_on();
    // A few may be peaceful, and after a million nothing is left to play.
    assert!(played.devices < 1_000 || (played.injected > 0 && played.stolen > 0), "{played:?}");
}
