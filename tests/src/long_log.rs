//! A long log in sealed leaves: evenings that real calls logged, told again until there are as many entries as wanted,
//! and what brings them to a device without a disk or a network of its own.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use chrono::NaiveDate;
use holdfast_core::exchange::sealed::{Audience, LanePart, SealedLeaf, SealedName};
use holdfast_core::exchange::{CarriedFile, ExchangeDid, ExchangeReport, ExchangeStep, ListedFile};
use holdfast_core::journal::Role;
use holdfast_core::trust::Keys;
use serde_json::Value;

use crate::crowd::{Again, Evening, evening, evenings, plan};
use crate::pairing::pair;
use crate::{Carrier, DAY, Device, Writer};

/// Whose device takes the log in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// The coach's: the log is that of ten members, each in a lane of their own.
    Coach,
    /// A member's: the log is their own, from another device of theirs.
    Member,
}

/// A log to be made.
#[derive(Clone, Copy, Debug)]
pub struct LongLog {
    /// Whose device takes it in.
    pub side: Side,
    /// How many entries, at least; less than an evening more.
    pub entries: usize,
    /// The most entries in a leaf; none for a leaf an evening.
    pub a_leaf: Option<usize>,
    /// To how many keys each leaf is sealed: the device's own, papers, and devices of both people; 3 to 16.
    pub recipients: usize,
}

/// What was made.
pub struct Told {
    /// The home of the device that takes it in, shut, with nothing of it yet.
    pub home: PathBuf,
    /// When that is, for whoever opens it.
    pub now: holdfast_core::Instant,
    /// The leaves.
    pub files: Files,
    /// How many entries are in them.
    pub entries: u64,
    lanes: Vec<Lane>,
    audiences: Vec<Audience>,
    teller: Teller,
}

/// One writer's leaves.
struct Lane {
    writer: Writer,
    thread: (holdfast_core::CrewId, holdfast_core::PersonId),
    last: Option<SealedLeaf>,
    /// The number of its next entry, and the day it is at.
    next: u64,
    day: i64,
}

struct Teller {
    evenings: Vec<Evening>,
    plan: (holdfast_core::DeviceId, u64),
}

/// Files in memory, in the order they were written.
#[derive(Clone, Default)]
pub struct Files {
    names: Vec<String>,
    content: BTreeMap<String, Vec<u8>>,
}

impl Files {
    /// How many.
    pub fn count(&self) -> usize {
        self.names.len()
    }

    /// How many bytes they have together.
    pub fn bytes(&self) -> usize {
        self.content.values().map(Vec::len).sum()
    }

    /// One of them.
    pub fn get(&self, name: &str) -> Option<CarriedFile> {
        let content = self.content.get(name)?.clone();
        Some(CarriedFile { name: name.to_owned(), content })
    }

    /// All of them, in the order they were written.
    pub fn iter(&self) -> impl Iterator<Item = CarriedFile> + use<'_> {
        self.names.iter().filter_map(|name| self.get(name))
    }

    /// Adds one.
    pub fn add(&mut self, file: CarriedFile) {
        self.names.push(file.name.clone());
        self.content.insert(file.name, file.content);
    }

    /// What a carrier lists.
    pub fn listing(&self) -> Vec<ListedFile> {
        let listed = |(name, content): (&String, &Vec<u8>)| ListedFile {
            name: name.clone(),
            bytes: content.len() as u64,
        };
        self.content.iter().map(listed).collect()
    }
}

/// A whole exchange with files in memory; what the device would put there is dropped.
///
/// # Panics
/// When a step is refused.
pub fn exchange(device: &Device, listing: Vec<ListedFile>, files: &Files) -> ExchangeReport {
    let get = |names: &[String]| names.iter().filter_map(|name| files.get(name)).collect();
    device.exchange_by(listing, get, |_| Ok(0)).unwrap()
}

/// A server's files: a folder for each part of a lane.
#[derive(Default)]
pub struct Parts {
    folders: BTreeMap<String, Vec<ListedFile>>,
}

impl Parts {
    /// Adds what is listed.
    pub fn add(&mut self, listed: ListedFile) {
        if let Some(name) = SealedName::parse(&listed.name) {
            self.folders.entry(LanePart::of(&name).to_string()).or_default().push(listed);
        }
    }

    /// A whole exchange, and how many names were listed in it.
    ///
    /// # Panics
    /// When a step is refused.
    pub fn exchange(&mut self, device: &Device, files: &mut Files) -> (ExchangeReport, usize) {
        let (mut did, mut listed) = (ExchangeDid::Begin, 0);
        loop {
            did = match device.step(did).unwrap() {
                ExchangeStep::ListFiles => {
                    let (place, folders) = ("a server".into(), self.folders.keys().cloned());
                    let wanted =
                        device.holdfast.to_look_into(place, folders.collect(), device.now());
                    let of =
                        |folder: String| self.folders.get(&folder).cloned().unwrap_or_default();
                    let files: Vec<ListedFile> = wanted.unwrap().into_iter().flat_map(of).collect();
                    listed = files.len() + self.folders.len();
                    ExchangeDid::Listed { files }
                }
                ExchangeStep::Get { names } => {
                    let files = names.iter().filter_map(|name| files.get(name)).collect();
                    ExchangeDid::Got { files, unread: Vec::new() }
                }
                ExchangeStep::Put { files: brought } => {
                    let written = brought.len() as u32;
                    for file in brought {
                        let bytes = file.content.len() as u64;
                        self.add(ListedFile { name: file.name.clone(), bytes });
                        files.add(file);
                    }
                    ExchangeDid::Put { written, unwritten: Vec::new() }
                }
                ExchangeStep::Done { report } => return (report, listed),
            };
        }
    }
}

