//! Opening a database, and what happens when it is damaged or too new.

use std::fs::{self, File};
use std::io::Read;
use std::path::{Path, PathBuf};

use rusqlite::{Connection, ErrorCode, OpenFlags, TransactionBehavior, params};

use super::{Identity, Store, fold, leaves, schema};
use crate::error::{Error, Result};
use crate::id::DeviceId;
use crate::instant::Instant;
use crate::journal::{Entry, Leaf, LeafName, line_digest};

/// The database's file name.
pub(crate) const DATABASE: &str = "holdfast.db";
const SHELF: &str = "leaves";

/// What was done about a damaged database.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Rebuilt {
    /// Where the damaged file is kept; none when it was missing altogether.
    pub aside: Option<String>,
    /// Entries that came back from leaf files.
    pub from_leaves: u64,
    /// Entries no leaf held yet that could still be read from the damaged file.
    pub salvaged: u64,
}

/// Opens the database of a home folder.
///
/// A newer one is refused and left untouched. A damaged one is moved aside, never deleted, and a
/// new one is built from the leaves on the shelf and whatever can still be read. `new` says that
/// this is a first start, when nothing can be missing.
pub(crate) fn open(
    home: &Path,
    own: &Identity,
    at: &Instant,
    new: bool,
) -> Result<(Store, Option<Rebuilt>)> {
    let path = home.join(DATABASE);
    let shelf = home.join(SHELF);
    fs::create_dir_all(&shelf).map_err(Error::file(&shelf))?;
    refuse_newer(&path)?;
    // Damage met while reading is looked for again: another process may have put it right by now.
    let opened = match connect(&path) {
        Err(error) if is_damage(&error) => None,
        other => Some(other?),
    };
    let device = own.device;
    let store = |connection| Store { connection, device, shelf, hlc: Default::default() };
    let (mut store, rebuilt) = match opened {
        Some((connection, empty)) => {
            let mut store = store(connection);
            // Leaves on the shelf that the database lacks come back at every opening: the file was
            // lost, or a rebuild was cut short.
            let from_leaves = absorb_shelf(&mut store, at)?;
            let rebuilt = Rebuilt { aside: None, from_leaves, salvaged: 0 };
            (store, (from_leaves > 0 || (empty && !new)).then_some(rebuilt))
        }
        None => {
            let aside = move_aside(&path, at)?;
            let mut store = store(connect(&path)?.0);
            let from_leaves = absorb_shelf(&mut store, at)?;
            let salvaged = salvage(&mut store, &aside)?;
            let aside = Some(aside.display().to_string());
            (store, Some(Rebuilt { aside, from_leaves, salvaged }))
        }
    };
    for name in names_not_on(&store)? {
        // A shelf that cannot be written is no reason to keep an athlete from logging.
        let _ = store.shelve(&name);
    }
    store.hlc = leaves::latest_hlc(&store.connection, device, at.wall_ms)?;
    Ok((store, rebuilt))
}

fn refuse_newer(path: &Path) -> Result<()> {
    let mut head = Vec::new();
    if let Ok(file) = File::open(path) {
        file.take(100).read_to_end(&mut head).map_err(Error::file(path))?;
    }
    match schema::version_in_file(&head) {
        Some(found) if found > schema::SCHEMA_VERSION => {
            Err(Error::TooNew { found, supported: schema::SCHEMA_VERSION })
        }
        _ => Ok(()),
    }
}

/// Opens a file and checks it. Says whether it held nothing before.
fn connect(path: &Path) -> Result<(Connection, bool)> {
    let mut connection = Connection::open(path)?;
    schema::prepare(&connection)?;
    let version: i64 = connection.query_row("PRAGMA user_version", [], |row| row.get(0))?;
    if version > 0 {
        check(&connection)?;
    }
    schema::migrate(&mut connection)?;
    Ok((connection, version == 0))
}

