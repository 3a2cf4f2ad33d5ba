//! Building a database again beside the damaged one, which stays in its place until the new one is
//! whole and flushed. A stop at any moment leaves the damaged file, the new one, or both, under names
//! that say which is which.
//!
//! | file | meaning |
//! |---|---|
//! | `holdfast.db` | the database |
//! | `holdfast.db.new` | one being built: worth nothing yet |
//! | `holdfast.db.whole` | one that was built: takes the database's place at the next opening |
//! | `holdfast.db.damaged-...` | a damaged one, kept |

use std::fs::{self, File};
use std::io::ErrorKind;
use std::path::{Path, PathBuf};

use super::owner::Owner;
use super::salvage::salvage;
use super::tail::Tail;
use crate::error::{Error, Result};
use crate::exchange::sealed::{SealedFault, SealedName};
use crate::exchange::{
    CarriedFile, Outcome, Reader, Shelf, flush_folder, names, on_opening, take_in,
};
use crate::instant::Instant;
use crate::journal::{Entry, body_of};
use crate::say;
use crate::store::{Store, connect, has_line, insert_all, post_again};
use crate::trust::Standing;

/// What lies beside a database file while it is open.
const BESIDE: [&str; 2] = ["-wal", "-shm"];

/// Entries taken from a damaged file at a time, so that a file of any size needs little memory.
const BATCH: usize = 1_000;

/// Leaves taken in from the shelf at a time.
const LEAVES: usize = 32;

/// What was done about a damaged database.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Rebuilt {
    /// Where the damaged file is kept; none when it was missing altogether.
    pub(crate) aside: Option<String>,
    /// Entries that came back from leaf files.
    pub(crate) from_leaves: u64,
    /// Entries no leaf held yet that could still be read from the damaged file.
    pub(crate) salvaged: u64,
    /// Leaf files that this device's keys do not open: those that a recovery code opened when the device was set up.
    pub(crate) unopened: u64,
}

impl Rebuilt {
    /// What was done, in words.
    pub(crate) fn text(&self) -> String {
        let Rebuilt { aside, from_leaves, salvaged, unopened } = self;
        let said = match aside {
            Some(aside) => say::device::rebuilt_damaged(aside, *from_leaves, *salvaged),
            None => say::device::rebuilt_missing(*from_leaves),
        };
        match unopened {
            0 => said,
            files => say::device::rebuilt_unopened(said, *files),
        }
    }
}

pub(super) fn with_suffix(path: &Path, suffix: &str) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(suffix);
    PathBuf::from(name)
}

/// Puts a rebuilt database into its place, when one is waiting: a stop came between.
pub(super) fn finish(path: &Path) -> Result<()> {
    let whole = with_suffix(path, ".whole");
    if !whole.exists() {
        return Ok(());
    }
    // The damaged file's log must be gone for good before the new file has its name, or SQLite would
    // write the one into the other.
    for suffix in BESIDE {
        remove(&with_suffix(path, suffix))?;
    }
    let home = path.parent().unwrap_or(Path::new("."));
    flush_folder(home)?;
    fs::rename(&whole, path).map_err(Error::file(&whole))?;
    flush_folder(home)
}

/// Builds the database again from the leaves on the shelf, the tail, and whatever the damaged file still
/// gives, and keeps the damaged one aside.
pub(super) fn rebuild(
    path: &Path,
    own: &Owner<'_>,
    shelf: &Shelf,
    tail: &Tail,
    at: &Instant,
) -> Result<Rebuilt> {
    let new = with_suffix(path, ".new");
    let clear = || {
        let suffixes = ["", "-wal", "-shm", "-journal"];
        suffixes.iter().try_for_each(|suffix| remove(&with_suffix(&new, suffix)))
    };
    clear()?;
    let rebuilt = built(path, &new, own, shelf, tail, at);
    if rebuilt.is_err() {
        // What was begun would only fill a disk that is full.
        let _ = clear();
    }
    rebuilt
}

fn built(
    path: &Path,
    new: &Path,
    own: &Owner<'_>,
    shelf: &Shelf,
    tail: &Tail,
    at: &Instant,
) -> Result<Rebuilt> {
    let home = path.parent().unwrap_or(Path::new("."));
    let trusted = own.identity.trusted();
    let mut store = Store::new(connect(new)?.0, own.identity.device, trusted.own());
    let mut standing = on_opening(&mut store, &trusted)?;
    let (from_leaves, unopened) = from_shelf(&mut store, shelf, own, &mut standing, at)?;
    let mut salvaged = unsent(&mut store, &tail.entries())?;
    let mut batch = Vec::new();
    salvage(path, |entry| {
        batch.push(entry);
        if batch.len() == BATCH {
            salvaged += unsent(&mut store, &batch)?;
            batch.clear();
        }
        Ok(())
    })?;
    salvaged += unsent(&mut store, &batch)?;
    store.close()?;
    File::open(new).and_then(|file| file.sync_all()).map_err(Error::file(new))?;
    let aside = keep_aside(path, at)?;
    flush_folder(home)?;
    let whole = with_suffix(path, ".whole");
    fs::rename(new, &whole).map_err(Error::file(&whole))?;
    flush_folder(home)?;
    finish(path)?;
    Ok(Rebuilt { aside: Some(aside.display().to_string()), from_leaves, salvaged, unopened })
}

