//! What the core itself takes for what the bindings are measured at: an empty call, one durable set,
//! the longest day's screen. `cargo task measure` runs this beside the same in Kotlin and Swift.
#![expect(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a measurement that stops has failed, and its figures are what it is for"
)]

use std::hint::black_box;
use std::time::Instant;

use holdfast_core::Mass;
use holdfast_tests::taps::{begin, set_of};
use holdfast_tests::timing::median;
use holdfast_tests::{Crew, LONGER_DAY, SMALL_PLAN};

/// The middle of several runs' nanoseconds, each of `calls` calls. As many runs before warm up.
fn middle(runs: usize, calls: u32, mut call: impl FnMut()) -> u128 {
    let run = |_| {
        let start = Instant::now();
        (0..calls).for_each(|_| call());
        start.elapsed() / calls
    };
    median((0..2 * runs).map(run).skip(runs).collect()).as_nanos()
}

fn main() {
    // Cargo's tests run benches too, only to see that they start.
    let runs = if std::env::args().any(|arg| arg == "--bench") { 500 } else { 1 };
    let crew = Crew::start(&format!("{SMALL_PLAN}\n{LONGER_DAY}"), &["Zoë"]).unwrap();
    let zoe = &crew.athletes[0];
    zoe.go_to("2026-11-03");
    zoe.tap(begin()).unwrap();
    // All 48 sets of six pieces in turn, again and again: the first time logged, then corrected.
    let set = |tap: u32| {
        let piece = format!("Squat {}", 1 + tap % 6);
        set_of(&piece, Some(1 + tap / 6 % 8), Some(Mass::kg(50)), Some(tap % 50))
    };
    let mut taps = 0..;
    let durable = middle(runs, 1, || {
        let tap = set(taps.next().unwrap_or_default());
        black_box(zoe.holdfast.tap(tap, None, zoe.now()).unwrap());
    });
    let screen = middle(runs, 1, || {
        black_box(zoe.holdfast.today(zoe.now()).unwrap());
    });
    zoe.holdfast.shut().unwrap();
    let empty = middle(runs, 1_000, || black_box(&zoe.holdfast).shut().unwrap());
    println!("calls: empty {empty} ns, set {durable} ns, screen {screen} ns");
}
