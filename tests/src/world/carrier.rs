//! A carrier nobody trusts: it shows a part, gives torn and turned bytes, forgets what it was given, and renames.

use std::collections::BTreeMap;

use holdfast_core::exchange::{
    CarriedFile, ExchangeDid, ExchangeReport, ExchangeStep, FailedFile, ListedFile,
};
use holdfast_core::{HoldfastResult, Restore};
use rand::RngExt;
use rand_chacha::ChaCha8Rng;

use crate::Device;

/// Files by name.
pub(super) type Files = BTreeMap<String, Vec<u8>>;

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

/// Exchanges with a carrier on which so much goes wrong. None where the connection broke.
pub(super) fn exchange(
    device: &Device,
    files: &mut Files,
    wrong: Wrong,
    chance: &mut ChaCha8Rng,
) -> HoldfastResult<Option<ExchangeReport>> {
    let mut did = ExchangeDid::Begin;
    loop {
        if chance.random_range(0..100) < wrong.broken {
            return Ok(None);
        }
        did = match device.step(did)? {
            ExchangeStep::ListFiles => listed(files, wrong, chance),
            ExchangeStep::Get { names } => got(files, &names, wrong, chance),
            ExchangeStep::Put { files: brought } => put(files, brought, wrong, chance),
            ExchangeStep::Done { report } => return Ok(Some(report)),
        };
    }
}

/// Looks for what a carrier has of a person.
pub(super) fn search(search: &Restore, files: &mut Files, chance: &mut ChaCha8Rng) {
    let mut did = ExchangeDid::Begin;
    loop {
        did = match search.step(did).unwrap() {
            ExchangeStep::ListFiles => listed(files, NEVER, chance),
            ExchangeStep::Get { names } => got(files, &names, NEVER, chance),
            ExchangeStep::Put { .. } | ExchangeStep::Done { .. } => return,
        };
    }
}

fn listed(files: &Files, wrong: Wrong, chance: &mut ChaCha8Rng) -> ExchangeDid {
    let mut listed = Vec::new();
    for (name, content) in files {
        if chance.random_range(0..100) >= wrong.unlisted {
            listed.push(ListedFile { name: name.clone(), bytes: content.len() as u64 });
        }
    }
    // In any order, and some twice.
    if wrong.unlisted > 0 && !listed.is_empty() {
        let by = chance.random_range(0..listed.len());
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
        if chance.random_range(0..100) < wrong.spoiled {
            match chance.random_range(0..4) {
                0 => {
                    unread.push(FailedFile { name, reason: "gone".into() });
                    continue;
                }
                1 => content.truncate(chance.random_range(0..content.len())),
                2 => {
                    let bit = chance.random_range(0..content.len() * 8);
                    content[bit / 8] ^= 1 << (bit % 8);
                }
                _ => continue,
            }
        }
        found.push(CarriedFile { name, content });
    }
    ExchangeDid::Got { files: found, unread }
}

fn put(
    files: &mut Files,
    brought: Vec<CarriedFile>,
    wrong: Wrong,
    chance: &mut ChaCha8Rng,
) -> ExchangeDid {
    let mut written = 0;
    for CarriedFile { name, mut content } in brought {
        if chance.random_range(0..100) < wrong.lost {
            match chance.random_range(0..3) {
                0 => continue,
                1 => content.truncate(content.len() / 2),
                _ => {
                    // A file synchroniser's copy beside it.
                    files.insert(format!("{name} (conflict)"), content.clone());
                }
            }
        }
        written += u32::from(files.insert(name, content).is_none());
    }
    ExchangeDid::Put { written, unwritten: Vec::new() }
}
