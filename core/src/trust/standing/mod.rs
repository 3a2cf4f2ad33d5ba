//! Who counts: which devices write for whom, who is sealed to, and which leaves of a removed device stand.
//!
//! All of it is a function of a set: certificates, stops, what the founder said of people and devices, and how leaves
//! follow one another. Whatever arrives late changes the result as if it had come first. Nothing here asks a clock:
//! whoever was removed can date a leaf as they like, and only a chain of hashes from a head that somebody with
//! authority named tells an old leaf from a new one.

mod devices;
mod words;

#[cfg(test)]
mod tests;

use std::collections::btree_map::Entry;
use std::collections::{BTreeMap, BTreeSet};

use super::certificate::Certificate;
use super::keys::PublicKeys;
use super::stop::{Head, Stop};
use crate::id::{DeviceId, PersonId};
use crate::planted::{Planted, planted};

pub use devices::MOST_STANDING;
pub use words::{Said, Word, WordName};

/// One device's chain in one thread.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Lane {
    /// The device.
    pub device: DeviceId,
    /// The member whose thread it is in.
    pub of: PersonId,
}

/// A leaf's place in its chain.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Link {
    /// Its content hash.
    pub content: [u8; 32],
    /// The content hash of the leaf before it.
    pub previous: [u8; 32],
}

/// The leaves that an entry stands in: each by its lane and its content hash.
pub type StandsIn<'a> = dyn Fn(&WordName) -> Vec<(Lane, [u8; 32])> + 'a;

/// What is known: whoever holds the same has the same result.
pub struct Facts<'a> {
    /// The keys of the person who founded the crew.
    pub founder: PublicKeys,
    /// Every certificate that was seen.
    pub certificates: &'a [Certificate],
    /// Every stop.
    pub stops: &'a [Stop],
    /// What was said of people and devices, by anybody who says to be the founder.
    pub words: &'a [Word],
    /// The leaves of a lane.
    pub links: &'a dyn Fn(Lane) -> Vec<Link>,
    /// The leaves a word stands in.
    pub stands_in: &'a StandsIn<'a>,
}

/// Whether a leaf counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Counts {
    /// It does.
    Yes,
    /// Its writer is nobody this crew knows.
    Unknown,
    /// Its device was removed, and no head that was named reaches it.
    Removed,
    /// Its person has more devices than one may have.
    TooMany,
}

/// A device whose person is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Placed {
    /// Whose it is.
    pub person: PersonId,
    /// Its opening key.
    pub open: [u8; 32],
    /// Its place among the person's devices, from 1.
    pub index: u8,
    /// True when it is sealed to and goes on.
    pub standing: bool,
    /// True when its leaves count at all.
    pub within: bool,
}

/// Somebody of the crew.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Person {
    /// Their keys.
    pub keys: PublicKeys,
    /// True for the coach who founded the crew.
    pub founder: bool,
    /// False once they were removed.
    pub standing: bool,
}

/// Who counts.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Standing {
    /// Everybody who is known.
    pub people: BTreeMap<PersonId, Person>,
    /// Every device of theirs.
    pub devices: BTreeMap<DeviceId, Placed>,
    /// Whom another device of this coach's has forgotten. They count until they are taken out here; nothing is sealed to
    /// them.
    pub forgotten: BTreeSet<PersonId>,
    /// Leaves that count, lane by lane, where not all do. A device that is in `ended` and has no lane here counts
    /// nowhere.
    reached: BTreeMap<Lane, BTreeSet<[u8; 32]>>,
    ended: BTreeSet<DeviceId>,
    farewell: BTreeMap<PersonId, Vec<[u8; 32]>>,
}

impl Standing {
    /// Works it out.
    pub fn of(facts: &Facts<'_>) -> Standing {
        let mut standing = Standing::default();
        let founder = super::id::person_of(&facts.founder.sign);
        standing
            .people
            .insert(founder, Person { keys: facts.founder, founder: true, standing: true });
        standing.place(facts, founder, &BTreeMap::new());
        let spoken = words::spoken(facts, founder, &standing);
        for (person, word) in &spoken.people {
            let known = Person { keys: word.keys, founder: false, standing: word.standing };
            standing.people.insert(*person, known);
            let mut heads = spoken.devices.get(person).cloned().unwrap_or_default();
            if !word.standing {
                standing.end(facts, *person, &word.heads, &mut heads);
            }
            standing.place(facts, *person, &heads);
            if !word.standing {
                let gone = spoken.devices.get(person);
                standing.bid_farewell(facts, *person, &|device| {
                    gone.is_some_and(|gone| gone.contains_key(&device))
                });
            }
        }
        standing
    }

    /// The same on a device of somebody's, who is known there in any case: before the coach's word arrives too.
    pub fn of_device(facts: &Facts<'_>, own: PersonId, keys: PublicKeys) -> Standing {
        let mut standing = Standing::of(facts);
        if let Entry::Vacant(oneself) = standing.people.entry(own) {
            oneself.insert(Person { keys, founder: false, standing: true });
            standing.place(facts, own, &BTreeMap::new());
        }
        standing
    }

