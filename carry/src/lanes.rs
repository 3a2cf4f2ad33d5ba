//! Files by their names alone: a leaf lies in its lane's folder, which its name begins with, and a message of a pairing in
//! the folder for those.

use holdfast_core::exchange::sealed::SealedName;
use holdfast_core::exchange::{ListedFile, POST_FOLDER, is_post};

use crate::line::{Carried, Line};

/// A lane in a name: the device in 32 digits, a hyphen, the tag in 8.
const LANE: usize = 41;

/// The folder of a file; none for a name that is none of ours.
fn folder_of(name: &str) -> Option<&str> {
    match is_post(name) {
        true => Some(POST_FOLDER),
        false => SealedName::parse(name).and_then(|_| name.get(..LANE)),
    }
}

/// True for the name of a lane's folder.
fn is_lane(folder: &str) -> bool {
    folder_of(&format!("{folder}-00000001-{}.leaf", "0".repeat(16))) == Some(folder)
}

impl Line {
    /// The folders of lanes. What lies beside them is not looked at.
    ///
    /// # Errors
    /// As [`Line::list`].
    pub fn lanes(&self) -> Result<Vec<String>, Carried> {
        Ok(self.folders()?.into_iter().filter(|folder| is_lane(folder)).collect())
    }

    /// Every leaf there is in these lanes.
    ///
    /// # Errors
    /// As [`Line::list`].
    pub fn leaves_of(&self, lanes: Vec<String>) -> Result<Vec<ListedFile>, Carried> {
        let mut found = Vec::new();
        for folder in lanes {
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
            let belongs = |file: &ListedFile| folder_of(&file.name) == Some(folder);
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
        self.leaves_of(self.lanes()?)
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
        folder_of(name).map_or(Ok(None), |folder| self.get(folder, name))
    }

    /// Writes a leaf, or a message of a pairing; false when it was there.
    ///
    /// # Errors
    /// As [`Line::put`].
    pub fn bring(&self, name: &str, content: Vec<u8>) -> Result<bool, Carried> {
        folder_of(name).map_or(Ok(false), |folder| self.put(folder, name, content))
    }

    /// Deletes a leaf of somebody who is forgotten; false when it was not there.
    ///
    /// # Errors
    /// As [`Line::delete`].
    pub fn forget(&self, name: &str) -> Result<bool, Carried> {
        folder_of(name).map_or(Ok(false), |folder| self.delete(folder, name))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_leaf_lies_in_its_lanes_folder() {
        let lane = format!("{}-0123abcd", "0123456789abcdef".repeat(2));
        let name = format!("{lane}-00000012-fedcba9876543210.leaf");
        assert_eq!(folder_of(&name), Some(lane.as_str()));
        assert!(is_lane(&lane));
        for odd in ["", "pairing", &lane[1..], &lane.to_uppercase(), "../x"] {
            assert!(!is_lane(odd) && folder_of(odd).is_none(), "{odd}");
        }
        let post = "0123456789abcdef-2-fedcba9876543210.pair";
        assert_eq!(folder_of(post), Some(POST_FOLDER));
        assert!(!is_lane(POST_FOLDER));
    }
}
