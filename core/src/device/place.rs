//! Whether a home folder still is where it was. A copied home, or one that came back from a backup, must
//! not write on under the numbers of the device it was copied from.

use std::fs;
use std::path::Path;
use std::time::UNIX_EPOCH;

use super::lock;
use crate::id::DeviceId;
use crate::instant::Instant;
use crate::trust::{Keys, Recovery};

/// Says where the home's lock file lies: the file's number and when it was made. A copy of the folder has
/// the words, and another file.
const FILE: &str = "place";

/// What tells a file from its copies.
#[derive(Clone, Copy, PartialEq, Eq)]
struct Place {
    number: u64,
    made_ms: u64,
}

/// True when the folder was copied since it was opened last. Where the file system does not say when a file
/// was made, or keeps that in copies, nothing is known, and that is no copy: one that is not found here
/// shows as two histories of one device.
pub(super) fn is_copied(home: &Path) -> bool {
    let (Some(here), Some(noted)) = (of(&home.join(lock::FILE)), noted(home)) else { return false };
    // A stick may give its files other numbers each time; when they were made stays.
    here.number != noted.number && here.made_ms != noted.made_ms
}

/// Notes where the folder is.
pub(super) fn note(home: &Path) {
    if let Some(Place { number, made_ms }) = of(&home.join(lock::FILE)) {
        let text = format!("{number} {made_ms}");
        let path = home.join(FILE);
        if fs::read_to_string(&path).ok().as_deref() != Some(text.as_str()) {
            // Without the note a copy shows as two histories of one device.
            let _ = fs::write(path, text);
        }
    }
}

/// The keys of the device that a copy becomes: others for each place and time, made from what only the person has.
pub(super) fn another(recovery: &Recovery, device: DeviceId, home: &Path, at: &Instant) -> Keys {
    let place = of(&home.join(lock::FILE)).map_or([0, 0], |place| [place.number, place.made_ms]);
    let numbers = place.map(u64::to_be_bytes).concat();
    let moment = [at.wall_ms, at.boot_ms].map(i64::to_be_bytes).concat();
    recovery.another_device(&[&device.0.as_bytes()[..], &numbers, &moment].concat())
}

fn of(path: &Path) -> Option<Place> {
    let about = fs::metadata(path).ok()?;
    let made = about.created().ok()?.duration_since(UNIX_EPOCH).ok()?;
    #[cfg(unix)]
    let number = std::os::unix::fs::MetadataExt::ino(&about);
    #[cfg(not(unix))]
    let number = u64::from(made.subsec_nanos());
    Some(Place { number, made_ms: u64::try_from(made.as_millis()).ok()? })
}

fn noted(home: &Path) -> Option<Place> {
    let text = fs::read_to_string(home.join(FILE)).ok()?;
    let (number, made_ms) = text.trim().split_once(' ')?;
    Some(Place { number: number.parse().ok()?, made_ms: made_ms.parse().ok()? })
}
