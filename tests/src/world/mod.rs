//! A crew, its carrier and whoever is against them, played by chance: phones and laptops that are lost, restored, stopped
//! and taken out, a carrier that drops, tears, turns bits, renames and lies, and people who write what they must not.
//! Whatever came when, in the end everybody honest has the same, nothing that was saved is lost, nothing forged counts,
//! and nobody reads what was not for them.

mod acts;
mod carrier;
mod check;
mod ends;
mod epilogue;
mod hostile;
mod insiders;
mod lanes;
mod many;
mod middle;
#[cfg(feature = "planted")]
mod planted;
mod template;
mod weak;

use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::path::PathBuf;
use std::rc::Rc;

use holdfast_core::exchange::ExchangeReport;
use holdfast_core::exchange::sealed::SealedLeaf;
use holdfast_core::{DeviceId, HoldfastError};
use rand::seq::IndexedRandom;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use tempfile::TempDir;

use crate::{Device, Writer};
use carrier::{Files, Passed, Wrong};
use ends::Ended;
pub use many::{go_on, play_all, stories_or};
#[cfg(feature = "planted")]
pub use planted::{Caught, seeds_until_caught};

/// The coach, and two members.
const MAREN: usize = 0;
const ANA: usize = 1;
const BEN: usize = 2;
const NAMES: [&str; 3] = ["Maren", "Ana", "Ben"];

/// Things done in one story, before everything comes together: at least, and at most. Most stories are short: whatever goes
/// wrong does so sooner in many of them than in few long ones.
const ACTS: [u32; 2] = [5, 24];

type Done = Result<(), String>;

fn failed(what: &str) -> impl FnOnce(HoldfastError) -> String {
    move |error| format!("{what}: {error}")
}

/// A device of somebody's.
struct Seat {
    who: usize,
    id: DeviceId,
    device: Device,
    /// True once somebody else has it.
    stolen: bool,
    /// True once it was stopped or removed by somebody who may.
    ended: bool,
}

impl Seat {
    fn of(who: usize, device: Device) -> Seat {
        let id = Writer::at(&device).device();
        Seat { who, id, device, stolen: false, ended: false }
    }
}

/// One story.
struct World {
    chance: ChaCha8Rng,
    folder: TempDir,
    seats: Vec<Seat>,
    codes: [String; 3],
    /// The person's keys of each, as their device had them first.
    writers: [Writer; 3],
    /// False while the coach has taken them out.
    in_crew: [bool; 3],
    files: Files,
    /// Files that were opened to see what is in them: what came of it.
    opened: RefCell<HashMap<String, Option<Rc<SealedLeaf>>>>,
    /// Files that an enemy wrote.
    injected: BTreeSet<String>,
    /// Files of them that are no leaf of this crew: nobody honest ever carries one on.
    unsound: BTreeSet<String>,
    /// Who brought a file first: who sealed it.
    sealed_by: BTreeMap<String, usize>,
    /// Records that must never count, as a state names them.
    forged: BTreeSet<String>,
    /// Records of an enemy's that may count, and that an enemy may show to some devices alone.
    tolerated: BTreeSet<String>,
    /// Numbers of an enemy's entries.
    enemys: BTreeSet<i64>,
    /// Records of an enemy's that must not count as long as this person is taken out.
    while_out: Vec<(usize, String)>,
    /// Devices that were stopped or removed, each with what whoever did it had of theirs.
    ends: Vec<Ended>,
    /// Devices that somebody took for stopped or removed, for a time or for good.
    doubted: BTreeSet<DeviceId>,
    /// Devices whose recovery code was typed back.
    on_paper: BTreeSet<usize>,
    /// A home as it was once: what a backup brings back.
    backup: Option<(usize, PathBuf)>,
    made: u32,
    told: Vec<String>,
}

/// What came of a story.
#[derive(Clone, Copy, Debug, Default)]
pub struct Played {
    /// Files on the carrier at the end.
    pub files: usize,
    /// Files of them that an enemy wrote.
    pub injected: usize,
    /// Devices there were.
    pub devices: usize,
    /// Devices that were stolen.
    pub stolen: usize,
}

