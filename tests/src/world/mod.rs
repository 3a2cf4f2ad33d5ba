//! A crew, its carrier and whoever is against them, played by chance: phones and laptops that are lost, restored, stopped
//! and taken out, a carrier that drops, tears, turns bits, renames and lies, and people who write what they must not.
//! Whatever came when, in the end everybody honest has the same, nothing that was saved is lost, and nothing forged counts.

mod acts;
mod carrier;
mod check;
mod hostile;
mod template;

use std::collections::BTreeSet;
use std::path::PathBuf;
use std::sync::atomic::{AtomicU64, Ordering};
use std::thread;
use std::time::Instant;

use rand::seq::IndexedRandom;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use tempfile::TempDir;

use crate::{Device, Writer};
use carrier::Files;

/// The coach, and two members.
const MAREN: usize = 0;
const ANA: usize = 1;
const BEN: usize = 2;
const NAMES: [&str; 3] = ["Maren", "Ana", "Ben"];

/// Things done in one story, before everything comes together.
const ACTS: u32 = 22;

/// A device of somebody's.
struct Seat {
    who: usize,
    device: Device,
    /// True once somebody else has it.
    stolen: bool,
    /// True once it was stopped or removed by somebody who may.
    ended: bool,
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
    /// Files that an enemy wrote.
    injected: BTreeSet<String>,
    /// Records that must never count, as a state names them.
    forged: BTreeSet<String>,
    /// Records of an enemy's that may count, and that an enemy may show to some devices alone.
    tolerated: BTreeSet<String>,
    /// Numbers of an enemy's entries.
    enemys: BTreeSet<i64>,
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

/// Plays so many stories from a seed on, on every core, and prints how fast.
///
/// # Panics
/// With what does not hold in one of them.
pub fn play_all(first: u64, stories: u64) -> Played {
    let began = Instant::now();
    let next = AtomicU64::new(0);
    let tell = || {
        let mut all = Played::default();
        loop {
            let at = next.fetch_add(1, Ordering::Relaxed);
            if at >= stories {
                return all;
            }
            let played = play(first + at).unwrap_or_else(|why| panic!("{why}"));
            all.add(played);
            if at % 1_000 == 999 {
                println!("{} stories, {:.0} s", at + 1, began.elapsed().as_secs_f64());
            }
        }
    };
    let threads = thread::available_parallelism().map_or(2, usize::from);
    let mut all = Played::default();
    thread::scope(|scope| {
        let telling: Vec<_> = (0..threads).map(|_| scope.spawn(tell)).collect();
        telling.into_iter().for_each(|one| all.add(one.join().expect("a story held")));
    });
    let rate = stories as f64 / began.elapsed().as_secs_f64();
    println!("{stories} stories from seed {first}, {rate:.1} a second: {all:?}");
    all
}

/// How many stories to play: as `HOLDFAST_STORIES` says, and so many otherwise.
pub fn stories_or(usual: u64) -> u64 {
    let given = std::env::var("HOLDFAST_STORIES").ok();
    given.map_or(usual, |text| text.parse().expect("HOLDFAST_STORIES is a whole number"))
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
        for _ in 0..ACTS {
            self.act()?;
        }
        self.come_together()?;
        self.check()?;
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
            0..=26 => self.log(),
            27..=58 => self.meet(),
            59..=63 => self.kill(),
            64..=66 => self.set_a_clock(),
            67..=70 => self.back_up_or_bring_back(),
            71..=75 => self.restore(),
            76..=79 => self.steal(),
            80..=83 => self.stop(),
            84..=87 => self.take_out_or_in(),
            _ => {
                self.attack();
                Ok(())
            }
        }
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
