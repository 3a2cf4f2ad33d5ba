//! Carriers by name, kept in a file that only its owner reads.

use std::collections::BTreeMap;
use std::fs::{self, File};
use std::io::{ErrorKind, Read, Write};
use std::path::Path;

use holdfast_core::exchange::web::{Carrier, S3, Secret, WebDav};
use serde::{Deserialize, Serialize};
use zeroize::Zeroizing;

use crate::line::Carried;

const FILE: &str = "carriers.json";
/// Larger than this no list of carriers is.
const MAX_BYTES: u64 = 1024 * 1024;

/// Carriers by the names that somebody gave them.
pub type Named = BTreeMap<String, Carrier>;

/// A carrier as the file has it.
#[derive(Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "kebab-case", deny_unknown_fields)]
enum Stored {
    Folder {
        path: String,
    },
    Webdav {
        url: String,
        user: String,
        password: Hidden,
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        unencrypted: bool,
    },
    S3 {
        endpoint: String,
        region: String,
        bucket: String,
        prefix: String,
        key_id: String,
        secret: Hidden,
        path_style: bool,
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        unencrypted: bool,
    },
}

/// A secret on its way into the file or out of it: the only place where one is written.
struct Hidden(Secret);

impl Serialize for Hidden {
    fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(self.0.expose())
    }
}

impl<'de> Deserialize<'de> for Hidden {
    fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Hidden, D::Error> {
        String::deserialize(from).map(|text| Hidden(Secret::new(text)))
    }
}

impl From<Carrier> for Stored {
    fn from(carrier: Carrier) -> Stored {
        match carrier {
            Carrier::Folder { path } => Stored::Folder { path },
            Carrier::WebDav(WebDav { url, user, password, unencrypted }) => {
                Stored::Webdav { url, user, password: Hidden(password), unencrypted }
            }
            Carrier::S3(S3 {
                endpoint,
                region,
                bucket,
                prefix,
                key_id,
                secret,
                path_style,
                unencrypted,
            }) => {
                let secret = Hidden(secret);
                Stored::S3 {
                    endpoint,
                    region,
                    bucket,
                    prefix,
                    key_id,
                    secret,
                    path_style,
                    unencrypted,
                }
            }
        }
    }
}

impl From<Stored> for Carrier {
    fn from(stored: Stored) -> Carrier {
        match stored {
            Stored::Folder { path } => Carrier::Folder { path },
            Stored::Webdav { url, user, password: Hidden(password), unencrypted } => {
                Carrier::WebDav(WebDav { url, user, password, unencrypted })
            }
            Stored::S3 {
                endpoint,
                region,
                bucket,
                prefix,
                key_id,
                secret: Hidden(secret),
                path_style,
                unencrypted,
            } => Carrier::S3(S3 {
                endpoint,
                region,
                bucket,
                prefix,
                key_id,
                secret,
                path_style,
                unencrypted,
            }),
        }
    }
}

/// Reads the carriers that are kept in a home folder; none where there is no file.
///
/// # Errors
/// A file that cannot be read, or holds something else. What it holds is not repeated: it may be a password.
pub fn carriers(home: &Path) -> Result<Named, Carried> {
    let path = home.join(FILE);
    let fault = |source| Carried::File { path: path.display().to_string(), source };
    let file = match File::open(&path) {
        Ok(file) => file,
        Err(error) if error.kind() == ErrorKind::NotFound => return Ok(Named::new()),
        Err(error) => return Err(fault(error)),
    };
    let mut text = Zeroizing::new(Vec::new());
    file.take(MAX_BYTES).read_to_end(&mut text).map_err(fault)?;
    let read: Result<BTreeMap<String, Stored>, _> = serde_json::from_slice(&text);
    let read = read.map_err(|error| {
        let place = format!("{}:{}", error.line(), error.column());
        fault(std::io::Error::new(ErrorKind::InvalidData, place))
    })?;
    Ok(read.into_iter().map(|(name, stored)| (name, stored.into())).collect())
}

/// Keeps carriers in a home folder, in one step: the file is there as it was, or as it is to be.
///
/// # Errors
/// When the file cannot be written.
pub fn keep_carriers(home: &Path, carriers: &Named) -> Result<(), Carried> {
    let path = home.join(FILE);
    let temporary = home.join(format!(".{FILE}.tmp"));
    let fault = |source| Carried::File { path: path.display().to_string(), source };
    let stored: BTreeMap<&String, Stored> =
        carriers.iter().map(|(name, carrier)| (name, carrier.clone().into())).collect();
    let text = serde_json::to_vec_pretty(&stored).map(Zeroizing::new);
    let text = text.map_err(|error| fault(error.into()))?;
    // One that a stop left may be open to others.
    let _ = fs::remove_file(&temporary);
    let mut options = File::options();
    options.write(true).create_new(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    let written = options.open(&temporary).and_then(|mut file| {
        file.write_all(&text)?;
        file.sync_all()
    });
    written.and_then(|()| fs::rename(&temporary, &path)).map_err(fault)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn some() -> Named {
        let folder = Carrier::Folder { path: "/mnt/stick".into() };
        let webdav = Carrier::WebDav(WebDav {
            url: "https://files.example.org/crew".into(),
            user: "ines".into(),
            password: Secret::new("Tr0mb0ne \"quoted\" ü"),
            unencrypted: false,
        });
        let s3 = Carrier::S3(S3 {
            endpoint: "http://nas:9000".into(),
            region: "us-east-1".into(),
            bucket: "cellar".into(),
            prefix: "crew".into(),
            key_id: "KEY".into(),
            secret: Secret::new("s3cret"),
            path_style: true,
            unencrypted: true,
        });
        Named::from([("club".into(), webdav), ("nas".into(), s3), ("stick".into(), folder)])
    }

    /// Everything of a carrier, the secret too.
    fn whole(carriers: &Named) -> Vec<String> {
        let secret = |carrier: &Carrier| match carrier {
            Carrier::Folder { .. } => String::new(),
            Carrier::WebDav(dav) => dav.password.expose().to_owned(),
            Carrier::S3(s3) => s3.secret.expose().to_owned(),
        };
        carriers.iter().map(|(name, one)| format!("{name} {one:?} {}", secret(one))).collect()
    }

    #[test]
    fn what_is_kept_is_read_again_and_nobody_else_reads_it() {
        let home = tempfile::tempdir().unwrap();
        assert!(carriers(home.path()).unwrap().is_empty());
        keep_carriers(home.path(), &some()).unwrap();
        keep_carriers(home.path(), &some()).unwrap();
        assert_eq!(whole(&carriers(home.path()).unwrap()), whole(&some()));
        assert_eq!(fs::read_dir(home.path()).unwrap().count(), 1);
        #[cfg(unix)]
        {
            let about = fs::metadata(home.path().join(FILE)).unwrap();
            assert_eq!(
                std::os::unix::fs::PermissionsExt::mode(&about.permissions()) & 0o777,
                0o600
            );
        }
    }

    #[test]
    fn a_file_that_cannot_be_read_is_named_and_not_repeated() {
        let home = tempfile::tempdir().unwrap();
        for text in [
            "{\"club\": {\"kind\": \"webdav\", \"password\": \"s3cret\"}}",
            "{\"club\": \"s3cret\"}",
            "s3cret",
        ] {
            fs::write(home.path().join(FILE), text).unwrap();
            let fault = carriers(home.path()).unwrap_err();
            let said = format!("{fault} {fault:?}");
            assert!(said.contains(FILE) && !said.contains("s3cret"), "{said}");
        }
    }
}
