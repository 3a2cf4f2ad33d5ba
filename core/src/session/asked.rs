//! What a strength piece asks for, kept from one drawing to the next.

use super::bar::Bar;
use super::screen::{ChangeView, StrengthView};
use crate::load::{NextLoad, WarmUpFor};

/// What a strength piece asks for: of one snapshot the same for the same loads on the same bar.
pub(crate) struct Asked {
    pub(super) loads: Vec<NextLoad>,
    pub(super) bar: Bar,
    pub(super) lift: WarmUpFor,
    /// The piece as if nothing were done of it, its warm-up included.
    pub(super) view: StrengthView,
    /// What to do to the bar for each set; not yet on it.
    pub(super) changes: Vec<Option<ChangeView>>,
}
