//! A plain folder as carrier: a synchronised folder, a stick, a share.

use std::fs;
use std::path::Path;

use holdfast_core::companion::{CarriedFile, ExchangeReport, ListedFile, put_file};
use holdfast_core::{Companion, Instant};

use crate::fault::{Fault, Outcome};

/// What an exchange did.
pub(crate) struct Exchanged {
    /// Files put on the carrier.
    pub(crate) put: usize,
    /// What came from it.
    pub(crate) report: ExchangeReport,
}

/// Puts and gets until both sides have everything.
pub(crate) fn exchange(companion: &Companion, carrier: &Path, at: &Instant) -> Outcome<Exchanged> {
    fs::create_dir_all(carrier).map_err(Fault::file(carrier))?;
    let plan = companion.offer(list(carrier)?)?;
    let mut files = Vec::new();
    for name in &plan.get {
        // A file that went away since it was listed comes back in a later listing.
        if let Ok(content) = fs::read(carrier.join(name)) {
            files.push(CarriedFile { name: name.clone(), content });
        }
    }
    let mut report = companion.absorb(files, at.clone())?;
    report.aside.extend(plan.aside.clone());
    let mut put = 0;
    // A device that has just joined its crew could cut no leaf before: offer again.
    let plan = if report.joined { companion.offer(list(carrier)?)? } else { plan };
    for file in &plan.put {
        put += usize::from(put_file(carrier, file)?);
    }
    Ok(Exchanged { put, report })
}

/// Lists the plain files of a folder; links, folders and devices are not followed.
fn list(carrier: &Path) -> Outcome<Vec<ListedFile>> {
    let mut files = Vec::new();
    for file in fs::read_dir(carrier).map_err(Fault::file(carrier))? {
        let file = file.map_err(Fault::file(carrier))?;
        let Ok(about) = file.path().symlink_metadata() else { continue };
        if about.is_file() {
            let name = file.file_name().to_string_lossy().into_owned();
            files.push(ListedFile { name, bytes: about.len() });
        }
    }
    files.sort_by(|a, b| a.name.cmp(&b.name));
    Ok(files)
}
