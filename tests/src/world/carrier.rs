//! A carrier nobody trusts: it shows a part, gives torn and turned bytes, forgets what it was given, and renames.

use std::collections::{BTreeMap, HashMap};

use holdfast_core::exchange::{
    CarriedFile, ExchangeDid, ExchangeReport, ExchangeStep, FailedFile, ListedFile,
};
use holdfast_core::{HoldfastResult, Restore};
use rand::RngExt;
use rand_chacha::ChaCha8Rng;

use crate::Device;

/// The part of a name that no seal decides: device, lane and place.
const SAME: usize = 50;

/// What lies on a carrier, in an order that is the same at every run of a seed: sealing draws from the system, so the
/// end of a name, and with it the order of names, is another each time.
#[derive(Clone, Default)]
pub(super) struct Files {
    by_place: BTreeMap<(String, usize), (String, Vec<u8>)>,
    places: HashMap<String, (String, usize)>,
    came: usize,
}

impl Files {
    pub(super) fn get(&self, name: &str) -> Option<&Vec<u8>> {
        self.by_place.get(self.places.get(name)?).map(|(_, content)| content)
    }

    pub(super) fn get_mut(&mut self, name: &str) -> Option<&mut Vec<u8>> {
        self.by_place.get_mut(self.places.get(name)?).map(|(_, content)| content)
    }

    /// Puts a file there. True where none of that name was.
    pub(super) fn insert(&mut self, name: String, content: Vec<u8>) -> bool {
        if let Some(there) = self.get_mut(&name) {
            *there = content;
            return false;
        }
        let same = name.get(..SAME).unwrap_or(&name).to_owned();
        self.came += 1;
        let place = (same, self.came);
        self.places.insert(name.clone(), place.clone());
        self.by_place.insert(place, (name, content));
        true
    }

    pub(super) fn remove(&mut self, name: &str) {
        if let Some(place) = self.places.remove(name) {
            self.by_place.remove(&place);
        }
    }

    pub(super) fn iter(&self) -> impl Iterator<Item = (&String, &Vec<u8>)> {
        self.by_place.values().map(|(name, content)| (name, content))
    }

    pub(super) fn names(&self) -> Vec<String> {
        self.iter().map(|(name, _)| name.clone()).collect()
    }

    pub(super) fn len(&self) -> usize {
        self.by_place.len()
    }
}

/// How often, of a hundred times, each thing goes wrong.
#[derive(Clone, Copy)]
pub(super) struct Wrong {
    /// A file is not listed.
    pub(super) unlisted: u32,
    /// A file is given torn, turned, or not at all.
    pub(super) spoiled: u32,
    /// A file that was written is lost, or lies there with other bytes.
    pub(super) lost: u32,
    /// The connection ends between two steps.
    pub(super) broken: u32,
}

pub(super) const NEVER: Wrong = Wrong { unlisted: 0, spoiled: 0, lost: 0, broken: 0 };

/// What a device asked of a carrier, and what it brought there.
#[derive(Default)]
pub(super) struct Passed {
    pub(super) asked: Vec<String>,
    pub(super) brought: Vec<String>,
}

/// Exchanges with a carrier on which so much goes wrong. None where the connection broke.
pub(super) fn exchange(
    device: &Device,
    files: &mut Files,
    wrong: Wrong,
    chance: &mut ChaCha8Rng,
    passed: &mut Passed,
) -> HoldfastResult<Option<ExchangeReport>> {
    let mut did = ExchangeDid::Begin;
    loop {
        if happens(wrong.broken, chance) {
            return Ok(None);
        }
        did = match device.step(did)? {
            ExchangeStep::ListFiles => listed(files, wrong, chance),
            ExchangeStep::Get { names } => {
                let did = got(files, &names, wrong, chance);
                passed.asked.extend(names);
                did
            }
            ExchangeStep::Put { files: brought } => {
                passed.brought.extend(brought.iter().map(|file| file.name.clone()));
                put(files, brought, wrong, chance)
            }
            ExchangeStep::Done { report } => return Ok(Some(report)),
        };
    }
}

/// Looks for what a carrier has of a person.
pub(super) fn search(search: &Restore, files: &Files, chance: &mut ChaCha8Rng) {
    let mut did = ExchangeDid::Begin;
    loop {
        did = match search.step(did).unwrap() {
            ExchangeStep::ListFiles => listed(files, NEVER, chance),
            ExchangeStep::Get { names } => got(files, &names, NEVER, chance),
            ExchangeStep::Put { .. } | ExchangeStep::Done { .. } => return,
        };
    }
}

fn happens(times_of_hundred: u32, chance: &mut ChaCha8Rng) -> bool {
    times_of_hundred > 0 && chance.random_range(0..100) < times_of_hundred
}

/// A number below `end`, of always as many draws: files of one content may differ in length.
pub(super) fn below(end: usize, chance: &mut ChaCha8Rng) -> usize {
    chance.random::<u64>() as usize % end.max(1)
}

fn listed(files: &Files, wrong: Wrong, chance: &mut ChaCha8Rng) -> ExchangeDid {
    let mut listed = Vec::new();
    for (name, content) in files.iter() {
        if !happens(wrong.unlisted, chance) {
            listed.push(ListedFile { name: name.clone(), bytes: content.len() as u64 });
        }
    }
    // In any order, and some twice.
    if wrong.unlisted > 0 && !listed.is_empty() {
        let by = below(listed.len(), chance);
        listed.rotate_left(by);
        listed.push(listed[0].clone());
    }
    ExchangeDid::Listed { files: listed }
}

fn got(files: &Files, names: &[String], wrong: Wrong, chance: &mut ChaCha8Rng) -> ExchangeDid {
    let (mut found, mut unread) = (Vec::new(), Vec::new());
    for name in names {
        let Some(content) = files.get(name) else { continue };
        let (name, mut content) = (name.clone(), content.clone());
        if happens(wrong.spoiled, chance) {
            match chance.random_range(0..4) {
                0 => {
                    unread.push(FailedFile { name, reason: "gone".into() });
                    continue;
                }
                1 => content.truncate(below(content.len(), chance)),
                2 => turn_a_bit(&mut content, chance),
                _ => continue,
            }
        }
        found.push(CarriedFile { name, content });
    }
    ExchangeDid::Got { files: found, unread }
}

/// Turns one bit: the size stays.
pub(super) fn turn_a_bit(content: &mut [u8], chance: &mut ChaCha8Rng) {
    let bit = below(content.len() * 8, chance);
    if let Some(byte) = content.get_mut(bit / 8) {
        *byte ^= 1 << (bit % 8);
    }
}

fn put(
    files: &mut Files,
    brought: Vec<CarriedFile>,
    wrong: Wrong,
    chance: &mut ChaCha8Rng,
) -> ExchangeDid {
    let mut written = 0;
    for CarriedFile { name, mut content } in brought {
        if happens(wrong.lost, chance) {
            match chance.random_range(0..3) {
                0 => continue,
                1 => content.truncate(content.len() / 2),
                _ => {
                    // A file synchroniser's copy beside it.
                    files.insert(format!("{name} (conflict)"), content.clone());
                }
            }
        }
        written += u32::from(files.insert(name, content));
    }
    ExchangeDid::Put { written, unwritten: Vec::new() }
}
