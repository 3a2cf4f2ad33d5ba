//! The laws of proposals, on more histories than anybody reads.

use holdfast_tests::fresh_seed;
use holdfast_tests::laws::hold;

/// Two minutes of a slow build.
#[test]
fn laws_of_loads_hold_on_histories_by_chance() {
    let tried = hold(fresh_seed(), 20_000).unwrap_or_else(|broken| panic!("{broken}"));
    for (law, times) in tried {
        assert!(times > 100, "{law}: spoken of {times} times");
    }
}
