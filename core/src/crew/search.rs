//! A search, with a recovery code alone, for what a carrier has of a person.

use crate::device::{Device, Keystore, restored};
use crate::error::{Error, Field, Result};
use crate::exchange::{ExchangeDid, ExchangeStep, Finding};
use crate::instant::Instant;
use crate::say::crew as say;
use crate::trust::Recovery;

/// A search that is under way, or done.
pub(crate) struct Search {
    recovery: Recovery,
    finding: Finding,
}

impl Search {
    /// Begins with a code as somebody types it.
    pub(crate) fn begin(code: &str) -> Result<Search> {
        let recovery = Recovery::read(code);
        let recovery =
            recovery.map_err(|fault| Error::invalid(Field::Recovery, fault.to_string()))?;
        let finding = Finding::new(&recovery);
        Ok(Search { recovery, finding })
    }

    /// Takes it one step on.
    pub(crate) fn step(&mut self, did: ExchangeDid) -> ExchangeStep {
        self.finding.step(did)
    }

    /// What was found, in words.
    pub(crate) fn text(&self) -> Result<String> {
        let found = self.finding.found()?;
        let name = found.profile.map(|profile| profile.name);
        let name = name.unwrap_or_else(|| say::unnamed().to_owned());
        Ok(say::restored(found.devices, name))
    }

    /// The key of the code as the program `age` reads one.
    pub(crate) fn age_key(&self) -> String {
        self.recovery.age_key().to_string()
    }

    /// Starts on a device with what was found.
    pub(crate) fn start(
        &self,
        home: String,
        chance: &[u8],
        keystore: Keystore,
        at: Instant,
    ) -> Result<Device> {
        restored(home, self.recovery.clone(), self.finding.found()?, chance, keystore, at)
    }
}
