//! Opening a home folder, and what happens when its database is damaged.

use std::fs::File;
use std::io::ErrorKind;
use std::path::Path;

use rusqlite::Connection;

use super::checkup::{self, Checkup};
use super::owner::Owner;
use super::private::PrivateCopy;
use super::rebuild::{self, Rebuilt, from_shelf, with_suffix};
use super::tail::Tail;
use crate::error::{Error, Result};
use crate::exchange::{Shelf, Signer, latest_hlc, on_opening, withhold};
use crate::instant::Instant;
use crate::journal::Entry;
use crate::store::{Store, check, connect, has_line, is_damage, last_number, refuse_newer};
use crate::trust::Standing;

/// The database's file name.
pub(super) const DATABASE: &str = "holdfast.db";

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
    pub(super) standing: Standing,
}

/// Opens the database of a home folder that is held.
///
/// A newer one is refused and left untouched. A damaged one is kept aside, never deleted, and a new
/// one is built from the leaves on the shelf, the tail, and whatever can still be read.
pub(super) fn open(home: &Path, own: &Owner<'_>, at: &Instant, look: Look) -> Result<Parts> {
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
    let rebuilt = rebuild::rebuild(&path, own, &shelf, &tail, at)?;
    let parts = looked_at(home, own, at, Look::Full)?;
    Ok(Parts { rebuilt: Some(rebuilt), ..parts })
}

fn looked_at(home: &Path, own: &Owner<'_>, at: &Instant, look: Look) -> Result<Parts> {
    let path = home.join(DATABASE);
    let (shelf, tail) = (Shelf::of(home)?, Tail::of(home));
    rebuild::finish(&path)?;
    refuse_newer(&path)?;
    let due = look != Look::New && checkup::is_due(&path, at);
    if due || look == Look::Full {
        shelf.sweep();
    }
    let (connection, empty) = connected(&path, look)?;
    let (device, trusted) = (own.identity.device, own.identity.trusted());
    let mut store = Store::new(connection, device, trusted.own());
    let mut standing = on_opening(&mut store, &trusted)?;
    // A database that is missing, and one that lacks a leaf of the shelf, get back what there is.
    let missing = look != Look::New && (empty || last_number(store.reader(), device)? == 0);
    // What was lost of the log, or with it, is the end of it: the last line of the tail tells.
    let lacks = |entry: Entry| Ok(!has_line(store.reader(), entry.id, entry.digest())?);
    let cut_short = tail.last().map_or(Ok::<bool, Error>(false), lacks)?;
    let mut rebuilt = None;
    let private = PrivateCopy::of(home);
    if missing || look == Look::Full || private.has_more(&store)? {
        private.give_back(&mut store)?;
    }
    if missing || look == Look::Full || (look == Look::Usual && cut_short) {
        let (mut from_leaves, unopened) = from_shelf(&mut store, &shelf, own, &mut standing, at)?;
        from_leaves += rebuild::unsent(&mut store, &tail.entries())?;
        if let Some(from) = own.identity.shares_from {
            store.write(|tx| withhold(tx, device, from))?;
        }
        rebuilt = ((empty && look != Look::New) || from_leaves > 0).then_some(Rebuilt {
            aside: None,
            from_leaves,
            unopened,
            salvaged: 0,
        });
    }
    let checkup = match look {
        Look::Usual if due && !missing => begin(&store, &path, home, own, at)?,
        Look::Full => {
            // What is folded is made again: no digest says whether it is as it was.
            store.refold()?;
            let signer = trusted.crew().map(|crew| {
                let (keys, trusted, standing) = (&own.kept.keys, &trusted, &standing);
                Signer { keys, trusted, crew, standing }
            });
            shelf.put_right(&mut store, signer.as_ref())?;
            checkup::note(&path, at);
            None
        }
        Look::New => {
            checkup::note(&path, at);
            None
        }
        Look::Usual => None,
    };
    let hlc = latest_hlc(store.reader(), device, at.wall_ms)?;
    store.resume(hlc);
    Ok(Parts { store, shelf, tail, rebuilt, checkup, standing })
}

/// Begins a check that is due. One that cannot begin, as on a full disk, stays due and stops nobody.
fn begin(
    store: &Store,
    path: &Path,
    home: &Path,
    own: &Owner<'_>,
    at: &Instant,
) -> Result<Option<Checkup>> {
    match Checkup::begin(store, path, Shelf::of(home)?, own, at) {
        Err(error) if is_damage(&error) => Err(error),
        Err(_) => store.moves_again().map(|()| None),
        begun => begun.map(Some),
    }
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
        let path = with_suffix(path, suffix);
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
