//! What the checks share: a crew of devices in temporary folders, a carrier, and a clock that stands
//! still until it is told to move.

mod crew;
mod plans;
mod program;

pub use crew::{Carrier, Crew, Device, at};
pub use plans::{DEMO_PLAN, SMALL_PLAN};
pub use program::{Ran, program, run};
