//! Files by their names alone: a leaf lies in the folder of its part of a lane, and a message of a pairing in the folder for
//! those.

use holdfast_core::exchange::sealed::{LanePart, SealedName};
use holdfast_core::exchange::{ListedFile, POST_FOLDER, is_post};

use crate::line::{Carried, Line};

/// The folder of a file; none for a name that is none of ours.
fn folder_of(name: &str) -> Option<String> {
    match is_post(name) {
        true => Some(POST_FOLDER.to_owned()),
        false => SealedName::parse(name).map(|name| LanePart::of(&name).to_string()),
    }
}

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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_leaf_lies_in_the_folder_of_its_part() {
        let lane = format!("{}-0123abcd", "0123456789abcdef".repeat(2));
        for (sequence, first) in [(1, 1), (32, 1), (33, 33)] {
            let name = format!("{lane}-{sequence:08}-fedcba9876543210.leaf");
            assert_eq!(folder_of(&name), Some(format!("{lane}-{first:08}")));
        }
        for odd in ["", "pairing", &lane, "../x"] {
            assert!(folder_of(odd).is_none(), "{odd}");
        }
        let post = "0123456789abcdef-2-fedcba9876543210.pair";
        assert_eq!(folder_of(post).as_deref(), Some(POST_FOLDER));
    }
}
