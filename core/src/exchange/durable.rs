//! Files that are there whole or not at all, whenever the power goes.

use std::ffi::OsStr;
use std::fs::{self, File, OpenOptions};
use std::io::{ErrorKind, Write};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU64, Ordering};

use crate::error::{Error, Result};

/// Files that are flushed one after the other once all are written. A disk that has their bytes on the way already
/// waits for each of them a tenth as long (measured); each is held open until then.
const TOGETHER: usize = 32;

/// Publishes a file under a name that only this content has: temporary name, flush, rename without
/// replacing, flush the folder. Says whether it was written.
///
/// Publishing the same bytes again is harmless. Another file under that name is one that was torn on
/// its way or has rotted since, and is replaced.
pub(crate) fn publish(folder: &Path, name: &str, bytes: &[u8]) -> Result<bool> {
    publish_all(folder, &[(name, bytes)]).map(|written| written > 0)
}

/// Publishes several files, each as [`publish`] does: no name is there before its content is on disk. When this returns
/// all of them are. Says how many were written.
pub(crate) fn publish_all(folder: &Path, files: &[(&str, &[u8])]) -> Result<usize> {
    let mut new = 0;
    for files in files.chunks(TOGETHER) {
        let mut written = Vec::new();
        for (name, bytes) in files {
            written.extend(write_unless_there(folder, name, bytes)?);
        }
        for one in &written {
            one.file.sync_all().map_err(Error::file(&one.temporary))?;
        }
        for one in &written {
            new += usize::from(one.take_name()?);
        }
        let any = !written.is_empty();
        // Their temporary names go before the folder is flushed.
        drop(written);
        if any {
            flush_folder(folder)?;
        }
    }
    Ok(new)
}

/// A file that is written and has its name not yet. Dropped before, it leaves nothing behind.
struct Written {
    file: File,
    temporary: PathBuf,
    target: PathBuf,
    /// True where another file has the name.
    replaces: bool,
}

impl Written {
    /// Gives it its name. Says whether that was new.
    fn take_name(&self) -> Result<bool> {
        // A hard link is a rename that refuses to replace. Where the file system has none, or a torn
        // file is in the way, a rename does: the name belongs to this content alone.
        let linked = (!self.replaces).then(|| fs::hard_link(&self.temporary, &self.target));
        match linked {
            Some(Ok(())) => Ok(true),
            Some(Err(error)) if error.kind() == ErrorKind::AlreadyExists => Ok(false),
            _ => fs::rename(&self.temporary, &self.target)
                .map(|()| true)
                .map_err(Error::file(&self.target)),
        }
    }
}

impl Drop for Written {
    fn drop(&mut self) {
        // After a rename there is none.
        let _ = fs::remove_file(&self.temporary);
    }
}

/// Writes a file under a temporary name, unless it is there as it is.
fn write_unless_there(folder: &Path, name: &str, bytes: &[u8]) -> Result<Option<Written>> {
    let target = folder.join(name);
    let there = fs::symlink_metadata(&target).ok();
    // What lies there is read: a file of the right size may have rotted.
    if there.as_ref().is_some_and(|there| there.len() == bytes.len() as u64)
        && fs::read(&target).is_ok_and(|found| found == bytes)
    {
        return Ok(None);
    }
    let (file, temporary) = write_temporary(folder, name, bytes)?;
    Ok(Some(Written { file, temporary, target, replaces: there.is_some() }))
}

/// True for the name of a file that is being written, or was when something stopped it.
pub fn is_temporary(name: &OsStr) -> bool {
    name.to_str().is_some_and(|name| name.starts_with('.') && name.ends_with(".tmp"))
}

/// Writes a file under a name nobody else writes to: several devices may carry one leaf into
/// one folder at once, and a name that somebody planted as a link is ignored. It is not flushed yet.
fn write_temporary(folder: &Path, name: &str, bytes: &[u8]) -> Result<(File, PathBuf)> {
    static COUNT: AtomicU64 = AtomicU64::new(0);
    loop {
        let count = COUNT.fetch_add(1, Ordering::Relaxed);
        let temporary = folder.join(format!(".{name}.{}-{count}.tmp", std::process::id()));
        match OpenOptions::new().write(true).create_new(true).open(&temporary) {
            Ok(mut file) => {
                return match file.write_all(bytes) {
                    Ok(()) => Ok((file, temporary)),
                    Err(error) => {
                        let _ = fs::remove_file(&temporary);
                        Err(Error::file(&temporary)(error))
                    }
                };
            }
            Err(error) if error.kind() == ErrorKind::AlreadyExists => {}
            Err(error) => return Err(Error::file(&temporary)(error)),
        }
    }
}

/// Replaces a file of our own in one step.
pub(crate) fn replace(path: &Path, bytes: &[u8]) -> Result<()> {
    let mut options = OpenOptions::new();
    replace_by(path, bytes, options.write(true).create(true).truncate(true))
}

/// Replaces a file that its owner alone may read, in one step: at no moment anybody else can.
pub(crate) fn replace_private(path: &Path, bytes: &[u8]) -> Result<()> {
    let mut options = OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    // One that a stop left half-written may have been anybody's to read.
    match fs::remove_file(path.with_extension("tmp")) {
        Err(error) if error.kind() != ErrorKind::NotFound => Err(Error::file(path)(error)),
        _ => replace_by(path, bytes, &options),
    }
}

