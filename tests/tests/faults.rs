//! The real program at every file call: killed before and after it, refused by the disk, or cut short.
//! Nothing that was saved before is lost, and nothing that it says is saved. A sample runs here, and
//! every call in `cargo task check wide`.

use holdfast_tests::faults::library;
use holdfast_tests::stops::{Story, every_call};

#[test]
fn whatever_stops_a_command_nothing_saved_is_lost() {
    let Some(library) = library() else { return };
    for story in Story::ALL {
        every_call(&library, story, 40);
    }
}
