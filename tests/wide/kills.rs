//! Many kills.

use holdfast_tests::{fresh_seed, kills};

/// The program is killed 5,000 times while it logs, at other moments with every run: no entry that it
/// called saved is ever lost, and the numbering never has a hole. Ten logs of 500 sessions each, as each
/// opening reads the whole log. About eight minutes.
#[test]
fn everything_acknowledged_survives_five_thousand_kills() {
    let first = fresh_seed();
    (0..10).for_each(|more| kills::everything_acknowledged_survives(500, first.wrapping_add(more)));
}