impl LongLog {
    /// Tells it, in a folder.
    ///
    /// # Panics
    /// When a call is refused.
    pub fn tell(self, folder: &Path) -> Told {
        let begins = NaiveDate::from_ymd_opt(2020, 1, 6).unwrap();
        let coach = Device::start(folder.join("coach"), "Maren", Role::Coach, 200).unwrap();
        coach.put_at(evening(begins));
        coach.publish(&plan("Block 1", begins)).unwrap();
        let carrier = Carrier::new(folder.join("carrier"));
        let maren = Writer::at(&coach);
        let members = if self.side == Side::Coach { 10 } else { 1 };
        let (mut lanes, mut audiences, mut homes) = (Vec::new(), Vec::new(), Vec::new());
        for member in 0..members {
            let name = format!("Member {}", member + 1);
            let home = folder.join("members").join(&name);
            let device = Device::start(home, &name, Role::Athlete, member + 1).unwrap();
            pair(&coach, &device, member).unwrap();
            coach.exchange(&carrier).unwrap();
            device.exchange(&carrier).unwrap();
            let first = Writer::at(&device);
            let writer = match self.side {
                Side::Coach => first,
                Side::Member => first.another(2),
            };
            let thread = (maren.crew(), writer.person());
            lanes.push(Lane { writer, thread, last: None, next: 1_000, day: 0 });
            audiences.push(self.audience(&maren, &Writer::at(&device)));
            device.holdfast.shut().unwrap();
            homes.push(device.home);
        }
        coach.exchange(&carrier).unwrap();
        coach.holdfast.shut().unwrap();
        // The coach's first entry says who they are.
        let teller = Teller { evenings: evenings(begins), plan: (maren.device(), 2) };
        let home = if self.side == Side::Coach { coach.home } else { homes.swap_remove(0) };
        let now = evening(NaiveDate::from_ymd_opt(2045, 1, 2).unwrap());
        let files = Files::default();
        let mut told = Told { home, now, files, entries: 0, lanes, audiences, teller };
        let each = self.entries.div_ceil(told.lanes.len());
        for lane in 0..told.lanes.len() {
            let mut lines: Vec<String> = Vec::new();
            while told.lanes[lane].next - 1_000 < each as u64 {
                lines.extend(told.evening(lane));
                while let Some(most) = self.a_leaf.filter(|most| lines.len() >= *most) {
                    let rest = lines.split_off(most);
                    let leaf = told.leaf(lane, &lines);
                    told.files.add(leaf);
                    lines = rest;
                }
                if self.a_leaf.is_none() {
                    let leaf = told.leaf(lane, &std::mem::take(&mut lines));
                    told.files.add(leaf);
                }
            }
            if !lines.is_empty() {
                let leaf = told.leaf(lane, &lines);
                told.files.add(leaf);
            }
        }
        told
    }

    /// So many keys: those of the device that reads stand last among their person's, where it takes longest to find
    /// them.
    fn audience(self, maren: &Writer, member: &Writer) -> Audience {
        let devices = self.recipients - 2;
        let key = |of: u8, at: usize| Keys::new(&[of; 32], &[at as u8 + of; 32]).public().open;
        let with = |own: &Writer, of: u8, count: usize| {
            let others = (1..count).map(|at| key(of, at));
            others.chain([own.certificate.device_keys().open]).collect()
        };
        Audience {
            founder: with(maren, 20, devices - devices / 2),
            member: with(member, 120, devices / 2),
            papers: vec![key(200, 1), key(200, 2)],
        }
    }
}

impl Told {
    /// The lines of a lane's next evening.
    fn evening(&mut self, lane: usize) -> Vec<String> {
        let Teller { evenings, plan } = &self.teller;
        let at = &mut self.lanes[lane];
        let again = Again {
            member: lane as u32,
            first: at.next,
            day_ms: at.day * DAY,
            week: (at.day / 7 % 26) as u32 + 1,
            plan: *plan,
            block: "Block 1".into(),
        };
        let told = evenings[at.day as usize % evenings.len()].told(&again);
        at.day += 1;
        at.next += told.len() as u64;
        self.entries += told.len() as u64;
        told.iter().map(Value::to_string).collect()
    }

    fn leaf(&mut self, lane: usize, lines: &[String]) -> CarriedFile {
        let at = &mut self.lanes[lane];
        let leaf = at.writer.writes(at.thread, at.last.as_ref(), lines);
        let file = at.writer.seals_to(&leaf, &self.audiences[lane]);
        at.last = Some(leaf);
        file
    }

    /// One more leaf of the first lane, with so many entries; none of the files has it yet.
    pub fn more(&mut self, entries: usize) -> CarriedFile {
        let mut lines = Vec::new();
        while lines.len() < entries {
            lines.extend(self.evening(0));
        }
        let over = lines.split_off(entries).len() as u64;
        self.entries -= over;
        self.lanes[0].next -= over;
        self.leaf(0, &lines)
    }

    /// A copy of the home in a folder, open: to its device it is the same home.
    ///
    /// # Panics
    /// When it cannot be copied or opened.
    pub fn copied(&self, to: &Path) -> Device {
        crate::faults::copy_all(&self.home, to);
        self.open(to)
    }

    /// Opens a home at the moment when everything was told.
    ///
    /// # Panics
    /// When it cannot be opened.
    pub fn open(&self, home: &Path) -> Device {
        Device::open(home.to_owned(), self.now.clone()).unwrap()
    }
}
