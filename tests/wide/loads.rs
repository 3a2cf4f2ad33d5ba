//! Seasons of proposals.

use holdfast_tests::fresh_seed;
use holdfast_tests::season::{EXPECTED, broken, seasons, table};

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