fn replace_by(path: &Path, bytes: &[u8], options: &OpenOptions) -> Result<()> {
    let temporary = path.with_extension("tmp");
    let mut file = options.open(&temporary).map_err(Error::file(path))?;
    file.write_all(bytes).and_then(|()| file.sync_all()).map_err(Error::file(path))?;
    fs::rename(&temporary, path).map_err(Error::file(path))?;
    path.parent().map_or(Ok(()), flush_folder)
}

/// Makes a new name in a folder survive a power cut. Windows has no such call and needs none.
pub(crate) fn flush_folder(folder: &Path) -> Result<()> {
    if cfg!(unix) {
        let opened = File::open(folder).map_err(Error::file(folder))?;
        opened.sync_all().map_err(Error::file(folder))?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_is_published_once_and_again_when_it_has_rotted() {
        let folder = tempfile::tempdir().unwrap();
        assert!(publish(folder.path(), "a.leaf", b"first").unwrap());
        assert!(!publish(folder.path(), "a.leaf", b"first").unwrap());
        fs::write(folder.path().join("a.leaf"), b"fir5t").unwrap();
        assert!(publish(folder.path(), "a.leaf", b"first").unwrap());
        assert_eq!(fs::read(folder.path().join("a.leaf")).unwrap(), b"first");
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
    }

    #[test]
    fn many_are_published_at_once_and_those_that_are_there_stay() {
        let folder = tempfile::tempdir().unwrap();
        let names: Vec<String> = (0..3 * TOGETHER).map(|at| format!("{at}.leaf")).collect();
        let files: Vec<(&str, &[u8])> =
            names.iter().map(|name| (name.as_str(), name.as_bytes())).collect();
        assert_eq!(publish_all(folder.path(), &files[..5]).unwrap(), 5);
        fs::write(folder.path().join(&names[1]), b"torn").unwrap();
        assert_eq!(publish_all(folder.path(), &files).unwrap(), files.len() - 4);
        for name in &names {
            assert_eq!(fs::read(folder.path().join(name)).unwrap(), name.as_bytes());
        }
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), files.len());
    }

    /// What cannot have its name leaves the others as they are, and nothing half-written.
    #[test]
    fn one_that_cannot_be_published_leaves_nothing_behind() {
        let folder = tempfile::tempdir().unwrap();
        fs::create_dir(folder.path().join("b.leaf")).unwrap();
        let files: [(&str, &[u8]); 3] = [("a.leaf", b"a"), ("b.leaf", b"b"), ("c.leaf", b"c")];
        assert!(publish_all(folder.path(), &files).is_err());
        let mut left = fs::read_dir(folder.path()).unwrap().map(|file| file.unwrap().file_name());
        assert!(!left.any(|name| is_temporary(&name)));
        assert_eq!(fs::read(folder.path().join("a.leaf")).unwrap(), b"a");
    }

    #[test]
    fn a_file_torn_on_its_way_is_replaced() {
        let folder = tempfile::tempdir().unwrap();
        fs::write(folder.path().join("a.leaf"), b"fir").unwrap();
        assert!(publish(folder.path(), "a.leaf", b"first").unwrap());
        assert_eq!(fs::read(folder.path().join("a.leaf")).unwrap(), b"first");
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
    }

    /// Several devices carry the same leaves into one folder at once: nobody ever sees part of one.
    #[test]
    fn writers_of_one_file_do_not_get_in_each_others_way() {
        let folder = tempfile::tempdir().unwrap();
        let bytes = vec![b'x'; 50_000];
        std::thread::scope(|scope| {
            for _ in 0..3 {
                scope.spawn(|| {
                    for index in 0..60 {
                        let name = format!("{index}.leaf");
                        publish(folder.path(), &name, &bytes).unwrap();
                        let seen = fs::read(folder.path().join(name)).unwrap();
                        assert_eq!(seen.len(), bytes.len());
                    }
                });
            }
        });
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 60);
    }

    #[cfg(unix)]
    #[test]
    fn a_planted_link_is_not_followed() {
        let folder = tempfile::tempdir().unwrap();
        let precious = folder.path().join("precious");
        fs::write(&precious, b"mine").unwrap();
        for count in 0..2_000 {
            let name = format!(".a.leaf.{}-{count}.tmp", std::process::id());
            std::os::unix::fs::symlink(&precious, folder.path().join(name)).unwrap();
        }
        publish(folder.path(), "a.leaf", b"leaf bytes").unwrap();
        assert_eq!(fs::read(&precious).unwrap(), b"mine");
    }

    #[test]
    fn a_torn_temporary_from_a_power_cut_is_written_over() {
        let folder = tempfile::tempdir().unwrap();
        fs::write(folder.path().join(".a.leaf.tmp"), b"tor").unwrap();
        assert!(publish(folder.path(), "a.leaf", b"whole").unwrap());
        assert_eq!(fs::read(folder.path().join("a.leaf")).unwrap(), b"whole");
    }

    #[test]
    fn what_cannot_be_replaced_leaves_nothing_behind() {
        let folder = tempfile::tempdir().unwrap();
        fs::create_dir(folder.path().join("a.leaf")).unwrap();
        assert!(publish(folder.path(), "a.leaf", b"whole").is_err());
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
    }

    #[test]
    fn a_folder_that_is_not_there_is_named() {
        let error = publish(Path::new("nowhere-at-all"), "a", b"").unwrap_err().to_string();
        assert!(error.contains("nowhere-at-all"), "{error}");
    }
}
