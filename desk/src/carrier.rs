//! A plain folder as carrier: a synchronised folder, a stick, a share.

use std::fs;
use std::path::Path;

use holdfast_core::companion::{CarriedFile, ExchangeReport, ListedFile, put_file};
use holdfast_core::{Companion, Instant};

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
pub(crate) fn exchange(companion: &Companion, carrier: &Path, at: &Instant) -> Outcome<Exchanged> {
    fs::create_dir_all(carrier).map_err(Fault::file(carrier))?;
    let plan = companion.offer(list(carrier)?)?;
    let mut report = ExchangeReport::default();
    let bar = progress(plan.get.len());
    for names in plan.get.chunks(BATCH) {
        // A file that went away since it was listed comes back in a later listing.
        let read = |name: &String| {
            let content = fs::read(carrier.join(name)).ok()?;
            Some(CarriedFile { name: name.clone(), content })
        };
        let brought = companion.absorb(names.iter().filter_map(read).collect(), at.clone())?;
        report.leaves += brought.leaves;
        report.entries += brought.entries;
        report.joined |= brought.joined;
        report.aside.extend(brought.aside);
        bar.inc(names.len() as u64);
    }
    bar.finish_and_clear();
    report.aside.extend(plan.aside.clone());
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