/// Gives the damaged database, and its log, a dated name as well.
fn keep_aside(path: &Path, at: &Instant) -> Result<PathBuf> {
    let date = at.local().format("%Y%m%dT%H%M%S");
    let mut names = (1..).map(|count| {
        let again = if count == 1 { String::new() } else { format!("-{count}") };
        with_suffix(path, &format!(".damaged-{date}{again}"))
    });
    let aside = names.find(|name| !name.exists()).unwrap_or_else(|| with_suffix(path, ".damaged"));
    for suffix in ["", "-wal"] {
        let (from, to) = (with_suffix(path, suffix), with_suffix(&aside, suffix));
        if from.exists() && fs::hard_link(&from, &to).is_err() {
            // A file system without links.
            fs::copy(&from, &to).map_err(Error::file(&to))?;
            File::open(&to).and_then(|file| file.sync_all()).map_err(Error::file(&to))?;
        }
    }
    Ok(aside)
}

fn remove(path: &Path) -> Result<()> {
    match fs::remove_file(path) {
        Err(error) if error.kind() != ErrorKind::NotFound => Err(Error::file(path)(error)),
        _ => Ok(()),
    }
}

/// Takes in every readable leaf on the shelf; the others stay where they are. Gives how many entries came, and how many files
/// this device's keys do not open.
pub(super) fn from_shelf(
    store: &mut Store,
    shelf: &Shelf,
    own: &Owner<'_>,
    standing: &mut Standing,
    at: &Instant,
) -> Result<(u64, u64)> {
    let known = names(store.reader())?;
    let trusted = own.identity.trusted();
    let unknown: Vec<_> = shelf.names()?.into_iter().filter(|name| !known.contains(name)).collect();
    let (mut entries, mut unopened) = (0, 0);
    for names in unknown.chunks(LEAVES) {
        let read = |name: &SealedName| {
            Some(CarriedFile { name: name.to_string(), content: shelf.read(name)? })
        };
        let files: Vec<CarriedFile> = names.iter().filter_map(read).collect();
        let files: Vec<&CarriedFile> = files.iter().collect();
        let mut reader = Reader { kept: own.kept, trusted: &trusted, standing };
        let taken = take_in(store, shelf, &mut reader, &files, at.wall_ms)?;
        let shut = |outcome: &&Outcome| matches!(outcome, Err(SealedFault::NotForUs));
        unopened += taken.iter().filter(shut).count() as u64;
        entries += taken.into_iter().flatten().map(|taken| taken.new).sum::<u64>();
    }
    Ok((entries, unopened))
}

/// Takes in entries that came from no leaf. One's own that no leaf of a thread holds wait to be sent.
pub(super) fn unsent(store: &mut Store, entries: &[Entry]) -> Result<u64> {
    let (own, device) = (store.own(), store.device());
    store.write(|tx| {
        let mut new = 0;
        for entry in entries {
            let lacking = !has_line(tx, entry.id, entry.digest())?;
            if lacking && entry.id.device == device {
                post_again(tx, own, entry, body_of(&entry.raw).as_ref())?;
            }
            new += u64::from(lacking);
        }
        insert_all(tx, entries)?;
        Ok(new)
    })
}

#[cfg(test)]
mod tests {
    use catalogue::{Language, speaking};

    use super::*;

    #[test]
    fn what_came_back_is_counted_in_both_languages() {
        let said = |from_leaves, salvaged| {
            let text = || {
                Rebuilt { aside: Some("x.db".into()), from_leaves, salvaged, unopened: 0 }.text()
            };
            [Language::En, Language::De].map(|language| speaking(language, text))
        };
        let begin = "The database was damaged and is kept as x.db. A new one was built: ";
        let beginnt = "Die Datenbank war beschädigt und bleibt als x.db erhalten. Eine neue wurde \
                       angelegt: ";
        let [en, de] = said(1, 0);
        assert_eq!(en, format!("{begin}1 entry was restored from this device's files."));
        let back = "1 Eintrag kam aus den eigenen Dateien dieses Geräts zurück.";
        assert_eq!(de, format!("{beginnt}{back}"));
        let [en, de] = said(7, 1);
        let back = "7 entries were restored from this device's files, and 1 more was recovered \
                    from the damaged database.";
        assert_eq!(en, format!("{begin}{back}"));
        let back = "7 Einträge kamen aus den eigenen Dateien dieses Geräts zurück, dazu 1 Eintrag \
                    aus der beschädigten Datenbank, der in keiner davon stand.";
        assert_eq!(de, format!("{beginnt}{back}"));
        let missing = Rebuilt { aside: None, from_leaves: 2, salvaged: 0, unopened: 0 };
        let back = "The database, or part of it, was missing. 2 entries were restored from this \
                    device's files.";
        assert_eq!(missing.text(), back);
        let shut = |unopened, language| {
            speaking(language, || Rebuilt { unopened, ..missing.clone() }.text())
        };
        assert!(shut(1, Language::En).starts_with(&format!("{back} 1 more file opens with your")));
        assert!(shut(3, Language::En).contains("3 more files open with your recovery code alone."));
        let geöffnet =
            "3 weitere Dateien lassen sich nur mit deinem Wiederherstellungscode öffnen.";
        assert!(shut(3, Language::De).contains(geöffnet));
    }
}
