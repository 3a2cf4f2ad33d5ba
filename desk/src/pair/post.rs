//! Pairing over a carrier: the answer and what opens the code go as files.

use std::path::{Path, PathBuf};
use std::thread::sleep;
use std::time::{Duration, Instant};

use carry::Line;
use clap::Args as ClapArgs;
use holdfast_core::exchange::{CarriedFile, ListedFile};
use holdfast_core::{Holdfast, PairDid, PairScreen, PairStep, put_file};

use super::shown;
use crate::carrier::list;
use crate::fault::Outcome;
use crate::now::now;
use crate::{carriers, say};

/// How often it is looked whether the other side has answered.
const EVERY: Duration = Duration::from_secs(2);
/// For how long: no code is answered later.
const FOR: Duration = Duration::from_secs(10 * 60);

/// A carrier that the codes go over.
#[derive(Debug, ClapArgs)]
pub(crate) struct Over {
    #[arg(long, value_name = "DIR", conflicts_with = "stop")]
    pub(crate) carrier: Option<PathBuf>,
    #[arg(long, requires = "carrier")]
    pub(crate) watch: bool,
}

/// Where the files lie.
enum Place {
    Folder(PathBuf),
    Line(Line),
}

/// Brings this side's message and takes the other's; with `watch` until it is there.
pub(super) fn over(
    home: &Path,
    holdfast: &Holdfast,
    carrier: &Path,
    watch: bool,
) -> Outcome<PairScreen> {
    let place = Place::of(home, carrier)?;
    let until = Instant::now() + FOR;
    let mut first = true;
    loop {
        let screen = place.look(holdfast)?;
        if !watch || screen.step != PairStep::Shows || Instant::now() > until {
            return Ok(screen);
        }
        if std::mem::take(&mut first) {
            shown(&screen, Some(&say::pair::waiting(carrier.display())), None)?;
        }
        sleep(EVERY);
    }
}

impl Place {
    fn of(home: &Path, carrier: &Path) -> Outcome<Place> {
        let Some(folder) = carriers::folder_of(home, carrier)? else {
            return Ok(Place::Line(carriers::line_of(home, carrier)?));
        };
        match folder.is_dir() {
            true => Ok(Place::Folder(folder)),
            false => Err(carriers::missing(home, &folder)),
        }
    }

    /// Looks once.
    fn look(&self, holdfast: &Holdfast) -> Outcome<PairScreen> {
        let get = self.put(holdfast)?;
        let mut files = Vec::new();
        for name in get {
            files.extend(self.get(&name)?.map(|content| CarriedFile { name, content }));
        }
        let screen = holdfast.pair(PairDid::Fetched { files }, now())?;
        // What it led to goes at once.
        self.put(holdfast)?;
        Ok(screen)
    }

    /// Brings what is this side's, and says which of the other's there are.
    fn put(&self, holdfast: &Holdfast) -> Outcome<Vec<String>> {
        let files = holdfast.pair_files(self.list()?)?;
        for file in files.put {
            match self {
                Place::Folder(folder) => put_file(folder, &file)?,
                Place::Line(line) => line.bring(&file.name, file.content)?,
            };
        }
        Ok(files.get)
    }

    fn list(&self) -> Outcome<Vec<ListedFile>> {
        match self {
            Place::Folder(folder) => list(folder),
            Place::Line(line) => Ok(line.posts()?),
        }
    }

    fn get(&self, name: &str) -> Outcome<Option<Vec<u8>>> {
        match self {
            // One that went away since it was listed is not there.
            Place::Folder(folder) => Ok(std::fs::read(folder.join(name)).ok()),
            Place::Line(line) => Ok(line.leaf(name)?),
        }
    }
}
