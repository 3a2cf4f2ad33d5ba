//! A crew that has just met: made once, and copied for each story.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex};

use holdfast_core::Instant;
use holdfast_core::journal::Role;
use rand::RngExt;
use tempfile::TempDir;

use super::carrier::Files;
use super::{NAMES, Seat, World, chance};
use crate::pairing::pair;
use crate::{Carrier, Device, SMALL_PLAN, Writer};

struct Template {
    folder: TempDir,
    codes: [String; 3],
    files: Files,
    now: Instant,
}

/// Where homes lie: in memory where the system has a place for that, for no story is about the disk.
pub(super) fn temporary() -> TempDir {
    let memory = Path::new("/dev/shm");
    let made = if memory.is_dir() { TempDir::new_in(memory) } else { TempDir::new() };
    made.expect("a folder for a story")
}

/// The bug that is planted now, by its place among them; none without the feature.
fn planted_now() -> Option<usize> {
    #[cfg(feature = "planted")]
    return holdfast_core::planted_now().map(|bug| bug as usize);
    #[cfg(not(feature = "planted"))]
    None
}

/// One for each bug: with another way to sign nothing of the first would be sound.
fn template() -> Arc<Template> {
    type Made = Option<(Option<usize>, Arc<Template>)>;
    static MADE: Mutex<Made> = Mutex::new(None);
    let now = planted_now();
    let mut made = MADE.lock().unwrap_or_else(std::sync::PoisonError::into_inner);
    match &*made {
        Some((of, template)) if *of == now => Arc::clone(template),
        _ => {
            let template = Arc::new(meet());
            *made = Some((now, Arc::clone(&template)));
            template
        }
    }
}

/// A coach and two members meet.
fn meet() -> Template {
    let folder = temporary();
    let home = |name: &str| folder.path().join(name);
    let carrier = Carrier::new(folder.path().join("carrier"));
    let start = |name: &str, role, chance| Device::start(home(name), name, role, chance);
    let maren = start("Maren", Role::Coach, 200).unwrap();
    maren.publish(SMALL_PLAN).unwrap();
    let ana = start("Ana", Role::Athlete, 1).unwrap();
    let ben = start("Ben", Role::Athlete, 2).unwrap();
    for (member, chance) in [(&ana, 1), (&ben, 2)] {
        pair(&maren, member, chance).unwrap();
    }
    for device in [&maren, &ana, &ben, &maren] {
        device.exchange(&carrier).unwrap();
    }
    let codes = [&maren, &ana, &ben].map(|device| device.code().unwrap().unwrap());
    let mut files = Files::default();
    for file in carrier.files() {
        files.insert(file.name, file.content);
    }
    let now = maren.now();
    for device in [&maren, &ana, &ben] {
        device.holdfast.shut().unwrap();
    }
    Template { folder, codes, files, now }
}

/// Copies what lies in a home, but for what says where it lies.
pub(super) fn copy(from: &Path, to: &Path) {
    fs::create_dir_all(to.join("leaves")).unwrap();
    for folder in [PathBuf::new(), PathBuf::from("leaves")] {
        for file in fs::read_dir(from.join(&folder)).unwrap() {
            let path = file.unwrap().path();
            let name = path.file_name().unwrap();
            if path.is_file() && name != "lock" && name != "place" {
                fs::copy(&path, to.join(&folder).join(name)).unwrap();
            }
        }
    }
}

impl World {
    pub(super) fn begin(seed: u64) -> World {
        let made = template();
        let folder = temporary();
        let mut seats = Vec::new();
        for (who, name) in NAMES.iter().enumerate() {
            let home = folder.path().join(name);
            copy(&made.folder.path().join(name), &home);
            let device = Device::open(home, made.now.clone()).unwrap();
            seats.push(Seat::of(who, device));
        }
        let writers = [0, 1, 2].map(|who: usize| Writer::at(&seats[who].device));
        let mut chance = chance(seed);
        let kept = chance.random_range(0..NAMES.len());
        World {
            chance,
            folder,
            seats,
            codes: made.codes.clone(),
            writers,
            in_crew: [true; 3],
            files: made.files.clone(),
            opened: Default::default(),
            injected: BTreeSet::new(),
            unsound: BTreeSet::new(),
            sealed_by: BTreeMap::new(),
            forged: BTreeSet::new(),
            tolerated: BTreeSet::new(),
            enemys: BTreeSet::new(),
            while_out: Vec::new(),
            ends: Vec::new(),
            doubted: BTreeSet::new(),
            on_paper: BTreeSet::new(),
            // As they were when they met.
            backup: Some((kept, made.folder.path().join(NAMES[kept]))),
            made: 0,
            told: Vec::new(),
        }
    }
}
