//! Where a pairing stands, in a file that its owner alone may read.

use std::fs;
use std::io::ErrorKind;
use std::path::Path;

use serde::{Deserialize, Serialize};

use crate::error::{Error, Result};
use crate::exchange::replace_private;
use crate::id::PersonId;
use crate::trust::{Answered, Invited, Opened};

const FILE: &str = "pairing.json";

/// A pairing that is under way, and how many failed before it.
#[derive(Default, Serialize, Deserialize)]
pub(super) struct Stored {
    /// Failed in a row.
    pub(super) failed: u32,
    pub(super) now: Now,
    /// True where what is shown goes over a carrier, and need not be scanned.
    #[serde(default)]
    pub(super) over: bool,
    /// The file on a carrier that holds this side's message.
    #[serde(default)]
    pub(super) posted: Option<String>,
}

/// Where it stands.
#[derive(Serialize, Deserialize)]
pub(super) enum Now {
    Nothing {},
    /// A coach shows the code.
    Invited {
        invited: Invited,
        /// Draws where the right line stands, and the words of the others.
        lines: [u8; 16],
        since_ms: i64,
    },
    /// A coach picks the line.
    Opened {
        opened: Box<Opened>,
        lines: [u8; 16],
    },
    /// A coach has taken somebody in.
    Admitted {
        person: PersonId,
        label: String,
    },
    /// A member shows the answer.
    Answered {
        answered: Box<Answered>,
    },
    /// A member compares the words.
    Compared {
        answered: Box<Answered>,
        /// The opening, as its text.
        opening: String,
    },
    /// A member has joined.
    Joined {},
}

impl Default for Now {
    fn default() -> Now {
        Now::Nothing {}
    }
}

impl Stored {
    pub(super) fn read(home: &Path) -> Result<Stored> {
        let path = home.join(FILE);
        match fs::read(&path) {
            // One that cannot be read is one that begins again: nothing counts before both have confirmed.
            Ok(bytes) => Ok(serde_json::from_slice(&bytes).unwrap_or_default()),
            Err(error) if error.kind() == ErrorKind::NotFound => Ok(Stored::default()),
            Err(error) => Err(Error::file(&path)(error)),
        }
    }

    pub(super) fn write(&self, home: &Path) -> Result<()> {
        replace_private(&home.join(FILE), &serde_json::to_vec(self)?)
    }
}
