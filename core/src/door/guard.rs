//! What keeps one device safe between threads and from panics.

use std::any::Any;
use std::mem;
use std::panic::{self, AssertUnwindSafe};
use std::sync::{MutexGuard, PoisonError};

use chrono::NaiveDate;

use super::{Held, Holdfast, HoldfastError, HoldfastResult, State};
use crate::device::{Checkup, LetGo, Rebuilt};
use crate::error::{Error, Field, Result};
use crate::instant::Instant;
use crate::say;
use crate::session::SessionScreen;
use crate::store;
use crate::words;

impl Holdfast {
    fn lock(&self) -> MutexGuard<'_, Held> {
        // A panic while the lock was held left the database as its last commit; go on from there.
        self.held.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Takes what is behind the door, and shuts it.
    pub(super) fn take(&self) -> Held {
        mem::replace(&mut *self.lock(), Held::Shut)
    }

    /// Lets go of the database: the next call opens it again and looks at everything.
    pub(super) fn let_go(&self) {
        self.lock().let_go();
    }

    /// The same at a moment, as the device's journal has it: what of a phone's clocks is nobody else's business goes no
    /// further than this.
    pub(super) fn at<T>(
        &self,
        at: Instant,
        work: impl FnOnce(&mut State, &Instant) -> Result<T>,
    ) -> HoldfastResult<T> {
        self.with(|state| {
            let at = state.device.kept.moment(at);
            words::read_on(at.date(), || work(state, &at))
        })
    }

    /// Works on the device for something that is read on a date.
    pub(super) fn read_on<T>(
        &self,
        date: NaiveDate,
        work: impl FnOnce(&mut State) -> Result<T>,
    ) -> HoldfastResult<T> {
        self.with(|state| words::read_on(date, || work(state)))
    }

    /// The same for a screen, whose cues are due by the shell's own clock.
    pub(super) fn screen(
        &self,
        at: Instant,
        work: impl FnOnce(&mut State, &Instant) -> Result<SessionScreen>,
    ) -> HoldfastResult<SessionScreen> {
        let boot_ms = at.boot_ms;
        Ok(self.at(at, work)?.by_boot_clock(boot_ms))
    }

    /// Works on the device, which a panic does not leave half changed.
    pub(super) fn with<T>(&self, work: impl FnOnce(&mut State) -> Result<T>) -> HoldfastResult<T> {
        let mut held = self.lock();
        let state = held.opened()?;
        // Whatever a panic leaves half done in memory is dropped below and read again from the disk.
        let done = panic::catch_unwind(AssertUnwindSafe(|| {
            state.draw_as_spoken();
            work(state)
        }));
        let error = match done {
            // The checks on opening passed, but a page went bad since: put right what can be.
            Ok(Err(error)) if store::is_damage(&error) => None,
            Ok(done) => return Ok(done?),
            Err(panic) => Some(HoldfastError::Unexpected { reason: said(&*panic) }),
        };
        held.let_go();
        let whole_again = || say::device::whole_again().to_owned();
        let repaired =
            held.opened()?.device.rebuilt.as_ref().map_or_else(whole_again, Rebuilt::text);
        let (path, reason) =
            (say::error::the_database().into(), say::device::repaired_do_again(repaired));
        Err(error.unwrap_or(HoldfastError::Storage { path, reason }))
    }
}

impl Held {
    fn let_go(&mut self) {
        *self = match mem::replace(self, Held::Shut) {
            Held::Open(state) => Held::LetGo(Box::new(LetGo::of(state.device))),
            other => other,
        };
    }

    /// The device, opened again where it was let go of.
    ///
    /// # Errors
    /// What keeps it from being opened, such as a full disk: once that is over, the next call opens it.
    fn opened(&mut self) -> HoldfastResult<&mut State> {
        // A check that ran beside found something: it is put right before anything else is done.
        let found = |state: &State| state.device.checkup.as_ref().is_some_and(Checkup::found);
        if matches!(self, Held::Open(state) if found(state)) {
            self.let_go();
        }
        if let Held::LetGo(device) = self {
            let device = caught(|| Ok(device.opened()?))?;
            *self = Held::Open(Box::new(State::of(device)));
        }
        match self {
            Held::Open(state) => {
                state.device.settle()?;
                Ok(state)
            }
            _ => Err(Error::invalid(Field::Home, say::error::closed()).into()),
        }
    }
}

/// Makes an error of a panic: a shell meets no other kind. What was half done is dropped with it.
pub(super) fn caught<T>(work: impl FnOnce() -> HoldfastResult<T>) -> HoldfastResult<T> {
    panic::catch_unwind(AssertUnwindSafe(work))
        .unwrap_or_else(|panic| Err(HoldfastError::Unexpected { reason: said(&*panic) }))
}

/// What a panic said.
fn said(panic: &(dyn Any + Send)) -> String {
    let text = panic.downcast_ref::<String>().cloned();
    let text = text.or_else(|| panic.downcast_ref::<&str>().map(|text| (*text).to_owned()));
    text.unwrap_or_else(|| say::error::no_reason().into())
}

#[cfg(test)]
mod tests {
    use tempfile::TempDir;

    use super::*;
    use crate::device::Start;
    use crate::journal::Role;
    use crate::mass::MassUnit;

    #[test]
    #[allow(clippy::panic, reason = "the point of it")]
    fn a_panic_is_an_error_and_leaves_nothing_half_done() {
        let home = TempDir::new().unwrap();
        let at = Instant { wall_ms: 0, offset_min: 0, boot_ms: 0, boot_id: "a".into() };
        let (role, name, unit) = (Role::Athlete, "Ines".into(), MassUnit::Kg);
        let start = Start { role, name, unit, chance: (0..80).collect() };
        let home = home.path().to_string_lossy().into_owned();
        let holdfast = Holdfast::start(home, start, at.clone(), None).unwrap();
        let before = holdfast.state_text().unwrap();
        let failed = holdfast.with(|state| -> Result<()> {
            state.device.identity.profile.name = "half done".into();
            panic!("planted in {}", "the midst");
        });
        let reason = "planted in the midst".into();
        assert_eq!(failed, Err(HoldfastError::Unexpected { reason }));
        assert_eq!(holdfast.state_text().unwrap(), before);
        assert_eq!(holdfast.today(at).unwrap().name, "Ines");
    }
}
