//! What somebody says of their carrier, and what is wrong with it.

use super::Secret;
use super::address::{Address, AddressFault, is_segment};
use super::remote::{DavAt, Remote, S3At};
use crate::say::web as say;

/// A carrier as it is kept in a device's settings.
#[derive(Clone, Debug)]
pub enum Carrier {
    /// A folder: synchronised, on a stick, on a share.
    Folder {
        /// Its path.
        path: String,
    },
    /// A folder on a WebDAV server.
    WebDav(WebDav),
    /// A part of a bucket on an S3-compatible server.
    S3(S3),
}

/// A folder on a WebDAV server.
#[derive(Clone, Debug, Default)]
pub struct WebDav {
    /// The folder's address, `https://...`. It must be there.
    pub url: String,
    /// Who signs in.
    pub user: String,
    /// With what: a password for this app alone where the server makes those.
    pub password: Secret,
    /// True where somebody said that it may go unencrypted over networks that are not their own.
    pub unencrypted: bool,
}

/// The region of a server that has none, as such servers themselves call it.
pub const NO_REGION: &str = "us-east-1";

/// A part of a bucket on an S3-compatible server.
#[derive(Clone, Debug, Default)]
pub struct S3 {
    /// The server's address, without the bucket.
    pub endpoint: String,
    /// Its region, [`NO_REGION`] where the server has none.
    pub region: String,
    /// The bucket. It must be there.
    pub bucket: String,
    /// What stands before all names, `crew/cellar`; may be empty.
    pub prefix: String,
    /// The key's name.
    pub key_id: String,
    /// The key itself.
    pub secret: Secret,
    /// True where the bucket stands in the path and not before the host, as on most servers of one's own.
    pub path_style: bool,
    /// True where somebody said that it may go unencrypted over networks that are not their own.
    pub unencrypted: bool,
}

/// A part of a carrier's settings.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "a variant says what its settings' field says")]
pub enum Setting {
    Path,
    Url,
    User,
    Password,
    Endpoint,
    Region,
    Bucket,
    Prefix,
    KeyId,
    Secret,
}

/// What is wrong with one part of a carrier's settings.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{reason}")]
pub struct SettingFault {
    /// Which.
    pub setting: Setting,
    /// What is wrong, and what is wanted. Never holds a secret.
    pub reason: String,
}

impl Carrier {
    /// Checks all parts; a carrier over the network as its operations need it, `None` for a folder.
    ///
    /// # Errors
    /// Each part that cannot be, with what is wanted.
    pub fn remote(&self) -> Result<Option<Remote>, Vec<SettingFault>> {
        match self {
            Carrier::Folder { path } if path.trim().is_empty() => {
                Err(vec![fault(Setting::Path, say::no_path())])
            }
            Carrier::Folder { .. } => Ok(None),
            Carrier::WebDav(settings) => settings.remote().map(Some),
            Carrier::S3(settings) => settings.remote().map(Some),
        }
    }
}

impl WebDav {
    fn remote(&self) -> Result<Remote, Vec<SettingFault>> {
        let mut faults = Vec::new();
        let base = address(Setting::Url, &self.url, self.unencrypted, &mut faults);
        // RFC 7617: the first colon ends the user's name.
        if self.user.is_empty() || self.user.len() > 256 || self.user.contains(unspeakable(':')) {
            faults.push(fault(Setting::User, say::no_such_user()));
        }
        let password = self.password.expose();
        if password.is_empty() || password.len() > 1_024 || password.contains(char::is_control) {
            faults.push(fault(Setting::Password, say::no_such_password()));
        }
        match base {
            Some(base) if faults.is_empty() => {
                Ok(Remote::Dav(DavAt::new(base, &self.user, &self.password)))
            }
            _ => Err(faults),
        }
    }
}

