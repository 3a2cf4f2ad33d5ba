//! Every file call.

use holdfast_tests::faults::library;
use holdfast_tests::stops::{Story, every_call};

/// Each story of the real program is told once for every file call in it and every way it can fail:
/// killed before, killed after, refused by the disk, full, cut short. Nothing that was saved, or said to
/// be, is lost, and the story can be told to its end afterwards. About ten minutes.
#[test]
fn whatever_stops_a_command_at_any_call_nothing_saved_is_lost() {
    let Some(library) = library() else { return };
    for story in Story::ALL {
        every_call(&library, story, u64::MAX);
    }
}
