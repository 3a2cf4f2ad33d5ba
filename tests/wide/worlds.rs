//! Many stories of a whole crew with everything against it (`holdfast_tests::world`). So many seeds, from the one given on:
//! `HOLDFAST_SEED=5001 HOLDFAST_STORIES=100000` goes on where five thousand stopped.

use std::sync::atomic::{AtomicU64, Ordering};
use std::thread;
use std::time::Instant;

use holdfast_tests::seed_or;
use holdfast_tests::world::play;

/// Told where no number is given: a few minutes here.
const STORIES: u64 = 5_000;

#[test]
fn whatever_happens_everybody_honest_has_the_same_in_the_end() {
    let first = seed_or(1);
    let given = std::env::var("HOLDFAST_STORIES").ok();
    let stories = given.map_or(STORIES, |text| text.parse().unwrap());
    let began = Instant::now();
    let next = AtomicU64::new(0);
    let told = |_| loop {
        let at = next.fetch_add(1, Ordering::Relaxed);
        if at >= stories {
            return;
        }
        play(first + at).unwrap_or_else(|why| panic!("{why}"));
        if at % 1_000 == 999 {
            println!("{} stories, {:.0} s", at + 1, began.elapsed().as_secs_f64());
        }
    };
    let threads = thread::available_parallelism().map_or(2, usize::from);
    thread::scope(|scope| {
        let all: Vec<_> = (0..threads).map(|at| scope.spawn(move || told(at))).collect();
        all.into_iter().for_each(|one| one.join().unwrap());
    });
    let rate = stories as f64 / began.elapsed().as_secs_f64();
    println!("{stories} stories from seed {first}, {rate:.1} a second");
}