/// Plays the story of a seed.
///
/// # Errors
/// What does not hold, with all that was done.
pub fn play(seed: u64) -> Result<Played, String> {
    let mut world = World::begin(seed);
    let held = world.play();
    if held.is_err() {
        world.keep();
    }
    held.map_err(|why| format!("seed {seed}: {why}\n  {}", world.told.join("\n  ")))
}

impl Played {
    fn add(&mut self, other: Played) {
        self.files += other.files;
        self.injected += other.injected;
        self.devices += other.devices;
        self.stolen += other.stolen;
    }
}

impl World {
    fn play(&mut self) -> Result<Played, String> {
        // The lowest of three.
        let acts = (0..3).map(|_| self.chance.random_range(ACTS[0]..=ACTS[1])).min();
        for _ in 0..acts.unwrap_or(ACTS[0]) {
            self.act()?;
        }
        self.come_together()?;
        self.epilogue()?;
        Ok(Played {
            files: self.files.len(),
            injected: self.injected.len(),
            devices: self.seats.len(),
            stolen: self.seats.iter().filter(|seat| seat.stolen).count(),
        })
    }

    /// Keeps the homes of a story that failed, in the folder that `HOLDFAST_KEEP` names, for whoever looks into it.
    fn keep(&self) {
        if let Some(kept) = std::env::var_os("HOLDFAST_KEEP") {
            for (at, seat) in self.seats.iter().enumerate() {
                template::copy(&seat.device.home, &PathBuf::from(&kept).join(at.to_string()));
            }
        }
    }

    fn act(&mut self) -> Result<(), String> {
        let drawn = self.chance.random_range(0..100);
        match drawn {
            0..=24 => self.log(),
            25..=54 => self.meet(),
            55..=58 => self.kill(),
            59..=61 => self.set_a_clock(),
            62..=65 => self.back_up_or_bring_back(),
            66..=70 => self.restore(),
            71..=74 => self.steal(),
            75..=78 => self.stop(),
            79..=82 => self.take_out_or_in(),
            83 => self.put_code_on_paper(),
            84 => self.somebody_in_the_middle(),
            85 => self.somebody_new_looks(),
            _ => {
                self.attack();
                Ok(())
            }
        }
    }

    /// An exchange of somebody's, and what must hold of each.
    fn exchange(&mut self, at: usize, wrong: Wrong) -> Result<Option<ExchangeReport>, String> {
        let mut passed = Passed::default();
        let device = &self.seats[at].device;
        let (files, chance) = (&mut self.files, &mut self.chance);
        let report = carrier::exchange(device, files, wrong, chance, &mut passed);
        for name in passed.brought {
            if self.unsound.contains(&name) {
                return Err(format!("{at} carries on what it cannot have verified: {name}"));
            }
            self.sealed_by.entry(name).or_insert(at);
        }
        report.map_err(failed("exchange"))
    }

    /// An honest device that goes on.
    fn any_seat(&mut self) -> usize {
        let honest: Vec<usize> = (0..self.seats.len())
            .filter(|at| !self.seats[*at].stolen && !self.seats[*at].ended)
            .collect();
        *honest.choose(&mut self.chance).expect("somebody is honest")
    }

    /// An honest device of somebody's that goes on.
    fn seat_of(&self, who: usize) -> Option<usize> {
        self.seats.iter().position(|seat| seat.who == who && !seat.stolen && !seat.ended)
    }

    fn tell(&mut self, what: String) {
        self.told.push(what);
    }

    fn folder(&mut self, name: &str) -> PathBuf {
        self.made += 1;
        self.folder.path().join(format!("{name}-{}", self.made))
    }
}

/// What a seed draws.
fn chance(seed: u64) -> ChaCha8Rng {
    ChaCha8Rng::seed_from_u64(seed)
}
