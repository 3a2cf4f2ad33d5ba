//! Many kills.

use holdfast_tests::{fresh_seed, kills};

/// The program is killed 5,000 times while it logs, at other moments with every run: no entry that it
/// called saved is ever lost, and the numbering never has a hole. TIME.
#[test]
fn everything_acknowledged_survives_five_thousand_kills() {
    kills::everything_acknowledged_survives(5_000, fresh_seed());
}
