//! Exchange without I/O: a listing in, what to put and get out; then the files that were got.
//!
//! A carrier is anything that moves files: a folder, later a server. Nothing in it is ever changed,
//! renamed or deleted, so no two devices can get in each other's way.

use std::collections::BTreeSet;

use serde::Serialize;

use crate::error::Result;
use crate::id::CrewId;
use crate::journal::{Leaf, LeafFault, LeafName, MAX_LEAF_BYTES};
use crate::store::{Store, names};

/// The most names of one listing that are looked at: a folder with more is not a carrier's.
pub const MAX_LISTING: usize = 100_000;

/// A file that a carrier lists.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ListedFile {
    /// Its name.
    pub name: String,
    /// Its size in bytes.
    pub bytes: u64,
}

/// A file on its way.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CarriedFile {
    /// Its name.
    pub name: String,
    /// Its content.
    pub content: Vec<u8>,
}

/// A file that was left alone, and why.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct AsideFile {
    /// Its name, cut to a length that can be shown.
    pub name: String,
    /// Why.
    pub reason: String,
    /// True for a sound leaf of another crew: this may be the wrong carrier.
    pub other_crew: bool,
}

/// What a shell should do with a carrier.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct ExchangePlan {
    /// Files to write, each under its name and only if the name is not there.
    pub put: Vec<CarriedFile>,
    /// Names to fetch.
    pub get: Vec<String>,
    /// Files that are not for us.
    pub aside: Vec<AsideFile>,
    /// Files there that this device has already.
    pub known: u32,
}

/// Works out what to put and get from a carrier's listing.
pub(crate) fn plan(store: &Store, listing: &[ListedFile]) -> Result<ExchangePlan> {
    let here = names(store.reader())?;
    let mut plan = ExchangePlan::default();
    let mut there = BTreeSet::new();
    for file in listing.iter().take(MAX_LISTING) {
        // Hidden files are a file synchroniser's own, or one of ours half-written.
        if file.name.starts_with('.') {
            continue;
        }
        match LeafName::parse(&file.name) {
            None => plan.aside.push(aside(&file.name, &LeafFault::Foreign)),
            Some(name) if here.contains(&name) => {
                plan.known += 1;
                // Another size than ours was torn on the way there, and is mended.
                if store.shelved_bytes(&name).is_none_or(|bytes| bytes == file.bytes) {
                    there.insert(name);
                }
            }
            Some(_) if file.bytes > MAX_LEAF_BYTES as u64 => {
                plan.aside.push(aside(&file.name, &LeafFault::TooLarge { bytes: file.bytes }));
            }
            Some(name) => plan.get.push(name.to_string()),
        }
    }
    if listing.len() > MAX_LISTING {
        let reason =
            format!("{} files; only the first {MAX_LISTING} were looked at", listing.len());
        let name = "the whole folder".into();
        plan.aside.push(AsideFile { name, reason, other_crew: false });
    }
    // Everybody brings what they have of everybody: a member without a connection for weeks is
    // carried by the others.
    for name in here.difference(&there) {
        if let Some(content) = store.leaf_bytes(name)? {
            plan.put.push(CarriedFile { name: name.to_string(), content });
        }
    }
    plan.get.sort();
    plan.aside.sort();
    Ok(plan)
}

/// Takes in one file that was got. Says how many entries were new, or why it was left alone.
pub(crate) fn absorb(
    store: &mut Store,
    crew: Option<CrewId>,
    file: &CarriedFile,
    wall_ms: i64,
) -> Result<std::result::Result<(CrewId, u64), AsideFile>> {
    let read = match LeafName::parse(&file.name) {
        Some(name) => Leaf::read(&name, &file.content),
        None => Err(LeafFault::Foreign),
    };
    let ours = read.and_then(|leaf| match crew {
        Some(crew) if crew != leaf.header.crew => Err(LeafFault::OtherCrew),
        _ => Ok(leaf),
    });
    match ours {
        Ok(leaf) => {
            let new = store.absorb(&leaf, &file.content, wall_ms)?;
            Ok(Ok((leaf.header.crew, new)))
        }
        Err(fault) => Ok(Err(aside(&file.name, &fault))),
    }
}

fn aside(name: &str, fault: &LeafFault) -> AsideFile {
    // A stranger's name may be long, or made to move a terminal's cursor.
    let shown: String = name.chars().filter(|c| !c.is_control()).take(120).collect();
    let other_crew = *fault == LeafFault::OtherCrew;
    AsideFile { name: shown, reason: fault.to_string(), other_crew }
}
