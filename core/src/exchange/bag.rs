//! The bag: a crewmate's files on their way, unopened. A member without a connection hands them over in the cellar; whoever
//! is online first delivers them.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use serde::Serialize;

use super::durable;
use super::sealed::{MAX_SEALED_BYTES, SealedFault, SealedName, is_as_named, is_sealed};
use super::{AsideFile, CarriedFile};
use crate::error::{Error, Result};
use crate::say::exchange as say;

const FOLDER: &str = "carried";
/// Files of others that a device carries at most: years of one member.
const MOST_FILES: usize = 500;
const MOST_BYTES: u64 = 64 * 1024 * 1024;

/// What was taken along.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct TakenAlong {
    /// Files that were not in the bag before.
    pub files: u32,
    /// Files left alone, and why.
    pub aside: Vec<AsideFile>,
    /// What came of it, in words.
    pub told: String,
}

/// Others' files in a device's home.
pub(crate) struct Bag {
    folder: PathBuf,
}

impl Bag {
    pub(crate) fn of(home: &Path) -> Bag {
        Bag { folder: home.join(FOLDER) }
    }

    /// What is in it, each file with its size.
    pub(super) fn files(&self) -> BTreeMap<SealedName, u64> {
        let files = fs::read_dir(&self.folder).into_iter().flatten().flatten();
        let named = files.filter_map(|file| {
            let name = SealedName::parse(file.file_name().to_str()?)?;
            Some((name, file.metadata().ok()?.len()))
        });
        named.collect()
    }

    /// A file that is as it was taken.
    pub(super) fn read(&self, name: &SealedName) -> Option<Vec<u8>> {
        fs::read(self.folder.join(name.to_string())).ok().filter(|bytes| is_as_named(name, bytes))
    }

    /// Lets go of a file that was delivered.
    pub(super) fn delivered(&self, name: &SealedName) {
        let _ = fs::remove_file(self.folder.join(name.to_string()));
    }

    /// Takes files along. Nobody opens them: their names, sizes and outermost layer must be those of sealed leaves.
    pub(crate) fn take(&self, files: &[CarriedFile]) -> Result<TakenAlong> {
        let mut there = self.files();
        let mut bytes: u64 = there.values().sum();
        let (mut taken, mut aside) = (0, Vec::new());
        for file in files {
            let name = match fit(file) {
                Ok(name) => name,
                Err(fault) => {
                    aside.push(AsideFile::of(&file.name, &fault));
                    continue;
                }
            };
            if there.contains_key(&name) {
                continue;
            }
            bytes += file.content.len() as u64;
            if there.len() >= MOST_FILES || bytes > MOST_BYTES {
                aside.push(AsideFile::full(&file.name));
                break;
            }
            fs::create_dir_all(&self.folder).map_err(Error::file(&self.folder))?;
            durable::publish(&self.folder, &file.name, &file.content)?;
            there.insert(name, file.content.len() as u64);
            taken += 1;
        }
        Ok(TakenAlong { files: taken, aside, told: say::taken_along(taken) })
    }
}

fn fit(file: &CarriedFile) -> std::result::Result<SealedName, SealedFault> {
    let name = SealedName::parse(&file.name).ok_or(SealedFault::Foreign)?;
    let bytes = file.content.len() as u64;
    if bytes > MAX_SEALED_BYTES as u64 {
        return Err(SealedFault::TooLarge { bytes });
    }
    if !is_as_named(&name, &file.content) {
        return Err(SealedFault::Torn);
    }
    is_sealed(&file.content).map(|()| name)
}
