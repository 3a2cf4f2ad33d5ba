//! An athlete who trains with the real program.

use std::path::Path;

#[cfg(unix)]
use crate::terminal::Terminal;
use crate::{Crew, run};

/// An athlete with a plan, whose device only the program opens.
pub struct Athlete {
    crew: Crew,
}

impl Athlete {
    /// Ana, with a plan.
    ///
    /// # Panics
    /// When the core refuses.
    pub fn with_plan(plan: &str) -> Athlete {
        let crew = Crew::start(plan, &["Ana"]).unwrap();
        crew.athletes[0].holdfast.shut().unwrap();
        Athlete { crew }
    }

    /// Her device's folder.
    pub fn home(&self) -> &Path {
        &self.crew.athletes[0].home
    }

    /// A folder that is nobody's device, and goes with her.
    pub fn folder(&self) -> &Path {
        self.crew.folder()
    }

    /// The small plan's day, full-screen.
    ///
    /// # Panics
    /// When there is no terminal to be had.
    #[cfg(unix)]
    pub fn session(&self, columns: u16, rows: u16) -> Terminal {
        Terminal::run(self.home(), &["session", "--day", "Any evening"], columns, rows)
    }

    /// The same day as JSON, from what lies on disk now, whoever has it open.
    ///
    /// # Panics
    /// When the program ends badly.
    pub fn today(&self) -> serde_json::Value {
        let left = tempfile::tempdir().unwrap();
        self.crew.athletes[0].copy_to(left.path());
        let ran = run(left.path(), &["today", "--json"], "");
        assert!(ran.fine, "{ran:?}");
        serde_json::from_str(&ran.out).unwrap()
    }

    /// What is logged of the first piece's sets: load in words and reps.
    ///
    /// # Panics
    /// When the program ends badly.
    pub fn sets(&self) -> Vec<(String, u64)> {
        let today = self.today();
        let sets = today["pieces"][0]["kind"]["view"]["sets"].as_array().unwrap();
        let done = sets.iter().map(|set| &set["done"]).filter(|done| !done.is_null());
        done.map(|done| {
            let load = done["load_text"].as_str().unwrap().to_owned();
            (load, done["reps"].as_u64().unwrap())
        })
        .collect()
    }
}
