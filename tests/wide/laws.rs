//! The laws of proposals, on a million histories.

use holdfast_tests::fresh_seed;
use holdfast_tests::laws::hold;

/// Two or three minutes.
#[test]
fn laws_of_loads_hold_on_a_million_histories() {
    let tried = hold(fresh_seed(), 1_000_000).unwrap_or_else(|broken| panic!("{broken}"));
    for (law, times) in tried {
        println!("{times:>8} {law}");
        assert!(times > 5_000, "{law}: spoken of {times} times");
    }
}
