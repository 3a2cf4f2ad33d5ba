//! Files as a shell and a carrier know them, and what came of an exchange of them.

use serde::Serialize;

use super::sealed::SealedFault;
use crate::error::shown_to;
use crate::say;
use crate::trust::Counts;

/// A file that a carrier lists.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct ListedFile {
    /// Its name.
    pub name: String,
    /// Its size in bytes.
    pub bytes: u64,
}

/// A file on its way.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct CarriedFile {
    /// Its name.
    pub name: String,
    /// Its content.
    pub content: Vec<u8>,
}

/// A file that a shell could not read or write.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct FailedFile {
    /// Its name.
    pub name: String,
    /// What the system said.
    pub reason: String,
}

/// A file that was left alone, and why.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct AsideFile {
    /// Its name, cut to a length that can be shown.
    pub name: String,
    /// Why.
    pub reason: String,
}

impl AsideFile {
    /// A file left alone for what was found in it.
    pub(super) fn of(name: &str, fault: &SealedFault) -> AsideFile {
        AsideFile { name: shown(name), reason: fault.to_string() }
    }

    /// One that was left alone before, and not fetched again.
    pub(super) fn again(name: &str, reason: &str) -> AsideFile {
        AsideFile { name: shown(name), reason: reason.to_owned() }
    }

    /// A crewmate's file that there is no room for.
    pub(super) fn full(name: &str) -> AsideFile {
        AsideFile { name: shown(name), reason: say::exchange::bag_full().to_owned() }
    }

    /// A sound leaf that does not count: it is kept, and counts once what it lacks has arrived.
    pub(super) fn uncounted(name: &str, counts: Counts) -> AsideFile {
        let reason = match counts {
            Counts::Yes | Counts::Unknown => say::sealed::unknown_writer(),
            Counts::Removed => say::sealed::removed_device(),
            Counts::TooMany => say::sealed::too_many_devices(),
        };
        AsideFile { name: shown(name), reason: reason.to_owned() }
    }

    /// A file that could not be read.
    pub(super) fn unread(file: &FailedFile) -> AsideFile {
        AsideFile::failed(file, say::exchange::not_read(&file.reason))
    }

    /// A file that could not be written.
    pub(super) fn unwritten(file: &FailedFile) -> AsideFile {
        AsideFile::failed(file, say::exchange::not_written(&file.reason))
    }

    fn failed(file: &FailedFile, reason: String) -> AsideFile {
        AsideFile { name: shown(&file.name), reason }
    }
}

/// What an exchange did.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct ExchangeReport {
    /// Files taken in.
    pub leaves: u32,
    /// Entries that were new.
    pub entries: u64,
    /// Files written to the carrier that it did not have.
    pub put: u32,
    /// Files left alone, and why.
    pub aside: Vec<AsideFile>,
    /// What it changed of who counts: devices that came, devices and people that no longer count.
    pub told: Vec<String>,
}

fn shown(name: &str) -> String {
    shown_to(name, 120)
}
