//! The key of a question.

use crate::say::question as say;
use crate::session::{Key, KeyKind, Tap};

/// A key that saves what it says.
pub(super) fn saves(words: String, more: Option<String>, tap: Tap) -> Key {
    Key { kind: KeyKind::Saves, words, more, tap: Some(tap), asks: None }
}

/// A key that waits, and says what for.
pub(super) fn waits(words: &str) -> Key {
    let more = Some(say::not_saved_yet().into());
    Key { kind: KeyKind::Waits, words: words.into(), more, tap: None, asks: None }
}
