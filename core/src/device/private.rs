//! The second place of private notes: a file beside the database, as the tail is for entries. It is written without a
//! flush of its own, and never stands in the way of a note.

use std::fs::{self, File};
use std::io::Write;
use std::path::{Path, PathBuf};

use super::Device;
use crate::error::{Error, Result};
use crate::instant::Instant;
use crate::journal::{Note, line_digest};
use crate::planted::{Planted, planted};
use crate::store::{Draft, PrivateNote, Store, last_number, last_private, private_notes};

const FILE: &str = "private.jsonl";

/// The copy beside a database.
pub(super) struct PrivateCopy {
    path: PathBuf,
}

impl PrivateCopy {
    /// The copy in a home folder.
    pub(super) fn of(home: &Path) -> PrivateCopy {
        PrivateCopy { path: home.join(FILE) }
    }

    /// The notes of it that are as they were written.
    fn notes(&self) -> Vec<PrivateNote> {
        let text = fs::read(&self.path).unwrap_or_default();
        text.split(|byte| *byte == b'\n').filter_map(read).collect()
    }

    /// True where it has a note that the database lacks.
    pub(super) fn has_more(&self, store: &Store) -> Result<bool> {
        let last = self.notes().last().map_or(0, |kept| kept.number);
        Ok(last > last_private(store.reader())?)
    }

    /// Gives the database back what it lacks.
    pub(super) fn give_back(&self, store: &mut Store) -> Result<()> {
        let notes = self.notes();
        if notes.is_empty() { Ok(()) } else { store.give_back_private(&notes) }
    }

    fn write(&self, notes: &[PrivateNote]) -> std::io::Result<()> {
        let new = self.path.with_extension("new");
        let mut file = File::create(&new)?;
        for kept in notes {
            let said = serde_json::to_string(kept)?;
            writeln!(file, "{:016x} {said}", line_digest(&said))?;
        }
        drop(file);
        fs::rename(new, &self.path)
    }
}

fn read(line: &[u8]) -> Option<PrivateNote> {
    let (digest, said) = std::str::from_utf8(line).ok()?.split_once(' ')?;
    let whole = format!("{:016x}", line_digest(said)) == digest;
    serde_json::from_str(said).ok().filter(|_| whole)
}

impl Device {
    /// Keeps a note that nobody else will read: when this returns, it is on disk.
    pub(crate) fn add_private(&mut self, note: Note, at: &Instant) -> Result<PrivateNote> {
        if planted(Planted::SaidToAll) {
            self.append(at, vec![Draft::new(note.clone())])?;
        }
        let after = last_number(self.reader(), self.identity.device)?;
        let kept = self.store.add_private(note, after, at)?;
        // What cannot be copied is on disk.
        let _ = PrivateCopy::of(&self.home).write(&private_notes(self.reader(), None)?);
        Ok(kept)
    }

    /// Drops a private note. Its copy goes first: what came back from there would not be taken back.
    pub(crate) fn drop_private(&mut self, number: i64) -> Result<()> {
        let mut notes = private_notes(self.reader(), None)?;
        notes.retain(|kept| kept.number != number);
        let copy = PrivateCopy::of(&self.home);
        copy.write(&notes).map_err(Error::file(&copy.path))?;
        self.store.drop_private(number)
    }
}
