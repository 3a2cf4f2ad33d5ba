//! Requests as a shell sends them, and answers as it brings them back.

use super::Secret;

/// What is asked of a server.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Method {
    /// Reads a file, or a page of a listing.
    Get,
    /// Writes a file.
    Put,
    /// Deletes a file.
    Delete,
    /// WebDAV: lists a folder.
    Propfind,
    /// WebDAV: makes a folder.
    Mkcol,
    /// WebDAV: gives a file its name.
    Move,
}

impl Method {
    /// As it stands in a request.
    pub fn as_str(self) -> &'static str {
        match self {
            Method::Get => "GET",
            Method::Put => "PUT",
            Method::Delete => "DELETE",
            Method::Propfind => "PROPFIND",
            Method::Mkcol => "MKCOL",
            Method::Move => "MOVE",
        }
    }

    /// True for one that sends something, be it nothing.
    pub fn has_body(self) -> bool {
        matches!(self, Method::Put | Method::Propfind)
    }
}

/// A request, whole: a shell sends it as it is, follows no redirect, adds no cookie and no credentials, and reads
/// no more of the answer than `largest` bytes and one.
#[derive(Clone, Debug)]
pub struct HttpRequest {
    /// What is asked.
    pub method: Method,
    /// Of what.
    pub url: String,
    /// All headers but `Authorization`, `Host` and `Content-Length`.
    pub headers: Vec<(String, String)>,
    /// The `Authorization` header, apart from the others so that it is never printed with them.
    pub authorization: Secret,
    /// What is sent.
    pub body: Vec<u8>,
    /// The largest answer that is of use, in bytes.
    pub largest: u64,
}

/// An answer as it came.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct HttpAnswer {
    /// The status.
    pub status: u16,
    /// The headers, with names in any case.
    pub headers: Vec<(String, String)>,
    /// What came: whole, or one byte more than was asked for at most.
    pub body: Vec<u8>,
}

impl HttpAnswer {
    /// The first header of a name.
    pub(super) fn header(&self, name: &str) -> Option<&str> {
        self.headers(name).next()
    }

    /// All headers of a name.
    pub(super) fn headers(&self, name: &str) -> impl Iterator<Item = &str> {
        let named = self.headers.iter().filter(move |(found, _)| found.eq_ignore_ascii_case(name));
        named.map(|(_, value)| value.trim())
    }

    /// True for a page made for people: a sign-in page, a wireless network's, an error's.
    pub(super) fn is_page(&self) -> bool {
        let kind = self.header("content-type").unwrap_or_default().to_ascii_lowercase();
        kind.starts_with("text/html") || kind.starts_with("application/xhtml")
    }

    /// True for a status that sends on to somewhere else.
    pub(super) fn is_elsewhere(&self) -> bool {
        matches!(self.status, 300..=303 | 305..=308)
    }
}
