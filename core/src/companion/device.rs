//! What a companion holds between taps: the store, and plans that were read once.

use std::collections::HashMap;
use std::path::PathBuf;
use std::sync::Arc;

use chrono::NaiveDate;
use rusqlite::Connection;

use super::reading::Reading;
use crate::error::{Error, Result};
use crate::id::PersonId;
use crate::instant::Instant;
use crate::journal::{Body, Entry, PlanText, Profile, Role, Version, body_of};
use crate::load::Prepared;
use crate::plan::read_plan;
use crate::store::{Ask, Draft, ENTRIES_A_LEAF, Identity, Rebuilt, Store, line_of, unpublished};

/// The state behind the surface.
pub(crate) struct Device {
    pub(crate) home: PathBuf,
    /// When it was opened.
    pub(crate) seen: Instant,
    pub(crate) store: Store,
    pub(crate) identity: Identity,
    pub(crate) rebuilt: Option<Rebuilt>,
    pub(crate) aside: Vec<super::AsideFile>,
    plans: HashMap<Version, Arc<Prepared>>,
    /// Why leaves could not be put on the shelf, the last time it was tried.
    pub(crate) shelf_trouble: Option<String>,
    /// The reading kept between taps.
    reading: Option<Reading>,
}

/// How often the entries that no leaf holds yet are counted.
pub(crate) const COUNT_EVERY: u64 = 20;

/// A plan that was published.
#[derive(Clone)]
pub(crate) struct Published {
    pub version: Version,
    pub block: Arc<Prepared>,
}

impl Device {
    pub(crate) fn new(
        home: PathBuf,
        identity: Identity,
        seen: Instant,
        store: Store,
        rebuilt: Option<Rebuilt>,
    ) -> Device {
        Device {
            home,
            seen,
            store,
            identity,
            rebuilt,
            aside: Vec::new(),
            plans: HashMap::new(),
            shelf_trouble: None,
            reading: None,
        }
    }

    pub(crate) fn reader(&self) -> &Connection {
        self.store.reader()
    }

    pub(crate) fn person(&self) -> PersonId {
        self.identity.profile.person
    }

    /// Who uses the device, as the journal has it now.
    pub(crate) fn profile(&self) -> Result<Profile> {
        let ask = Ask { person: Some(self.person()), ..Ask::default() };
        let logged = ask.last::<Profile>(self.reader())?;
        Ok(logged.map_or_else(|| self.identity.profile.clone(), |logged| logged.body))
    }

    /// Refuses what only a coach, or only an athlete, does.
    pub(crate) fn require(&self, role: Role, what: &str) -> Result<()> {
        Device::require_of(&self.profile()?, role, what)
    }

    /// The same, of a profile already read.
    pub(crate) fn require_of(profile: &Profile, role: Role, what: &str) -> Result<()> {
        if profile.role == role {
            return Ok(());
        }
        let (is, needed) = (profile.role.text(), role.text());
        let reason = format!(
            "{what} is for a device started as {needed}; this one is {}'s, {is}",
            profile.name
        );
        Err(Error::invalid("role", reason))
    }

    /// Takes the kept reading, if nothing has been written since by this or another process.
    pub(crate) fn take_reading(&mut self) -> Result<Option<Reading>> {
        let Some(reading) = self.reading.take() else { return Ok(None) };
        Ok((reading.version == self.store.data_version()?).then_some(reading))
    }

    /// Keeps a reading that holds all this process has written.
    pub(crate) fn keep_reading(&mut self, reading: Reading) {
        self.reading = Some(reading);
    }

    /// Forgets the kept reading: something else has been written.
    pub(crate) fn forget_reading(&mut self) {
        self.reading = None;
    }

    /// Cuts leaves after something was committed. Trouble with the shelf is told later: what was
    /// saved must never be reported as not saved.
    pub(crate) fn cut_after_saving(&mut self) {
        self.shelf_trouble = self.cut_leaves().err().map(|error| error.to_string());
    }

    /// Logs drafts durably.
    pub(crate) fn log(&mut self, at: &Instant, drafts: Vec<Draft>) -> Result<Vec<Entry>> {
        self.forget_reading();
        let entries = self.store.log(at, drafts)?;
        // Counting costs as much as a tenth of a commit, so not at every entry.
        let due = entries.iter().any(|entry| entry.version.number % COUNT_EVERY == 0);
        if due && unpublished(self.reader(), self.identity.device)? >= ENTRIES_A_LEAF {
            self.cut_after_saving();
        }
        Ok(entries)
    }

    /// Cuts what is logged into leaves, once the crew is known.
    pub(crate) fn cut_leaves(&mut self) -> Result<()> {
        self.forget_reading();
        match self.profile()?.crew {
            Some(crew) => self.store.cut_leaves(crew),
            None => Ok(()),
        }
    }

    /// Every block published by a coach, in its latest version, the earliest start first.
    pub(crate) fn published(&mut self) -> Result<Vec<Published>> {
        let people = crate::store::people(self.reader())?;
        let texts = Ask::default().read::<PlanText>(self.reader())?;
        let mut found = Vec::new();
        for text in texts {
            let by_coach = people.get(&text.person).is_some_and(|(_, by)| by.role == Role::Coach);
            if !by_coach {
                continue;
            }
            if let Some(block) = self.block(text.version, Some(&text.body))? {
                found.push(Published { version: text.version, block });
            }
        }
        found.sort_by_key(|plan| (plan.block.starts, plan.version));
        Ok(found)
    }

    /// The block of a plan entry, read once.
    pub(crate) fn block(
        &mut self,
        version: Version,
        text: Option<&PlanText>,
    ) -> Result<Option<Arc<Prepared>>> {
        if let Some(block) = self.plans.get(&version) {
            return Ok(Some(block.clone()));
        }
        let stored = match text {
            Some(text) => Some(text.clone()),
            None => match line_of(self.reader(), version)?.as_deref().and_then(body_of) {
                Some(Body::PlanText(text)) => Some(text),
                _ => None,
            },
        };
        let block = stored.and_then(|text| read_plan(text.text.as_bytes()).ok());
        let block = block.map(|block| Arc::new(Prepared::new(block)));
        if let Some(block) = &block {
            self.plans.insert(version, block.clone());
        }
        Ok(block)
    }

    /// The block for a date: the one it falls in, otherwise the last one begun, otherwise the next.
    pub(crate) fn block_for(&mut self, date: NaiveDate) -> Result<Option<Published>> {
        let plans = self.published()?;
        let inside = plans.iter().rfind(|plan| plan.block.week_of(date).is_some());
        let begun = || plans.iter().rfind(|plan| plan.block.starts <= date);
        Ok(inside.or_else(begun).or(plans.first()).cloned())
    }
}
