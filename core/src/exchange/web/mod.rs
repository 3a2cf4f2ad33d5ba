//! Carriers over the network: WebDAV and S3-compatible servers. The core makes and signs each request and reads
//! each answer; a shell sends and brings them, and does nothing else. So what one shell proves against real servers
//! is what all of them run.
//!
//! ```
//! use holdfast_core::Instant;
//! use holdfast_core::exchange::web::{
//!     Carrier, Done, HttpAnswer, Next, Operation, Secret, Transfer, WebDav,
//! };
//!
//! let carrier = Carrier::WebDav(WebDav {
//!     url: "https://files.example.org/cellar".into(),
//!     user: "ines".into(),
//!     password: Secret::new("only for this app"),
//!     unencrypted: false,
//! });
//! let remote = carrier.remote().unwrap().expect("not a folder");
//! # let now =
//! #     Instant { wall_ms: 1_793_728_800_000, offset_min: 0, boot_ms: 0, boot_id: String::new() };
//! let get = Operation::Get { folder: "pairing".into(), name: "one.pair".into() };
//! let (mut transfer, request) = Transfer::begin(&remote, get, &now).unwrap();
//! assert_eq!(request.url, "https://files.example.org/cellar/pairing/one.pair");
//!
//! // A shell sends the request, and brings what came.
//! let answer = HttpAnswer { status: 200, body: b"sealed".to_vec(), ..HttpAnswer::default() };
//! match transfer.answered(&answer, &now) {
//!     Next::Done(Done::Got { content }) => assert_eq!(content, b"sealed"),
//!     other => panic!("{other:?}"),
//! }
//! ```

mod address;
mod dav;
mod fault;
mod http;
mod operation;
mod remote;
mod retry;
mod s3;
mod secret;
mod settings;
#[cfg(test)]
mod tests;
mod transfer;
mod xml;

pub use fault::{Offline, WebFault};
pub use http::{HttpAnswer, HttpRequest, Method};
pub use operation::{Done, Listing, Operation, is_file_name};
pub use remote::{DavAt, Remote, S3At, ServerKind};
pub use retry::{MAX_TRIES, wait_before_next};
pub use secret::Secret;
pub use settings::{Carrier, NO_REGION, S3, Setting, SettingFault, WebDav};
pub use transfer::{Next, Transfer};

/// The largest file a carrier brings: a leaf's largest size.
pub const MAX_FILE_BYTES: u64 = 4 * 1024 * 1024;
/// The largest answer to one request for a listing.
pub const MAX_LISTING_BYTES: u64 = 8 * 1024 * 1024;
/// The largest answer that is read where only its status matters.
pub const MAX_ANSWER_BYTES: u64 = 64 * 1024;
/// The most names one listing holds.
pub const MAX_NAMES: usize = crate::exchange::MAX_LISTING;
