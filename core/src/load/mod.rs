//! Loads: what the room can build, what comes next and why, and how much it was.

mod next;
mod prepared;
mod rack;
mod reason;
mod spare;
mod volume;

pub mod strength;

pub use next::{
    CAP_PERCENT, History, NextLoad, OpenFlag, Ruled, SetDone, Time, next_loads, weeks_away,
};
pub use prepared::Prepared;
pub use rack::{Build, Rack};
pub use reason::Reason;
pub use spare::{HardWork, WorkedSet, hard_work};
pub use volume::{session_load, volume_load};
