//! Files that are there whole or not at all, whenever the power goes.

use std::fs::{self, File};
use std::io::{ErrorKind, Write};
use std::path::Path;

use crate::error::{Error, Result};

/// Publishes a file under a name only its writer uses: temporary name, flush, rename without
/// replacing, flush the folder. Says whether it was not there yet.
///
/// Publishing the same bytes again is harmless; a file of that name is never replaced.
pub(crate) fn publish(folder: &Path, name: &str, bytes: &[u8]) -> Result<bool> {
    let target = folder.join(name);
    if target.try_exists().map_err(Error::file(&target))? {
        return Ok(false);
    }
    let temporary = folder.join(format!(".{name}.tmp"));
    write_flushed(&temporary, bytes)?;
    // A hard link is a rename that refuses to replace. Where the file system has none, look first:
    // the name is its writer's alone, so nobody else can come between.
    let new = match fs::hard_link(&temporary, &target) {
        Ok(()) => true,
        Err(error) if error.kind() == ErrorKind::AlreadyExists => false,
        Err(_) => {
            fs::rename(&temporary, &target).map_err(Error::file(&target))?;
            flush_folder(folder)?;
            return Ok(true);
        }
    };
    fs::remove_file(&temporary).map_err(Error::file(&temporary))?;
    flush_folder(folder)?;
    Ok(new)
}

/// Replaces a file of our own in one step.
pub(crate) fn replace(path: &Path, bytes: &[u8]) -> Result<()> {
    let temporary = path.with_extension("tmp");
    write_flushed(&temporary, bytes)?;
    fs::rename(&temporary, path).map_err(Error::file(path))?;
    path.parent().map_or(Ok(()), flush_folder)
}

fn write_flushed(path: &Path, bytes: &[u8]) -> Result<()> {
    let mut file = File::create(path).map_err(Error::file(path))?;
    file.write_all(bytes).and_then(|()| file.sync_all()).map_err(Error::file(path))
}

/// Makes a new name in a folder survive a power cut. Windows has no such call and needs none.
fn flush_folder(folder: &Path) -> Result<()> {
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
    fn a_published_file_is_never_replaced_and_leaves_no_trace_of_the_way() {
        let folder = tempfile::tempdir().unwrap();
        assert!(publish(folder.path(), "a.leaf", b"first").unwrap());
        assert!(!publish(folder.path(), "a.leaf", b"second").unwrap());
        assert_eq!(fs::read(folder.path().join("a.leaf")).unwrap(), b"first");
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
    }

    #[test]
    fn a_torn_temporary_from_a_power_cut_is_written_over() {
        let folder = tempfile::tempdir().unwrap();
        fs::write(folder.path().join(".a.leaf.tmp"), b"tor").unwrap();
        assert!(publish(folder.path(), "a.leaf", b"whole").unwrap());
        assert_eq!(fs::read(folder.path().join("a.leaf")).unwrap(), b"whole");
    }

    #[test]
    fn a_folder_that_is_not_there_is_named() {
        let error = publish(Path::new("nowhere-at-all"), "a", b"").unwrap_err().to_string();
        assert!(error.contains("nowhere-at-all"), "{error}");
    }
}
