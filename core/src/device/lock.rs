//! One home, one holder: whoever opens a home folder holds it until they close it.
//!
//! The operating system lets go of a lock when its process ends, however it ends.

use std::fs::{File, OpenOptions, TryLockError};
use std::io::{ErrorKind, Read, Seek, Write};
use std::path::Path;
use std::time::Duration;

use crate::error::{Error, Field, Result};
use crate::say;

pub(super) const FILE: &str = "holdfast.lock";

/// Short commands in a row wait for each other so long, in steps.
const STEPS: u32 = 250;
const STEP: Duration = Duration::from_millis(20);

/// A home that is held. Dropped, it is free again.
#[derive(Debug)]
pub(crate) struct HomeLock {
    file: File,
}

impl Drop for HomeLock {
    fn drop(&mut self) {
        // Nobody is named who is gone.
        let _ = self.file.set_len(0);
    }
}

impl HomeLock {
    /// Takes hold of a home folder; waits a while for somebody else to let go.
    ///
    /// # Errors
    /// [`Error::Invalid`] with the holder's process when it stays held.
    pub(crate) fn take(home: &Path) -> Result<HomeLock> {
        let path = home.join(FILE);
        let mut options = OpenOptions::new();
        let opened = options.read(true).write(true).create(true).truncate(false).open(&path);
        let mut file = opened.map_err(Error::file(&path))?;
        for _ in 0..STEPS {
            match file.try_lock() {
                Ok(()) => {
                    // Only for whoever is told; without it they are told less.
                    let _ = sign(&mut file);
                    return Ok(HomeLock { file });
                }
                Err(TryLockError::WouldBlock) => std::thread::sleep(STEP),
                // A file system that knows no locks: as before there were any.
                Err(TryLockError::Error(error)) if error.kind() == ErrorKind::Unsupported => {
                    return Ok(HomeLock { file });
                }
                Err(TryLockError::Error(error)) => return Err(Error::file(&path)(error)),
            }
        }
        let mut holder = String::new();
        let _ = file.read_to_string(&mut holder);
        Err(Error::invalid(Field::Home, say::device::home_is_held(holder.trim())))
    }
}

/// Writes down which process holds the home.
fn sign(file: &mut File) -> std::io::Result<()> {
    file.set_len(0)?;
    file.rewind()?;
    write!(file, "{}", std::process::id())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_home_has_one_holder_who_is_named_and_then_the_next() {
        let home = tempfile::tempdir().unwrap();
        let held = HomeLock::take(home.path()).unwrap();
        let refused = HomeLock::take(home.path()).unwrap_err().to_string();
        assert!(refused.contains(&std::process::id().to_string()), "{refused}");
        drop(held);
        HomeLock::take(home.path()).unwrap();
    }

    #[test]
    fn who_comes_a_little_early_waits() {
        let home = tempfile::tempdir().unwrap();
        let held = HomeLock::take(home.path()).unwrap();
        std::thread::scope(|scope| {
            let waiting = scope.spawn(|| HomeLock::take(home.path()).map(drop));
            std::thread::sleep(STEP * 3);
            drop(held);
            waiting.join().unwrap().unwrap();
        });
    }
}
