//! The real program is killed at random moments while it logs; every set it said was saved is there
//! again. `cargo task check wide` kills it more often.

use holdfast_tests::{kills, seed_or};

#[test]
fn everything_acknowledged_survives_a_kill() {
    kills::everything_acknowledged_survives(200, seed_or(20_261_125));
}
