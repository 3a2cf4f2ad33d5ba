//! Holdfast's core: everything that decides, and nothing that draws, sends or asks for the time.
//!
//! Data has one direction: plan and journal go into the store, the store gives screens. A tap
//! becomes an entry, the entry is committed, the screen is read back.

mod error;
#[cfg(feature = "ffi")]
mod ffi;
#[cfg(test)]
mod fixtures;
mod id;
mod instant;
mod mass;

mod device;
mod door;
mod store;
mod words;

pub mod care;
pub mod clock;
pub mod coach;
pub mod exchange;
pub mod history;
pub mod journal;
pub mod load;
pub mod motion;
pub mod plan;
pub mod session;

pub use device::Start;
pub use door::{
    Field, Holdfast, HoldfastError, HoldfastResult, Thing, Who, check_plan, plates, put_file,
};
pub use id::{CrewId, DeviceId, PersonId, RecordId};
pub use instant::{Instant, Millis};
pub use mass::{Mass, MassError, MassUnit};

#[cfg(feature = "ffi")]
uniffi::setup_scaffolding!("holdfast");
