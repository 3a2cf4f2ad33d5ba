//! What was saved last, on a phone.

use serde::Serialize;

/// A line that says that something was saved.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct SavedLine {
    /// All of it: `Saved: Squat set 2, 60 kg × 6`.
    pub text: String,
    /// Beside a tick, in a word or two: `Set 2`.
    pub short: String,
}
