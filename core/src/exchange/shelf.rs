//! The shelf: a device's own copy of every leaf it has, as files beside its database.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use rusqlite::Connection;

use super::{Leaf, LeafName, durable, ledger};
use crate::error::{Error, Result};
use crate::id::CrewId;
use crate::store::Store;

const FOLDER: &str = "leaves";

/// The folder of leaf files in a device's home.
pub(crate) struct Shelf {
    folder: PathBuf,
}

impl Shelf {
    /// The shelf of a home folder, made where there is none.
    pub(crate) fn of(home: &Path) -> Result<Shelf> {
        let folder = home.join(FOLDER);
        fs::create_dir_all(&folder).map_err(Error::file(&folder))?;
        Ok(Shelf { folder })
    }

    /// Removes what a stop left half-written. Whoever holds the home writes no file at this moment.
    pub(crate) fn sweep(&self) {
        let files = fs::read_dir(&self.folder).into_iter().flatten().flatten();
        for file in files.filter(|file| durable::is_temporary(&file.file_name())) {
            let _ = fs::remove_file(file.path());
        }
    }

    /// The names of all leaf files on it.
    pub(crate) fn names(&self) -> Result<Vec<LeafName>> {
        let files = fs::read_dir(&self.folder).map_err(Error::file(&self.folder))?;
        let mut names: Vec<LeafName> =
            files.filter_map(|file| LeafName::parse(file.ok()?.file_name().to_str()?)).collect();
        names.sort();
        Ok(names)
    }

    /// The names of all leaves that the database knows.
    pub(crate) fn known(&self, store: &Store) -> Result<BTreeSet<LeafName>> {
        ledger::names(store.reader())
    }

    /// A file as it lies there, whatever is in it.
    pub(crate) fn read(&self, name: &LeafName) -> Option<Vec<u8>> {
        fs::read(self.path(name)).ok()
    }

    /// The size of a leaf's file.
    pub(crate) fn bytes_of(&self, name: &LeafName) -> Option<u64> {
        fs::metadata(self.path(name)).ok().map(|about| about.len())
    }

    /// Puts a leaf's file there.
    pub(crate) fn put(&self, name: &LeafName, bytes: &[u8]) -> Result<()> {
        durable::publish(&self.folder, &name.to_string(), bytes).map(drop)
    }

    /// A leaf's file: from the shelf, or put together again from the database.
    pub(crate) fn leaf(&self, store: &Store, name: &LeafName) -> Result<Option<Vec<u8>>> {
        match self.read(name).filter(|bytes| Leaf::read(name, bytes).is_ok()) {
            Some(bytes) => Ok(Some(bytes)),
            None => ledger::bytes(store.reader(), name),
        }
    }

    /// Cuts everything that is not in a leaf yet into leaves and puts them there; before them those that a
    /// stop, or a full disk, kept from lying there when they were cut.
    ///
    /// # Errors
    /// When one cannot be put there: then the shelf does not hold all that is cut.
    pub(crate) fn cut(&self, store: &mut Store, crew: CrewId) -> Result<()> {
        let device = store.device();
        for name in ledger::names_back(store.reader(), device)? {
            if self.bytes_of(&name).is_some() {
                break;
            }
            // Of a forked journal it cannot be made again; that is no reason to stop here for ever.
            if let Some(bytes) = ledger::bytes(store.reader(), &name)? {
                self.put(&name, &bytes)?;
            }
        }
        while let Some(leaf) = store.write(|tx| ledger::cut(tx, device, crew))? {
            self.put(&leaf.name(), &leaf.bytes())?;
        }
        Ok(())
    }

    /// Holds every file against the database: one that is missing or not as it was written is put there
    /// again. False when a sound one of those that were `there` lies there and the database does not know
    /// it.
    pub(crate) fn audit(
        &self,
        connection: &Connection,
        there: &[LeafName],
        stopped: &dyn Fn() -> bool,
    ) -> Result<bool> {
        let known = ledger::names(connection)?;
        for name in known.iter().take_while(|_| !stopped()) {
            let whole = self.read(name).is_some_and(|bytes| Leaf::read(name, &bytes).is_ok());
            if !whole && let Some(bytes) = ledger::bytes(connection, name)? {
                // A shelf that cannot be written is no reason to keep an athlete from logging.
                let _ = self.put(name, &bytes);
            }
        }
        let unknown = |name: &LeafName| {
            let sound = |bytes: Vec<u8>| Leaf::read(name, &bytes).is_ok();
            !known.contains(name) && self.read(name).is_some_and(sound)
        };
        Ok(!there.iter().any(unknown))
    }

    fn path(&self, name: &LeafName) -> PathBuf {
        self.folder.join(name.to_string())
    }
}
