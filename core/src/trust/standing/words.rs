//! What the founder said of people and devices.

use std::collections::{BTreeMap, BTreeSet};

use super::{Counts, Facts, Standing};
use crate::id::{DeviceId, PersonId};
use crate::trust::id::person_of;
use crate::trust::keys::PublicKeys;
use crate::trust::stop::Head;

/// An entry by its writer, its number and its line.
pub type WordName = (DeviceId, u64, i64);

/// What was said.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Said {
    /// Somebody was taken in.
    Admit {
        /// Their keys.
        keys: PublicKeys,
    },
    /// Somebody was removed. What they wrote counts as far as these heads reach.
    Remove {
        /// The heads.
        heads: Vec<Head>,
    },
    /// A device of a member was removed, for ever.
    RemoveDevice {
        /// The device.
        device: DeviceId,
        /// The heads.
        heads: Vec<Head>,
    },
}

/// An entry about a person.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Word {
    /// The entry.
    pub name: WordName,
    /// The entries it replaces; without a digest any line of that number.
    pub parents: Vec<(DeviceId, u64, Option<i64>)>,
    /// Whom it is about.
    pub person: PersonId,
    /// What it says.
    pub said: Said,
}

/// What stands of all that was said of a person.
pub(super) struct Spoken {
    pub(super) keys: PublicKeys,
    pub(super) standing: bool,
    pub(super) heads: Vec<Head>,
}

/// What stands of all that was said.
#[derive(Default)]
pub(super) struct AllSpoken {
    pub(super) people: BTreeMap<PersonId, Spoken>,
    /// Removed devices of each person.
    pub(super) devices: BTreeMap<PersonId, BTreeMap<DeviceId, Vec<Head>>>,
}

/// Reads the founder's words: those alone that stand in a leaf that counts, in the thread of the person they are
/// about.
pub(super) fn spoken(facts: &Facts<'_>, founder: PersonId, standing: &Standing) -> AllSpoken {
    let by_founder = |word: &&Word| {
        let writer = standing.devices.get(&word.name.0);
        writer.is_some_and(|writer| writer.person == founder)
            && (facts.stands_in)(&word.name).iter().any(|(lane, content)| {
                lane.of == word.person && standing.counts(*lane, content) == Counts::Yes
            })
    };
    let mut of_person: BTreeMap<PersonId, Vec<&Word>> = BTreeMap::new();
    for word in facts.words.iter().filter(by_founder) {
        of_person.entry(word.person).or_default().push(word);
    }
    let mut all = AllSpoken::default();
    for (person, words) in of_person {
        // A device is removed for ever, whatever is said later.
        for word in &words {
            if let Said::RemoveDevice { device, heads } = &word.said {
                let theirs = all.devices.entry(person).or_default();
                theirs.entry(*device).or_default().extend(heads);
            }
        }
        if let Some(stands) = stands(person, &words) {
            all.people.insert(person, stands);
        }
    }
    all
}

/// The words that no other replaces decide: a removal among them wins.
fn stands(person: PersonId, words: &[&Word]) -> Option<Spoken> {
    let said: Vec<&&Word> =
        words.iter().filter(|word| !matches!(word.said, Said::RemoveDevice { .. })).collect();
    let replaced: BTreeSet<(DeviceId, u64, Option<i64>)> =
        said.iter().flat_map(|word| word.parents.iter().copied()).collect();
    let is_replaced = |word: &Word| {
        let (device, number, digest) = word.name;
        [Some(digest), None].iter().any(|digest| replaced.contains(&(device, number, *digest)))
    };
    // An identity is made from the key: no admission gives somebody other keys to sign with.
    let keys = |word: &&&Word| match word.said {
        Said::Admit { keys } if person_of(&keys.sign) == person => Some(keys),
        _ => None,
    };
    let keys = said.iter().filter_map(keys).min()?;
    let heads = said.iter().filter(|word| !is_replaced(word));
    let removals = heads.filter_map(|word| match &word.said {
        Said::Remove { heads } => Some(heads),
        _ => None,
    });
    let removals: Vec<&Vec<Head>> = removals.collect();
    let standing = removals.is_empty();
    Some(Spoken { keys, standing, heads: removals.into_iter().flatten().copied().collect() })
}
