//! What an exchange works on.

use super::members::Trusted;
use super::sealed::{SealedName, lane_tag};
use super::signer::Signer;
use super::{Bag, Shelf};
use crate::id::CrewId;
use crate::store::Store;
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

impl Own<'_> {
    /// True for a file that may be for this device. A member's has one thread, and works out what its lanes are called
    /// by; a coach's has all.
    pub(super) fn is_for_us(&self, name: &SealedName) -> bool {
        let own = self.store.own();
        own.coach || lane_tag(self.crew, own.person, name.device) == name.tag
    }

    /// What seals, and what it seals from.
    pub(super) fn sealing(&mut self) -> (Signer<'_>, &Shelf, &mut Store) {
        let (keys, trusted, crew) = (&self.kept.keys, self.trusted, self.crew);
        (Signer { keys, trusted, crew, standing: &*self.standing }, self.shelf, self.store)
    }
}