    /// Whether a leaf counts.
    pub fn counts(&self, lane: Lane, content: &[u8; 32]) -> Counts {
        match self.devices.get(&lane.device) {
            None => Counts::Unknown,
            Some(device) if !device.within => Counts::TooMany,
            Some(_) if !self.ended.contains(&lane.device) => Counts::Yes,
            Some(_) => match self.reached.get(&lane) {
                Some(reached) if reached.contains(content) => Counts::Yes,
                _ => Counts::Removed,
            },
        }
    }

    /// True where not every leaf of a device counts: then one more leaf may change which do.
    pub fn is_limited(&self, device: DeviceId) -> bool {
        self.ended.contains(&device)
    }

    /// False for a device that no longer counts, or whose person was removed.
    pub fn stands(&self, certificate: &Certificate) -> bool {
        let person = self.people.get(&certificate.person());
        let device = self.devices.get(&certificate.device());
        person.is_none_or(|known| known.standing) && device.is_none_or(|placed| placed.standing)
    }

    /// Somebody's devices in their order, whether they stand or not.
    pub fn of_person(&self, person: PersonId) -> Vec<DeviceId> {
        let theirs = self.devices.iter().filter(|(_, placed)| placed.person == person);
        let mut theirs: Vec<_> = theirs.map(|(id, placed)| (placed.index, *id)).collect();
        theirs.sort_unstable();
        theirs.into_iter().map(|(_, id)| id).collect()
    }

    /// The opening keys of somebody's standing devices.
    pub fn open_keys(&self, person: PersonId) -> Vec<[u8; 32]> {
        if self.forgotten.contains(&person) {
            return Vec::new();
        }
        let theirs = self.devices.values().filter(|device| device.person == person);
        let stands = |device: &&Placed| device.standing || planted(Planted::StillSealedTo);
        theirs.filter(stands).map(|device| device.open).collect()
    }

    /// The opening keys of a removed person's devices, but those that were removed on their own: what the removal
    /// itself is sealed to, so that they learn of it.
    pub fn farewell_keys(&self, person: PersonId) -> &[[u8; 32]] {
        self.farewell.get(&person).map_or(&[], Vec::as_slice)
    }

    fn bid_farewell(
        &mut self,
        facts: &Facts<'_>,
        person: PersonId,
        is_gone: &dyn Fn(DeviceId) -> bool,
    ) {
        let stopped = |device| facts.stops.iter().any(|stop| stop.head.device == device);
        let theirs = self.devices.iter().filter(|(_, placed)| placed.person == person);
        let left = theirs
            .filter(|(device, placed)| placed.within && !is_gone(**device) && !stopped(**device));
        let keys = left.map(|(_, placed)| placed.open).take(MOST_STANDING).collect();
        self.farewell.insert(person, keys);
    }

    /// A person who was removed: every device of theirs ends at the heads that were named of it.
    fn end(
        &self,
        facts: &Facts<'_>,
        person: PersonId,
        named: &[Head],
        heads: &mut BTreeMap<DeviceId, Vec<Head>>,
    ) {
        let theirs = facts.certificates.iter().filter(|known| known.person() == person);
        for device in theirs.map(Certificate::device) {
            let of_it = named.iter().filter(|head| head.device == device).copied();
            heads.entry(device).or_default().extend(of_it);
        }
    }

    /// Places a person's devices. `removed` names those that were removed, each with the heads that still count.
    fn place(
        &mut self,
        facts: &Facts<'_>,
        person: PersonId,
        removed: &BTreeMap<DeviceId, Vec<Head>>,
    ) {
        let Some((keys, standing)) = self.people.get(&person).map(|of| (of.keys, of.standing))
        else {
            return;
        };
        let stops: Vec<&Stop> = facts.stops.iter().filter(|stop| stop.by == keys.sign).collect();
        let is_ended = |device: DeviceId| {
            removed.contains_key(&device) || stops.iter().any(|stop| stop.head.device == device)
        };
        for (certificate, placed) in devices::placed(facts.certificates, &keys, &is_ended) {
            let device = certificate.device();
            // Whoever certifies another's device, which anybody can, has not got it by that. The founder is placed first.
            if self.devices.get(&device).is_some_and(|known| known.person != person) {
                continue;
            }
            self.devices.insert(device, placed);
            if !is_ended(device) {
                continue;
            }
            self.ended.insert(device);
            let named = removed.get(&device).into_iter().flatten().copied();
            // Who was removed has the paper still: what it names later must not count by that.
            let stopped = stops.iter().filter(|_| standing).map(|stop| stop.head);
            for head in named.chain(stopped.filter(|head| head.device == device)) {
                let lane = Lane { device, of: head.of };
                let reached = reach(&(facts.links)(lane), &head);
                let before = self.reached.entry(lane).or_insert_with(|| reached.clone());
                match planted(Planted::LowestHead) {
                    false => before.extend(reached),
                    true => before.retain(|content| reached.contains(content)),
                }
            }
        }
    }
}

/// The leaves that a chain reaches down from a head. A hole ends it: what lies below is reached by a head of its own.
fn reach(links: &[Link], head: &Head) -> BTreeSet<[u8; 32]> {
    let before: BTreeMap<[u8; 32], [u8; 32]> =
        links.iter().map(|link| (link.content, link.previous)).collect();
    let mut reached = BTreeSet::new();
    let mut at = head.content;
    while let Some(previous) = before.get(&at) {
        if !reached.insert(at) {
            break;
        }
        at = *previous;
    }
    reached
}
