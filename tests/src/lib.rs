//! What the checks share, each once: devices in temporary folders on a clock that stands still until it
//! is told to move, the program and a terminal it runs in, plans, short makers of taps, and what is
//! read from a screen.
#![expect(
    clippy::expect_used,
    clippy::panic,
    clippy::print_stdout,
    clippy::unwrap_used,
    reason = "a check that stops is a check that failed, and what it prints is its figures"
)]

mod carrier;
mod crew;
mod desk;
mod device;
mod instant;
mod leaf;
mod modules;
mod phone;
mod plans;
mod program;
mod seed;
mod stories;

pub mod athlete;
pub mod bare;
pub mod crowd;
pub mod faults;
pub mod ilp;
pub mod kills;
pub mod kits;
pub mod laws;
pub mod lifters;
pub mod long_log;
pub mod oil;
pub mod oracle;
pub mod pairing;
pub mod power;
pub mod season;
pub mod sources;
pub mod stops;
pub mod taps;
#[cfg(unix)]
pub mod terminal;
pub mod timing;
pub mod train;
pub mod views;
pub mod world;

pub use carrier::Carrier;
pub use crew::Crew;
pub use desk::Desk;
pub use device::Device;
pub use instant::{DAY, HOUR, MINUTE, at, later};
pub use leaf::{Writer, sha256};
pub use modules::no_file_is_forgotten;
pub use phone::Phone;
pub use plans::{
    CELLAR_KIT, DEMO_PLAN, EVERY_DAY, EVERY_KIND, LONGER_DAY, SMALL_PLAN, changed, this_week,
};
pub use program::{Ran, program, run, run_with};
pub use seed::{fresh_seed, seed_or};
