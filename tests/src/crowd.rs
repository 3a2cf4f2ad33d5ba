//! The log of a large crew over years, as files on a carrier: a session of each day of the plan is logged
//! by real calls, and told again for every member and week with other dates, identities and loads. Real
//! calls for all of them would take hours.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use chrono::{DateTime, Days, NaiveDate, SecondsFormat};
use holdfast_core::exchange::sealed::SealedLeaf;
use holdfast_core::journal::Role;
use holdfast_core::plan::read_plan;
use holdfast_core::{DeviceId, Instant, MassUnit, PersonId, Start};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use serde_json::Value;

use crate::pairing::pair;
use crate::train::whole_day;
use crate::{Carrier, DAY, DEMO_PLAN, Device, Writer, at, changed};

/// Weeks of a block: the longest there is.
const BLOCK: u32 = 26;

/// Evenings of a week.
const EVENINGS: usize = 2;

/// Of a hundred evenings, those somebody comes to.
const COMES: u32 = 95;

/// How large a crew is, and how long it has trained.
#[derive(Clone, Copy, Debug)]
pub struct Crowd {
    /// Athletes.
    pub members: u32,
    /// Whole blocks of 26 weeks.
    pub blocks: u32,
}

/// What was made.
pub struct Made {
    /// The coach's home, with the plans of all blocks and nothing of the athletes.
    pub coach: PathBuf,
    /// The folder with everybody's files.
    pub carrier: PathBuf,
    /// The day after the last one.
    pub ends: NaiveDate,
    /// Sessions in it.
    pub sessions: u64,
    /// Entries in it.
    pub entries: u64,
}

/// An evening as it was logged, to be told again.
pub(crate) struct Evening {
    lines: Vec<Value>,
    at_ms: i64,
    date: NaiveDate,
}

/// An evening's lines for somebody else.
pub(crate) struct Again {
    pub(crate) member: u32,
    pub(crate) first: u64,
    pub(crate) day_ms: i64,
    pub(crate) week: u32,
    pub(crate) plan: (DeviceId, u64),
    pub(crate) block: String,
}

impl Crowd {
    /// Writes the carrier of a crew whose last week ends the day before `today`.
    ///
    /// # Panics
    /// When a file cannot be written or a call is refused.
    pub fn write(self, folder: &Path, today: NaiveDate, seed: u64) -> Made {
        let mut chance = ChaCha8Rng::seed_from_u64(seed);
        let begins = today - Days::new(u64::from(self.blocks * BLOCK * 7));
        let (home, carrier) = (folder.join("coach"), Carrier::new(folder.join("carrier")));
        let coach = Device::start(home.clone(), "Maren", Role::Coach, 200).unwrap();
        let writer = coach.holdfast.who().unwrap().device;
        let mut plans = Vec::new();
        for block in 0..self.blocks {
            let starts = begins + Days::new(u64::from(block * BLOCK * 7));
            coach.put_at(evening(starts - Days::new(1)));
            let name = format!("Block {}", block + 1);
            coach.publish(&plan(&name, starts)).unwrap();
            // The coach's first entry says who they are.
            plans.push((name, (writer, u64::from(block) + 2)));
        }
        let maren = Writer::at(&coach);
        let evenings = evenings(begins);
        let mut made = Made {
            coach: home,
            carrier: carrier.folder().to_owned(),
            ends: today,
            sessions: 0,
            entries: 0,
        };
        for member in 0..self.members {
            let at = folder.join("members").join(member.to_string());
            let mut leaves = Leaves::of(joined(&coach, at, member), &maren, &carrier);
            let person = leaves.writer.person();
            made.entries += leaves.put(vec![profile(member, person, evening(begins).wall_ms)]);
            for (block, (name, plan)) in plans.iter().enumerate() {
                for week in 0..BLOCK {
                    for logged in &evenings {
                        if chance.random_range(0..100) >= COMES {
                            continue;
                        }
                        let weeks = block as i64 * i64::from(BLOCK) + i64::from(week);
                        let again = Again {
                            member,
                            first: leaves.next,
                            day_ms: weeks * 7 * DAY,
                            week: week + 1,
                            plan: *plan,
                            block: name.clone(),
                        };
                        made.entries += leaves.put(logged.told(&again));
                        made.sessions += 1;
                    }
                }
            }
        }
        coach.exchange(&carrier).unwrap();
        coach.holdfast.shut().unwrap();
        made
    }
}

/// The keys of somebody whom the coach takes in.
fn joined(coach: &Device, home: PathBuf, member: u32) -> Writer {
    let mut chance = ChaCha8Rng::seed_from_u64(member.into());
    let chance = (0..80).map(|_| chance.random()).collect();
    let name = format!("Member {}", member + 1);
    let start = Start { role: Role::Athlete, name, unit: MassUnit::Kg, chance };
    let device = Device::started(home, start).unwrap();
    pair(coach, &device, member as u8).unwrap();
    let writer = Writer::at(&device);
    device.holdfast.shut().unwrap();
    writer
}

pub(crate) fn plan(name: &str, starts: NaiveDate) -> String {
    let plan = changed(DEMO_PLAN, "Cellar block one", name);
    let plan = changed(&plan, "2026-11-02", &starts.to_string());
    changed(&plan, "weeks  = 3", &format!("weeks  = {BLOCK}"))
}

pub(crate) fn evening(date: NaiveDate) -> Instant {
    at(&date.to_string(), 18)
}

