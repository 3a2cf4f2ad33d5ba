//! The full check of a home: every page, every line, every file on the shelf. It reads all there is, so
//! it runs beside the session: after an end that was not tidy, and once a week. The database file keeps
//! still meanwhile.

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread::JoinHandle;

use rusqlite::InterruptHandle;

use super::owner::Owner;
use super::rebuild::with_suffix;
use crate::error::Result;
use crate::exchange::sealed::SealedName;
use crate::exchange::{Reader, Shelf};
use crate::instant::Instant;
use crate::store::{Store, check, is_damage};

/// A file whose content is when the last full check found a home whole, in milliseconds since 1970. While
/// it is missing a check is due.
const FILE: &str = "checked";

const WEEK_MS: i64 = 7 * 24 * 60 * 60 * 1000;

/// True when a check is due at a moment. An end that was not tidy leaves the database's log behind; the
/// check stays due until one was finished.
pub(super) fn is_due(database: &Path, at: &Instant) -> bool {
    let checked = stamp(database);
    let log = fs::metadata(with_suffix(database, "-wal"));
    if log.is_ok_and(|log| log.len() > 0) {
        let _ = fs::remove_file(&checked);
        return true;
    }
    let last = fs::read_to_string(&checked).ok().and_then(|text| text.trim().parse::<i64>().ok());
    last.is_none_or(|last| !(0..WEEK_MS).contains(&at.wall_ms.saturating_sub(last)))
}

/// Notes that a home was found whole.
pub(super) fn note(database: &Path, at: &Instant) {
    // Without the note the next opening checks again.
    let _ = fs::write(stamp(database), at.wall_ms.to_string());
}

fn stamp(database: &Path) -> PathBuf {
    database.with_file_name(FILE)
}

/// A check that runs beside everything else. Dropped, it stops.
pub(crate) struct Checkup {
    thread: Option<JoinHandle<()>>,
    stop: Arc<Shared>,
}

struct Shared {
    stop: AtomicBool,
    /// Something is wrong that only the holder of the home can put right.
    found: AtomicBool,
    interrupt: InterruptHandle,
}

impl Checkup {
    /// Begins one, with its own connection that only reads.
    pub(super) fn begin(
        store: &Store,
        database: &Path,
        shelf: Shelf,
        own: &Owner<'_>,
        at: &Instant,
    ) -> Result<Checkup> {
        // What comes onto the shelf later is not in the file that is looked at.
        let there = shelf.names()?;
        let connection = store.keep_still(database)?;
        let interrupt = connection.get_interrupt_handle();
        let no = || AtomicBool::new(false);
        let shared = Arc::new(Shared { stop: no(), found: no(), interrupt });
        let (database, at, told) = (database.to_owned(), at.clone(), Arc::clone(&shared));
        let (kept, trusted) = (Arc::clone(own.kept), own.identity.trusted());
        let thread = std::thread::spawn(move || {
            let stopped = || told.stop.load(Ordering::Relaxed);
            let opens =
                |name: &SealedName, bytes: &[u8]| Reader::opens(&kept, &trusted, name, bytes);
            let whole = check(&connection, &stopped)
                .and_then(|()| shelf.audit(&connection, &there, &opens, &stopped));
            match whole {
                _ if stopped() => {}
                Ok(true) => note(&database, &at),
                Ok(false) => told.found.store(true, Ordering::Relaxed),
                Err(error) if is_damage(&error) => told.found.store(true, Ordering::Relaxed),
                // Reading failed: the next opening tries again.
                Err(_) => {}
            }
        });
        Ok(Checkup { thread: Some(thread), stop: shared })
    }

    /// True once it has ended.
    pub(crate) fn is_over(&self) -> bool {
        self.thread.as_ref().is_none_or(JoinHandle::is_finished)
    }

    /// True once it found something to put right.
    pub(crate) fn found(&self) -> bool {
        self.stop.found.load(Ordering::Relaxed)
    }
}

impl Drop for Checkup {
    fn drop(&mut self) {
        self.stop.stop.store(true, Ordering::Relaxed);
        self.stop.interrupt.interrupt();
        if let Some(thread) = self.thread.take() {
            let _ = thread.join();
        }
    }
}
