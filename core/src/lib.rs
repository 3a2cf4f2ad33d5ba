//! Holdfast's core: everything that decides, and nothing that draws, sends or asks for the time.
//!
//! Data has one direction: plan and journal go into the store, the store gives screens. A tap
//! becomes an entry, the entry is committed, the screen is read back.

mod error;
mod id;
mod instant;
mod mass;
mod store;
mod words;

pub mod care;
pub mod clock;
pub mod companion;
pub mod exchange;
pub mod journal;
pub mod load;
pub mod motion;
pub mod plan;
pub mod review;

pub use companion::{Companion, CompanionError, CompanionResult};
pub use id::{CrewId, DeviceId, PersonId, RecordId};
pub use instant::Instant;
pub use mass::{Mass, MassError, MassUnit};
