//! A folder as carrier: a folder for each lane, files in it. Links and devices are not followed.

use std::fs::{self, File};
use std::io::{ErrorKind, Read};
use std::path::{Path, PathBuf};

use holdfast_core::exchange::web::{Done, Listing, MAX_FILE_BYTES, MAX_NAMES, Operation, WebFault};
use holdfast_core::exchange::{CarriedFile, ListedFile};
use holdfast_core::put_file;

use crate::line::Carried;

/// A folder. Every name that reaches it was checked.
#[derive(Debug)]
pub(crate) struct Folder(pub(crate) PathBuf);

impl Folder {
    pub(crate) fn carry(&self, operation: Operation) -> Result<Done, Carried> {
        match operation {
            Operation::List { folder, after } => {
                list(&self.0, folder.as_deref(), after.as_deref()).map(Done::Listed)
            }
            Operation::Get { folder, name } => self.get(&self.0.join(folder).join(name)),
            Operation::Put { folder, name, content, .. } => {
                let folder = self.0.join(folder);
                // The carrier's own folder must be there: a stick that is not plugged in is no folder to be made.
                match fs::create_dir(&folder) {
                    Err(error) if error.kind() != ErrorKind::AlreadyExists => {
                        return Err(fault(&folder)(error));
                    }
                    _ => {}
                }
                let new = put_file(&folder, &CarriedFile { name, content })?;
                Ok(if new { Done::Written } else { Done::AlreadyThere })
            }
            Operation::Delete { folder, name } => {
                let path = self.0.join(folder).join(name);
                match fs::remove_file(&path) {
                    Ok(()) => Ok(Done::Deleted),
                    Err(error) if error.kind() == ErrorKind::NotFound => Ok(Done::Missing),
                    Err(error) => Err(fault(&path)(error)),
                }
            }
        }
    }

    fn get(&self, path: &Path) -> Result<Done, Carried> {
        let is_file = fs::symlink_metadata(path).map(|about| about.is_file());
        match is_file {
            Ok(true) => {}
            Ok(false) => return Ok(Done::Missing),
            Err(error) if error.kind() == ErrorKind::NotFound => return Ok(Done::Missing),
            Err(error) => return Err(fault(path)(error)),
        }
        let mut content = Vec::new();
        let file = File::open(path).map_err(fault(path))?;
        file.take(MAX_FILE_BYTES + 1).read_to_end(&mut content).map_err(fault(path))?;
        if content.len() as u64 > MAX_FILE_BYTES {
            let carrier = self.0.display().to_string();
            return Err(WebFault::TooLarge { carrier, largest: MAX_FILE_BYTES }.into());
        }
        Ok(Done::Got { content })
    }
}

fn list(base: &Path, inner: Option<&str>, after: Option<&str>) -> Result<Listing, Carried> {
    let folder = inner.map_or_else(|| base.to_path_buf(), |inner| base.join(inner));
    let mut listing = Listing { whole: true, ..Listing::default() };
    let there = match fs::read_dir(&folder) {
        Ok(there) => there,
        // A lane that nobody has written to; the carrier's own folder must be there.
        Err(error) if error.kind() == ErrorKind::NotFound && inner.is_some() && base.is_dir() => {
            return Ok(listing);
        }
        Err(error) => return Err(fault(&folder)(error)),
    };
    let mut names = Vec::new();
    for entry in there {
        let entry = entry.map_err(fault(&folder))?;
        let Ok(name) = entry.file_name().into_string() else {
            listing.refused += 1;
            continue;
        };
        if after.is_some_and(|after| name.as_str() <= after) {
            continue;
        }
        let Ok(about) = entry.path().symlink_metadata() else { continue };
        if about.is_file() || about.is_dir() {
            names.push((name, about.is_dir(), about.len()));
        }
    }
    names.sort();
    listing.whole = names.len() <= MAX_NAMES;
    for (name, is_folder, bytes) in names.into_iter().take(MAX_NAMES) {
        if is_folder {
            listing.folders.push(name);
        } else {
            listing.files.push(ListedFile { name, bytes });
        }
    }
    Ok(listing)
}

fn fault(path: &Path) -> impl FnOnce(std::io::Error) -> Carried + use<> {
    let path = path.display().to_string();
    move |source| Carried::File { path, source }
}
