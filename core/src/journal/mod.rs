//! The journal: what a device's append-only log holds, and the files it travels in.

mod body;
#[cfg(test)]
mod body_tests;
mod entry;
mod hlc;
mod leaf;
mod name;
mod sane;

pub(crate) use body::Kind;
pub use body::{
    Body, Cleared, ClockMark, Decision, Discomfort, Dropped, Finish, Held, Keys, Lift, OptionTaken,
    PlanText, Profile, Range, Role, Ruling, Session, WindowDone,
};
pub use entry::{Entry, MAX_DEPTH, MAX_LINE_BYTES, READER_VERSION, Version};
pub(crate) use entry::{body_of, line_digest, raw_body_of};
pub use hlc::{Hlc, MAX_AHEAD_MS};
pub use leaf::{Header, LEAF_FORMAT, Leaf, LeafFault, MAX_LEAF_BYTES, MAX_LEAF_ENTRIES};
pub use name::LeafName;
