//! A plain folder as carrier: a synchronised folder, a stick, a share.

use std::fs;
use std::io::ErrorKind;
use std::path::Path;

use holdfast_core::companion::{AsideFile, CarriedFile, ExchangeReport, ListedFile, put_file};
use holdfast_core::{Holdfast, Instant};

use indicatif::{ProgressBar, ProgressStyle};

use crate::fault::{Fault, Outcome};

/// What an exchange did.
pub(crate) struct Exchanged {
    /// Files put on the carrier.
    pub(crate) put: usize,
    /// What came from it.
    pub(crate) report: ExchangeReport,
}

/// Puts and gets until both sides have everything.
pub(crate) fn exchange(companion: &Holdfast, carrier: &Path, at: &Instant) -> Outcome<Exchanged> {
    if carrier.exists() && !carrier.is_dir() {
        let reason = "a file; a carrier is a folder".into();
        return Err(Fault::File { path: carrier.display().to_string(), reason });
    }
    fs::create_dir_all(carrier).map_err(Fault::file(carrier))?;
    let plan = companion.offer(list(carrier)?)?;
    let mut report = ExchangeReport::default();
    let bar = progress(plan.get.len());
    for names in plan.get.chunks(BATCH) {
        // A file that went away since it was listed comes back in a later listing.
        let mut files = Vec::new();
        for name in names {
            match fs::read(carrier.join(name)) {
                Ok(content) => files.push(CarriedFile { name: name.clone(), content }),
                Err(error) if error.kind() == ErrorKind::NotFound => {}
                Err(error) => report.aside.push(AsideFile {
                    name: name.clone(),
                    reason: format!("cannot be read: {error}"),
                    other_crew: false,
                }),
            }
        }
        let brought = companion.absorb(files, at.clone())?;
        report.leaves += brought.leaves;
        report.entries += brought.entries;
        report.joined |= brought.joined;
        report.aside.extend(brought.aside);
        bar.inc(names.len() as u64);
    }
    bar.finish_and_clear();
    report.aside.extend(plan.aside.clone());
    // One's own log does not belong into another crew's folder.
    let strangers = report.aside.iter().any(|file| file.other_crew);
    if strangers && report.leaves == 0 && plan.known == 0 {
        let reason = "another crew's folder: nothing was put there; name your own crew's".into();
        return Err(Fault::File { path: carrier.display().to_string(), reason });
    }
    let mut put = 0;
    // A device that has just joined its crew could cut no leaf before: offer again.
    let plan = if report.joined { companion.offer(list(carrier)?)? } else { plan };
    for file in &plan.put {
        put += usize::from(put_file(carrier, file)?);
    }
    Ok(Exchanged { put, report })
}

/// Files taken in at a time: enough to be quick, few enough to keep memory small.
const BATCH: usize = 32;

/// Drawn on standard error, and only on a terminal.
fn progress(files: usize) -> ProgressBar {
    if files <= BATCH {
        return ProgressBar::hidden();
    }
    let style = ProgressStyle::with_template("{bar:30} {pos}/{len} files");
    let style = style.unwrap_or_else(|_| ProgressStyle::default_bar());
    ProgressBar::new(files as u64).with_style(style)
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
