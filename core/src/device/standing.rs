//! Where this device stands: whether it and its person count, what it keeps of the recovery secret, whom it has forgotten.

use std::sync::Arc;

use super::{Device, key_files};
use crate::error::{Error, Field, Result};
use crate::exchange::{forgotten, holds_any, purge, settle};
use crate::id::PersonId;
use crate::instant::Instant;
use crate::journal::{Admit, Forgot, Profile};
use crate::planted::{Planted, planted};
use crate::say;
use crate::store::{Draft, Query};
use crate::trust::{Kept, MOST_DEVICES};

impl Device {
    /// Works out again who counts.
    pub(crate) fn settle_members(&mut self) -> Result<()> {
        let trusted = self.trusted();
        self.standing = self.store.write(|tx| settle(tx, &trusted))?;
        Ok(())
    }

    /// Logs what was said of people, and works out in the same transaction who counts now.
    pub(crate) fn append_and_settle(&mut self, at: &Instant, drafts: Vec<Draft>) -> Result<()> {
        let trusted = self.trusted();
        let (written, standing) = self.store.append_and(at, drafts, |tx| settle(tx, &trusted))?;
        self.tail.add(&written.entries);
        self.standing = standing;
        Ok(())
    }

    /// False once this device, or its person, no longer counts.
    pub(crate) fn belongs(&self) -> bool {
        self.standing.stands(&self.identity.certificate)
    }

    /// True once this device was stopped or removed by itself, and not with its person.
    pub(crate) fn is_ended(&self) -> bool {
        let person = self.standing.people.get(&self.person());
        let placed = self.standing.devices.get(&self.identity.device);
        person.is_some_and(|known| known.standing)
            && placed.is_some_and(|placed| placed.within && !placed.standing)
    }

    /// True once the coach's word that this person is taken in has arrived: before that a coach may have picked another
    /// line, and they meet again.
    pub(crate) fn is_taken_in(&self) -> Result<bool> {
        let admitted = Query::default().read::<Admit>(self.reader())?;
        Ok(admitted.iter().any(|logged| logged.body.person == self.person()))
    }

    /// Drops all that this device has of somebody. What was said of that is logged first, so that a kill at any moment
    /// leaves them forgotten or not, and nothing of theirs is taken in again.
    pub(crate) fn forget(&mut self, person: PersonId, at: &Instant) -> Result<()> {
        self.cut_leaves()?;
        let trusted = self.trusted();
        let drafts = vec![Draft::new(Forgot { person })];
        let (_, standing) = self.store.append_and(at, drafts, |tx| {
            purge(tx, person)?;
            settle(tx, &trusted)
        })?;
        self.standing = standing;
        self.store.refold()?;
        self.forget_files()?;
        self.tail.forget();
        self.tidy()
    }

    /// Writes the whole database file once more, so that nothing deleted stays in it. A check beside the session ends first: the file
    /// would change under it.
    fn tidy(&mut self) -> Result<()> {
        if self.checkup.take().is_some() {
            self.store.moves_again()?;
        }
        self.store.tidy()
    }

    /// Drops again whatever came back of somebody who was forgotten: a kill came between, or the database was built again.
    pub(crate) fn forget_again(&mut self) -> Result<()> {
        for person in forgotten(self.reader(), self.identity.device)? {
            if holds_any(self.reader(), person)? {
                let trusted = self.trusted();
                self.standing = self.store.write(|tx| {
                    purge(tx, person)?;
                    settle(tx, &trusted)
                })?;
                self.store.refold()?;
                self.tidy()?;
            }
        }
        self.forget_files()
    }

    /// Takes the files of everybody who was forgotten off the shelf.
    fn forget_files(&self) -> Result<()> {
        let forgotten = forgotten(self.reader(), self.identity.device)?;
        match self.crew() {
            Some(crew) if !forgotten.is_empty() => self.shelf.forget(&forgotten, crew),
            _ => Ok(()),
        }
    }

    /// Forgets the recovery secret: it is on paper.
    pub(crate) fn forget_recovery(&mut self) -> Result<()> {
        if self.belongs() {
            self.shelf.keep_own(&self.kept)?;
        }
        let recovery = self.kept.recovery.clone().filter(|_| planted(Planted::CodeKept));
        let kept = Kept { keys: self.kept.keys.clone(), recovery };
        key_files::write(&self.home, &kept, &self.keystore)?;
        self.kept = Arc::new(kept);
        Ok(())
    }

    /// The place of one more device of this person, where there is one.
    pub(crate) fn next_index(&self) -> Result<u8> {
        let person = self.person();
        let own = self.standing.devices.values().filter(|placed| placed.person == person);
        let highest = own.map(|placed| placed.index).max().unwrap_or_default();
        let highest = highest.max(self.identity.certificate.index());
        next_index(highest)
    }

    /// Forgets the recovery secret of a device that was started with it, once everything has come: it is on paper.
    pub(super) fn is_restored(&mut self) -> Result<()> {
        let query = Query { person: Some(self.person()), ..Query::default() };
        // Somebody who was removed sends nothing, so nobody can seal to this device that they are taken in again.
        if !(self.traffic.all_read && self.belongs())
            || query.last::<Profile>(self.reader())?.is_none()
        {
            return Ok(());
        }
        self.forget_recovery()?;
        self.identity.restoring = false;
        self.identity.write(&self.home)
    }
}

/// The place after the highest that a person's devices have.
pub(crate) fn next_index(highest: u8) -> Result<u8> {
    let next = highest.checked_add(1).filter(|next| *next <= MOST_DEVICES);
    next.ok_or_else(|| Error::invalid(Field::Recovery, say::crew::no_more_devices(MOST_DEVICES)))
}
