//! Where a carrier is: the part of a URL that carriers need, and nothing else. No user, no query, no fragment;
//! a path is kept as decoded segments, so that it is decoded once and encoded once.

use std::fmt;
use std::net::{IpAddr, Ipv6Addr};

use percent_encoding::{AsciiSet, NON_ALPHANUMERIC, utf8_percent_encode};

/// The longest address that is read.
const MAX_ADDRESS_BYTES: usize = 2_000;

/// What stands in a path as it is: RFC 3986's unreserved signs. S3 signs paths in this form.
const ENCODED: &AsciiSet = &NON_ALPHANUMERIC.remove(b'-').remove(b'.').remove(b'_').remove(b'~');

/// Percent-encodes one segment of a path, or one part of a query.
pub(super) fn encoded(text: &str) -> String {
    utf8_percent_encode(text, ENCODED).to_string()
}

/// Why a text is no address of a carrier.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum AddressFault {
    /// It begins with neither `https://` nor `http://`.
    Scheme,
    /// No host, or one that cannot be.
    Host,
    /// A host with letters beyond ASCII.
    HostLetters,
    /// A port that is none.
    Port,
    /// A user name or password before the host.
    UserInfo,
    /// A query or a fragment.
    Query,
    /// A path with a segment that carriers refuse: `..`, an encoded slash, a backslash.
    Path,
    /// Longer than addresses are.
    Long,
}

/// Scheme, host and port: who is given the password.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Origin {
    secure: bool,
    /// In small letters; an IPv6 address in brackets.
    host: String,
    port: u16,
}

/// An origin and a path.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Address {
    pub(super) origin: Origin,
    /// Decoded, without empty ones.
    pub(super) path: Vec<String>,
}

impl Origin {
    /// The host as the `Host` header has it.
    pub(super) fn host_header(&self) -> String {
        if self.port == self.usual_port() {
            self.host.clone()
        } else {
            format!("{}:{}", self.host, self.port)
        }
    }

    /// True for the same host, whatever the scheme and the port.
    pub(super) fn is_same_host(&self, other: &Origin) -> bool {
        self.host == other.host
    }

    /// The same origin with a name before its host, as buckets have it.
    pub(super) fn below(&self, name: &str) -> Origin {
        Origin { host: format!("{name}.{}", self.host), ..self.clone() }
    }

    /// True when what is sent there is encrypted, or stays on this machine or in this building.
    pub(super) fn is_safe(&self) -> bool {
        self.secure || self.is_near()
    }

    /// True for an IP address, below which no bucket can have a name.
    pub(super) fn is_number(&self) -> bool {
        self.number().is_some()
    }

    fn number(&self) -> Option<IpAddr> {
        self.host.trim_start_matches('[').trim_end_matches(']').parse().ok()
    }

    /// This machine, private networks (RFC 1918, 4193, 3927), and names that only a local network knows: those
    /// without a dot, `.local` (RFC 6762), `.home.arpa` (RFC 8375) and `.internal`.
    fn is_near(&self) -> bool {
        match self.number() {
            Some(IpAddr::V4(ip)) => ip.is_loopback() || ip.is_private() || ip.is_link_local(),
            Some(IpAddr::V6(ip)) => {
                ip.is_loopback() || ip.is_unique_local() || ip.is_unicast_link_local()
            }
            None => {
                let local = [".localhost", ".local", ".home.arpa", ".internal"];
                !self.host.contains('.') || local.iter().any(|end| self.host.ends_with(end))
            }
        }
    }

    fn usual_port(&self) -> u16 {
        if self.secure { 443 } else { 80 }
    }
}

impl fmt::Display for Origin {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let scheme = if self.secure { "https" } else { "http" };
        write!(f, "{scheme}://{}", self.host_header())
    }
}

impl Address {
    /// Reads an absolute address.
    pub(super) fn parse(text: &str) -> Result<Address, AddressFault> {
        if text.len() > MAX_ADDRESS_BYTES {
            return Err(AddressFault::Long);
        }
        let (scheme, rest) = text.split_once("://").ok_or(AddressFault::Scheme)?;
        let secure = match scheme.to_ascii_lowercase().as_str() {
            "https" => true,
            "http" => false,
            _ => return Err(AddressFault::Scheme),
        };
        if rest.contains(['?', '#']) {
            return Err(AddressFault::Query);
        }
        let (authority, path) = rest.split_at(rest.find('/').unwrap_or(rest.len()));
        if authority.contains('@') {
            return Err(AddressFault::UserInfo);
        }
        Ok(Address { origin: origin(secure, authority)?, path: segments(path)? })
    }