/// Looks for damage: in SQLite's own structure, in indexes that do not match their tables, and in
/// the journal's lines, each against the digest it was stored with.
fn check(connection: &Connection) -> Result<()> {
    let found: String = connection.query_row("PRAGMA integrity_check(1)", [], |row| row.get(0))?;
    if found != "ok" {
        return Err(damaged(&found));
    }
    let mut statement = connection.prepare("SELECT raw, digest FROM entry")?;
    let mut rows = statement.query([])?;
    while let Some(row) = rows.next()? {
        let whole = row.get_ref(0)?.as_str().is_ok_and(|raw| Ok(line_digest(raw)) == row.get(1));
        if !whole {
            return Err(damaged("an entry does not match its digest"));
        }
    }
    Ok(())
}

fn damaged(found: &str) -> Error {
    let code = rusqlite::ffi::Error::new(rusqlite::ffi::SQLITE_CORRUPT);
    Error::Sqlite(rusqlite::Error::SqliteFailure(code, Some(found.to_owned())))
}

/// True for an error that means the file itself is damaged.
pub(crate) fn is_damage(error: &Error) -> bool {
    let Error::Sqlite(error) = error else { return false };
    matches!(error.sqlite_error_code(), Some(ErrorCode::DatabaseCorrupt | ErrorCode::NotADatabase))
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
fn absorb_shelf(store: &mut Store, at: &Instant) -> Result<u64> {
    let shelf = store.shelf.clone();
    let mut names: Vec<LeafName> = fs::read_dir(&shelf)
        .map_err(Error::file(&shelf))?
        .filter_map(|file| LeafName::parse(file.ok()?.file_name().to_str()?))
        .collect();
    names.sort();
    let known = leaves::names(&store.connection)?;
    let mut entries = 0;
    for name in names.into_iter().filter(|name| !known.contains(name)) {
        let Ok(bytes) = fs::read(shelf.join(name.to_string())) else { continue };
        if let Ok(leaf) = Leaf::read(&name, &bytes) {
            entries += store.absorb(&leaf, &bytes, at.wall_ms)?;
        }
    }
    Ok(entries)
}

/// Takes over own entries that no leaf brought back, as far as the damaged file still answers. Only
/// lines that match the digest they were stored with count.
fn salvage(store: &mut Store, aside: &Path) -> Result<u64> {
    let own: DeviceId = store.device;
    let tx = store.connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
    let highest: i64 =
        tx.query_row("SELECT coalesce(max(n), 0) FROM entry WHERE device = ?1", [own.0], |row| {
            row.get(0)
        })?;
    let mut salvaged = 0;
    if let Ok(damaged) = Connection::open_with_flags(aside, OpenFlags::SQLITE_OPEN_READ_ONLY) {
        let read = |number: i64| -> rusqlite::Result<Vec<(i64, String)>> {
            let sql = "SELECT digest, raw FROM entry WHERE device = ?1 AND n = ?2";
            let mut statement = damaged.prepare_cached(sql)?;
            statement
                .query_map(params![own.0, number], |row| Ok((row.get(0)?, row.get(1)?)))?
                .collect()
        };
        // Behind the last one that came back the numbering goes on until the file has no more.
        for number in 1.. {
            let found = read(number).unwrap_or_default();
            if found.is_empty() && number > highest {
                break;
            }
            for (digest, raw) in found {
                let whole = line_digest(&raw) == digest;
                if let Some(entry) = Entry::read(own, &raw).ok().filter(|_| whole) {
                    salvaged += u64::from(fold::insert(&tx, &entry, None)?);
                }
            }
        }
    }
    tx.commit()?;
    Ok(salvaged)
}

/// Leaves the database knows and the shelf lacks: a stop came between the two.
fn names_not_on(store: &Store) -> Result<Vec<LeafName>> {
    let known = leaves::names(&store.connection)?;
    Ok(known.into_iter().filter(|name| !store.shelf.join(name.to_string()).exists()).collect())
}

impl Identity {
    /// Makes the home folder of a device that starts.
    pub(crate) fn settle(&self, home: &Path) -> Result<()> {
        fs::create_dir_all(home).map_err(Error::file(home))?;
        // What hurts somebody is nobody else's business on a shared machine.
        #[cfg(unix)]
        {
            use std::os::unix::fs::PermissionsExt;
            let only_me = fs::Permissions::from_mode(0o700);
            fs::set_permissions(home, only_me).map_err(Error::file(home))?;
        }
        self.write(home)
    }
}
