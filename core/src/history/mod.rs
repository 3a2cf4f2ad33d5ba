//! What athlete and coach both read of a person: sets, flags, and the loads that follow from them.

mod bar;
mod export;
mod flags;
mod notes;
mod order;
mod past;
mod propose;
mod strength;

pub(crate) use bar::bar_taken;
pub(crate) use export::export;
pub use export::{Export, Table, TableRow};
pub(crate) use flags::{Flags, flags, is_cleared, open_flags, stops};
pub(crate) use notes::{note_words, notes_of, to_be_read};
pub(crate) use order::in_order;
pub(crate) use past::{For, last_set, past, set_aside, set_done};
pub(crate) use propose::{Proposed, lifted_last, propose, upcoming};
pub(crate) use strength::{latest, made_lately, set_seen};
