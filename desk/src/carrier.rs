//! A plain folder as carrier: a synchronised folder, a stick, a share.

use std::fs;
use std::io::ErrorKind;
use std::path::Path;
use std::time::Duration;

use carry::{Carried, Line};
use holdfast_core::exchange::{
    AsideFile, CarriedFile, ExchangeDid, ExchangeReport, ExchangeStep, FailedFile, ListedFile,
    is_temporary,
};
use holdfast_core::{Holdfast, HoldfastResult, Instant, Restore, put_file};
use owo_colors::OwoColorize;

use crate::fault::{Fault, Outcome};
use crate::progress::Progress;
use crate::say;

/// What says what to do with a carrier next: a device that exchanges, or a search by a recovery code.
pub(crate) trait Steps {
    /// Takes in what was done, and says what is to be done.
    fn step(&self, did: ExchangeDid, at: &Instant) -> HoldfastResult<ExchangeStep>;

    /// The folders of a server, of those that it has, that have to be listed.
    fn to_look_into(
        &self,
        carrier: String,
        folders: Vec<String>,
        at: &Instant,
    ) -> HoldfastResult<Vec<String>>;
}

impl Steps for Holdfast {
    fn step(&self, did: ExchangeDid, at: &Instant) -> HoldfastResult<ExchangeStep> {
        self.exchange(did, at.clone())
    }

    fn to_look_into(
        &self,
        carrier: String,
        folders: Vec<String>,
        at: &Instant,
    ) -> HoldfastResult<Vec<String>> {
        self.to_look_into(carrier, folders, at.clone())
    }
}

impl Steps for Restore {
    fn step(&self, did: ExchangeDid, _: &Instant) -> HoldfastResult<ExchangeStep> {
        self.step(did)
    }

    // Whose thread it is comes out of the search.
    fn to_look_into(
        &self,
        _: String,
        folders: Vec<String>,
        _: &Instant,
    ) -> HoldfastResult<Vec<String>> {
        Ok(folders)
    }
}

/// Does what the core says until both sides have everything.
pub(crate) fn exchange(steps: &dyn Steps, carrier: &Path, at: &Instant) -> Outcome<ExchangeReport> {
    if carrier.exists() && !carrier.is_dir() {
        return Err(Fault::at(carrier, say::fault::carrier_is_a_file()));
    }
    fs::create_dir_all(carrier).map_err(Fault::file(carrier))?;
    sweep(carrier);
    let progress = Progress::begin();
    let mut did = ExchangeDid::Begin;
    loop {
        did = match steps.step(did, at)? {
            ExchangeStep::ListFiles => ExchangeDid::Listed { files: list(carrier)? },
            ExchangeStep::Get { names } => get(carrier, &names, &progress),
            ExchangeStep::Put { files } => put(carrier, &files, &progress),
            ExchangeStep::Done { report } => return Ok(report),
        };
    }
}

/// The same with a carrier that is kept by a name.
pub(crate) fn exchange_over(
    steps: &dyn Steps,
    line: &Line,
    at: &Instant,
) -> Outcome<ExchangeReport> {
    let progress = Progress::begin();
    let mut did = ExchangeDid::Begin;
    loop {
        did = match steps.step(did, at)? {
            ExchangeStep::ListFiles => {
                let parts = steps.to_look_into(line.place(), line.parts()?, at)?;
                ExchangeDid::Listed { files: line.leaves_of(parts)? }
            }
            ExchangeStep::Get { names } => fetch(line, &names, &progress)?,
            ExchangeStep::Put { files } => bring(line, files, &progress)?,
            ExchangeStep::Done { report } => return Ok(report),
        };
    }
}

/// What ends an exchange ends it here; what is wrong with one file alone leaves the others.
pub(crate) fn alone<T>(carried: Result<T, Carried>) -> Outcome<Result<T, String>> {
    match carried {
        Ok(done) => Ok(Ok(done)),
        Err(Carried::Web(fault)) if !fault.ends_exchange() => Ok(Err(fault.to_string())),
        Err(Carried::File { path, source }) => Ok(Err(format!("{path}: {source}"))),
        Err(fault) => Err(fault.into()),
    }
}

fn fetch(line: &Line, names: &[String], progress: &Progress) -> Outcome<ExchangeDid> {
    let (mut files, mut unread) = (Vec::new(), Vec::new());
    for name in names {
        let name = name.clone();
        match alone(line.leaf(&name))? {
            Ok(content) => files.extend(content.map(|content| CarriedFile { name, content })),
            Err(reason) => unread.push(FailedFile { name, reason }),
        }
        progress.fetched();
    }
    Ok(ExchangeDid::Got { files, unread })
}

fn bring(line: &Line, files: Vec<CarriedFile>, progress: &Progress) -> Outcome<ExchangeDid> {
    let (mut written, mut unwritten) = (0, Vec::new());
    for CarriedFile { name, content } in files {
        match alone(line.bring(&name, content))? {
            Ok(new) => written += u32::from(new),
            Err(reason) => unwritten.push(FailedFile { name, reason }),
        }
        progress.delivered();
    }
    Ok(ExchangeDid::Put { written, unwritten })
}

