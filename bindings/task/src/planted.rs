//! Bugs that are planted, and how many stories of a crew it takes to catch each.

use crate::steps::{Done, cargo};

/// Plays them, in release.
pub(crate) fn all() -> Done {
    let test = ["test", "--release", "--package", "holdfast-tests", "--test", "planted"];
    let with = ["--features", "planted", "--locked", "--", "--nocapture"];
    cargo(&[&test[..], &with].concat())
}
