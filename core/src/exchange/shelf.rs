//! The shelf: a device's own copy of every leaf it has, as files beside its database.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use rusqlite::{Connection, OptionalExtension};

use super::again::seal_again;
use super::cut;
use super::durable;
use super::forget::is_forgotten;
use super::ledger;
use super::sealed::{SealedName, is_as_named, own_copy};
use super::signer::{self, Signer};
use crate::error::{Error, Result};
use crate::id::{CrewId, PersonId};
use crate::store::Store;
use crate::trust::{Kept, Recovery};

const FOLDER: &str = "leaves";
/// At the end of the name of a file that was kept once more for this device alone.
const OWN: &str = ".own";

/// Files read from the database at a time on their way to the shelf: the largest have 4 MiB.
const WAITING_TOGETHER: usize = 16;

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

    /// What the system refuses while files are put there.
    pub(super) fn refused(&self, error: std::io::Error) -> Error {
        Error::file(&self.folder)(error)
    }

    /// The names of all leaf files on it.
    pub(crate) fn names(&self) -> Result<Vec<SealedName>> {
        let files = fs::read_dir(&self.folder).map_err(Error::file(&self.folder))?;
        let mut names: Vec<SealedName> =
            files.filter_map(|file| SealedName::parse(file.ok()?.file_name().to_str()?)).collect();
        names.sort();
        Ok(names)
    }

    /// A file as it lies there, whatever is in it.
    pub(crate) fn read(&self, name: &SealedName) -> Option<Vec<u8>> {
        fs::read(self.path(name)).ok()
    }

    /// A file that is as it was written.
    pub(crate) fn whole(&self, name: &SealedName) -> Option<Vec<u8>> {
        self.read(name).filter(|bytes| is_as_named(name, bytes))
    }

    /// The size of a leaf's file.
    pub(crate) fn bytes_of(&self, name: &SealedName) -> Option<u64> {
        fs::metadata(self.path(name)).ok().map(|about| about.len())
    }

    /// Puts leaves' files there. When this returns they are on disk.
    pub(super) fn put(&self, files: &[(SealedName, &[u8])]) -> Result<()> {
        let named: Vec<(String, &[u8])> =
            files.iter().map(|(name, bytes)| (name.to_string(), *bytes)).collect();
        let named: Vec<(&str, &[u8])> =
            named.iter().map(|(name, bytes)| (name.as_str(), *bytes)).collect();
        durable::publish_all(&self.folder, &named).map(drop)
    }

    /// Keeps what the recovery code alone opens once more for this device, beside the file: before the code is forgotten, or
    /// nothing here could be built again from it.
    pub(crate) fn keep_own(&self, kept: &Kept) -> Result<()> {
        let Some(paper) = kept.recovery.as_ref().map(Recovery::keys) else { return Ok(()) };
        for names in self.names()?.chunks(WAITING_TOGETHER) {
            let mut copies = Vec::new();
            for name in names.iter().filter(|name| !self.own_path(name).exists()) {
                let file = self.whole(name);
                // What neither opens is nobody's here.
                let copy = file.and_then(|file| own_copy(&file, &paper, &kept.keys).ok().flatten());
                copies.extend(copy.map(|copy| (format!("{name}{OWN}"), copy)));
            }
            let copies: Vec<(&str, &[u8])> =
                copies.iter().map(|(name, copy)| (name.as_str(), copy.as_slice())).collect();
            durable::publish_all(&self.folder, &copies)?;
        }
        Ok(())
    }

    /// What was kept of a file for this device.
    pub(super) fn own_copy(&self, name: &SealedName) -> Option<Vec<u8>> {
        fs::read(self.own_path(name)).ok()
    }

    fn own_path(&self, name: &SealedName) -> PathBuf {
        self.folder.join(format!("{name}{OWN}"))
    }

    /// Takes away the files of everybody who was forgotten.
    pub(crate) fn forget(&self, forgotten: &BTreeSet<PersonId>, crew: CrewId) -> Result<()> {
        for name in self.names()?.iter().filter(|name| is_forgotten(forgotten, crew, name.lane())) {
            let path = self.path(name);
            fs::remove_file(&path).map_err(Error::file(&path))?;
            let copy = self.own_path(name);
            if copy.exists() {
                fs::remove_file(&copy).map_err(Error::file(&copy))?;
            }
        }
        Ok(())
    }

    /// A leaf's file: from the shelf, or from the database while it waits for the shelf.
    pub(crate) fn leaf(&self, store: &Store, name: &SealedName) -> Result<Option<Vec<u8>>> {
        match self.whole(name) {
            Some(bytes) => Ok(Some(bytes)),
            None => unshelved(store.reader(), name),
        }
    }

    /// Cuts everything that waits into leaves, and gives the files; puts them there, before them those that a stop, or a full disk,
    /// kept from lying there when they were cut.
    ///
    /// # Errors
    /// When one cannot be put there: then the shelf does not hold all that is cut.
    pub(crate) fn cut(&self, store: &mut Store, signer: &Signer<'_>) -> Result<Vec<SealedName>> {
        self.put_waiting(store)?;
        let mut all = Vec::new();
        loop {
            let cut = cut::cut(store, signer)?;
            if cut.is_empty() {
                break;
            }
            self.put_waiting(store)?;
            all.extend(cut);
        }
        let again = store.write(|tx| seal_again(tx, signer))?;
        if !again.is_empty() {
            self.put_waiting(store)?;
        }
        all.extend(again);
        Ok(all)
    }

    /// Puts there what waits for it.
    pub(super) fn put_waiting(&self, store: &mut Store) -> Result<()> {
        let names: Vec<String> = store
            .reader()
            .prepare_cached("SELECT name FROM unshelved ORDER BY name")?
            .query_map([], |row| row.get(0))?
            .collect::<rusqlite::Result<_>>()?;
        if names.is_empty() {
            return Ok(());
        }
        let names: Vec<SealedName> =
            names.iter().filter_map(|name| SealedName::parse(name)).collect();
        for names in names.chunks(WAITING_TOGETHER) {
            let mut files = Vec::new();
            for name in names {
                files.extend(unshelved(store.reader(), name)?.map(|bytes| (*name, bytes)));
            }
            let files: Vec<(SealedName, &[u8])> =
                files.iter().map(|(name, bytes)| (*name, bytes.as_slice())).collect();
            self.put(&files)?;
        }
        store.write(|tx| Ok(tx.execute("DELETE FROM unshelved", [])?))?;
        Ok(())
    }

    /// True when every file that the database knows lies there as it was written, and the database knows every
    /// file of those that were `there` that `opens`.
    pub(crate) fn audit(
        &self,
        connection: &Connection,
        there: &[SealedName],
        opens: &dyn Fn(&SealedName, &[u8]) -> bool,
        stopped: &dyn Fn() -> bool,
    ) -> Result<bool> {
        let known = ledger::names(connection)?;
        for name in known.iter().take_while(|_| !stopped()) {
            if self.whole(name).is_none() && unshelved(connection, name)?.is_none() {
                return Ok(false);
            }
        }
        let unknown = |name: &&SealedName| !known.contains(name);
        let strays =
            there.iter().filter(unknown).filter_map(|name| Some((name, self.whole(name)?)));
        Ok(!strays.take_while(|_| !stopped()).any(|(name, bytes)| opens(name, &bytes)))
    }

    /// Puts right what is not as it was written: a leaf of one's own is sealed again, under a new name; one of
    /// somebody else's is forgotten as a file, and fetched again.
    pub(crate) fn put_right(&self, store: &mut Store, signer: Option<&Signer<'_>>) -> Result<()> {
        for name in ledger::names(store.reader())? {
            if self.whole(&name).is_some() || unshelved(store.reader(), &name)?.is_some() {
                continue;
            }
            let own = store.device();
            store.write(|tx| {
                let leaf = match signer {
                    Some(signer) if name.device == own => match ledger::leaf_of(tx, &name)? {
                        Some((lane, content)) => {
                            let certificate = signer.trusted.certificate;
                            signer::written(tx, certificate, lane, content)?
                        }
                        None => None,
                    },
                    _ => None,
                };
                ledger::drop_file(tx, &name)?;
                if let (Some(signer), Some(leaf)) = (signer, leaf) {
                    signer::file(tx, signer, &leaf)?;
                }
                Ok(())
            })?;
        }
        // A shelf that cannot be written is no reason to keep an athlete from logging.
        let _ = self.put_waiting(store);
        Ok(())
    }

    fn path(&self, name: &SealedName) -> PathBuf {
        self.folder.join(name.to_string())
    }
}

/// A file that waits for the shelf.
fn unshelved(connection: &Connection, name: &SealedName) -> Result<Option<Vec<u8>>> {
    let sql = "SELECT bytes FROM unshelved WHERE name = ?1";
    let mut statement = connection.prepare_cached(sql)?;
    let bytes: Option<Vec<u8>> =
        statement.query_row([name.to_string()], |row| row.get(0)).optional()?;
    Ok(bytes.filter(|bytes| is_as_named(name, bytes)))
}