    /// Reads what a server names, relative to this folder: an href of a listing, or where it sends on to.
    pub(super) fn named(&self, reference: &str) -> Result<Address, AddressFault> {
        if reference.len() > MAX_ADDRESS_BYTES {
            return Err(AddressFault::Long);
        }
        if reference.starts_with("//") {
            let scheme = if self.origin.secure { "https:" } else { "http:" };
            return Address::parse(&format!("{scheme}{reference}"));
        }
        if reference.contains("://") {
            return Address::parse(reference);
        }
        if reference.contains(['?', '#']) {
            return Err(AddressFault::Query);
        }
        let mut path = if reference.starts_with('/') { Vec::new() } else { self.path.clone() };
        path.extend(segments(reference)?);
        Ok(Address { origin: self.origin.clone(), path })
    }

    /// The address of what is in this folder.
    pub(super) fn with(&self, more: &[&str]) -> Address {
        let more = more.iter().map(|segment| (*segment).to_owned());
        let path = self.path.iter().cloned().chain(more).collect();
        Address { origin: self.origin.clone(), path }
    }

    /// The path, encoded, of a file.
    pub(super) fn file_path(&self) -> String {
        let path: Vec<String> = self.path.iter().map(|segment| encoded(segment)).collect();
        format!("/{}", path.join("/"))
    }

    /// The path, encoded, of a folder: with a slash at its end, without which servers send on.
    pub(super) fn folder_path(&self) -> String {
        let path = self.file_path();
        if path.ends_with('/') { path } else { path + "/" }
    }

    /// The whole address of a file.
    pub(super) fn file_url(&self) -> String {
        format!("{}{}", self.origin, self.file_path())
    }

    /// The whole address of a folder.
    pub(super) fn folder_url(&self) -> String {
        format!("{}{}", self.origin, self.folder_path())
    }
}

fn origin(secure: bool, authority: &str) -> Result<Origin, AddressFault> {
    let host_end = if authority.starts_with('[') {
        authority.find(']').ok_or(AddressFault::Host)? + 1
    } else {
        authority.find(':').unwrap_or(authority.len())
    };
    let (host, port) = authority.split_at(host_end);
    let usual = if secure { 443 } else { 80 };
    let port = match port.strip_prefix(':') {
        None if port.is_empty() => usual,
        Some("") => usual,
        Some(digits) if digits.bytes().all(|byte| byte.is_ascii_digit()) => {
            digits.parse().ok().filter(|port| *port > 0).ok_or(AddressFault::Port)?
        }
        _ => return Err(AddressFault::Port),
    };
    let host = host.to_ascii_lowercase();
    if !host.is_ascii() {
        return Err(AddressFault::HostLetters);
    }
    let of_name = |byte: u8| byte.is_ascii_alphanumeric() || b"-._".contains(&byte);
    let is_name = !host.is_empty() && host.len() <= 253 && host.bytes().all(of_name);
    let inside = host.strip_prefix('[').and_then(|host| host.strip_suffix(']'));
    let is_v6 = inside.is_some_and(|inside| inside.parse::<Ipv6Addr>().is_ok());
    let is_dotted = host.starts_with('.') || host.contains("..");
    if is_dotted || !(is_name || is_v6) {
        return Err(AddressFault::Host);
    }
    Ok(Origin { secure, host, port })
}

/// The segments of a path, decoded once.
fn segments(path: &str) -> Result<Vec<String>, AddressFault> {
    path.split('/').filter(|segment| !segment.is_empty()).map(segment).collect()
}

fn segment(encoded: &str) -> Result<String, AddressFault> {
    let mut bytes = Vec::with_capacity(encoded.len());
    let mut rest = encoded.bytes();
    while let Some(byte) = rest.next() {
        if byte != b'%' {
            bytes.push(byte);
            continue;
        }
        let mut digit = || rest.next().and_then(|byte| (byte as char).to_digit(16));
        let (high, low) = (digit(), digit());
        let decoded = high.zip(low).map(|(high, low)| high * 16 + low);
        let decoded = decoded.and_then(|value| u8::try_from(value).ok());
        bytes.push(decoded.ok_or(AddressFault::Path)?);
    }
    let decoded = String::from_utf8(bytes).map_err(|_| AddressFault::Path)?;
    if is_segment(&decoded) { Ok(decoded) } else { Err(AddressFault::Path) }
}

