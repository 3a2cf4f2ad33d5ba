//! A folder that carries files.

use std::fs;
use std::path::{Path, PathBuf};

use holdfast_core::exchange::sealed::SealedName;
use holdfast_core::exchange::{CarriedFile, ListedFile};

use crate::Device;

/// A folder that carries files. The two ends here are written apart from the desk's own, so that a
/// fault in one shows against the other.
pub struct Carrier {
    folder: PathBuf,
}

impl Carrier {
    /// A carrier in a folder, which is made when it is not there.
    ///
    /// # Panics
    /// When the folder cannot be made.
    pub fn new(folder: impl Into<PathBuf>) -> Carrier {
        let folder = folder.into();
        fs::create_dir_all(&folder).unwrap();
        Carrier { folder }
    }

    /// The folder.
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    /// What the folder lists, by name.
    ///
    /// # Panics
    /// When it cannot be listed.
    pub fn listing(&self) -> Vec<ListedFile> {
        let mut listed: Vec<ListedFile> = fs::read_dir(&self.folder)
            .unwrap()
            .map(|file| {
                let file = file.unwrap();
                let name = file.file_name().to_string_lossy().into_owned();
                ListedFile { name, bytes: file.metadata().unwrap().len() }
            })
            .collect();
        listed.sort_by(|a, b| a.name.cmp(&b.name));
        listed
    }

    /// Every file, by name.
    ///
    /// # Panics
    /// When one cannot be read.
    pub fn files(&self) -> Vec<CarriedFile> {
        let read = |file: ListedFile| {
            let content = fs::read(self.folder.join(&file.name)).unwrap();
            CarriedFile { name: file.name, content }
        };
        self.listing().into_iter().map(read).collect()
    }

    /// The leaves a device wrote, in order.
    ///
    /// # Panics
    /// When the device or a file cannot be read.
    pub fn leaves_of(&self, device: &Device) -> Vec<CarriedFile> {
        let writer = device.holdfast.who().unwrap().device;
        let by_it = |file: &CarriedFile| {
            SealedName::parse(&file.name).is_some_and(|name| name.device == writer)
        };
        self.files().into_iter().filter(by_it).collect()
    }

    /// Copies every file to another carrier, as a synchroniser or a person with a stick does.
    ///
    /// # Panics
    /// When one cannot be copied.
    pub fn copy_to(&self, other: &Carrier) {
        for file in self.files() {
            fs::write(other.folder.join(&file.name), &file.content).unwrap();
        }
    }
}
