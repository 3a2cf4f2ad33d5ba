//! A set scheme: the reps asked for, set by set.

use serde::{Deserialize, Serialize};

/// Reps set by set, and whether the last set is open.
///
/// Loads are carried from the last time *this* scheme was done, so two pieces with one movement and
/// different schemes keep histories of their own.
///
/// A field added later has a default, and at that default the [key](Scheme::key) stays as it was: sets
/// logged before must not be hidden by it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Scheme {
    /// Reps asked for in each set.
    #[serde(default)]
    pub reps: Vec<u32>,
    /// True when the last set is taken to as many good reps as possible.
    #[serde(default)]
    pub open: bool,
}

impl Scheme {
    /// How many sets.
    pub fn sets(&self) -> u32 {
        self.reps.len() as u32
    }

    /// Reps asked for in a set counted from 1.
    pub fn target(&self, set: u32) -> Option<u32> {
        let index = usize::try_from(set).ok()?.checked_sub(1)?;
        self.reps.get(index).copied()
    }

    /// True when the set, counted from 1, is the open one.
    pub fn is_open(&self, set: u32) -> bool {
        self.open && set == self.sets()
    }

    /// The text histories are keyed by, for example `8,6,5,5 open`.
    pub fn key(&self) -> String {
        let reps: Vec<String> = self.reps.iter().map(u32::to_string).collect();
        let open = if self.open { " open" } else { "" };
        format!("{}{open}", reps.join(","))
    }
}
