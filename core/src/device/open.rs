//! Opening a home folder, and what happens when its database is damaged.

use std::fs;
use std::path::{Path, PathBuf};

use rusqlite::{Connection, OpenFlags, params};

use super::Identity;
use crate::error::{Error, Result};
use crate::exchange::{CarriedFile, Shelf, latest_hlc, take_in};
use crate::id::DeviceId;
use crate::instant::Instant;
use crate::journal::{Entry, line_digest};
use crate::say;
use crate::store::{Store, connect, insert_all, is_damage, last_number, refuse_newer};

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

/// Opens the database of a home folder.
///
/// A newer one is refused and left untouched. A damaged one is moved aside, never deleted, and a
/// new one is built from the leaves on the shelf and whatever can still be read. `new` says that
/// this is a first start, when nothing can be missing.
pub(super) fn open(
    home: &Path,
    own: &Identity,
    at: &Instant,
    new: bool,
) -> Result<(Store, Shelf, Option<Rebuilt>)> {
    let path = home.join(DATABASE);
    let shelf = Shelf::of(home)?;
    refuse_newer(&path)?;
    // Damage met while reading is looked for again: another process may have put it right by now.
    let opened = match connect(&path) {
        Err(error) if is_damage(&error) => None,
        other => Some(other?),
    };
    let (mut store, rebuilt) = match opened {
        Some((connection, empty)) => {
            let mut store = Store::new(connection, own.device);
            // Leaves on the shelf that the database lacks come back at every opening: the file was
            // lost, or a rebuild was cut short.
            let from_leaves = from_shelf(&mut store, &shelf, at)?;
            let rebuilt = Rebuilt { aside: None, from_leaves, salvaged: 0 };
            (store, (from_leaves > 0 || (empty && !new)).then_some(rebuilt))
        }
        None => {
            let aside = move_aside(&path, at)?;
            let mut store = Store::new(connect(&path)?.0, own.device);
            let from_leaves = from_shelf(&mut store, &shelf, at)?;
            let salvaged = salvage(&mut store, &aside)?;
            let aside = Some(aside.display().to_string());
            (store, Some(Rebuilt { aside, from_leaves, salvaged }))
        }
    };
    shelf.fill(&store)?;
    let hlc = latest_hlc(store.reader(), own.device, at.wall_ms)?;
    store.resume(hlc);
    Ok((store, shelf, rebuilt))
}

fn with_suffix(path: &Path, suffix: &str) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(suffix);
    PathBuf::from(name)
}

/// Moves the database and what belongs to it to a dated name that is not taken.
fn move_aside(path: &Path, at: &Instant) -> Result<PathBuf> {
    let date = at.local().format("%Y%m%dT%H%M%S");
    let mut names = (1..).map(|count| {
        let again = if count == 1 { String::new() } else { format!("-{count}") };
        with_suffix(path, &format!(".damaged-{date}{again}"))
    });
    let aside = names.find(|name| !name.exists()).unwrap_or_else(|| with_suffix(path, ".damaged"));
    for suffix in ["-wal", "-shm", ""] {
        let from = with_suffix(path, suffix);
        if from.exists() {
            fs::rename(&from, with_suffix(&aside, suffix)).map_err(Error::file(&from))?;
        }
    }
    Ok(aside)
}

/// Takes in every readable leaf on the shelf; the others stay where they are.
fn from_shelf(store: &mut Store, shelf: &Shelf, at: &Instant) -> Result<u64> {
    let known = shelf.known(store)?;
    let mut entries = 0;
    for name in shelf.names()?.into_iter().filter(|name| !known.contains(name)) {
        let Some(content) = shelf.read(&name) else { continue };
        let file = CarriedFile { name: name.to_string(), content };
        if let Ok(taken) = take_in(store, shelf, None, &file, at.wall_ms)? {
            entries += taken.new;
        }
    }
    Ok(entries)
}

/// Takes over own entries that no leaf brought back, as far as the damaged file still answers. Only
/// lines that match the digest they were stored with count.
fn salvage(store: &mut Store, aside: &Path) -> Result<u64> {
    let own: DeviceId = store.device();
    let Ok(damaged) = Connection::open_with_flags(aside, OpenFlags::SQLITE_OPEN_READ_ONLY) else {
        return Ok(0);
    };
    let read = |number: u64| -> rusqlite::Result<Vec<(i64, String)>> {
        let sql = "SELECT digest, raw FROM entry WHERE device = ?1 AND n = ?2";
        let mut statement = damaged.prepare_cached(sql)?;
        statement
            .query_map(params![own.0, number as i64], |row| Ok((row.get(0)?, row.get(1)?)))?
            .collect()
    };
    store.write(|tx| {
        let highest = last_number(tx, own)?;
        let mut whole = Vec::new();
        // Behind the last one that came back the numbering goes on until the file has no more.
        for number in 1.. {
            let found = read(number).unwrap_or_default();
            if found.is_empty() && number > highest {
                break;
            }
            for (digest, raw) in found {
                if line_digest(&raw) == digest {
                    whole.extend(Entry::read(own, &raw).ok());
                }
            }
        }
        insert_all(tx, &whole)
    })
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
