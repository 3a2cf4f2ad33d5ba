//! A member joins a coach.

use chrono::NaiveDate;

use super::stored::{Now, Stored};
use super::{Device, drawn, refused};
use crate::error::Result;
use crate::exchange::{release, unsent_before, withhold};
use crate::journal::Role;
use crate::say::pairing as say;
use crate::trust::{Answered, Compared, Invitation, Message, MessageFault, Opening};

impl Device {
    /// Takes a code that a coach shows: the invitation, or what opens it.
    pub(super) fn scan_code(
        &mut self,
        stored: &mut Stored,
        text: &str,
        chance: &[u8],
    ) -> Result<Option<String>> {
        // Who was removed is taken in again by the same coach, and so is who was never taken in: a wrong line was picked.
        if self.identity.founder.is_some() && self.belongs() && self.is_taken_in()? {
            return Err(refused(say::joined_already()));
        }
        match Invitation::read_text(text) {
            Ok(invitation) => self.answer(stored, invitation, chance),
            // Of another length: the opening, or nothing.
            Err(MessageFault::Form) => {
                let opening =
                    Opening::read_text(text).map_err(|fault| refused(fault.to_string()))?;
                self.open_code(stored, &opening)
            }
            Err(fault) => Err(refused(fault.to_string())),
        }
    }

    fn answer(
        &mut self,
        stored: &mut Stored,
        invitation: Invitation,
        chance: &[u8],
    ) -> Result<Option<String>> {
        let before = match &stored.now {
            Now::Answered { answered } | Now::Compared { answered, .. } => Some(answered),
            _ => None,
        };
        let (certificate, nonce) = (self.identity.certificate, drawn(chance)?);
        let name = self.profile()?.name;
        let before = before.map(Box::as_ref);
        let answered = Answered::new(before, invitation, certificate, &name, nonce);
        // The same code again shows the same answer, and takes nothing back.
        let is_new = before != Some(&answered);
        if is_new {
            stored.now = Now::Answered { answered: Box::new(answered) };
        }
        // It is shown again where it had gone over a carrier.
        if std::mem::take(&mut stored.over) || is_new {
            stored.write(&self.home)?;
        }
        Ok(None)
    }

    pub(super) fn open_code(
        &mut self,
        stored: &mut Stored,
        opening: &Opening,
    ) -> Result<Option<String>> {
        let (Now::Answered { answered } | Now::Compared { answered, .. }) = &stored.now else {
            return Err(refused(say::scan_the_first()));
        };
        answered.open(opening).map_err(|fault| refused(fault.to_string()))?;
        stored.now = Now::Compared { answered: answered.clone(), opening: opening.text() };
        stored.write(&self.home)?;
        Ok(None)
    }

    /// A member says whether the words match; what was logged before `from`, where that is said, stays unshared.
    pub(super) fn compare(
        &mut self,
        stored: &mut Stored,
        matches: bool,
        from: Option<NaiveDate>,
    ) -> Result<Option<String>> {
        self.require(Role::Athlete)?;
        if matches && matches!(stored.now, Now::Joined {}) {
            return Ok(None);
        }
        let Now::Compared { answered, opening } = &stored.now else {
            return Err(refused(say::nothing_to_compare()));
        };
        if !matches {
            stored.failed += 1;
            stored.now = Now::Nothing {};
            stored.write(&self.home)?;
            return Ok(Some(say::words_differ().to_owned()));
        }
        let Compared { coach, .. } = compared(answered, opening)?;
        if self.identity.founder.is_some_and(|founder| founder.person() != coach.person()) {
            return Err(refused(say::another_crew()));
        }
        // A kill after this has joined, and one before it has not.
        let (device, person) = (self.identity.device, self.person());
        // A kill after this withholds what can be shared later, and never shares what was not to be.
        self.store.write(|tx| match from {
            Some(from) => withhold(tx, device, from),
            None => release(tx, person, device, NaiveDate::MAX),
        })?;
        self.identity.founder = Some(coach);
        self.identity.shares_from = from;
        self.identity.write(&self.home)?;
        self.settle_members()?;
        stored.failed = 0;
        stored.now = Now::Joined {};
        stored.write(&self.home)?;
        Ok(None)
    }
}

impl Device {
    /// Shares what was logged before the day of joining.
    pub(super) fn share_earlier(&mut self) -> Result<Option<String>> {
        let Some(from) = self.identity.shares_from else {
            return Err(refused(say::nothing_withheld()));
        };
        if self.earlier(from)? == 0 {
            return Err(refused(say::nothing_withheld()));
        }
        // A kill in between leaves it withheld, and this can be said again.
        let (device, person) = (self.identity.device, self.person());
        self.store.write(|tx| release(tx, person, device, from))?;
        self.identity.shares_from = None;
        self.identity.write(&self.home)?;
        Ok(Some(say::earlier_shared().to_owned()))
    }

    /// How many entries were logged before a date and not sent.
    pub(super) fn earlier(&self, date: NaiveDate) -> Result<usize> {
        Ok(unsent_before(self.reader(), self.identity.device, date)?.len())
    }
}

/// What the words stand for, from what is stored.
pub(super) fn compared(answered: &Answered, opening: &str) -> Result<Compared> {
    let opening = Opening::read_text(opening).map_err(|fault| refused(fault.to_string()))?;
    answered.open(&opening).map_err(|fault| refused(fault.to_string()))
}
