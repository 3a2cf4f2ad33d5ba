//! Carriers against real servers, each started here on loopback and ended again. `cargo task check servers` installs
//! the servers and runs these; a plain `cargo test` does not.
//!
//! A second client that shares no code with ours, `curl`, reads back what was written and writes what is read.
#![cfg(unix)]
#![expect(clippy::panic, clippy::unwrap_used, reason = "a check that stops is a check that failed")]

mod agree;
mod curl;
mod faults;
mod killed;
mod lengths;
mod limits;
mod meet;
mod server;
mod servers;
mod stock;
mod straight;
mod tls;

#[test]
fn no_file_is_forgotten() {
    holdfast_tests::no_file_is_forgotten("servers", "main", include_str!("main.rs"));
}
