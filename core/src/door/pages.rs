//! Pages: the places of a phone beside a session.

use super::Who;
use super::{Holdfast, HoldfastResult};
use crate::crew::RecoveryDid;
use crate::device::PairDid;
use crate::exchange::web::ServerKind;
use crate::instant::Instant;
use crate::mass::MassUnit;
use crate::page::{self, PageAsk, PageScreen, RestoreAnswers, StartAnswers};

/// The page that somebody who starts on a device is at: before there is a [`Holdfast`].
#[cfg_attr(feature = "ffi", uniffi::export)]
pub fn first_run(answers: StartAnswers) -> PageScreen {
    page::first_run(answers)
}

/// The form for a server, which a phone asks for before there is a [`Holdfast`] too.
#[cfg_attr(feature = "ffi", uniffi::export)]
pub fn server_page(kind: ServerKind, address: String) -> PageScreen {
    page::server(kind, address)
}

/// The page that somebody is at whose log comes back with their recovery code: before there is a [`Holdfast`].
#[cfg_attr(feature = "ffi", uniffi::export)]
pub fn restore_page(answers: RestoreAnswers) -> PageScreen {
    page::restore(answers)
}

#[cfg_attr(feature = "ffi", uniffi::export)]
impl Holdfast {
    /// A page as a screen.
    ///
    /// # Errors
    /// [`HoldfastError::NotFound`](super::HoldfastError::NotFound) for a member nobody knows,
    /// [`HoldfastError::Invalid`](super::HoldfastError::Invalid) for a movement nobody did, and for a page that is not for whoever asks.
    pub fn page(&self, ask: PageAsk, at: Instant) -> HoldfastResult<PageScreen> {
        self.at(at, |state, at| page::page(&mut state.device, ask, at))
    }

    /// Takes a pairing a step on, as [`Holdfast::pair`] does, and draws it.
    ///
    /// # Errors
    /// As [`Holdfast::pair`].
    pub fn pair_page(&self, did: PairDid, at: Instant) -> HoldfastResult<PageScreen> {
        self.at(at, |state, at| page::pairing(&mut state.device, did, at))
    }

    /// Shows the recovery code, or takes what was typed back of it, as [`Holdfast::recovery`] does, and draws it. What makes
    /// another device of a home is asked there.
    ///
    /// # Errors
    /// As [`Holdfast::recovery`].
    pub fn recovery_page(&self, did: RecoveryDid, at: Instant) -> HoldfastResult<PageScreen> {
        self.at(at, |state, at| page::recovery(&mut state.device, did, at))
    }

    /// Logs the unit that whoever uses the device reads masses in.
    pub fn choose_unit(&self, unit: MassUnit, at: Instant) -> HoldfastResult<Who> {
        self.at(at, |state, at| {
            state.device.choose_unit(unit, at)?;
            super::who::who(&state.device)
        })
    }
}
