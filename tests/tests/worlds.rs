//! Stories of a whole crew with everything against it.

use std::thread;
use std::time::Instant;

use holdfast_tests::seed_or;
use holdfast_tests::world::{Played, play};

/// Stories told here; `cargo task check wide` tells many more.
const STORIES: u64 = 60;

#[test]
fn whatever_happens_everybody_honest_has_the_same_in_the_end() {
    let first = seed_or(1);
    let given = std::env::var("HOLDFAST_STORIES").ok();
    let stories = given.map_or(STORIES, |text| text.parse().unwrap());
    let began = Instant::now();
    let tell = |from: u64| -> Result<Played, String> {
        let mut all = Played::default();
        for seed in (first + from..first + stories).step_by(2) {
            let played = play(seed)?;
            all.files += played.files;
            all.injected += played.injected;
            all.devices += played.devices;
            all.stolen += played.stolen;
        }
        Ok(all)
    };
    let both = thread::scope(|scope| {
        [0, 1].map(|from| scope.spawn(move || tell(from))).map(|one| one.join().unwrap())
    });
    for told in both {
        let told = told.unwrap_or_else(|why| panic!("{why}"));
        println!("{told:?}");
    }
    println!("{stories} stories, {:.1} a second", stories as f64 / began.elapsed().as_secs_f64());
}
