//! Which device this is, in a small file beside the database, so that a damaged database can be
//! rebuilt without guessing whose it was.

use std::fs;
use std::io::ErrorKind;
use std::path::Path;

use serde::{Deserialize, Serialize};

use crate::error::{Error, Result};
use crate::exchange::replace;
use crate::id::DeviceId;
use crate::journal::Profile;
use crate::say;

const FILE: &str = "device.json";

/// The device and who started it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub(crate) struct Identity {
    /// The device.
    pub device: DeviceId,
    /// Who started it, as they were then; what they are now is in the journal.
    pub profile: Profile,
}

impl Identity {
    /// Reads the identity of a home folder; `None` when nobody has started there.
    pub(crate) fn read(home: &Path) -> Result<Option<Identity>> {
        let path = home.join(FILE);
        match fs::read(&path) {
            Ok(bytes) => serde_json::from_slice(&bytes).map(Some).map_err(|error| Error::File {
                path: path.display().to_string(),
                source: std::io::Error::new(
                    ErrorKind::InvalidData,
                    say::device::identity_unreadable(error),
                ),
            }),
            Err(error) if error.kind() == ErrorKind::NotFound => Ok(None),
            Err(error) => Err(Error::file(&path)(error)),
        }
    }

    /// Writes the identity.
    pub(crate) fn write(&self, home: &Path) -> Result<()> {
        replace(&home.join(FILE), &serde_json::to_vec_pretty(self)?)
    }
}
