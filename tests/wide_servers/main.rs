//! Carriers against more that is real: two WebDAV servers, a cluster that speaks S3, and a person's file synchroniser between
//! two folders. `cargo task check wide` installs them and runs these; a plain `cargo test` does not.
//!
//! What is asked of every server stands in `tests/servers`, and is asked here of these.
#![cfg(unix)]
#![expect(
    clippy::panic,
    clippy::print_stdout,
    clippy::unwrap_used,
    reason = "a check that stops is a check that failed, and what it prints is its figures"
)]

#[path = "../servers/agree.rs"]
mod agree;
#[path = "../servers/curl.rs"]
mod curl;
#[path = "../servers/faults.rs"]
mod faults;
#[path = "../servers/killed.rs"]
mod killed;
#[path = "../servers/lengths.rs"]
mod lengths;
#[path = "../servers/meet.rs"]
mod meet;
#[path = "../servers/server.rs"]
mod server;

mod cluster;
mod outage;
mod servers;
mod synced;
mod syncthing;

#[test]
fn no_file_is_forgotten() {
    holdfast_tests::no_file_is_forgotten("wide_servers", "main", include_str!("main.rs"));
}
