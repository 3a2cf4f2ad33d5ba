//! The program in homes below one folder.

use std::fs;
use std::path::Path;

use crate::pairing::pair_by_hand;
use crate::{Ran, run};

/// A folder with homes, plans and carriers in it, and the program run there as a person types it.
pub struct Desk {
    folder: tempfile::TempDir,
}

impl Desk {
    /// An empty folder.
    ///
    /// # Panics
    /// When there is no room for one.
    #[expect(clippy::new_without_default, reason = "makes a folder")]
    pub fn new() -> Desk {
        Desk { folder: tempfile::tempdir().unwrap() }
    }

    /// The path of something in the folder.
    pub fn path(&self, name: &str) -> String {
        self.folder.path().join(name).to_string_lossy().into_owned()
    }

    /// Writes a file.
    ///
    /// # Panics
    /// When it cannot be written.
    pub fn write(&self, name: &str, content: impl AsRef<[u8]>) {
        fs::write(self.path(name), content).unwrap();
    }

    /// Runs the program on a home.
    pub fn run(&self, home: &str, args: &[&str], input: &str) -> Ran {
        run(Path::new(&self.path(home)), args, input)
    }

    /// Pairs a member's home with a coach's.
    ///
    /// # Panics
    /// When a command fails.
    pub fn pair(&self, coach: &str, member: &str) {
        pair_by_hand(Path::new(&self.path(coach)), Path::new(&self.path(member)));
    }

    /// What the program prints when all is well.
    ///
    /// # Panics
    /// When it is not, and when anything is said beside that.
    pub fn fine(&self, home: &str, args: &[&str], input: &str) -> String {
        let ran = self.run(home, args, input);
        assert!(ran.fine && ran.err.is_empty(), "{args:?}: {ran:?}");
        ran.out
    }

    /// What the program says is wrong.
    ///
    /// # Panics
    /// When all is well, when something is printed all the same, and when the program panics.
    pub fn wrong(&self, home: &str, args: &[&str]) -> String {
        let ran = self.run(home, args, "");
        assert!(!ran.fine && ran.out.is_empty(), "{args:?} should fail: {ran:?}");
        assert!(!ran.err.contains("panicked"), "{args:?}: {ran:?}");
        ran.err
    }
}
