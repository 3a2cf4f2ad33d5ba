//! What a strength piece asks for, kept from one drawing to the next.

use super::bar::Bar;
use super::screen::{ChangeView, StrengthView};
use crate::load::{NextLoad, NextLoads, ProposedSet, WarmUpFor};

/// What a strength piece asks for: of one snapshot the same for the same loads on the same bar.
pub(crate) struct Asked {
    pub(super) next: NextLoads,
    /// True in an easy week.
    pub(super) easy: bool,
    pub(super) bar: Bar,
    pub(super) lift: WarmUpFor,
    /// The piece as if nothing were done of it, its warm-up included.
    pub(super) view: StrengthView,
    /// What to do to the bar for each set; not yet on it.
    pub(super) changes: Vec<Option<ChangeView>>,
}

impl Asked {
    /// What is proposed, set by set, as a set that is logged keeps it.
    pub(super) fn proposed(&self) -> Vec<ProposedSet> {
        let proposed =
            |next: &NextLoad| ProposedSet { load: next.load, reps: next.reps, open: next.open };
        self.next.sets.iter().map(proposed).collect()
    }
}
