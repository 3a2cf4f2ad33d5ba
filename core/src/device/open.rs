//! Opening a home folder, and what happens when its database is damaged.

use std::fs::File;
use std::io::ErrorKind;
use std::path::Path;

use rusqlite::Connection;

use super::checkup::{self, Checkup};
use super::tail::Tail;
use super::{Identity, rebuild};
use crate::error::{Error, Result};
use crate::exchange::{CarriedFile, Shelf, latest_hlc, take_in};
use crate::instant::Instant;
use crate::say;
use crate::store::{Store, check, connect, insert_all, is_damage, last_number, refuse_newer};

/// The database's file name.
pub(super) const DATABASE: &str = "holdfast.db";

/// What was done about a damaged database.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Rebuilt {
    /// Where the damaged file is kept; none when it was missing altogether.
    pub(crate) aside: Option<String>,
    /// Entries that came back from leaf files.
    pub(crate) from_leaves: u64,
    /// Entries no leaf held yet that could still be read from the damaged file.
    pub(crate) salvaged: u64,
}

impl Rebuilt {
    /// What was done, in words.
    pub(crate) fn text(&self) -> String {
        let Rebuilt { aside, from_leaves, salvaged } = self;
        match aside {
            Some(aside) => say::device::rebuilt_damaged(aside, *from_leaves, *salvaged),
            None => say::device::rebuilt_missing(*from_leaves),
        }
    }
}

/// How a home is opened.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Look {
    /// For the first time: nothing can be missing.
    New,
    /// As usual: what a full check would find is looked for beside the session, where one is due.
    Usual,
    /// After damage was met: everything is looked at before anything is done.
    Full,
}

/// A home's parts, open.
pub(super) struct Parts {
    pub(super) store: Store,
    pub(super) shelf: Shelf,
    pub(super) tail: Tail,
    pub(super) rebuilt: Option<Rebuilt>,
    pub(super) checkup: Option<Checkup>,
}

/// Opens the database of a home folder that is held.
///
/// A newer one is refused and left untouched. A damaged one is kept aside, never deleted, and a new
/// one is built from the leaves on the shelf, the tail, and whatever can still be read.
pub(super) fn open(home: &Path, own: &Identity, at: &Instant, look: Look) -> Result<Parts> {
    match looked_at(home, own, at, look) {
        Err(error) if is_damage(&error) => {}
        opened => return opened,
    }
    let path = home.join(DATABASE);
    // What cannot be read is not damaged: that is the disk's error, and the file stays. SQLite may take a
    // read that failed for damage, so it must find the same with every byte there.
    readable(&path)?;
    match looked_at(home, own, at, Look::Full) {
        Err(error) if is_damage(&error) => {}
        opened => return opened,
    }
    readable(&path)?;
    let (shelf, tail) = (Shelf::of(home)?, Tail::of(home));
    let rebuilt = rebuild::rebuild(&path, own.device, &shelf, &tail, at)?;
    let parts = looked_at(home, own, at, Look::Full)?;
    Ok(Parts { rebuilt: Some(rebuilt), ..parts })
}

fn looked_at(home: &Path, own: &Identity, at: &Instant, look: Look) -> Result<Parts> {
    let path = home.join(DATABASE);
    let (shelf, tail) = (Shelf::of(home)?, Tail::of(home));
    rebuild::finish(&path)?;
    refuse_newer(&path)?;
    let due = look != Look::New && checkup::is_due(&path, at);
    let (connection, empty) = connected(&path, look)?;
    let mut store = Store::new(connection, own.device);
    // A database that is missing, and one that lacks a leaf of the shelf, get back what there is.
    let missing = look != Look::New && (empty || last_number(store.reader(), own.device)? == 0);
    let mut rebuilt = None;
    if missing || look == Look::Full {
        let mut from_leaves = from_shelf(&mut store, &shelf, at)?;
        if missing {
            let copied = tail.entries();
            from_leaves += store.write(|tx| insert_all(tx, &copied))?;
        }
        rebuilt = (missing || from_leaves > 0).then_some(Rebuilt {
            aside: None,
            from_leaves,
            salvaged: 0,
        });
    }
    let checkup = match look {
        Look::Usual if due && !missing => Some(Checkup::begin(&path, Shelf::of(home)?, at)?),
        Look::Full => {
            shelf.audit(store.reader(), &|| false)?;
            checkup::note(&path, at);
            None
        }
        Look::New => {
            checkup::note(&path, at);
            None
        }
        Look::Usual => None,
    };
    let hlc = latest_hlc(store.reader(), own.device, at.wall_ms)?;
    store.resume(hlc);
    Ok(Parts { store, shelf, tail, rebuilt, checkup })
}

/// Opens the file; with a full look it is checked first.
fn connected(path: &Path, look: Look) -> Result<(Connection, bool)> {
    let (connection, empty) = connect(path)?;
    if look == Look::Full {
        check(&connection, &|| false)?;
    }
    Ok((connection, empty))
}

/// Reads the database's files from end to end: an error here is one of the disk, not damage.
fn readable(path: &Path) -> Result<()> {
    for suffix in ["", "-wal"] {
        let path = rebuild::with_suffix(path, suffix);
        match File::open(&path) {
            Ok(mut file) => {
                std::io::copy(&mut file, &mut std::io::sink()).map_err(Error::file(&path))?;
            }
            Err(error) if error.kind() == ErrorKind::NotFound => {}
            Err(error) => return Err(Error::file(&path)(error)),
        }
    }
    Ok(())
}

/// Takes in every readable leaf on the shelf; the others stay where they are.
pub(super) fn from_shelf(store: &mut Store, shelf: &Shelf, at: &Instant) -> Result<u64> {
    let known = shelf.known(store)?;
    let mut entries = 0;
    for name in shelf.names()?.into_iter().filter(|name| !known.contains(name)) {
        let Some(content) = shelf.read(&name) else { continue };
        let file = CarriedFile { name: name.to_string(), content };
        entries += take_in(store, shelf, None, &file, at.wall_ms)?.unwrap_or(0);
    }
    Ok(entries)
}

#[cfg(test)]
mod tests {
    use catalogue::{Language, speaking};

    use super::*;

    #[test]
    fn what_came_back_is_counted_in_both_languages() {
        let said = |from_leaves, salvaged| {
            let text = || Rebuilt { aside: Some("x.db".into()), from_leaves, salvaged }.text();
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
        let missing = Rebuilt { aside: None, from_leaves: 2, salvaged: 0 };
        let back = "The database, or part of it, was missing. 2 entries were restored from this \
                    device's files.";
        assert_eq!(missing.text(), back);
    }
}
