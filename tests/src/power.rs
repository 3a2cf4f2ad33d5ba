//! A model of a disk that loses power. It replays what the real program did to its files, and stops
//! anywhere: what was flushed is there, and of what was not, anything may be: all of it, none of it, some
//! of it, in pieces of 512 bytes. Names are there once their folder was flushed, and of those that were
//! not, the first few.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use rand::RngExt;
use rand_chacha::ChaCha8Rng;
use serde::Deserialize;

/// What a disk keeps together.
const SECTOR: usize = 512;

/// One thing that was done.
#[derive(Clone, Debug)]
pub enum Deed {
    /// Bytes were written to a file at a place.
    Write(PathBuf, u64, Vec<u8>),
    /// A file was made as long as that.
    Cut(PathBuf, u64),
    /// A file, or a folder's names, were flushed.
    Flush(PathBuf),
    /// A file was made.
    Create(PathBuf),
    /// A folder was made.
    Folder(PathBuf),
    /// A name was changed to another.
    Rename(PathBuf, PathBuf),
    /// A file got a second name.
    Link(PathBuf, PathBuf),
    /// A name was removed.
    Unlink(PathBuf),
    /// Something was said on standard output.
    Said(String),
}

/// Reads what the fault library wrote down.
///
/// # Panics
/// When it is not what the library writes.
pub fn read_trace(trace: &Path) -> Vec<Deed> {
    #[derive(Deserialize)]
    struct Line {
        r#do: String,
        path: PathBuf,
        to: Option<PathBuf>,
        at: Option<u64>,
        bytes: Option<usize>,
    }
    let all = fs::read(trace).unwrap();
    let mut rest = all.as_slice();
    let mut deeds = Vec::new();
    while !rest.is_empty() {
        let end = rest.iter().position(|byte| *byte == b'\n').unwrap();
        let line: Line = serde_json::from_slice(&rest[..end]).unwrap();
        let (bytes, after) = rest[end + 1..].split_at(line.bytes.unwrap_or(0));
        rest = after;
        let (path, to) = (line.path, line.to.unwrap_or_default());
        deeds.push(match line.r#do.as_str() {
            "write" => Deed::Write(path, line.at.unwrap(), bytes.to_vec()),
            "cut" => Deed::Cut(path, line.at.unwrap()),
            "flush" => Deed::Flush(path),
            "create" => Deed::Create(path),
            "folder" => Deed::Folder(path),
            "rename" => Deed::Rename(path, to),
            "link" => Deed::Link(path, to),
            "unlink" => Deed::Unlink(path),
            "said" => Deed::Said(String::from_utf8_lossy(bytes).into_owned()),
            other => panic!("{other}"),
        });
    }
    deeds
}

/// What is kept of what was not flushed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keeps {
    /// Nothing.
    Nothing,
    /// All of it.
    Everything,
    /// What chance says, in pieces.
    Some,
}

#[derive(Clone, Default)]
struct File {
    flushed: Vec<u8>,
    /// Since then: bytes at a place, or a length.
    since: Vec<Change>,
}

#[derive(Clone)]
enum Change {
    Bytes(usize, Vec<u8>),
    Length(usize),
}

#[derive(Clone)]
enum Name {
    Add(PathBuf, usize),
    Folder(PathBuf),
    Remove(PathBuf),
    Move(PathBuf, PathBuf),
}

/// The disk.
#[derive(Clone, Default)]
pub struct Disk {
    files: Vec<File>,
    /// Names as the program sees them, and as they are for sure.
    seen: BTreeMap<PathBuf, usize>,
    sure: BTreeMap<PathBuf, usize>,
    folders: Vec<PathBuf>,
    /// Changes of names that no flush of their folder made sure yet, in their order.
    names: Vec<Name>,
}

impl Disk {
    /// A disk with the files below a folder, all of them flushed.
    ///
    /// # Panics
    /// When they cannot be read.
    pub fn with(folder: &Path) -> Disk {
        let mut disk = Disk::default();
        disk.take(folder);
        disk
    }

    fn take(&mut self, folder: &Path) {
        self.folders.push(folder.to_owned());
        for file in fs::read_dir(folder).unwrap() {
            let path = file.unwrap().path();
            if path.is_dir() {
                self.take(&path);
            } else {
                let flushed = fs::read(&path).unwrap();
                self.files.push(File { flushed, since: Vec::new() });
                self.seen.insert(path.clone(), self.files.len() - 1);
                self.sure.insert(path, self.files.len() - 1);
            }
        }
    }

