//! What an exchange works on.

use super::members::Trusted;
use super::sealed::{Tag, lane_tag};
use super::signer::Signer;
use super::{Bag, Shelf};
use crate::id::{CrewId, DeviceId};
use crate::store::{self, Store};
use crate::trust::{Kept, Standing};

/// The most names of one listing that are looked at: a folder with more is not a carrier's.
pub const MAX_LISTING: usize = 100_000;

/// What an exchange works on.
pub(crate) struct Own<'a> {
    pub(crate) store: &'a mut Store,
    pub(crate) shelf: &'a Shelf,
    pub(crate) bag: &'a Bag,
    pub(crate) kept: &'a Kept,
    pub(crate) trusted: &'a Trusted,
    /// Who counts, as of now.
    pub(crate) standing: &'a mut Standing,
    /// The crew: nothing is exchanged before there is one.
    pub(crate) crew: CrewId,
}

/// True for a lane that may be for this device. A member's has one thread, and works out what its lanes are called by; a
/// coach's has all.
pub(super) fn is_for_us(own: store::Own, crew: CrewId, (device, tag): (DeviceId, Tag)) -> bool {
    own.coach || lane_tag(crew, own.person, device) == tag
}

impl Own<'_> {
    /// What seals, and what it seals from.
    pub(super) fn sealing(&mut self) -> (Signer<'_>, &Shelf, &mut Store) {
        let (keys, trusted, crew) = (&self.kept.keys, self.trusted, self.crew);
        (Signer { keys, trusted, crew, standing: &*self.standing }, self.shelf, self.store)
    }
}
