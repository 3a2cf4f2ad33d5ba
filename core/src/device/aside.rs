//! Damaged databases that were kept: what they are, and what can still be read of them.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use serde::Serialize;

use super::Device;
use super::open::DATABASE;
use super::salvage::salvage;
use crate::error::{Error, Result};
use crate::store::has_line;

/// A damaged database that was kept.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct KeptAside {
    /// The file's name in the home folder; its end is the date it was kept on.
    pub name: String,
    /// Entries that can still be read.
    pub entries: u64,
    /// Those of them that the journal does not have.
    pub only_here: u64,
    /// The lines of those, as they were written.
    pub lines: Vec<String>,
}

impl Device {
    /// Reads every damaged database that was kept, the earliest first.
    pub(crate) fn aside(&self) -> Result<Vec<KeptAside>> {
        self.aside_files()?.into_iter().map(|path| self.read_aside(&path)).collect()
    }

    /// The names of the damaged databases that were kept.
    pub(crate) fn aside_names(&self) -> Result<Vec<String>> {
        let name = |path: PathBuf| Some(path.file_name()?.to_string_lossy().into_owned());
        Ok(self.aside_files()?.into_iter().filter_map(name).collect())
    }

    fn aside_files(&self) -> Result<Vec<PathBuf>> {
        let files = fs::read_dir(&self.home).map_err(Error::file(&self.home))?;
        let kept = |path: &PathBuf| {
            let name = path.file_name().and_then(|name| name.to_str()).unwrap_or_default();
            let beside = name.ends_with("-wal") || name.ends_with("-shm");
            name.starts_with(DATABASE) && name.contains(".damaged") && !beside
        };
        let mut kept: Vec<PathBuf> =
            files.filter_map(|file| Some(file.ok()?.path())).filter(kept).collect();
        kept.sort();
        Ok(kept)
    }

    fn read_aside(&self, path: &Path) -> Result<KeptAside> {
        let (mut seen, mut lines) = (BTreeSet::new(), Vec::new());
        salvage(path, |entry| {
            if seen.insert(entry.version()) && !has_line(self.reader(), entry.id, entry.digest())? {
                lines.push(entry.raw);
            }
            Ok(())
        })?;
        let name = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
        Ok(KeptAside { name, entries: seen.len() as u64, only_here: lines.len() as u64, lines })
    }
}
