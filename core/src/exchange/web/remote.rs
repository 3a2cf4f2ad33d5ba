//! A carrier over the network, checked: what its operations need of its settings.

use std::fmt;

use data_encoding::BASE64;
use serde::Serialize;
use zeroize::Zeroizing;

use super::Secret;
use super::address::Address;

/// A carrier over the network whose settings were checked.
#[derive(Clone, Debug)]
pub enum Remote {
    /// A folder on a WebDAV server.
    Dav(DavAt),
    /// A part of a bucket on an S3-compatible server.
    S3(S3At),
}

/// Which kind a server is, or should have been.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
#[allow(missing_docs, reason = "the names say it")]
pub enum ServerKind {
    WebDav,
    S3,
}

/// A folder on a WebDAV server.
#[derive(Clone, Debug)]
pub struct DavAt {
    pub(super) base: Address,
    pub(super) authorization: Secret,
}

/// A part of a bucket on an S3-compatible server.
#[derive(Clone, Debug)]
pub struct S3At {
    pub(super) bucket: Address,
    /// Empty, or with a slash at its end.
    pub(super) prefix: String,
    pub(super) region: String,
    pub(super) key_id: String,
    pub(super) secret: Secret,
}

impl DavAt {
    /// Signing in by RFC 7617, in UTF-8.
    pub(super) fn new(base: Address, user: &str, password: &Secret) -> DavAt {
        let pair = Zeroizing::new(format!("{user}:{}", password.expose()));
        let authorization = format!("Basic {}", BASE64.encode(pair.as_bytes()));
        DavAt { base, authorization: Secret::new(authorization) }
    }
}

impl Remote {
    /// What the server should be.
    pub fn kind(&self) -> ServerKind {
        match self {
            Remote::Dav(_) => ServerKind::WebDav,
            Remote::S3(_) => ServerKind::S3,
        }
    }
}

/// Where it is, for a person: without user and password, which an address never holds.
impl fmt::Display for Remote {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Remote::Dav(at) => f.write_str(&at.base.folder_url()),
            Remote::S3(at) => write!(f, "{}{}", at.bucket.folder_url(), at.prefix),
        }
    }
}