/// An evening of each kind in the first week, logged by real calls.
pub(crate) fn evenings(begins: NaiveDate) -> Vec<Evening> {
    let folder = tempfile::tempdir().unwrap();
    let carrier = Carrier::new(folder.path().join("carrier"));
    let text = plan("Block 1", begins);
    let coach = Device::start(folder.path().join("coach"), "Maren", Role::Coach, 200).unwrap();
    coach.put_at(evening(begins));
    coach.publish(&text).unwrap();
    coach.exchange(&carrier).unwrap();
    let days = read_plan(text.as_bytes()).unwrap();
    let days = days.planned_until(begins + Days::new(6));
    let evenings = days.into_iter().take(EVENINGS).enumerate().map(|(index, day)| {
        let home = folder.path().join(format!("athlete-{index}"));
        let athlete = Device::start(home, "Ines", Role::Athlete, 1).unwrap();
        pair(&coach, &athlete, index as u8).unwrap();
        coach.exchange(&carrier).unwrap();
        athlete.put_at(evening(day.date));
        athlete.exchange(&carrier).unwrap();
        whole_day(&athlete, &day.day);
        athlete.exchange(&carrier).unwrap();
        let leaf = carrier.leaves_of(&athlete).pop().unwrap();
        let leaf = Writer::at(&athlete).opens(&Writer::at(&coach), &leaf);
        let lines = leaf.entries.iter().map(|entry| serde_json::from_str(&entry.raw).unwrap());
        // The next one is another athlete's first again.
        for file in carrier.leaves_of(&athlete) {
            fs::remove_file(carrier.folder().join(file.name)).unwrap();
        }
        Evening { lines: lines.collect(), at_ms: evening(day.date).wall_ms, date: day.date }
    });
    evenings.collect()
}

impl Evening {
    /// The same evening, another member's, in another week.
    pub(crate) fn told(&self, again: &Again) -> Vec<Value> {
        let mut records: BTreeMap<String, String> = BTreeMap::new();
        let mut lines = self.lines.clone();
        for (index, line) in lines.iter_mut().enumerate() {
            line["n"] = (again.first + index as u64).into();
            let ms = self.at_ms + again.day_ms;
            let record = record(ms, again.member, index);
            let old = line["id"].as_str().unwrap().to_owned();
            line["id"] = records.entry(old).or_insert(record).as_str().into();
            let time = DateTime::parse_from_rfc3339(line["t"].as_str().unwrap()).unwrap();
            let time = time + chrono::Duration::milliseconds(again.day_ms);
            line["t"] = time.to_rfc3339_opts(SecondsFormat::Millis, false).into();
            later(line, again.day_ms);
            let lift = line["k"] == "lift";
            let body = &mut line["body"];
            if let Some(known) = body["session"].as_str().and_then(|id| records.get(id)) {
                body["session"] = known.as_str().into();
            }
            if lift {
                // 40 to 90 kg, and a little more each week.
                let quarter = u64::from(again.member % 20) + u64::from(again.week) / 2;
                body["load"] = (4_000_000_000_000 + quarter * 125_000_000_000).into();
            }
            if !body["plan"].is_null() {
                let (device, number) = again.plan;
                body["plan"] = serde_json::json!({ "d": device, "n": number });
                body["block"] = again.block.as_str().into();
                body["week"] = again.week.into();
                let days = Days::new((again.day_ms / DAY).unsigned_abs());
                body["date"] = (self.date + days).to_string().into();
            }
        }
        lines
    }
}

/// Moves every moment in a line.
fn later(value: &mut Value, by_ms: i64) {
    if let Value::Object(fields) = value {
        for (name, field) in fields {
            match field.as_i64() {
                Some(ms) if ["ms", "wall_ms", "boot_ms"].contains(&name.as_str()) => {
                    *field = (ms + by_ms).into();
                }
                _ => later(field, by_ms),
            }
        }
    }
}

/// A version 7 UUID: time first.
fn record(ms: i64, member: u32, index: usize) -> String {
    format!("{:08x}-{:04x}-7{index:03x}-8000-0000{member:08x}", ms >> 16, ms & 0xffff)
}

pub(crate) fn profile(member: u32, person: PersonId, ms: i64) -> Value {
    let t = DateTime::from_timestamp_millis(ms).unwrap().fixed_offset();
    serde_json::json!({
        "v": 1, "n": 1, "hlc": { "ms": ms, "count": 0 },
        "t": t.to_rfc3339_opts(SecondsFormat::Millis, false), "k": "profile",
        "id": record(ms, member, 0xfff),
        "body": { "person": person, "name": format!("Member {}", member + 1), "role": "athlete",
            "unit": "kg", "language": null, "crew": null },
    })
}

/// A member's lane on the carrier.
struct Leaves<'a> {
    writer: Writer,
    coach: &'a Writer,
    carrier: &'a Carrier,
    last: Option<SealedLeaf>,
    next: u64,
}

impl Leaves<'_> {
    fn of<'a>(writer: Writer, coach: &'a Writer, carrier: &'a Carrier) -> Leaves<'a> {
        Leaves { writer, coach, carrier, last: None, next: 1 }
    }

    /// Writes lines as the next leaf. Says how many.
    fn put(&mut self, lines: Vec<Value>) -> u64 {
        let lines: Vec<String> = lines.iter().map(Value::to_string).collect();
        let thread = (self.coach.crew(), self.writer.person());
        let leaf = self.writer.writes(thread, self.last.as_ref(), &lines);
        let file = self.writer.seals(&leaf, &[self.coach, &self.writer]);
        fs::write(self.carrier.folder().join(file.name), file.content).unwrap();
        self.last = Some(leaf);
        self.next += lines.len() as u64;
        lines.len() as u64
    }
}
