//! The laws of proposals, and seasons of them.

use holdfast_tests::fresh_seed;
use holdfast_tests::laws::hold;
use holdfast_tests::season::{EXPECTED, broken, seasons, table};

/// The laws hold on ten times as many histories as the usual checks draw. About ten seconds.
#[test]
fn laws_of_loads_hold_on_many_more_histories() {
    let tried = hold(fresh_seed(), 200_000).unwrap_or_else(|broken| panic!("{broken}"));
    for (law, times) in tried {
        println!("{times:>7} {law}");
    }
}

/// What is expected of a season holds over two hundred of them, and the strength gained is not below that with
/// the plain rule at all. About a minute.
#[test]
fn two_hundred_seasons_are_as_expected() {
    let season = seasons(fresh_seed(), 200);
    println!("{}", table(&season));
    assert!(EXPECTED.iter().all(|expected| expected.holds(&season)), "{}", broken(&season));
    let gained = EXPECTED.iter().find(|expected| expected.name.starts_with("strength")).unwrap();
    assert!((gained.read)(&season).mean >= 0.0);
}