/// True for what can be one segment of a path and leads nowhere else.
pub(super) fn is_segment(text: &str) -> bool {
    let leads_away = |letter: char| letter == '/' || letter == '\\' || letter.is_control();
    !text.is_empty() && text != "." && text != ".." && !text.contains(leads_away)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_address_is_decoded_once_and_encoded_once() {
        for (text, url) in [
            ("https://files.example.org", "https://files.example.org/"),
            ("HTTPS://Files.Example.org:443/dav//crew/", "https://files.example.org/dav/crew/"),
            ("http://127.0.0.1:8080/dav", "http://127.0.0.1:8080/dav/"),
            ("https://[2001:DB8::1]:8443/a", "https://[2001:db8::1]:8443/a/"),
            ("https://h.example/meine übungen/", "https://h.example/meine%20%C3%BCbungen/"),
            ("https://h.example/meine%20%c3%bcbungen", "https://h.example/meine%20%C3%BCbungen/"),
            ("https://h.example/a%252e/b+c", "https://h.example/a%252e/b%2Bc/"),
        ] {
            assert_eq!(Address::parse(text).unwrap().folder_url(), url, "{text}");
        }
    }

    #[test]
    fn what_could_lead_elsewhere_is_refused() {
        use AddressFault::{Host, HostLetters, Long, Path, Port, Query, Scheme, UserInfo};
        let long = format!("https://h.example/{}", "a".repeat(2_000));
        for (text, fault) in [
            ("", Scheme),
            ("files.example.org/dav", Scheme),
            ("ftp://files.example.org", Scheme),
            ("https://", Host),
            ("https:///dav", Host),
            ("https://a b/", Host),
            ("https://[::1/", Host),
            ("https://[nine]/", Host),
            ("https://a..b/", Host),
            ("https://bücher.example/", HostLetters),
            ("https://h.example:0/", Port),
            ("https://h.example:65536/", Port),
            ("https://h.example:8o/", Port),
            ("https://ana:pw@h.example/", UserInfo),
            ("https://h.example\\@evil.example/", UserInfo),
            ("https://h.example/?a=b", Query),
            ("https://h.example/#x", Query),
            ("https://h.example/a/../b", Path),
            ("https://h.example/a/%2e%2E/b", Path),
            ("https://h.example/a%2fb", Path),
            ("https://h.example/a%5cb", Path),
            ("https://h.example/a%00b", Path),
            ("https://h.example/a%0ab", Path),
            ("https://h.example/a%zz", Path),
            ("https://h.example/a%f", Path),
            ("https://h.example/%ff", Path),
            (&long, Long),
        ] {
            assert_eq!(Address::parse(text), Err(fault), "{text}");
        }
    }

    #[test]
    fn what_a_server_names_is_relative_to_the_folder() {
        let base = Address::parse("https://h.example/dav/crew/").unwrap();
        for (named, url) in [
            ("/dav/crew/a.leaf", "https://h.example/dav/crew/a.leaf"),
            ("a.leaf", "https://h.example/dav/crew/a.leaf"),
            ("https://h.example/x", "https://h.example/x"),
            ("//h.example/x", "https://h.example/x"),
            ("http://other.example/x", "http://other.example/x"),
        ] {
            assert_eq!(base.named(named).unwrap().file_url(), url, "{named}");
        }
        for named in ["../x", "/dav/%2e%2e/x", "javascript:x?y", "/x?y=z", "https://a@h.example/"] {
            assert!(base.named(named).is_err(), "{named}");
        }
    }

    #[test]
    fn an_unencrypted_way_is_safe_within_a_building_only() {
        for (host, safe) in [
            ("localhost", true),
            ("127.0.0.1:8080", true),
            ("[::1]", true),
            ("10.1.2.3", true),
            ("172.31.0.1", true),
            ("172.32.0.1", false),
            ("192.168.178.20", true),
            ("[fd00::1]", true),
            ("[fe80::1]", true),
            ("[2001:db8::1]", false),
            ("nas", true),
            ("nas.local", true),
            ("nas.home.arpa", true),
            ("nas.local.example.org", false),
            ("example.org", false),
            ("8.8.8.8", false),
        ] {
            let near = Address::parse(&format!("http://{host}/")).unwrap();
            assert_eq!(near.origin.is_safe(), safe, "{host}");
            let secure = Address::parse(&format!("https://{host}/")).unwrap();
            assert!(secure.origin.is_safe(), "{host}");
        }
    }
}
