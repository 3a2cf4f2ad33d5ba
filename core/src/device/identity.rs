//! Which device this is, in a small file beside the database and a copy of it, so that a damaged database
//! can be rebuilt without guessing whose it was. Each says with a digest whether it is as it was written.

use std::fs;
use std::io::ErrorKind;
use std::path::Path;

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

use crate::error::{Error, Field, Result};
use crate::exchange::{Trusted, replace, sha256};
use crate::id::DeviceId;
use crate::journal::Profile;
use crate::say;
use crate::trust::Certificate;

/// The file, and its copy.
const FILES: [&str; 2] = ["device.json", "device-copy.json"];

/// The device and who started it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub(crate) struct Identity {
    /// The device.
    pub device: DeviceId,
    /// Whose it is, by their own signature.
    pub certificate: Certificate,
    /// The device of the coach who founded the crew, as it was compared in person; none before. Who founded it and
    /// its name are read off that alone.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub founder: Option<Certificate>,
    /// What was logged before this date is not shared with the coach: its person did not say so. None where all is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub shares_from: Option<NaiveDate>,
    /// Who started it, as they were then; what they are now is in the journal.
    pub profile: Profile,
    /// True while it still lacks what its person's other devices wrote: it was started with the recovery code, and no
    /// exchange has brought that yet.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub restoring: bool,
    /// The devices this home was before it was copied, the last one last.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub before: Vec<Before>,
}

/// A device that a home was, and how far it had written there: what that device wrote since, it wrote
/// elsewhere.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub(crate) struct Before {
    /// The device.
    pub device: DeviceId,
    /// The number of the last entry it had written here.
    pub last: u64,
}

/// The identity as a file holds it.
#[derive(Serialize, Deserialize)]
struct Written {
    #[serde(flatten)]
    identity: Identity,
    /// The SHA-256 of the identity alone.
    check: String,
}

impl Identity {
    /// True for a folder with an identity in it, whole or not.
    pub(crate) fn is_in(home: &Path) -> bool {
        FILES.iter().any(|file| home.join(file).exists())
    }

    /// Reads the identity of a home folder; `None` when nobody has started there. A file that is not as it
    /// was written, or is gone, is put right from the other.
    pub(crate) fn read(home: &Path) -> Result<Option<Identity>> {
        let found = FILES.map(|file| read(&home.join(file)));
        let whole = found.iter().flatten().flatten().find(|written| written.is_whole());
        if let Some(whole) = whole.map(|written| written.identity.clone()) {
            let is_it = |read: &Read| matches!(read, Ok(Some(written)) if written.is_whole());
            if !found.iter().all(is_it) {
                // A home that cannot be written is no reason to keep an athlete from reading it.
                let _ = whole.write(home);
            }
            return Ok(Some(whole));
        }
        let [first, copy] = found;
        match (first, copy) {
            (Ok(None), Ok(None)) => Ok(None),
            (Err(error), _) => Err(error),
            _ => Err(unreadable(&home.join(FILES[0]), say::device::identity_altered())),
        }
    }

    /// Whose device this is, and whose crew it is in.
    pub(crate) fn trusted(&self) -> Trusted {
        Trusted { certificate: self.certificate, founder: self.founder }
    }

    /// Whose entries were written in this home, and up to which number.
    pub(crate) fn written_here(&self) -> Vec<(DeviceId, u64)> {
        let before = self.before.iter().map(|before| (before.device, before.last));
        before.chain([(self.device, u64::MAX)]).collect()
    }

    /// Writes the identity, and its copy.
    pub(crate) fn write(&self, home: &Path) -> Result<()> {
        let written = Written { identity: self.clone(), check: self.digest()? };
        let bytes = serde_json::to_vec_pretty(&written)?;
        FILES.iter().try_for_each(|file| replace(&home.join(file), &bytes))
    }

    fn digest(&self) -> Result<String> {
        Ok(sha256(&serde_json::to_vec(self)?))
    }
}

impl Written {
    fn is_whole(&self) -> bool {
        self.identity.digest().is_ok_and(|digest| self.check == digest)
    }
}

