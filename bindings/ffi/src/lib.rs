//! The whole foreign surface: one object, records in, a whole screen out.
//!
//! Nothing is decided here. The records and enums are the core's own, declared again for UniFFI by
//! the build script from the core's sources; the compiler holds the two together.

mod companion;
mod ids;

/// The core's records and enums, as the build script declares them.
mod surface {
    use chrono::NaiveDate;

    use crate::ids::*;

    include!(concat!(env!("OUT_DIR"), "/surface.rs"));
}

pub use companion::Holdfast;

uniffi::setup_scaffolding!("holdfast");
