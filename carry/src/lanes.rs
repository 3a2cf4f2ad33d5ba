//! Files by their names alone: a leaf lies in the folder of its part of a lane, and a message of a pairing in the folder for
//! those.

use holdfast_core::exchange::sealed::LanePart;
use holdfast_core::exchange::{ListedFile, POST_FOLDER, folder_of};

use crate::line::{Carried, Line};

impl Line {
    /// The folders of parts of lanes. What lies beside them is not looked at.
    ///
    /// # Errors
    /// As [`Line::list`].
    pub fn parts(&self) -> Result<Vec<String>, Carried> {
        let is_part = |folder: &String| LanePart::parse(folder).is_some();
        Ok(self.folders()?.into_iter().filter(is_part).collect())
    }

    /// Every leaf there is in these folders.
    ///
    /// # Errors
    /// As [`Line::list`].
    pub fn leaves_of(&self, parts: Vec<String>) -> Result<Vec<ListedFile>, Carried> {
        let mut found = Vec::new();
        for folder in parts {
            found.extend(self.files_of(&folder)?);
        }
        Ok(found)
    }

    /// Every message of a pairing.
    ///
    /// # Errors
    /// As [`Line::list`].
    pub fn posts(&self) -> Result<Vec<ListedFile>, Carried> {
        self.files_of(POST_FOLDER)
    }

    /// What lies in a folder and belongs there.
    fn files_of(&self, folder: &str) -> Result<Vec<ListedFile>, Carried> {
        let (mut found, mut after): (Vec<ListedFile>, Option<String>) = (Vec::new(), None);
        loop {
            let listing = self.list(Some(folder), after.as_deref())?;
            let last = listing.files.last().map(|file| file.name.clone());
            let belongs = |file: &ListedFile| folder_of(&file.name).as_deref() == Some(folder);
            found.extend(listing.files.into_iter().filter(belongs));
            if listing.whole || last.is_none() {
                return Ok(found);
            }
            after = last;
        }
    }

    /// Every leaf there is, whatever its lane.
    ///
    /// # Errors
    /// As [`Line::list`].
    pub fn leaves(&self) -> Result<Vec<ListedFile>, Carried> {
        self.leaves_of(self.parts()?)
    }

    fn folders(&self) -> Result<Vec<String>, Carried> {
        let (mut found, mut after): (Vec<String>, Option<String>) = (Vec::new(), None);
        loop {
            let listing = self.list(None, after.as_deref())?;
            let last = listing.folders.last().cloned();
            found.extend(listing.folders);
            if listing.whole || last.is_none() {
                return Ok(found);
            }
            after = last;
        }
    }

    /// Reads a leaf, or a message of a pairing; none when it is not there.
    ///
    /// # Errors
    /// As [`Line::get`].
    pub fn leaf(&self, name: &str) -> Result<Option<Vec<u8>>, Carried> {
        folder_of(name).map_or(Ok(None), |folder| self.get(&folder, name))
    }

    /// Writes a leaf, or a message of a pairing; false when it was there.
    ///
    /// # Errors
    /// As [`Line::put`].
    pub fn bring(&self, name: &str, content: Vec<u8>) -> Result<bool, Carried> {
        folder_of(name).map_or(Ok(false), |folder| self.put(&folder, name, content))
    }

    /// Deletes a leaf of somebody who is forgotten; false when it was not there.
    ///
    /// # Errors
    /// As [`Line::delete`].
    pub fn forget(&self, name: &str) -> Result<bool, Carried> {
        folder_of(name).map_or(Ok(false), |folder| self.delete(&folder, name))
    }
}
