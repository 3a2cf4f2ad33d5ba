//! Loads: what the room can build, and what comes next.

mod rack;

pub use rack::{Build, Rack};
