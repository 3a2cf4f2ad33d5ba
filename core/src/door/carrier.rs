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

    /// The folders of a server, of those named, that an exchange has to list: a member's device needs those of its own
    /// thread alone. Each holds one lane.
    pub fn to_look_into(&self, folders: Vec<String>) -> HoldfastResult<Vec<String>> {
        self.with(|state| state.device.to_look_into(folders))
    }

    /// Takes a crewmate's files along, as they lie on a stick or were shared between two phones. Nobody opens them; the
    /// next exchange delivers them.
    pub fn take_along(&self, files: Vec<CarriedFile>) -> HoldfastResult<TakenAlong> {
        self.with(|state| state.device.take_along(&files))
    }
}
