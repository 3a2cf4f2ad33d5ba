//! What came of the proposals of simulated lifters.

use crate::steps::{Done, cargo, step};

/// Plays the seasons, and prints the tables that `docs/season.md` keeps.
pub(crate) fn all() -> Done {
    step("season", || {
        cargo(&["bench", "--package", "holdfast-tests", "--bench", "season", "--locked"])
    })
}
