//! Loads: what the room can build, what comes next and why, and how much it was.

mod next;
mod prepared;
mod rack;
mod reason;
mod volume;

pub mod strength;

pub use next::{CAP_PERCENT, History, NextLoad, OpenFlag, Ruled, SetDone, Time, next_loads};
pub use prepared::Prepared;
pub use rack::{Build, Rack};
pub use reason::Reason;
pub use volume::{session_load, volume_load};
