//! What a large crew costs its coach.

use crate::steps::{Done, cargo, step};

/// Builds the program, and measures it with crews of two sizes.
pub(crate) fn all() -> Done {
    step("program", || cargo(&["build", "--release", "--package", "desk", "--locked"]))?;
    step("scale", || {
        cargo(&["bench", "--package", "holdfast-tests", "--bench", "scale", "--locked"])
    })
}
