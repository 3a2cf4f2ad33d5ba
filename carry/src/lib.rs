//! Carries files between a device and its carrier: a folder, a WebDAV or an S3-compatible server.
//!
//! What a request says, what an answer means and how long to wait before the next try is decided in the core
//! (`holdfast_core::exchange::web`). This crate opens connections, reads no more than it was told to, and waits.
//!
//! ```no_run
//! # fn main() -> Result<(), Box<dyn std::error::Error>> {
//! # let now = || holdfast_core::Instant {
//! #     wall_ms: 1_793_728_800_000, offset_min: 0, boot_ms: 0, boot_id: String::new(),
//! # };
//! use carry::{Carried, Line};
//! use holdfast_core::exchange::web::{Carrier, Secret, WebDav};
//!
//! let carrier = Carrier::WebDav(WebDav {
//!     url: "https://files.example.org/cellar".into(),
//!     user: "ines".into(),
//!     password: Secret::new("only for this app"),
//!     unencrypted: false,
//! });
//! // `now` gives the moment, and a number drawn by chance keeps two devices' half-written files apart.
//! let line = Line::open(&carrier, now, 0x5eed).map_err(|faults| faults[0].clone())?;
//! match line.list(None, None) {
//!     Ok(listing) => assert!(listing.whole),
//!     Err(Carried::Offline(offline)) => println!("{offline}"),
//!     Err(fault) => return Err(fault.into()),
//! }
//! # Ok(())
//! # }
//! ```

mod folder;
mod kept;
mod lanes;
mod line;
mod send;
#[cfg(test)]
mod tests;

pub use kept::{Named, carriers, keep_carriers};
pub use line::{Carried, Line};
