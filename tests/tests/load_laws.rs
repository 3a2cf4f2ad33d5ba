//! The laws of proposals, on more histories than anybody reads.

use holdfast_tests::laws::hold;
use holdfast_tests::seed_or;

/// Two minutes of a slow build. The same histories at every check, so that what fails can be looked at; new ones are
/// drawn by the wide one, a million at a time.
#[test]
fn laws_of_loads_hold_on_histories_by_chance() {
    let tried = hold(seed_or(34), 20_000).unwrap_or_else(|broken| panic!("{broken}"));
    for (law, times) in tried {
        assert!(times > 100, "{law}: spoken of {times} times");
    }
}