type Read = Result<Option<Written>>;

fn read(path: &Path) -> Read {
    match fs::read(path) {
        Ok(bytes) => match serde_json::from_slice(&bytes) {
            Ok(written) => Ok(Some(written)),
            Err(_) if is_from_before_keys(&bytes) => {
                Err(Error::invalid(Field::Home, say::device::home_without_keys()))
            }
            Err(error) => Err(unreadable(path, &error.to_string())),
        },
        Err(error) if error.kind() == ErrorKind::NotFound => Ok(None),
        Err(error) => Err(Error::file(path)(error)),
    }
}

/// True for what a device wrote before it had keys.
fn is_from_before_keys(bytes: &[u8]) -> bool {
    let read: Option<serde_json::Value> = serde_json::from_slice(bytes).ok();
    let has = |field: &str| read.as_ref().is_some_and(|read| !read[field].is_null());
    has("device") && has("profile") && !has("certificate")
}

fn unreadable(path: &Path, why: &str) -> Error {
    let reason = say::device::identity_unreadable(why);
    Error::file(path)(std::io::Error::new(ErrorKind::InvalidData, reason))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::journal::Role;
    use crate::mass::MassUnit;
    use crate::trust::tests::{device, person};

    fn somebody(home: &Path) -> Identity {
        let certificate = Certificate::sign(&person(7), &device(7).public(), 1);
        let (device, person) = (certificate.device(), certificate.person());
        let (name, role, unit) = ("Zoë".into(), Role::Athlete, MassUnit::Kg);
        let profile = Profile { person, name, role, unit, language: None, crew: None };
        let (founder, before, restoring) = (None, Vec::new(), false);
        let identity = Identity {
            device,
            certificate,
            founder,
            shares_from: None,
            profile,
            restoring,
            before,
        };
        identity.write(home).unwrap();
        identity
    }

    /// A device of another number would write a journal that nobody knows as this one's: whichever bit
    /// turns, in whichever file, it is the same device, or it is none.
    #[test]
    fn no_bit_makes_it_another_device() {
        let home = tempfile::tempdir().unwrap();
        let identity = somebody(home.path());
        for file in FILES {
            let path = home.path().join(file);
            let whole = fs::read(&path).unwrap();
            for bit in 0..whole.len() * 8 {
                let mut turned = whole.clone();
                turned[bit / 8] ^= 1 << (bit % 8);
                fs::write(&path, &turned).unwrap();
                let read = Identity::read(home.path()).unwrap();
                assert_eq!(read, Some(identity.clone()), "bit {bit} of {file}");
            }
            // A name of another key is no check, and is put right.
            fs::write(&path, "{}").unwrap();
            Identity::read(home.path()).unwrap();
            assert_eq!(fs::read(&path).unwrap(), whole);
            fs::remove_file(&path).unwrap();
            assert_eq!(Identity::read(home.path()).unwrap(), Some(identity.clone()));
        }
    }

    #[test]
    fn with_both_altered_it_is_no_device() {
        let home = tempfile::tempdir().unwrap();
        somebody(home.path());
        for file in FILES {
            let path = home.path().join(file);
            let text = fs::read_to_string(&path).unwrap();
            fs::write(&path, text.replacen("Zoë", "Zoe", 1)).unwrap();
        }
        let error = Identity::read(home.path()).unwrap_err().to_string();
        assert!(
            error.contains("device.json") && error.contains("not as it was written"),
            "{error}"
        );
    }

    /// It has no keys and gets none: what it wrote was never sealed.
    #[test]
    fn one_from_before_there_were_keys_is_told() {
        let home = tempfile::tempdir().unwrap();
        let identity = somebody(home.path());
        let mut old = serde_json::to_value(&identity).unwrap();
        old.as_object_mut().unwrap().remove("certificate");
        for file in FILES {
            fs::write(home.path().join(file), old.to_string()).unwrap();
        }
        let error = Identity::read(home.path()).unwrap_err().to_string();
        assert!(error.contains("earlier version"), "{error}");
    }
}
