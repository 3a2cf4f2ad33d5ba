//! What keeps one device safe between threads and from panics.

use std::any::Any;
use std::panic::{self, AssertUnwindSafe};
use std::sync::{MutexGuard, PoisonError};

use super::{Holdfast, HoldfastError, HoldfastResult, State};
use crate::device::{Checkup, Rebuilt, reopened};
use crate::error::{Error, Field, Result};
use crate::say;
use crate::store;

impl Holdfast {
    pub(super) fn lock(&self) -> MutexGuard<'_, Option<State>> {
        // A panic while the lock was held left the database as its last commit; go on from there.
        self.state.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Opens the home again with a full check.
    pub(super) fn looked_through(&self) -> HoldfastResult<()> {
        let mut held = self.lock();
        if let Some(state) = held.take() {
            let device = caught(|| Ok(reopened(state.device)?))?;
            *held = Some(State::of(device));
        }
        Ok(())
    }

    /// Works on the device, which a panic does not leave half changed.
    pub(super) fn with<T>(&self, work: impl FnOnce(&mut State) -> Result<T>) -> HoldfastResult<T> {
        let mut held = self.lock();
        let Some(state) = held.as_mut() else {
            return Err(Error::invalid(Field::Home, say::error::closed()).into());
        };
        // A check that ran beside found something: it is put right before anything else is done.
        if state.device.checkup.as_ref().is_some_and(Checkup::found) {
            drop(held);
            self.looked_through()?;
            held = self.lock();
        }
        let Some(state) = held.as_mut() else {
            return Err(Error::invalid(Field::Home, say::error::closed()).into());
        };
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
        let mut repaired = say::device::whole_again().to_owned();
        if let Some(state) = held.take() {
            // A second panic leaves the door closed, which says to open it again.
            let device = caught(|| Ok(reopened(state.device)?))?;
            repaired = device.rebuilt.as_ref().map_or(repaired, Rebuilt::text);
            *held = Some(State::of(device));
        }
        let (path, reason) =
            (say::error::the_database().into(), say::device::repaired_do_again(repaired));
        Err(error.unwrap_or(HoldfastError::Storage { path, reason }))
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
    use crate::instant::Instant;
    use crate::journal::Role;
    use crate::mass::MassUnit;

    #[test]
    #[allow(clippy::panic, reason = "the point of it")]
    fn a_panic_is_an_error_and_leaves_nothing_half_done() {
        let home = TempDir::new().unwrap();
        let at = Instant { wall_ms: 0, offset_min: 0, boot_ms: 0, boot_id: "a".into() };
        let (role, name, unit) = (Role::Athlete, "Ines".into(), MassUnit::Kg);
        let start = Start { role, name, unit, chance: (0..48).collect() };
        let home = home.path().to_string_lossy().into_owned();
        let holdfast = Holdfast::start(home, start, at.clone()).unwrap();
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
