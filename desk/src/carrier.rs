//! A plain folder as carrier: a synchronised folder, a stick, a share.

use std::fs;
use std::io::ErrorKind;
use std::path::Path;

use holdfast_core::exchange::{
    CarriedFile, ExchangeDid, ExchangeReport, ExchangeStep, ListedFile, UnreadFile,
};
use holdfast_core::{Holdfast, Instant, put_file};
use indicatif::{ProgressBar, ProgressStyle};

use crate::fault::{Fault, Outcome};

/// Does what the core says until both sides have everything.
pub(crate) fn exchange(
    holdfast: &Holdfast,
    carrier: &Path,
    at: &Instant,
) -> Outcome<ExchangeReport> {
    if carrier.exists() && !carrier.is_dir() {
        let reason = "a file; a carrier is a folder".into();
        return Err(Fault::File { path: carrier.display().to_string(), reason });
    }
    fs::create_dir_all(carrier).map_err(Fault::file(carrier))?;
    let bar = progress();
    let mut did = ExchangeDid::Begin;
    let report = loop {
        did = match holdfast.exchange(did, at.clone())? {
            ExchangeStep::ListFiles => ExchangeDid::Listed { files: list(carrier)? },
            ExchangeStep::Get { names } => get(carrier, &names, &bar),
            ExchangeStep::Put { files } => ExchangeDid::Put { written: put(carrier, &files)? },
            ExchangeStep::Done { report } => break report,
        };
    };
    bar.finish_and_clear();
    if report.wrong_crew {
        let reason = "another crew's folder: nothing was put there; name your own crew's".into();
        return Err(Fault::File { path: carrier.display().to_string(), reason });
    }
    Ok(report)
}

fn get(carrier: &Path, names: &[String], bar: &ProgressBar) -> ExchangeDid {
    let (mut files, mut unread) = (Vec::new(), Vec::new());
    for name in names {
        match fs::read(carrier.join(name)) {
            Ok(content) => files.push(CarriedFile { name: name.clone(), content }),
            // One that went away since it was listed comes back in a later listing.
            Err(error) if error.kind() == ErrorKind::NotFound => {}
            Err(error) => unread.push(UnreadFile { name: name.clone(), reason: error.to_string() }),
        }
        bar.inc(1);
    }
    ExchangeDid::Got { files, unread }
}

fn put(carrier: &Path, files: &[CarriedFile]) -> Outcome<u32> {
    let mut written = 0;
    for file in files {
        written += u32::from(put_file(carrier, file)?);
    }
    Ok(written)
}

/// Drawn on standard error, and only on a terminal, once there is something to wait for.
fn progress() -> ProgressBar {
    let style = ProgressStyle::with_template("{spinner} {pos} files fetched");
    let style = style.unwrap_or_else(|_| ProgressStyle::default_spinner());
    ProgressBar::new_spinner().with_style(style)
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
