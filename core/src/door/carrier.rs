//! What goes through the door to a carrier, and comes from there.

use super::{Holdfast, HoldfastResult};
use crate::exchange::{CarriedFile, ExchangeDid, ExchangeStep, TakenAlong};
use crate::instant::Instant;

#[cfg_attr(feature = "ffi", uniffi::export)]
impl Holdfast {
    /// Takes an exchange one step on: says what the shell did, and gets what it does next. It begins
    /// with [`ExchangeDid::Begin`] and is over with [`ExchangeStep::Done`].
    pub fn exchange(&self, did: ExchangeDid, at: Instant) -> HoldfastResult<ExchangeStep> {
        self.at(at, |state, at| state.device.exchange(did, at))
    }

    /// The folders of a server, of those that it has, that the exchange under way has to list: what may have something new.
    /// Each holds a part of a lane. `carrier` is the server's address, or another name that stays: what it was seen to hold is
    /// noted under that.
    pub fn to_look_into(
        &self,
        carrier: String,
        folders: Vec<String>,
        at: Instant,
    ) -> HoldfastResult<Vec<String>> {
        self.at(at, |state, at| state.device.look_into(&carrier, folders, at))
    }

    /// Takes a crewmate's files along, as they lie on a stick or were shared between two phones. Nobody opens them; the
    /// next exchange delivers them.
    pub fn take_along(&self, files: Vec<CarriedFile>) -> HoldfastResult<TakenAlong> {
        self.with(|state| state.device.take_along(&files))
    }
}
