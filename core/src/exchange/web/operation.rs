//! What is done at a carrier, and what comes of it.

use super::WebFault;
use crate::exchange::ListedFile;

/// The longest name of a file or of a lane's folder.
const MAX_NAME_BYTES: usize = 80;

/// One thing to do at a carrier. Each may be done twice without harm, so a shell that lost an answer begins again.
///
/// Files lie one level down: `<carrier>/<lane's folder>/<file>`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Operation {
    /// Lists a folder.
    List {
        /// A lane's folder; `None` for the carrier's own, which holds the lanes' folders.
        folder: Option<String>,
        /// Only what sorts behind this name.
        after: Option<String>,
    },
    /// Reads a file.
    Get {
        /// Its folder.
        folder: String,
        /// Its name.
        name: String,
    },
    /// Writes a file, and its folder where that is missing. What is there under the name stays.
    ///
    /// Sound only for names that nobody else writes: not every server refuses to replace a file.
    Put {
        /// Its folder.
        folder: String,
        /// Its name.
        name: String,
        /// What is in it.
        content: Vec<u8>,
        /// Tells its temporary name from that of an earlier try that may still be under way.
        turn: u32,
    },
    /// Deletes a file: for `forget` alone.
    Delete {
        /// Its folder.
        folder: String,
        /// Its name.
        name: String,
    },
}

/// What came of an operation.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Done {
    /// A folder is listed. One that is not there is empty.
    Listed(Listing),
    /// A file is read.
    Got {
        /// What is in it.
        content: Vec<u8>,
    },
    /// The file to be read or deleted is not there.
    Missing,
    /// The file is written.
    Written,
    /// A file of this name was there before, and stays as it is. Whether it is whole is for its reader to say.
    AlreadyThere,
    /// The file is deleted.
    Deleted,
}

/// What is in a folder: only last parts of names, never with a slash, sorted.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Listing {
    /// Folders in it.
    pub folders: Vec<String>,
    /// Files in it, hidden and temporary ones too.
    pub files: Vec<ListedFile>,
    /// What was named in a way that could lead elsewhere, and is not given out.
    pub refused: u32,
    /// False when there are more names than one listing holds: list again, after the last.
    pub whole: bool,
}

impl Listing {
    /// Sorts it, takes out what sorts before `after` and what stands there twice.
    pub(super) fn sorted(mut self, after: Option<&str>) -> Listing {
        let is_after = |name: &str| after.is_none_or(|after| name > after);
        self.folders.retain(|name| is_after(name));
        self.folders.sort();
        self.folders.dedup();
        self.files.retain(|file| is_after(&file.name));
        self.files.sort_by(|a, b| a.name.cmp(&b.name));
        self.files.dedup_by(|a, b| a.name == b.name);
        self
    }

    /// How many names it holds.
    pub(super) fn len(&self) -> usize {
        self.folders.len() + self.files.len()
    }
}

impl Operation {
    /// Refuses names that no file of ours has: nothing a server named, and nothing typed, becomes a path.
    pub(super) fn check(&self) -> Result<(), WebFault> {
        let sound = match self {
            Operation::List { folder, after } => {
                folder.as_deref().is_none_or(is_file_name)
                    && after.as_deref().is_none_or(|after| after.len() <= MAX_NAME_BYTES)
            }
            Operation::Get { folder, name }
            | Operation::Put { folder, name, .. }
            | Operation::Delete { folder, name } => is_file_name(folder) && is_file_name(name),
        };
        if sound { Ok(()) } else { Err(WebFault::NoSuchName) }
    }
}

/// True for names as leaves, lanes' folders and pairing messages have them, and for the temporary ones of files, so
/// that `forget` can take those away too. Nothing else becomes a path, at any kind of carrier.
pub fn is_file_name(name: &str) -> bool {
    let of_name =
        |byte: u8| byte.is_ascii_lowercase() || byte.is_ascii_digit() || b".-".contains(&byte);
    let inner = name.strip_prefix('.').filter(|_| name.ends_with(".tmp")).unwrap_or(name);
    !inner.is_empty()
        && !inner.starts_with('.')
        && name.len() <= MAX_NAME_BYTES + 16
        && name.bytes().all(of_name)
}

/// The name that a file has while it is being written. Hidden, and known as temporary by every reader.
pub(super) fn temporary(name: &str, turn: u32) -> String {
    format!(".{name}.{turn}.tmp")
}