/// Files left alone that are named one by one.
const SHOWN_ASIDE: usize = 8;

/// What an exchange did, in words.
pub(crate) fn exchanged_text(report: &ExchangeReport) -> String {
    let said =
        [say::command::brought(report.put), say::command::fetched(report.leaves, report.entries)];
    let mut text = format!("{}\n", said.join(" "));
    for told in &report.told {
        text += &format!("{}\n", told.bold());
    }
    text + &aside_text(&report.aside)
}

/// Files left alone, and why.
fn aside_text(aside: &[AsideFile]) -> String {
    let mut text = String::new();
    let mut alone = |what: String| {
        text += &format!("{} {what}\n", say::command::left_alone().yellow().bold());
    };
    for file in aside.iter().take(SHOWN_ASIDE) {
        alone(say::command::left_alone_file(&file.name, &file.reason));
    }
    if aside.len() > SHOWN_ASIDE {
        alone(say::command::left_alone_more(aside.len() - SHOWN_ASIDE));
    }
    text
}

/// The largest file of a crewmate's that is looked at.
const MOST_CARRIED: u64 = holdfast_core::exchange::sealed::MAX_SEALED_BYTES as u64;

/// Takes a crewmate's files along from a folder: a stick, or what two phones shared.
pub(crate) fn taken_along(holdfast: &Holdfast, from: &Path) -> Outcome<String> {
    let mut files = Vec::new();
    for ListedFile { name, bytes } in list(from)? {
        // What is no leaf's is looked at no further than its size.
        if !name.starts_with('.') && bytes <= MOST_CARRIED {
            let path = from.join(&name);
            files.push(CarriedFile { name, content: fs::read(&path).map_err(Fault::file(&path))? });
        }
    }
    let taken = holdfast.take_along(files)?;
    Ok(format!("{}\n{}", taken.told, aside_text(&taken.aside)))
}

fn get(carrier: &Path, names: &[String], progress: &Progress) -> ExchangeDid {
    let (mut files, mut unread) = (Vec::new(), Vec::new());
    for name in names {
        match fs::read(carrier.join(name)) {
            Ok(content) => files.push(CarriedFile { name: name.clone(), content }),
            // One that went away since it was listed comes back in a later listing.
            Err(error) if error.kind() == ErrorKind::NotFound => {}
            Err(error) => unread.push(FailedFile { name: name.clone(), reason: error.to_string() }),
        }
        progress.fetched();
    }
    ExchangeDid::Got { files, unread }
}

fn put(carrier: &Path, files: &[CarriedFile], progress: &Progress) -> ExchangeDid {
    let (mut written, mut unwritten) = (0, Vec::new());
    for file in files {
        match put_file(carrier, file) {
            Ok(new) => written += u32::from(new),
            Err(error) => {
                let reason = error.to_string();
                unwritten.push(FailedFile { name: file.name.clone(), reason });
            }
        }
        progress.delivered();
    }
    ExchangeDid::Put { written, unwritten }
}

/// What a stop left half-written goes after a day: until then somebody else may be writing it.
fn sweep(carrier: &Path) {
    const DAY: Duration = Duration::from_secs(24 * 60 * 60);
    for file in fs::read_dir(carrier).into_iter().flatten().flatten() {
        let age = file.metadata().and_then(|about| about.modified());
        let old = age.is_ok_and(|at| at.elapsed().is_ok_and(|age| age > DAY));
        if old && is_temporary(&file.file_name()) {
            let _ = fs::remove_file(file.path());
        }
    }
}

/// Lists the plain files of a folder; links, folders and devices are not followed.
pub(crate) fn list(carrier: &Path) -> Outcome<Vec<ListedFile>> {
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

#[cfg(test)]
mod tests {
    use catalogue::{Language, speaking};

    use crate::say;

    #[test]
    fn files_and_entries_have_their_own_plurals() {
        let said = |language, files: u32, entries: u64| {
            speaking(language, || say::command::fetched(files, entries))
        };
        assert_eq!(said(Language::En, 0, 0), "Nothing new to fetch.");
        assert_eq!(said(Language::En, 1, 3), "Fetched 1 file with 3 new entries.");
        assert_eq!(said(Language::En, 2, 1), "Fetched 2 files with 1 new entry.");
        assert_eq!(said(Language::De, 1, 1), "1 Datei mit 1 neuem Eintrag geholt.");
        assert_eq!(said(Language::De, 2, 3), "2 Dateien mit 3 neuen Einträgen geholt.");
        let put = |language| speaking(language, || [0_u32, 1, 2].map(say::command::brought));
        assert_eq!(
            put(Language::En),
            ["Nothing new to deliver.", "Delivered 1 file.", "Delivered 2 files."]
        );
        assert_eq!(put(Language::De)[1..], ["1 Datei abgelegt.", "2 Dateien abgelegt."]);
    }
}
