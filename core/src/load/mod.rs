//! Loads: what the room can build, what comes next and why, and how much it was.

mod next;
mod plates;
mod prepared;
mod rack;
mod reason;
mod volume;

pub use next::{CAP_PERCENT, History, NextLoad, OpenFlag, Ruled, SetDone, Time, next_loads};
pub use plates::{
    Colour, Disc, Federation, FederationBar, MOST_LOADS, Proof, Ramp, RampError, RampStep,
    Tolerance, WarmUpSet, ramp, warm_up,
};
pub use prepared::Prepared;
pub(crate) use rack::MAX_PLATES_A_SIDE;
pub use rack::{Build, Rack};
pub use reason::Reason;
pub use volume::{session_load, volume_load};