    /// Does one thing.
    pub fn does(&mut self, deed: &Deed) {
        match deed {
            Deed::Write(path, at, bytes) => {
                self.change(path, Change::Bytes(*at as usize, bytes.clone()));
            }
            Deed::Cut(path, size) => self.change(path, Change::Length(*size as usize)),
            Deed::Flush(path) => match self.seen.get(path) {
                Some(file) => {
                    let file = &mut self.files[*file];
                    file.flushed = with_all(file);
                    file.since.clear();
                }
                None => self.flush_names(path),
            },
            Deed::Create(path) => {
                self.files.push(File::default());
                let file = self.files.len() - 1;
                self.seen.insert(path.clone(), file);
                self.names.push(Name::Add(path.clone(), file));
            }
            Deed::Folder(path) => self.names.push(Name::Folder(path.clone())),
            Deed::Rename(from, to) => {
                if let Some(file) = self.seen.remove(from) {
                    self.seen.insert(to.clone(), file);
                    self.names.push(Name::Move(from.clone(), to.clone()));
                }
            }
            Deed::Link(from, to) => {
                if let Some(file) = self.seen.get(from).copied() {
                    self.seen.insert(to.clone(), file);
                    self.names.push(Name::Add(to.clone(), file));
                }
            }
            Deed::Unlink(path) => {
                self.seen.remove(path);
                self.names.push(Name::Remove(path.clone()));
            }
            Deed::Said(_) => {}
        }
    }

    fn change(&mut self, path: &Path, change: Change) {
        if let Some(file) = self.seen.get(path) {
            self.files[*file].since.push(change);
        }
    }

    /// A folder's names are sure now; so is all that was done to names before, as a journal keeps it.
    fn flush_names(&mut self, folder: &Path) {
        let last = self.names.iter().rposition(|name| name.folder() == Some(folder));
        let Some(last) = last else { return };
        for name in self.names.drain(..=last) {
            name.applied(&mut self.sure, &mut self.folders);
        }
    }

    /// Writes what a power cut leaves now into a folder that stands for `root`. Files that only lie in
    /// memory while a database is open are gone.
    ///
    /// # Panics
    /// When it cannot be written.
    pub fn left(&self, root: &Path, into: &Path, keeps: Keeps, chance: &mut ChaCha8Rng) {
        let (mut sure, mut folders) = (self.sure.clone(), self.folders.clone());
        let names = match keeps {
            Keeps::Nothing => 0,
            Keeps::Everything => self.names.len(),
            Keeps::Some => chance.random_range(0..=self.names.len()),
        };
        for name in &self.names[..names] {
            name.clone().applied(&mut sure, &mut folders);
        }
        let place = |path: &Path| into.join(path.strip_prefix(root).unwrap());
        for folder in folders.iter().filter(|folder| folder.starts_with(root)) {
            fs::create_dir_all(place(folder)).unwrap();
        }
        for (path, file) in sure {
            // Nor is it the same place, which the note would say.
            if path.ends_with("place") {
                continue;
            }
            let file = &self.files[file];
            let bytes = match keeps {
                Keeps::Nothing => file.flushed.clone(),
                Keeps::Everything => with_all(file),
                Keeps::Some => with_some(file, chance),
            };
            if let Some(folder) = place(&path).parent()
                && folder.exists()
            {
                fs::write(place(&path), bytes).unwrap();
            }
        }
    }
}

impl Name {
    fn folder(&self) -> Option<&Path> {
        match self {
            Name::Add(path, _) | Name::Folder(path) | Name::Remove(path) => path.parent(),
            Name::Move(_, to) => to.parent(),
        }
    }

    fn applied(self, names: &mut BTreeMap<PathBuf, usize>, folders: &mut Vec<PathBuf>) {
        match self {
            Name::Add(path, file) => {
                names.insert(path, file);
            }
            Name::Folder(path) => folders.push(path),
            Name::Remove(path) => {
                names.remove(&path);
            }
            Name::Move(from, to) => {
                if let Some(file) = names.remove(&from) {
                    names.insert(to, file);
                }
            }
        }
    }
}

fn put(bytes: &mut Vec<u8>, at: usize, new: &[u8]) {
    if bytes.len() < at + new.len() {
        bytes.resize(at + new.len(), 0);
    }
    bytes[at..at + new.len()].copy_from_slice(new);
}

fn with_all(file: &File) -> Vec<u8> {
    let mut bytes = file.flushed.clone();
    for change in &file.since {
        match change {
            Change::Bytes(at, new) => put(&mut bytes, *at, new),
            Change::Length(length) => bytes.resize(*length, 0),
        }
    }
    bytes
}

/// Each piece of each write is there, or is not, or is nothing but zeros where the file grew.
fn with_some(file: &File, chance: &mut ChaCha8Rng) -> Vec<u8> {
    let mut bytes = file.flushed.clone();
    for change in &file.since {
        match change {
            Change::Bytes(at, new) => {
                for (index, piece) in new.chunks(SECTOR).enumerate() {
                    let at = at + index * SECTOR;
                    match chance.random_range(0..4) {
                        0 => {}
                        1 if at >= file.flushed.len() => {
                            put(&mut bytes, at, &vec![0; piece.len()]);
                        }
                        _ => put(&mut bytes, at, piece),
                    }
                }
            }
            Change::Length(length) => {
                if chance.random_range(0..2) == 0 {
                    bytes.resize(*length, 0);
                }
            }
        }
    }
    bytes
}