impl S3 {
    fn remote(&self) -> Result<Remote, Vec<SettingFault>> {
        let mut faults = Vec::new();
        let endpoint = address(Setting::Endpoint, &self.endpoint, self.unencrypted, &mut faults);
        let of_region = |byte: u8| byte.is_ascii_alphanumeric() || b"-_".contains(&byte);
        if self.region.is_empty() || self.region.len() > 64 || !self.region.bytes().all(of_region) {
            faults.push(fault(Setting::Region, say::no_such_region()));
        }
        if !is_bucket(&self.bucket) {
            faults.push(fault(Setting::Bucket, say::no_such_bucket(&self.bucket)));
        }
        let number = endpoint.as_ref().is_some_and(|endpoint| endpoint.origin.is_number());
        if !self.path_style && (number || self.bucket.contains('.')) {
            faults.push(fault(Setting::Bucket, say::needs_path_style()));
        }
        let prefix: Vec<&str> = self.prefix.split('/').filter(|part| !part.is_empty()).collect();
        let plain = |byte: u8| byte.is_ascii_alphanumeric() || b"-._~".contains(&byte);
        let fits = |part: &&str| is_segment(part) && part.bytes().all(plain);
        if self.prefix.len() > 200 || !prefix.iter().all(fits) {
            faults.push(fault(Setting::Prefix, say::no_such_prefix()));
        }
        let of_key = |byte: u8| byte.is_ascii_graphic() && !b"/,=".contains(&byte);
        if self.key_id.is_empty() || self.key_id.len() > 128 || !self.key_id.bytes().all(of_key) {
            faults.push(fault(Setting::KeyId, say::no_such_key_id()));
        }
        let secret = self.secret.expose();
        if secret.is_empty() || secret.len() > 1_024 || secret.contains(char::is_control) {
            faults.push(fault(Setting::Secret, say::no_such_secret()));
        }
        match endpoint {
            Some(endpoint) if faults.is_empty() => {
                let origin = if self.path_style {
                    endpoint.origin.clone()
                } else {
                    endpoint.origin.below(&self.bucket)
                };
                let mut path = endpoint.path;
                path.extend(self.path_style.then(|| self.bucket.clone()));
                Ok(Remote::S3(S3At {
                    bucket: Address { origin, path },
                    prefix: prefix.iter().map(|part| format!("{part}/")).collect(),
                    region: self.region.clone(),
                    key_id: self.key_id.clone(),
                    secret: self.secret.clone(),
                }))
            }
            _ => Err(faults),
        }
    }
}

fn fault(setting: Setting, reason: impl Into<String>) -> SettingFault {
    SettingFault { setting, reason: reason.into() }
}

/// Rules for names of buckets, Amazon S3 user guide.
fn is_bucket(name: &str) -> bool {
    let of_name =
        |byte: u8| byte.is_ascii_lowercase() || byte.is_ascii_digit() || b"-.".contains(&byte);
    (3..=63).contains(&name.len())
        && name.bytes().all(of_name)
        && name.starts_with(|letter: char| letter.is_ascii_alphanumeric())
        && name.ends_with(|letter: char| letter.is_ascii_alphanumeric())
        && !name.contains("..")
}

fn unspeakable(also: char) -> impl Fn(char) -> bool {
    move |letter| letter == also || letter.is_control()
}

/// Reads an address; what is wrong with it is added to the faults. What was typed is not repeated: it may hold a
/// password.
fn address(
    setting: Setting,
    text: &str,
    unencrypted: bool,
    faults: &mut Vec<SettingFault>,
) -> Option<Address> {
    let reason = match Address::parse(text.trim()) {
        Ok(address) if address.origin.is_safe() || unencrypted => return Some(address),
        Ok(address) => say::unencrypted(address.origin.to_string()),
        Err(AddressFault::Scheme) => say::no_scheme().to_owned(),
        Err(AddressFault::Host) => say::no_host().to_owned(),
        Err(AddressFault::HostLetters) => say::host_letters().to_owned(),
        Err(AddressFault::Port) => say::no_such_port().to_owned(),
        Err(AddressFault::UserInfo) => say::user_in_address().to_owned(),
        Err(AddressFault::Query) => say::query_in_address().to_owned(),
        Err(AddressFault::Path) => say::no_such_path().to_owned(),
        Err(AddressFault::Long) => say::long_address().to_owned(),
    };
    faults.push(fault(setting, reason));
    None
}
