//! The journal: what a device's append-only log holds.

mod body;
mod crew;
mod entry;
#[cfg(feature = "fuzz")]
pub mod fuzz;
mod hlc;
mod kinds;
mod lift;
mod note;
mod sane;
mod version;

#[cfg(test)]
mod tests;

pub(crate) use body::Kind;
pub use body::{Body, Keys};
pub use crew::{Admit, Forgot, Here, HexKey, LastLeaf, Remove, Stopped};
pub use entry::{Entry, EntryId, MAX_DEPTH, MAX_LINE_BYTES, READER_VERSION};
pub(crate) use entry::{body_of, depth, line_digest, raw_body_of};
pub use hlc::{Hlc, MAX_AHEAD_MS};
pub use kinds::{
    BarTaken, Cleared, ClockMark, Discomfort, Finish, Held, OptionTaken, Part, PlanText, Profile,
    PutOff, Range, RestAct, RestMark, Role, Ruling, Session, TakenBack, Until, WindowDone,
};
pub use lift::{Lift, Max, SetAside};
pub use note::{MAX_NOTE, Note, NoteFrom};
pub use version::Version;
